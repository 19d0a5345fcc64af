"""Courthouse steps: logs sewn in pairs, on opposite sides of a centre."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.methods.form import MethodForm
from patternbook.methods.logs import SIDES, LogsWork
from patternbook.methods.logs_written import WrittenLogs
from patternbook.methods.world import World


class WrittenCourthouse(WrittenLogs):
    """The starting side, its opposite, then the other two."""

    called: ClassVar = "a block of courthouse steps"


class CourthouseWork(LogsWork[WrittenCourthouse]):
    """Logs in pairs: the starting side and its opposite, then the other two sides."""

    written = WrittenCourthouse
    word = "courthouse steps block"

    def side(self, number: int, start: int, step: int) -> str:
        """The second of a pair lies opposite the first; the next pair lies a quarter round."""
        pair, second = divmod(number, 2)
        return SIDES[(start + (pair % 2) * step + 2 * second) % 4]

    def fits(self, name: str, unit: WrittenCourthouse, number: int, world: World) -> None:
        """Logs come in pairs."""
        if number % 2:
            message = f"'{name}' has {number} logs, which do not come out in pairs."
            place = unit.key_places.get("logs", unit.place)
            hint = f"Write {number + 1} logs" + (f", or {number - 1}." if number > 1 else ".")
            world.error("log-pairs", "R10", message, place, hint)
            world.hopeless(name)


METHOD: Final = MethodForm("courthouse steps", WrittenCourthouse, CourthouseWork())
