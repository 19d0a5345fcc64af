"""What to buy for each size: one row a fabric, with its use, its amount and what is to spare."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, told_by_size
from patternbook.booklet.cloth_words import bought, label, letters, precut
from patternbook.booklet.other_cloth import instead, trusted
from patternbook.cutting.cloth import pre_cut_size, ways_to_lay
from patternbook.cutting.packs_told import pack_of
from patternbook.cutting.records import Buy
from patternbook.forms import by_length, by_name
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import CutSize, Fabric

SPARE: Final = "To spare in these amounts, and the pieces that it gives"
MORE: Final = 2  # letters named for the cloth that is over
Tell = Callable[[Evidence], str]
Line = tuple[str, Tell]


@dataclass(frozen=True)
class Requirements:
    """What to buy, what is over, what is said of single fabrics, and what would do instead."""

    title: str
    table: Table
    spare: Table
    remarks: tuple[str, ...]
    instead: tuple[str, ...]
    figure: Figure | None


def requirements(book: Book) -> Requirements:
    """A column for each size."""
    fabrics = _fabrics(book)
    head = ("", *book.names)
    lines = [line for fabric in fabrics for line in _fabric(book, fabric)]
    webs = _webs(book)
    lines += [_web(book, fabric) for fabric in webs]
    lines += [*_backing(book), *BATTING_AND_THREAD]
    spare = [(label(fabric), _spare(fabric)) for fabric in (*fabrics, *webs)]
    return Requirements(
        "What you need",
        Table("Fabric, batting and thread", head, told_by_size(book, lines)),
        Table(SPARE, head, told_by_size(book, spare)),
        tuple(remark for fabric in fabrics for remark in _remarks(book, fabric, fabrics)),
        instead(book, fabrics),
        book.figure("key"),
    )


def _fabrics(book: Book) -> tuple[Fabric, ...]:
    """Those that anything but the backing is cut from, in the author's order."""
    quilt = book.first.quilt
    return tuple(
        fabric
        for name, fabric in quilt.fabrics.items()
        if any(_is_cut(known, name) for known in book.all)
    )


def _webs(book: Book) -> tuple[Fabric, ...]:
    """What fuses the shapes, in the author's order."""
    return tuple(
        fabric
        for name, fabric in book.first.quilt.fabrics.items()
        if any(name in known.cutting.webs for known in book.all)
    )


def _web(book: Book, fabric: Fabric) -> Line:
    """`Web (fusible web), 17″ wide`: by its own width, for it is sold in several."""

    def tell(known: Evidence) -> str:
        return amount(_buy(known, fabric.name))

    wide = wording.length(fabric.width, book.system)
    return f"{label(fabric)}, {wide} wide", tell


def _is_cut(known: Evidence, name: str) -> bool:
    plan = known.cutting.fabrics.get(name)
    return plan is not None and bool(plan.strips) and bought(plan)


def _buy(known: Evidence, name: str) -> Buy | None:
    plan = known.cutting.fabrics.get(name) or known.cutting.webs.get(name)
    return plan.buy if plan else None


def _fabric(book: Book, fabric: Fabric) -> Iterator[Line]:
    cut = letters(fabric.name, book.all)
    name = label(fabric) + (", one-way" if fabric.one_way else "") + (f": {cut}" if cut else "")
    if by_length(fabric.form):
        yield name, lambda known: amount(_buy(known, fabric.name))
        return
    if pack_of(fabric) == 1:  # bought piece by piece
        yield f"{name}{each_at_least(book, fabric)}", lambda known: _pieces(known, fabric)
        return
    pack = f", packs of {fabric.pack}" if fabric.pack else ""
    yield f"{name}{pack}", lambda known: _packs(known, fabric)
    yield f"{label(fabric)}, needed", lambda known: _needed(known, fabric)


def amount(buy: Buy | None) -> str:
    """`2⅞ yd or 2.7 m`."""
    if buy is None or buy.amount is None:
        return wording.NONE
    told = in_both(buy.amount, buy.unit, buy.metres)
    if buy.each_print is not None:
        told += f", {wording.amount(buy.each_print, buy.unit)} of each print"
    return told


def each_at_least(book: Book, fabric: Fabric) -> str:
    """How large each must be: they are sold in sizes that differ."""
    size = pre_cut_size(fabric, book.system)
    return f", each at least {wording.cut_size(size, book.system)}" if size else ""


def _pieces(known: Evidence, fabric: Fabric) -> str:
    """`2 fat quarters`."""
    buy = _buy(known, fabric.name)
    return (
        wording.counted(buy.packs, by_name[fabric.form].one) if buy and buy.packs else wording.NONE
    )


def _packs(known: Evidence, fabric: Fabric) -> str:
    buy = _buy(known, fabric.name)
    if buy is None or buy.number is None:
        return wording.NONE
    return wording.counted(buy.packs, "pack") if buy.packs else "see the packet"


def _needed(known: Evidence, fabric: Fabric) -> str:
    buy = _buy(known, fabric.name)
    return precut(fabric, buy.number, known) if buy and buy.number is not None else wording.NONE


