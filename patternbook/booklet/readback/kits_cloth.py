"""What is bought for kits, read back: for all of them, for one, and what is over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from patternbook.booklet.readback.cloth import each_at_least, row_of
from patternbook.booklet.readback.reading import Differs, Table, compared, near
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.cloth import form_of
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.cutting.records import BattingPlan, Buy, CuttingPlan, Panels
from patternbook.proof.evidence import Evidence

CHAPTER = "Cloth to buy"
LESSON = "Class list"
TEN = Fraction(10)
Values = tuple[Fraction | None, ...]


def cloth(found: Sequence[Table], known: Evidence, plan: KitsPlan) -> Iterator[Differs]:
    """Every row of the shopping list, and no row more; and of the list for one quilt."""
    table = next((one for one in found if one.chapter == CHAPTER), None)
    if table is None:
        yield Differs("the cloth to buy", known.quilt.size, 0, "nothing", "a table of it")
        return
    told: list[Line] = []
    for what, row, right in _rows(table, known, plan):
        told += [row] if row else []
        yield from each_at_least(what, known.quilt.size, row, known)
        # One kit has no column of its own: what is over stands second.
        cells = right if plan.number > 1 else (right[0], right[2])
        for at, values in enumerate(cells, start=1):
            yield from compared(what, known.quilt.size, row, at, values)
    for row in table.rows:
        if row not in told:
            yield Differs("a row of the cloth to buy", "", row.page, row.words, "nothing")
    yield from _lesson(found, known, plan.one)


def _rows(
    table: Table, known: Evidence, plan: KitsPlan
) -> Iterator[tuple[str, Line | None, tuple[Values, Values, Values]]]:
    """What a row is of, the row, and its numbers: of all kits, of one, and over."""
    one, many = plan.one, plan.all
    for name, made in many.fabrics.items():
        if name in known.quilt.fabrics:
            single = one.fabrics[name].buy
            right = _bought(made.buy, known, name), _bought(single, known, name)
            yield name, row_of(table, name), (*right, _over(made.buy, known))
    for name, web in many.webs.items():
        right = _bought(web.buy, known, name), _bought(one.webs[name].buy, known, name)
        yield name, row_of(table, name), (*right, _over(web.buy, known))
    if many.backing and one.backing and many.backing.fabric not in many.fabrics:
        sold = _sold(many.backing.best, known), _sold(one.backing.best, known)
        yield "backing", table.row("Backing"), (*sold, ())
    if one.batting and many.batting:
        yield from _batting(table, known, plan.number, (many.batting, one.batting))
    if known.sewing.totals.thread.sign():
        thread = _thread(known, plan.number), _thread(known, 1)
        yield "thread", table.row("Thread for piecing, about"), (*thread, ())


def _bought(buy: Buy, known: Evidence, name: str) -> Values:
    """Yards and metres, or packs and what is in them."""
    if buy.number is None:
        metres = buy.metres if known.quilt.system.unit == "in" else None
        return buy.amount, metres, buy.each_print
    fabric = known.quilt.fabrics[name]
    sides = tuple(fabric.size or ())
    singly = form_of(fabric).sold == "singly" and fabric.pack in (None, 1)
    if singly or not buy.packs:
        return Fraction(buy.packs or buy.number), *sides
    return Fraction(buy.packs), Fraction(buy.number), *sides


def _over(buy: Buy, known: Evidence) -> Values:
    if buy.number is not None:
        return (Fraction(buy.spare_precuts),) if buy.spare_precuts else ()
    return (near(buy.spare, known.quilt.system),) if buy.amount else ()


def _sold(best: Panels, known: Evidence) -> Values:
    return best.amount, best.metres if known.quilt.system.unit == "in" else None


def _batting(
    table: Table, known: Evidence, number: int, plans: tuple[BattingPlan, BattingPlan]
) -> Iterator[tuple[str, Line | None, tuple[Values, Values, Values]]]:
    many, one = plans
    size = (one.size.across, one.size.down)
    row = table.row("Batting, at least")
    yield "batting", row, ((Fraction(number), *size), size, ())
    called = (row for row in table.rows if row.cells[0].startswith("Batting"))
    row = next((row for row in called if not row.cells[0].endswith("at least")), None)
    if many.roll and one.roll:
        yield "batting off the roll", row, (_sold(many.roll, known), _sold(one.roll, known), ())
    elif one.pack is not None:
        half = Fraction(1, 2)
        pack = tuple((side + half) // 1 * Fraction(1) for side in one.pack if side is not None)
        packs = (Fraction(many.packs), *pack), (Fraction(one.packs), *pack)
        yield "batting in packages", row, (*packs, ())


def _thread(known: Evidence, number: int) -> Values:
    needed = known.sewing.totals.thread * number / known.quilt.system.bolt
    return (needed.up(TEN),)


def _lesson(found: Sequence[Table], known: Evidence, one: CuttingPlan) -> Iterator[Differs]:
    """The cloth of one quilt, for who comes without a kit."""
    table = next((one for one in found if one.chapter == LESSON), None)
    buys = {name: made.buy for name, made in one.fabrics.items()}
    for name, buy in {**buys, **{name: web.buy for name, web in one.webs.items()}}.items():
        if name in known.quilt.fabrics:
            row = row_of(table, name) if table else None
            right = _bought(buy, known, name)
            yield from compared(f"{name} for one quilt", known.quilt.size, row, 1, right)
