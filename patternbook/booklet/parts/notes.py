"""What holds throughout: seam, width of fabric, pressing, rounding; and the seam test."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure
from patternbook.booklet.halves import halves
from patternbook.booklet.other_cloth import narrower, one_way
from patternbook.forms import by_length
from patternbook.inch import ruler_up

WASH_OR_NOT: Final = "Wash all fabrics before you cut, or none."
WASH: Final = (
    "The amounts count on fabrics that are washed: wash and press all that come off the bolt, then "
    "measure the usable width, then cut."
)


class Note(NamedTuple):
    """One thing to know before cutting."""

    head: str
    words: str


@dataclass(frozen=True)
class Notes:
    """The notes in two columns, and how to test a seam."""

    title: str
    notes: tuple[tuple[Note, ...], ...]
    test_title: str
    test: tuple[str, ...]
    figure: Figure | None
    lesson_words: str
    lesson: str


def notes(book: Book) -> Notes:
    """Worked out from this pattern's own settings."""
    return Notes(
        "Before you begin",
        halves(tuple(_notes(book))),
        "Test your seam",
        seam_test(book),
        book.figure("seam-test"),
        "The lesson that goes with this pattern:",
        book.heading.lesson or "",
    )


def _notes(book: Book) -> Iterator[Note]:
    quilt, system = book.first.quilt, book.system
    seam = wording.length(quilt.seam, system)
    yield Note(
        "Seam",
        f"Every seam is {seam} and every cut size includes it. Sew fabrics right sides together.",
    )
    yield Note(
        "Sizes",
        "Width comes before length. Finished means sewn into the quilt; a measure with seam "
        "allowances is taken from raw edge to raw edge.",
    )
    yield from _one_first(book)
    yield Note("Width of fabric", f"{_width(book)}{narrower(book)}")
    yield Note(
        "Washing",
        f"{WASH if quilt.settings.shrinkage else WASH_OR_NOT} Never wash pre-cut pieces: they "
        "shrink and fray.",
    )
    yield Note(
        "Pressing",
        "Lift the iron and set it down; do not push. First press the seam as sewn, then to the "
        "side that the step names. Where seams meet, opposite sides nest.",
    )
    yield Note("Amounts", _amounts(book))


def _one_first(book: Book) -> Iterator[Note]:
    """The block that is sewn most, to be measured before the rest is cut."""
    units = [unit for unit in book.first.quilt.units.values() if unit.name in _laid_in_top(book)]
    if not units:
        return
    block = max(units, key=lambda unit: (unit.measure.across * unit.measure.down, unit.make))
    quilts = [known.quilt for known in book.all if block.name in known.quilt.units]
    measures = {quilt.units[block.name].measure for quilt in quilts}
    measure = wording.sides(block.measure, book.system)
    must = f"must measure {measure}" if len(measures) == 1 else "must measure what its step says"
    yield Note(
        "One block first",
        f"Cut and sew one {block.name.replace('-', ' ')} before you cut the rest. With seam "
        f"allowances it {must}.",
    )


def _laid_in_top(book: Book) -> frozenset[str]:
    quilt = book.first.quilt
    top = quilt.units.get(quilt.top or "")
    laid = (part.part for part in top.placed) if top else ()
    return frozenset(part for part in laid if quilt.units.get(part) and quilt.units[part].make > 1)


def _width(book: Book) -> str:
    quilt, system = book.first.quilt, book.system
    usable = wording.length(quilt.width, system)
    least = least_width(book)
    holds = (
        f" Cloth down to {wording.length(least, system)} will do."
        if least and least < quilt.width
        else " Of narrower cloth more is needed."
        if narrower(book)
        else " Narrower cloth will not do."
    )
    return f"The usable width is taken as {usable}, between the selvedges. Measure yours.{holds}"


def least_width(book: Book) -> Fraction | None:
    """The narrowest usable width at which every cut of these sizes can still be made from cloth
    of the pattern's own width."""
    width = book.first.quilt.width
    plans = (plan for known in book.all for plan in known.cutting.fabrics.values())
    least = [
        plan.least_width
        for plan in plans
        if by_length(plan.form) and plan.width == width and plan.least_width is not None
    ]
    backings = (known.cutting.backing for known in book.all)
    backs = [one.best.least_width for one in backings if one and one.cloth_width == width]
    found = [*least, *backs]
    return ruler_up(max(found), book.system) if found else None


def _amounts(book: Book) -> str:
    rules, system = book.first.quilt.settings, book.system
    spare = wording.length(rules.spare, system)
    edge = wording.length(rules.straightening, system)
    unit = system.bolt_unit
    step = rules.yard_step if unit == "yd" else rules.metre_step
    finer = unit == "yd" and step < rules.backing_step
    one_width = " where it is joined from panels" if finer else ""
    told = (
        f"Fabric amounts are whole strips plus {spare} (of which {edge} squares the edge), rounded "
        f"up to the next {wording.amount(step, unit)}; the backing to the next "
        f"{wording.amount(rules.backing_step, unit)}{one_width}. Cut sizes are rounded up to "
        f"{wording.length(system.step, system)}. Binding is the way round plus "
        f"{wording.length(rules.binding_over, system)}"
    )
    joins = ", and what the joins take" if rules.joins == "counted" else ""
    metres = (
        f" Metres are the same lengths, rounded up to {wording.amount(rules.metre_step, 'm')}."
        if unit == "yd"
        else ""
    )
    return f"{told}{joins}.{metres}{_washed(book)}{one_way(book)}"


def _washed(book: Book) -> str:
    """The rule for shrinkage, where the author states it."""
    shrinkage = book.first.quilt.settings.shrinkage
    if not shrinkage:
        return ""
    lost = wording.number(shrinkage, book.system)
    return (
        f" Washing is taken to shorten cloth off the bolt by {lost}%: what is needed is divided by "
        f"1 − {lost}⁄100."
    )


def seam_test(book: Book) -> tuple[str, ...]:
    """Three strips joined: the middle one loses a seam allowance on each side."""
    quilt, system = book.first.quilt, book.system
    strip, middle = quilt.seam * 6, quilt.seam * 4
    cut = (
        f"Cut three strips, each {wording.length(strip, system)} wide and about "
        f"{wording.length(quilt.seam * 16, system)} long."
    )
    measure = (
        f"The middle one must now measure {wording.length(middle, system)}. Narrower: sew a "
        "thread's width less. Wider: sew a thread's width more. Test again."
    )
    return cut, "Join them side by side and press.", measure
