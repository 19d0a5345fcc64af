"""The practice sheet: one element of each design that is used, at full size."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.book import Figure
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.diagrams.quilts.practice import called

LOW: Final = 2.6  # inches: an element no higher has room below it
ROOM: Final = 4.6  # inches: an element no wider has room beside it to draw it again


class Element(NamedTuple):
    """One to trace, and where there is room to draw it: beside it, below it, or nowhere."""

    figure: Figure
    room: Literal["beside", "below", ""]


@dataclass(frozen=True)
class Practice:
    """The elements to trace."""

    title: str
    intro: str
    blank: str
    elements: tuple[Element, ...]


def used(quilts: QuiltBook) -> tuple[str, ...]:
    """The designs of all sizes, each once, in the order of their letters."""
    return tuple(
        dict.fromkeys(
            fill.design for plan in quilts.plans.values() for fill in plan.fills if fill.drawn.paths
        )
    )


def practice(quilts: QuiltBook) -> Practice:
    """One element of each design."""
    figures = (quilts.book.figure(called(design)) for design in used(quilts))
    return Practice(
        "Practice sheet",
        "These are as large as they are sewn; print at 100 %, “actual size”. Trace each with a "
        "finger, then with a pencil without lifting it, then sew it on the test piece.",
        "Draw it here.",
        tuple(
            Element(
                Figure(one.name, one.alt, wording.capital(one.caption), one.inches),
                _room(*quilts.book.drawings[one.name].inches),
            )
            for one in figures
            if one is not None
        ),
    )


def _room(wide: float, high: float) -> Literal["beside", "below", ""]:
    if wide <= ROOM:
        return "beside"
    return "below" if high <= LOW else ""
