"""The frozen records of one size of a quilt. Lengths are in the pattern's own unit, x to the
right, y downward; `finished` is without seams, `cut` and `measure` from raw edge to raw edge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.inch import System
from patternbook.methods.made import (
    Border,
    LayoutMade,
    Line,
    Made,
    PiecedMade,
    Placed,
    Sides,
    StripSetMade,
    Turn,
)
from patternbook.notice import Place
from patternbook.quilt.template import Template

__all__ = [
    "Backing",
    "Batting",
    "Binding",
    "Border",
    "CutSize",
    "Fabric",
    "Foot",
    "Key",
    "Kind",
    "LayoutMade",
    "Line",
    "Made",
    "Piece",
    "PiecedMade",
    "Placed",
    "Quilt",
    "Quilting",
    "Run",
    "Settings",
    "Sides",
    "Standing",
    "Status",
    "StripSetMade",
    "Turn",
    "Unit",
]

Status = Literal["given", "worked out", "agrees", "on trust"]
Kind = Literal["exact", "at least", "free"]
Foot = Literal["walking foot", "ruler", "free motion"]
Key = tuple[str, ...]


class CutSize(NamedTuple):
    """Width and length to cut, on the ruler's marks. `down` is None: the width of the cloth."""

    across: Fraction
    down: Fraction | None


@dataclass(frozen=True)
class Standing:
    """How far one number can be believed: `ways` is how many reckonings agree on it."""

    status: Status
    kind: Kind
    ways: int = 1
    at: Place | None = None


@dataclass(frozen=True)
class Fabric:
    """One cloth. `form` is the name of one of the cloth forms; `width` is usable; `size` is of one
    strip, square, quarter or panel."""

    name: str
    use: str
    form: str
    width: Fraction
    tone: Literal["light", "medium", "dark"] | None = None
    colour: str | None = None
    size: CutSize | None = None
    pack: int | None = None
    prints: int = 1
    one_print_per: str = "piece"
    apart: bool = True
    seed: int = 1
    one_way: bool = False
    stated_yards: Fraction | None = None
    stated_metres: Fraction | None = None
    stated_packs: int | None = None
    note: str | None = None
    place: Place | None = None
    key_places: Mapping[str, Place] = field(default_factory=dict)


@dataclass(frozen=True)
class Run:
    """Lengths that a strip must give: `number` of them, each `length` long (a cut length).

    `use` is the unit or border that needs it. `whole`: a whole strip each, as a strip set is
    sewn; otherwise strips are joined or shared as the piece's `join` says.
    """

    use: str
    length: Fraction
    number: int
    whole: bool


@dataclass(frozen=True)
class Piece:
    """What is cut. A patch has `count` (as sewn); a strip has `runs` (how much of it is sewn).

    `cut.down` is None for a strip. `spare` more are cut than are sewn. `host` is the letter
    from whose strips it is cut too. `sideways`: of one-way cloth, and most of them lie on their
    side in the quilt, so that the print runs along their width. `mirrored` of them are cut the
    other hand; `template` is the shape that no ruler cuts; `around` of them meet in one point.
    `stated_*` are the author's own figures, to be checked.
    """

    letter: str
    fabric: str | None
    cut: CutSize
    finished: Sides
    count: int
    runs: tuple[Run, ...] = ()
    mirrored: int = 0
    sideways: bool = False
    spare: int = 0
    diagonal: Literal["once", "twice"] | None = None
    template: Template | None = None
    along: Literal["width", "length"] = "width"
    join: Literal["diagonal", "straight", "none"] = "diagonal"
    host: str | None = None
    strip_width: Fraction | None = None
    stated_count: int | None = None
    stated_squares: int | None = None
    stated_strips: int | None = None
    stated_per_strip: int | None = None
    stated_per_square: int | None = None
    stated_strip_length: Fraction | None = None
    stated_angle: Fraction | None = None
    around: int | None = None
    note: str | None = None
    place: Place | None = None
    key_places: Mapping[str, Place] = field(default_factory=dict)

    @property
    def is_strip(self) -> bool:
        """Whether it is cut the whole width of the cloth."""
        return self.cut.down is None


@dataclass(frozen=True)
class Unit:
    """What is sewn. `placed` are its direct parts as made (a strip set's slice shows its
    strips left to right); `uses` is how many of each part one unit takes. `mirrored` of them are
    made the other hand: 0 where the unit mirrored is the unit turned. `press_at` are the places
    of the words of `press`."""

    name: str
    method: str
    finished: Sides
    measure: Sides
    make: int
    placed: tuple[Placed, ...]
    uses: Mapping[str, int]
    made: Made
    press: tuple[str, ...] = ()
    note: str | None = None
    place: Place | None = None
    mirrored: int = 0
    press_at: tuple[Place, ...] = ()


