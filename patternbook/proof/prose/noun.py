"""The words by which sentences count: strips, squares, blocks, rows, packs."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Speech, plural

# The noun of the model, its rule, and the words for it.
NOUNS: Final[tuple[tuple[str, str, str], ...]] = (
    ("sets", "R5", r"strip[ -]sets?|sets?"),
    ("strips", "R5", r"(?:\w+[ -]roll )?strips?"),
    (
        "units",
        "R3",
        r"half-square triangles?|quarter-square triangles?|(?:flying )?geese|units?|HSTs?|QSTs?",
    ),
    ("pieces", "R3", r"squares?|rectangles?|triangles?|pieces?|patch(?:es)?|diamonds?|hexagons?"),
    ("slices", "R5", r"slices?|segments?"),
    ("blocks", "R3", r"blocks?"),
    ("rows", "R8", r"rows?"),
    ("columns", "R8", r"columns?"),
    ("borders", "R7", r"borders?"),
    ("packs", "R21", r"packs?|packets?|rolls?"),
    ("panels", "R15", r"panels?"),
)
WORDS: Final = "two three four five six seven eight nine ten eleven twelve"
NUMERALS: Final = {word: number for number, word in enumerate(WORDS.split(), 2)}
ONE: Final = re.compile(r"\bone(?= (?:pack|packet|roll)\b)", re.IGNORECASE)
SPELLED: Final = re.compile(rf"\b(?:{'|'.join(NUMERALS)})\b(?!-)", re.IGNORECASE)
# Between a count and its noun may stand a word or two that say which: "18 light squares".
_STOP: Final = (
    r"(?:of|in|and|or|x|the|to|per|from|by|on|at|is|are|with|for|more|inch|inches|each|times|as"
    r"|minutes?|hours?|days?|weeks?|times?|a|an|all)\b"
)
_WHICH: Final = rf"(?:(?!{_STOP})[\w'-]+ ){{0,2}}?"
NOUN: Final = re.compile(
    rf" (?P<which>{_WHICH})(?:"
    + "|".join(f"(?P<{noun}>{words})" for noun, _, words in NOUNS)
    + r")(?![\w-])",
    re.IGNORECASE,
)


_SHARED: Final = re.compile(r" [a-z-]+(?:,| and| &)(?: and)? [0-9]+(?= [a-z-]+)")


class Counted(NamedTuple):
    """What a number counts: the noun of the model, the word for it, the unit where one is named,
    and where the words end."""

    noun: str
    word: str
    part: str | None
    end: int


def counted(speech: Speech, close: int, facts: Facts) -> Counted | None:
    """What stands right behind a number, if it counts anything of a quilt's."""
    text = speech.text
    if named := _part(text, close, facts):
        return named
    # "36 light and 36 dark squares": the noun comes with the second.
    shared = _SHARED.match(text, close)
    found = NOUN.match(text, shared.end() if shared else close)
    if found is None:
        return None
    if shared:
        return Counted(found.lastgroup or "", found[found.lastgroup or ""].lower(), None, close)
    noun = found.lastgroup or ""
    return Counted(noun, found[noun].lower(), None, found.end())


def _part(text: str, close: int, facts: Facts) -> Counted | None:
    """The name of a unit, or the letter of a piece, that is counted."""
    quilt = facts.known.quilt
    for name in quilt.units:
        words = plural(name)
        found = re.match(rf" {words}(?![\w-])", text[close:], re.IGNORECASE)
        if found and name != "top" and name not in NUMERALS:
            return Counted("units", name, name, close + found.end())
    found = re.match(
        r" (?:of )?([A-HJ-NP-Z]{1,2}[0-9]?)(?![\w'-])(?! (?:strips?|sets?)\b)", text[close:]
    )
    if found and found[1] in quilt.pieces:
        return Counted("pieces", found[1], found[1], close + found.end())
    return None


def rule_of(noun: str, part: str | None) -> str:
    """The rule that a count of this noun is under."""
    if noun == "strips" and part == "binding":
        return "R14"
    return next((rule for name, rule, _ in NOUNS if name == noun), "R3")


def spelled(speech: Speech) -> list[Figure]:
    """The numbers in words, as if they stood in digits."""
    found = [
        Figure(one.start(), one.end(), one.end(), Fraction(_number(one[0])), one[0])
        for pattern in (SPELLED, ONE)
        for one in pattern.finditer(speech.text)
    ]
    return sorted(found, key=lambda figure: figure.start)


def _number(word: str) -> int:
    return NUMERALS.get(word.lower(), 1)
