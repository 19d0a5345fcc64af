"""Every unit is the sum of its parts: they fill it, and each is as big as it is made."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.boxes import NOUGHT, Whole, whole
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.records import Placed, Quilt, Sides, Unit

HINT = "Check the cells of the unit, and the sizes of its parts."


def grid(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a unit is not filled by its parts, or a part lies in a size it has not."""
    quilt = evidence.quilt
    for unit in quilt.units.values():
        if unit.placed:
            laid = whole([*(part[2:] for part in unit.placed), (NOUGHT, NOUGHT, *unit.finished)])
            yield from _filled(quilt, unit, laid)
            yield from _as_made(quilt, unit, laid)
    top = quilt.units.get(quilt.top or "")
    if top is not None and top.finished != quilt.finished:
        made = _size(top.finished, quilt)
        message = f"the top is {made} finished, the quilt {_size(quilt.finished, quilt)}."
        yield recounted(quilt, "quilt-size", "R8", message, top.place)


def _filled(quilt: Quilt, unit: Unit, laid: Whole) -> Iterator[Notice]:
    *boxes, frame = laid.boxes
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    reached = (min(lefts), min(tops), max(rights), max(bottoms))
    covered, area = _area(unit, laid), unit.finished.across * unit.finished.down
    if reached != frame or covered != area:
        message = (
            f"'{unit.name}' finishes {_size(unit.finished, quilt)}; its {len(unit.placed)} parts "
            f"cover {shown(covered, quilt)} in area, it has {shown(area, quilt)}."
        )
        yield recounted(quilt, "unit-filled", "R8", message, unit.place, hint=HINT)


def _area(unit: Unit, laid: Whole) -> Exact:
    """The areas of the parts added up."""
    if laid.scale is None:
        return sum((part.across * part.down for part in unit.placed), NOUGHT)
    *boxes, _ = laid.boxes
    squares = sum((right - left) * (bottom - top) for left, top, right, bottom in boxes)
    return Exact(Fraction(squares, laid.scale**2))


def _as_made(quilt: Quilt, unit: Unit, laid: Whole) -> Iterator[Notice]:
    """Each part once: as it lies it has the sides that it is made with."""
    different = {
        (part.part, part.turn.quarters, box.right - box.left, box.bottom - box.top): part
        for part, box in zip(unit.placed, laid.boxes[:-1], strict=True)
    }
    for part in different.values():
        made = _finished(quilt, part.part)
        if made is None or _agrees(quilt, part, made):
            continue
        lies = Sides(part.across, part.down)
        message = (
            f"{part.part} lies {_size(lies, quilt)} in '{unit.name}', but it is made "
            f"{_size(made, quilt)} finished."
        )
        places = (part_place(quilt, part.part), unit.place)
        yield recounted(quilt, "part-size", "R8", message, *places, hint=HINT)


def _finished(quilt: Quilt, part: str) -> Sides | None:
    found = quilt.pieces.get(part) or quilt.units.get(part)
    return found.finished if found else None


def _agrees(quilt: Quilt, part: Placed, made: Sides) -> bool:
    across, down = (part.down, part.across) if part.turn.sideways else (part.across, part.down)
    piece = quilt.pieces.get(part.part)
    if piece is not None and piece.is_strip:
        return across == made.across
    return (across, down) == made


def _size(sides: Sides | None, quilt: Quilt) -> str:
    across, down = sides or (Fraction(0), Fraction(0))
    return f"{shown(across, quilt)} × {shown(down, quilt)}"
