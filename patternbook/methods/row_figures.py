"""Figures beside a layout's rows that say which of two that differ is the right one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from patternbook.exact import Exact
from patternbook.methods.cells import Laid
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.world import World, here
from patternbook.notice import Place


def stated_side(
    name: str, unit: WrittenLayout, way: Literal["across", "down"], columns: bool, world: World
) -> Exact | None:
    """How long the rows (across) or all of them together (down) are said to be, before any
    borders; columns are rows with the sides changed."""
    sides = ("down", "across") if columns else ("across", "down")
    axis = sides[("across", "down").index(way)]
    if here(unit.borders, world.size):
        stated, seams = here(unit.before_borders, world.size), 2
    else:
        stated, seams = world.wanted(name), 0
        if stated is None:
            stated, seams = here(unit.measure, world.size), 2
    seam = world.known(world.seam)
    if stated is None or seam is None:
        return None
    return Exact(getattr(stated, axis)) - seam * seams


def template_place(part: str, world: World) -> Place | None:
    """Where the figures of a part's template stand, if it has one."""
    if world.template(part) is None:
        return None
    places = (world.place_of(part, key) for key in ("outline", "side", "radius"))
    return next((place for place in places if place), None)


def sole_template(line: Sequence[Laid], world: World) -> Place | None:
    """Where the figures of a template stand that is a row alone."""
    return template_place(line[0].part, world) if len(line) == 1 else None
