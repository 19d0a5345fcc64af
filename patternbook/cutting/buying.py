"""What is bought of one fabric: the sum of its strips, the spare, and the step it is sold by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import NamedTuple

from patternbook.cutting.backing import metres
from patternbook.cutting.cloth import SHEETS, SINGLY
from patternbook.cutting.records import BackingPlan, Buy, LetterPlan, Line, Sheet, Strip
from patternbook.cutting.told import Told, long, number, spare_severity, times, typed
from patternbook.inch import INCHES_A_CENTIMETRE, step_up
from patternbook.notice import Notice, Severity
from patternbook.quilt.records import Fabric, Quilt


@dataclass(frozen=True)
class Basket:
    """All that is wanted of one fabric, whatever it is for."""

    fabric: Fabric
    lines: tuple[Line, ...]
    strips: tuple[Strip, ...]
    sheets: tuple[Sheet, ...]
    letters: tuple[LetterPlan, ...]
    backing: BackingPlan | None = None

    @cached_property
    def cloth(self) -> Fraction:
        """The length that strips and binding take."""
        return sum((line.length for line in self.lines), Fraction(0))

    @property
    def backing_length(self) -> Fraction:
        """The length that the backing takes."""
        return self.backing.best.length if self.backing else Fraction(0)


def strip_lines(strips: Sequence[Strip], hosts: dict[int, str]) -> tuple[Line, ...]:
    """The sum of cloth: strips of one letter and width on one line. `hosts` names the letter (or
    the binding) of each strip by its place in the list."""
    sums: dict[tuple[str, Fraction], int] = {}
    for place, strip in enumerate(strips):
        key = (hosts[place], strip.width)
        sums[key] = sums.get(key, 0) + strip.times
    return tuple(Line(what, count, width) for (what, width), count in sums.items())


def bought(quilt: Quilt, basket: Basket) -> tuple[Buy, tuple[Notice, ...]]:
    """The purchase, and what there is to tell of the amounts she states."""
    if basket.fabric.form == "strip roll" or basket.fabric.form in SHEETS:
        buy = _packs(basket)
        return buy, tuple(_pack_notices(quilt, basket, buy))
    buy = _from_the_bolt(quilt, basket)
    return buy, tuple(_amount_notices(quilt, basket, buy))


def rounded(quilt: Quilt, basket: Basket, cloth: Fraction) -> Fraction:
    """So much cloth with the spare, rounded up to the step of the shop; the backing by its own."""
    settings, bolt = quilt.settings, quilt.system.bolt
    step = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    backing = basket.backing.best.amount if basket.backing else Fraction(0)
    return backing + (step_up((cloth + settings.spare) / bolt, step) if cloth else 0)


def _from_the_bolt(quilt: Quilt, basket: Basket) -> Buy:
    system, settings, fabric = quilt.system, quilt.settings, basket.fabric
    needed = needed_length(quilt, basket)
    amount = rounded(quilt, basket, basket.cloth)
    stated = stated_amount(quilt, fabric)
    enough = stated is not None and stated * system.bolt >= needed
    amount = stated if enough and stated is not None else amount
    straightening = min(settings.straightening, settings.spare) if basket.cloth else Fraction(0)
    used = basket.cloth + basket.backing_length
    spare = amount * system.bolt - used - straightening
    backing = basket.backing
    panels = (Line("backing", backing.best.panels, backing.best.each),) if backing else ()
    return Buy(
        lines=basket.lines + panels,
        needed=needed,
        amount=amount,
        unit=system.bolt_unit,
        straightening=straightening,
        spare=spare,
        metres=amount if system.unit == "cm" else _in_metres(quilt, needed, stated),
        each_print=_each_print(quilt, basket),
        more=_more(basket.letters, spare),
        stated=enough,
    )


def needed_length(quilt: Quilt, basket: Basket) -> Fraction:
    """Strips, spare and backing, before any rounding."""
    spare = quilt.settings.spare if basket.cloth else Fraction(0)
    return basket.cloth + spare + basket.backing_length


def stated_amount(quilt: Quilt, fabric: Fabric) -> Fraction | None:
    return fabric.stated_yards if quilt.system.unit == "in" else fabric.stated_metres


def _in_metres(quilt: Quilt, needed: Fraction, stated: Fraction | None) -> Fraction:
    return metres(max(needed, (stated or Fraction(0)) * quilt.system.bolt), quilt)


def _each_print(quilt: Quilt, basket: Basket) -> Fraction | None:
    """What to buy of each print where the strips are shared out evenly among them."""
    prints, settings = basket.fabric.prints, quilt.settings
    if prints < 2 or not basket.cloth:
        return None
    each = sum((-(-line.strips // prints) * line.width for line in basket.lines), Fraction(0))
    step = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    return step_up((each + settings.straightening) / quilt.system.bolt, step)


def _more(letters: Sequence[LetterPlan], spare: Fraction) -> dict[str, int]:
    """How many more of each letter the spare cloth gives, cut as the others are."""
    return {
        plan.letter: int(spare // plan.strip_width) * plan.per_strip * plan.each
        for plan in letters
        if plan.per_strip
    }


def _packs(basket: Basket) -> Buy:
    fabric = basket.fabric
    rolls = sum(strip.times for strip in basket.strips)
    pieces = sum(sheet.times for sheet in basket.sheets) if fabric.form in SHEETS else rolls
    pack = pack_of(fabric)
    if pack is None:
        return Buy(number=pieces, packs=fabric.stated_packs, stated=fabric.stated_packs is not None)
    least = -(-pieces // pack)
    packs = max(least, fabric.stated_packs or 0)
    return Buy(
        number=pieces,
        packs=packs,
        spare_precuts=packs * pack - pieces,
        stated=fabric.stated_packs is not None and fabric.stated_packs >= least,
    )


def pack_of(fabric: Fabric) -> int | None:
    """How many are in one pack: quarters, eighths and panels are sold singly too."""
    return fabric.pack or (1 if fabric.form in SINGLY else None)


def _amount_notices(quilt: Quilt, basket: Basket, buy: Buy) -> Iterator[Notice]:
    least = rounded(quilt, basket, basket.cloth)
    rule = "R4" if basket.lines else "R15"
    sums = _sum(quilt, basket, buy)
    yield from amount_notices(
        quilt, Purchase(basket.fabric, sums, buy.needed, least, buy.metres, rule)
    )


class Purchase(NamedTuple):
    """What of one fabric must be bought: the sum written out, what is needed before any rounding,
    and the least that is sold, in the pattern's own unit and in metres."""

    fabric: Fabric
    sums: str
    needed: Fraction
    least: Fraction
    metres: Fraction | None
    rule: str


