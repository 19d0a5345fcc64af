"""The letters of areas: those that are alike share one, and get the same design."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from itertools import count
from operator import itemgetter
from typing import Final, NamedTuple

from shapely import LineString, Polygon

from patternbook.quilting.areas.parts import Part
from patternbook.quilting.areas.shapes import boxed, sides, widths
from patternbook.quilting.records import AreaKind, Rules

# From P on, so that no area is taken for a piece; I and O are too like figures.
ORDER: Final = "PQRSTUVWXYZNMLKJHGFEDCBA"
MOST: Final = 8  # letters on a top
NEARLY: Final = (0.0, 0.12, 0.25, 0.5, 1.0)  # how much in size those of one letter may differ
# Strips that are alike in width are alike.
STRIPS: Final[tuple[AreaKind, ...]] = ("border", "channel", "band")
LONG: Final = 4.0  # times as long as wide: a strip, whatever its kind

Key = tuple[str, int]


class Look(NamedTuple):
    """By what parts are told alike, whichever way they lie: how wide at the narrowest and at the
    widest, and how much of that is filled. Strips go by their width."""

    kind: AreaKind
    least: float
    most: float
    full: float


def lettered(parts: Sequence[Part], rules: Rules, taken: Collection[str]) -> list[Key]:
    """The letter and number of each part, the parts given in reading order. `taken`: letters that
    pieces have."""
    looks = [_look(part, rules.step) for part in parts]
    groups: list[int] = []
    for nearly in NEARLY:
        groups = _groups(looks, nearly, rules.step)
        if len(set(groups)) <= MOST:
            break
    fresh = names(taken)
    letters: dict[int, str] = {}
    counts: Counter[int] = Counter()
    found: list[Key] = []
    for group in groups:
        if group not in letters:
            letters[group] = next(fresh)
        counts[group] += 1
        found.append((letters[group], counts[group]))
    return found


def names(taken: Collection[str]) -> Iterator[str]:
    for times in count(1):
        yield from (letter * times for letter in ORDER if letter * times not in taken)


def _look(part: Part, step: float) -> Look:
    least, most = widths(part.shape)
    if part.centre is not None:
        least = float(part.shape.area) / LineString(part.centre).length
    rounded = round(least / step) * step
    if part.centre is not None or part.kind in STRIPS or _strip(part.shape):
        return Look(part.kind, rounded, 0.0, 1.0)
    filled = float(part.shape.area) / (least * most)
    return Look(part.kind, rounded, round(most / step) * step, round(filled, 2))


def _strip(shape: Polygon) -> bool:
    short, long = sides(shape)
    return long > LONG * short and boxed(shape) > 0.9


def _groups(looks: Sequence[Look], nearly: float, step: float) -> list[int]:
    """For each look the first one that it is alike to."""
    heads: list[tuple[Look, int]] = []
    known: dict[Look, int] = {}
    for number, look in enumerate(looks):
        if look not in known:
            near = (first for head, first in heads if _alike(look, head, nearly, step))
            known[look] = next(near, number)
            if known[look] == number:
                heads.append((look, number))
    return [known[look] for look in looks]


def _alike(one: Look, other: Look, nearly: float, step: float) -> bool:
    if one.kind != other.kind:
        return False

    def near(here: float, there: float, least: float) -> bool:
        return abs(here - there) <= max(nearly * max(here, there), least)

    return (
        near(one.least, other.least, step)
        and near(one.most, other.most, step)
        and near(one.full, other.full, 0.02)
    )


def reading(parts: Sequence[Part], row: float) -> list[Part]:
    """The parts row by row from the top left; middles not farther apart than `row` in height are
    in one row."""
    rows: list[list[tuple[float, float, Part]]] = []
    start = float("-inf")
    for (down, along), part in sorted(((_spot(part), part) for part in parts), key=itemgetter(0)):
        if down > start + row:
            start = down
            rows.append([])
        rows[-1].append((along, down, part))
    return [part for line in rows for *_, part in sorted(line, key=itemgetter(0, 1))]


def _spot(part: Part) -> tuple[float, float]:
    middle = part.shape.centroid
    return round(float(middle.y), 4), round(float(middle.x), 4)
