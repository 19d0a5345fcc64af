"""What there is to tell of the yards and metres that are stated for one fabric."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from patternbook.cutting.told import Told, long, spare_severity
from patternbook.inch import INCHES_A_CENTIMETRE, plain, step_up
from patternbook.notice import Edit, Notice, Severity
from patternbook.quilt.records import Fabric, Quilt


class Purchase(NamedTuple):
    """What of one fabric must be bought: the sum written out, what is needed before any rounding,
    and the least that is sold, in the pattern's own unit and in metres."""

    fabric: Fabric
    sums: str
    needed: Fraction
    least: Fraction
    metres: Fraction | None
    rule: str
    # What would do where more panels are stated for the backing than it takes.
    thrifty: Fraction | None = None
    # The same two without the spare: what just does, before rounding and as it is sold.
    tight: tuple[Fraction, Fraction] | None = None


class Amount(NamedTuple):
    """What is stated in one measure, how much cloth that is, and the least that is sold."""

    unit: str
    stated: Fraction
    have: Fraction
    least: Fraction


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
    least = purchase.least if main else _other_unit(quilt, purchase)
    rule = purchase.rule if main else "R17"
    sum_of = f"{fabric.name}: {purchase.sums}"
    figures = stated, would_do = tuple(plain(one, unit == "m") for one in (amount, least))
    place = fabric.key_places.get(what)
    bought_of = f"{stated} {unit} is {long(_shown(have), system)}"
    if main and purchase.tight and purchase.tight[0] <= have < needed:
        left = long(_shown(have - purchase.tight[0]), system)
        message = f"{sum_of}; {bought_of}. It just does, with {left} to spare."
        yield Told(f"tight-{what}", rule, place, fabric.place).notice(
            quilt, "advice", f"{message} {would_do} {unit} is what is printed.", *figures
        )
    elif have < needed:
        short = long(_shown(needed - have), system)
        hint = f"Buy {would_do} {unit}."
        told = Told(f"{what}-short", rule, place, fabric.place, hint).notice(
            quilt, "error", f"{sum_of}; {bought_of}, short by {short}.", *figures, mend=True
        )
        yield _or_without_spare(told, purchase, unit) if main else told
    elif amount < least and not main and fabric.stated_yards and fabric.stated_metres:
        if not _differ(fabric, unit):
            return
        message = f"{fabric.name}: {_pair(fabric, unit)}, sold as {would_do} {unit}."
        hint = f"Write {would_do}, or leave it out and it is worked out."
        severity: Severity = "warning" if least - amount <= quilt.settings.metre_step else "error"
        yield Told(f"{what}-differ", rule, place, fabric.place, hint).notice(
            quilt, severity, message, *figures, mend=True
        )
    elif amount < least:
        message = f"{sum_of}; {bought_of}. It is enough, but is sold as {would_do}."
        yield Told(f"odd-{what}", rule, place, fabric.place).notice(
            quilt, "advice", message, *figures
        )
    else:
        at = Told(f"spare-{what}", rule, place, fabric.place)
        bought = Amount(unit, amount, have, least)
        yield from _spare(quilt, purchase, bought, at, f"{sum_of}; {bought_of}")


def _spare(
    quilt: Quilt, purchase: Purchase, bought: Amount, at: Told, said: str
) -> Iterator[Notice]:
    """Tell where less would do: fewer panels, or the least that is sold."""
    unit, amount, have, least = bought
    main, thrifty = unit == quilt.system.bolt_unit, purchase.thrifty
    stated = plain(amount, unit == "m")
    if main and thrifty is not None and amount > thrifty:
        would_do = plain(thrifty, unit == "m")
        hint = f"Write {would_do}, and take out the panels too many."
        yield replace(at, rule="R15", hint=hint).notice(
            quilt,
            spare_severity(amount, thrifty),
            f"{said}. With the fewest panels {would_do} {unit} would do.",
            stated,
            would_do,
            mend=True,
        )
    elif amount > least:
        more = long(_shown(have - purchase.needed), quilt.system)
        would_do = plain(least, unit == "m")
        yield replace(at, rule="R15" if 3 * amount > 4 * least else at.rule).notice(
            quilt,
            spare_severity(amount, least),
            f"{said}, {more} more. {would_do} {unit} would do.",
            stated,
            would_do,
        )


def _or_without_spare(short: Notice, purchase: Purchase, unit: str) -> Notice:
    """The amount that just does is what is needed; the one with the spare mends it."""
    if not purchase.tight or not short.edits or purchase.tight[1] == purchase.least:
        return short
    just = plain(purchase.tight[1], unit == "m")
    edit = Edit(short.edits[0].place, short.edits[0].old, just, sure=False)
    edits, hint = (*short.edits, edit), f"{short.hint} {just} just does."
    return replace(short, needed=just, edits=edits, hint=hint)


def _other_unit(quilt: Quilt, purchase: Purchase) -> Fraction:
    """What is bought in the measure that the pattern is not written in."""
    if quilt.system.unit == "in":
        return purchase.metres or Fraction(0)
    stated = (purchase.fabric.stated_metres or Fraction(0)) * 100
    inches = max(purchase.needed, stated) * INCHES_A_CENTIMETRE
    return step_up(inches / 36, quilt.settings.yard_step)


def _differ(fabric: Fabric, unit: str) -> bool:
    """Whether the second amount is shorter by more than half a centimetre: what is left of
    rounding when the two are told to the hundredth."""
    yards, metres = fabric.stated_yards or Fraction(0), fabric.stated_metres or Fraction(0)
    less = yards * 36 - metres * 100 * INCHES_A_CENTIMETRE
    return (less if unit == "m" else -less) > INCHES_A_CENTIMETRE / 2


def _pair(fabric: Fabric, unit: str) -> str:
    """`2 yd and 1.5 m are stated, and 2 yd is 1.83 m`."""
    by_yards, by_metres = fabric.stated_yards or Fraction(0), fabric.stated_metres or Fraction(0)
    yards, metric = f"{plain(by_yards)} yd", f"{plain(by_metres, decimals=True)} m"
    a_metre = 100 * INCHES_A_CENTIMETRE / 36
    if unit == "m":
        return f"{yards} and {metric} are stated, and {yards} is {_hundredth(by_yards / a_metre)} m"
    return f"{metric} and {yards} are stated, and {metric} is {_hundredth(by_metres * a_metre)} yd"


def _hundredth(value: Fraction) -> str:
    return f"{float(value):.2f}"


def _shown(value: Fraction) -> Fraction:
    """A converted length is told to the hundredth, never longer than it is."""
    return value if value.denominator <= 64 else Fraction(value // Fraction(1, 100), 100)
