"""Which way to press, as one sentence a step."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from patternbook.proof.evidence import Evidence
from patternbook.quilt.press_words import ONE_WAY, SASHING, Way
from patternbook.quilt.records import LayoutMade
from patternbook.sewing.records import BorderStep, LinesStep, LineStep, Step, StripStep

WAYS: Final[Mapping[Way, str]] = {
    "left": "to the left",
    "right": "to the right",
    "up": "upward",
    "down": "downward",
    "open": "open",
}
# On the slant a row runs from the lower left to the upper right.
SLANT: Final[Mapping[Way, str]] = {
    "left": "toward its lower left end",
    "right": "toward its upper right end",
    "up": "toward the top left corner",
    "down": "toward the bottom right corner",
    "open": "open",
}
_TOWARD: Final = "toward "


def press(step: Step, known: Evidence) -> str:
    """The sentence; empty where nothing is sewn."""
    if not step.press:
        return ""
    if isinstance(step, BorderStep):
        return "Press toward the border."
    made = known.quilt.units[step.unit].made
    sash = made.sash if isinstance(made, LayoutMade) else None
    if isinstance(step, LinesStep):
        return _between(step, sash)
    if isinstance(step, LineStep | StripStep):
        return _along(step, sash)
    return ""


def _between(step: LinesStep, sash: str | None) -> str:
    if sash:
        return f"Press toward the {sash} rows."
    if len(set(step.press)) > 1:
        return "Press as the arrows show."
    return f"Press {(SLANT if step.slanting else WAYS)[step.press[0]]}."


def _along(step: LineStep | StripStep, sash: str | None) -> str:
    if step.word == SASHING and sash:
        return f"Press toward {sash}."
    if step.word.startswith(_TOWARD):
        return f"Press {step.word}."
    if len(set(step.press)) == 1:
        one_way = "all seams one way, " if step.word == ONE_WAY else ""
        ways = SLANT if isinstance(step, LineStep) and step.role == "slant" else WAYS
        return f"Press {one_way}{ways[step.press[0]]}."
    return "Press as the arrows show."
