"""The frozen records of what is cut and bought for one size; lengths in the pattern's own unit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Final, Literal, NamedTuple

from patternbook.cutting.finishing import (
    BackingFor,
    BackingPlan,
    BattingPlan,
    BindingPlan,
    Insert,
    LabelPlan,
    Panels,
    Patches,
    Seams,
)
from patternbook.quilt.records import CutSize

__all__ = [
    "BINDING",
    "UNNAMED",
    "BackingFor",
    "BackingPlan",
    "BattingPlan",
    "BindingPlan",
    "Buy",
    "Cut",
    "CutStep",
    "CuttingPlan",
    "FabricPlan",
    "Form",
    "Insert",
    "Instead",
    "Join",
    "LabelPlan",
    "Least",
    "LetterPlan",
    "Line",
    "Narrower",
    "OtherStyle",
    "OtherWay",
    "Panels",
    "Patches",
    "Row",
    "Ruler",
    "Seams",
    "Sheet",
    "Strip",
    "Style",
    "WebBox",
    "WebPlan",
    "WebRow",
]

Form = str  # the name of one of the cloth forms
Style = Literal["plain", "shared", "thrifty"]

BINDING: Final = "binding"  # stands in a cut where a piece has its letter
UNNAMED: Final = ""  # the cloth of pieces that name no fabric, in a fragment


@dataclass(frozen=True)
class Cut:
    """Like pieces that lie one behind the other in a strip.

    Each takes `along` of the strip's length and `across` of its width (less than the strip:
    it is trimmed, or several lie in `lanes` side by side). `use` is the unit or border that a
    length of a strip piece is for; `whole`: the strip is sewn whole, and `along` is what is used.
    Over them in the same columns, in thrifty cutting, lie the pieces `above`, none longer.
    """

    letter: str
    along: Fraction
    across: Fraction
    number: int
    lanes: int = 1
    use: str | None = None
    whole: bool = False
    above: tuple[Cut, ...] = ()

    @property
    def stacked(self) -> tuple[Cut, ...]:
        """It and all that lies above it."""
        return (self, *self.above)

    @property
    def columns(self) -> int:
        """How many cuts across the strip they take."""
        return -(-self.number // self.lanes)

    @property
    def taken(self) -> Fraction:
        """How much of the strip's length they take."""
        return self.columns * self.along


@dataclass(frozen=True)
class Join:
    """Strips sewn end to end: what each join takes, and the length of all together."""

    kind: Literal["diagonal", "straight"]
    loss: Fraction
    length: Fraction


@dataclass(frozen=True)
class Strip:
    """So many (`times`) strips cut alike. No `cuts`: spare ones.

    Where they are joined, `cuts` are the cuts of all of them together, else of each.
    A strip `along` the length is a length of the cloth from selvedge to selvedge, `width` long;
    its pieces lie side by side across the cloth. One `beside` these is cut from the width that
    they leave, and takes no length of its own.
    """

    width: Fraction
    length: Fraction
    times: int
    cuts: tuple[Cut, ...] = ()
    along: Literal["width", "length"] = "width"
    join: Join | None = None
    beside: bool = False

    @property
    def run(self) -> Fraction:
        """The length that the cuts are taken from."""
        return self.join.length if self.join else self.length

    @cached_property
    def left(self) -> Fraction:
        """What is over at the end of each strip, or of all of them joined."""
        return self.run - sum((cut.taken for cut in self.cuts), Fraction(0))

    @cached_property
    def cloth(self) -> Fraction:
        """How much of the cloth's length all of them take."""
        return Fraction(0) if self.beside else self.width * self.times

    @cached_property
    def letters(self) -> tuple[str, ...]:
        """The letters cut from it, each once."""
        return tuple(dict.fromkeys(one.letter for cut in self.cuts for one in cut.stacked))

    def pieces(self, letter: str) -> int:
        """How many of one letter all of them give (squares, where they are cut diagonally)."""
        stacked = (one for cut in self.cuts for one in cut.stacked)
        each = sum(one.number for one in stacked if one.letter == letter)
        return each if self.join else each * self.times


class Row(NamedTuple):
    """Strips in a pre-cut piece: so many of the strip at this place in the fabric's list."""

    strip: int
    times: int


