"""Half-rectangle triangles: two rectangles sewn along the diagonal, each hand by itself."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.triangles_written import WrittenTriangles


class WrittenHalfRectangle(WrittenTriangles):
    """The first piece lies in the top-left half."""

    called: ClassVar = "a unit of half-rectangle triangles"


METHOD: Final = MethodForm("half-rectangle triangles", WrittenHalfRectangle)
