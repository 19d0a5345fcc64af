"""The house rules of one pattern: as the author states them, else the trade's usual."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from typing import Any

from patternbook.inch import CENTIMETRES, System
from patternbook.quilt.records import Settings
from patternbook.source.cover import WrittenSettings

# Whole centimetres near the inch defaults; both systems' sources stand beside their tests.
METRIC = Settings(
    spare=Fraction(8),
    straightening=Fraction(1),
    trimming=Fraction(1, 4),
    binding_over=Fraction(25),
    backing_seam=Fraction(1),
    drift=Fraction(1, 10),
    backing_step=Fraction(1, 4),
)


def settings(written: WrittenSettings, system: System) -> Settings:
    """The house rules: as stated, else the system's defaults."""
    base = METRIC if system is CENTIMETRES else Settings()
    stated: dict[str, Any] = {}
    for field in fields(Settings):
        value = getattr(written, field.name, None)
        if value is not None:
            stated[field.name] = getattr(value, "number", None) or str(value)
            if hasattr(value, "number"):
                stated[field.name] = value.number
    usual = {field.name: getattr(base, field.name) for field in fields(Settings)}
    return Settings(**{**usual, **stated, "own": frozenset(stated)})
