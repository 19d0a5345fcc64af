"""A quilting plan laid by hand: two squares of 10 × 20 and a border of 2 below, left open.

   0        10        20
 0 +---------+---------+     P 1 and P 2: ten lines each, 2 apart, the first 1 from the edge,
   |   P 1   |   P 2   |     half an inch free at the finished edge, a quarter at the seam
20 +---------+---------+
   |  border, excluded |     the seams are stitched first, each by itself
22 +-------------------+
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache

import shapely

from patternbook.inch import INCHES, System
from patternbook.quilt.records import Quilt, Settings
from patternbook.quilting.gap import widest
from patternbook.quilting.records import (
    AnchorLine,
    Area,
    Divided,
    Drawn,
    Filled,
    Leg,
    Path,
    QuiltingPlan,
    Rules,
    Seam,
    Stage,
    Sums,
    Top,
    Walk,
    Wishes,
)

DOWN: Path = ((10, 0), (10, 20))
ACROSS: Path = ((0, 20), (20, 20))
# Of a design: 10 lines of 9¼ and 9 turns of 2.
DESIGN = 10 * 9.25 + 9 * 2
# The two seams; then down 1 on the seam again, in by ¼, the first design, out again, 1 + 1 on the
# seam below, the second design, and up 1 to the edge.
ANCHOR = 20 + 20
FILLS = 1 + 0.25 + DESIGN + 0.25 + 0.25 + DESIGN + 0.25 + 1
# Doubles: 1 at the upper end of the seam, twice over.
DOUBLES = 1 + 1


def quilt(system: System = INCHES) -> Quilt:
    """Nothing of it counts but its size and its measures."""
    return Quilt(
        "crib",
        system,
        system.seam,
        system.width,
        None,
        {},
        {},
        {},
        None,
        None,
        None,
        None,
        (),
        Settings(),
        {},
    )


def lines(left: float, right: float, back: bool) -> Path:
    """Lines across, joined at their ends; the first goes from right to left, or `back`."""
    found: list[tuple[float, float]] = []
    for number in range(10):
        y = 2.0 * number + 1
        row = [(right, y), (left, y)]
        found += row if (number % 2 == 0) is not back else row[::-1]
    return tuple(found)


FIRST = lines(0.5, 9.75, False)
SECOND = lines(10.25, 19.5, True)[::-1]
RULES = Rules(1.0, 0.125, 0.5, 0.25, 0.25)


def top() -> Top:
    edge = shapely.box(0, 0, 20, 22)
    seams = (Seam(DOWN, (0, 1), 1, False, False), Seam(ACROSS, (0, 2), 1, False, True))
    return Top(RULES, edge, shapely.box(0, 0, 20, 20), (), seams, ())


LEFT = Area("P", 1, "ground", shapely.box(0, 0, 10, 20), 0.0)
RIGHT = Area("P", 2, "ground", shapely.box(10, 0, 20, 20), 0.0)
BORDER = Area("Q", 1, "border", shapely.box(0, 20, 20, 22), 0.0, excluded=True)


def fill(area: Area, path: Path) -> Filled:
    return Filled(area, "straight lines", "walking foot", Drawn((path,), 2.0), 2.0, DESIGN / 200)


def legs() -> tuple[Leg, ...]:
    return (
        Leg("ditch", ((10, 0), (10, 1)), again=True),
        Leg("step", ((10, 1), (9.75, 1))),
        Leg("fill", FIRST, "P 1"),
        Leg("step", ((9.75, 19), (10, 19))),
        Leg("step", ((10, 19), (10.25, 19))),
        Leg("fill", SECOND, "P 2"),
        Leg("step", ((10.25, 1), (10, 1))),
        Leg("ditch", ((10, 1), (10, 0)), again=True),
    )


def stages() -> tuple[Stage, ...]:
    anchor = (Walk((Leg("ditch", ACROSS),)), Walk((Leg("ditch", DOWN),)))
    return (
        Stage("anchor", "walking foot", anchor, 40.0, 0.0, 0.0, True),
        Stage("lines", "walking foot", (Walk(legs()),), 2 * DESIGN, FILLS - 2 * DESIGN),
    )


def thread(length: float, starts: int) -> float:
    """Yards of one thread: 2 + 2 × 0.04 × 10 = 2.8 inches an inch for both, 14 at each end."""
    return (length * 2.8 + starts * 28) * 1.15 / 36 / 2


@cache
def plan() -> QuiltingPlan:
    whole = ANCHOR + FILLS
    each = thread(whole, 3)
    sums = Sums(
        stitched=whole,
        once=whole - DOUBLES,
        passes={1: whole - DOUBLES - 1, 3: 1},
        starts=3,
        bobbins=1,
        changes=(),
        thread_top=each,
        thread_bobbin=each,
        hours=(0.5, 1.0),
        evenness=0.0,
    )
    laid = top()
    made = stages()
    stitched = [leg.path for stage in made for walk in stage.walks for leg in walk.legs]
    return QuiltingPlan(
        laid,
        Wishes("walking foot", 3.0, True),
        Divided((LEFT, RIGHT, BORDER), ()),
        (fill(LEFT, FIRST), fill(RIGHT, SECOND)),
        (AnchorLine(ACROSS, "ditch", True), AnchorLine(DOWN, "ditch")),
        made,
        widest(stitched, laid.edge, rim=True),
        widest(stitched, laid.edge, rim=False),
        sums,
        {},
    )


def with_legs(made: QuiltingPlan, change: Callable[[int, Leg], Iterator[Leg]]) -> QuiltingPlan:
    """The plan with the legs of its last walk changed, each by its number."""
    last = made.stages[-1]
    found = [one for number, leg in enumerate(last.walks[0].legs) for one in change(number, leg)]
    return replace(made, stages=(*made.stages[:-1], replace(last, walks=(Walk(tuple(found)),))))


def with_leg(made: QuiltingPlan, which: int, *others: Leg) -> QuiltingPlan:
    """The plan with one leg of its last walk replaced."""
    return with_legs(made, lambda number, leg: iter(others if number == which else (leg,)))
