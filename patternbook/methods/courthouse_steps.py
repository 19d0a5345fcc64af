"""Courthouse steps: logs sewn in pairs, on opposite sides of a centre."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.logs_written import WrittenLogs


class WrittenCourthouse(WrittenLogs):
    """The starting side, its opposite, then the other two."""

    called: ClassVar = "a block of courthouse steps"


METHOD: Final = MethodForm("courthouse steps", WrittenCourthouse)
