"""One channel: the lines that it is made of."""

from __future__ import annotations

from typing import NamedTuple

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from patternbook.quilting.areas.roots import Root
from patternbook.quilting.records import Path


class Channel(NamedTuple):
    """One channel: out so far from its root, then to the first side (1) or the other (-1), so far
    from the middle of the root. `half` is half its width, `echo` how far outside the echo is."""

    root: Root
    out: float
    turn: int
    far: float
    echo: float

    @property
    def half(self) -> float:
        return self.root.width / 2

    def line(self, aside: float, back: float = 0.0) -> Path:
        """A line beside the middle line, to the first side of it if more than 0."""
        out = self.out - self.turn * aside
        spot = self.root.spot
        return spot(-back, aside), spot(out, aside), spot(out, self.turn * self.far)

    @property
    def centre(self) -> Path:
        return self.line(0.0)

    @property
    def sides(self) -> tuple[Path, Path]:
        """The two lines that run on from the seams."""
        return self.line(self.half), self.line(-self.half)

    @property
    def echoes(self) -> tuple[Path, Path]:
        wide = self.half + self.echo
        return self.line(wide, self.root.back[0]), self.line(-wide, self.root.back[1])

    @property
    def shape(self) -> Polygon:
        """The channel with both its echoes, beside the strip as well where they run back."""
        one, other = self.echoes
        left, right = self.root.back
        start = [self.root.spot(-left, self.half), self.root.spot(0, self.half)] if left else []
        end = [self.root.spot(0, -self.half), self.root.spot(-right, -self.half)] if right else []
        return Polygon([*one[::-1], *start, *end, *other])

    def wide(self, clear: float) -> BaseGeometry:
        """The channel with room on both sides, from its root on."""
        aside = self.half + self.echo + clear
        wide = Polygon([*self.line(aside), *self.line(-aside)[::-1]])
        return shapely.union(wide, self.shape) if any(self.root.back) else wide
