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
    """How a part lies: mirrored left to right first, then so many quarter turns clockwise, and
    an eighth more where it is set on point."""

    quarters: int = 0
    mirrored: bool = False
    on_point: bool = False

    @property
    def sideways(self) -> bool:
        """Whether width and length have changed places."""
        return self.quarters % 2 == 1

    @property
    def eighths(self) -> int:
        """How many eighth turns clockwise, 0 to 7."""
        return self.quarters * 2 + self.on_point


class Spot(NamedTuple):
    """A point, measured from the top left corner of what it lies in."""

    x: Exact
    y: Exact


class Arc(NamedTuple):
    """The edge from corner number `edge` (from 0) to the next is part of a circle. `hollow`: the
    patch lies outside that circle."""

    edge: int
    centre: Spot
    radius: Exact
    hollow: bool


class Outline(NamedTuple):
    """The seam lines around a patch that is no upright rectangle: its corners in order, clockwise
    as seen, no three in a line; edges are straight but for the `arcs`."""

    corners: tuple[Spot, ...]
    arcs: tuple[Arc, ...] = ()


class Placed(NamedTuple):
    """A part in its place inside a unit: its top left corner, and its size as it lies.

    `outline` is given (in the unit's own measures) where it is no upright rectangle; the corner
    and the size are then those of the box around it. A unit is always its whole rectangle,
    turned as it lies. `laid_on`: it lies on other patches (appliqué) and covers none of the top.
    """

    part: str
    turn: Turn
    x: Exact
    y: Exact
    across: Exact
    down: Exact
    outline: Outline | None = None
    laid_on: bool = False


@dataclass(frozen=True)
class Line:
    """One row or column as it is joined, its parts in order. `role` tells a row of blocks from
    a sash row between; `across` and `down` are finished. A row on the `slant` runs from the
    lower left to the upper right, and is measured as if it lay straight."""

    role: Literal["row", "column", "sash", "slant"]
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
    `before_borders` is the measure raw edge to raw edge. Set on point, the rows lie on the slant
    and the `corners` are sewn on last. `edge`: the outline of a unit that is no rectangle."""

    by: Literal["rows", "columns"]
    lines: tuple[Line, ...]
    before_borders: Sides
    sash: str | None
    stones: str | None
    borders: tuple[Border, ...]
    setting: Literal["straight", "on point", "hexagons"] = "straight"
    corners: tuple[Placed, ...] = ()
    edge: Outline | None = None


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


class Taking(NamedTuple):
    """So many of one part that go into one go."""

    part: str
    number: int


class Drawn(NamedTuple):
    """One shape of a sketch, points in the sketch's own measures (raw, y downward).

    A `patch` shows the right side of its letter's cloth, a `back` the wrong side; lines are a
    pencil `mark`, a seam to `sew`, where to `cut`, or a `fold`; `press` is an arrow.
    """

    kind: Literal["patch", "back", "mark", "sew", "cut", "fold", "press"]
    points: tuple[tuple[float, float], ...]
    letter: str = ""


Sketch = tuple[Drawn, ...]


@dataclass(frozen=True)
class Action:
    """One thing that is done to sew a unit, in a sentence. {0}, {1} … in `words` stand for the
    lengths and sizes in `figures`; a part is named by its letter as it is. `sketch` shows it."""

    kind: Literal["lay", "mark", "sew", "cut", "press", "trim", "trace", "fuse", "baste", "fold"]
    words: str
    figures: tuple[Exact | Sides, ...] = ()
    sketch: Sketch = ()


class SewnSeam(NamedTuple):
    """A seam inside a unit as made, from one end to the other, between two of its parts (by their
    numbers among the placed). `toward` is the one that it is pressed to where the author says
    nothing and no tone tells; None: pressed open."""

    start: Spot
    end: Spot
    between: tuple[int, int]
    toward: int | None
    settled: bool = False  # by the method itself: no tone changes it


class Fusing(NamedTuple):
    """What fuses the shapes that are laid on: a web, listed as a fabric, and how much more of it
    than the shape is cut all round."""

    web: str
    margin: Fraction


@dataclass(frozen=True)
class PiecedMade:
    """A unit that a method of its own makes: one go takes `takes` and gives `gives` units.

    `actions` are done in order in each go. `before` is what a unit measures, raw edge to raw
    edge, before it is trimmed (None: it is not trimmed). `sewn` is the length of all seams that
    one go sews, `stitched` how many there are. `fused`: what its shapes are fused with.
    """

    word: str
    gives: int
    goes: int
    takes: tuple[Taking, ...]
    actions: tuple[Action, ...]
    before: Sides | None
    seams: tuple[SewnSeam, ...]
    stitched: int
    sewn: Exact
    fused: Fusing | None = None


Made = LayoutMade | StripSetMade | PiecedMade
