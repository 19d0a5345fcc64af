"""The strips laid on the cloth: one below the other along the bolt, beside a block of lengths, or
in their pre-cut pieces."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from patternbook.cutting.records import Sheet
from patternbook.notice import Notice
from patternbook.proof.fits import BOLTS
from patternbook.proof.recounted import recounted, shown
from patternbook.proof.replay.lay import Lain, Replayed


def on_cloth(cloth: Replayed) -> Iterator[Notice]:
    """Errors where a strip does not lie on the cloth, or takes other cloth than is told."""
    for lain in cloth.strips:
        yield from _long(cloth, lain)
    if cloth.plan.form in BOLTS:
        yield from _off_the_bolt(cloth)
    for sheet in cloth.plan.sheets:
        yield from _in_sheet(cloth, sheet)


def _long(cloth: Replayed, lain: Lain) -> Iterator[Notice]:
    """No strip is longer than the cloth is wide, as the fabric itself is."""
    if cloth.plan.sheets:
        return
    size, fabric = cloth.fabric and cloth.fabric.size, cloth.fabric
    most = cloth.plan.width
    if fabric is not None and cloth.plan.form in BOLTS:
        most = min(most, fabric.width)
    if cloth.plan.form == "strip roll" and size and size.across != lain.strip.width:
        message = (
            f"{cloth.plan.fabric}: strips {shown(lain.strip.width, cloth.quilt)} wide from a roll "
            f"of {shown(size.across, cloth.quilt)}."
        )
        yield _outside(cloth, message)
    if lain.strip.length > most:
        message = (
            f"{cloth.plan.fabric}: a strip {shown(lain.strip.length, cloth.quilt)} long from cloth "
            f"{shown(most, cloth.quilt)} wide."
        )
        yield _outside(cloth, message)


@dataclass
class Bolt:
    """How much is unrolled, how much of that are lengths with cloth left beside them, and how
    much of this cloth is taken."""

    unrolled: int = 0
    lengths: int = 0
    beside: int = 0
    narrowest: int | None = None  # what the lengths leave of the width, at their widest

    def lay(self, lain: Lain, width: int) -> None:
        """All copies of one strip, one below the other."""
        taken = lain.wide * lain.strip.times
        if lain.strip.beside:
            self.beside += taken
            return
        self.unrolled += taken
        if lain.strip.along == "length":
            used = max((one.right for one in lain.pieces), default=0)
            self.lengths += taken
            self.narrowest = min(width - used, width if self.narrowest is None else self.narrowest)


def _off_the_bolt(cloth: Replayed) -> Iterator[Notice]:
    """The lengths first, strips beside them, then the others: what they unroll is what the plan
    says."""
    bolt, width = Bolt(), cloth.units(cloth.plan.width)
    for lain in cloth.strips:
        bolt.lay(lain, width)
    unrolled = shown(cloth.length(bolt.unrolled), cloth.quilt)
    if bolt.unrolled != cloth.units(cloth.plan.length):
        message = (
            f"{cloth.plan.fabric}: its strips take {unrolled} of the cloth, the plan says "
            f"{shown(cloth.plan.length, cloth.quilt)}."
        )
        yield _outside(cloth, message)
    longest = max((one.run for one in cloth.strips if one.strip.beside), default=0)
    if bolt.beside > bolt.lengths or longest > (bolt.narrowest or 0):
        message = (
            f"{cloth.plan.fabric}: strips {shown(cloth.length(longest), cloth.quilt)} long take "
            f"{shown(cloth.length(bolt.beside), cloth.quilt)} beside lengths of "
            f"{shown(cloth.length(bolt.lengths), cloth.quilt)} that leave "
            f"{shown(cloth.length(bolt.narrowest or 0), cloth.quilt)} of the width."
        )
        yield _outside(cloth, message)


def _in_sheet(cloth: Replayed, sheet: Sheet) -> Iterator[Notice]:
    """One below the other in a pre-cut piece, which is as large as it is sold."""
    run, deep = (sheet.down, sheet.across) if sheet.turned else (sheet.across, sheet.down)
    strips = [(cloth.plan.strips[row.strip], row.times) for row in sheet.rows]
    taken = sum((strip.width * times for strip, times in strips), Fraction(0))
    longest = max((strip.length for strip, _ in strips), default=Fraction(0))
    if taken > deep or longest > run:
        message = (
            f"{cloth.plan.fabric}: strips {shown(longest, cloth.quilt)} long take "
            f"{shown(taken, cloth.quilt)} of a piece {shown(run, cloth.quilt)} × "
            f"{shown(deep, cloth.quilt)}."
        )
        yield _outside(cloth, message)
    size = cloth.fabric.size if cloth.fabric else None
    if size and size.down and _larger(sheet, size.across, size.down):
        message = (
            f"{cloth.plan.fabric}: cut from pieces {shown(sheet.across, cloth.quilt)} × "
            f"{shown(sheet.down, cloth.quilt)}; they are sold {shown(size.across, cloth.quilt)} × "
            f"{shown(size.down, cloth.quilt)}."
        )
        yield _outside(cloth, message)


def _larger(sheet: Sheet, across: Fraction, down: Fraction) -> bool:
    """Whether it does not lie on a piece as it is sold, either way round."""
    short, long = sorted((sheet.across, sheet.down))
    return short > min(across, down) or long > max(across, down)


def _outside(cloth: Replayed, message: str) -> Notice:
    place = cloth.fabric.place if cloth.fabric else None
    return recounted(cloth.quilt, "cut-outside", "R6", message, place)
