"""Appliqué: shapes laid on a ground and stitched down."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Cells, Name, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade


class WrittenApplique(WrittenMade):
    """The shapes in the order in which they are stitched; `web` is what fuses them."""

    called: ClassVar = "an appliqué block"
    ground: EachSize[Part]
    shapes: EachSize[Cells]
    web: EachSize[Name] | None = None


METHOD: Final = MethodForm("applique", WrittenApplique)
