"""What is bought of one fabric: the sum of its strips, the spare, and the step it is sold by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from patternbook.cutting.amounts_told import Purchase, amount_notices
from patternbook.cutting.backing import metres
from patternbook.cutting.cloth import form_of
from patternbook.cutting.packs_told import pack_notices, pack_of
from patternbook.cutting.records import BackingPlan, Buy, LetterPlan, Line, Sheet, Strip
from patternbook.cutting.told import long, number, typed
from patternbook.cutting.washing import after_washing, before_washing
from patternbook.inch import step_up
from patternbook.notice import Notice
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
    if form_of(basket.fabric).sold != "by length":
        buy = _packs(basket)
        return buy, tuple(pack_notices(quilt, basket.fabric, buy))
    buy = _from_the_bolt(quilt, basket)
    return buy, tuple(_amount_notices(quilt, basket, buy))


def rounded(quilt: Quilt, basket: Basket, cloth: Fraction, *, with_spare: bool = True) -> Fraction:
    """So much cloth with the spare, rounded up to the step of the shop; the backing by its own."""
    settings, bolt = quilt.settings, quilt.system.bolt
    spare = settings.spare if with_spare else Fraction(0)
    step = settings.yard_step if quilt.system.unit == "in" else settings.metre_step
    backing = basket.backing.best.amount if basket.backing else Fraction(0)
    bought = before_washing(cloth + spare, quilt)
    return backing + (step_up(bought / bolt, step) if cloth else 0)


def _from_the_bolt(quilt: Quilt, basket: Basket) -> Buy:
    system, settings, fabric = quilt.system, quilt.settings, basket.fabric
    needed = needed_length(quilt, basket)
    amount = rounded(quilt, basket, basket.cloth)
    stated = stated_amount(quilt, fabric)
    enough = stated is not None and stated * system.bolt >= needed
    amount = stated if enough and stated is not None else amount
    straightening = min(settings.straightening, settings.spare) if basket.cloth else Fraction(0)
    used = basket.cloth + basket.backing_length
    spare = after_washing(amount * system.bolt, quilt) - used - straightening
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
    """Strips, spare and backing before they are washed, and before any rounding to what is
    sold."""
    spare = quilt.settings.spare if basket.cloth else Fraction(0)
    return before_washing(basket.cloth + spare + basket.backing_length, quilt)


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
    bought = before_washing(each + settings.straightening, quilt)
    return step_up(bought / quilt.system.bolt, step)


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
    pieces = sum(sheet.times for sheet in basket.sheets) if form_of(fabric).pieces else rolls
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


def _amount_notices(quilt: Quilt, basket: Basket, buy: Buy) -> Iterator[Notice]:
    least = rounded(quilt, basket, basket.cloth)
    rule = "R4" if basket.lines else "R15"
    sums, thrifty = _sum(quilt, basket, buy), _thrifty(quilt, basket)
    tight = None
    if "spare" not in quilt.settings.own:  # her own rule is kept to the letter
        just = rounded(quilt, basket, basket.cloth, with_spare=False)
        tight = before_washing(basket.cloth + basket.backing_length, quilt), just
    purchase = Purchase(basket.fabric, sums, buy.needed, least, buy.metres, rule, thrifty, tight)
    yield from amount_notices(quilt, purchase)


def _thrifty(quilt: Quilt, basket: Basket) -> Fraction | None:
    """The least that is sold, with no more panels than the backing takes."""
    backing = basket.backing
    if backing is None or backing.fewest is None:
        return None
    rest = rounded(quilt, basket, basket.cloth) - backing.best.amount
    return rest + backing.fewest.amount


def _sum(quilt: Quilt, basket: Basket, buy: Buy) -> str:
    """`8 × 3½ (A) + 6 × 4 (F) + 3 spare = 55″`."""
    system = quilt.system
    parts = [f"{line.strips} × {number(line.width, system)} ({line.what})" for line in buy.lines]
    if basket.cloth and quilt.settings.spare:
        parts.append(f"{number(quilt.settings.spare, system)} spare")
    if not quilt.settings.shrinkage:
        return f"{' + '.join(parts)} = {long(buy.needed, system)}"
    used = basket.cloth + (quilt.settings.spare if basket.cloth else 0) + basket.backing_length
    washed = f"{typed(quilt.settings.shrinkage, system)}% shrinkage"
    total = f"{long(used, system)}, with {washed} {long(buy.needed, system)}"
    return f"{' + '.join(parts)} = {total}"
