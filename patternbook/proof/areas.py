"""Quilting is suggested for borders and pieces that there are in some size."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted
from patternbook.quilt.records import LayoutMade, Quilt

# Other words for an area (the blocks, the centre) are the author's own.
_NAMED: Final = re.compile(r"border [0-9]+|[A-HJ-NP-Z]{1,2}[0-9]?")


def areas(known: Sequence[Evidence]) -> Iterator[Notice]:
    """A warning for a border by number, or a letter, that no size has."""
    quilts = [one.quilt for one in known]
    there = {name for quilt in quilts for name in (*quilt.pieces, *_borders(quilt))}
    for quilt in quilts:
        if quilt.top is None:
            continue
        for item in quilt.quilting:
            if _NAMED.fullmatch(item.area) and item.area not in there:
                yield _told(quilt, item.area, there, item.place)


def _told(quilt: Quilt, area: str, there: set[str], place: Place | None) -> Notice:
    borders = sorted(name for name in there if name.startswith("border "))
    needed = borders[-1] if area.startswith("border ") and borders else "all over"
    return recounted(
        quilt,
        "unknown-area",
        "R19",
        f"quilting of '{area}': no size of this quilt has one.",
        place,
        figures=(area, needed),
        hint=f"Write {needed}, or the name of a part.",
        severity="warning",
    )


def _borders(quilt: Quilt) -> Iterator[str]:
    """`border 1` and so on, as they are numbered from the inside out."""
    for unit in quilt.units.values():
        if isinstance(unit.made, LayoutMade):
            yield from (f"border {border.number}" for border in unit.made.borders)
