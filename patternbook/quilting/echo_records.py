"""The frozen records of the quilting of one size; all lengths are exact."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.exact import Exact

Way = Literal["down", "across"]


class Spot(NamedTuple):
    """A place on the finished top, from its left and from its upper edge."""

    x: Exact
    y: Exact


class Band(NamedTuple):
    """What lies between two long seams (or a seam and the edge): `lines` lines, half a `step`
    from its start and end and a step from one another."""

    start: Exact
    width: Exact
    lines: int
    step: Exact


class StitchLine(NamedTuple):
    """One line as it is quilted: its number, where it lies, where it starts and ends."""

    order: int
    at: Exact
    start: Spot
    end: Spot


@dataclass(frozen=True)
class QuiltingMap:
    """Straight lines all over, one `way`, that keep half a step from every long seam.

    `spacing` is what was asked for (`stated`) or suits the batting's `limit`; `gap` is the
    largest space that is left between neighbours, or a line and the edge. Lines start and end
    `margin` inside the finished edge, which keeps the binding free. `length` is of all lines.
    """

    way: Way
    spacing: Fraction
    stated: bool
    limit: Fraction
    limit_stated: bool
    margin: Fraction
    bands: tuple[Band, ...]
    lines: tuple[StitchLine, ...]
    gap: Exact
    length: Exact
