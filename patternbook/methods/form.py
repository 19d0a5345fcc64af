"""What the program knows of a sewing method: its name in a source, and what an author writes."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.methods.world import Work
from patternbook.methods.written import WrittenMade


@dataclass(frozen=True)
class MethodForm:
    """One sewing method, by the name that `method` gives it."""

    name: str
    written: type[WrittenMade]
    work: Work
