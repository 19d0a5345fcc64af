"""The frozen records of the quilting of one size. Lengths are floats in the pattern's own unit, x
to the right, y downward from the top left corner of the finished top; areas in square units."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, NamedTuple

from shapely import Polygon

from patternbook.quilt import records as quilted

Foot = quilted.Foot
Spot = tuple[float, float]
Path = tuple[Spot, ...]
# What kind of place an area is. `body`: all of the top inside its borders, where no open ground
# is to be told from the piecing. `figure`: a shape that is laid on.
AreaKind = Literal[
    "figure", "ground", "square", "band", "corner", "channel", "border", "piecing", "body"
]
LineKind = Literal["ditch", "beside", "marked"]
LegKind = Literal["ditch", "beside", "marked", "fill", "edge", "step"]


def measured(path: Path) -> float:
    """How long a path is."""
    return sum(math.dist(one, other) for one, other in pairwise(path))


class Rules(NamedTuple):
    """The measures of the house in the pattern's own unit.

    `inch` is one inch in that unit, `step` the finest mark that a spacing is told in (an eighth,
    or a quarter of a centimetre), `edge` what designs keep free of the finished edge, `seam` what
    they keep free of a seam, `beside` how far a line lies from a seam that is pressed open.
    """

    inch: float
    step: float
    edge: float
    seam: float
    beside: float


class Cloth(NamedTuple):
    """One patch as it lies: `number` among the patches of the top; `plain` where its fabric is
    one print only, so that neighbours of it make one ground. `laid_on`: on other patches."""

    number: int
    letter: str
    fabric: str
    shape: Polygon
    plain: bool
    laid_on: bool
    border: int = 0  # which border it is part of, from 1
    units: tuple[str, ...] = ()  # names of the units that it is in
    panel: bool = False  # one printed picture


class Seam(NamedTuple):
    """What two patches share of a seam, as a path (two points, more where it is curved).

    `depth` is how deep the two lie in the same units: 1 between the parts of the top (its blocks,
    rows, borders), more inside of blocks. `opened`: it is pressed open. `border`: a border is
    sewn on along it.
    """

    path: Path
    patches: tuple[int, int]
    depth: int
    opened: bool
    border: bool


class Run(NamedTuple):
    """Seams that follow one another in one straight line, from `start` to `end`; `depth` is the
    least of theirs. `through`: it runs from edge to edge of the finished top, or of what lies
    within the borders."""

    start: Spot
    end: Spot
    depth: int
    opened: bool
    border: bool
    through: bool

    @property
    def length(self) -> float:
        return math.dist(self.start, self.end)


@dataclass(frozen=True)
class Top:
    """The finished top as the quilting sees it. `edge` is its finished edge (not always a
    rectangle), `inside` what lies within the borders."""

    rules: Rules
    edge: Polygon
    inside: Polygon
    cloths: tuple[Cloth, ...]
    seams: tuple[Seam, ...]
    runs: tuple[Run, ...]


class Wish(NamedTuple):
    """What the author says of an area. `area` is `all over`, `ground`, `piecing`, `border 1`, the
    name of a unit or piece, or the letter of an area. Lengths in the pattern's unit."""

    area: str
    design: str | None = None
    spacing: float | None = None
    skill: Foot | None = None
    seed: int | None = None
    name: str | None = None
    merge: tuple[str, ...] = ()
    move: Mapping[str, float] | None = None
    exclude: bool = False


@dataclass(frozen=True)
class Wishes:
    """All that the author says of the quilting, and where she says nothing, the house's way.

    `limit`: how far apart the batting allows (`limit_stated`, else assumed). `sampler`: as many
    designs as there are, instead of three or four. `send`: it goes to a long-arm quilter.
    """

    skill: Foot
    limit: float
    limit_stated: bool
    seed: int = 1
    sampler: bool = False
    areas: tuple[Wish, ...] = ()


@dataclass(frozen=True)
class Area:
    """One area to be filled. `letter` is that of its kind: areas of one letter are alike and get
    the same design; `number` counts them from the top left, row by row. `name` is the author's.

    `piecing` is how busy it is: the length of the seams inside of it per square unit. `centre` is
    the middle line of a channel. `like` is the size of the area, to the step, by which it is told
    alike. `excluded`: the author wants nothing there.
    """

    letter: str
    number: int
    kind: AreaKind
    shape: Polygon
    piecing: float
    letters: tuple[str, ...] = ()  # of the pieces in it
    centre: Path | None = None
    name: str | None = None
    excluded: bool = False
    borders: tuple[int, ...] = ()  # which borders it is part of, from 1
    units: tuple[str, ...] = ()  # names of the units that lie in it
    joined: tuple[str, ...] = ()  # what the author calls the areas that it was joined from

    @property
    def key(self) -> str:
        """What it is called on the page: `A`, or `A 3` where there are several."""
        return f"{self.letter} {self.number}"


