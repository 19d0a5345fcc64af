"""Which way each seam is pressed: as the author says, else so that seams that meet can nest.

Where she says nothing, the rows of a layout alternate, sashing draws the seams toward itself,
and a strip set is pressed toward its darker strips.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternbook.notice import Notice
from patternbook.quilt.inner_seams import inner_seams, tone_of
from patternbook.quilt.press_told import misfits
from patternbook.quilt.press_words import (
    ALTERNATE,
    BACK,
    DARKER,
    ONE_WAY,
    SASHING,
    Decide,
    Row,
    Way,
    decide,
    toward_greater,
)
from patternbook.quilt.records import LayoutMade, Line, PiecedMade, Quilt, StripSetMade, Unit

__all__ = ["BACK", "LinePressing", "PressingPlan", "Way", "pressed"]


@dataclass(frozen=True)
class LinePressing:
    """One row or column (or strip set): the way of the seam behind each part but the last.

    `word` is the author's, or the one that holds where she says nothing (not `stated`).
    """

    word: str
    stated: bool
    seams: tuple[Way, ...]

    @property
    def uniform(self) -> Way | None:
        """The one way of all its seams; None where they differ or there are none."""
        return self.seams[0] if len(set(self.seams)) == 1 else None


@dataclass(frozen=True)
class PressingPlan:
    """How one unit is pressed: each line as it is joined, and the seam behind each line.

    Border seams are always pressed toward the border, those of cornerstones toward the strip.
    `inner` is for a unit of a method of its own, which has no lines: for each of its seams the
    part (by its number among the placed) that it is pressed toward; None: open.
    """

    unit: str
    lines: tuple[LinePressing, ...]
    between: tuple[Way, ...]
    inner: tuple[int | None, ...] = ()


def pressed(quilt: Quilt) -> tuple[Mapping[str, PressingPlan], tuple[Notice, ...]]:
    """The pressing of every unit, and what the author's words leave unclear."""
    plans = {unit.name: _plan(unit, quilt) for unit in quilt.units.values()}
    told = tuple(notice for unit in quilt.units.values() for notice in misfits(unit, quilt))
    return plans, told


def _plan(unit: Unit, quilt: Quilt) -> PressingPlan:
    if isinstance(unit.made, StripSetMade):
        return PressingPlan(unit.name, (_strips(unit, unit.made, quilt),), ())
    if isinstance(unit.made, PiecedMade):
        return PressingPlan(unit.name, (), (), inner_seams(unit, unit.made, quilt))
    lines = _lines(unit, unit.made, quilt)
    return PressingPlan(unit.name, lines, _between(unit, unit.made, quilt))


def _strips(unit: Unit, made: StripSetMade, quilt: Quilt) -> LinePressing:
    row = Row(0, made.strips, "right")
    if unit.press:
        return LinePressing(unit.press[0], True, decide(unit.press[0], quilt)(row))
    tones = [tone_of(letter, quilt) for letter in made.strips]
    known = [tone for tone in tones if tone is not None]
    if len(known) < len(tones) or len(set(known)) == 1:
        return LinePressing(ONE_WAY, False, decide(ONE_WAY, quilt)(row))
    return LinePressing(DARKER, False, toward_greater(known, row))


def _lines(unit: Unit, made: LayoutMade, quilt: Quilt) -> tuple[LinePressing, ...]:
    """All lines; a word in the list is for a row of blocks, sash rows suit their neighbours."""
    words = unit.press or (SASHING if made.sash else ALTERNATE,)
    whole = words in {(ALTERNATE,), (SASHING,)}
    plans: list[LinePressing] = []
    blocks = 0
    for number, line in enumerate(made.lines):
        if line.role == "sash" and not whole:
            beside = _beside(made, plans, words[0], quilt)
            plans.append(LinePressing(SASHING, False, _nested(line, *beside)))
            continue
        word = words[blocks % len(words)]
        how = _toward_sashing(made) if word == SASHING else decide(word, quilt)
        plans.append(LinePressing(word, bool(unit.press), how(_row(number, made))))
        blocks += line.role != "sash"
    return tuple(plans)


def _row(number: int, made: LayoutMade) -> Row:
    parts = tuple(part.part for part in made.lines[number].parts)
    return Row(number, parts, "right" if made.by == "rows" else "down")


def _beside(
    made: LayoutMade, plans: Sequence[LinePressing], word: str, quilt: Quilt
) -> tuple[Line, tuple[Way, ...]]:
    """The row that a sash row is pressed against: the one before, else the one that follows."""
    if plans:
        return made.lines[len(plans) - 1], plans[-1].seams
    following = min(1, len(made.lines) - 1)
    return made.lines[following], decide(word, quilt)(_row(following, made))


def _nested(line: Line, other: Line, ways: tuple[Way, ...]) -> tuple[Way, ...]:
    """A sash row's seams, each pressed the other way than the seam that it meets."""
    met = dict(zip([part.x for part in other.parts[1:]], ways, strict=True))
    return tuple(BACK[met.get(part.x, "left")] for part in line.parts[1:])


def _toward_sashing(made: LayoutMade) -> Decide:
    """In a row of blocks toward the sash, in a sash row away from the cornerstone: so the two
    nest where they meet."""

    def ways(row: Row) -> tuple[Way, ...]:
        if made.lines[row.number].role == "sash":
            return toward_greater([part != made.stones for part in row.parts], row)
        return toward_greater([part == made.sash for part in row.parts], row)

    return ways


def _between(unit: Unit, made: LayoutMade, quilt: Quilt) -> tuple[Way, ...]:
    """The seams between the lines: toward a sash row, else onward.

    The author's words are for the seams within the lines. Where there are none, every line
    being one part, they are for these; `open` is for all.
    """
    onward: Way = "down" if made.by == "rows" else "right"
    stacked = all(len(line.parts) == 1 for line in made.lines)
    if unit.press and (stacked or unit.press == ("open",)):
        parts = tuple(line.parts[0].part for line in made.lines)
        return decide(unit.press[0], quilt)(Row(0, parts, onward))
    return tuple(BACK[onward] if line.role == "sash" else onward for line in made.lines[:-1])
