"""The frozen records of what lies behind the top and around it: backing, batting, binding."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from patternbook.quilt.records import CutSize

Seams = Literal["crosswise", "lengthwise"]


@dataclass(frozen=True)
class Panels:
    """One way to make the backing: `panels` lengths of cloth, each `each` long, seamed side by
    side to `made`; `length` of cloth in all, `amount` to buy, or so many `metres`. It holds from
    `least_width` up."""

    seams: Seams
    panels: int
    each: Fraction
    made: Fraction
    length: Fraction
    amount: Fraction
    metres: Fraction
    least_width: Fraction


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
    `fewest` is how it could be made where more panels are stated than it takes.
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


@dataclass(frozen=True)
class BattingPlan:
    """The batting's least size, and the packaged size that holds it (None: none does)."""

    over: Fraction
    size: CutSize
    pack: CutSize | None
    stated: bool = False


@dataclass(frozen=True)
class BindingPlan:
    """The binding: `length` that is needed, `strips` of `cut` width that are cut (`least` would
    do), `made` long once joined.

    `rule` is how many strips the rule of thumb gives (length ÷ width of the cloth). Bias: cut
    from `squares` of side `square`, and no strips are counted.
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
