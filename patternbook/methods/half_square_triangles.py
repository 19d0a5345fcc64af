"""Half-square triangles: two squares sewn along the diagonal and cut apart."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.triangles_written import WrittenTriangles


class WrittenHalfSquare(WrittenTriangles):
    """The first piece lies in the top-left half."""

    called: ClassVar = "a unit of half-square triangles"


METHOD: Final = MethodForm("half-square triangles", WrittenHalfSquare)
