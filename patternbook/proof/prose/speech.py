"""One text of the author's as it is read: sentences, clauses, the parts and the sizes it names."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final, NamedTuple

from patternbook.notice import Place
from patternbook.proof.prose.numbers import Figure, figures, plain
from patternbook.proof.prose.sayings import Saying
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.spots import Spots

_SENTENCE: Final = re.compile(r"[.!?](?=\s|$)|\n\s*\n")
_CLAUSE: Final = re.compile(r"[;:()]|, (?!each\b)|\b(?:and|then|but|from these)\b|[.!?](?=\s|$)")
# "18 rectangles 3 1/2 x 4 1/2 (B)".
_IN_BRACKETS: Final = re.compile(r"(?:(?! and )[^.;:()])* \((?P<name>[\w -]+)\)")
_WORDS: Final = {
    "binding": "binding",
    "backing": "backing",
    "batting|wadding": "batting",
    "quilt(?! cent)|quilt top|top(?! (?:and|left|right|row|of|border))": "top",
    "centre|center|before (?:the )?borders?|without (?:the )?borders?": "top before borders",
    "seam allowances?|seams?": "seam",
}
_IN_WORDS: Final = "one two three four five six seven eight nine ten twelve"
_NUMERALS: Final = frozenset(_IN_WORDS.split())


class Mention(NamedTuple):
    """A part that is named, from start to end in the text."""

    start: int
    end: int
    part: str


@dataclass(frozen=True)
class Speech:
    """A saying with its words made plain, sign for sign as it was typed."""

    saying: Saying
    lines: Sequence[str]

    @cached_property
    def text(self) -> str:
        """The plain words."""
        return plain(str(self.saying.text))

    @cached_property
    def figures(self) -> tuple[Figure, ...]:
        """All numbers in digits."""
        return tuple(figures(self.text))

    @cached_property
    def _spots(self) -> Spots:
        return Spots(self.saying.text, self.lines)

    def place(self, start: int, end: int) -> Place:
        """Where these words stand in the source."""
        return self._spots.place(start, end)

    def written(self, start: int, end: int) -> str:
        """The words as they were typed, on one line."""
        return " ".join(str(self.saying.text)[start:end].split())

    def sentence(self, at: int) -> tuple[int, int]:
        """Where the sentence round this place begins and ends."""
        return _between(_SENTENCE, self.text, at)

    def clause(self, at: int) -> tuple[int, int]:
        """Where the clause round this place begins and ends."""
        return _between(_CLAUSE, self.text, at)


def _between(ends: re.Pattern[str], text: str, at: int) -> tuple[int, int]:
    start, end = 0, len(text)
    for found in ends.finditer(text):
        if found.end() <= at:
            start = found.end()
        elif found.start() >= at:
            end = found.start()
            break
    return start, end


def mentions(text: str, facts: Facts) -> tuple[Mention, ...]:
    """Every part that is named in a text: letters, units and cloths by their names, and what a
    reader calls the block, the quilt, the border."""
    found = sorted(dict.fromkeys(_named(text, facts)))
    return tuple(
        one
        for one in found
        if not any(
            other.start <= one.start and one.end <= other.end and other[:2] != one[:2]
            for other in found
        )
    )


def _named(text: str, facts: Facts) -> Iterator[Mention]:
    quilt = facts.known.quilt
    for letter in quilt.pieces:
        for found in re.finditer(rf"(?<![\w'-]){letter}(?![\w'-])", text):
            if letter != "A" or not _is_article(text, found.start()):
                yield Mention(found.start(), found.end(), letter)
    for name in (*quilt.units, *quilt.fabrics):
        if name == "top":
            continue
        words = plural(name)
        lead = r"(?<=\b(?:the|per) )(?<!of the )" if name in _NUMERALS else r"(?<![\w-])"
        for found in re.finditer(rf"{lead}{words}(?![\w-])", text, re.IGNORECASE):
            yield Mention(found.start(), found.end(), name)
    for words, part in (*_WORDS.items(), *_usual(facts)):
        for found in re.finditer(rf"\b(?:{words})\b", text, re.IGNORECASE):
            yield Mention(found.start(), found.end(), part)


def plural(name: str) -> str:
    """The pattern of a name, also of several: cup, cups; half, halves; cut-corner, cut corners."""
    stem = name.replace("-", "[ -]")
    return rf"(?:{stem}(?:e?s)?|{stem[:-1]}ves)" if name.endswith("f") else rf"{stem}(?:e?s)?"


def _is_article(text: str, at: int) -> bool:
    """A at the beginning of a sentence, before a word that is not said of a piece."""
    begins = not text[:at].strip() or text[:at].rstrip()[-1] in ".!?:"
    verb = re.match(
        r"A (?:is|are|and|measures?|finishes|must|should|then|x|to|by|[0-9(])|A[^ \w]", text[at:]
    )
    return begins and not verb


def _usual(facts: Facts) -> Iterator[tuple[str, str]]:
    if len(facts.blocks) == 1:
        yield "blocks?", facts.blocks[0]
    made = [name for name in facts.known.quilt.units if name != "top"]
    if len(made) == 1:
        yield "units?", made[0]
    for number, (name, _) in enumerate(facts.borders, 1):
        yield (f"border {number}", name)
    if len(facts.borders) == 1:
        yield "borders?", facts.borders[0][0]


def part_at(
    speech: Speech, figure: Figure, named: Sequence[Mention]
) -> tuple[str | None, str | None]:
    """The part a number is said of, and how near it is named: in brackets behind it, in the
    clause, in the sentence, or only by where the words stand."""
    if behind := _IN_BRACKETS.match(speech.text, figure.close):
        here = [m for m in named if (m.start, m.end) == behind.span("name")]
        if here:
            return here[0].part, "clause"
    for how, (start, end) in (
        ("clause", speech.clause(figure.start)),
        ("sentence", speech.sentence(figure.start)),
    ):
        near = [m for m in named if start <= m.start < end and not _inside(m, figure)]
        if how == "sentence":
            near = [m for m in near if m.end <= figure.start]
        if near:
            return min(near, key=lambda m: _apart(m, figure)).part, how
    return speech.saying.about, "standing" if speech.saying.about else None


def _inside(mention: Mention, figure: Figure) -> bool:
    return figure.start < mention.end and mention.start < figure.end


def _apart(mention: Mention, figure: Figure) -> int:
    if mention.start >= figure.close:
        return mention.start - figure.close
    return figure.start - mention.end


def sizes_at(speech: Speech, figure: Figure, sizes: Sequence[str]) -> Sequence[str]:
    """The sizes that a number is said of: those named in its clause, else last before it in the
    sentence, else all for which the words are printed."""
    if speech.saying.size is not None:
        return (speech.saying.size,)
    named = [
        (found.start(), size)
        for size in sizes
        for found in re.finditer(rf"(?<![\w-]){re.escape(size)}(?![\w-])", speech.text)
    ]
    if not named or len(sizes) < 2:
        return sizes
    start, end = speech.clause(figure.start)
    here = [size for at, size in named if start <= at < end]
    if here:
        return tuple(dict.fromkeys(here))
    start, _ = speech.sentence(figure.start)
    before = [(at, size) for at, size in named if start <= at < figure.start]
    return (max(before)[1],) if before else sizes
