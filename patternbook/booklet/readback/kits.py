"""A finished kit sheet is read back, and every figure in it set against the plan of the kits."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.kits_bag import bag
from patternbook.booklet.readback.kits_cloth import LESSON, cloth
from patternbook.booklet.readback.kits_cut import CHAPTER as CUTTING
from patternbook.booklet.readback.kits_cut import cuts, of_chapter
from patternbook.booklet.readback.pictures import lengths
from patternbook.booklet.readback.reading import Differs, near, numbers, tables
from patternbook.booklet.readback.sentences import measures
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence

_FINISHED: Final = re.compile(r", ([^,]+) finished\.")
_COPIES: Final = re.compile(r"Print them (\d+) times")
_KITS: Final = re.compile(r"(\d+) (?:kits?|bags?)\b")


def kits(lines: Sequence[Line], known: Evidence, plan: KitsPlan) -> Iterator[Differs]:
    """Every table and list of the sheet, and the sentences that have a number."""
    found = tuple(tables(tuple(_whole(lines))))
    yield from _how_many(lines, plan.number)
    yield from _size(lines, known)
    yield from cloth(found, known, plan)
    yield from cuts(lines, found, known, plan)
    yield from bag(lines, found, known, plan)
    yield from _lesson(lines, known, plan)
    yield from _measures(lines, known, plan)


def _whole(lines: Sequence[Line]) -> Iterator[Line]:
    """A table that goes on over a page begins there with its head again, and with no words
    before it: its rows are those of the table before."""
    heads: dict[int, tuple[str, ...]] = {}
    goes_on: dict[int, int] = {}
    before: Line | None = None
    for line in lines:
        if line.kind == "TR" and line.table not in heads:
            heads[line.table] = line.cells
            if before and before.kind == "TR" and heads[before.table] == line.cells:
                goes_on[line.table] = goes_on.get(before.table, before.table)
                continue
        before = line
        yield replace(line, table=goes_on.get(line.table, line.table))


def _how_many(lines: Sequence[Line], number: int) -> Iterator[Differs]:
    """The number of kits in the title, the list of labels and what the teacher prepares."""
    heads = [line for line in lines if line.kind == "H1"]
    places = [
        *((line, line.words.rpartition(":")[2]) for line in heads),
        *((line, line.words) for line in lines if line.kind == "LI" and "bag list" in line.words),
    ]
    for line, words in places:
        told = _KITS.findall(words)
        if told != [str(number)]:
            yield Differs("the number of kits", "", line.page, line.words, str(number))
    copies = [(line, told) for line in lines for told in _COPIES.findall(line.words)]
    for line, told in copies:
        if told != str(number):
            yield Differs("the number of labels", "", line.page, line.words, str(number))


def _size(lines: Sequence[Line], known: Evidence) -> Iterator[Differs]:
    finished = known.quilt.finished
    right = tuple(near(side, known.quilt.system) for side in finished or ())
    line = next((line for line in lines if line.kind == "P"), None)
    shown = _FINISHED.search(line.words) if line else None
    if numbers(shown[1] if shown else "") != right:
        best = " × ".join(map(printed, right))
        told = shown[1] if shown else "nothing"
        yield Differs("the finished size", known.quilt.size, line.page if line else 0, told, best)


def _lesson(lines: Sequence[Line], known: Evidence, plan: KitsPlan) -> Iterator[Differs]:
    """What is bought for finishing, and the thread."""
    chapter = ""
    told: dict[str, Line] = {}
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter = line.words
        elif chapter == LESSON and line.kind == "LI":
            told[line.words.removeprefix("• ").partition(",")[0]] = line
    for what, right in _finishing(known, plan):
        found = told.get(what)
        values = tuple(value for value in right if value is not None)
        if found is None or numbers(found.words) != values:
            best = " and ".join(map(printed, values))
            shown = found.words if found else "nothing"
            yield Differs(what, known.quilt.size, found.page if found else 0, shown, best)


def _measures(lines: Sequence[Line], known: Evidence, plan: KitsPlan) -> Iterator[Differs]:
    """Measures in the sentences on cutting are those of one kit or of all."""
    right = lengths(known) | lengths(replace(known, cutting=plan.all))
    for line in of_chapter(lines, CUTTING):
        for measure in measures(line.words) if line.kind in {"LI", "P"} else ():
            if not right.issuperset(numbers(measure)):
                yield Differs("a measure in a sentence", "", line.page, measure, "none like it")


def _finishing(
    known: Evidence, plan: KitsPlan
) -> Iterator[tuple[str, tuple[Fraction | None, ...]]]:
    one, system = plan.one, known.quilt.system
    thread = known.sewing.totals.thread
    if thread.sign():
        yield "thread for piecing", ((thread / system.bolt).up(Fraction(10)),)
    if one.backing:
        best, size = one.backing.best, one.backing.size
        metres = best.metres if system.unit == "in" else None
        yield "backing", (best.amount, metres, size.across, size.down)
    if one.batting:
        yield "batting", (one.batting.size.across, one.batting.size.down)
    if one.label:
        yield "a scrap for the label", (one.label.cut.across, one.label.cut.down)
