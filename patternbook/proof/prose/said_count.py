"""What a count in a sentence is of: its noun, its part, and whether all of them are meant."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Final

from patternbook.exact import Exact
from patternbook.proof.prose.fact_counts import SHAPES, Number
from patternbook.proof.prose.noun import Counted, counted
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import QUILT, Facts
from patternbook.proof.prose.speech import Mention, Speech, part_at

_ALL: Final = re.compile(
    r"\b(?:cut|make|need(?:ed|s)?|buy|in all|total|sub-?cut|list)\b", re.IGNORECASE
)
# A number for one of something, or of some of them, is not the number of all.
_SOME: Final = re.compile(
    r"\b(?:each(?! [0-9])|every|per|its|their|a time|at once|for one|another|more|other|first"
    r"|last|second|next|together|spare|extra|left|over|one block|into"
    r"|a (?:strip|set|block|row|roll|fat|time|print|star|unit))\b|\ba(?:n)? \w+$",
    re.IGNORECASE,
)
_SIZED: Final = re.compile(r"(?:,? each|,? cut| of| at|,)? (?=[0-9])")
_FROM_EACH: Final = re.compile(r"\b(?:from|out of|for) (?:each|every)\b", re.IGNORECASE)
_ASKED: Final = re.compile(r"\b(?:cut|make|need|total|in all|sew) $", re.IGNORECASE)
_ROWS_OF: Final = re.compile(r"\b(?:rows?|columns?) of $", re.IGNORECASE)
_CUT: Final = re.compile(r"\b(?:sub-?)?cut\b|\bmake\b|\bbuy\b|\bneed", re.IGNORECASE)
# "4 squares B meet 5 squares A": the letter right behind the noun, not the nearest one.
_LETTER: Final = re.compile(r" ([A-Z]{1,2}[0-9]?)(?![\w'-])")
_SIDES: Final = 2


@dataclass(frozen=True)
class Count:
    """A number with what it counts: of `part`, which is named as near as `how` says; `alike` are
    the pieces that a size behind the noun tells."""

    speech: Speech
    figure: Figure
    facts: Facts
    what: Counted
    part: str | None
    how: str | None
    alike: tuple[str, ...]

    @property
    def number(self) -> int:
        """The number."""
        return int(self.figure.value)

    @cached_property
    def own(self) -> tuple[Number, ...]:
        """The facts of the part; of rows and columns those of any, unless the words stand at it."""
        whole = self.what.noun in ("rows", "columns") and self.how != "standing"
        part = () if whole or self.part is None else (self.part,)
        return tuple(_facts_of(self.what, self.alike or part, self.facts))

    @cached_property
    def every(self) -> tuple[Number, ...]:
        """The facts of this noun, of whatever part."""
        return tuple(_facts_of(self.what, (), self.facts))

    @cached_property
    def asked(self) -> bool:
        """Whether so many are to be cut, made or bought, or come out of a sum."""
        text, start = self.speech.text, self.speech.sentence(self.figure.start)[0]
        comes_to = text[: self.figure.start].rstrip().endswith("=")
        return bool(_ALL.search(text, start, self.figure.start) or self.alike or comes_to)

    @cached_property
    def some(self) -> bool:
        """Whether it is a number for one of something, rather than of all."""
        text, at = self.speech.text, self.figure.start
        start, end = self.speech.clause(at)
        last = self.speech.sentence(at)[1]
        if not _CUT.search(text, start, at):
            start, end = self.speech.sentence(at)
        from_each = _FROM_EACH.search(text, end, last)
        rows_of = _ROWS_OF.search(text, start, at)
        return bool(_SOME.search(text, start, end) or from_each or rows_of)

    @property
    def anywhere(self) -> bool:
        """Whether the size has the number at all."""
        return anywhere(self.number, self.facts)


def anywhere(number: int, facts: Facts) -> bool:
    """Whether a size has this number, as a count or as a length."""
    return number in facts.counted or Fraction(number) in facts.values


def values(held: Sequence[Number], *, only_totals: bool) -> tuple[int, ...]:
    """The numbers, each once."""
    return tuple(dict.fromkeys(n.value for n in held if n.total or not only_totals))


def count_at(
    speech: Speech, figure: Figure, facts: Facts, named: Sequence[Mention]
) -> Count | None:
    """What a number counts; None where it counts nothing of a quilt's."""
    part, how = part_at(speech, figure, named)
    what = counted(speech, figure.close, facts) or _asked_of(speech, figure, part, facts)
    if what is None:
        return None
    letter = _LETTER.match(speech.text, what.end)
    if what.part:
        part, how = what.part, "clause"
    elif letter and letter[1] in facts.known.quilt.pieces:
        part, how = letter[1], "clause"
    alike = _of_size(speech, what, facts)
    if how == "clause" and part is not None and part not in facts.known.quilt.units:
        alike = tuple(one for one in alike if one in _family(part, facts, what))
    return Count(speech, figure, facts, what, part, how, alike)


