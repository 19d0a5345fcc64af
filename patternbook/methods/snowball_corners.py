"""Snowball corners: small squares sewn across the corners of a larger piece."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.fields import Cells, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import EachSize
from patternbook.methods.written import WrittenMade


class WrittenSnowball(WrittenMade):
    """The corners go clockwise from the top left; `.` leaves one plain."""

    called: ClassVar = "a block with snowball corners"
    base: EachSize[Part]
    corners: EachSize[Cells]


METHOD: Final = MethodForm("snowball corners", WrittenSnowball)
