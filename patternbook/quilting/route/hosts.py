"""Fills that no seam leads to, as a shape laid on a ground: they are sewn from within a fill
around them, by a step over and back."""

from __future__ import annotations

import heapq
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, STRtree

from patternbook.quilting.records import Path, Spot
from patternbook.quilting.route.pieces import SAME, Guest, Piece, Place
from patternbook.quilting.route.steps import WIDEST

NEAR: Final = 1e-3


def hosted(found: Sequence[Piece], lost: Collection[int], inch: float) -> tuple[Piece, ...]:
    """The pieces, with each lost one put into the nearest that is sewn with the same foot. A lost
    one that does not end where it begins stays by itself, and so does one with none so near."""
    pieces = dict(enumerate(found))
    waiting = {number for number in sorted(lost) if found[number].closed}
    steps = _steps(found, sorted(waiting), WIDEST * inch)
    offered = [step for n in pieces if n not in waiting for step in steps.get(n, ())]
    heapq.heapify(offered)
    while offered or waiting:
        if not offered:
            # Nothing leads to any of these: the largest is begun anew, and may have guests.
            largest = max(waiting, key=lambda n: (round(found[n].shape.area, 6), -n))
            waiting.remove(largest)
            offered = sorted(steps.get(largest, ()))
            continue
        step = heapq.heappop(offered)
        if step.guest in waiting:
            waiting.remove(step.guest)
            pieces[step.host] = _with(pieces[step.host], step)
            for further in steps.get(step.guest, ()):
                heapq.heappush(offered, further)
    return _put_in(pieces)


class Over(NamedTuple):
    """A step from one path to another."""

    far: float
    host: int
    guest: int
    start: Spot
    end: Spot


def _steps(found: Sequence[Piece], guests: Sequence[int], reach: float) -> dict[int, list[Over]]:
    """From each path the steps to guests around it that stay within the two areas."""
    if not guests:
        return {}
    lines = np.array([LineString(piece.path) for piece in found], dtype=object)
    shapes = np.array([piece.shape for piece in found], dtype=object)
    at, host = STRtree(lines).query(lines[list(guests)], predicate="dwithin", distance=reach)
    guest = np.array(guests)[at]
    alike = [h != g and found[h].stage == found[g].stage for h, g in zip(host, guest, strict=True)]
    host, guest = host[alike], guest[alike]
    over = np.atleast_1d(shapely.shortest_line(lines[host], lines[guest]))
    outside = shapely.difference(shapely.difference(over, shapes[host]), shapes[guest])
    steps: dict[int, list[Over]] = {}
    for step, left, h, g in zip(over, outside, host.tolist(), guest.tolist(), strict=True):
        if left.length <= NEAR:
            start, end = (_rounded(spot) for spot in step.coords)
            steps.setdefault(h, []).append(Over(round(step.length, 6), h, g, start, end))
    return steps


def _rounded(spot: Sequence[float]) -> Spot:
    return round(spot[0], 6), round(spot[1], 6)


def _with(host: Piece, step: Over) -> Piece:
    """A host with the spot from which a guest is reached as a corner of its path. The guest is
    told by its number for now."""
    place = place_at(host.path, step.start)
    cut = (*host.path[: place.after + 1], place.spot, *host.path[place.after + 1 :])
    path = tuple(spot for n, spot in enumerate(cut) if not n or spot != cut[n - 1])
    return replace(host, path=path, visits=(*host.visits, (step.start, step.end, step.guest)))


def place_at(path: Path, spot: Spot) -> Place:
    """The place on a path at a spot on it; a corner, where one is as near as the same."""
    corners: NDArray[np.float64] = np.array(path)
    head = np.diff(corners, axis=0)
    long = np.maximum((head**2).sum(axis=1), SAME**2)
    share = np.clip(((np.array(spot) - corners[:-1]) * head).sum(axis=1) / long, 0.0, 1.0)
    feet = corners[:-1] + share[:, None] * head
    after = int(np.hypot(*(feet - np.array(spot)).T).round(6).argmin())
    return Place(spot, after)


def _put_in(pieces: dict[int, Piece]) -> tuple[Piece, ...]:
    """The pieces that are no guests, each with its guests in it."""
    guests = {number for piece in pieces.values() for *_, number in piece.visits}

    def whole(number: int) -> Piece:
        piece = pieces[number]
        inside = tuple(
            Guest(start, whole(guest), place_at(pieces[guest].path, end))
            for start, end, guest in piece.visits
        )
        return replace(piece, guests=inside, visits=())

    return tuple(whole(number) for number in pieces if number not in guests)
