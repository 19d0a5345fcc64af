"""Pre-cuts: the strips and pieces that are used are in the packs that are bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternbook.cutting.records import FabricPlan
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import BOLTS
from patternbook.proof.recounted import recounted
from patternbook.quilt.records import Fabric, Quilt


def packs(evidence: Evidence) -> Iterator[Notice]:
    """Errors where the packs hold fewer than are used, or a strip lies in no pre-cut piece."""
    for plan in evidence.cutting.fabrics.values():
        fabric = evidence.quilt.fabrics.get(plan.fabric)
        if fabric is not None and fabric.form not in BOLTS:
            yield from _counted(evidence.quilt, plan, fabric)


def _counted(quilt: Quilt, plan: FabricPlan, fabric: Fabric) -> Iterator[Notice]:
    strips = sum(strip.times for strip in plan.strips)
    used = sum(sheet.times for sheet in plan.sheets) if plan.sheets else strips
    buy, pack = plan.buy, fabric.pack
    if buy.number != used:
        message = f"{fabric.name}: {used} are used, {buy.number} are counted."
        yield recounted(quilt, "pack-count", "R21", message, fabric.place)
    if pack and buy.packs is not None and buy.packs * pack < used:
        message = (
            f"{fabric.name}: {used} are used; {buy.packs} packs of {pack} hold {buy.packs * pack}."
        )
        yield recounted(quilt, "pack-count", "R21", message, fabric.place)
    if pack and buy.packs and not buy.stated and (buy.packs - 1) * pack >= used:
        message = f"{fabric.name}: {used} are used; {buy.packs - 1} packs of {pack} hold them."
        yield recounted(quilt, "pack-count", "R21", message, fabric.place)
    if plan.sheets:
        yield from _laid(quilt, plan, fabric)


def _laid(quilt: Quilt, plan: FabricPlan, fabric: Fabric) -> Iterator[Notice]:
    laid: Counter[int] = Counter()
    for sheet in plan.sheets:
        for row in sheet.rows:
            laid[row.strip] += row.times * sheet.times
    for number, strip in enumerate(plan.strips):
        if laid[number] != strip.times:
            message = (
                f"{fabric.name}: {strip.times} strips of {' and '.join(strip.letters)} are cut, "
                f"{laid[number]} lie in the pieces."
            )
            yield recounted(quilt, "sheet-strips", "R21", message, fabric.place)