class Marked(NamedTuple):
    """A line that has to be marked and is stitched in the first stage: it runs on from a seam.
    `words` say how to mark it, all lengths on the ruler's marks; `kind` for the picture."""

    path: Path
    kind: Literal["channel", "echo", "cut", "corner"]
    words: str


@dataclass(frozen=True)
class Divided:
    """The areas of a top, in the order of their letters and numbers, and the lines to mark. Areas
    do not overlap, and cover the top but for nothing."""

    areas: tuple[Area, ...]
    marked: tuple[Marked, ...]


class Drawn(NamedTuple):
    """What a design makes of an area: its paths (one wherever that can be), each from where the
    needle goes down to where it stops; `closed` where it ends where it began. `spacing` is how
    far apart its lines came to lie (on the step). `touches`: it runs up to the seams around."""

    paths: tuple[Path, ...]
    spacing: float
    closed: bool = False
    touches: bool = False


@dataclass(frozen=True)
class Filled:
    """One area with its design. `gap` is the widest open circle in it, its rim counted; `density`
    the length of line per square unit, what lies on the rim not counted."""

    area: Area
    design: str
    foot: Foot
    drawn: Drawn
    gap: float
    density: float


class AnchorLine(NamedTuple):
    """A line of the first stage: it must be stitched. In the ditch of a seam, beside a seam that
    is pressed open, or marked."""

    path: Path
    kind: LineKind
    border: bool = False


class Leg(NamedTuple):
    """A part of a walk that is stitched without turning to something else.

    `edge`: along the finished edge, in the seam allowance, where the binding will cover it.
    `step`: the short way from a seam to where a design begins. `again`: stitched before.
    `area` is the key of the area that a fill belongs to.
    """

    kind: LegKind
    path: Path
    area: str = ""
    again: bool = False


class Walk(NamedTuple):
    """One thread: its legs follow one another without a jump."""

    legs: tuple[Leg, ...]

    @property
    def path(self) -> Path:
        found: list[Spot] = []
        for leg in self.legs:
            found += leg.path[1:] if found and found[-1] == leg.path[0] else leg.path
        return tuple(found)


@dataclass(frozen=True)
class Stage:
    """What is sewn with one foot: walks in order. `needed` is the length that had to be stitched,
    `extra` what was added to come from one to the next, `bound` the least that this can be for so
    many walks; `proven`: extra is that least. Stages of fills have no bound (`None`)."""

    name: Literal["anchor", "lines", "free motion", "border"]
    foot: Foot
    walks: tuple[Walk, ...]
    needed: float
    extra: float
    bound: float | None = None
    proven: bool = False


class Gap(NamedTuple):
    """The diameter of the widest circle, its middle on the top, that no stitch crosses: between
    `low` and `high`. `at` is its middle."""

    low: float
    high: float
    at: Spot


class BobbinChange(NamedTuple):
    """Where the bobbin is changed: in which stage and walk (from 0), at which point, how good a
    place it is, and how much of the bobbin is used by then (a share)."""

    stage: int
    walk: int
    at: Spot
    place: Literal["edge", "between", "corner", "inside"]
    used: float


@dataclass(frozen=True)
class Sums:
    """What the plan comes to. Lengths in the pattern's unit, thread in its shop unit (yd or m).

    `stitched` is all the needle goes, `once` what is left when nothing counts twice; `passes`
    says how much is stitched so many times (1, 2, 3 …). `evenness` is the spread of the density
    between areas (standard deviation over mean, areas weighed by their size). `hours` is a range.
    """

    stitched: float
    once: float
    passes: Mapping[int, float]
    starts: int
    bobbins: int
    changes: tuple[BobbinChange, ...]
    thread_top: float
    thread_bobbin: float
    hours: tuple[float, float]
    evenness: float

    @property
    def retraced(self) -> float:
        """The share that is stitched again."""
        return (self.stitched - self.once) / self.stitched if self.stitched else 0.0


@dataclass(frozen=True)
class QuiltingPlan:
    """The whole stitchable plan of one size. `gap` counts the binding as a line; `gap_bare` does
    not. `others` says for each letter what it would be in each way of sewing."""

    top: Top
    wishes: Wishes
    divided: Divided
    fills: tuple[Filled, ...]
    lines: tuple[AnchorLine, ...]
    stages: tuple[Stage, ...]
    gap: Gap
    gap_bare: Gap
    sums: Sums
    others: Mapping[str, Mapping[Foot, str]]

    @property
    def letters(self) -> tuple[str, ...]:
        """The letters of the areas, each once."""
        return tuple(dict.fromkeys(area.letter for area in self.divided.areas))