def _asked_of(speech: Speech, figure: Figure, part: str | None, facts: Facts) -> Counted | None:
    """`cut 70` or `make 12`, with nothing behind: of the part that it stands at."""
    quilt = facts.known.quilt
    if not _ASKED.search(speech.text[: figure.start]) or part is None:
        return None
    if Fraction(figure.value) in facts.values and speech.text[figure.close :][:1] in (" ", ","):
        return None
    if part in quilt.units:
        return Counted("units", part, part, figure.close)
    if part in quilt.pieces:
        noun = "strips" if quilt.pieces[part].is_strip else "pieces"
        return Counted(noun, part, part, figure.close)
    return None


def _of_size(speech: Speech, what: Counted, facts: Facts) -> tuple[str, ...]:
    """The parts that are told by the size behind the noun: "56 rectangles 2 1/2 x 5 1/2"."""
    behind = _SIZED.match(speech.text, what.end)
    if behind is None or what.noun not in ("strips", "pieces"):
        return ()
    size = next((one for one in speech.figures if one.start == behind.end()), None)
    if size is None:
        return ()
    return tuple(_sized(size, what, facts))


def _sized(size: Figure, what: Counted, facts: Facts) -> Iterator[str]:
    for fact in facts.lengths:
        wanted = "strip" if what.noun == "strips" else "cut"
        if fact.kind != wanted or (wanted == "strip" and fact.part not in facts.known.quilt.pieces):
            continue
        sides = tuple(Exact.of(value) for value in size.values)
        both = sides * 2 if len(sides) == 1 and len(fact.sides) == _SIDES else sides
        one_side = len(sides) == 1 and not what.word.startswith("square") and sides[0] in fact.sides
        if one_side or sorted(both) == sorted(fact.sides):
            yield fact.part


def _facts_of(what: Counted, parts: Sequence[str], facts: Facts) -> Iterator[Number]:
    """The numbers of this noun: of these parts and of what is cut from or sewn into them."""
    kin = frozenset(part for one in parts for part in _family(one, facts, what))
    if QUILT in parts:
        kin |= {""}  # all pieces of the quilt
    blocks = frozenset(facts.blocks)
    for number in facts.numbers:
        if parts and number.part not in kin:
            continue
        noun = what.noun
        if noun == "pieces" and number.noun in (*SHAPES, "lengths"):
            if (
                number.noun == "squares"
                or what.word.rstrip("s") != "square"
                or number.noun != "triangles"
            ):
                yield number
        elif (
            noun == "blocks" and number.noun == "units" and number.part in blocks
        ) or number.noun == noun:
            yield number


def _family(part: str, facts: Facts, what: Counted) -> frozenset[str]:
    """Of a letter or a unit itself; of a cloth its pieces; of strips of a unit the pieces in it."""
    quilt = facts.known.quilt
    if part in quilt.pieces or (part in quilt.units and what.noun not in ("strips", "pieces")):
        return frozenset((part,))
    return facts.kin(part)
