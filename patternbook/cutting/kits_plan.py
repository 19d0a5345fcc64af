"""The cutting and the purchase for so many kits of one size: all planned together, and never with
more cloth than so many times one kit's."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from patternbook.cutting.backing import metres, sold_as
from patternbook.cutting.buying import Basket, bought
from patternbook.cutting.cloth import Cloth, cloth_named, form_of, ways_to_lay
from patternbook.cutting.kits import each_of, kits, last_of
from patternbook.cutting.plan import plan
from patternbook.cutting.records import (
    BackingPlan,
    BattingPlan,
    Buy,
    Cut,
    CuttingPlan,
    FabricPlan,
    LetterPlan,
    Line,
    Strip,
    WebPlan,
)
from patternbook.cutting.sheets import sheets
from patternbook.cutting.steps import cut_steps
from patternbook.cutting.washing import before_washing
from patternbook.inch import step_up
from patternbook.quilt.records import Quilt

BACKING = "backing"  # its line in a sum of cloth


@dataclass(frozen=True)
class KitsPlan:
    """So many kits: how `one` is cut, and how `all` are cut and bought together.

    In `all` the backing's `best` are the panels of all kits, and a web's length is that of all;
    their sizes, and the rows of a web, are each kit's own. So is the batting, in one package or
    in lengths off a roll. The binding is among the strips.
    """

    number: int
    one: CuttingPlan
    all: CuttingPlan


def plan_kits(quilt: Quilt, number: int, one: CuttingPlan) -> KitsPlan:
    """All kits in one plan, in the style of the quilt's settings; one kit is the pattern's own.

    A strip of spare cloth that the pattern lets into the backing is left out of several kits:
    their backings, and the `one` they are set beside, are of whole lengths."""
    if number == 1:
        return KitsPlan(1, one, one)
    full = quilt.settings.cutting != "plain"
    if quilt.backing and quilt.backing.pieced:  # cut together, kits leave no spare cloth each
        quilt = replace(quilt, backing=replace(quilt.backing, pieced=False, stated_insert=None))
        one, _ = plan(quilt, full=full)
    together = kits(quilt, number, one)
    pooled, _ = plan(together, full=full)
    backing = _backings(quilt, one.backing, number) if one.backing else None
    cut = [_fabric(together, _Fabric(name, number, one, pooled, backing)) for name in one.fabrics]
    letters = {letter.letter: letter for _, of_fabric in cut for letter in of_fabric}
    made = CuttingPlan(
        quilt.size,
        {made.fabric: made for made, _ in cut},
        {letter: letters[letter] for letter in one.letters if letter in letters},
        {letter: count for made, _ in cut for letter, count in made.yields.items()},
        backing,
        _battings(quilt, one.batting, number) if one.batting else None,
        None,
        {name: _web(quilt, web, number) for name, web in one.webs.items()},
    )
    return KitsPlan(number, one, made)


@dataclass(frozen=True)
class _Fabric:
    """One fabric's two plans, of one kit and of all pooled; pooled has none where it is only for
    the backing."""

    name: str
    number: int
    one: CuttingPlan
    all: CuttingPlan
    backing: BackingPlan | None

    def letters(self, of: CuttingPlan) -> tuple[LetterPlan, ...]:
        return tuple(plan for plan in of.letters.values() if plan.fabric == self.name)


def _fabric(quilt: Quilt, at: _Fabric) -> tuple[FabricPlan, tuple[LetterPlan, ...]]:
    """The lesser of the pooled plan and of one kit's plan so many times over: first fit may take
    more for many than for each by itself."""
    single, pooled = at.one.fabrics[at.name], at.all.fabrics.get(at.name)
    again = repeated(quilt, single, at.letters(at.one), at.number)
    many = tuple(_many(letter, at.number) for letter in at.letters(at.one))
    apart = replace(again, buy=_buy(quilt, again, many, at.backing))
    if pooled is None:
        return apart, many
    letters = at.letters(at.all)
    together = replace(pooled, buy=_buy(quilt, pooled, letters, at.backing))
    if _takes(together) <= _takes(apart):
        return together, letters
    return _bounded(apart, pooled), many


def _takes(made: FabricPlan) -> tuple[Fraction | int, Fraction]:
    """What is bought, then the cloth that is used; where the planner has chosen the easiest of
    all plans that buy as little, the purchase alone."""
    bought = made.buy.amount if made.buy.number is None else made.buy.number
    return bought or 0, made.length if made.style == "plain" else Fraction(0)


def _bounded(made: FabricPlan, pooled: FabricPlan) -> FabricPlan:
    """What the search for a pooled plan has ruled out holds for every plan of its style."""
    if made.style == "plain":
        return made
    proven = pooled.bound >= made.length
    return replace(made, bound=pooled.bound, proven=proven, limit_hit=pooled.limit_hit)


def _many(letter: LetterPlan, number: int) -> LetterPlan:
    return replace(
        letter,
        needed=letter.needed * number,
        cuts=letter.cuts * number,
        own=letter.own * number,
        strips=letter.strips * number,
        exact_count=False,
        other=None,
    )


def _buy(
    quilt: Quilt, made: FabricPlan, letters: tuple[LetterPlan, ...], backing: BackingPlan | None
) -> Buy:
    """What is bought for all of it, with the backings where they are of this cloth too."""
    fabric = cloth_named(quilt, made.fabric)
    backs = backing is not None and backing.fabric == made.fabric and not form_of(fabric).pieces
    lines = tuple(line for line in made.buy.lines if line.what != BACKING)
    basket = Basket(fabric, lines, made.strips, made.sheets, letters, backing if backs else None)
    return bought(quilt, basket)[0]


# ---- one kit's plan, so many times over


def repeated(
    quilt: Quilt, single: FabricPlan, letters: tuple[LetterPlan, ...], number: int
) -> FabricPlan:
    """The strips of one kit so many times; joined ones lie apart, for each kit has its own."""
    cloth = _as_laid(quilt, single)
    strips = tuple(again for strip in single.strips for again in _again(strip, number))
    length = single.length * number
    lies = sheets(cloth, strips) if single.sheets else ()
    many = tuple(_many(letter, number) for letter in letters)
    lines = tuple(
        Line(line.what, line.strips * number, line.width)
        for line in single.buy.lines
        if line.what != BACKING
    )
    return replace(
        single,
        strips=strips,
        sheets=lies,
        length=length,
        bound=length,
        yields={letter: count * number for letter, count in single.yields.items()},
        buy=replace(single.buy, lines=lines, stated=False),
        steps=cut_steps(quilt, cloth, strips, many),
        least=None,
        number_bound=None,
        others=(),
        instead=(),
        narrower=(),
        other_ways=(),
    )


def _as_laid(quilt: Quilt, single: FabricPlan) -> Cloth:
    """The way in which the strips run in this cloth."""
    turned = any(sheet.turned for sheet in single.sheets)
    ways = [*ways_to_lay(cloth_named(quilt, single.fabric), quilt.system)]
    # Shared cutting turns single quarters, whichever way the others lie.
    return max(ways, key=lambda way: (way.run == single.width, way.turned == turned))


def _again(strip: Strip, number: int) -> Iterator[Strip]:
    """The same strips for each kit: whole ones where they are joined, the last of them apart
    where it gives other letters too."""
    if strip.join is None:
        yield replace(strip, times=strip.times * number)
        return
    own, *others = strip.cuts
    guests = tuple(cut for cut in others if cut.letter != own.letter)
    if not guests:
        cut = Cut(own.letter, each_of(strip), own.across, 1, 1, own.use, whole=True)
        yield replace(strip, times=strip.times * number, cuts=(cut,), join=None)
        return
    whole = Cut(own.letter, strip.length, own.across, 1, 1, own.use, whole=True)
    if strip.times > 1:
        times = (strip.times - 1) * number
        yield replace(strip, times=times, cuts=(whole,), join=None)
    last = Cut(own.letter, last_of(strip, own.letter), own.across, 1, 1, own.use)
    yield replace(strip, times=number, cuts=(last, *guests), join=None)


# ---- what each kit has of its own, bought together


def _backings(quilt: Quilt, backing: BackingPlan, number: int) -> BackingPlan:
    """The panels of all backings, off one bolt."""
    best = backing.best
    length = best.length * number
    amount = sold_as(quilt, length, best.panels)
    of_all = replace(
        best,
        panels=best.panels * number,
        length=length,
        amount=amount,
        metres=metres(before_washing(length, quilt), quilt),
    )
    return replace(backing, best=of_all, fewest=None)


def _battings(quilt: Quilt, batting: BattingPlan, number: int) -> BattingPlan:
    """As many packages, or the lengths of all off one roll."""
    if batting.roll is None:
        return replace(batting, packs=batting.packs * number)
    system, settings, roll = quilt.system, quilt.settings, batting.roll
    step = settings.yard_step if system.unit == "in" else settings.metre_step
    length = roll.length * number
    amount = step_up(length / system.bolt, step)
    of_all = replace(
        roll,
        panels=roll.panels * number,
        length=length,
        amount=amount,
        metres=metres(length, quilt),
    )
    return replace(batting, roll=of_all)


def _web(quilt: Quilt, web: WebPlan, number: int) -> WebPlan:
    """A length of web for each kit, off one roll: the maker traces her own shapes on it."""
    length, system, settings = web.length * number, quilt.system, quilt.settings
    step = settings.yard_step if system.unit == "in" else settings.metre_step
    amount = step_up(length / system.bolt, step)
    buy = replace(
        web.buy,
        lines=tuple(Line(line.what, line.strips * number, line.width) for line in web.buy.lines),
        needed=length,
        amount=amount,
        spare=amount * system.bolt - length,
        metres=amount if system.unit == "cm" else metres(length, quilt),
        stated=False,
    )
    return replace(web, length=length, buy=buy)
