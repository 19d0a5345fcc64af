"""Every unit is the sum of its parts: they fill it, and each is as big as it is made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.boxes import NOUGHT, Whole, whole
from patternbook.proof.chains import fitted
from patternbook.proof.evidence import Evidence
from patternbook.proof.laid import finished, frame, laid, shaped
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.shapes import area
from patternbook.quilt.place import around
from patternbook.quilt.records import PiecedMade, Placed, Quilt, Sides, Unit

HINT = "Check the cells of the unit, and the sizes of its parts."
APPLIQUE = "Make the shape smaller, or the unit that it is sewn to larger."


def grid(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a unit is not filled by its parts, or a part lies in a size it has not."""
    quilt = evidence.quilt
    for unit in quilt.units.values():
        flat = [part for part in unit.placed if not part.laid_on]
        if any(map(shaped, flat)):
            yield from _fitted(quilt, unit, flat)
        elif flat:
            boxes = whole([*(part[2:6] for part in flat), (NOUGHT, NOUGHT, *unit.finished)])
            yield from _filled(quilt, unit, flat, boxes)
        yield from _as_made(quilt, unit)
        yield from _laid_on(quilt, unit)
    top = quilt.units.get(quilt.top or "")
    if top is not None and top.finished != quilt.finished:
        made = _size(top.finished, quilt)
        message = f"the top is {made} finished, the quilt {_size(quilt.finished, quilt)}."
        yield recounted(quilt, "quilt-size", "R8", message, top.place)


def _filled(quilt: Quilt, unit: Unit, flat: Sequence[Placed], numbers: Whole) -> Iterator[Notice]:
    *boxes, edge = numbers.boxes
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    reached = (min(lefts), min(tops), max(rights), max(bottoms))
    covered, has = _area(flat, numbers), unit.finished.across * unit.finished.down
    if reached != edge or covered != has:
        yield _not_filled(quilt, unit, len(flat), covered, has)


def _fitted(quilt: Quilt, unit: Unit, flat: Sequence[Placed]) -> Iterator[Notice]:
    """Where a part is no upright rectangle, edge must lie on edge."""
    outlines = [laid(quilt, part) for part in flat]
    edge = frame(unit, unit.finished)
    found = fitted(outlines, edge)
    if found.filled and around(edge) == (NOUGHT, NOUGHT, *unit.finished):
        return
    covered, has = sum((area(outline) for outline in outlines), NOUGHT), area(edge)
    message = None
    if found.faulty:
        part = flat[found.faulty[0]]
        message = f"'{unit.name}': the edges of {part.part} cross, or run the wrong way round."
    elif found.filled:
        message = (
            f"'{unit.name}' finishes {_size(unit.finished, quilt)}; its edge is "
            f"{_size(Sides(*around(edge)[2:]), quilt)}."
        )
    elif found.loose[0].curved or covered == has:
        x, y = found.loose[0].middle
        message = (
            f"'{unit.name}' finishes {_size(unit.finished, quilt)}; at {x:.2f} across, {y:.2f} "
            "down, its parts lie over one another or leave a gap."
        )
    if message is None:
        yield _not_filled(quilt, unit, len(flat), covered, has)
    else:
        yield recounted(quilt, "unit-filled", "R8", message, unit.place, hint=HINT)


def _not_filled(quilt: Quilt, unit: Unit, parts: int, covered: Exact, has: Exact) -> Notice:
    message = (
        f"'{unit.name}' finishes {_size(unit.finished, quilt)}; its {parts} parts cover "
        f"{shown(covered, quilt)} in area, it has {shown(has, quilt)}."
    )
    return recounted(quilt, "unit-filled", "R8", message, unit.place, hint=HINT)


def _area(flat: Sequence[Placed], numbers: Whole) -> Exact:
    """The areas of rectangles added up."""
    if numbers.scale is None:
        return sum((part.across * part.down for part in flat), NOUGHT)
    *boxes, _ = numbers.boxes
    squares = sum((right - left) * (bottom - top) for left, top, right, bottom in boxes)
    return Exact(Fraction(squares, numbers.scale**2))


def _as_made(quilt: Quilt, unit: Unit) -> Iterator[Notice]:
    """Each part once: as it lies it has the sides that it is made with."""
    different = {
        (part.part, part.turn.eighths, part.across, part.down): part
        for part in unit.placed
        if part.outline is None
    }
    for part in different.values():
        made = finished(quilt, part.part)
        if made is None or _agrees(quilt, unit, part, made):
            continue
        lies = Sides(part.across, part.down)
        message = (
            f"{part.part} lies {_size(lies, quilt)} in '{unit.name}', but it is made "
            f"{_size(made, quilt)} finished."
        )
        places = (part_place(quilt, part.part), unit.place)
        yield recounted(quilt, "part-size", "R8", message, *places, hint=HINT)


def _agrees(quilt: Quilt, unit: Unit, part: Placed, made: Sides) -> bool:
    if part.turn.on_point:
        return around(laid(quilt, part))[2:] == (part.across, part.down)
    across, down = (part.down, part.across) if part.turn.sideways else (part.across, part.down)
    piece = quilt.pieces.get(part.part)
    if isinstance(unit.made, PiecedMade) and (unit.made.gives > 1 or unit.made.before):
        # It is cut apart or trimmed, and so is what it was sewn from.
        return across <= made.across and (piece is None or piece.is_strip or down <= made.down)
    if piece is not None and piece.is_strip:
        return across == made.across
    return (across, down) == made


def _laid_on(quilt: Quilt, unit: Unit) -> Iterator[Notice]:
    """What lies on other patches lies inside its unit."""
    for part in unit.placed:
        right, low = part.x + part.across, part.y + part.down
        inside = part.x >= 0 and part.y >= 0
        if part.laid_on and not (
            inside and right <= unit.finished.across and low <= unit.finished.down
        ):
            message = (
                f"{part.part} reaches from {shown(part.x, quilt)} to {shown(right, quilt)} "
                f"across and from {shown(part.y, quilt)} to {shown(low, quilt)} down; "
                f"'{unit.name}' finishes {_size(unit.finished, quilt)}."
            )
            places = (unit.place, part_place(quilt, part.part))
            yield recounted(quilt, "shape-beyond", "R8", message, *places, hint=APPLIQUE)


def _size(sides: Sides | None, quilt: Quilt) -> str:
    across, down = sides or (Fraction(0), Fraction(0))
    return f"{shown(across, quilt)} × {shown(down, quilt)}"
