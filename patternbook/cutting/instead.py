"""Other cloth that gives the same: pre-cuts instead of yardage, yardage instead of pre-cuts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import lcm
from typing import Final

from patternbook.cutting.cloth import form_of
from patternbook.cutting.fabric import FabricCut, Laid, Wanted, cut_fabric
from patternbook.cutting.narrower import LEAST
from patternbook.cutting.planner.records import Kind, Limits, SheetsTask
from patternbook.cutting.planner.sheets import solve_sheets
from patternbook.cutting.records import FabricPlan, Instead
from patternbook.cutting.sheets import too_deep
from patternbook.cutting.wishes import kinds, wishes
from patternbook.forms import FORMS
from patternbook.forms.form import ClothForm
from patternbook.quilt.records import CutSize, Fabric, Piece, Quilt, Run, StripSetMade

SHORT: Final = Limits(nodes=300, dives=3, patterns=500, rounds=300)


def substitutes(quilt: Quilt, wanted: Wanted, plan: FabricPlan) -> tuple[Instead, ...]:
    """For one fabric what else it may be cut from: all its pieces fit, and no more is joined.

    Counted for a reader who cuts every letter from strips of its own, as she reads in the chart;
    the bound tells what the closest laying could save. Not where the backing is cut from it too:
    no pre-cut gives that.
    """
    if wanted.backing or not plan.strips:
        return ()
    found = [*_by_length(quilt, wanted)]
    for form in FORMS:
        if form.name != wanted.fabric.form:
            found += _pre_cut(quilt, wanted, form)
    return tuple(found)


def _by_length(quilt: Quilt, wanted: Wanted) -> Iterator[Instead]:
    """The amount off the bolt that a pre-cut cloth stands for."""
    if form_of(wanted.fabric).sold == "by length":
        return
    bare = _bare(wanted.fabric)
    cut = cut_fabric(quilt, _free(wanted, replace(bare, form="yardage", width=quilt.width)))
    amount = cut.plan.buy.amount
    if amount is not None and not _unfit(cut.laid):
        yield Instead("yardage", None, 0, 0, None, amount)


def _pre_cut(quilt: Quilt, wanted: Wanted, form: ClothForm) -> Iterator[Instead]:
    for sides in form.offered.get(quilt.system.unit, ()):
        size = CutSize(*sides)
        fabric = replace(_bare(wanted.fabric), form=form.name, size=size, prints=1)
        prints = 1 if wanted.bound else _prints_apart(wanted.fabric)
        one_print = _free(wanted, fabric, prints)
        plain = cut_fabric(quilt, one_print)
        if not plain.plan.buy.number or _unfit(plain.laid) or _short(quilt, one_print, plain.laid):
            continue
        number = plain.plan.buy.number
        bound = min(_bound(quilt, plain), number)
        yield Instead(form.name, size, number * prints, bound * prints)


def _prints_apart(fabric: Fabric) -> int:
    """Prints off the bolt are bought apart; a pack is a mixture, and so is what stands for it."""
    return fabric.prints if form_of(fabric).sold == "by length" else 1


def _bare(fabric: Fabric) -> Fabric:
    """The fabric without what is said of the form that it has now."""
    return replace(
        fabric, size=None, pack=None, stated_yards=None, stated_metres=None, stated_packs=None
    )


def _free(wanted: Wanted, fabric: Fabric, prints: int = 1) -> Wanted:
    """The same pieces with nothing said of their strips; of a mixture an even share of each
    print."""
    hosts = tuple(
        (_as_asked(host, prints), tuple(_as_asked(guest, prints) for guest in guests))
        for host, guests in wanted.hosts
    )
    return replace(wanted, fabric=fabric, hosts=hosts)


def _as_asked(piece: Piece, prints: int) -> Piece:
    return replace(
        piece,
        count=-(-piece.count // prints),
        mirrored=-(-piece.mirrored // prints),
        spare=-(-piece.spare // prints),
        runs=tuple(replace(run, number=-(-run.number // prints)) for run in piece.runs),
        strip_width=None,
        stated_strips=None,
        stated_per_strip=None,
        stated_squares=None,
    )


def _unfit(laid: Laid) -> bool:
    """Whether something cannot be cut from it, or only in joined pieces; the strips of a border
    that is longer than the cloth is wide are joined as ever."""
    if any(group.unlaid or group.too_long for group in laid.groups):
        return True
    if any(too_deep(laid.cloth, strip) for strip in laid.strips):
        return True
    whole_width = form_of(laid.cloth.fabric).selvedges and laid.cloth.deep is None
    joined = (group for group in laid.groups if any(strip.join for strip in group.strips))
    return any(
        not whole_width or any(not member.piece.is_strip for member in group.members)
        for group in joined
    )


def _short(quilt: Quilt, wanted: Wanted, laid: Laid) -> bool:
    """Whether it is too small for strips that are sewn whole, for lengths along the selvedge, or
    for binding: none on the bias, and none from scraps."""
    roll, run = laid.cloth.roll, laid.cloth.run
    binding, longer = quilt.binding if wanted.bound else None, max(run, laid.cloth.deep or run)
    if binding and (binding.bias or (roll is not None and binding.cut > roll)):
        return True
    if binding and 2 * longer < LEAST[quilt.system.unit]:
        return True
    pieces = [piece for host, guests in wanted.hosts for piece in (host, *guests)]
    return any(
        piece.along == "length" or any(_whole(quilt, one) > run for one in piece.runs)
        for piece in pieces
    )


def _whole(quilt: Quilt, run: Run) -> Fraction:
    """How long a strip must be that is sewn whole; nothing where it is cut or joined."""
    if not run.whole:
        return Fraction(0)
    unit = quilt.units.get(run.use)
    if unit and isinstance(unit.made, StripSetMade):
        return unit.made.per_set * unit.made.segment
    return run.length


def _bound(quilt: Quilt, plain: FabricCut) -> int:
    """The number that no plan is below, however closely the pieces lie; strips that are joined or
    sewn whole are cut as they are."""
    laid, wished = plain.laid, wishes(quilt, plain.laid)
    across, down = laid.cloth.run, laid.cloth.roll or laid.cloth.deep or Fraction(0)
    unit = Fraction(1, lcm(int(1 / wished.unit), across.denominator, down.denominator))
    finer = replace(wished, unit=unit)
    asked = [*kinds(laid, finer, lengthwise=False)]
    for strip in (strip for _, strip in wished.fixed):
        sides = finer.whole(strip.length), finer.whole(strip.width)
        asked.append(Kind(str(len(asked)), *sides, strip.times, turns=False, own_width=True))
    task = SheetsTask(finer.whole(across), finer.whole(down), tuple(asked))
    return solve_sheets(task, SHORT).bound
