"""The frozen records of sewing one size in order; measures are from raw edge to raw edge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.methods.made import Action
from patternbook.quilt.pressing import PressingPlan, Way
from patternbook.quilt.records import Sides, Turn

StepKind = Literal["strips", "segments", "line", "lines", "border", "piece"]
FinishKind = Literal["layer", "baste", "quilt", "trim", "bind", "label"]


class Taken(NamedTuple):
    """A part that a step takes: how many for one of what it makes, and for all of them."""

    part: str
    one: int
    all: int


class Laid(NamedTuple):
    """So many like parts side by side, as they lie in a row from the left or a column from the
    top."""

    part: str
    turn: Turn
    times: int


class Group(NamedTuple):
    """What a round leaves: so many groups of `parts` parts. `measure` is None where groups of
    that many parts differ in size."""

    parts: int
    one: int
    all: int
    measure: Sides | None


@dataclass(frozen=True)
class Round:
    """One round of joining in pairs: `joins` seams for one, `all` for all that are made; `left`
    groups are left for one. `odd`: one group waits for a later round. `part`: only these are
    joined yet, a long run of them among others; None: whatever lies side by side."""

    number: int
    part: str | None
    joins: int
    all: int
    odd: bool
    left: int
    groups: tuple[Group, ...]


@dataclass(frozen=True, kw_only=True)
class Step:
    """One step. It makes `make` for the whole quilt, `one` for each unit.

    `seams`, `matches` (places where seams have to meet) and `same_way` (of those, pressed one
    way, so that they cannot nest) are in one; `seam_length` is sewn in all of them. `last`: the
    unit is finished with it. `number` is given once all steps are in order.
    """

    unit: str
    kind: StepKind
    one: int
    make: int
    parts: tuple[Taken, ...]
    measure: Sides
    seams: int
    seam_length: Exact
    number: int = 0
    matches: int = 0
    same_way: int = 0
    rounds: tuple[Round, ...] = ()
    press: tuple[Way, ...] = ()
    note: str | None = None
    last: bool = False


@dataclass(frozen=True, kw_only=True)
class StripStep(Step):
    """Strips sewn side by side into sets; `make` counts sets, as long as their strips."""

    strips: tuple[str, ...]
    strip_length: Fraction
    word: str
    stated: bool


@dataclass(frozen=True, kw_only=True)
class SegmentStep(Step):
    """Sets cut across into slices `segment` wide: `cut` in all, of which `spare` are not sewn
    on. `per_set` are planned from each set, `fits` would fit."""

    segment: Fraction
    sets: int
    per_set: int
    fits: int
    cut: int
    spare: int


class Pressed(NamedTuple):
    """Lines that are pressed alike: their numbers, and how, as `stated` or by default."""

    numbers: tuple[int, ...]
    word: str
    stated: bool
    seams: tuple[Way, ...]


@dataclass(frozen=True, kw_only=True)
class LineStep(Step):
    """The parts of one row or column joined, and of all that hold the same in one order.

    `numbers` count lines of this role from 1, `lines` are indexes into the layout's lines. A row
    on the slant is measured without the triangles at its ends, of which there are `triangles`.
    `drift` is how far off the line is if every seam is off by the setting on both sides.
    `pressed` has one entry where all are pressed alike; `press` is that of the first.
    """

    role: Literal["row", "column", "sash", "slant"]
    numbers: tuple[int, ...]
    lines: tuple[int, ...]
    sequence: tuple[Laid, ...]
    drift: Fraction
    pressed: tuple[Pressed, ...]
    triangles: int = 0
    papers: bool = False

    @property
    def word(self) -> str:
        """How the first of them is pressed, in a word."""
        return self.pressed[0].word

    @property
    def stated(self) -> bool:
        """Whether that word is the author's."""
        return self.pressed[0].stated


@dataclass(frozen=True, kw_only=True)
class LinesStep(Step):
    """The lines joined: `count` of them, `blocks` without sash rows. `parts` are only lines that
    are one part alone, and the four `corners` that are sewn on when all rows on the slant are
    joined; `sequence` names lines of one part in order where every line is one. `papers`: edge to
    edge over papers, as are the lines of such a layout."""

    by: Literal["rows", "columns"]
    count: int
    blocks: int
    sequence: tuple[Laid, ...]
    drift: Fraction
    corners: str | None = None
    slanting: bool = False
    papers: bool = False


@dataclass(frozen=True, kw_only=True)
class BorderStep(Step):
    """One pair of a border's strips. `length` is their planned cut length, to be compared with
    the measure of the quilt; `width` is finished. `stones` are sewn to the ends of the pair
    first. `joined`: longer than the cloth is wide. `first`: the first pair of this border."""

    border: int
    pair: Literal["sides", "ends"]
    first: bool
    part: str
    length: Exact
    width: Exact
    corners: Literal["butted", "mitred"]
    stones: str | None
    joined: bool


@dataclass(frozen=True, kw_only=True)
class PieceStep(Step):
    """A unit sewn in a way of its own: `actions` in order, done `goes` times, each giving `gives`
    units; `spare` of them are not sewn on. `parts` go in, `make` units are wanted. `toward` are
    the parts that the inner seams are pressed to, each once, None among them where one is open.
    """

    word: str
    actions: tuple[Action, ...]
    goes: int
    gives: int
    spare: int
    before: Sides | None
    toward: tuple[str | None, ...]


@dataclass(frozen=True)
class Finish:
    """One step once the top is made, as kind and numbers.

    `size` is the top's raw measure, for the binding the finished one. `spacing` is how far
    apart the layers are pinned, from and to. `over` is how much backing stands out each side.
    """

    kind: FinishKind
    size: Sides | None = None
    spacing: tuple[Fraction, Fraction] | None = None
    over: Fraction | None = None
    batting_over: Fraction | None = None
    perimeter: Exact | None = None
    width: Fraction | None = None
    fold: Literal["double", "single"] | None = None


class Totals(NamedTuple):
    """The whole top: seams, their length, thread for them, places to match and how many of them
    cannot nest, and patches sewn."""

    seams: int
    seam_length: Exact
    thread: Exact
    matches: int
    same_way: int
    pieces: int


@dataclass(frozen=True)
class SewingPlan:
    """All that is sewn for one size, in order.

    `sewn` counts the pieces and `joined` the units that the steps sew into something, `made`
    the units that they make: recounted from the steps, not taken from the quilt.
    """

    size: str
    steps: tuple[Step, ...]
    pressing: Mapping[str, PressingPlan]
    sewn: Mapping[str, int]
    joined: Mapping[str, int]
    made: Mapping[str, int]
    totals: Totals
    finishing: tuple[Finish, ...]

    def of(self, unit: str) -> tuple[Step, ...]:
        """The steps of one unit, in order."""
        return tuple(step for step in self.steps if step.unit == unit)
