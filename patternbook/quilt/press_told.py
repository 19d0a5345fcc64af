"""Words of pressing that the seams of their unit cannot follow."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.notice import Mark, Notice
from patternbook.quilt.inner_seams import INNER
from patternbook.quilt.press_words import TOWARD, WORDS, holds
from patternbook.quilt.records import PiecedMade, Quilt, StripSetMade, Unit


def misfits(unit: Unit, quilt: Quilt) -> Iterator[Notice]:
    """Errors: a part that is not in the unit, a way that is along the seam, too many words."""
    if isinstance(unit.made, PiecedMade):
        yield from _of_inner(unit, quilt)
        return
    lines, upright = _lines(unit)
    parts = tuple(dict.fromkeys(part for line in lines for part in line))
    for word in dict.fromkeys(unit.press):
        if word.startswith(TOWARD):
            yield from _absent(word.removeprefix(TOWARD), parts, unit, quilt)
        elif word not in WORDS or word in (("up", "down") if upright else ("left", "right")):
            lie = "stand upright" if upright else "lie across"
            message = f"'{unit.name}' is pressed {word}, but the seams within its lines {lie}."
            hint = "Write `rows alternate`, `all one way`, or `toward` with a part."
            yield _notice("press-word", message, hint, unit, quilt, word)
    if len(unit.press) > max(1, len(lines)):
        message = f"'{unit.name}' has {len(unit.press)} words of pressing for {len(lines)} lines."
        yield _notice("press-rows", message, "Write one word a row.", unit, quilt)


def _of_inner(unit: Unit, quilt: Quilt) -> Iterator[Notice]:
    parts = tuple(dict.fromkeys(part.part for part in unit.placed))
    for word in dict.fromkeys(unit.press):
        if word.startswith(TOWARD):
            yield from _absent(word.removeprefix(TOWARD), parts, unit, quilt)
        elif word not in INNER:
            message = f"'{unit.name}' is pressed {word}, but it has no rows that lie that way."
            hint = "Write `open`, or `toward` with one of its parts."
            yield _notice("press-word", message, hint, unit, quilt, word)


def _absent(part: str, parts: tuple[str, ...], unit: Unit, quilt: Quilt) -> Iterator[Notice]:
    if not any(holds(name, part, quilt) for name in parts):
        message = f"'{unit.name}' is pressed toward {part}, which is not sewn into it."
        hint = f"It holds {', '.join(parts)}."
        yield _notice("press-part", message, hint, unit, quilt, TOWARD + part)


def _lines(unit: Unit) -> tuple[tuple[tuple[str, ...], ...], bool]:
    """The parts of each line of blocks, and whether the seams within them stand upright."""
    if isinstance(unit.made, StripSetMade):
        return (unit.made.strips,), True
    if isinstance(unit.made, PiecedMade):
        return (), False
    lines = tuple(
        tuple(part.part for part in line.parts) for line in unit.made.lines if line.role != "sash"
    )
    stacked = all(len(line) == 1 for line in lines)
    return lines, (unit.made.by == "rows") != stacked


def _notice(
    code: str, message: str, hint: str, unit: Unit, quilt: Quilt, word: str | None = None
) -> Notice:
    """At the word, or at the last of them where they are too many."""
    at = unit.press.index(word) if word is not None else -1
    places = (unit.press_at[at] if unit.press_at else None, unit.place)
    roles = ("pressed here", "the unit")
    marks = tuple(Mark(place, role) for place, role in zip(places, roles, strict=True) if place)
    return Notice(code, "error", "sewing", message, marks, "R16", (quilt.size,), word, hint=hint)
