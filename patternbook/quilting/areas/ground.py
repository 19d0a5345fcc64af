"""Open ground: neighbouring patches of one plain fabric, with room for more than plain lines."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Final, NamedTuple

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.areas.motifs import around, motifs
from patternbook.quilting.areas.shapes import (
    SLACK,
    holds_circle,
    joined,
    less,
    opened,
    polygons,
    sewn,
    sides,
)
from patternbook.quilting.records import Cloth, Seam, Top, measured

LEAST: Final = 5.0  # in: the circle that fits into open ground
SMALL: Final = 3.5  # in: the same of a fabric that has open ground elsewhere
ENOUGH: Final = 12.0  # sq in: smaller patches are not looked at
BAR: Final = 4.0  # in: bars as wide as this are ground where they are much longer than wide
AS_BAR: Final = 5.0
PATCH: Final = 2.5  # in: the circle that fits into a patch of ground, however many make it up
NARROW: Final = 3.0  # in: arms of it as wide as this are ground as well where they are long
LONG: Final = 2.0  # times as long as wide
BUSY: Final = 0.25  # of seam in a square inch: more is piecing whatever its fabric
SHARE: Final = 1 / 3  # of the inside: less open ground is too little to be set apart
MANY: Final = 12  # pieces of ground with nothing between them are piecing of large patches
ALL: Final = 0.9


class Open(NamedTuple):
    """The open ground of a top: what can be divided where it is large, what is one area however
    large it is (a printed panel, the ground around shapes laid on it), and those shapes."""

    shapes: tuple[Polygon, ...]
    whole: tuple[Polygon, ...]
    figures: tuple[Polygon, ...]

    @property
    def all(self) -> tuple[Polygon, ...]:
        return (*self.shapes, *self.whole, *self.figures)

    @property
    def area(self) -> float:
        return sum(float(shape.area) for shape in self.all)


def open_ground(top: Top, inside: Polygon) -> Open | None:
    """The open ground; None where all of the inside is better quilted as one."""
    figures = motifs(top, inside)
    rings = around(top, figures)
    grounds = list(_grounds(top, rings.cloths))
    panels = [shape for ground in grounds if ground.panel for shape in polygons(ground.whole)]
    others = [ground for ground in grounds if not ground.panel]
    wide = [_wide(ground.whole, top.rules.inch) for ground in others]
    shapes = [shape for parts in wide for shape in parts]
    found = Open(tuple(shapes), (*rings.shapes, *panels), tuple(figures))
    share = found.area / float(inside.area)
    if share < SHARE or (len(shapes) > MANY and share > ALL and not found.whole):
        return None
    return found._replace(shapes=(*shapes, *_small(others, wide, top.rules.inch)))


class Ground(NamedTuple):
    """Patches of one plain fabric, each sewn to another of them, and the seam between them."""

    cloths: tuple[Cloth, ...]
    seamed: float
    whole: BaseGeometry

    @property
    def fabric(self) -> str:
        return self.cloths[0].fabric

    @property
    def panel(self) -> bool:
        return self.cloths[0].panel


def _grounds(top: Top, taken: Collection[int]) -> Iterator[Ground]:
    """All grounds that are large enough and have few seams."""
    least = ENOUGH * top.rules.inch**2
    busy = BUSY / top.rules.inch
    plain = _plain(top, taken)
    between = [seam for seam in top.seams if _one_ground(seam, plain)]
    first = _linked(plain, between)
    seamed: dict[int, float] = defaultdict(float)
    for seam in between:
        seamed[first[seam.patches[0]]] += measured(seam.path)
    groups: dict[int, list[Cloth]] = defaultdict(list)
    for number, cloth in plain.items():
        groups[first[number]].append(cloth)
    for number, cloths in groups.items():
        area = sum(float(cloth.shape.area) for cloth in cloths)
        if area > least and seamed[number] <= busy * area:
            yield Ground(tuple(cloths), seamed[number], sewn(cloth.shape for cloth in cloths))


def _plain(top: Top, taken: Collection[int]) -> dict[int, Cloth]:
    """The patches that can be ground: the small ones of pieced units are not."""
    cloths = [c for c in top.cloths if c.plain and not (c.border or c.laid_on)]
    far = (PATCH * top.rules.inch - SLACK) / 2
    inner = shapely.buffer([cloth.shape for cloth in cloths], -far)
    wide = zip(cloths, ~shapely.is_empty(inner), strict=True)
    return {cloth.number: cloth for cloth, is_wide in wide if is_wide and cloth.number not in taken}


def _one_ground(seam: Seam, plain: Mapping[int, Cloth]) -> bool:
    if not all(number in plain for number in seam.patches):
        return False
    one, other = (plain[number] for number in seam.patches)
    return one.fabric == other.fabric and not one.panel


def _linked(plain: Mapping[int, Cloth], seams: Sequence[Seam]) -> dict[int, int]:
    """For each patch the first of those that it is linked to by seams."""
    first = {number: number for number in plain}

    def found(number: int) -> int:
        while first[number] != number:
            first[number] = first[first[number]]
            number = first[number]
        return number

    for seam in seams:
        one, other = sorted(found(number) for number in seam.patches)
        first[other] = one
    return {number: found(number) for number in plain}


def _wide(whole: BaseGeometry, inch: float) -> list[Polygon]:
    """Where a circle fits, and the long arms from there; or else long bars."""
    wide = opened(whole, LEAST * inch - SLACK)
    if not wide:
        return [bar for bar in opened(whole, BAR * inch - SLACK) if _bar(bar)]
    narrow = opened(whole, NARROW * inch - SLACK)
    arms = [arm for arm in polygons(less(joined(narrow), joined(wide))) if _long(arm, inch)]
    return _fitting(polygons(sewn([*wide, *arms])) if arms else wide, LEAST * inch)


def _bar(shape: Polygon) -> bool:
    short, long = sides(shape)
    return long >= AS_BAR * short


def _small(
    grounds: Sequence[Ground], wide: Sequence[Sequence[Polygon]], inch: float
) -> Iterator[Polygon]:
    """Of a fabric that has open ground, smaller patches as well: a corner triangle beside side
    triangles."""
    known = {ground.fabric for ground, parts in zip(grounds, wide, strict=True) if parts}
    for ground, parts in zip(grounds, wide, strict=True):
        if ground.fabric in known and not parts:
            yield from _fitting(opened(ground.whole, SMALL * inch - SLACK), SMALL * inch)


def _fitting(parts: Sequence[Polygon], across: float) -> list[Polygon]:
    return [part for part in parts if holds_circle(part, across)]


def _long(arm: Polygon, inch: float) -> bool:
    short, long = sides(arm)
    return long >= LONG * short and float(arm.area) > ENOUGH * inch**2
