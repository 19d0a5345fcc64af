"""How to mark the corners and the channels, measured from seams and edges."""

from __future__ import annotations

import math
from collections.abc import Mapping

from shapely import Point

from patternbook.quilting.areas.channel import Channel
from patternbook.quilting.areas.corners import Corner
from patternbook.quilting.areas.measured import place, told, way
from patternbook.quilting.records import Cloth, Marked, Path, Rules, Top


def corner_lines(corner: Corner, number: int, top: Top) -> Marked:
    """The line of one shape in a corner."""
    upper, left = corner.ways[1] > 0, corner.ways[0] > 0
    name = f"{'upper' if upper else 'lower'} {'left' if left else 'right'}"
    size = told(corner.size, top.rules)
    how = (
        "and rule a line from each of the two marks, square to the edge, to where they meet"
        if corner.form == "square"
        else "and join the two marks"
    )
    words = f"Corner {number}: mark {size} from the {name} corner along both edges, {how}."
    return Marked(corner.line, "corner", words)


def channel_lines(channel: Channel, number: int, top: Top) -> tuple[Marked, ...]:
    """The two lines of a channel and its two echoes."""
    first, other = channel.sides
    end = _end(channel, top)
    seams = _seams(channel, top)
    sides = tuple(
        Marked(path, "channel", f"Channel {number}: {seam}, {_walked(path, top.rules)} to {end}.")
        for path, seam in zip((first, other), seams, strict=True)
    )
    apart = told(channel.echo, top.rules)
    echo = f"Channel {number}: an echo {apart} outside of its line, all along"
    return (
        *sides,
        *(
            Marked(path, "echo", f"{echo}{_back(back, top.rules)}.")
            for path, back in zip(channel.echoes, channel.root.back, strict=True)
        ),
    )


def _back(back: float, rules: Rules) -> str:
    return f", and {told(back, rules)} back beside the strip" if back else ""


def _walked(path: Path, rules: Rules) -> str:
    first, turn, last = path
    out = told(math.dist(first, turn), rules)
    return f"{out} {way(first, turn)}, then turn square and go {way(turn, last)}"


def _seams(channel: Channel, top: Top) -> tuple[str, str]:
    """What the two lines carry on."""
    at = place(channel.root.middle, top)
    which = _which(top.cloths[channel.root.cloth], top)
    names = []
    for path in channel.sides:
        side = way(channel.root.middle, path[0])
        side = {"up": "upper", "down": "lower"}.get(side, side)
        names.append(f"carry on the {side} side of {which}, that ends {at}")
    return names[0], names[1]


def _which(cloth: Cloth, top: Top) -> str:
    """A patch by its letter; in a pile of the same, by its place in it."""
    x0, y0, x1, y1 = cloth.shape.bounds
    alike = [one for one in top.cloths if one.letter == cloth.letter]
    for axis, start in ((1, "the top"), (0, "the left")):
        low, high = (y0, y1) if axis else (x0, x1)
        pile = [one for one in alike if _in_line(one, cloth, axis)]
        before = _touching(low, {_span(one, axis)[1]: _span(one, axis)[0] for one in pile})
        after = _touching(high, {_span(one, axis)[0]: _span(one, axis)[1] for one in pile})
        if before or after:
            total = before + 1 + after
            return f"piece {cloth.letter} number {before + 1} of {total}, counted from {start}"
    return f"the piece {cloth.letter}"


def _span(cloth: Cloth, axis: int) -> tuple[float, float]:
    bounds = cloth.shape.bounds
    return round(bounds[axis], 3), round(bounds[axis + 2], 3)


def _in_line(one: Cloth, other: Cloth, axis: int) -> bool:
    """Whether two patches lie in one pile, or in one row."""
    return _span(one, 1 - axis) == _span(other, 1 - axis)


def _touching(place: float, steps: Mapping[float, float]) -> int:
    """How many patches follow one another from a place on."""
    number, at = 0, round(place, 3)
    while at in steps and number < len(steps):
        number, at = number + 1, steps[at]
    return number


def _end(channel: Channel, top: Top) -> str:
    end = Point(channel.centre[-1])
    if top.edge.exterior.distance(end) < 1e-2:
        return "the edge"
    return "the border" if top.inside.exterior.distance(end) < 1e-2 else "the next seam"
