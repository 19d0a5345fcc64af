"""Log cabin: logs sewn round and round a centre."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.logs_written import WrittenLogs


class WrittenLogCabin(WrittenLogs):
    """Each log lies on the next side round."""

    called: ClassVar = "a log cabin"


METHOD: Final = MethodForm("log cabin", WrittenLogCabin)
