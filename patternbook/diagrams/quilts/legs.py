"""A stage of the plan cut into panels: so few numbered legs in each that they can be followed."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from shapely import MultiLineString, Point

from patternbook.diagrams.quilts.paths import Box, joined, straights
from patternbook.quilting.records import Leg, Path, QuiltingPlan, Spot, Stage, measured

FEW: Final = {"anchor": 12}  # numbered legs of a panel, at most
MANY: Final = 16  # areas of a panel
LINES: Final = 30  # lines of one area in a panel; not all of them show their numbers
SEVERAL: Final = 6  # an area in more lines than this has a number for each of them
AROUND: Final = 2.0  # inches of the top that are shown around a part of it
SLIM: Final = 0.7  # of its height: what a window is wide at least, so that one sees where it is
FLAT: Final = 0.4  # of its width: what it is high at least
PART: Final = 0.67  # of a side: a panel about less than this shows but that part
SHORTEST: Final = 4.0  # inches: what has a number of its own


class Piece(NamedTuple):
    """What is stitched under one number: a straight part of a leg, or all of one area. What only
    leads on has no number: over lines that are stitched already, or along the edge."""

    legs: tuple[Leg, ...]
    number: int = 0
    line: bool = False  # one line of an area of many, each with a number of its own

    @property
    def path(self) -> Path:
        return joined([leg.path for leg in self.legs])

    @property
    def area(self) -> str:
        """The key of the area that it fills whole, if any."""
        filled = not self.line and any(leg.kind == "fill" for leg in self.legs)
        return self.legs[0].area if filled else ""


class Run(NamedTuple):
    """What a panel shows of one walk; `starts` and `stops` where the needle does so in it."""

    walk: int
    pieces: tuple[Piece, ...]
    starts: bool
    stops: bool

    @property
    def start(self) -> Spot:
        return self.pieces[0].legs[0].path[0]

    @property
    def end(self) -> Spot:
        return self.pieces[-1].legs[-1].path[-1]


@dataclass(frozen=True)
class Panel:
    """One picture of a stage: `number` among the `panels` of the stage; `stage` from 0; `walks` is
    how many threads the stage has; `before` are the pieces of earlier panels, `changes` the places
    for a new bobbin."""

    stage: int
    number: int
    panels: int
    walks: int
    runs: tuple[Run, ...]
    before: tuple[Piece, ...]
    changes: tuple[Spot, ...] = ()

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """All that it shows of this stage's own."""
        return tuple(piece for run in self.runs for piece in run.pieces)

    @property
    def shown(self) -> frozenset[int]:
        """The numbers that are written: of many lines the first, the last, and some between."""
        numbers = self.numbers
        if not any(piece.line for piece in self.pieces) or len(numbers) <= MANY:
            return frozenset(numbers)
        every = math.ceil(len(numbers) / MANY)
        return frozenset((*numbers[::every], numbers[-1]))

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers that it shows."""
        return tuple(piece.number for piece in self.pieces if piece.number)


def window(plan: QuiltingPlan, panel: Panel) -> Box:
    """What a panel shows of the top: all of it, or the part that it is about."""
    left, top, right, low = plan.top.edge.bounds
    spots = [spot for piece in panel.pieces for leg in piece.legs for spot in leg.path]
    around = AROUND * plan.top.rules.inch
    xs, ys = zip(*spots, strict=True)
    x0, x1 = max(left, min(xs) - around), min(right, max(xs) + around)
    y0, y1 = max(top, min(ys) - around), min(low, max(ys) + around)
    x0, x1 = _widened(x0, x1, SLIM * (y1 - y0), (left, right))
    y0, y1 = _widened(y0, y1, FLAT * (x1 - x0), (top, low))
    return x0, y0, x1, y1


def _widened(start: float, end: float, least: float, side: tuple[float, float]) -> Spot:
    """At least so wide, and the whole side where it is most of that."""
    short = max(0.0, least - (end - start)) / 2
    start, end = start - short, end + short
    shift = max(0.0, side[0] - start) - max(0.0, end - side[1])
    start, end = max(side[0], start + shift), min(side[1], end + shift)
    return side if end - start > PART * (side[1] - side[0]) else (start, end)


def panels(plan: QuiltingPlan) -> tuple[tuple[Panel, ...], ...]:
    """The panels of every stage."""
    return tuple(
        _with_changes(plan, tuple(_panels(number, stage, plan.top.rules.inch)))
        for number, stage in enumerate(plan.stages)
    )


def _with_changes(plan: QuiltingPlan, found: tuple[Panel, ...]) -> tuple[Panel, ...]:
    """Every change of the bobbin in the panel that goes through its place, or nearest by."""
    spots: dict[int, tuple[Spot, ...]] = {}
    for change in plan.sums.changes:
        ways = [
            (at, MultiLineString([piece.path for piece in run.pieces]))
            for at, panel in enumerate(found)
            for run in panel.runs
            if panel.stage == change.stage and run.walk == change.walk
        ]
        if ways:
            place = Point(change.at)
            at, _ = min(ways, key=lambda way: round(float(way[1].distance(place)), 6))
            spots[at] = (*spots.get(at, ()), change.at)
    return tuple(replace(panel, changes=spots.get(at, ())) for at, panel in enumerate(found))


def _panels(number: int, stage: Stage, inch: float) -> Iterator[Panel]:
    walks = tuple(_numbered(stage, inch))
    total = sum(1 for walk in walks for piece in walk if piece.number)
    many = LINES if any(piece.line for walk in walks for piece in walk) else MANY
    parts = max(1, math.ceil(total / FEW.get(stage.name, many)))
    groups = tuple(_grouped(walks, math.ceil(total / parts) if total else 1))
    before: tuple[Piece, ...] = ()
    for at, runs in enumerate(groups, start=1):
        yield Panel(number, at, len(groups), len(walks), runs, before)
        before += tuple(piece for run in runs for piece in run.pieces)


def _numbered(stage: Stage, inch: float) -> Iterator[tuple[Piece, ...]]:
    """Every walk in pieces; the numbers run on from walk to walk. Where designs are sewn, all
    that is not a design only leads on."""
    number = 0
    anchor = stage.name == "anchor"
    lined = _lined(stage)
    for walk in stage.walks:
        pieces: list[Piece] = []
        for legs in _parts(walk.legs, SHORTEST * inch, lined):
            leads_on = all(_leads_on(leg, anchor=anchor) for leg in legs)
            number += not leads_on
            line = not leads_on and legs[0].area in lined
            pieces.append(Piece(legs, 0 if leads_on else number, line))
        if pieces:
            yield tuple(pieces)


def _leads_on(leg: Leg, *, anchor: bool) -> bool:
    return leg.again or (leg.kind in {"edge", "step"} if anchor else leg.kind != "fill")


def _lined(stage: Stage) -> frozenset[str]:
    """The one area of a stage whose lines are told one by one."""
    fills = [leg.area for walk in stage.walks for leg in walk.legs if leg.kind == "fill"]
    return frozenset(fills) if len(set(fills)) == 1 and len(fills) > SEVERAL else frozenset()


def _parts(
    legs: Iterable[Leg], shortest: float, lined: frozenset[str]
) -> Iterator[tuple[Leg, ...]]:
    """An area whole, with its own turns and ways; all else in its straight parts."""
    real = [leg for leg in legs if len(leg.path) > 1 and measured(leg.path)]
    at = 0
    while at < len(real):
        end = at if real[at].area in lined else _area_ends(real, at)
        if end > at:
            yield tuple(real[at:end])
            at = end
            continue
        leg = real[at]
        parts = (leg.path,) if leg.again or leg.area else straights(leg.path, shortest)
        yield from ((leg._replace(path=part),) for part in parts)
        at += 1


def _area_ends(legs: Sequence[Leg], at: int) -> int:
    """Where the area that begins here is done: behind the last of its legs before another's."""
    area, end = legs[at].area, at
    if not area or legs[at].again or legs[at].kind not in {"fill", "edge"}:
        return at
    for number in range(at, len(legs)):
        leg = legs[number]
        if leg.kind == "fill" and leg.area != area:
            break
        if leg.area == area and leg.kind in {"fill", "edge"} and not leg.again:
            end = number + 1
    return end


def _grouped(walks: Sequence[tuple[Piece, ...]], most: int) -> Iterator[tuple[Run, ...]]:
    """So many numbers to a panel; what leads on to a number goes with it."""
    held: list[Run] = []
    count = 0
    for number, walk in enumerate(walks):
        start = 0
        for at, piece in enumerate(walk):
            if piece.number and count == most:
                cut = _lead(walk, at, start)
                if cut > start:
                    held.append(Run(number, walk[start:cut], start == 0, stops=False))
                yield tuple(held)
                held, count, start = [], 0, cut
            count += bool(piece.number)
        held.append(Run(number, walk[start:], start == 0, stops=True))
    if held:
        yield tuple(held)


def _lead(walk: Sequence[Piece], at: int, start: int) -> int:
    """Where the way begins that leads to a numbered piece."""
    while at > start and not walk[at - 1].number:
        at -= 1
    return at
