"""A room as a grid of blocks, each with a spot in its four quarters."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from patternbook.quilting.designs.frame import DECIMALS, Frame, Spots

Cell = tuple[int, int]
Quarter = tuple[int, int]  # column and row of the quarters, twice as fine as the blocks
PART: Final = 0.6  # of a block has to lie in the room
SOME: Final = 0.2  # of a quarter: its own middle is taken, else one is set in for it
SPREADS: Final = 8  # times that spots are moved apart
DOTS: Final = 8  # in the width of a block, to measure what is nearest to a spot
IN: Final = 0.235  # of the block: how far from its sides the line runs


class Grid(NamedTuple):
    """The quarters' spots of each block, and which blocks are joined."""

    quarters: Mapping[Quarter, tuple[float, float]]
    cells: tuple[Cell, ...]
    joined: frozenset[tuple[Cell, Cell]]


def ticks(values: Spots, size: float, *, own: bool) -> Spots:
    """Lines of a grid, evenly about so far apart; at the shape's own corners too (`own`)."""
    found = np.unique(np.round(values, DECIMALS))
    keep = [float(found[0])]
    for value in found[1:-1] if own else ():
        if value - keep[-1] >= size / 2 and found[-1] - value >= size / 2:
            keep.append(float(value))
    keep.append(float(found[-1]))
    parts = [
        np.linspace(low, high, max(1, round((high - low) / size)), endpoint=False)
        for low, high in itertools.pairwise(keep)
    ]
    return np.concatenate([*parts, [keep[-1]]])


def square_cornered(shape: Polygon) -> bool:
    """Whether all its sides run level or upright."""
    sides = [
        np.diff(shapely.get_coordinates(ring), axis=0)
        for ring in (shape.exterior, *shape.interiors)
    ]
    return all(bool((np.abs(side).min(axis=1) < 1e-3).all()) for side in sides)


