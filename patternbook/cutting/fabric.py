"""One fabric from the first strip to the purchase: its letters, the binding and the backing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from patternbook.cutting.binding import binding_plan, binding_strip
from patternbook.cutting.buying import Basket, bought, rounded, strip_lines
from patternbook.cutting.cloth import Cloth, form_of, pre_cut_size, ways_to_lay
from patternbook.cutting.fitting import fitting_notices
from patternbook.cutting.groups import Group, group
from patternbook.cutting.letters import letter_plans, strips_cut
from patternbook.cutting.records import (
    BINDING,
    BackingPlan,
    BindingPlan,
    FabricPlan,
    LetterPlan,
    Sheet,
    Strip,
)
from patternbook.cutting.sheets import sheets, too_deep
from patternbook.cutting.stated import stated_notices
from patternbook.cutting.steps import cut_steps
from patternbook.cutting.told import Told, long, times, typed
from patternbook.notice import Notice
from patternbook.quilt.records import Fabric, Piece, Quilt


@dataclass(frozen=True)
class Wanted:
    """What is cut from one fabric: letters with those who share their strips, and the rest."""

    fabric: Fabric
    hosts: tuple[tuple[Piece, tuple[Piece, ...]], ...]
    bound: bool = False
    backing: BackingPlan | None = None


@dataclass(frozen=True)
class Laid:
    """One fabric laid out in one way."""

    cloth: Cloth
    groups: tuple[Group, ...]
    strips: tuple[Strip, ...]
    owners: Mapping[int, str]
    sheets: tuple[Sheet, ...]
    binding: BindingPlan | None

    @property
    def cost(self) -> tuple[int, int]:
        """Faults first, then how many pre-cut pieces it takes."""
        faults = sum(group.faults for group in self.groups)
        faults += sum(too_deep(self.cloth, strip) for strip in self.strips)
        return faults, sum(sheet.times for sheet in self.sheets)


@dataclass(frozen=True)
class FabricCut:
    """One fabric's plan with all that is read from it."""

    plan: FabricPlan
    laid: Laid
    letters: tuple[LetterPlan, ...]
    binding: BindingPlan | None
    of_letters: tuple[Notice, ...]
    of_purchase: tuple[Notice, ...]

    @property
    def notices(self) -> tuple[Notice, ...]:
        """All that there is to tell."""
        return (*self.of_letters, *self.of_purchase)


def cut_fabric(quilt: Quilt, wanted: Wanted) -> FabricCut:
    """The plan of one fabric, laid the cheapest way."""
    ways = [_laid(quilt, wanted, cloth) for cloth in ways_to_lay(wanted.fabric, quilt.system)]
    best = min(ways, key=lambda way: way.cost)
    plans = tuple(letter_plans(quilt, one) for one in best.groups)
    letters = tuple(plan for group_plans in plans for plan in group_plans)
    notices = [
        *_formless(quilt, wanted.fabric),
        *(
            notice
            for one, group_plans in zip(best.groups, plans, strict=True)
            for notice in (
                *stated_notices(quilt, one),
                *fitting_notices(quilt, one, group_plans),
            )
        ),
        *_too_deep(quilt, best),
    ]
    return assembled(quilt, wanted, best, letters, notices)


def assembled(
    quilt: Quilt,
    wanted: Wanted,
    best: Laid,
    letters: tuple[LetterPlan, ...],
    notices: Sequence[Notice],
) -> FabricCut:
    """The plan of a fabric once it is laid out, with its purchase and its steps."""
    lengths = [(best.owners[at], one) for at, one in enumerate(best.strips) if not one.beside]
    owners = dict(enumerate(owner for owner, _ in lengths))
    lines = strip_lines([strip for _, strip in lengths], owners)
    basket = Basket(wanted.fabric, lines, best.strips, best.sheets, letters, wanted.backing)
    buy, told = bought(quilt, basket)
    length = sum((strip.cloth for strip in best.strips), Fraction(0))
    plan = FabricPlan(
        fabric=wanted.fabric.name,
        form=wanted.fabric.form,
        width=best.cloth.run,
        strips=best.strips,
        sheets=best.sheets,
        length=length,
        bound=length,
        least_width=max(_least_widths(best.strips), default=None),
        yields={letter.letter: letter.yields for letter in letters},
        buy=buy,
        steps=cut_steps(quilt, best.cloth, best.strips, letters),
    )
    of_purchase = (*_turned(quilt, basket), *told)
    return FabricCut(plan, best, letters, best.binding, tuple(notices), of_purchase)


