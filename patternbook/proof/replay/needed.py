"""Every piece that the quilt needs comes off the cloth once: patches, lengths of strips, binding;
and each is as large as it is cut, with its print upright where the cloth has one way up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

from patternbook.cutting.records import BINDING, BindingPlan, Cut, Strip
from patternbook.notice import Notice
from patternbook.proof.double_entry import cuts_asked
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.replay.lay import Replayed
from patternbook.quilt.records import Piece

Lengths = Counter[tuple[str, Fraction | None]]


def needed(cloth: Replayed, binding: BindingPlan | None) -> Iterator[Notice]:
    """Errors where pieces of this fabric are cut more or less often than the quilt takes them."""
    off: Counter[str] = Counter()
    for lain in cloth.strips:
        for one in lain.pieces:
            off[one.letter] += lain.copies
    for letter, number in off.items():
        piece = cloth.quilt.pieces.get(letter)
        if piece is None:
            continue
        if piece.is_strip:
            yield from _lengths(cloth, piece)
        elif number != cuts_asked(piece):
            message = (
                f"{letter}: {number} come off the cloth when it is cut as planned; "
                f"{cuts_asked(piece)} are needed."
            )
            yield recounted(cloth.quilt, "cut-count", "R3", message, piece.place)
    yield from _forgotten(cloth, off)
    if binding is not None and binding.fabric == cloth.plan.fabric:
        yield from _binding(cloth, binding)


def _forgotten(cloth: Replayed, off: Counter[str]) -> Iterator[Notice]:
    """A letter that the plan says it gives, and that lies on none of its strips."""
    for letter, number in cloth.plan.yields.items():
        if number and not off[letter]:
            message = f"{letter}: the plan gives {number}, and none lies on the cloth."
            yield recounted(
                cloth.quilt, "cut-count", "R3", message, part_place(cloth.quilt, letter)
            )


def _lengths(cloth: Replayed, piece: Piece) -> Iterator[Notice]:
    """The lengths of a strip, for each use apart: as many and as long as are sewn. A strip that
    is sewn whole gives what it has."""
    cut: Lengths = Counter()
    for strip, one in _cuts(cloth, piece.letter):
        runs = one.along if strip.along == "width" else one.across
        cut[one.use or "", None if one.whole else runs] += one.number * _copies(strip)
    asked: Lengths = Counter()
    for run in piece.runs:
        if run.number > 0 and run.length > 0:
            asked[run.use, None if run.whole else run.length] += run.number
    if not any(strip.along == "length" for strip, _ in _cuts(cloth, piece.letter)):
        missing, over = asked - cut, cut - asked
    else:  # cut along the selvedge a length is measured, whatever it is for
        missing, over = _by_number(asked) - _by_number(cut), _by_number(cut) - _by_number(asked)
    for (use, long), number in (*missing.items(), *over.items()):
        how_long = "whole" if long is None else f"{shown(long, cloth.quilt)} long"
        message = (
            f"{piece.letter} for {use or 'its uses'}, {how_long}: {cut[use, long]} are cut, "
            f"{asked[use, long]} are needed ({number} differ)."
        )
        yield recounted(cloth.quilt, "cut-count", "R3", message, piece.place)


def _by_number(lengths: Lengths) -> Lengths:
    return Counter({("", None): sum(lengths.values())})


def _cuts(cloth: Replayed, letter: str) -> Iterable[tuple[Strip, Cut]]:
    return [
        (strip, one)
        for strip in cloth.plan.strips
        for cut in strip.cuts
        for one in cut.stacked
        if one.letter == letter
    ]


def _copies(strip: Strip) -> int:
    return 1 if strip.join else strip.times


def _binding(cloth: Replayed, plan: BindingPlan) -> Iterator[Notice]:
    """As many strips (or squares, of bias binding) as the binding is made of."""
    asked, wide = (plan.squares, plan.square) if plan.square else (plan.strips, plan.cut)
    strips = [strip for strip in cloth.plan.strips if BINDING in strip.letters]
    cut = sum(strip.pieces(BINDING) if plan.square else strip.times for strip in strips)
    if cut != asked or any(strip.width != wide for strip in strips):
        message = (
            f"the binding takes {asked} strips of {shown(wide or 0, cloth.quilt)}; {cut} are cut."
        )
        yield recounted(cloth.quilt, "cut-count", "R14", message)


def upright(cloth: Replayed) -> Iterator[Notice]:
    """Errors where a piece that has one way up would come off the cloth lying on its side."""
    if cloth.fabric is None or not cloth.fabric.one_way:
        return
    for strip in cloth.plan.strips:
        for one in (one for cut in strip.cuts for one in cut.stacked):
            piece = cloth.quilt.pieces.get(one.letter)
            if piece is None or piece.is_strip or _upright(piece, one):
                continue
            message = (
                f"{one.letter} is of one-way cloth and lies {shown(one.along, cloth.quilt)} along "
                f"its strip, {shown(one.across, cloth.quilt)} across: its print would lie down."
            )
            yield recounted(cloth.quilt, "cut-turned", "R18", message, piece.place)


def _upright(piece: Piece, cut: Cut) -> bool:
    """The print runs along the bolt, and so across the strip: along the piece's length, or its
    width where most of them lie on their side. An author who says how wide the strips of a
    lengthwise piece are has chosen."""
    across, down = piece.cut.across, piece.cut.down or piece.cut.across
    sides = (down, across) if piece.sideways else (across, down)
    chosen = piece.along == "length" and piece.strip_width is not None
    return chosen or (cut.along, cut.across) == sides
