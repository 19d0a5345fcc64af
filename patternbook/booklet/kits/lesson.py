"""The class list: what each student brings, what the teacher prepares, and what is cut before."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Row, Table
from patternbook.booklet.cloth_words import label
from patternbook.booklet.kits.book import KitBook, called
from patternbook.booklet.kits.cloth import bought, thread
from patternbook.booklet.parts.back import CAUTIONS, Caution
from patternbook.booklet.parts.requirements import in_both
from patternbook.booklet.parts.tools import tools

AT_THE_TABLE = ("Rotary cutter", "Iron", "Needle and pins", "Quilts and babies")


@dataclass(frozen=True)
class Lesson:
    """The list to hand out, and the teacher's own."""

    title: str
    brings_title: str
    brings: tuple[str, ...]
    finish_title: str
    finish: tuple[str, ...]
    cloth_title: str
    cloth: Table
    before_title: str
    before: tuple[str, ...]
    prepares_title: str
    prepares: tuple[str, ...]
    cautions_title: str
    cautions: tuple[Caution, ...]
    cautions_last: str


def lesson(kits: KitBook) -> Lesson:
    """Worked out from the booklet's own lists."""
    return Lesson(
        "Class list",
        "Each student brings",
        tuple(_brings(kits)),
        "For finishing at home, if it is not in the kit",
        tuple(_finish(kits)),
        "Without a kit: cloth for one quilt",
        _cloth(kits),
        "Without a kit: cut before the class",
        tuple(_before(kits)),
        "The teacher prepares",
        tuple(_prepares(kits)),
        "Cautions",
        tuple(caution for caution in CAUTIONS if caution.head in AT_THE_TABLE),
        "Local rules, those of the house you meet in, the makers' instructions and the advice of "
        "qualified people come first.",
    )


def _brings(kits: KitBook) -> Iterator[str]:
    yield f"the booklet of {kits.book.heading.pattern}, in the size {kits.size}"
    yield from tools(kits.book).tools
    told = thread(kits, 1)
    if told != wording.NONE:
        yield f"thread for piecing, about {told}"


def _finish(kits: KitBook) -> Iterator[str]:
    """Behind the top; the binding is among the strips of every kit."""
    one = kits.plan.one
    if one.backing:
        amount = in_both(one.backing.best.amount, one.backing.unit, one.backing.best.metres)
        size = wording.cut_size(one.backing.size, kits.system)
        yield f"backing, {amount}, for {size}"
    if one.batting:
        yield f"batting, {wording.cut_size(one.batting.size, kits.system)} or larger"
    yield from _label(kits)


def _label(kits: KitBook) -> Iterator[str]:
    label = kits.plan.one.label
    if label:
        yield f"a scrap for the label, {wording.cut_size(label.cut, kits.system)}"


def _cloth(kits: KitBook) -> Table:
    one, fabrics = kits.plan.one, kits.quilt.fabrics
    rows = [
        Row(label(fabrics[name]), (bought(kits, fabrics[name], plan.buy),))
        for name, plan in one.fabrics.items()
        if name in fabrics
    ]
    rows += [
        Row(label(fabrics[name]), (bought(kits, fabrics[name], web.buy),))
        for name, web in one.webs.items()
    ]
    return Table("", ("Fabric", "Amount"), tuple(rows), ("words",))


def _before(kits: KitBook) -> Iterator[str]:
    """What stands in the booklet's chart is not told again, so that it cannot differ."""
    found = dict.fromkeys(called(line.letter) for line in kits.bag)
    yield (
        f"Cut {wording.listed(found)} by the cutting chart of the booklet, size {kits.size}, and "
        "label each pile with its letter."
    )
    yield "Sew the booklet's seam test and bring it."


def _prepares(kits: KitBook) -> Iterator[str]:
    bags = wording.counted(kits.number, "bag")
    yield f"{bags}, filled and counted by the bag list, with its labels"
    units = [unit for unit in kits.quilt.units.values() if unit.name != kits.quilt.top]
    if units:
        names = wording.listed(unit.name.replace("-", " ") for unit in units)
        yield f"a sewn sample of each unit, to hand round: {names}"
    yield "this list for each student, and the newest revision of the booklet"
    yield "spare needles, blades, bobbins and pins; a box for old blades and needles"
    yield "irons and cutting tables with room round them, cords out of the way"
