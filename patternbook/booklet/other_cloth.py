"""What to buy where the cloth is another: narrower, pre-cut instead of off the bolt, a packet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book
from patternbook.cutting.cloth import on_trust
from patternbook.cutting.records import FabricPlan, Instead, Narrower
from patternbook.forms import by_length, by_name
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import CutSize, Fabric

# More cloth than this is no help: so many times what is bought off the bolt.
MOST: Final = Fraction(3, 2)
SHOWN: Final = 2  # kinds of other cloth told of one fabric; one where there are more sizes
Told = tuple[str, CutSize | None]


def instead(book: Book, fabrics: Iterable[Fabric]) -> tuple[str, ...]:
    """One line a fabric: `Rim, instead: 2 fat quarters (18 × 21″), with none to spare.`"""
    lines: list[str] = []
    sized: set[Told] = set()  # the size of each is told once
    for fabric in fabrics:
        keys = _offered(book, fabric)
        ways = [_way(book, fabric, key, sized=key not in sized) for key in keys]
        sized |= set(keys)
        if ways:
            told = ", or ".join(ways)
            if not by_length(keys[-1][0]):
                told += ", with none to spare"
            lines.append(f"{wording.title(fabric.name)}, instead: {told}.")
    return tuple(lines)


def _offered(book: Book, fabric: Fabric) -> list[Told]:
    """What is offered in every size, the largest pieces first; strips before squares."""
    found: list[set[Told]] = []
    for known in book.all:
        plan = known.cutting.fabrics.get(fabric.name)
        if plan is not None and plan.strips:
            found.append({(one.form, one.size) for one in plan.instead if _helps(known, plan, one)})
    keys = set.intersection(*found) if found else set()
    return sorted(keys, key=_order)[: SHOWN if len(book.sizes) <= SHOWN else 1]


def _order(key: Told) -> tuple[bool, bool, Fraction, bool, str]:
    form, size = key
    area = size.across * (size.down or 0) if size else Fraction(0)
    single, strips = by_name[form].sold == "singly", by_name[form].strips
    # A strip of 2 1/2 x 40 is as large as a square of 10.
    return not by_length(form), not single, -area, not strips, form


def _helps(known: Evidence, plan: FabricPlan, one: Instead) -> bool:
    """Whether it is not far more cloth than what it stands for."""
    if plan.buy.amount is None or one.size is None or one.size.down is None:
        return True
    bought = plan.buy.amount * known.quilt.system.bolt * plan.width
    return one.number * one.size.across * one.size.down <= MOST * bought


def _way(book: Book, fabric: Fabric, key: Told, *, sized: bool) -> str:
    form, size = key
    numbers = {
        name: one
        for name, known in book.sizes.items()
        if (one := _of(known, fabric.name, key)) is not None
    }
    many = f" ({wording.cut_size(size, book.system)})" if size and sized else ""
    if by_length(form):
        amounts = {name: one.amount or Fraction(0) for name, one in numbers.items()}
        told = {name: wording.amount(one, book.system.bolt_unit) for name, one in amounts.items()}
        return f"{wording.by_size(told)} off the bolt"
    if len({one.number for one in numbers.values()}) == 1:
        number = next(iter(numbers.values())).number
        return f"{wording.counted(number, by_name[form].one)}{many}"
    counts = {name: str(one.number) for name, one in numbers.items()}
    return f"{by_name[form].many}{many}: {wording.by_size(counts)}"


def _of(known: Evidence, name: str, key: Told) -> Instead | None:
    plan = known.cutting.fabrics.get(name)
    found = (one for one in plan.instead if (one.form, one.size) == key) if plan else iter(())
    return next(found, None)


def narrower(book: Book) -> str:
    """What to buy of cloth that is too narrow for the plan: `Cloth 39″ wide or less: buy …`."""
    told: list[tuple[Fraction, str]] = []
    for width in sorted(_widths(book), reverse=True):
        words = "; ".join(_of_width(book, width))
        if words and (not told or told[-1][1] != words):
            told.append((width, words))
    return "".join(
        f" Cloth {wording.length(width, book.system)} wide or less: buy {words}."
        for width, words in told
    )


def one_way(book: Book) -> str:
    """What to buy of prints that have one way up, where that is more."""
    told = []
    for name in book.first.quilt.fabrics:
        amounts = {
            size: wording.amount(plan.one_way, book.system.bolt_unit)
            for size, known in book.sizes.items()
            if (plan := known.cutting.fabrics.get(name)) and plan.one_way and _dearer(plan)
        }
        if amounts:
            told.append(f"{wording.title(name)} {_by_size(book, amounts)}")
    return f" Of a one-way print buy {'; '.join(told)}." if told else ""


def _dearer(plan: FabricPlan) -> bool:
    return (plan.one_way or 0) > (plan.buy.amount or 0)


def _widths(book: Book) -> set[Fraction]:
    return {
        one.width
        for known in book.all
        for plan in known.cutting.fabrics.values()
        for one in plan.narrower
    }


def _of_width(book: Book, width: Fraction) -> Iterator[str]:
    """Of each fabric the amounts of the sizes that need more."""
    for name in book.first.quilt.fabrics:
        amounts: dict[str, str] = {}
        for size, known in book.sizes.items():
            plan = known.cutting.fabrics.get(name)
            more = _more(plan, width) if plan else None
            if more is not None and more.amount is None:
                amounts[size] = "wider cloth"
            elif more is not None and more.amount is not None:
                amounts[size] = wording.amount(more.amount, book.system.bolt_unit)
        if amounts:
            yield f"{wording.title(name)} {_by_size(book, amounts)}"


def _by_size(book: Book, amounts: Mapping[str, str]) -> str:
    """The sizes named unless the booklet is of one alone."""
    if len(book.sizes) == 1:
        return next(iter(amounts.values()))
    return ", ".join(f"{told} ({wording.glued(size)})" for size, told in amounts.items())


def _more(plan: FabricPlan, width: Fraction) -> Narrower | None:
    """What is bought at this width, where that is more than is printed."""
    for one in plan.narrower:
        if one.width == width and not one.holds:
            enough = one.amount is not None and one.amount <= (plan.buy.amount or 0)
            return None if enough else one
    return None


def trusted(fabric: Fabric, fabrics: Sequence[Fabric]) -> Iterator[str]:
    """What nobody but the packet knows, told once for all that it is said of."""
    trust = on_trust(fabric)
    same = [one for one in fabrics if on_trust(one) == trust]
    if not trust or same[0] is not fabric:
        return
    names = wording.listed(wording.title(one.name) for one in same)
    of = f" ({names})" if len(same) > 1 or fabric.prints == 1 else ""
    yield f"On trust{of}: {trust}. Read the packet, and count."