def _laid(quilt: Quilt, wanted: Wanted, cloth: Cloth) -> Laid:
    groups = tuple(group(quilt, cloth, host, guests) for host, guests in wanted.hosts)
    binding = binding_plan(quilt, cloth.run) if wanted.bound else None
    owned = [
        (one.host.letter, strip)
        for one in groups
        if one.host
        for strip in (*one.strips, *_spare_strips(one, cloth))
    ]
    if binding:
        owned.append((BINDING, binding_strip(binding)))
    owned.sort(key=lambda pair: (pair[1].along == "width", -pair[1].width))
    strips = tuple(strip for _, strip in owned)
    owners = {place: letter for place, (letter, _) in enumerate(owned)}
    flat = tuple(strip for strip in strips if not too_deep(cloth, strip))
    lies = sheets(cloth, flat) if len(flat) == len(strips) else ()
    return Laid(cloth, groups, strips, owners, lies, binding)


def _spare_strips(one: Group, cloth: Cloth) -> Iterable[Strip]:
    """Strips cut with nothing cut from them: asked for as spare, or stated beyond the need."""
    if one.lengthwise:
        return ()
    spare = strips_cut(one) - sum(strip.times for strip in one.strips)
    return (Strip(one.wide, cloth.run, spare),) if spare > 0 else ()


def _least_widths(strips: Sequence[Strip]) -> Iterator[Fraction]:
    """The usable width at which each strip still gives its cuts, joined ones together."""
    for strip in strips:
        used = strip.run - strip.left
        if strip.join:
            yield (used + (strip.times - 1) * strip.join.loss) / strip.times
        elif strip.cuts:
            yield used


def _formless(quilt: Quilt, fabric: Fabric) -> Iterator[Notice]:
    if form_of(fabric).pieces and pre_cut_size(fabric, quilt.system) is None:
        message = f"{fabric.name}: {fabric.form} of no stated size; it is planned as bolt cloth."
        hint = "State `size`, as `size: 10 square`."
        yield Told("no-size", "R21", fabric.place, None, hint).notice(quilt, "error", message)


def _too_deep(quilt: Quilt, best: Laid) -> Iterator[Notice]:
    for place, strip in enumerate(best.strips):
        if too_deep(best.cloth, strip) and best.cloth.deep:
            message = (
                f"{best.owners[place]}: {long(strip.width, quilt.system)} is wider than the "
                f"{best.cloth.fabric.form} has room for, {long(best.cloth.deep, quilt.system)}."
            )
            least = long(strip.width, quilt.system)
            hint = f"Cut it narrower, or take a {best.cloth.fabric.form} at least {least} that way."
            about = Told("too-wide", "R6", best.cloth.fabric.place, None, hint)
            yield about.notice(quilt, "error", message)


def _turned(quilt: Quilt, basket: Basket) -> Iterator[Notice]:
    """Strips of the other side's width, where they would make the purchase smaller."""
    now = rounded(quilt, basket, basket.cloth)
    for plan in basket.letters:
        if plan.other is None:
            continue
        cloth = plan.strips * plan.strip_width
        then = rounded(quilt, basket, basket.cloth - cloth + plan.other.cloth)
        if then < now:
            system = quilt.system
            piece = quilt.pieces[plan.letter]
            these = f"{times(plan.strips, 'strip')} {long(plan.strip_width, system)} wide"
            those = f"{times(plan.other.strips, 'strip')} {long(plan.other.strip_width, system)}"
            message = (
                f"{plan.letter}: {these} come to {long(cloth, system)} of cloth; {those} wide "
                f"would come to {long(plan.other.cloth, system)}, and {typed(then, system)} "
                f"{system.bolt_unit} would do instead of {typed(now, system)}."
            )
            hint = f"Say `strip-width: {typed(plan.other.strip_width, system)}`."
            if plan.joined:
                hint = "Say `along: length`: it would need no join."
            yield Told("turned-strip", None, piece.place, None, hint).notice(
                quilt, "advice", message, needed=typed(plan.other.strip_width, system)
            )