def amount_notices(quilt: Quilt, purchase: Purchase) -> Iterator[Notice]:
    """The author's own yards and metres against the sum; what is stated in the other measure is
    R17's."""
    fabric, system = purchase.fabric, quilt.system
    stated = {"yd": fabric.stated_yards, "m": fabric.stated_metres}
    for unit, amount in stated.items():
        if amount is None:
            continue
        inches = amount * 36 if unit == "yd" else amount * 100 * INCHES_A_CENTIMETRE
        have = inches if system.unit == "in" else inches / INCHES_A_CENTIMETRE
        yield from _one_amount(quilt, purchase, unit, amount, have)


def _one_amount(
    quilt: Quilt, purchase: Purchase, unit: str, amount: Fraction, have: Fraction
) -> Iterator[Notice]:
    fabric, system, needed = purchase.fabric, quilt.system, purchase.needed
    what = "yards" if unit == "yd" else "metres"
    main = unit == system.bolt_unit
    least = purchase.least if main else purchase.metres or Fraction(0)
    rule = purchase.rule if main else "R17"
    sum_of = f"{fabric.name}: {purchase.sums}"
    figures = (typed(amount, system), typed(least, system))
    place = fabric.key_places.get(what)
    bought_of = f"{typed(amount, system)} {unit} is {long(_shown(have), system)}"
    if have < needed:
        short = long(_shown(needed - have), system)
        hint = f"Buy {typed(least, system)} {unit}."
        yield Told(f"{what}-short", rule, place, fabric.place, hint).notice(
            quilt, "error", f"{sum_of}; {bought_of}, short by {short}.", *figures, mend=True
        )
    elif amount < least:
        message = f"{sum_of}; {bought_of}. It is enough, but is sold as {typed(least, system)}."
        yield Told(f"odd-{what}", rule, place, fabric.place).notice(
            quilt, "advice", message, *figures
        )
    elif amount > least:
        rule = "R15" if 3 * amount > 4 * least else rule
        spare = long(_shown(have - needed), system)
        yield Told(f"spare-{what}", rule, place, fabric.place).notice(
            quilt,
            spare_severity(amount, least),
            f"{sum_of}; {bought_of}, {spare} more. {typed(least, system)} {unit} would do.",
            *figures,
        )


