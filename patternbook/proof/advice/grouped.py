"""Advice of one kind is told once a pattern: its letters and sizes, each with its amount."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from patternbook.notice import Notice, Place, gathered
from patternbook.proof.advice.alike import Said, in_one

# What the plans come to. Advice on a single figure of the source stays at that figure.
OF_PLANS: Final = frozenset({"cutting", "sewing", "proof"})
FIT, COUNT = "exact-fit", "exact-count"
LIMIT, WIDE = "quilting-limit", "quilting-gap"


def grouped(told: Sequence[Notice], sizes: Sequence[str]) -> tuple[Notice, ...]:
    """All notices in order; the advice of one code that hints at one thing is one notice.

    A letter whose strips are used up (`exact-fit`) and give none to spare (`exact-count`) has one
    cause for both, and is told of it once.
    """
    kinds: dict[tuple[str, str | None], list[Notice]] = {}
    left: list[Notice] = []
    notices = gathered(_once(told))
    used_up = {_at(notice) for notice in notices if notice.code == FIT}
    for notice in notices:
        if notice.severity != "advice" or notice.stage not in OF_PLANS:
            left.append(notice)
            continue
        same = notice.code == COUNT and _at(notice) in used_up
        kinds.setdefault((FIT if same else notice.code, notice.hint), []).append(notice)
    return gathered((*left, *(_one(code, of, sizes) for (code, _), of in kinds.items())))


def _once(told: Sequence[Notice]) -> Iterator[Notice]:
    """Without the stated spacing, where the lines as they are drawn are told to lie too wide."""
    wide = {size for notice in told if notice.code == WIDE for size in notice.sizes}
    for notice in told:
        if notice.code != LIMIT or not wide.issuperset(notice.sizes):
            yield notice


def _at(notice: Notice) -> Place | None:
    return notice.marks[0].place if notice.marks else None


def _one(code: str, of: Sequence[Notice], sizes: Sequence[str]) -> Notice:
    """One notice for all: at the first of their places, in the pattern's order of sizes."""
    if len(of) == 1:
        return of[0]
    own, more = (
        [notice for notice in of if (notice.code == code) is main] for main in (True, False)
    )
    marks = {mark.place: mark for notice in reversed(of) for mark in reversed(notice.marks)}
    wanted = {notice.needed for notice in of}
    return replace(
        own[0],
        message=" ".join(_message(part, sizes) for part in (own, more) if part),
        marks=tuple(reversed(marks.values())),
        sizes=_in_order((size for notice in of for size in notice.sizes), sizes),
        needed=wanted.pop() if len(wanted) == 1 else None,
    )


def _message(of: Sequence[Notice], sizes: Sequence[str]) -> str:
    """What is alike in all is said once; sizes are named where they differ."""
    said = [Said(notice.message, _in_order(notice.sizes, sizes), _at(notice)) for notice in of]
    first = {one.at: number for number, one in reversed(list(enumerate(said)))}
    order = {size: number for number, size in enumerate(sizes)}
    said.sort(key=lambda one: (first[one.at], [order.get(size, -1) for size in one.sizes]))
    return in_one(said)


def _in_order(some: Iterable[str], sizes: Sequence[str]) -> tuple[str, ...]:
    found = dict.fromkeys(some)
    return (*(size for size in sizes if size in found), *(one for one in found if one not in sizes))
