"""A closed line through the four quarters of every block of a grid, that never meets itself."""

from __future__ import annotations

import heapq
import random
from collections.abc import Iterator
from typing import Final

import numpy as np

from patternbook.quilting.designs.cells import Cell, Grid, Quarter
from patternbook.quilting.designs.frame import Spots

STEPS: Final = ((1, 0), (-1, 0), (0, 1), (0, -1))


def round_trip(grid: Grid, chance: random.Random) -> Spots:
    """A closed line through every quarter of the blocks once, that never meets itself: the outline
    of a tree which joins the blocks by chance. Blocks that cannot be reached are left out."""
    trees = [_tree(grid, root, chance) for root in _roots(grid)]
    tree = max(trees, key=len, default=frozenset())
    start = min((cell for pair in tree for cell in pair), default=None)
    if start is None:
        start = grid.cells[0]
    return np.array([grid.quarters[q] for q in _outline(tree, start)])


def _roots(grid: Grid) -> Iterator[Cell]:
    """One block of each part that hangs together."""
    left = dict.fromkeys(grid.cells)
    while left:
        root = next(iter(left))
        yield root
        todo = [root]
        while todo:
            cell = todo.pop()
            if cell in left:
                del left[cell]
                todo += [near for near in _near(cell) if (cell, near) in grid.joined]


def _near(cell: Cell) -> Iterator[Cell]:
    for right, down in STEPS:
        yield cell[0] + right, cell[1] + down


def _tree(grid: Grid, root: Cell, chance: random.Random) -> frozenset[tuple[Cell, Cell]]:
    """Joints grown from one block, always at a place drawn by chance."""
    seen, joints = {root}, set()
    fringe: list[tuple[float, Cell, Cell]] = []

    def offer(cell: Cell) -> None:
        for near in _near(cell):
            if (cell, near) in grid.joined and near not in seen:
                heapq.heappush(fringe, (chance.random(), cell, near))

    offer(root)
    while fringe:
        _, cell, near = heapq.heappop(fringe)
        if near not in seen:
            seen.add(near)
            joints |= {(cell, near), (near, cell)}
            offer(near)
    return frozenset(joints)


def _outline(tree: frozenset[tuple[Cell, Cell]], start: Cell) -> list[Quarter]:
    """The quarters around a tree, clockwise, from the top left of a block."""
    first = (2 * start[0], 2 * start[1])
    found, at = [first], _next(tree, first)
    while at != first:
        found.append(at)
        at = _next(tree, at)
    return found


def _next(tree: frozenset[tuple[Cell, Cell]], at: Quarter) -> Quarter:
    i, j = at
    cell = i // 2, j // 2
    # From the top left up or on to the right; and so on, turned by a quarter each.
    out, along = {
        (0, 0): ((0, -1), (1, 0)),
        (1, 0): ((1, 0), (0, 1)),
        (1, 1): ((0, 1), (-1, 0)),
        (0, 1): ((-1, 0), (0, -1)),
    }[i % 2, j % 2]
    step = out if (cell, (cell[0] + out[0], cell[1] + out[1])) in tree else along
    return i + step[0], j + step[1]
