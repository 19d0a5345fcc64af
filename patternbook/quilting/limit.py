"""How far apart the quilting may lie where the packet of the batting says nothing."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Final

# Trade facts 8.2: the tightest limits are 1½ to 3 in; 3 in where nothing is stated, printed as
# assumed; in centimetres the next half below.
LIMIT: Final[Mapping[str, Fraction]] = {"in": Fraction(3), "cm": Fraction(15, 2)}
