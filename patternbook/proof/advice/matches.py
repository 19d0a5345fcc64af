"""How many places there are where seams must meet (rule R16): the sewing plan's own figure, for
which places these are follows from the order of sewing; it is added up over all steps here."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.notice import Notice
from patternbook.proof.advice.told import advised, place_of
from patternbook.proof.evidence import Evidence


def matches(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Of each size: the places of all steps, and how many of them cannot nest."""
    found = {one.quilt.size: words for one in sizes if (words := _counted(one))}
    yield from advised(
        "matching-places", "R16", found, place_of(sizes), "Places where seams must meet,"
    )


def _counted(one: Evidence) -> str | None:
    steps = [step for step in one.sewing.steps if step.matches]
    whole = sum(step.matches * step.make for step in steps)
    if not whole:
        return None
    units: dict[str, int] = {}
    for step in steps:
        units[step.unit] = units.get(step.unit, 0) + step.matches * step.make
    same = sum(step.same_way * step.make for step in steps)
    of = " + ".join(f"{number} in {unit}" for unit, number in units.items())
    total = f"{of} = {whole}" if len(units) > 1 else of
    return f"{total}, of which {same} pressed one way do not nest" if same else total
