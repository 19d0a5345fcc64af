"""The cutting plan of kits, read back: every strip, what it gives, and how pre-cuts are cut."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import zip_longest
from typing import Final

from patternbook.booklet.readback.reading import Differs, Table, near, numbers, title
from patternbook.booklet.readback.spelled import count
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.cutting.records import BINDING, FabricPlan, Sheet, Strip
from patternbook.inch import GLYPH, System, printed
from patternbook.proof.evidence import Evidence

CHAPTER: Final = "Cutting plan"
HEAD: Final = ("Width of strip", "Strips", "Each strip gives", "In all")
_MEASURE: Final = rf"(?:\d*{GLYPH}|\d+ \d+⁄\d+|\d+⁄\d+|\d+(?:\.\d+)?)(?:″| cm)"
_GIVES: Final = re.compile(
    rf"(\w+) (?:strips? of )?([A-Z]{{1,2}}\d?|Binding)\b(?: of ({_MEASURE}))?"
)
_ROW: Final = re.compile(rf"(\w+) strips? ({_MEASURE}) wide")
Gives = Counter[tuple[str, Fraction | None]]


def cuts(
    lines: Sequence[Line], found: Sequence[Table], known: Evidence, plan: KitsPlan
) -> Iterator[Differs]:
    """A table for each fabric, the length of its cloth, and its pre-cut pieces."""
    plans = [one for one in plan.all.fabrics.values() if one.strips]
    tables = [one for one in found if one.head == HEAD]
    for one, table in zip_longest(plans, tables):
        if one is None or table is None:
            yield Differs("the tables of strips", "", 0, f"{len(tables)}", f"{len(plans)}")
            return
        yield from _strips(one, table, known.quilt.system)
    own = [line for line in of_chapter(lines, CHAPTER) if line.kind in {"Caption", "LI"}]
    for one in plans:
        yield from _length(one, own, known)
        yield from _sheets(one, own, known)


def of_chapter(lines: Sequence[Line], begins: str) -> Iterator[Line]:
    """What stands under the heading that begins so."""
    chapter = ""
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter = line.words
        elif chapter.startswith(begins):
            yield line


def _strips(plan: FabricPlan, table: Table, system: System) -> Iterator[Differs]:
    for strip, row in zip_longest(plan.strips, table.rows):
        if strip is None or row is None:
            told = f"{len(table.rows)} rows"
            yield Differs(f"the strips of {plan.fabric}", "", 0, told, f"{len(plan.strips)}")
            return
        wide, times, gives, in_all = row.cells[:4]
        right = (near(strip.width, system),), (Fraction(strip.times),)
        for what, shown, values in zip(("width", "number"), (wide, times), right, strict=True):
            if numbers(shown) != values:
                told = f"the {what} of a strip of {plan.fabric}"
                yield Differs(told, "", row.page, shown, printed(values[0]))
        yield from _given(plan.fabric, strip, row.page, (gives, in_all), system)


def _given(
    fabric: str, strip: Strip, page: int, shown: tuple[str, str], system: System
) -> Iterator[Differs]:
    """What one strip gives, and all of them; whole strips are counted as strips."""
    gives, in_all = shown
    each, every = _right(strip, 1, system), _right(strip, strip.times, system)
    if strip.cuts and (strip.join or all(cut.whole for cut in strip.cuts)):
        letters = {letter for _, letter, _ in _GIVES.findall(f"any {gives}")}
        if not letters & {_called(letter) for letter in strip.letters}:
            yield Differs(f"what strips of {fabric} give", "", page, gives, strip.letters[0])
        each, gives = Counter(), ""
        every = (
            Counter() if strip.join else Counter({(_called(strip.letters[0]), None): strip.times})
        )
    for text, right in ((gives, each), (in_all, every)):
        if _read(text) != right:
            best = ", ".join(_worded(one, number) for one, number in right.items()) or "nothing"
            yield Differs(f"what strips of {fabric} give", "", page, text, best)


def _right(strip: Strip, times: int, system: System) -> Gives:
    """By letter, and by length where it is one of a strip's."""
    found: Gives = Counter()
    for one in (one for cut in strip.cuts for one in cut.stacked):
        long = one.across if strip.along == "length" else one.along
        found[_called(one.letter), near(long, system) if one.use else None] += one.number * times
    return found


def _read(text: str) -> Gives:
    found: Gives = Counter()
    for word, letter, measure in _GIVES.findall(text):
        found[letter, numbers(measure)[0] if measure else None] += count(word) or 0
    return found


def _called(letter: str) -> str:
    return "Binding" if letter == BINDING else letter


def _worded(one: tuple[str, Fraction | None], number: int) -> str:
    letter, long = one
    return f"{number} {letter}" + (f" of {printed(long)}" if long is not None else "")


def _length(plan: FabricPlan, lines: Sequence[Line], known: Evidence) -> Iterator[Differs]:
    """The cloth that the strips take, in the table's caption."""
    name = f"From {plan.fabric.replace('-', ' ') or 'one fabric'}"
    row = next((one for one in lines if one.words.partition(":")[0] == name), None)
    right = () if plan.buy.number is not None else (near(plan.length, known.quilt.system),)
    shown = row.words.removeprefix(name) if row else ""
    if row is None or numbers(shown) != right:
        best = printed(right[0]) if right else name
        yield Differs(f"the cloth of {plan.fabric}", "", row.page if row else 0, shown, best)


def _sheets(plan: FabricPlan, lines: Sequence[Line], known: Evidence) -> Iterator[Differs]:
    """A line for each kind of pre-cut piece: how many, and which strips are in it."""
    name = f"{title(plan.fabric)}: "
    found = [one for one in lines if one.kind == "LI" and one.words.startswith(name)]
    for sheet, line in zip_longest(plan.sheets, found):
        right = _of_sheet(plan, sheet, known.quilt.system) if sheet else ()
        text = line.words.removeprefix(name) if line else "nothing"
        if line is None or sheet is None or _sheet_read(text) != right:
            best = f"{sheet.times} pieces of cloth" if sheet else "nothing"
            page = line.page if line else 0
            yield Differs(f"how {plan.fabric} is cut", "", page, text, best)


def _of_sheet(plan: FabricPlan, sheet: Sheet, system: System) -> tuple[Fraction, ...]:
    rows = ((row.times, near(plan.strips[row.strip].width, system)) for row in sheet.rows)
    return Fraction(sheet.times), *(Fraction(value) for row in rows for value in row)


def _sheet_read(text: str) -> tuple[Fraction, ...]:
    times, _, strips = text.partition(": ")
    rows = (
        (Fraction(count(word) or 0), numbers(measure)[0]) for word, measure in _ROW.findall(strips)
    )
    return *numbers(times), *(value for row in rows for value in row)