@dataclass(frozen=True)
class Sheet:
    """So many pre-cut squares, quarters or panels cut alike into the `rows` of strips.

    The strips run along `across`, or along `down` where it is `turned`.
    """

    across: Fraction
    down: Fraction
    times: int
    rows: tuple[Row, ...]
    turned: bool = False


class OtherWay(NamedTuple):
    """The same letter from strips of its other side's width."""

    strip_width: Fraction
    strips: int
    cloth: Fraction


@dataclass(frozen=True)
class LetterPlan:
    """How one letter is cut.

    `needed` are the patches (or lengths) to be cut, spare ones included; `cuts` the squares or
    pieces that are cut off the strip for them, each giving `each` patches. `fits` is how many a
    strip holds, `per_strip` how many are cut from it, `own` the strips she must cut at least,
    `strips` those that are cut; a guest has none of its own. `joined`: longer than the cloth.
    """

    letter: str
    fabric: str
    host: str | None
    size: CutSize
    strip_width: Fraction
    along: Fraction | None
    needed: int
    cuts: int
    each: int
    fits: int
    per_strip: int
    own: int
    strips: int
    joined: bool = False
    exact_fit: bool = False
    exact_count: bool = False
    other: OtherWay | None = None

    @property
    def yields(self) -> int:
        """The patches that are cut."""
        return self.cuts * self.each


class Line(NamedTuple):
    """One line of a sum of cloth: `strips` of `width` each for `what` (a letter, the binding,
    the backing)."""

    what: str
    strips: int
    width: Fraction

    @property
    def length(self) -> Fraction:
        """What they take of the cloth."""
        return self.strips * self.width


@dataclass(frozen=True)
class Buy:
    """What is bought of one fabric.

    Of the bolt: `amount` in yards or metres, of which `lines` are used, `straightening` squares
    the edge and `spare` is left; `metres` is the same purchase in metres. `more` tells how many
    more of each letter the spare cloth gives; `each_print` is bought of each where it is a
    mixture of prints. Pre-cut: `number` strips, squares, quarters or
    panels in `packs` (None: only the packet knows how many it holds) with `spare_precuts` over.
    """

    lines: tuple[Line, ...] = ()
    needed: Fraction = Fraction(0)
    amount: Fraction | None = None
    unit: Literal["yd", "m"] = "yd"
    straightening: Fraction = Fraction(0)
    spare: Fraction = Fraction(0)
    metres: Fraction | None = None
    each_print: Fraction | None = None
    more: Mapping[str, int] = field(default_factory=dict)
    number: int | None = None
    packs: int | None = None
    spare_precuts: int | None = None
    stated: bool = False


class OtherStyle(NamedTuple):
    """What another way of cutting the same fabric takes, and what is then bought (in yards or
    metres, or so many pre-cuts); `bound`: no plan of that style is shorter."""

    style: Style
    length: Fraction
    bound: Fraction
    amount: Fraction | None
    number: int | None
    proven: bool = True


class Instead(NamedTuple):
    """Pre-cuts (or cloth off the bolt) from which the same can be cut: so many pieces in so many
    packs (None: only the packet knows), or an `amount` in yards or metres. No plan takes fewer
    than `bound`."""

    form: Form
    size: CutSize | None
    number: int
    bound: int
    packs: int | None = None
    amount: Fraction | None = None


class Narrower(NamedTuple):
    """What a reader buys whose cloth is only so wide; `holds`: the plan as printed still does.
    `amount` is None where something is too long for that width."""

    width: Fraction
    amount: Fraction | None
    holds: bool


@dataclass(frozen=True)
class Least:
    """Why no plan of this style takes less: a price for a piece of each kind, in millionths of
    `unit`, at which no strip is worth more than it is wide. `kinds` are the pieces priced: name,
    sides and number in units, whether they turn, whether they want strips of their own width."""

    unit: Fraction
    width: int
    kinds: tuple[tuple[str, int, int, int, bool, bool], ...]
    prices: tuple[tuple[tuple[str, int], ...], ...]
    blocks: tuple[tuple[int, int], ...]  # width and length of each block of lengthwise pieces
    bound: int  # what the prices alone prove
    tried: bool = False  # the rest by trying every strip that a shorter plan could have
    highest: int | None = None  # no strip is wider, unless a piece is
    # Of a pre-cut piece, as long as this: the prices are in millionths of one, the bound in pieces.
    down: int | None = None


