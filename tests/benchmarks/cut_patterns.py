"""Every fabric of every size of the patterns: whether its plans are proven, and how far they may
be from the least."""

import time
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import NamedTuple

from patternbook.cutting.plan import plan as plan_cutting
from patternbook.cutting.records import FabricPlan
from patternbook.edition.pipeline import examine
from patternbook.quilt.records import Quilt
from tests.support import ROOT

PATTERNS = sorted((ROOT / "patterns").glob("*/pattern.yaml"))


class Fabric(NamedTuple):
    """One fabric in one style: it is proven to buy the least, or may be `gap` above it."""

    where: str
    proven: bool
    gap: Fraction


class Pattern(NamedTuple):
    """All fabrics of all sizes in both planned styles, and the seconds that each size took."""

    name: str
    fabrics: tuple[Fabric, ...]
    seconds: tuple[float, ...]


def pattern(path: Path) -> Pattern:
    """One pattern in full."""
    fabrics: list[Fabric] = []
    seconds = []
    for quilt in examine(path, path.parent.name).quilts.values():
        begun = time.process_time()
        fabrics += _fabrics(quilt)
        seconds.append(time.process_time() - begun)
    return Pattern(path.parent.name, tuple(fabrics), tuple(seconds))


def _fabrics(quilt: Quilt) -> Iterator[Fabric]:
    plan, _ = plan_cutting(quilt, full=True)
    for name, fabric in plan.fabrics.items():
        yield from _styles(f"{plan.size}, {name}", fabric)


def _styles(where: str, plan: FabricPlan) -> Iterator[Fabric]:
    if plan.style != "plain":
        yield Fabric(f"{where}, {plan.style}", plan.proven, _gap(plan.length, plan.bound))
    for one in plan.others:
        if one.style != "plain":
            yield Fabric(f"{where}, {one.style}", one.proven, _gap(one.length, one.bound))


def _gap(length: Fraction, bound: Fraction) -> Fraction:
    return length / bound - 1 if bound else Fraction(0)
