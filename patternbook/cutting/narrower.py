"""What a reader buys whose cloth is narrower than the pattern takes it to be."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.cutting.backing import backing_plan
from patternbook.cutting.cloth import form_of
from patternbook.cutting.fabric import FabricCut, Wanted, cut_fabric
from patternbook.cutting.records import FabricPlan, Narrower
from patternbook.quilt.records import Piece, Quilt, Run, StripSetMade

# The narrowest that a table of squares to the yard counts on (trade facts 11.A), by whole inches;
# 99 cm are 39 in, by 2 cm.
LEAST: Final = {"in": Fraction(39), "cm": Fraction(99)}
STEP: Final = {"in": Fraction(1), "cm": Fraction(2)}


def narrower(quilt: Quilt, wanted: Wanted, plan: FabricPlan) -> tuple[Narrower, ...]:
    """For each narrower width what is bought: the same where the plan holds, else reckoned anew
    by plain cutting. Only cloth off the bolt, of the pattern's own width."""
    form = form_of(wanted.fabric)
    if form.sold != "by length" or form.widths or plan.buy.amount is None:
        return ()
    return tuple(_at(quilt, wanted, plan, width) for width in _widths(quilt, wanted))


def _widths(quilt: Quilt, wanted: Wanted) -> Iterator[Fraction]:
    """Whole steps below the width that is stated, down to the narrowest in the shops."""
    unit = quilt.system.unit
    least, step = LEAST[unit], STEP[unit]
    width = least + (-(-(wanted.fabric.width - least) // step) - 1) * step
    while width >= least:
        yield width
        width -= step


def _at(quilt: Quilt, wanted: Wanted, plan: FabricPlan, width: Fraction) -> Narrower:
    if width >= holds_from(wanted, plan):
        return Narrower(width, plan.buy.amount, holds=True)
    cut = _cut(quilt, wanted, width)
    can = cut is not None and not _worse(cut, cut_fabric(quilt, wanted))
    return Narrower(width, cut.plan.buy.amount if cut and can else None, holds=False)


def holds_from(wanted: Wanted, plan: FabricPlan) -> Fraction:
    """The narrowest usable width at which strips and backing are still cut as printed."""
    backed = wanted.backing.best.least_width if wanted.backing else Fraction(0)
    return max(plan.least_width or Fraction(0), backed)


def _cut(quilt: Quilt, wanted: Wanted, width: Fraction) -> FabricCut | None:
    """The fabric cut plainly from cloth so wide; None where a strip set gives not one slice."""
    fabric = replace(wanted.fabric, width=width)
    mine = [piece for host, guests in wanted.hosts for piece in (host, *guests)]
    fitted: dict[str, Piece] = {}
    for piece in mine:
        shorter = _with_sets(quilt, piece, width)
        if shorter is None:
            return None
        fitted[piece.letter] = shorter
    fabrics = {**quilt.fabrics, fabric.name: fabric}
    thinner = replace(quilt, fabrics=fabrics, pieces={**quilt.pieces, **fitted})
    hosts = tuple(
        (fitted[host.letter], tuple(fitted[guest.letter] for guest in guests))
        for host, guests in wanted.hosts
    )
    backing = backing_plan(thinner) if wanted.backing else None
    if wanted.backing and backing is None:
        return None
    return cut_fabric(thinner, Wanted(fabric, hosts, wanted.bound, backing))


def _with_sets(quilt: Quilt, piece: Piece, width: Fraction) -> Piece | None:
    """The piece with as many strips as the strip sets take whose slices are cut from so short a
    strip."""
    runs = [_run(quilt, run, width) for run in piece.runs]
    if any(run is None for run in runs):
        return None
    return replace(piece, runs=tuple(run for run in runs if run is not None))


def _run(quilt: Quilt, run: Run, width: Fraction) -> Run | None:
    unit = quilt.units.get(run.use)
    if not run.whole or unit is None:
        return run
    if not isinstance(unit.made, StripSetMade):  # as long as the strip is, so is what is sewn
        return run if run.length <= width else None
    made = unit.made
    per_set = min(made.per_set, int(width // made.segment))
    if per_set == made.per_set:
        return run
    sets = -(-unit.make // per_set) if per_set else 0
    return replace(run, number=run.number // made.sets * sets) if sets else None


def _worse(cut: FabricCut, as_printed: FabricCut) -> bool:
    """Whether something is too long for this width, or a patch must now be joined."""
    for one, other in zip(cut.laid.groups, as_printed.laid.groups, strict=True):
        if one.unlaid or one.too_long:
            return True
        patches = any(not member.piece.is_strip for member in one.members)
        if patches and any(s.join for s in one.strips) > any(s.join for s in other.strips):
            return True
    return False
