"""So many kits of one size as one quilt to cut: what is cut for all, what each bag has of its own.

Patches, and the logs of blocks, are cut for all kits together and shared out. Into each bag go
whole: the strips of strip sets, strips that are joined end to end, border strips (the maker cuts
them to her own measure) and the binding. A maker can neither join nor measure half a strip, so
these are as many a kit as the pattern says (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from patternbook.cutting.plan import host_of
from patternbook.cutting.records import BINDING, Cut, CuttingPlan, LetterPlan, Strip
from patternbook.exact import Exact
from patternbook.quilt.records import CutSize, Piece, PiecedMade, Quilt, Run, Sides


def kits(quilt: Quilt, number: int, one: CuttingPlan) -> Quilt:
    """All that is cut for so many kits, as the pieces of one quilt that is never sewn; `one` is
    how one kit is cut. What the pattern states to buy is one kit's, so it is left out."""
    if number == 1:
        return quilt
    fabrics = {
        name: replace(fabric, stated_yards=None, stated_metres=None, stated_packs=None)
        for name, fabric in quilt.fabrics.items()
    }
    pieces = {letter: _of_all(quilt, one, piece, number) for letter, piece in quilt.pieces.items()}
    pieces |= {piece.letter: piece for piece in _binding(one, number)}
    return replace(
        quilt,
        fabrics=fabrics,
        pieces=pieces,
        top=None,
        finished=None,
        backing=None,
        batting=None,
        binding=None,
        quilting=(),
    )


def _of_all(quilt: Quilt, one: CuttingPlan, piece: Piece, number: int) -> Piece:
    bare = replace(
        piece, stated_count=None, stated_squares=None, stated_strips=None, stated_per_square=None
    )
    plan = one.letters.get(piece.letter)
    if plan is not None and in_strips(quilt, one, piece):
        return _in_strips(quilt, plan, bare, strips_of(one, piece.letter), number)
    return replace(
        bare,
        count=piece.count * number,
        mirrored=piece.mirrored * number,
        spare=piece.spare * number,
        runs=tuple(_times(run, number) for run in piece.runs),
    )


def _times(run: Run, number: int) -> Run:
    return replace(run, number=run.number * number)


def strips_of(one: CuttingPlan, letter: str) -> tuple[Strip, ...]:
    """The strips of one kit that a letter (or the binding) is cut from."""
    plans = one.fabrics.values()
    return tuple(strip for plan in plans for strip in plan.strips if letter in strip.letters)


def in_strips(quilt: Quilt, one: CuttingPlan, piece: Piece) -> bool:
    """Whether a letter goes into the bag as strips: what is cut the width of the cloth, and what
    is longer than that and has to be joined."""
    if piece.along == "length" or host_of(quilt, piece) is not piece:
        return False
    return piece.is_strip or any(strip.join for strip in strips_of(one, piece.letter))


def to_length(quilt: Quilt, piece: Piece) -> bool:
    """Whether lengths that a strip gives are cut before they are bagged: logs, and what shares
    its strips. Border strips are left whole, for the maker cuts them to her own measure."""
    uses = [run.use for run in piece.runs if not run.whole]
    pieced = all(
        use in quilt.units and isinstance(quilt.units[use].made, PiecedMade) for use in uses
    )
    return pieced or quilt.settings.cutting != "plain" or has_guests(quilt, piece)


def has_guests(quilt: Quilt, piece: Piece) -> bool:
    """Whether other letters are cut from its strips."""
    others = (one for one in quilt.pieces.values() if one is not piece)
    return any(host_of(quilt, one) is piece for one in others)


def _in_strips(
    quilt: Quilt, plan: LetterPlan, piece: Piece, strips: tuple[Strip, ...], number: int
) -> Piece:
    """The letter as strips, so many for each kit; spare ones too."""
    over = max(0, plan.strips - sum(strip.times for strip in strips))
    spare = max(over, piece.spare if piece.is_strip else 0)
    runs = tuple(_runs(quilt, piece, strips, number))
    made = replace(piece, runs=runs, spare=spare * number, join="none")
    if piece.is_strip:
        return made
    size = CutSize(plan.strip_width, None)
    return replace(
        made, cut=size, count=0, mirrored=0, sideways=False, strip_width=None, template=None
    )


def _runs(quilt: Quilt, piece: Piece, strips: tuple[Strip, ...], number: int) -> Iterator[Run]:
    """What the strips of all kits give: whole strips, and lengths where those are cut."""
    lengths, shared = to_length(quilt, piece), has_guests(quilt, piece)
    yield from (_times(run, number) for run in piece.runs if run.whole)
    for strip in strips:
        mine = [cut for cut in _cuts(strip) if cut.letter == piece.letter and not cut.whole]
        if not mine:
            continue
        use = mine[0].use or piece.letter
        if strip.join and shared:
            if strip.times > 1:
                yield Run(use, strip.length, (strip.times - 1) * number, whole=True)
            yield Run(use, last_of(strip, piece.letter), number, whole=False)
        elif strip.join or not lengths:
            yield Run(use, each_of(strip), strip.times * number, whole=True)
        else:
            for cut in mine:
                yield Run(cut.use or use, cut.along, cut.number * strip.times * number, whole=False)


def _cuts(strip: Strip) -> Iterator[Cut]:
    return (one for cut in strip.cuts for one in cut.stacked)


def each_of(strip: Strip) -> Fraction:
    """How much of each of these strips is used: joined ones share what their joins take."""
    used = strip.run - strip.left
    if strip.join is None:
        return used
    return (used + (strip.times - 1) * strip.join.loss) / strip.times


def last_of(strip: Strip, letter: str) -> Fraction:
    """How much of the last of joined strips their own letter takes, where all others are used
    up; what is left of it gives the letters that share it."""
    if strip.join is None:
        return strip.run - strip.left
    taken = sum((cut.taken for cut in strip.cuts if cut.letter == letter), Fraction(0))
    return taken - (strip.times - 1) * (strip.length - strip.join.loss)


def _binding(one: CuttingPlan, number: int) -> Iterator[Piece]:
    """The binding as a letter of its own: whole strips, or squares for bias strips."""
    plan = one.binding
    strips = strips_of(one, BINDING)
    if plan is None or not strips:
        return
    finished = Sides(Exact.of(plan.cut), Exact.of(plan.strip_length))
    if plan.square is not None:
        size = CutSize(plan.square, plan.square)
        yield Piece(BINDING, plan.fabric, size, finished, plan.squares * number)
        return
    runs = (Run(BINDING, each_of(strips[0]), plan.strips * number, whole=True),)
    yield Piece(BINDING, plan.fabric, CutSize(plan.cut, None), finished, 0, runs)
