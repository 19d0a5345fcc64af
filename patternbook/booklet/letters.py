"""Signs that the booklet's fonts lack, told where they are written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache, reduce
from unicodedata import name

from patternbook.notice import Mark, Notice
from patternbook.shipped import shipped
from patternbook.value import NOWHERE, Text

HINT = "Write it in letters and signs that a booklet can be printed with."


def unprintable(words: Iterable[Text]) -> Iterator[Notice]:
    """An error for every word that could not be printed."""
    for word in words:
        signs = lacking(word)
        if signs and word.place != NOWHERE:
            shown = ", ".join(map(_called, signs[:5]))
            message = f"the booklet's fonts do not have {shown}."
            marks = (Mark(word.place, "written here"),)
            yield Notice("missing-glyph", "error", "booklet", message, marks, None, hint=HINT)


def lacking(text: str) -> tuple[str, ...]:
    """The signs of a text that not all of the fonts have, each once; spaces apart."""
    if text.isascii() and text.replace("\n", " ").isprintable():
        return ()
    strange = dict.fromkeys(sign for sign in text if not sign.isspace())
    return tuple(sign for sign in strange if sign not in _had())


def _called(sign: str) -> str:
    if sign.isprintable():
        return f"'{sign}'"
    return f"{name(sign, 'a sign without a name').lower()} (U+{ord(sign):04X}, not to be seen)"


@cache
def _had() -> frozenset[str]:
    """What every face of the booklet has: a word may stand in any of them."""
    from fontTools.ttLib import TTFont

    faces = []
    for path in sorted((shipped("templates") / "fonts").glob("*.ttf")):
        with TTFont(path, lazy=True) as font:
            faces.append(frozenset(map(chr, font.getBestCmap())))
    return reduce(frozenset.intersection, faces)
