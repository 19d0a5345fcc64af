"""Rule R16: where seams of neighbouring rows meet they are pressed opposite ways, or open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from patternbook.notice import SEVERITIES, Mark, Notice, Severity
from patternbook.quilt.edges import Meet
from patternbook.quilt.meeting import Meetings
from patternbook.quilt.press_repair import OPPOSITE, Repair, edits, repairs
from patternbook.quilt.press_words import ALTERNATE
from patternbook.quilt.pressing import PressingPlan
from patternbook.quilt.records import LayoutMade, Quilt, Unit


class Clash(NamedTuple):
    """Neighbouring lines (`line` is the first, from 0) of whose `places` meeting seams those of
    `meets` point the same way."""

    line: int
    places: int
    meets: tuple[Meet, ...]

    @property
    def severity(self) -> Severity:
        """An error where the author's own words for the rows clash, a warning where those for
        slices in them do, advice where she said nothing."""
        ends = [end for meet in self.meets for end in (meet.one, meet.other)]
        if not all(end.stated for end in ends):
            return "advice"
        return "error" if all(end.depth == 0 for end in ends) else "warning"


def clashes(
    quilt: Quilt, plans: Mapping[str, PressingPlan], meetings: Meetings
) -> Iterator[Notice]:
    """One notice a unit whose neighbouring lines cannot nest, and one where its blocks cannot."""
    for unit in quilt.units.values():
        if isinstance(unit.made, LayoutMade):
            found = sorted(_found(unit.name, meetings), key=_weight)
            if found:
                yield _notice(unit, unit.made, found, plans, quilt)
            yield from _blocks(unit, meetings, quilt)


def _blocks(unit: Unit, meetings: Meetings, quilt: Quilt) -> Iterator[Notice]:
    """Advice where seams inside the blocks meet and are pressed one way, as they are where two
    like blocks lie side by side: no word for the rows mends that."""
    if not isinstance(unit.made, LayoutMade):
        return
    joined = [meetings.line(unit.name, number) for number in range(len(unit.made.lines))]
    joined.append(meetings.lines(unit.name))
    meets = [meet for joining in joined for meet in joining.meets]
    deep = [meet for meet in meets if meet.same_way and max(meet.one.depth, meet.other.depth) > 1]
    if not deep:
        return
    message = (
        f"'{unit.name}': at {len(deep)} of the {len(meets)} places where seams of its blocks meet "
        "both are pressed the same way, and cannot nest."
    )
    hint = "Press the last seams of every other block the other way, or open, or turn that block."
    marks = (Mark(unit.place, "here"),) if unit.place else ()
    size = (quilt.size,)
    yield Notice("press-blocks", "advice", "sewing", message, marks, "R16", size, hint=hint)


def _weight(clash: Clash) -> tuple[int, int]:
    return SEVERITIES.index(clash.severity), clash.line


def _found(unit: str, meetings: Meetings) -> Iterator[Clash]:
    places: dict[int, list[Meet]] = {}
    for meet in meetings.lines(unit).meets:
        places.setdefault(meet.behind, []).append(meet)
    for line, meets in places.items():
        shallow = [meet for meet in meets if max(meet.one.depth, meet.other.depth) < 2]
        clashing = tuple(meet for meet in shallow if meet.same_way)
        if clashing:
            yield Clash(line, len(meets), clashing)


def _notice(
    unit: Unit,
    made: LayoutMade,
    found: list[Clash],
    plans: Mapping[str, PressingPlan],
    quilt: Quilt,
) -> Notice:
    worst, *others = found
    said = [
        f"{_label(made, line)}, pressed {_word(unit.name, made, line, plans)}"
        for line in (worst.line, worst.line + 1)
    ]
    message = (
        f"'{unit.name}': {said[0]}, and {said[1]}: the seams point the same way at "
        f"{len(worst.meets)} of the {worst.places} places where they meet, and cannot nest."
    )
    if others:
        message += f" So it is at {len(others)} more of its seams between lines."
    better = repairs(unit, quilt) if worst.severity != "advice" else ()
    return Notice(
        "press-clash",
        worst.severity,
        "sewing",
        message,
        _marks(unit, quilt, better),
        "R16",
        (quilt.size,),
        stated="; ".join(said),
        needed=better[0].text if better else "opposite ways where they meet, or open",
        hint=_hint(unit, worst, plans, better),
        edits=tuple(edit for repair in better for edit in edits(repair, quilt)),
    )


def _marks(unit: Unit, quilt: Quilt, better: Sequence[Repair]) -> tuple[Mark, ...]:
    """The words of pressing that would be others, then the unit."""
    named = dict.fromkeys((*(repair.unit for repair in better), unit.name))
    words = [quilt.units[name].press_at for name in named]
    marks = [Mark(places[0], "pressed here") for places in words if places]
    return (*marks, *((Mark(unit.place, "the unit"),) if unit.place else ()))


def _label(made: LayoutMade, line: int) -> str:
    """`row 2`, `column 3` or `sash row 1`, each counted by itself."""
    role = made.lines[line].role
    number = sum(other.role == role for other in made.lines[: line + 1])
    return f"{'sash row' if role == 'sash' else role} {number}"


def _word(unit: str, made: LayoutMade, line: int, plans: Mapping[str, PressingPlan]) -> str:
    """How a line is pressed: as its unit says, or its one slice where it is no more than that."""
    parts = made.lines[line].parts
    inner = plans[parts[0].part].lines if len(parts) == 1 and parts[0].part in plans else ()
    if inner:
        return inner[0].word
    return plans[unit].lines[line].word


def _hint(
    unit: Unit, clash: Clash, plans: Mapping[str, PressingPlan], better: Sequence[Repair]
) -> str:
    if better:
        where = "" if better[0].unit == unit.name else f" at '{better[0].unit}'"
        return f"Try `press: {better[0].text}`{where}."
    if any(end.depth for meet in clash.meets for end in (meet.one, meet.other)):
        return "Press one of the two the other way, or turn every other one by a half turn."
    first = plans[unit.name].lines[0].word
    if first in OPPOSITE:
        return f"Try `press: [{first}, {OPPOSITE[first]}]`, which is repeated row by row."
    return f"Try `press: {ALTERNATE}`, or `press: open`."
