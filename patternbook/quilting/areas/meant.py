"""What the author's word for an area means."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from patternbook.quilting.records import Area, AreaKind, Top, Wish

ALL_OVER: Final = "all over"
# What she calls `ground` may have been divided, and where all is piecing it is the body.
WIDER: Final[Mapping[AreaKind, str]] = {
    "square": "ground",
    "band": "ground",
    "corner": "ground",
    "channel": "ground",
    "body": "piecing",
}


def meant(wish: Wish, area: Area, top: Top) -> bool:
    """Whether a wish is about an area."""
    return called(wish.area, area, top)


def called(word: str, area: Area, top: Top) -> bool:
    """Whether a word names an area. A letter that a piece has means the areas that hold that
    piece; others are letters of areas."""
    if word in {ALL_OVER, *kinds(area), area.key, area.name, *area.joined}:
        return True
    if any(cloth.letter == word for cloth in top.cloths):
        return word in area.letters
    borders = {f"border {number}" for number in area.borders if area.kind == "border"}
    return word == area.letter or word in borders or word in area.units


def kinds(area: Area) -> tuple[str, ...]:
    """The words for the kind of an area, the widest first."""
    return (WIDER[area.kind], area.kind) if area.kind in WIDER else (area.kind,)
