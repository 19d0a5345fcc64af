"""What counts for and against a cut through open ground."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final, NamedTuple

from shapely import LineString, Polygon

from patternbook.quilting.areas.roots import NEAR
from patternbook.quilting.records import Rules

TARGET: Final = 300.0  # square inches: what a beginner can turn under the needle in one go
OVER: Final = 1.1  # the target is a wish: a little over it is left whole
THIN: Final = 3.0  # inches: narrower parts hold no design
SMALL: Final = 45.0  # square inches: what is smaller is a scrap
Side = tuple[float, float]  # the area of a part and the length around it


class Weights(NamedTuple):
    """What counts against a cut: parts of uneven size, lines to mark, its length, parts that are
    long for their size, a slant, thin places (by the square inch), scraps, holes that are left,
    a line through holes that is not along those before. For it: a line cut along before."""

    uneven: float = 2.0
    marked: float = 0.3
    length: float = 0.3
    long: float = 0.15
    slanted: float = 1.5
    thin: float = 0.1
    scrap: float = 0.7
    holed: float = 3.0
    turned: float = 0.5
    again: float = 0.2


WEIGHTS: Final = Weights()


def too_large(part: Polygon, rules: Rules) -> bool:
    """Whether a part has to be cut up further."""
    return bool(part.interiors) or part.area > TARGET * OVER * rules.inch**2


def shares(part: Polygon, rules: Rules) -> int:
    """Into how many parts it is to be cut in the end."""
    return max(2, math.ceil(part.area / (TARGET * rules.inch**2) - OVER + 1))


def roughly(
    part: Polygon, length: float, sewn: float, sides: Sequence[Side], rules: Rules
) -> float:
    """What counts against a cut, by its length, how much of it lies on seams, and the sides."""
    share = part.area / shares(part, rules)
    uneven = max(abs(area / share - max(1, round(area / share))) for area, _ in sides)
    long = max(around**2 / (16 * max(area, NEAR)) - 1 for area, around in sides)
    return (
        WEIGHTS.uneven * uneven
        + WEIGHTS.marked * (1 - sewn / length)
        + WEIGHTS.length * length / math.sqrt(part.area)
        + WEIGHTS.long * long
    )


def closely(lost: float, parts: Sequence[Polygon], rules: Rules) -> float:
    """What counts against the parts of a cut besides: thin places, beyond those that were there
    before (`lost`), and scraps."""
    square = rules.inch**2
    more = max(0.0, sum(thin(one, rules) for one in parts) - lost)
    scraps = sum(one.area < SMALL * square for one in parts)
    return WEIGHTS.thin * more / square + WEIGHTS.scrap * scraps


def thin(part: Polygon, rules: Rules) -> float:
    """How much of a part lies in thin places."""
    reach = THIN * rules.inch / 2
    plain = part.simplify(rules.inch / 16)
    kept = plain.buffer(-reach, join_style="mitre").buffer(reach, join_style="mitre")
    return max(0.0, float(plain.area - kept.area))


def slants(chord: LineString, slope: float) -> bool:
    """Whether a chord is neither along a slope nor square to it."""
    (ax, ay), (bx, by) = chord.coords[0], chord.coords[-1]
    off = (math.atan2(by - ay, bx - ax) - slope) % (math.pi / 2)
    return min(off, math.pi / 2 - off) > math.radians(2)
