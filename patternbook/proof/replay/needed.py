"""Every piece that the quilt needs comes off the cloth once: patches, lengths of strips, binding;
and each is as large as it is cut, with its print upright where the cloth has one way up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Final

from patternbook.cutting.records import BINDING, BindingPlan, Cut, Strip
from patternbook.notice import Notice
from patternbook.proof.double_entry import cuts_asked
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.replay.lay import Replayed
from patternbook.quilt.records import Piece

# Cut from half the width of the cloth: the shorter side lay along the bolt.
HALVES: Final = ("fat quarter", "fat eighth")

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
    lengthwise = any(strip.along == "length" for strip, _ in _cuts(cloth, piece.letter))
    if not lengthwise or not any(run.whole for run in piece.runs):
        missing, over = asked - cut, cut - asked
    else:  # cut along the selvedge what is sewn whole is measured too, whatever it is for
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


def as_it_lies(cloth: Replayed) -> Iterator[Notice]:
    """Errors where a piece lies along the cloth and is said (and sewn as) cut across it, or the
    other way round."""
    told: set[str] = set()
    for strip in cloth.plan.strips:
        for letter in strip.letters:
            piece = cloth.quilt.pieces.get(letter)
            if piece is not None and piece.along != strip.along and letter not in told:
                told.add(letter)
                message = (
                    f"{letter} is to lie along the {piece.along} of the cloth, and lies along its "
                    f"{strip.along}."
                )
                yield recounted(cloth.quilt, "cut-turned", "R18", message, piece.place)


def upright(cloth: Replayed) -> Iterator[Notice]:
    """Errors where a piece that has one way up would come off the cloth lying on its side."""
    if cloth.fabric is None or not cloth.fabric.one_way:
        return
    yield from _sheets_upright(cloth)
    turned = {row.strip for sheet in cloth.plan.sheets if sheet.turned for row in sheet.rows}
    for place, strip in enumerate(cloth.plan.strips):
        for one in (one for cut in strip.cuts for one in cut.stacked):
            piece = cloth.quilt.pieces.get(one.letter)
            if piece is None or piece.is_strip or _upright(piece, one, place in turned):
                continue
            message = (
                f"{one.letter} is of one-way cloth and lies {shown(one.along, cloth.quilt)} along "
                f"its strip, {shown(one.across, cloth.quilt)} across: its print would lie down."
            )
            yield recounted(cloth.quilt, "cut-turned", "R18", message, piece.place)


def _sheets_upright(cloth: Replayed) -> Iterator[Notice]:
    """The print runs up each pre-cut piece: along the side that lay along the bolt, the shorter
    one of a quarter or eighth; along a panel's length as it is stated."""
    size = cloth.fabric.size if cloth.fabric else None
    for sheet in cloth.plan.sheets:
        up = min(sheet.across, sheet.down)
        if cloth.plan.form not in HALVES:
            up = size.down if size and size.down else sheet.down
        if sheet.down != up:
            message = (
                f"{cloth.plan.fabric}: its print runs along the side of {shown(up, cloth.quilt)}, "
                f"and the lay has {shown(sheet.down, cloth.quilt)} upright."
            )
            place = cloth.fabric.place if cloth.fabric else None
            yield recounted(cloth.quilt, "cut-turned", "R18", message, place)


def _upright(piece: Piece, cut: Cut, turned: bool) -> bool:
    """The print runs along the bolt, and so across the strip: along the piece's length, or its
    width where most of them lie on their side. Strips of a pre-cut piece may run up it
    (`turned`). An author who says how wide the strips of a lengthwise piece are has chosen."""
    along, high = (cut.across, cut.along) if turned else (cut.along, cut.across)
    across, down = piece.cut.across, piece.cut.down or piece.cut.across
    sides = (down, across) if piece.sideways else (across, down)
    chosen = piece.along == "length" and piece.strip_width is not None
    return chosen or (along, high) == sides
