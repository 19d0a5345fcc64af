"""A roll of strips, all of one width, as long as cloth is wide; bought by the pack."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.forms.form import ClothForm, Sides, along_the_strip

# Up to forty strips, 2 1/2 in wide; others are 1 1/2, 3, 5 and 6 in (trade facts 4.1, 4.2). As
# long as the narrowest usable cloth is wide: "40, 42 or 44: read the packet". 2 1/2 in are 6.35 cm.
OFFERED: Final[dict[str, tuple[Sides, ...]]] = {
    "in": ((Fraction(5, 2), Fraction(40)),),
    "cm": ((Fraction(25, 4), Fraction(101)),),
}
FORM: Final = ClothForm(
    "strip roll",
    "strip",
    "strips",
    "by pack",
    along_the_strip,
    offered=OFFERED,
    strips=True,
    trusted="how many strips a roll holds, and how long they are",
)
