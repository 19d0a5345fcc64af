"""Log cabin: logs sewn round and round a centre."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.logs import SIDES, LogsWork
from patternbook.methods.logs_written import WrittenLogs


class WrittenLogCabin(WrittenLogs):
    """Each log lies on the next side round."""

    called: ClassVar = "a log cabin"


class LogCabinWork(LogsWork[WrittenLogCabin]):
    """Each log is sewn to the side that follows the one before."""

    written = WrittenLogCabin
    word = "log cabin block"

    def side(self, number: int, start: int, step: int) -> str:
        """One further round with each log."""
        return SIDES[(start + number * step) % 4]


METHOD: Final = MethodForm("log cabin", WrittenLogCabin, LogCabinWork())
