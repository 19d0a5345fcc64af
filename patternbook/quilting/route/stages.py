"""The stages after the anchor: lines, free motion, and the border last."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from patternbook.quilting.passes import once
from patternbook.quilting.records import (
    AnchorLine,
    Filled,
    Foot,
    Path,
    Spot,
    Stage,
    Top,
    Walk,
    measured,
)
from patternbook.quilting.route.graph import AGAIN
from patternbook.quilting.route.hosts import hosted
from patternbook.quilting.route.lines import travelled
from patternbook.quilting.route.network import Network, lost, network
from patternbook.quilting.route.order import EXACT, Worth
from patternbook.quilting.route.pieces import Piece, pieces
from patternbook.quilting.route.walks import Sewing
from patternbook.quilting.sums import per_bobbin

# A new start takes about three minutes with its ends buried: as long as this much stitching, in
# inches (a judgement). One whose ends lie at the edge of the quilt needs no burying.
START: Final = 90.0
INSIDE: Final = 12.0
PLACES: Final = 8  # where a closed path can be entered; half of it where there are many
MORE: Final = 2  # starts more than bobbins
RETRACED: Final = 0.125  # of all that is stitched, and no more: thread builds up
SELDOM: Final = 3.5  # times as dear a line is after each pass, where there is more
DEARER: Final = (1, 3, 9)  # times what a start is worth, where there are too many
Name = Literal["lines", "free motion", "border"]
Group = tuple[Name, Foot, tuple[Filled, ...]]
FEET: Final[tuple[Foot, ...]] = ("walking foot", "ruler", "free motion")


def fill_stages(
    top: Top, lines: Sequence[AnchorLine], anchor: Stage | None, fills: Sequence[Filled]
) -> tuple[Stage, ...]:
    """The fills as stages, each in as few walks as can be: no more starts than bobbins and two,
    wherever dearer starts, or a border sewn with what has the same foot, make that come true; and
    no more than an eighth stitched again, wherever another way round makes that."""
    found = pieces(fills)
    if not found:
        return ()
    found, net = _network(top, lines, fills, found)
    trial = Trial(top, found, net, anchor.walks if anchor else ())
    stages, groups, dearer = _few_starts(trial, fills)
    if trial.retraced(stages) > RETRACED:
        again = trial.sewn(groups, dearer, SELDOM)
        if trial.spare(again) >= min(0, trial.spare(stages)):
            return min(stages, again, key=trial.retraced)
    return stages


def _few_starts(
    trial: Trial, fills: Sequence[Filled]
) -> tuple[tuple[Stage, ...], tuple[Group, ...], int]:
    """The stages in which there are few enough starts, or the fewest; how they are grouped, and
    how many times what it is a start is worth in them."""
    tried = []
    for groups in _ways_to_group(fills):
        for dearer in DEARER:
            stages = trial.sewn(groups, dearer, AGAIN)
            tried.append((stages, groups, dearer))
            if trial.spare(stages) >= 0:
                return tried[-1]
            if all(len(stage.walks) == 1 for stage in stages):
                break
    return max(tried, key=lambda one: trial.spare(one[0]))


@dataclass(frozen=True)
class Trial:
    """The fills of a top, to be sewn in this way and that; `before`: what was sewn already."""

    top: Top
    found: tuple[Piece, ...]
    net: Network
    before: tuple[Walk, ...]

    def sewn(self, groups: Sequence[Group], dearer: int, again: float) -> tuple[Stage, ...]:
        """The stages, where a start is worth so many times what it is, and each pass over a line
        makes the next so many times as dear."""
        inch = self.top.rules.inch
        self.net.graph.unpick(again)
        sewing = Sewing(self.net, self.found, Worth(START * dearer * inch, INSIDE * inch))
        sewing.remember(self.before)
        return _stages(self.top, sewing, groups)

    def _paths(self, stages: Sequence[Stage]) -> list[Path]:
        walks = [*self.before, *(walk for stage in stages for walk in stage.walks)]
        return [leg.path for walk in walks for leg in walk.legs]

    def spare(self, stages: Sequence[Stage]) -> int:
        """How many more starts there could be: two more than bobbins."""
        starts = len(self.before) + sum(len(stage.walks) for stage in stages)
        long = sum(measured(path) for path in self._paths(stages))
        return math.ceil(long / per_bobbin(self.top)) + MORE - starts

    def retraced(self, stages: Sequence[Stage]) -> float:
        """The share that is stitched again."""
        paths = self._paths(stages)
        long = sum(measured(path) for path in paths)
        return round(1 - once(paths) / long, 6) if long else 0.0


def _stages(top: Top, sewing: Sewing, groups: Sequence[Group]) -> tuple[Stage, ...]:
    corner: Spot = top.edge.bounds[0], top.edge.bounds[1]
    stages = []
    for name, foot, those in groups:
        walks = sewing.walks({fill.area.key for fill in those}, corner)
        needed = sum(measured(path) for fill in those for path in fill.drawn.paths)
        whole = sum(measured(leg.path) for walk in walks for leg in walk.legs)
        stages.append(Stage(name, foot, walks, needed, max(0.0, round(whole - needed, 6))))
    return tuple(stages)


def _ways_to_group(fills: Sequence[Filled]) -> Iterator[tuple[Group, ...]]:
    """Fills by stage and foot: first what is sewn in lines, the border last of all; or, if that
    takes too many starts, the border with the others of its foot."""
    border = {fill.area.key for fill in fills if fill.area.kind == "border"}
    apart = (*_by_foot(fills, border, "lines"), *_by_foot(fills, border, "border"))
    yield apart
    together = tuple(_by_foot(fills, set(), "lines"))
    if len(together) < len(apart):
        yield together


def _by_foot(fills: Sequence[Filled], border: Collection[str], name: Name) -> Iterator[Group]:
    for foot in FEET:
        those = tuple(
            fill
            for fill in fills
            if fill.foot == foot and (fill.area.key in border) == (name == "border")
        )
        if those:
            plain: Name = "free motion" if foot == "free motion" and name == "lines" else name
            yield plain, foot, those


def _network(
    top: Top, lines: Sequence[AnchorLine], fills: Sequence[Filled], found: tuple[Piece, ...]
) -> tuple[tuple[Piece, ...], Network]:
    """The graph, and the paths joined over it; those that it does not reach, and shapes laid on a
    ground, are put into others around them."""
    ways = travelled(top, lines, fills)
    many = PLACES if len(found) <= EXACT else PLACES // 2
    net = network(ways, found, many, top.rules)
    out = lost(net) | {number for number, piece in enumerate(found) if piece.figure}
    if not out:
        return found, net
    found = hosted(found, out, top.rules.inch)
    return found, network(ways, found, many, top.rules)
