"""The pieces of a strip laid on it one by one, as oblongs in whole numbers of one small length."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import lcm
from typing import NamedTuple

from patternbook.cutting.records import Cut, FabricPlan, Strip
from patternbook.proof.fits import run_of
from patternbook.quilt.records import Fabric, Quilt


class Lies(NamedTuple):
    """One piece on its strip: its sides along the strip (left, right) and across it."""

    letter: str
    left: int
    top: int
    right: int
    bottom: int


class Lain(NamedTuple):
    """A strip of the plan laid out: how long and wide it is, and the pieces on it. Where strips
    are joined they lie on all of them together, else each of the strip's `times` has the same."""

    strip: Strip
    run: int
    wide: int
    pieces: tuple[Lies, ...]

    @property
    def copies(self) -> int:
        """How often these pieces come off the cloth."""
        return 1 if self.strip.join else self.strip.times


class Replayed(NamedTuple):
    """One fabric cut once more as its plan says; `scale` small lengths are one of the pattern's
    own."""

    quilt: Quilt
    fabric: Fabric | None
    plan: FabricPlan
    scale: int
    strips: tuple[Lain, ...]

    def units(self, length: Fraction) -> int:
        """A length in whole numbers."""
        return units(length, self.scale)

    def length(self, whole: int) -> Fraction:
        """The other way round."""
        return Fraction(whole, self.scale)


def units(length: Fraction, scale: int) -> int:
    """A length counted in parts of which `scale` are one; none is left over."""
    return length.numerator * (scale // length.denominator)


def replayed(quilt: Quilt, plan: FabricPlan) -> Replayed:
    """The fabric with every piece in its place."""
    runs = [run_of(quilt, strip) for strip in plan.strips]
    scale = lcm(*{length.denominator for length in (*runs, *_lengths(plan))})
    strips = tuple(
        Lain(strip, units(run, scale), units(strip.width, scale), tuple(_on(strip, scale)))
        for strip, run in zip(plan.strips, runs, strict=True)
    )
    return Replayed(quilt, quilt.fabrics.get(plan.fabric), plan, scale, strips)


def _lengths(plan: FabricPlan) -> Iterator[Fraction]:
    yield from (plan.width, plan.length)
    for sheet in plan.sheets:
        yield from (sheet.across, sheet.down)
    for strip in plan.strips:
        yield from (strip.width, strip.length)
        for cut in strip.cuts:
            for one in cut.stacked:
                yield from (one.along, one.across)


def _on(strip: Strip, scale: int) -> Iterator[Lies]:
    """The cuts one behind the other; none of them is asked whether it has room."""
    left = 0
    for cut in strip.cuts:
        along = units(cut.along, scale)
        yield from _stack(cut, left, along, scale)
        left += cut.columns * along


def _stack(cut: Cut, left: int, step: int, scale: int) -> Iterator[Lies]:
    """A cut with what lies over it: the same columns, each `step` behind the last."""
    top = 0
    for one in cut.stacked:
        along, across = units(one.along, scale), units(one.across, scale)
        for number in range(one.number):
            column, lane = divmod(number, one.lanes)
            x, y = left + column * step, top + lane * across
            yield Lies(one.letter, x, y, x + along, y + across)
        top += one.lanes * across
