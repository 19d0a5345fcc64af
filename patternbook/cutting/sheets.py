"""How strips lie in pre-cut squares, quarters and panels."""

from __future__ import annotations

from collections.abc import Sequence

from patternbook.cutting.cloth import Cloth
from patternbook.cutting.packing import Item, first_fit
from patternbook.cutting.records import Row, Sheet, Strip


def sheets(cloth: Cloth, strips: Sequence[Strip]) -> tuple[Sheet, ...]:
    """The widest strips first, each into the first piece with room; none from the bolt."""
    if cloth.deep is None:
        return ()
    items = [
        Item(str(place), strip.width, strip.length, strip.times)
        for place, strip in enumerate(strips)
    ]
    across, down = (cloth.deep, cloth.run) if cloth.turned else (cloth.run, cloth.deep)
    return tuple(
        Sheet(
            across,
            down,
            filled.times,
            tuple(Row(int(item.letter), times) for item, times in filled.taken),
            cloth.turned,
        )
        for filled in first_fit(items, cloth.deep)
    )


def too_deep(cloth: Cloth, strip: Strip) -> bool:
    """Whether a strip is wider than the pre-cut piece has room for."""
    return cloth.deep is not None and strip.width > cloth.deep