def _shown(value: Fraction) -> Fraction:
    """A converted length is told to the hundredth, never longer than it is."""
    return value if value.denominator <= 64 else Fraction(value // Fraction(1, 100), 100)


def _sum(quilt: Quilt, basket: Basket, buy: Buy) -> str:
    """`8 × 3½ (A) + 6 × 4 (F) + 3 spare = 55″`."""
    system = quilt.system
    parts = [f"{line.strips} × {number(line.width, system)} ({line.what})" for line in buy.lines]
    if basket.cloth and quilt.settings.spare:
        parts.append(f"{number(quilt.settings.spare, system)} spare")
    return f"{' + '.join(parts)} = {long(buy.needed, system)}"


def _pack_notices(quilt: Quilt, basket: Basket, buy: Buy) -> Iterator[Notice]:
    fabric, number_of, stated = basket.fabric, buy.number or 0, basket.fabric.stated_packs
    one, many = _named(fabric)
    pack = pack_of(fabric)
    place = fabric.key_places.get("packs")
    counted = f"{fabric.name}: {times(number_of, one, many)} are needed"
    if pack is None:
        hint = "State `pack`, or let the reader count what is in the packet."
        message = f"{counted}; how many a pack holds is not stated."
        yield Told("pack-unknown", "R21", place, fabric.place, hint).notice(
            quilt, "advice", message
        )
        return
    least = -(-number_of // pack)
    if stated is not None and stated < least:
        short = number_of - stated * pack
        packed = f"{times(stated, 'pack')} of {pack} {'hold' if stated > 1 else 'holds'} "
        gives = f"{stated} stated" if pack == 1 else packed + str(stated * pack)
        message = f"{counted}; {gives}, short by {short}."
        hint = f"Buy {least}." if pack == 1 else f"Buy {times(least, 'pack')}."
        figures = (str(stated), str(least))
        yield Told("packs-short", "R21", place, fabric.place, hint).notice(
            quilt, "error", message, *figures, mend=True
        )
    elif stated is not None and stated > least:
        severity: Severity = spare_severity(stated, least)
        one_pack = one if pack == 1 else "pack"
        message = f"{counted}; {times(stated, one_pack)} stated, {stated - least} spare."
        figures = (str(stated), str(least))
        yield Told("spare-packs", "R21", place, fabric.place).notice(
            quilt, severity, message, *figures
        )
    elif pack > 1 and not buy.spare_precuts and number_of:
        message = f"{counted}, exactly {times(least, 'pack')} of {pack}. There is none to spare."
        yield Told("exact-packs", "R21", place, fabric.place).notice(quilt, "advice", message)


def _named(fabric: Fabric) -> tuple[str, str]:
    names = {
        "strip roll": ("strip", "strips"),
        "squares": ("square", "squares"),
        "fat quarter": ("fat quarter", "fat quarters"),
        "fat eighth": ("fat eighth", "fat eighths"),
        "panel": ("panel", "panels"),
    }
    return names[fabric.form]
