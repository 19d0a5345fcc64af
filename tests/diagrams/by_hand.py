"""Units written by hand as a method leaves them, put into a demonstration pattern to be drawn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from patternbook.cutting.records import CuttingPlan
from patternbook.diagrams.pattern import Size
from patternbook.exact import Exact
from patternbook.methods.made import (
    Action,
    Arc,
    Outline,
    PiecedMade,
    Placed,
    SewnSeam,
    Sides,
    Spot,
    Turn,
)
from patternbook.quilt.place import Patch
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import Quilt, Unit
from patternbook.sewing.records import SewingPlan
from tests.diagrams.drawn import DEMOS, pattern_of

Number = int | Fraction


@dataclass(frozen=True)
class Planned:
    """The plans of a size."""

    quilt: Quilt
    patches: tuple[Patch, ...]
    cutting: CuttingPlan
    sewing: SewingPlan
    quilting: None = None


def spot(x: Number, y: Number) -> Spot:
    return Spot(Exact.of(x), Exact.of(y))


def patch(
    letter: str,
    *corners: tuple[Number, Number],
    arcs: Sequence[tuple[int, tuple[Number, Number], Number, bool]] = (),
    laid_on: bool = False,
) -> Placed:
    """A piece by its corners, clockwise; arcs as edge, centre, radius, hollow."""
    xs, ys = zip(*corners, strict=True)
    round_ = tuple(
        Arc(edge, spot(*at), Exact.of(radius), hollow) for edge, at, radius, hollow in arcs
    )
    outline = Outline(tuple(spot(*corner) for corner in corners), round_)
    plain = square(letter, min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
    return plain._replace(outline=outline, laid_on=laid_on)


def square(letter: str, x: Number, y: Number, across: Number, down: Number) -> Placed:
    return Placed(letter, Turn(), Exact.of(x), Exact.of(y), Exact.of(across), Exact.of(down))


def seam(
    start: tuple[Number, Number],
    end: tuple[Number, Number],
    one: int,
    other: int,
    toward: int | None,
) -> SewnSeam:
    return SewnSeam(spot(*start), spot(*end), (one, other), toward)


def unit(
    across: int,
    down: int,
    placed: Sequence[Placed],
    seams: Sequence[SewnSeam] = (),
    actions: Sequence[Action] = (),
) -> Unit:
    """A unit called `trial`."""
    finished = Sides(Exact.of(across), Exact.of(down))
    half = Fraction(1, 2)
    made = PiecedMade(
        word="trial",
        gives=1,
        goes=1,
        takes=(),
        actions=tuple(actions),
        before=None,
        seams=tuple(seams),
        stitched=len(seams),
        sewn=Exact.of(0),
    )
    return Unit(
        name="trial",
        method="trial",
        finished=finished,
        measure=Sides(finished.across + half, finished.down + half),
        make=1,
        placed=tuple(placed),
        uses={},
        made=made,
    )


def size_with(*units: Unit) -> Size:
    """A size of a demonstration pattern that has these units too."""
    size = pattern_of(DEMOS[1]).first
    plans = size.plans
    quilt = replace(plans.quilt, units={**plans.quilt.units, **{one.name: one for one in units}})
    pressing = {
        one.name: PressingPlan(one.name, (), (), tuple(seam.toward for seam in one.made.seams))
        for one in units
        if isinstance(one.made, PiecedMade)
    }
    sewing = replace(plans.sewing, pressing={**plans.sewing.pressing, **pressing})
    return replace(size, plans=Planned(quilt, plans.patches, plans.cutting, sewing))
