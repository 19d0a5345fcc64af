"""What a plan comes to: length, thread, bobbins, hours, and how evenly it lies."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np

from patternbook.quilting.density import spread
from patternbook.quilting.passes import passes
from patternbook.quilting.records import (
    BobbinChange,
    Filled,
    Foot,
    Path,
    Rules,
    Stage,
    Sums,
    Top,
    Walk,
)

# A lockstitch takes 2 + 2TS inches of thread an inch, both threads together (T how thick the
# layers are in inches, S stitches an inch; a derivation in textile handbooks). 2.8 is that of 10
# stitches an inch through 0.04 in: assumed, not measured, and printed as assumed.
RATIO: Final = 2.8
# Waste of 10 to 15 % is what makers reckon with; the more of it.
WASTE: Final = 0.15
# Inches left over, both threads together, at each start and at each stop: common practice, no
# source.
TAIL: Final = 14.0
# Yards on one bobbin: common practice, no source.
BOBBIN: Final = 65.0
# Inches a minute, of a quick hand and of a slow one: common practice, no source.
SPEED: Final[Mapping[Foot, tuple[float, float]]] = {
    "walking foot": (40.0, 20.0),
    "ruler": (20.0, 10.0),
    "free motion": (30.0, 15.0),
}
# Minutes at a corner, at a start and at a change of the bobbin, and how much longer than the
# needle runs it all takes (stopping, moving the quilt, looking): common practice, no source.
CORNER: Final = 4 / 60
START: Final = 2.0
CHANGE: Final = 5.0
HANDLING: Final = 1.6
# A turn of more than this, in degrees, is a corner: the needle stays down.
TURN: Final = 30.0
YARD: Final = 36.0
METRE: Final = 1 / 0.0254


def sums(
    top: Top, stages: Sequence[Stage], fills: Sequence[Filled], changes: Sequence[BobbinChange]
) -> Sums:
    """All of it from the walks of the stages, as they are stitched."""
    walks = [walk for stage in stages for walk in stage.walks]
    paths = [walk.path for walk in walks]
    often = passes(paths)
    stitched = sum(number * length for number, length in often.items())
    each = _thread(stitched, len(walks) + len(changes), top.rules) / 2
    return Sums(
        stitched=stitched,
        once=sum(often.values()),
        passes=often,
        starts=len(walks),
        bobbins=len(changes) + 1 if walks else 0,
        changes=tuple(changes),
        thread_top=each,
        thread_bobbin=each,
        hours=_hours(stages, len(changes), top.rules),
        evenness=spread(fills),
    )


def per_bobbin(top: Top) -> float:
    """How much stitching a bobbin lasts for, in the pattern's unit, the waste reckoned in."""
    return BOBBIN * YARD / (RATIO / 2) / (1 + WASTE) * top.rules.inch


def _thread(stitched: float, starts: int, rules: Rules) -> float:
    """Both threads together in yards, or in metres where the pattern is in centimetres."""
    inches = (stitched / rules.inch * RATIO + starts * 2 * TAIL) * (1 + WASTE)
    return inches / (YARD if rules.inch == 1.0 else METRE)


def _hours(stages: Sequence[Stage], changes: int, rules: Rules) -> tuple[float, float]:
    quick, slow = (
        sum(
            _minutes(walk, SPEED[stage.foot][hand], rules)
            for stage in stages
            for walk in stage.walks
        )
        for hand in (0, 1)
    )
    beside = changes * CHANGE
    return (quick + beside) * HANDLING / 60, (slow + beside) * HANDLING / 60


def _minutes(walk: Walk, speed: float, rules: Rules) -> float:
    spots = np.asarray(walk.path)
    length = float(np.hypot(*np.diff(spots, axis=0).T).sum()) / rules.inch
    return length / speed + corners(walk.path) * CORNER + START


def corners(path: Path) -> int:
    """How often a path turns sharply."""
    ways = np.diff(np.asarray(path), axis=0)
    ways = ways[(ways != 0).any(axis=1)]
    turns = np.diff(np.arctan2(ways[:, 1], ways[:, 0]))
    turns = np.abs((turns + math.pi) % math.tau - math.pi)
    return int((turns > math.radians(TURN)).sum())
