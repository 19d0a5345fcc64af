"""Quarter-square triangles: four triangles that meet in the middle of a square."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.triangles_written import WrittenTriangles


class WrittenQuarterSquare(WrittenTriangles):
    """The first piece lies at the top and the bottom."""

    called: ClassVar = "a unit of quarter-square triangles"


METHOD: Final = MethodForm("quarter-square triangles", WrittenQuarterSquare)
