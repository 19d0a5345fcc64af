"""Large open ground divided: corners, channels that grow out of the piecing, and plain cuts."""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from shapely import Polygon

from patternbook.quilting.areas.channel import Channel
from patternbook.quilting.areas.channels import channels, moved, wanted
from patternbook.quilting.areas.corners import Corner, corners, resized
from patternbook.quilting.areas.cuts import Cuts
from patternbook.quilting.areas.cuts_told import cut_lines
from patternbook.quilting.areas.marking import channel_lines, corner_lines
from patternbook.quilting.areas.moves import missing, moves, unmoved
from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.splitting import clean
from patternbook.quilting.records import Marked, Top, Wishes

LARGE: Final = 200.0  # square inches: smaller grounds are areas as they are
Division = tuple[tuple[Part, ...], tuple[Marked, ...], tuple[str, ...]]


def divide(grounds: Sequence[Polygon], top: Top, wishes: Wishes) -> Division:
    """The parts of the open ground, the lines to mark, and what to say of the moves that the
    author asks for and that do not come out."""
    # A mitre of nearly straight corners divides by almost nothing; it is cut short then.
    with np.errstate(divide="ignore", invalid="ignore"):
        return _divided(grounds, top, wishes)


def _divided(grounds: Sequence[Polygon], top: Top, wishes: Wishes) -> Division:
    small = [Part("ground", one) for one in grounds if not _large(one, top)]
    large = [part for one in grounds if _large(one, top) for part in clean(one)]
    number = wanted(sum(float(one.area) for one in grounds), top.rules)
    rng = random.Random(wishes.seed)  # noqa: S311 (drawn by lot, for the look)
    in_corners, said = _in_corners(large, top, wishes, rng) if number else ((), [])
    held = [one.shape for one in in_corners]
    grown, more = _grown(_without(large, held), held, top, wishes, (number, rng))
    rest = _without(large, [*held, *(one.shape for one in grown)])
    cuts = Cuts(top, rest, asked := moves(wishes, "cut"))
    cut = [Part("ground", one) for ground in rest for one in cuts.parts(ground)]
    said += [*more, *(unmoved("cut", n, n) for n in sorted(cuts.refused))]
    said += missing("cut", asked, cuts.numbered)
    marked = (
        *(corner_lines(one, n, top) for n, one in enumerate(in_corners, 1)),
        *(line for n, one in enumerate(grown, 1) for line in channel_lines(one, n, top)),
        *(line for one in cuts.cuts for line in cut_lines(one, top)),
    )
    corner_parts = [Part("corner", shape) for shape in held]
    channel_parts = [Part("channel", one.shape, one.centre) for one in grown]
    return (*small, *corner_parts, *channel_parts, *cut), marked, tuple(said)


def _large(ground: Polygon, top: Top) -> bool:
    return bool(ground.interiors) or ground.area > LARGE * top.rules.inch**2


def _in_corners(
    large: Sequence[Polygon], top: Top, wishes: Wishes, rng: random.Random
) -> tuple[tuple[Corner, ...], list[str]]:
    """The shapes in the corners, as the author wants them."""
    found = list(corners(large, top, rng))
    asked = moves(wishes, "corner")
    said = list(missing("corner", asked, len(found)))
    for number, shift in sorted(asked.items()):
        if 0 < number <= len(found):
            new = resized(found[number - 1], shift, large)
            others = [one.shape for n, one in enumerate(found, 1) if n != number]
            if new is None or any(new.shape.intersects(other) for other in others):
                said.append(unmoved("corner", number, len(found)))
            else:
                found[number - 1] = new
    return tuple(found), said


def _grown(
    grounds: Sequence[Polygon],
    held: Sequence[Polygon],
    top: Top,
    wishes: Wishes,
    drawn: tuple[int, random.Random],
) -> tuple[tuple[Channel, ...], list[str]]:
    """The channels, as the author wants them."""
    open_still = [one for one in grounds if _large(one, top)]
    found = list(channels(open_still, held, top, *drawn)) if drawn[0] else []
    asked = moves(wishes, "channel")
    said = list(missing("channel", asked, len(found)))
    for number, shift in sorted(asked.items()):
        if 0 < number <= len(found):
            others = [one.shape for n, one in enumerate(found, 1) if n != number]
            new = moved(found[number - 1], shift, open_still, [*held, *others], top)
            if new is None:
                said.append(unmoved("channel", number, len(found)))
            found[number - 1] = new or found[number - 1]
    return tuple(found), said


def _without(grounds: Sequence[Polygon], shapes: Sequence[Polygon]) -> list[Polygon]:
    """What is left of the grounds."""
    if not shapes or not grounds:
        return list(grounds)
    left = shapely.difference(list(grounds), shapely.union_all(list(shapes)))
    parts = shapely.get_parts(left)
    return [one for one in parts if one.geom_type == "Polygon" and one.area > 1e-6]
