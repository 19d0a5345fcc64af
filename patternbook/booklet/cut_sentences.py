"""The cutting of one size in sentences: so many strips of this width, and from these so many
pieces of that size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.chart import TO_MEASURE, called, cut_to_length
from patternbook.booklet.chart_remarks import from_a_fold
from patternbook.booklet.chart_strips import by_strips, length_of
from patternbook.cutting.records import BINDING, Cut, CutStep, FabricPlan, Row, Sheet, Strip
from patternbook.cutting.steps import folded
from patternbook.cutting.tools import LAYERS
from patternbook.diagrams.lay_groups import Group, groups, stacks
from patternbook.forms import by_name
from patternbook.proof.evidence import Evidence

EACH: Final = "from each"


@dataclass(frozen=True)
class CutStrip:
    """What is cut off first, and what is cut from it."""

    words: str
    pieces: tuple[str, ...] = ()


@dataclass(frozen=True)
class CutFrom:
    """All that is cut from one fabric, in order."""

    title: str
    strips: tuple[CutStrip, ...]


def sentences(known: Evidence) -> tuple[CutFrom, ...]:
    """Every fabric of one size that pieces or binding are cut from."""
    return tuple(
        CutFrom(f"{called(name)}:", tuple(_Told(known, plan).all()))
        for name, plan in known.cutting.fabrics.items()
        if plan.strips
    )


@dataclass(frozen=True)
class _Told:
    """The words for one fabric."""

    known: Evidence
    plan: FabricPlan

    def all(self) -> Iterator[CutStrip]:
        if self.plan.sheets:
            for sheet in self.plan.sheets:
                yield self.sheet(sheet)
            return
        for letter, same in groupby(groups(self.plan.strips), self.logs):
            if letter:
                yield self.by_table(letter, tuple(same))
            else:
                yield from (told for group in same for told in self.group(group))

    def logs(self, group: Group) -> str:
        """The letter of strips that are cut into the lengths of a table of their own."""
        alone = len(group.strip.letters) == 1 and not group.strip.join
        letter = group.strip.letters[0] if alone else ""
        told = letter and cut_to_length(self.known, letter) and not by_strips(self.plan)
        return letter if told else ""

    def by_table(self, letter: str, same: Sequence[Group]) -> CutStrip:
        strips = self.strips(same[0].strip, sum(group.times for group in same))
        return CutStrip(f"{strips} ({letter}). Cut them into lengths: see the table below.")

    def group(self, group: Group) -> Iterator[CutStrip]:
        """Strips cut alike: what all of them give, or what each of them gives where that is of
        several kinds."""
        strip, kinds = group.strip, len({_kind(cut) for cut in stacks(group.strip)})
        end = self.whole(strip)
        if end is not None:
            yield CutStrip(f"{self.strips(strip, group.times)}{end}")
        elif group.times == 1 or strip.join or kinds == 1:
            last = [(group.last, 1)] if group.last else []
            pieces = self.pieces([(strip, _full(group)), *last])
            start = "from it" if group.times == 1 else "from these"
            yield CutStrip(self.opened(strip, group.times, start), pieces)
        else:
            first = self.opened(strip, _full(group), EACH if _full(group) > 1 else "from it")
            yield CutStrip(first, self.pieces([(strip, 1)]))
            if group.last is not None:
                words = self.opened(group.last, 1, "from it")
                yield CutStrip(words, self.pieces([(group.last, 1)]))

    def strips(self, strip: Strip, times: int) -> str:
        """`Two strips, 8½″ × width of fabric`, and how they are cut off where that matters."""
        count, system = wording.capital(wording.spelled(times)), self.known.quilt.system
        noun = "strip" if times == 1 else "strips"
        width = wording.length(strip.width, system)
        if strip.along == "length":
            many = "length" if times == 1 else "lengths"
            return f"{count} {many} of fabric, {width} from cut to cut"
        if by_name[self.plan.form].strips:
            return f"{count} pre-cut {noun}, {wording.size(strip.width, strip.length, system)}"
        if strip.beside:
            size = wording.size(strip.width, strip.length, system)
            return f"{count} {noun}, {size}, from what is left beside the lengths"
        size = f"{width}{wording.NBSP}× {wording.WIDTH}"
        return f"{count} {noun}, {size}{self.handled(strip)}"

    def handled(self, strip: Strip) -> str:
        """Two rulers, or one more fold."""
        for step in self.plan.steps:
            if step.kind == "strip" and (step.width, step.length) == (strip.width, strip.length):
                if step.on_fold:
                    half = wording.length(step.measure or 0, self.known.quilt.system)
                    return f" (fold once more, and measure {half} from the fold)"
                return " (two rulers side by side)" if len(step.rulers) > 1 else ""
        return ""

    def whole(self, strip: Strip) -> str | None:
        """The end of the sentence where nothing is cut from the strips now."""
        if not strip.cuts:
            return ", to spare."
        if len(strip.letters) > 1:
            return None
        (letter,) = strip.letters
        if letter == BINDING:
            return None if self.bias() else ", for the binding."
        piece = self.known.quilt.pieces[letter]
        if not piece.is_strip or strip.along == "length":
            return None
        if all(cut.whole for cut in strip.cuts):
            return f" ({letter}). Leave them whole." if strip.times > 1 else f" ({letter}), whole."
        if not cut_to_length(self.known, letter):
            return f" ({letter}), cut later {TO_MEASURE}."
        return None

    def bias(self) -> bool:
        """Whether the binding is cut from squares."""
        plan = self.known.cutting.binding
        return plan is not None and plan.square is not None

    def opened(self, strip: Strip, times: int, start: str) -> str:
        """The sentence up to the list of pieces."""
        join = ""
        if strip.join and times > 1:
            seams = "diagonal" if strip.join.kind == "diagonal" else "straight"
            join = f"; join them end to end with {seams} seams"
        return f"{self.strips(strip, times)}{join}; {start}{self.layers(strip, times)} cut"

    def layers(self, strip: Strip, times: int) -> str:
        """How they lie while they are cut: folded in half, several on one another."""
        if strip.join or strip.along == "length" or any(map(self.on_fold, stacks(strip))):
            return ""
        in_half = folded(by_name[self.plan.form], strip)
        layers = times * (2 if in_half else 1)
        if layers == 1:
            return ", opened flat," if by_name[self.plan.form].sold == "by length" else ""
        if layers > LAYERS:
            return f", in stacks of up to {wording.spelled(LAYERS)} layers,"
        lying = " and ".join(
            [*(["folded"] if in_half else []), *(["stacked"] if times > 1 else [])]
        )
        return f", {lying} in {wording.spelled(layers)} layers,"

    def on_fold(self, cut: Cut) -> bool:
        """Whether a fold lies under the ruler as it is measured."""
        found = (step for step in self.plan.steps if step.kind == "subcut")
        return any(
            step.on_fold and step.letters == (cut.letter,) and step.length == cut.along
            for step in found
        )

    def pieces(self, of: Sequence[tuple[Strip, int]]) -> tuple[str, ...]:
        """A line for each letter and size."""
        found: dict[tuple[str, Fraction, Fraction], tuple[Strip, Cut, int]] = {}
        for strip, times in of:
            for cut in stacks(strip):
                one, _, number = found.get(_kind(cut), (strip, cut, 0))
                number += cut.number * (1 if strip.join else times)
                found[_kind(cut)] = (one, cut, number)
        return tuple(self.piece(*one) for one in found.values() if one[2])

    def piece(self, strip: Strip, cut: Cut, number: int) -> str:
        """`two rectangles, 8½ × 22½″ (D)`, and what is done with them at the cutting table."""
        system, count = self.known.quilt.system, wording.spelled(number)
        known = self.known.quilt.pieces.get(cut.letter)
        if known is None:
            size = wording.size(cut.along, cut.across, system)
            return f"{count} {_many('square', number)}, {size}, for the bias binding"
        if known.is_strip:
            sides = wording.size(cut.along, cut.across, system)
            long = wording.length(length_of(strip, cut), system)
            size, noun = (sides, "strip") if strip.along == "length" else (long, "length")
        else:
            size, noun = wording.cut_size(known.cut, system), wording.shape(known.cut)
        line = f"{count} {_many(noun, number)}, {size} ({cut.letter})"
        return f"{line}{self.measured(strip, cut)}{self.triangles(cut.letter, number)}"

    def measured(self, strip: Strip, cut: Cut) -> str:
        """From a fold, or with a tape, where no ruler reaches."""
        step = self.subcut(strip, cut)
        if step is None or not step.on_fold:
            return ""
        half = from_a_fold(self.known, step)
        if half is None:
            return ", measured with a tape"
        return f", measured {wording.length(half, self.known.quilt.system)} from a fold"

    def triangles(self, letter: str, number: int) -> str:
        plan = self.known.cutting.letters[letter]
        if plan.each == 1:
            return ""
        twice = "once" if plan.each == 2 else "twice"
        triangles = wording.counted(number * plan.each, "triangle")
        return f"; cut each {twice} on the diagonal, into {triangles} in all"

    def subcut(self, strip: Strip, cut: Cut) -> CutStep | None:
        across = cut.across if cut.across != strip.width else None
        wanted = ((cut.letter,), cut.along, across, strip.width)
        for step in self.plan.steps:
            found = (step.letters, step.length, step.across, step.width)
            if step.kind == "subcut" and found == wanted:
                return step
        return None

    def sheet(self, sheet: Sheet) -> CutStrip:
        """Pre-cut pieces of cloth cut alike: the strips of each, and what they give."""
        form, system = by_name[self.plan.form], self.known.quilt.system
        noun = form.one if sheet.times == 1 else form.many
        size = wording.size(sheet.across, sheet.down, system)
        count = wording.capital(wording.spelled(sheet.times))
        ready = self.used_whole(sheet)
        if ready:
            return CutStrip(f"{count} {noun}, {size}, used whole ({ready}).")
        start = "from it" if sheet.times == 1 else EACH
        rows = (line for row in sheet.rows for line in self.row(row))
        return CutStrip(f"{count} {noun}, {size}; {start} cut", tuple(rows))

    def row(self, row: Row) -> tuple[str, ...]:
        """What the like strips of one pre-cut piece of cloth give."""
        strip = self.plan.strips[row.strip]
        if strip.letters != (BINDING,) or self.bias():
            return self.pieces([(strip, row.times)])
        width = wording.length(strip.width, self.known.quilt.system)
        count = wording.spelled(row.times)
        return (f"{count} {_many('strip', row.times)}, {width} wide, for the binding",)

    def used_whole(self, sheet: Sheet) -> str:
        """The letter that such a piece of cloth is, uncut."""
        (row, *more) = sheet.rows
        cuts = self.plan.strips[row.strip].cuts
        alone = not more and row.times == 1 and len(cuts) == 1 and cuts[0].number == 1
        sides = {sheet.across, sheet.down}
        whole = alone and {cuts[0].along, cuts[0].across} == sides and not cuts[0].above
        return cuts[0].letter if whole else ""


def _full(group: Group) -> int:
    return group.times - (group.last is not None)


def _kind(cut: Cut) -> tuple[str, Fraction, Fraction]:
    return cut.letter, cut.along, cut.across


def _many(noun: str, number: int) -> str:
    return noun if number == 1 else wording.plural(noun)
