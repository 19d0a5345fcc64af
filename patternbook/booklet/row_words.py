"""Rows and columns in words: how their parts lie, how they are joined, and then one another."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from itertools import pairwise
from typing import Final, NamedTuple

from patternbook.booklet import laying, setting_words, wording
from patternbook.booklet.setting_words import CORNER_TO_CORNER, check
from patternbook.booklet.step_facts import MATCHES, Context, Fact, Words, joined, makes
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import Laid, LinesStep, LineStep, Step

Found = Sequence[tuple[Evidence, LineStep]]


LISTED: Final = 6  # numbers of rows that are written out; more are told by their first three
NOUNS: Final = {"sash": "sash row", "slant": "diagonal row"}
STARTS: Final = {"column": "From the top", "slant": "From the lower left"}


class Order(NamedTuple):
    """How the parts of a row lie: one sentence with counts by size, or an order a size."""

    does: tuple[str, ...] = ()
    counts: tuple[Fact, ...] = ()
    by_size: Mapping[str, str] = {}
    start: str = "From the left"


def line(first: LineStep, where: Context) -> Words:
    """One row or column, and those like it."""
    found = [(known, made) for known, made in where.found() if isinstance(made, LineStep)]
    start = STARTS.get(first.role, "From the left")
    order = _order(start, {known.quilt.size: made.sequence for known, made in found}, "each")
    whole = "top" if where.is_top and _alone(found) else _noun(first)
    sewn = joined((made for _, made in found), whole)
    if first.papers:
        sewn = tuple(setting_words.over_papers(first, where))
    does = (*order.does, *setting_words.triangles(first, where), *sewn)
    facts = (*_numbers(found), *order.counts, check(first), *makes(found))
    title = f"{where.name}: {_title(first, found)}"
    return Words(title, does, facts, order.by_size, start=order.start)


def _noun(step: LineStep) -> str:
    return NOUNS.get(step.role, step.role)


def _title(step: LineStep, found: Found) -> str:
    noun = _noun(step)
    if _alone(found) and step.unit == found[0][0].quilt.top:
        return "join all its parts"
    if all(_only(known, made) for known, made in found):
        many = any(made.make > 1 for _, made in found)
        return f"join the parts of {'each' if many else 'the'} {noun}"
    if len({made.numbers for _, made in found}) > 1:
        return f"join {noun} {step.numbers[0]} and those like it"
    numbers = wording.listed(str(number) for number in step.numbers)
    return f"join {wording.plural(noun) if len(step.numbers) > 1 else noun} {numbers}"


def _numbers(found: Found) -> tuple[Fact, ...]:
    """Which rows are joined alike, where the sizes have more or fewer of them."""
    if len({made.numbers for _, made in found}) == 1 or all(_only(*one) for one in found):
        return ()
    noun = wording.capital(wording.plural(_noun(found[0][1])))
    return (Fact(noun, "", lambda made, _: _counted_out(made)),)


def _counted_out(step: Step) -> str:
    numbers = step.numbers if isinstance(step, LineStep) else ()
    steps = {after - before for before, after in pairwise(numbers)}
    if len(numbers) > LISTED and len(steps) == 1:  # 1, 3, 5 … 29
        return f"{', '.join(map(str, numbers[:3]))} … {numbers[-1]}"
    return ", ".join(map(str, numbers))


def _alone(found: Found) -> bool:
    """Whether this one line is the whole unit, in every size."""
    return all(len(known.sewing.of(step.unit)) == 1 for known, step in found)


def _only(known: Evidence, step: LineStep) -> bool:
    """Whether no other step of the unit joins lines of this role."""
    others = (
        other
        for other in known.sewing.of(step.unit)
        if isinstance(other, LineStep) and other.role == step.role
    )
    return len(list(others)) == 1


def _order(start: str, laid: Mapping[str, Sequence[Laid]], each: str) -> Order:
    """How the parts lie in each size: told once where the sizes differ in counts alone."""
    orders = {size: laying.full(sequence) for size, sequence in laid.items()}
    if len(set(orders.values())) == 1:
        return Order((f"{start}: {next(iter(orders.values()))}.",))
    said = {laying.words(sequence) for sequence in laid.values()}
    if len(said) > 1:
        return Order(by_size=orders, start=start)
    several = laying.several(next(iter(laid.values())))
    facts = tuple(
        Fact(f"{part} in {each}", f"{{}} {part} in {each}.", partial(_in_each, part))
        for part in several
    )
    return Order((f"{start}: {said.pop()}.",), facts)


def _in_each(part: str, step: Step, _: Evidence) -> str:
    return str(next((taken.one for taken in step.parts if taken.part == part), 0))


def lines(first: LinesStep, where: Context) -> Words:
    """Rows or columns joined."""
    found = [(known, made) for known, made in where.found() if isinstance(made, LinesStep)]
    meet = any(made.matches for _, made in found)
    whole = "top" if where.is_top else where.name.lower()
    order = _lies(first, found)
    if first.papers:
        does = (*order.does, *setting_words.rows_over_papers(first, where))
    elif all(made.count == 1 for _, made in found):
        does = tuple(setting_words.corners(first, where))
        return Words(f"{where.name}: sew on the corners", does, (check(first), *makes(found)))
    else:
        sewn = joined((made for _, made in found), whole)
        does = (*order.does, _pins(found), *sewn, *setting_words.corners(first, where))
    count = Fact(
        f"{wording.capital(first.by)} to join",
        f"There are {{}} {first.by}.",
        lambda made, _: str(made.count) if isinstance(made, LinesStep) else wording.NONE,
    )
    counts = (count,) if len({made.count for _, made in found}) > 1 and not order.counts else ()
    matches = (MATCHES,) if meet else ()
    facts = (*counts, *order.counts, *matches, check(first), *makes(found))
    noun = f"diagonal {first.by}" if first.slanting else first.by
    return Words(f"{where.name}: join the {noun}", does, facts, order.by_size, start=order.start)


def _pins(found: Sequence[tuple[Evidence, LinesStep]]) -> str:
    """Where to pin before the lines are joined."""
    if not any(made.matches for _, made in found):
        return "No seams have to meet here."
    if any(made.same_way for _, made in found):
        return (
            "Pin where seams meet. Pressed opposite ways they nest; those pressed the same way "
            "need a pin on each side."
        )
    return "Pin where seams meet: pressed opposite ways, they nest."


def _lies(step: LinesStep, found: Sequence[tuple[Evidence, LinesStep]]) -> Order:
    """Lines that are one part each are named in order; others lie as the picture shows."""
    if not all(made.sequence for _, made in found):
        if step.slanting:
            return Order((f"Lay the {step.by} in order as pictured, {CORNER_TO_CORNER}.",))
        return Order((f"Lay the {step.by} in order as pictured.",))
    start = "From the top" if step.by == "rows" else "From the left"
    return _order(start, {known.quilt.size: made.sequence for known, made in found}, "all")
