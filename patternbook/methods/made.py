"""What a sewing method leaves behind once every length is known: parts in their places."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.notice import Place


class Sides(NamedTuple):
    """Width and length, as the part lies when it is not turned."""

    across: Exact
    down: Exact


class Turn(NamedTuple):
    """How a part lies: mirrored left to right first, then so many quarter turns clockwise."""

    quarters: int = 0
    mirrored: bool = False

    @property
    def sideways(self) -> bool:
        """Whether width and length have changed places."""
        return self.quarters % 2 == 1


class Placed(NamedTuple):
    """A part in its place inside a unit: its top left corner, and its size as it lies."""

    part: str
    turn: Turn
    x: Exact
    y: Exact
    across: Exact
    down: Exact


@dataclass(frozen=True)
class Line:
    """One row or column as it is joined, its parts in order. `role` tells a row of blocks from
    a sash row between; `across` and `down` are finished."""

    role: Literal["row", "column", "sash"]
    parts: tuple[Placed, ...]
    across: Exact
    down: Exact


@dataclass(frozen=True)
class Border:
    """One border. `first` are sewn first; lengths are cut lengths; `after` is the measure
    (raw edge to raw edge) once it is on. Strips are named by letter; a pieced border by unit."""

    number: int
    side: str
    end: str
    first: Literal["sides", "ends"]
    corners: Literal["butted", "mitred"]
    stones: str | None
    side_length: Exact
    end_length: Exact
    parts: tuple[Placed, ...]
    after: Sides
    note: str | None = None
    place: Place | None = None


@dataclass(frozen=True)
class LayoutMade:
    """Rows (or columns) and borders, in the order of sewing. `lines` include sash rows.
    `before_borders` is the measure raw edge to raw edge."""

    by: Literal["rows", "columns"]
    lines: tuple[Line, ...]
    before_borders: Sides
    sash: str | None
    stones: str | None
    borders: tuple[Border, ...]


@dataclass(frozen=True)
class StripSetMade:
    """Strips sewn side by side and cut across again. `segment` is how wide each slice is cut,
    `set_width` the set's measure, `per_set` the slices planned, `fits` how many would fit."""

    strips: tuple[str, ...]
    segment: Fraction
    set_width: Exact
    strip_length: Fraction
    per_set: int
    fits: int
    sets: int
