"""Units with a method of their own: one go takes no less cloth than it gives, seams all round,
and there are goes enough. From the shapes of the patches alone; no method's formula is used."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.inch import plain
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.laid import laid
from patternbook.proof.recounted import OURS, part_place, recounted, shown
from patternbook.proof.with_seams import area, around, corners_of, with_seams
from patternbook.quilt.records import LayoutMade, Piece, PiecedMade, Placed, Quilt, Unit

# Areas are compared as squares, by their sides in floats: less than this is not told. In
# centimetres the trade's allowances are up to 0.12 short, which is told as what it is.
SCANT: Final = {"in": 1 / 1024, "cm": 1 / 8}
FROM_SQUARE: Final = {None: 1, "once": 2, "twice": 4}


def pieced(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the pieces of a go are too small for its units, or there are too few goes."""
    for unit, made in evidence.pieced():
        yield from _not_taken(evidence.quilt, unit, made)
        yield from _large_enough(evidence.quilt, unit, made)
        yield from _goes(evidence, unit, made)


def _goes(evidence: Evidence, unit: Unit, made: PiecedMade) -> Iterator[Notice]:
    units = evidence.taken[unit.name]
    least = evidence.goes(unit, made, units)
    if evidence.patches and made.goes != least:
        message = (
            f"'{unit.name}': {units} are sewn into something, and {made.gives} come of one go: "
            f"{least} goes, not {made.goes}."
        )
        yield recounted(evidence.quilt, "goes-count", "R3", message, unit.place)


def _not_taken(quilt: Quilt, unit: Unit, made: PiecedMade) -> Iterator[Notice]:
    """What lies in it has gone into it."""
    taken = {*_cloth(quilt, made.takes), *(part for part, _ in made.takes)}
    for part in dict.fromkeys(one.part for one in unit.placed):
        if part not in taken:
            message = f"{part} lies in '{unit.name}', and no go takes it."
            yield recounted(quilt, "goes-count", "R3", message, unit.place)


def _large_enough(quilt: Quilt, unit: Unit, made: PiecedMade) -> Iterator[Notice]:
    """Letter by letter; strips are as long as they need to be."""
    for letter, cloth in _cloth(quilt, made.takes).items():
        piece = quilt.pieces[letter]
        lying = [part for part in unit.placed if part.part == letter]
        own = any(part == letter for part, _ in made.takes)
        needed = made.gives * sum(_needs(quilt, part, own) for part in lying)
        if cloth is not None and lying and needed > (cloth**0.5 + SCANT[quilt.system.unit]) ** 2:
            yield _too_small(quilt, unit, made, piece, (cloth, needed))


def _cloth(quilt: Quilt, takes: Sequence[tuple[str, int]]) -> Mapping[str, float | None]:
    """The cloth of each letter in so many parts, whatever they are sewn from; None where it comes
    off strips, whose length is no size of a piece."""
    found: dict[str, float | None] = {}
    for part, number in takes:
        for letter, cloth in _within(quilt, part).items():
            before = found.get(letter, 0.0)
            found[letter] = None if cloth is None or before is None else before + number * cloth
    return found


def _within(quilt: Quilt, part: str) -> Mapping[str, float | None]:
    piece, unit = quilt.pieces.get(part), quilt.units.get(part)
    if piece is not None:
        return {part: _area_cut(piece)}
    if unit is None:
        return {}
    if isinstance(unit.made, PiecedMade):
        one = _cloth(quilt, unit.made.takes)
        return {letter: cloth and cloth / unit.made.gives for letter, cloth in one.items()}
    placed = Counter(one.part for one in unit.placed)
    if isinstance(unit.made, LayoutMade):
        return _cloth(quilt, tuple(placed.items()))
    return dict.fromkeys(placed)


def _area_cut(piece: Piece) -> float | None:
    """The cloth of one piece as it is taken: of a triangle, its share of the square."""
    if piece.cut.down is None:
        return None
    return float(piece.cut.across * piece.cut.down / FROM_SQUARE[piece.diagonal])


def _needs(quilt: Quilt, part: Placed, own: bool) -> float:
    """The cloth that one patch takes. What lies on others has no seams; what comes out of a sewn
    unit has them along its edges, and nothing is left of its points."""
    corners = corners_of(laid(quilt, part))
    if part.laid_on:
        return area(corners)
    if not own:
        return area(corners) + float(quilt.seam) * around(corners)
    return area(with_seams(corners, float(quilt.seam)))


def _too_small(
    quilt: Quilt, unit: Unit, made: PiecedMade, piece: Piece, sums: tuple[float, float]
) -> Notice:
    letter = piece.letter
    lying = [part for part in unit.placed if part.part == letter]
    patches = len(lying) * made.gives
    number = sum(number for part, number in made.takes if part == letter)
    mark = "sq in" if quilt.system.unit == "in" else "sq cm"
    size = " × ".join(shown(side, quilt) for side in piece.cut if side is not None)
    cut = {None: "", "once": ", cut once on the diagonal", "twice": ", cut twice on the diagonal"}
    taken = f"{number} of {letter} ({size}{cut[piece.diagonal]})" if number else f"its {letter}"
    boxes = dict.fromkeys(_box(quilt, part) for part in lying)
    message = (
        f"'{unit.name}': one go gives {made.gives}, and in them {patches} patches of {letter}, "
        f"{' and '.join(boxes)} with the seams round them: {sums[1]:.2f} {mark} of cloth. It takes "
        f"{taken}: {sums[0]:.2f} {mark}, {sums[1] - sums[0]:.2f} too little."
    )
    hint = OURS if number == 0 else f"Cut {letter} larger, or sew '{unit.name}' smaller."
    places = (part_place(quilt, letter), unit.place)
    return recounted(quilt, "piece-too-small", "R2", message, *places, hint=hint)


def _box(quilt: Quilt, part: Placed) -> str:
    """How large a patch must be cut to lie square on the ruler."""
    corners = with_seams(corners_of(laid(quilt, part)), float(quilt.seam))
    sides = (max(side) - min(side) for side in zip(*corners, strict=True))
    return " × ".join(plain(Fraction(round(side * 100), 100), True) for side in sides)