class Ruler(NamedTuple):
    """A ruler or a mat, width before length, in the pattern's unit."""

    across: Fraction
    down: Fraction


@dataclass(frozen=True)
class CutStep:
    """One action at the cutting table.

    `straighten` the edge; cut `times` strips of `width`; `trim` the selvedge ends; `subcut`
    `per_strip` pieces of `length`, `total` in all; cut squares on the `diagonal`; `join` end to
    end. `across` is the pieces' width where they are trimmed from the strip's. `folds`: 0 open, 1
    selvedge to selvedge, 2 and more again with parallel edges. `measure` is what the ruler is
    laid to (half of it, or a quarter, where the fold of the cloth lies under it, `on_fold`).
    """

    order: int
    kind: Literal["straighten", "strip", "trim", "subcut", "diagonal", "join"]
    letters: tuple[str, ...]
    width: Fraction | None = None
    length: Fraction | None = None
    times: int = 1
    per_strip: int = 0
    total: int = 0
    across: Fraction | None = None
    layers: int = 1
    folds: int = 0
    measure: Fraction | None = None
    on_fold: bool = False
    rulers: tuple[Ruler, ...] = ()
    mat: Ruler | None = None
    reason: Literal["edge", "usual", "long", "taped", "wide", "stack", "one by one"] = "usual"


@dataclass(frozen=True)
class FabricPlan:
    """All that comes off one fabric, in the order of cutting.

    `strips` lists them all, whatever the form; `sheets` say how they lie in pre-cut squares,
    quarters and panels. `length` is the cloth that the strips take, `bound` the least length of
    this style of cutting, `number_bound` the least number of pre-cuts. `proven`: nothing less
    need be bought in this style; `limit_hit`: the search ended before that was settled.
    `least_width` is the narrowest usable width at which the plan still holds. `others` are the
    other styles, `instead` other cloth, `narrower` what readers of narrower cloth buy, `one_way`
    what those buy whose print has one way up. `other_ways` are the best plans of the style with
    the long pieces lying otherwise, along the cloth or across it, none of which buys less.
    """

    fabric: str
    form: Form
    width: Fraction
    strips: tuple[Strip, ...]
    sheets: tuple[Sheet, ...]
    length: Fraction
    bound: Fraction
    least_width: Fraction | None
    yields: Mapping[str, int]
    buy: Buy
    steps: tuple[CutStep, ...]
    style: Style = "plain"
    proven: bool = True
    limit_hit: bool = False
    least: Least | None = None
    number_bound: int | None = None
    others: tuple[OtherStyle, ...] = ()
    instead: tuple[Instead, ...] = ()
    narrower: tuple[Narrower, ...] = ()
    one_way: Fraction | None = None
    other_ways: tuple[FabricPlan, ...] = ()


class WebBox(NamedTuple):
    """The room of one traced shape on the web, the margin all round included: `x` across the web,
    `y` along it. `turned`: the shape is traced lying on its side."""

    letter: str
    x: Fraction
    y: Fraction
    across: Fraction
    down: Fraction
    turned: bool = False


class WebRow(NamedTuple):
    """So many (`times`) rows of the web alike: how long each is, and how many of which letter."""

    down: Fraction
    shapes: tuple[tuple[str, int], ...]
    times: int


@dataclass(frozen=True)
class WebPlan:
    """Fusible web: a box for each shape that is traced, in rows across its width. Cut out it is
    `margin` larger than the shape all round."""

    fabric: str
    width: Fraction
    margin: Fraction
    boxes: tuple[WebBox, ...]
    rows: tuple[WebRow, ...]
    length: Fraction
    buy: Buy


@dataclass(frozen=True)
class CuttingPlan:
    """All that is cut and bought for one size. Pieces without a fabric are under UNNAMED; fusible
    web is among the `webs`."""

    size: str
    fabrics: Mapping[str, FabricPlan]
    letters: Mapping[str, LetterPlan]
    yields: Mapping[str, int]
    backing: BackingPlan | None = None
    batting: BattingPlan | None = None
    binding: BindingPlan | None = None
    webs: Mapping[str, WebPlan] = field(default_factory=dict)
    label: LabelPlan | None = None
