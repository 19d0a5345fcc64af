"""What the checks of a quilting plan look at: every leg in the order in which it is sewn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiLineString, Polygon

from patternbook.notice import Notice
from patternbook.proof.recounted import OURS
from patternbook.quilt.records import Quilt
from patternbook.quilting.records import Leg, Path, QuiltingPlan

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]
# Inches: what lies nearer is the same place, for the needle and for the floats of the plan.
SAME: Final = 2e-3
APART: Final = 0.5  # inches, between the spots by which a line is looked at


@dataclass(frozen=True)
class Stitched:
    """The plan of one size, its legs in order."""

    plan: QuiltingPlan
    quilt: Quilt

    @property
    def inch(self) -> float:
        return self.plan.top.rules.inch

    @property
    def same(self) -> float:
        return SAME * self.inch

    @cached_property
    def legs(self) -> tuple[Leg, ...]:
        walks = (walk for stage in self.plan.stages for walk in stage.walks)
        return tuple(leg for walk in walks for leg in walk.legs if len(leg.path) > 1)

    @cached_property
    def lines(self) -> NDArray[np.object_]:
        return as_lines([leg.path for leg in self.legs])

    @cached_property
    def length(self) -> float:
        """All that the needle goes."""
        return float(shapely.length(self.lines).sum())

    @cached_property
    def stretches(self) -> Lines:
        return Lines([leg.path for leg in self.legs], self.inch)

    def told(self, length: float) -> str:
        """A length to the hundredth."""
        return (f"{length:.2f}".rstrip("0").rstrip(".") or "0") + self.quilt.system.mark

    def at(self, spot: Floats) -> str:
        """Where on the top."""
        x, y = (self.told(float(one)) for one in spot[:2])
        return f"{x} from the left and {y} from above"

    def wrong(self, code: str, message: str) -> Notice:
        """A plan that is not what it says: no source should bring that about."""
        return Notice(
            code, "error", "proof", message, (), None, (self.quilt.size,), None, None, OURS
        )


class Lines:
    """Lines that spots may lie on, in straight parts short enough to be found quickly."""

    def __init__(self, paths: Sequence[Path], unit: float) -> None:
        lines = shapely.segmentize(as_lines(paths), 4 * unit)
        spots, self._line = shapely.get_coordinates(lines, return_index=True)
        joined = np.flatnonzero(np.diff(self._line) == 0)
        self.owner: Whole = self._line[joined]
        self.parts: Floats = np.stack([spots[joined], spots[joined + 1]], axis=1)
        self.tree = shapely.STRtree(as_lines(self.parts), node_capacity=4)

    def hits(self, spots: Floats, same: float) -> tuple[Whole, Whole]:
        """Each spot and each line that it lies on, by their numbers."""
        spot, part = self.tree.query(shapely.points(spots), predicate="dwithin", distance=same)
        return spot, self.owner[part]


def as_lines(paths: Sequence[Path] | Floats) -> NDArray[np.object_]:
    """Paths of two spots and more as lines."""
    if isinstance(paths, np.ndarray):
        return np.asarray(shapely.linestrings(paths), dtype=object).reshape(-1)
    longer = [path for path in paths if len(path) > 1]
    spots = np.array([spot for path in longer for spot in path], dtype=np.float64).reshape(-1, 2)
    which = np.repeat(np.arange(len(longer)), [len(path) for path in longer])
    found = shapely.linestrings(spots, indices=which.astype(np.intp))
    return np.asarray(found, dtype=object).reshape(-1)


def bundle(lines: NDArray[np.object_]) -> MultiLineString:
    """Lines as one shape."""
    return MultiLineString(list(lines))


def along(lines: NDArray[np.object_], apart: float) -> tuple[Floats, Whole]:
    """Spots on lines, no farther apart than that: corners, and midway between each two of them."""
    spots, which = shapely.get_coordinates(shapely.segmentize(lines, apart), return_index=True)
    joined = np.flatnonzero(np.diff(which) == 0)
    midway = (spots[joined] + spots[joined + 1]) / 2
    return np.concatenate([spots, midway]), np.concatenate([which, which[joined]])


def rings(shape: Polygon) -> list[Path]:
    """The rim of a shape, and of its holes."""
    return [tuple(ring.coords) for ring in (shape.exterior, *shape.interiors)]
