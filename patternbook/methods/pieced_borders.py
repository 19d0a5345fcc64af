"""Borders that are units: what they are repeated from, and the edges that they fit."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import printed
from patternbook.methods.made import Turn
from patternbook.methods.rows import Grid
from patternbook.methods.world import World

ONE: Final = Fraction(1)


class Repeat(NamedTuple):
    """A unit that is one part again and again: the part, how often, and how long each is."""

    part: str
    times: int
    each: Exact


def repeat(unit: str, way: Literal["across", "down"], world: World) -> Repeat | None:
    """What a border is repeated from along its length; None where its parts differ."""
    if not world.is_unit(unit):
        return None
    world.span(unit, Turn(), None)
    grid = world.kept(unit, _nothing)
    if not isinstance(grid, Grid) or not grid.lines or grid.frame is not None:
        return None
    along = "down" if grid.columns else "across"
    cells = grid.lines[0] if along == way else tuple(line[0] for line in grid.lines)
    if len({(cell.part, cell.turn.sideways) for cell in cells}) != 1:
        return None
    span = world.span(cells[0].part, cells[0].turn, cells[0].place)
    return Repeat(cells[0].part, len(cells), world.length(getattr(span, way)))


def _nothing() -> object:
    """Of a unit that keeps no rows."""
    return None


def told(number: int, word: str, unit: str, repeated: Repeat, edge: Exact) -> str:
    """The sum, and the nearest edges that would do."""
    part, times, each = repeated
    fewer, more = (edge / each).down(ONE), (edge / each).up(ONE)
    fit = f"{printed(each * fewer)} ({printed(fewer)} {part})" if fewer else ""
    larger = f"{printed(each * more)} ({printed(more)} {part})" if more != fewer else ""
    nearest = " or ".join(filter(None, (fit, larger)))
    return (
        f"the {word} of border {number} are {unit}: {times} {part} of {printed(each)} = "
        f"{printed(each * times)} finished; the edge is {printed(edge)}. Edges that it fits: "
        f"{nearest}. A plain strip round the inside can make up the difference."
    )
