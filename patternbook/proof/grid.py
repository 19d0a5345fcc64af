"""Every unit is the sum of its parts: they fill it, and each is as big as it is made."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.boxes import whole
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.quilt.records import Placed, Quilt, Sides, Unit

HINT = "Check the cells of the unit, and the sizes of its parts."


def grid(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a unit is not filled by its parts, or a part lies in a size it has not."""
    quilt = evidence.quilt
    for unit in quilt.units.values():
        yield from _filled(quilt, unit)
        yield from _as_made(quilt, unit)
    top = quilt.units.get(quilt.top or "")
    if top is not None and top.finished != quilt.finished:
        made = _size(top.finished, quilt)
        message = f"the top is {made} finished, the quilt {_size(quilt.finished, quilt)}."
        yield recounted(quilt, "quilt-size", "R8", message, top.place)


def _filled(quilt: Quilt, unit: Unit) -> Iterator[Notice]:
    if not unit.placed:
        return
    nought = Exact(0)
    *boxes, frame = whole([*(p[2:] for p in unit.placed), (nought, nought, *unit.finished)]).boxes
    reached = (
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )
    covered = _area(unit)
    if reached != frame or covered != unit.finished.across * unit.finished.down:
        message = (
            f"'{unit.name}' finishes {_size(unit.finished, quilt)}; its {len(unit.placed)} parts "
            f"cover {shown(covered, quilt)} in area, it has "
            f"{shown(unit.finished.across * unit.finished.down, quilt)}."
        )
        yield recounted(quilt, "unit-filled", "R8", message, unit.place, hint=HINT)


def _area(unit: Unit) -> Exact:
    """The areas of the parts, those of one size multiplied once."""
    sizes: dict[tuple[Exact, Exact], int] = {}
    for part in unit.placed:
        sizes[part[4:]] = sizes.get(part[4:], 0) + 1
    return sum((wide * high * times for (wide, high), times in sizes.items()), Exact(0))


def _as_made(quilt: Quilt, unit: Unit) -> Iterator[Notice]:
    """Each part once: as it lies it has the sides that it is made with."""
    for part in {(part.part, part.turn.sideways, part[4:]): part for part in unit.placed}.values():
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