def _spare(fabric: Fabric) -> Tell:
    def tell(known: Evidence) -> str:
        buy = _buy(known, fabric.name)
        if buy is None:
            return wording.NONE
        if buy.spare_precuts is not None and buy.number is not None:
            over = precut(fabric, buy.spare_precuts, known).partition(",")[0]
            return over if buy.spare_precuts else "none"
        return _over(buy, known) if buy.amount else wording.NONE

    return tell


def _over(buy: Buy, known: Evidence) -> str:
    """`3½″ (11 A)`: the cloth that is over, and what it gives of the letters that want least."""
    told = wording.length(buy.spare, known.quilt.system)
    gives = sorted((-number, letter) for letter, number in buy.more.items() if number)
    if not gives:
        return told
    pieces = (f"{-number}{wording.NBSP}{letter}" for number, letter in gives[:MORE])
    return f"{told} ({wording.listed(pieces, 'or')})"


def _backing(book: Book) -> Iterator[Line]:
    """The amount that the finishing table cuts from; a frame's beside it where that is more."""
    plan = next((known.cutting.backing for known in book.all if known.cutting.backing), None)
    if plan is None:
        return
    name, over = _backing_name(book), wording.length(plan.over, book.system)
    shared = any(_is_cut(known, plan.fabric or "") for known in book.all)
    if shared:  # bought with what else is cut from that fabric, and counted there
        name = f"Of that {name.partition(' (')[0].lower()}, for the backing"
    if plan.cloth_width != book.first.quilt.width:
        name = f"{name}, {wording.length(plan.cloth_width, book.system)} wide"
    yield f"{name}, {over} over each side", lambda known: _backing_amount(known, frame=False)
    if plan.over < plan.frame.over and not shared:
        yield f"{name}, quilted on a frame", lambda known: _backing_amount(known, frame=True)


def _backing_name(book: Book) -> str:
    plan = book.first.cutting.backing
    fabric = book.first.quilt.fabrics.get(plan.fabric or "") if plan else None
    return label(fabric) if fabric else "Backing"


def _backing_amount(known: Evidence, *, frame: bool) -> str:
    plan = known.cutting.backing
    if plan is None:
        return wording.NONE
    panels = plan.frame.best if frame else plan.best
    return in_both(panels.amount, plan.unit, panels.metres)


def in_both(number: Fraction, unit: str, metres: Fraction | None) -> str:
    """An amount of cloth in yards and in metres, where the pattern is in yards."""
    told = wording.amount(number, unit)
    if unit != "yd" or metres is None:
        return told
    return f"{told} {wording.NARROW_OR}{wording.amount(metres, 'm')}"


def _batting_size(known: Evidence) -> str:
    plan = known.cutting.batting
    return wording.cut_size(plan.size, known.quilt.system) if plan else wording.NONE


def _batting_pack(known: Evidence) -> str:
    plan = known.cutting.batting
    if plan is None or plan.roll is not None:
        return wording.NONE
    if plan.pack is None:
        return "several, joined"
    pack = CutSize(*(_whole(side) for side in plan.pack if side is not None))
    size = wording.cut_size(pack, known.quilt.system)
    return f"{plan.packs} of {size}, joined" if plan.packs > 1 else size


def _batting_roll(known: Evidence) -> str:
    """Off a roll: the amount, and the roll's width."""
    plan, system = known.cutting.batting, known.quilt.system
    if plan is None or plan.roll is None or plan.roll_width is None:
        return wording.NONE
    told = in_both(plan.roll.amount, system.bolt_unit, plan.roll.metres)
    return f"{told}, {wording.length(plan.roll_width, system)} wide"


def _whole(side: Fraction) -> Fraction:
    """Packages are named in whole inches or centimetres."""
    return (side + Fraction(1, 2)) // 1 * Fraction(1)


def _thread(known: Evidence) -> str:
    quilt, thread = known.quilt, known.sewing.totals.thread
    if not thread.sign():
        return wording.NONE
    whole = (thread / quilt.system.bolt).up(wording.TEN)
    return wording.amount(whole, quilt.system.bolt_unit)


BATTING_AND_THREAD: Final[tuple[Line, ...]] = (
    ("Batting, at least", _batting_size),
    ("Batting, a package of", _batting_pack),
    ("Batting off the roll", _batting_roll),
    ("Thread for piecing, about", _thread),
)


def runs_up(book: Book, fabric: Fabric) -> str:
    """Which side of a pre-cut piece the print is taken to run along."""
    lie = next(ways_to_lay(fabric, book.system))
    if lie.deep is None or lie.run == lie.deep:
        return ""
    up = wording.length(lie.deep, book.system)
    one = by_name[fabric.form].one
    return (
        f" The print is taken to run along the {up} side of each {one}. Look at yours before you "
        "buy: where it runs along the other side, you may need more."
    )


def _remarks(book: Book, fabric: Fabric, fabrics: Sequence[Fabric]) -> Iterator[str]:
    """Prints, one-way cloth, and the author's own note."""
    name = wording.title(fabric.name)
    if fabric.prints > 1:
        each = f"{fabric.prints} different prints, one for each {fabric.one_print_per}."
        yield " ".join((f"{name}: {each}", *trusted(fabric, fabrics)))
    else:
        yield from trusted(fabric, fabrics)
    if fabric.one_way:
        yield (
            f"{name}: one-way print; its amount counts on that. Keep every piece the same way up "
            f"when you cut and sew.{runs_up(book, fabric)}"
        )
    yield from book.said(fabric.note)
