"""Numbers for one of something: squares off each strip, slices off each set, pieces in a block or
a row."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.prose.said_count import Count, values
from patternbook.proof.prose.size_facts import QUILT
from patternbook.proof.prose.told import told
from patternbook.quilt.records import LayoutMade, Quilt, StripSetMade

_EACH: Final = r"\b(?:each|every|one|per|a) (?:[a-z-]+ )?"
_STRIP: Final = re.compile(
    rf"{_EACH}strip (?:gives|yields|makes)|\b(?:from|out of) (?:each|every|one) strip\b"
    r"|\bper strip\b",
    re.IGNORECASE,
)
_GIVES: Final = re.compile(r"\b(?:gives|yields|makes)\b", re.IGNORECASE)
_IN_ALL: Final = re.compile(r"(?: [A-Z]{1,2}[0-9]?)?,? (?:in all|in total|altogether)\b")
_SET: Final = re.compile(r"\b(?:each|every|one|per)(?: strip)?[ -]set\b", re.IGNORECASE)
_ROW: Final = re.compile(
    r"\binto (?:each|every|one|a) row\b|\bin (?:each|every) row\b|\bper row\b", re.IGNORECASE
)
_BLOCK: Final = (
    r"\b(?:for|in|into) (?:one|each|every) {0}\b|\binto a {0}\b|\bper {0}\b"
    r"|\b(?:each|every) {0} (?:needs|takes|uses|has)\b"
)


def per_one(count: Count) -> Notice | None:
    """What is wrong with a number that is said for one strip, set, row or block."""
    if not count.figure.text.isdigit() or _of_all(count):
        return None
    start, end = count.speech.sentence(count.figure.start)
    sentence = count.speech.text[start:end]
    noun = count.what.noun
    rights: tuple[int, ...] = ()
    if noun == "pieces" and _STRIP.search(sentence):
        rights = tuple(_per_strip(count))
        if not _GIVES.search(sentence) and count.number < max(rights, default=0):
            return None  # fewer may be cut
    elif noun == "slices" and _SET.search(sentence):
        rights = tuple(_per_set(count))
    elif noun in ("pieces", "blocks") and _ROW.search(sentence):
        rights = tuple(_per_row(count))
    elif noun == "pieces":
        rights = tuple(_per_block(count, sentence))
    if not rights or count.number in rights:
        return None
    right = min(rights, key=lambda one: (abs(one - count.number), one))
    return _told(count, right)


def _of_all(count: Count) -> bool:
    """Whether the number is that of all of them, which may stand in the same sentence."""
    behind = _IN_ALL.match(count.speech.text, count.what.end)
    return behind is not None or count.number in values(count.own, only_totals=True)


def is_per_one(count: Count) -> bool:
    """Whether slices are counted for one set alone."""
    start, end = count.speech.sentence(count.figure.start)
    return count.what.noun == "slices" and bool(_SET.search(count.speech.text, start, end))


def _per_strip(count: Count) -> Iterator[int]:
    """What comes off one strip as it is planned, and what lies on it at most: of the letter that
    is named, or of what is cut from strips of a width that is named."""
    known = count.facts.known
    wide = {value for figure in count.speech.figures for value in figure.values}
    for letter, plan in known.cutting.letters.items():
        piece = known.quilt.pieces[letter]
        named = count.part == letter
        of_width = count.part in (None, piece.fabric) and plan.strip_width in wide
        if not piece.is_strip and (named or of_width):
            yield from filter(None, (plan.per_strip, plan.fits, plan.each))


def _per_set(count: Count) -> Iterator[int]:
    """As many as fit, or fewer where she plans so."""
    sets = [unit.made for unit in count.facts.known.quilt.units.values()]
    for made in sets:
        if isinstance(made, StripSetMade):
            yield from range(made.fits, 0, -1)


def _per_row(count: Count) -> Iterator[int]:
    """All parts of a row, and those of each kind."""
    for unit in count.facts.known.quilt.units.values():
        made = unit.made
        if isinstance(made, LayoutMade) and made.by == "rows" and made.setting == "straight":
            for line in made.lines:
                yield len(line.parts)
                yield from Counter(placed.part for placed in line.parts).values()


def _per_block(count: Count, sentence: str) -> Iterator[int]:
    """How many of a letter lie in the block that is named."""
    quilt = count.facts.known.quilt
    letter = count.part or ""
    if letter not in quilt.pieces or count.how != "clause":
        return
    for name in quilt.units:
        block = "block" if count.facts.blocks == (name,) else None
        words = "|".join(filter(None, (re.escape(name), block)))
        if name != QUILT and re.search(_BLOCK.format(f"(?:{words})"), sentence, re.IGNORECASE):
            laid = _laid(quilt, name)
            yield from (laid[letter],) if laid and laid[letter] else ()


def _laid(quilt: Quilt, name: str) -> Counter[str] | None:
    """The pieces in one unit, where it and all units in it are laid of whole parts."""
    found: Counter[str] = Counter()
    unit = quilt.units[name]
    if not isinstance(unit.made, LayoutMade):
        return None
    for placed in unit.placed:
        inner = _laid(quilt, placed.part) if placed.part in quilt.units else Counter([placed.part])
        if inner is None:
            return None
        found.update(inner)
    return found


def _told(count: Count, right: int) -> Notice:
    stated = count.speech.written(count.figure.start, count.what.end)
    whom = f" {count.part}" if count.part else ""
    per_block = count.what.noun == "pieces" and not _STRIP.search(count.speech.text)
    return told(
        "said-count",
        "R3" if per_block else "R5",
        count.speech,
        (count.figure.start, count.figure.end),
        f"the sentence says {stated} for one; it is {right}{whom}.",
        needed=str(right),
        sizes=(count.facts.known.quilt.size,),
    )
