"""Units that lie mirrored and are not the same that way: recounted from the parts' own turns."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping

from patternbook.exact import Exact
from patternbook.quilt.outlines import lines
from patternbook.quilt.place import patches
from patternbook.quilt.records import Quilt

Point = tuple[Exact, Exact]
Lying = frozenset[tuple[str, frozenset[Point]]]


def other_hand(quilt: Quilt, lying: Mapping[str, int]) -> Mapping[str, int]:
    """How many of each handed unit lie mirrored in the top; only those of which any do."""
    found: Counter[str] = Counter()
    for unit in reversed(tuple(quilt.units.values())):
        for part in unit.placed:
            if part.part in quilt.units:
                over = found[unit.name]
                found[part.part] += lying[unit.name] - over if part.turn.mirrored else over
    return {name: number for name, number in found.items() if number and _handed(quilt, name)}


def _handed(quilt: Quilt, name: str) -> bool:
    """Whether it cannot be turned so that it lies as its mirror image does."""
    across, down = quilt.units[name].finished
    as_made = frozenset(
        (patch.letter, frozenset((x, y) for x, y in lines(patch).corners))
        for patch in patches(quilt, name)
    )
    image = _moved(as_made, lambda x, y: (across - x, y))
    half = _moved(as_made, lambda x, y: (across - x, down - y))
    right = _moved(as_made, lambda x, y: (down - y, x))
    left = _moved(as_made, lambda x, y: (y, across - x))
    return image not in (as_made, right, half, left)


def _moved(lying: Lying, way: Callable[[Exact, Exact], Point]) -> Lying:
    return frozenset(
        (letter, frozenset(way(x, y) for x, y in corners)) for letter, corners in lying
    )
