"""How a part lies in its unit: the seam lines around it, whichever way it is turned."""

from __future__ import annotations

from patternbook.methods.made import Outline
from patternbook.proof.boxes import NOUGHT
from patternbook.quilt.place import oblong, shifted, turned_outline
from patternbook.quilt.records import LayoutMade, Placed, Quilt, Sides, Unit


def finished(quilt: Quilt, part: str) -> Sides | None:
    """What a part finishes as it is made; None where nothing is known of it."""
    found = quilt.pieces.get(part) or quilt.units.get(part)
    return found.finished if found else None


def laid(quilt: Quilt, part: Placed) -> Outline:
    """The seam lines around a part. One that is set on point, of which the place tells the box
    around it alone, has the sides that it is made with."""
    made = finished(quilt, part.part)
    if part.outline is not None:
        return part.outline
    if not part.turn.on_point or made is None:
        return oblong(part.x, part.y, part.across, part.down)
    return shifted(turned_outline(oblong(NOUGHT, NOUGHT, *made), *made, part.turn), part.x, part.y)


def shaped(part: Placed) -> bool:
    """Whether its box is not all that there is to it."""
    return part.outline is not None or part.turn.on_point


def frame(unit: Unit | None, sides: Sides) -> Outline:
    """The edge that a unit's parts must fill: the whole rectangle, but for a layout with an edge
    of its own."""
    edge = unit.made.edge if unit and isinstance(unit.made, LayoutMade) else None
    return edge or oblong(NOUGHT, NOUGHT, *sides)
