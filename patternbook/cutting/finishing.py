"""The frozen records of the finishing: backing, batting, binding and label."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.quilt.records import CutSize

Seams = Literal["crosswise", "lengthwise"]


class Patches(NamedTuple):
    """So many pieces of one fabric's spare cloth for a strip that is let into the backing: as
    wide (`across`) as the strip is cut, `along` it so long."""

    fabric: str
    number: int
    across: Fraction
    along: Fraction


@dataclass(frozen=True)
class Insert:
    """A strip of patches between the lengths of the backing, cut `width` wide. Its patches come
    to `made` end to end, of which `length` is used. Where there is one length of cloth only, it
    is cut apart along its length, its first part `split` wide (else 0)."""

    width: Fraction
    length: Fraction
    made: Fraction
    patches: tuple[Patches, ...]
    split: Fraction = Fraction(0)


@dataclass(frozen=True)
class Panels:
    """One way to make the backing: `panels` lengths of cloth, each `each` long, seamed side by
    side to `made`; `length` of cloth in all, `amount` to buy, or so many `metres`. It holds from
    `least_width` up. An `insert` lies between the first two, or in the only one."""

    seams: Seams
    panels: int
    each: Fraction
    made: Fraction
    length: Fraction
    amount: Fraction
    metres: Fraction
    least_width: Fraction
    insert: Insert | None = None

    @property
    def joins(self) -> int:
        """How many seams run through it."""
        return max(2, self.panels) if self.insert else self.panels - 1


@dataclass(frozen=True)
class BackingFor:
    """The backing's size and purchase for one way of quilting."""

    over: Fraction
    size: CutSize
    best: Panels


@dataclass(frozen=True)
class BackingPlan:
    """The backing as it is made; `other` is the other direction of the seams.

    Where `fabric` is used for more than the backing, its FabricPlan counts this cloth too.
    `fewest` is how it could be made where more panels are stated than it takes, `whole` how it
    is made without a strip of spare cloth let in. `wide`: of cloth that is sold so wide that no
    seam should be needed. `by` is how it is said to be quilted.
    """

    fabric: str | None
    over: Fraction
    size: CutSize
    cloth_width: Fraction
    seam: Fraction
    best: Panels
    other: Panels
    home: BackingFor
    frame: BackingFor
    unit: Literal["yd", "m"]
    stated: bool = False
    fewest: Panels | None = None
    whole: Panels | None = None
    wide: bool = False
    by: Literal["home", "frame"] | None = None


@dataclass(frozen=True)
class BattingPlan:
    """The batting's least size, and the packaged size that holds it: `packs` of them, joined edge
    to edge (None: none does). `roll`: bought off a roll so wide, lengths laid edge to edge."""

    over: Fraction
    size: CutSize
    pack: CutSize | None
    stated: bool = False
    packs: int = 1
    roll: Panels | None = None
    roll_width: Fraction | None = None


@dataclass(frozen=True)
class BindingPlan:
    """The binding: `length` that is needed, `strips` of `cut` width that are cut (`least` would
    do), `made` long once joined.

    `rule` is how many strips the rule of thumb gives (length ÷ width of the cloth). Bias: cut
    from `squares` of side `square`, in one long strip or in `bias_strips` that are joined, and
    no `strips` are counted. `radius` is that of rounded corners. `overlap` is how far the two
    ends lie over one another where they are joined.
    """

    fabric: str
    cut: Fraction
    perimeter: Fraction
    length: Fraction
    strips: int
    least: int
    strip_length: Fraction
    join: Literal["diagonal", "straight"]
    loss: Fraction
    made: Fraction
    rule: int
    squares: int = 0
    square: Fraction | None = None
    bias_strips: int = 0
    radius: Fraction | None = None
    overlap: Fraction = Fraction(0)

    @property
    def left(self) -> Fraction:
        """What is over once it lies round the quilt and its ends overlap as reckoned."""
        return self.made - self.length

    @property
    def joins(self) -> int:
        """The seams that make one length of it: between strips, or between the squares' lengths."""
        return max(0, (self.strips or self.bias_strips or self.squares) - 1)


@dataclass(frozen=True)
class LabelPlan:
    """The label as it is cut, hems included; `finished` as it is sewn on. `source` is the fabric
    whose spare cloth holds it, "backing" for what is trimmed off the backing, None where neither
    does. `lines` are what is written on it, with room for `room` of them."""

    finished: CutSize
    cut: CutSize
    source: str | None
    fabrics: tuple[str, ...]
    lines: tuple[str, ...]
    room: int
    of_backing: bool = False
