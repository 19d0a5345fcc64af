"""The chart of shared strips: which strip gives what, and into which lengths strips are cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Align, Row, Table
from patternbook.cutting.records import BINDING, Cut, FabricPlan, Strip
from patternbook.diagrams.lay_groups import Group, groups, stacks
from patternbook.inch import System
from patternbook.proof.evidence import Evidence

LETTERS: Final = ("Pieces", "Cut size")
STRIPS: Final = ("In order", "Strips", "Wide", "Each gives")
ALIGN: Final[tuple[Align, ...]] = ("number", "number", "words")
IN_ALL: Final = "In all"


def by_strips(plan: FabricPlan) -> bool:
    """Whether the strips are told one by one: letters share them, or have them in many widths; or
    some lie along the cloth."""
    if lengthwise(plan):
        return True
    widths: dict[str, set[Fraction]] = {}
    for strip in plan.strips:
        for letter in strip.letters:
            widths.setdefault(letter, set()).add(strip.width)
    mixed = any(len(strip.letters) > 1 for strip in plan.strips)
    return plan.style != "plain" and (mixed or any(len(found) > 1 for found in widths.values()))


def lengthwise(plan: FabricPlan) -> tuple[str, ...]:
    """The letters that are cut along the length of the cloth."""
    strips = (strip for strip in plan.strips if strip.along == "length")
    return tuple(dict.fromkeys(letter for strip in strips for letter in strip.letters))


def letters(head: str, rows: Sequence[Row]) -> Table:
    """How many of each letter, and their size; the strips have a table of their own."""
    short = tuple(Row(row.head, row.cells[: len(LETTERS)]) for row in rows)
    return Table("", (head, *LETTERS), short)


def strips(known: Evidence, plan: FabricPlan) -> Table:
    """The strips in the order of cutting, numbered as in the lay, and what each of them gives."""
    rows = tuple(
        row
        for number, group in enumerate(groups(plan.strips), start=1)
        for row in _rows(known, group, number)
    )
    return Table("", STRIPS, rows, ALIGN)


def _rows(known: Evidence, group: Group, number: int) -> Iterator[Row]:
    strip = group.strip
    where = ", lengthwise" if strip.along == "length" else ", beside it" if strip.beside else ""
    full = group.times - (group.last is not None)
    yield _row(known, f"{number}{where}", strip, full)
    if group.last is not None:
        yield _row(known, f"{number}, the last", group.last, 1)


def _row(known: Evidence, head: str, strip: Strip, times: int) -> Row:
    width = wording.length(strip.width, known.quilt.system)
    joined = "joined: " if strip.join and times > 1 else ""
    return Row(head, (str(times), width, f"{joined}{gives(known, strip) or 'to spare'}"))


def gives(known: Evidence, strip: Strip) -> str:
    """`four A and one C`: what one strip gives, or all of them joined."""
    found: Counter[tuple[str, str]] = Counter()
    for cut in stacks(strip):
        found[cut.letter, _long(known, strip, cut)] += cut.number
    return wording.listed(_gives(letter, long, number) for (letter, long), number in found.items())


def _gives(letter: str, long: str, number: int) -> str:
    if letter == BINDING:
        return long
    if not long:
        return f"{wording.spelled(number)}{wording.NBSP}{letter}"
    return f"{wording.spelled(number)}{wording.NBSP}{letter} of {long}"


def _long(known: Evidence, strip: Strip, cut: Cut) -> str:
    """The length of what has no cut size of its own."""
    piece = known.quilt.pieces.get(cut.letter)
    if cut.letter == BINDING and cut.along == cut.across:
        return f"{wording.counted(cut.number, 'square')} for the binding"
    if cut.letter == BINDING:
        return f"{wording.length(cut.along, known.quilt.system)} of binding"
    if cut.whole:
        return "the whole length"
    if piece is not None and not piece.is_strip:
        return ""
    return wording.length(length_of(strip, cut), known.quilt.system)


def length_of(strip: Strip, cut: Cut) -> Fraction:
    """How long a length of a strip is: across the strip, where that lies along the cloth."""
    return cut.across if strip.along == "length" else cut.along


def lengths(known: Evidence, letter: str) -> Table | None:
    """How the strips of one letter are cut into the lengths of its logs: a column a length."""
    plan = known.cutting.fabrics[known.cutting.letters[letter].fabric]
    mine = [strip for strip in plan.strips if letter in strip.letters and not strip.join]
    counts = [(strip, _by_length(strip, letter)) for strip in mine]
    columns = sorted({length for _, found in counts for length in found}, reverse=True)
    if not columns or by_strips(plan):
        return None
    system = known.quilt.system
    rows = [_cut_into(strip.times, found, columns) for strip, found in counts]
    total = [sum(strip.times * found[length] for strip, found in counts) for length in columns]
    rows.append(Row(IN_ALL, tuple(map(str, total))))
    return Table("", (f"Strips of {letter}", *_heads(columns, system)), tuple(rows))


def lengths_of(plan: FabricPlan, letter: str) -> Counter[Fraction]:
    """How many of each length the strips of a letter give, the longest first."""
    found: Counter[Fraction] = Counter()
    for strip in plan.strips:
        for length, number in _by_length(strip, letter).items():
            found[length] += number * (1 if strip.join else strip.times)
    return Counter({length: found[length] for length in sorted(found, reverse=True)})


def _by_length(strip: Strip, letter: str) -> Counter[Fraction]:
    found: Counter[Fraction] = Counter()
    for cut in stacks(strip):
        if cut.letter == letter:
            found[length_of(strip, cut)] += cut.number
    return found


def _cut_into(times: int, found: Counter[Fraction], columns: Sequence[Fraction]) -> Row:
    cells = (str(found[length]) if found[length] else wording.NONE for length in columns)
    return Row(f"{wording.counted(times, 'strip')}{', each' if times > 1 else ''}", tuple(cells))


def _heads(columns: Sequence[Fraction], system: System) -> tuple[str, ...]:
    return tuple(wording.length(length, system) for length in columns)