def gridded(room: Polygon, axes: Frame, size: float, *, spread: bool) -> Grid:
    """Blocks of about a size, along turned axes; the spots moved apart evenly (`spread`), where
    the rim cuts blocks."""
    shape = shapely.transform(room, axes.turned)
    spots = shapely.get_coordinates(shape)
    own = square_cornered(shape)
    across, down = (ticks(spots[:, axis], size, own=own) for axis in (0, 1))
    quarters = dict(_quarters(shape, across, down))
    if spread and quarters and not own:
        quarters = dict(
            zip(quarters, _spread(shape, np.array([*quarters.values()]), size), strict=True)
        )
    cells = tuple(sorted({(i // 2, j // 2) for i, j in quarters}))
    wide = shape.buffer(1e-6)
    shapely.prepare(wide)
    whole = _whole(wide, quarters, cells)
    joined = frozenset(_joined(wide, quarters, whole))
    back = {key: tuple(axes.back(np.array(spot)).tolist()) for key, spot in quarters.items()}
    return Grid(back, whole, joined)


def _quarters(shape: Polygon, across: Spots, down: Spots) -> Iterator[tuple[Quarter, Spots]]:
    spread = np.meshgrid(np.arange(len(across) - 1), np.arange(len(down) - 1))
    columns, rows = spread[0].ravel(), spread[1].ravel()
    spots, kept = _placed(shape, across, down, columns, rows)
    for number in np.flatnonzero(kept):
        for side in range(4):
            key = (2 * int(columns[number]) + side % 2, 2 * int(rows[number]) + side // 2)
            yield key, spots[number, side]


def _placed(
    shape: Polygon, across: Spots, down: Spots, columns: NDArray[np.int64], rows: NDArray[np.int64]
) -> tuple[Spots, NDArray[np.bool_]]:
    """The four spots of each block, and whether enough of the block lies in the room. A quarter
    that the rim cuts has its spot in the middle of what is left of it."""
    low = np.stack([across[columns], down[rows]], axis=-1)
    size = np.stack([across[columns + 1], down[rows + 1]], axis=-1) - low
    side = np.array([[0, 0], [1, 0], [0, 1], [1, 1]])
    even = low[:, None, :] + size[:, None, :] * np.where(side, 1 - IN, IN)[None, :, :]
    corner = low[:, None, :] + size[:, None, :] * side[None, :, :] / 2
    far = corner + size[:, None, :] / 2
    boxes = shapely.box(corner[..., 0], corner[..., 1], far[..., 0], far[..., 1])
    parts = shapely.intersection(boxes, shape)
    share = shapely.area(parts) / (size.prod(axis=1) / 4)[:, None]
    middle = _middles(parts)
    weighed = np.where(share[..., None] > 0, middle * share[..., None], 0.0).sum(axis=1)
    whole = weighed / np.maximum(share.sum(axis=1), 1e-9)[:, None]
    set_in = whole[:, None, :] + (even - (low + size / 2)[:, None, :]) / 4
    share_of = share[..., None]
    spots = np.where(share_of > 0.98, even, np.where(share_of > SOME, middle, set_in))
    return spots, share.mean(axis=1) >= PART


def _spread(shape: Polygon, spots: Spots, size: float) -> Spots:
    """Spots moved a few times to the middle of what of the room is nearest to each."""
    dots = _dots(shape, size / DOTS)
    points = shapely.points(dots)
    for _ in range(SPREADS):
        nearest = shapely.STRtree([shapely.Point(spot) for spot in spots]).nearest(points)
        counts = np.bincount(nearest, minlength=len(spots))
        sums = [np.bincount(nearest, weights=dots[:, k], minlength=len(spots)) for k in (0, 1)]
        middle = np.stack(sums, axis=-1) / np.maximum(counts, 1)[:, None]
        spots = np.where((counts > 0)[:, None], middle, spots)
    return spots


def _dots(shape: Polygon, apart: float) -> Spots:
    """Dots all over a shape."""
    low, high = np.array(shape.bounds[:2]), np.array(shape.bounds[2:])
    counts = np.maximum(1, np.round((high - low) / apart)).astype(int)
    sides = [low[k] + (high - low)[k] * (np.arange(counts[k]) + 0.5) / counts[k] for k in (0, 1)]
    dots = np.stack([side.ravel() for side in np.meshgrid(*sides)], axis=-1)
    return dots[shapely.contains_xy(shape, dots[:, 0], dots[:, 1])]


def _middles(parts: NDArray[np.object_]) -> Spots:
    found = np.zeros((*parts.shape, 2))
    some = shapely.area(parts) > 0
    found[some] = shapely.get_coordinates(shapely.centroid(parts[some]))
    return found


def _whole(
    shape: Polygon, quarters: Mapping[Quarter, Spots], cells: tuple[Cell, ...]
) -> tuple[Cell, ...]:
    """The blocks whose four spots are joined within the room."""
    rings = [[quarters[q] for q in _ring(cell)] for cell in cells]
    if not rings:
        return ()
    held = np.asarray(shapely.covers(shape, shapely.linearrings(np.array(rings))))
    return tuple(cell for cell, is_held in zip(cells, held, strict=True) if is_held)


def _ring(cell: Cell) -> tuple[Quarter, Quarter, Quarter, Quarter]:
    """The quarters of a block, clockwise from the top left."""
    i, j = 2 * cell[0], 2 * cell[1]
    return (i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1)


def _joined(
    shape: Polygon, quarters: Mapping[Quarter, Spots], cells: tuple[Cell, ...]
) -> Iterator[tuple[Cell, Cell]]:
    """Neighbours whose two joining lines stay in the room."""
    known = set(cells)
    pairs = [
        (cell, (cell[0] + right, cell[1] + 1 - right))
        for cell in cells
        for right in (1, 0)
        if (cell[0] + right, cell[1] + 1 - right) in known
    ]
    if not pairs:
        return
    ways = np.array([_joints(quarters, one, other) for one, other in pairs])
    held = np.asarray(shapely.covers(shape, shapely.linestrings(ways))).all(axis=1)
    for number in np.flatnonzero(held):
        one, other = pairs[number]
        yield one, other
        yield other, one


def _joints(quarters: Mapping[Quarter, Spots], one: Cell, other: Cell) -> list[list[Spots]]:
    first, second = _ring(one), _ring(other)
    sides = ((1, 0), (2, 3)) if other[0] > one[0] else ((3, 0), (2, 1))
    return [[quarters[first[a]], quarters[second[b]]] for a, b in sides]
