"""Channels: two lines that run on from the side seams of a strip, turn once and run to the edge."""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from typing import Final

import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.areas.channel import Channel
from patternbook.quilting.areas.roots import NEAR, Root, firm, on_rim, reach, roots
from patternbook.quilting.records import Rules, Top

# Square inches of ground: below the first no channel, then one more for each of the second.
FIRST, EACH, MOST = 600.0, 1200.0, 6
TINY: Final = 1e-6
CLEAR: Final = 2.0  # inches to everything else; half as much again is better
APART: Final = 5.0  # inches between channels
LEG: Final = 5.0  # inches that each leg has at the least beside what the turn takes
TRIED, LEAST_TRIED = 480, 64  # candidates laid out for one top, for one ground
CLOSELY: Final = 24  # the best of them, looked at closely
OF: Final = 3  # one of so many good ones is taken, by lot
SCRAP: Final = 60.0  # square inches: a channel cuts no smaller part off


def wanted(total: float, rules: Rules) -> int:
    """How many channels a top with so much open ground gets."""
    square = total / rules.inch**2
    return 0 if square < FIRST - TINY else min(MOST, 1 + math.floor(square / EACH + TINY))


def channels(
    grounds: Sequence[Polygon],
    corners: Sequence[Polygon],
    top: Top,
    number: int,
    rng: random.Random,
) -> tuple[Channel, ...]:
    """The channels, each with room to everything else, the best of a few that are drawn by lot;
    by place."""
    tried = max(LEAST_TRIED, TRIED // max(1, len(grounds)))
    offered = [one for ground in grounds for one in _offered(ground, top, tried, rng)]
    held = shapely.union_all(list(corners))
    offered = [one for one in offered if one.wide(CLEAR * top.rules.inch).disjoint(held)]
    taken: list[Channel] = []
    free: BaseGeometry = shapely.union_all(list(grounds))
    while len(taken) < number:
        best = _picked(offered, taken, free, top, rng)
        if best is None:
            break
        taken.append(best)
        free = shapely.difference(free, best.shape)
        offered = list(_still(offered, best, top.rules))
    return tuple(sorted(taken, key=lambda one: (one.root.middle[1], one.root.middle[0])))


def moved(
    channel: Channel,
    shift: float,
    grounds: Sequence[Polygon],
    others: Sequence[Polygon],
    top: Top,
) -> Channel | None:
    """The channel that turns so much farther out; nothing where it has no room there."""
    here = next((one for one in grounds if one.intersects(channel.shape.buffer(-NEAR))), None)
    if here is None or channel.out + shift < channel.half + channel.echo + NEAR:
        return None
    new = _ended(channel._replace(out=channel.out + shift), here, firm(here, top), top.rules)
    if new is None or not here.buffer(2 * NEAR, join_style="mitre").covers(new.shape):
        return None
    return new if all(new.shape.disjoint(other) for other in others) else None


def _still(offered: Sequence[Channel], taken: Channel, rules: Rules) -> Iterator[Channel]:
    """Those that keep clear of one that is taken."""
    apart = [channel.wide(APART * rules.inch) for channel in offered]
    shape = taken.shape
    shapely.prepare(shape)
    for one, meets in zip(offered, shapely.intersects(shape, apart), strict=True):
        if not meets and one.root.cloth != taken.root.cloth:
            yield one


def _picked(
    offered: Sequence[Channel],
    taken: Sequence[Channel],
    free: BaseGeometry,
    top: Top,
    rng: random.Random,
) -> Channel | None:
    """One of the best three, by lot."""
    scored = sorted((-_worth(channel, taken, top), n) for n, channel in enumerate(offered))
    good: list[Channel] = []
    for _, n in scored[:CLOSELY]:
        parts = shapely.get_parts(shapely.difference(free, offered[n].shape))
        if all(part.area > SCRAP * top.rules.inch**2 for part in parts):
            good.append(offered[n])
        if len(good) == OF:
            break
    return good[rng.randrange(len(good))] if good else None


def _worth(channel: Channel, taken: Sequence[Channel], top: Top) -> float:
    """How well a channel would look, by its own shape and its distance from the others."""
    x0, y0, x1, y1 = top.edge.bounds
    short = min(x1 - x0, y1 - y0)
    legs = channel.out, channel.far
    balance = min(legs) / max(legs)
    ideal = short / 2
    length = 1 - min(1.0, abs(sum(legs) - ideal) / ideal)
    apart = min((_apart(channel, other) for other in taken), default=short / 3)
    return round(balance / 2 + length + 1.5 * min(1.0, 3 * apart / short), 6)


def _apart(one: Channel, other: Channel) -> float:
    return float(LineString(one.centre).distance(LineString(other.centre)))


def _offered(ground: Polygon, top: Top, tried: int, rng: random.Random) -> list[Channel]:
    """Channels that fit in one ground."""
    laid = list(_laid(ground, top, tried, rng))
    near = ground.buffer(2 * NEAR, join_style="mitre")
    shapely.prepare(near)
    wide = shapely.covers(near, [channel.wide(CLEAR * top.rules.inch) for channel in laid])
    shapes = shapely.covers(near, [channel.shape for channel in laid])
    return [one for one, apart, held in zip(laid, wide, shapes, strict=True) if apart and held]


def _laid(ground: Polygon, top: Top, tried: int, rng: random.Random) -> Iterator[Channel]:
    rules, rim = top.rules, firm(ground, top)
    found = [(root, _room(root, ground, rules)) for root in roots(ground, rim, top)]
    found = [(root, room) for root, room in found if room]
    number = min(len(found), tried // 4)
    for root, room in sorted(rng.sample(found, number)):
        for out in _outs(root, room, rules, tried // (2 * number), rng):
            for turn in (1, -1):
                start = Channel(root, out, turn, 0.0, rules.inch / 2)
                channel = _ended(start, ground, rim, rules)
                if channel is not None:
                    yield channel


def _room(root: Root, ground: Polygon, rules: Rules) -> float:
    """How far a channel can go out before it meets something; 0 where it cannot even turn."""
    ray = LineString([root.spot(2 * NEAR, 0), root.spot(1000 * rules.inch, 0)])
    room = reach(ray, ground) or 0.0
    aside = root.width / 2 + (0.5 + CLEAR) * rules.inch
    return room if room > 2 * aside - NEAR else 0.0


def _outs(
    root: Root, room: float, rules: Rules, number: int, rng: random.Random
) -> Iterator[float]:
    """How far out to turn: so that the near side turns on a mark."""
    half, grid = root.width / 2, 4 * rules.step
    aside = half + (0.5 + CLEAR) * rules.inch
    first = math.ceil((max(aside, half + LEG * rules.inch) - half) / grid - NEAR)
    last = math.floor((room - aside - half) / grid + NEAR)
    turns = range(first, last + 1)
    for turn in sorted(rng.sample(turns, min(number, len(turns)))):
        yield turn * grid + half


def _ended(channel: Channel, ground: Polygon, rim: BaseGeometry, rules: Rules) -> Channel | None:
    """The channel with its second leg run to where it meets something squarely."""
    spot, start = channel.root.spot, channel.half + 2 * NEAR
    ray = [spot(channel.out, channel.turn * aside) for aside in (start, 1000 * rules.inch)]
    room = reach(LineString(ray), ground)
    if room is None or room < channel.half + channel.echo + LEG * rules.inch:
        return None
    whole = channel._replace(far=round(room + start, 6))
    ends = [path[-1] for path in whole.echoes]
    return whole if on_rim(LineString(ends), rim) else None
