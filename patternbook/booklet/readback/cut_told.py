"""The cutting of one size in sentences, read back: strips, and the pieces cut from them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.reading import Differs, numbers
from patternbook.booklet.readback.spelled import count
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.records import FabricPlan
from patternbook.inch import printed
from patternbook.proof.evidence import Evidence

CHAPTER: Final = "Cutting"
_FROM: Final = re.compile(r"From (?P<fabric>.+):")
_STRIPS: Final = re.compile(r"(?P<count>\w+) [a-z -]+, (?P<size>[^;,(]*)")
_PIECES: Final = re.compile(r"(?P<count>\w+) \w+, (?P<size>.+?) \((?P<letter>[A-Z]{1,2}\d?)\)")
_WHOLE: Final = re.compile(r"used whole \((?P<letter>[A-Z]{1,2}\d?)\)")


@dataclass
class Read:
    """What the sentences of one fabric say: strips by width, pieces by letter, and their sizes."""

    page: int
    strips: Counter[Fraction] = field(default_factory=Counter)
    pieces: Counter[str] = field(default_factory=Counter)
    sizes: dict[str, set[tuple[Fraction, ...]]] = field(default_factory=dict)
    each: int = 1

    def strip(self, words: str) -> None:
        """A sentence that opens: so many strips, and whether each gives what follows."""
        found = _STRIPS.match(words)
        times = count(found["count"]) if found else None
        if found is None or times is None:
            return
        self.strips[numbers(found["size"])[0]] += times
        self.each = times if "from each" in words else 1
        whole = _WHOLE.search(words)
        if whole:
            self.pieces[whole["letter"]] += times

    def piece(self, words: str) -> None:
        """A line of pieces, behind its bullet."""
        found = _PIECES.search(words)
        number = count(found["count"]) if found else None
        if found and number is not None:
            self.pieces[found["letter"]] += number * self.each
            self.sizes.setdefault(found["letter"], set()).add(numbers(found["size"]))


def cut_told(lines: Sequence[Line], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """Every fabric of a size that has its booklet alone."""
    if len(sizes) != 1:
        return
    ((size, known),) = sizes.items()
    read = dict(_read(lines))
    for name, plan in known.cutting.fabrics.items():
        if plan.strips:
            label = name.replace("-", " ") or "one fabric"
            yield from _compared(size, known, plan, read.get(label) or Read(0))


def _read(lines: Sequence[Line]) -> Iterator[tuple[str, Read]]:
    chapter, at = "", None
    for line in lines:
        if line.kind in {"H1", "H2"}:
            chapter, at = line.words, None
        elif line.kind == "H3":
            at = None
        elif line.kind == "H4" and chapter == CHAPTER:
            found = _FROM.fullmatch(line.words)
            at = Read(line.page) if found else None
            if found and at:
                yield found["fabric"], at
        elif at is not None and line.kind == "P":
            at.strip(line.words)
        elif at is not None and line.kind == "LI":
            at.piece(line.words)


def _compared(size: str, known: Evidence, plan: FabricPlan, read: Read) -> Iterator[Differs]:
    strips: Counter[Fraction] = Counter()
    for sheet in plan.sheets:
        strips[sheet.across] += sheet.times
    for strip in plan.strips if not plan.sheets else ():
        strips[strip.width] += strip.times
    if read.strips != strips:
        what = f"the strips of {plan.fabric}"
        yield Differs(what, size, read.page, _listed(read.strips), _listed(strips))
    for letter in dict.fromkeys(letter for strip in plan.strips for letter in strip.letters):
        piece = known.quilt.pieces.get(letter)
        if piece is None or (piece.is_strip and letter not in read.pieces):
            continue
        right = sum(strip.pieces(letter) for strip in plan.strips)
        if read.pieces[letter] != right:
            what = f"pieces of {letter}"
            yield Differs(what, size, read.page, str(read.pieces[letter]), str(right))
        for shown in read.sizes.get(letter, ()) if not piece.is_strip else ():
            if shown != tuple(side for side in piece.cut if side is not None):
                sides = " × ".join(printed(side) for side in piece.cut if side is not None)
                told = " × ".join(map(printed, shown))
                yield Differs(f"cut size of {letter}", size, read.page, told, sides)


def _listed(strips: Mapping[Fraction, int]) -> str:
    told = (f"{number} × {printed(width)}" for width, number in strips.items())
    return ", ".join(told) or "nothing"
