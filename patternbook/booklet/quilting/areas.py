"""The areas: how many of each letter, what they are, their design, how far apart, which foot."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table
from patternbook.booklet.quilting.measures import spread
from patternbook.inch import System
from patternbook.quilting.records import Area, AreaKind, Filled, QuiltingPlan

KINDS: Final[dict[AreaKind, str]] = {
    "ground": "open ground",
    "square": "plain square",
    "band": "open band",
    "corner": "open corner",
    "channel": "channel",
    "border": "border",
    "piecing": "piecing",
    "figure": "figure laid on",
    "body": "the top within its borders",
}
HEAD: Final = ("Letter", "How many", "What it is", "Design", "Lines apart", "Foot", "Seams in it")
OPEN: Final = "left open"
MEASURED: Final = 10  # units: the side of the square that seams are counted in


def areas_table(plan: QuiltingPlan, system: System) -> Table:
    """A row for each letter."""
    rows = tuple(_row(plan, letter, system) for letter in plan.letters)
    align: tuple[Align, ...] = ("number", "words", "words", "number", "words", "number")
    return Table("", HEAD, rows, align)


def _row(plan: QuiltingPlan, letter: str, system: System) -> Row:
    areas = of_letter(plan, letter)
    fills = filled(plan, letter)
    if not fills:
        cells = OPEN, wording.NONE, wording.NONE
    else:
        apart = spread([one.drawn.spacing for one in fills if one.drawn.paths], system)
        cells = fills[0].design, apart, fills[0].foot
    what = KINDS[areas[0].kind]
    name = next((area.name for area in areas if area.name), None)
    told = f"{name} ({what})" if name else what
    return Row(letter, (str(len(areas)), told, *cells, seams_in(areas, system)))


def of_letter(plan: QuiltingPlan, letter: str) -> tuple[Area, ...]:
    """The areas of a letter."""
    return tuple(area for area in plan.divided.areas if area.letter == letter)


def filled(plan: QuiltingPlan, letter: str) -> tuple[Filled, ...]:
    """The areas of a letter that have a design."""
    return tuple(one for one in plan.fills if one.area.letter == letter)


def busy(areas: tuple[Area, ...]) -> float:
    """How long the seams are in a square unit, all these areas taken together."""
    size = sum(float(area.shape.area) for area in areas)
    return sum(area.piecing * float(area.shape.area) for area in areas) / size if size else 0.0


def seams_in(areas: tuple[Area, ...], system: System) -> str:
    """How long the seams are in a square of ten by ten: `40″`."""
    long = round(busy(areas) * MEASURED * MEASURED)
    return f"{long}{wording.glued(system.mark)}" if long else "none"


def why(plan: QuiltingPlan, system: System) -> Iterator[str]:
    """Why these designs, by what is measured."""
    square = f"{MEASURED}{wording.glued(system.mark)} square"
    yield (
        "Busy piecing gets plain quilting, and plain piecing gets the designs worth looking at: "
        "stitches get lost among seams and show on open ground. “Seams in it” says how long the "
        f"seams are in a {square}."
    )
    found = [(letter, busy(of_letter(plan, letter))) for letter in plan.letters]
    plainest = min(found, key=lambda one: one[1])
    busiest = max(found, key=lambda one: one[1])
    if busiest[1] > plainest[1] and filled(plan, busiest[0]) and filled(plan, plainest[0]):
        one, other = (filled(plan, found[0])[0].design for found in (plainest, busiest))
        has = f" and has {one}" if one != other else ""
        yield (
            f"{plainest[0]} is the plainest ({_in(plan, plainest[0], system)}){has}; "
            f"{busiest[0]} is the busiest ({_in(plan, busiest[0], system)})"
            + (f" and has {other}." if one != other else f"; {one} suit both.")
        )


def _in(plan: QuiltingPlan, letter: str, system: System) -> str:
    told = seams_in(of_letter(plan, letter), system)
    return "no seams in it" if told == "none" else f"{told} of seams"
