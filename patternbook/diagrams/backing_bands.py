"""What shows of each length of a backing once it is seamed and trimmed, and of a strip let in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from patternbook.cutting.records import BackingPlan


@dataclass(frozen=True)
class Band:
    """One length between its seams: where it begins, how wide it is sewn, and how much of that
    `shows` within the trimmed backing."""

    first: Fraction
    sewn: Fraction
    shows: Fraction
    insert: bool = False

    @property
    def start(self) -> float:
        """Where it begins."""
        return float(self.first)

    @property
    def wide(self) -> float:
        """How wide it is drawn."""
        return float(self.shows if self.insert else self.sewn)

    @property
    def end(self) -> float:
        """Where it ends."""
        return self.start + self.wide


def bands(plan: BackingPlan) -> Iterator[Band]:
    """One after the other: each keeps its width less a seam allowance on every seamed side."""
    covered = plan.size.across if plan.best.seams == "lengthwise" else plan.size.down
    parts, at = list(_parts(plan)), Fraction(0)
    for number, (width, insert) in enumerate(parts):
        seams = (number > 0) + (number < len(parts) - 1)
        sewn = width - seams * plan.seam
        shows = max(Fraction(0), min(sewn, (covered or at + sewn) - at))
        yield Band(at, sewn, shows, insert)
        at += sewn


def _parts(plan: BackingPlan) -> Iterator[tuple[Fraction, bool]]:
    """The widths as cut, and which of them is the strip."""
    insert, width = plan.best.insert, plan.cloth_width
    if insert is None:
        yield from ((width, False) for _ in range(plan.best.panels))
        return
    first = insert.split or width
    yield first, False
    yield insert.width, True
    if insert.split:
        yield width - insert.split, False
    yield from ((width, False) for _ in range(plan.best.panels - 1))


def patched(plan: BackingPlan, band: Band) -> Iterator[tuple[float, float, str]]:
    """The patches of a strip: where each begins along it, how long it shows, its fabric."""
    insert = plan.best.insert
    if insert is None or not band.insert:
        return
    along = [(one.along, one.fabric) for one in insert.patches for _ in range(one.number)]
    at = Fraction(0)
    for number, (length, fabric) in enumerate(along):
        seams = (number > 0) + (number < len(along) - 1)
        shows = min(length - seams * plan.seam, insert.length - at)
        if shows > 0:
            yield float(at), float(shows), fabric
        at += shows
