"""What is bought for all kits together, beside what one kit takes by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from patternbook.booklet import wording
from patternbook.booklet.book import Row, Table
from patternbook.booklet.cloth_words import label, letters, precut
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.parts.requirements import amount, each_at_least, in_both, runs_up
from patternbook.cutting.packs_told import pack_of
from patternbook.cutting.records import BINDING, Buy, CuttingPlan, Panels
from patternbook.quilt.records import CutSize, Fabric

STYLES = {
    "plain": "Cut plainly: every letter from strips of its own width.",
    "shared": "Letters share strips, to save cloth.",
    "thrifty": "Letters share strips and lie one above the other in them, to save most cloth.",
}


@dataclass(frozen=True)
class Cloth:
    """The shopping list."""

    title: str
    table: Table
    remarks: tuple[str, ...]


def cloth(kits: KitBook) -> Cloth:
    """A row for each fabric, then backing, batting, web and thread."""
    rows = (*_fabrics(kits), *_backing(kits), *_webs(kits), *_batting(kits), *_thread(kits))
    head: tuple[str, ...] = ("", f"For {kits.kits}", "For one kit alone", "To spare of all")
    if kits.number == 1:
        head = ("", "For one kit", "To spare")
        rows = tuple(Row(row.head, (row.cells[0], row.cells[2])) for row in rows)
    return Cloth("Cloth to buy", Table("", head, rows), tuple(_remarks(kits)))


def _fabrics(kits: KitBook) -> Iterator[Row]:
    for name, many in kits.all.fabrics.items():
        fabric = kits.quilt.fabrics.get(name)
        if fabric is None:
            continue
        single = kits.plan.one.fabrics[name]
        cells = (
            bought(kits, fabric, many.buy),
            bought(kits, fabric, single.buy),
            _over(kits, fabric, many.buy),
        )
        yield Row(_named(kits, fabric), cells)


def _named(kits: KitBook, fabric: Fabric) -> str:
    """`Floor (ground): D, E, F and binding`."""
    found = [letters(fabric.name, (kits.known,))]
    if kits.quilt.binding and kits.quilt.binding.fabric == fabric.name:
        found.append(BINDING)
    backing = kits.all.backing
    if backing and backing.fabric == fabric.name and fabric.use != "backing":
        found.append("backing")
    cut = ", ".join(one for one in found if one and one != fabric.use)
    each = each_at_least(kits.book, fabric) if pack_of(fabric) == 1 else ""
    return f"{label(fabric)}: {cut}{each}" if cut else f"{label(fabric)}{each}"


def bought(kits: KitBook, fabric: Fabric, buy: Buy) -> str:
    """`27⅛ yd or 24.9 m`, or `3 packs: 104 strips, 2½ × 40″`."""
    if buy.number is None:
        return amount(buy)
    if pack_of(fabric) == 1 and buy.packs:  # bought piece by piece
        return precut(fabric, buy.packs, kits.known)
    pieces = precut(fabric, buy.number, kits.known)
    return f"{wording.counted(buy.packs, 'pack')}: {pieces}" if buy.packs else pieces


def _over(kits: KitBook, fabric: Fabric, buy: Buy) -> str:
    if buy.number is None:
        return wording.length(buy.spare, kits.system) if buy.amount else wording.NONE
    if buy.spare_precuts is None:
        return wording.NONE
    over = precut(fabric, buy.spare_precuts, kits.known).partition(",")[0]
    return over if buy.spare_precuts else "none"


def _backing(kits: KitBook) -> Iterator[Row]:
    """Where its cloth is not among the fabrics of the pattern, or of its own."""
    many, single = kits.all.backing, kits.plan.one.backing
    if many is None or single is None or many.fabric in kits.all.fabrics:
        return
    cells = (
        in_both(many.best.amount, many.unit, many.best.metres),
        in_both(single.best.amount, single.unit, single.best.metres),
        wording.NONE,
    )
    yield Row("Backing", cells)


def _webs(kits: KitBook) -> Iterator[Row]:
    for name, many in kits.all.webs.items():
        fabric = kits.quilt.fabrics[name]
        wide = wording.length(many.width, kits.system)
        over = wording.length(many.buy.spare, kits.system)
        single = amount(kits.plan.one.webs[name].buy)
        yield Row(f"{label(fabric)}, {wide} wide", (amount(many.buy), single, over))


def _batting(kits: KitBook) -> Iterator[Row]:
    plan = kits.plan.one.batting
    if plan is None:
        return
    size = wording.cut_size(plan.size, kits.system)
    pieces = wording.counted(kits.number, "piece")
    yield Row("Batting, at least", (f"{pieces} of {size}", size, wording.NONE))
    many = kits.all.batting
    if many is not None and many.roll and plan.roll and plan.roll_width:
        told = _roll(kits, many.roll), _roll(kits, plan.roll)
        wide = wording.length(plan.roll_width, kits.system)
        yield Row(f"Batting off the roll, {wide} wide", (*told, wording.NONE))
    elif many is not None and plan.pack is not None:
        pack = wording.cut_size(_whole(plan.pack), kits.system)
        packs = (f"{wording.counted(one.packs, 'package')} of {pack}" for one in (many, plan))
        joined = ", joined" if plan.packs > 1 else ""
        yield Row(f"Batting, packaged{joined}", (*packs, wording.NONE))


def _roll(kits: KitBook, panels: Panels) -> str:
    return in_both(panels.amount, kits.system.bolt_unit, panels.metres)


def _whole(pack: CutSize) -> CutSize:
    """Packages are named in whole inches or centimetres."""
    half = Fraction(1, 2)
    sides = ((side + half) // 1 * Fraction(1) for side in pack if side is not None)
    return CutSize(*sides)


def thread(kits: KitBook, number: int) -> str:
    """Thread for piecing so many, told as the booklet tells it."""
    needed = kits.known.sewing.totals.thread
    if not needed.sign():
        return wording.NONE
    whole = (needed * number / kits.system.bolt).up(wording.TEN)
    return wording.amount(whole, kits.system.bolt_unit)


def _thread(kits: KitBook) -> Iterator[Row]:
    cells = (thread(kits, kits.number), thread(kits, 1), wording.NONE)
    if cells[1] != wording.NONE:
        yield Row("Thread for piecing, about", cells)


def _remarks(kits: KitBook) -> Iterator[str]:
    styles = dict.fromkeys(plan.style for plan in kits.all.fabrics.values())
    yield from (STYLES[style] for style in styles)
    if kits.number > 1:
        yield (
            "Pieces are cut for all kits together. Strips that are sewn whole, joined or cut to "
            "the maker's measure go into each bag as whole strips. Amounts that the pattern "
            "states are for one quilt; these are reckoned anew."
        )
    yield from _whole_backing(kits)
    yield from _prints(kits)
    yield from _unproven(kits.all)


def _whole_backing(kits: KitBook) -> Iterator[str]:
    """Where the pattern lets spare cloth in, which kits that are cut together do not have."""
    backing = kits.quilt.backing
    if kits.number > 1 and backing and backing.pieced:
        yield (
            "The backings are reckoned of whole lengths, without the strip of spare cloth that "
            "the pattern lets in: kits that are cut together leave none for each."
        )


def _prints(kits: KitBook) -> Iterator[str]:
    for fabric in kits.quilt.fabrics.values():
        name = wording.title(fabric.name)
        if fabric.prints > 1:
            yield (
                f"{name}: {fabric.prints} different prints, one for each {fabric.one_print_per}. "
                "Share the strips out over the prints evenly, and keep a print's pieces together."
            )
        if fabric.one_way:
            runs = runs_up(kits.book, fabric)
            yield f"{name}: one-way print. Keep every piece the same way up.{runs}"


def _unproven(plan: CuttingPlan) -> Iterator[str]:
    """Where a shorter plan was not ruled out, how much shorter it could be."""
    for name, made in plan.fabrics.items():
        if not made.proven:
            yield (
                f"{wording.title(name)}: this plan is the best that was found; whether a better "
                "one exists was not settled."
            )