@dataclass(frozen=True)
class Backing:
    """What the author says of the backing; None where she leaves it to be worked out.

    `by` is where it is quilted: at `home`, on an ordinary sewing machine, or on a `frame`.
    `pieced`: a strip of the top's spare cloth is let in, cut `stated_insert` wide.
    """

    fabric: str | None = None
    over: Fraction = Fraction(4)
    stated_size: CutSize | None = None
    stated_panels: int | None = None
    seams: Literal["crosswise", "lengthwise"] | None = None
    note: str | None = None
    places: Mapping[str, Place] = field(default_factory=dict)
    by: Literal["home", "frame"] | None = None
    pieced: bool = False
    stated_insert: Fraction | None = None


@dataclass(frozen=True)
class Batting:
    """What the author says of the batting; `limit` is how far apart the quilting may be. Off a
    roll so wide (`width`), of which `stated_length` is bought; else in a package."""

    over: Fraction = Fraction(4)
    stated_size: CutSize | None = None
    limit: Fraction | None = None
    note: str | None = None
    places: Mapping[str, Place] = field(default_factory=dict)
    width: Fraction | None = None
    stated_length: Fraction | None = None


@dataclass(frozen=True)
class Binding:
    """What the author says of the binding. `cut` is the strip's width. `bias_from`: a square that
    gives one long strip, or bias strips that are joined. `radius`: the quilt's corners are round.
    """

    fabric: str
    cut: Fraction
    fold: Literal["double", "single"] = "double"
    bias: bool = False
    join: Literal["diagonal", "straight"] = "diagonal"
    stated_strips: int | None = None
    stated_length: Fraction | None = None
    note: str | None = None
    places: Mapping[str, Place] = field(default_factory=dict)
    bias_from: Literal["square", "strips"] = "square"
    radius: Fraction | None = None
    stated_square: Fraction | None = None


@dataclass(frozen=True)
class Label:
    """What is sewn to the back: how large it finishes, of which fabric, and what it says."""

    size: CutSize
    fabric: str | None = None
    lines: tuple[str, ...] = ()
    note: str | None = None
    places: Mapping[str, Place] = field(default_factory=dict)


@dataclass(frozen=True)
class Quilting:
    """One wish of the author's: a design in an area, lines so far apart; None is left to be
    chosen. `move` is by how much a line that divides the area is shifted, by its name."""

    area: str
    design: str | None
    spacing: Fraction | None
    note: str | None = None
    place: Place | None = None
    skill: Foot | None = None
    seed: int | None = None
    name: str | None = None
    merge: tuple[str, ...] = ()
    move: tuple[tuple[str, Fraction], ...] = ()
    exclude: bool = False
    key_places: Mapping[str, Place] = field(default_factory=dict)


@dataclass(frozen=True)
class Again:
    """A figure of a part that a printed pattern gives once more, and where: `value` is a size, a
    length or an amount, a whole number, or the name of a fabric."""

    where: str
    part: str
    figure: str
    value: CutSize | Fraction | int | str
    place: Place


@dataclass(frozen=True)
class Settings:
    """House rules, each printed in the booklet. Amounts of cloth in yards or metres, else the
    pattern's own unit. `straightening` is the part of `spare` that goes into a straight edge;
    `shrinkage` is what washing takes of a hundred.
    `own` are the names of those that the author states."""

    spare: Fraction = Fraction(3)
    straightening: Fraction = Fraction(1, 2)
    yard_step: Fraction = Fraction(1, 8)
    backing_step: Fraction = Fraction(1, 4)
    metre_step: Fraction = Fraction(1, 10)
    trimming: Fraction = Fraction(1, 8)
    binding_over: Fraction = Fraction(10)
    joins: Literal["counted", "not counted"] = "counted"
    backing_seam: Fraction = Fraction(1, 2)
    drift: Fraction = Fraction(1, 32)
    shrinkage: Fraction = Fraction(0)
    cutting: Literal["plain", "shared", "thrifty"] = "plain"
    own: frozenset[str] = field(default=frozenset(), compare=False)

    @property
    def washed(self) -> Fraction:
        """What washing leaves of a length of one."""
        return 1 - self.shrinkage / 100


@dataclass(frozen=True)
class Quilt:
    """One size, exact. `units` stand in the order of making: each after the units it uses, the
    top last. `finished` is the top's size, None in a fragment. `numbers` are the size's own
    whole numbers. `standings` says of each figure (by key, e.g. ("pieces", "A", "cut",
    "across")) where it comes from. `words` are the author's sentences, filled for this size.
    `printed`: it is in print already, and what is not stated is missing there; `again` are
    figures that stand in two places; `key_places` says which keys stand in the source."""

    size: str
    system: System
    seam: Fraction
    width: Fraction
    finished: Sides | None
    fabrics: Mapping[str, Fabric]
    pieces: Mapping[str, Piece]
    units: Mapping[str, Unit]
    top: str | None
    backing: Backing | None
    batting: Batting | None
    binding: Binding | None
    quilting: tuple[Quilting, ...]
    settings: Settings
    standings: Mapping[Key, Standing]
    numbers: Mapping[str, int] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    place: Place | None = None
    again: tuple[Again, ...] = ()
    printed: bool = False
    key_places: Mapping[str, Place] = field(default_factory=dict)
    label: Label | None = None
