"""The sheet of labels, read back: each letter's cut size, and how many of it there are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from patternbook.booklet.readback.chart import logs
from patternbook.booklet.readback.reading import Differs, numbers, title
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import BINDING
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence

Told = tuple[tuple[Fraction, ...], int]  # the size, and how many


@dataclass
class Read:
    """One label: its letter, and the lines below it."""

    letter: str
    page: int
    lines: list[str] = field(default_factory=list)

    @property
    def told(self) -> Told | None:
        """Its size and number."""
        if len(self.lines) < 3:
            return None
        size, number = numbers(self.lines[1]), numbers(self.lines[2])
        return (size, int(number[0])) if number else (size, 0)


def labels(lines: Sequence[Line], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every letter of every size, and none more."""
    read = tuple(labels_read(lines))
    for size, known in sizes.items():
        own = [one for under, one in read if under.startswith(f"{title(size)},")]
        right = dict(_right(known))
        for one in own:
            if one.told not in right.get(one.letter, ()):
                best = "; ".join(_worded(told) for told in right.get(one.letter, ())) or "nothing"
                shown = _worded(one.told) if one.told else "nothing"
                yield Differs(f"the label of {one.letter}", size, one.page, shown, best)
        for letter, told in right.items():
            number = sum(one.letter == letter for one in own)
            if number != len(told):
                what = f"labels of {letter}"
                yield Differs(what, size, own[0].page if own else 0, str(number), str(len(told)))


def labels_read(lines: Sequence[Line]) -> Iterator[tuple[str, Read]]:
    """Each label, with the heading that it stands under."""
    under, at = "", None
    for line in lines:
        if line.kind == "H2":
            under, at = line.words, None
        elif line.kind == "H3":
            at = Read(line.words, line.page)
            yield under, at
        elif at is not None and line.kind == "P":
            at.lines.append(line.words)


def _right(known: Evidence) -> Iterator[tuple[str, tuple[Told, ...]]]:
    """What the labels of each letter must say."""
    for plan in known.cutting.fabrics.values():
        for letter in dict.fromkeys(letter for strip in plan.strips for letter in strip.letters):
            if letter == BINDING:
                yield "Binding", tuple(_binding(known))
                continue
            piece = known.quilt.pieces[letter]
            if piece.cut.down is not None:
                number = sum(strip.pieces(letter) for strip in plan.strips)
                yield letter, (((piece.cut.across, piece.cut.down), number),)
                continue
            lengths: dict[Fraction, int] = {}
            strips = 0
            for strip in plan.strips:
                strips += strip.times if letter in strip.letters else 0
                for cut in (one for column in strip.cuts for one in column.stacked):
                    if cut.letter == letter:
                        long = cut.across if strip.along == "length" else cut.along
                        times = 1 if strip.join else strip.times
                        lengths[long] = lengths.get(long, 0) + cut.number * times
            wide = piece.cut.across
            yield (
                letter,
                tuple(((wide, one), number) for one, number in lengths.items())
                if logs(piece, known) or piece.along == "length"
                else (((wide,), strips),),
            )


def _binding(known: Evidence) -> Iterator[Told]:
    plan = known.cutting.binding
    if plan is not None:
        yield (plan.cut,), 0 if plan.square is not None else plan.strips


def _worded(told: Told) -> str:
    return f"{' × '.join(map(printed, told[0]))}, {told[1]}"
