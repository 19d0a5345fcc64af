"""Square in a square: a centre, and round after round of four triangles."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Cells, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade


class WrittenSquareInSquare(WrittenMade):
    """The rounds go from the inside out."""

    called: ClassVar = "a square in a square"
    centre: EachSize[Part]
    rounds: EachSize[Cells]


METHOD: Final = MethodForm("square in a square", WrittenSquareInSquare)
