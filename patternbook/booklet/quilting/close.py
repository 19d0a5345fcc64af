"""Each letter close up: its design, how it is sewn, how to get out of a corner."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Figure
from patternbook.booklet.quilting.areas import filled
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.measures import spread
from patternbook.diagrams.quilts.close import called, shown
from patternbook.quilting.records import QuiltingPlan


@dataclass(frozen=True)
class Close:
    """One letter's picture and what to say of it."""

    title: str
    figure: Figure | None
    words: tuple[str, ...]


def closes(quilts: QuiltBook, size: str) -> tuple[Close, ...]:
    """Every letter of the first size; of later ones what none before has shown just so."""
    plan = quilts.plans[size]
    told = _told(quilts, size)
    return tuple(
        _close(quilts, size, letter)
        for letter in plan.letters
        if shown(plan, letter) and _look(quilts, plan, letter) not in told
    )


def seen_before(quilts: QuiltBook, size: str) -> str:
    """Where the letters are to be seen that are not close up here."""
    plan = quilts.plans[size]
    told = _told(quilts, size)
    found: dict[str, list[str]] = {}
    for letter in plan.letters:
        look = _look(quilts, plan, letter)
        if look is not None and look in told:
            found.setdefault(told[look], []).append(letter)
    return " ".join(
        f"{wording.listed(letters)}: sewn as {there}." for there, letters in found.items()
    )


Look = tuple[str, str, str]


def _told(quilts: QuiltBook, size: str) -> Mapping[Look, str]:
    """What earlier sizes show, and where."""
    names = list(quilts.plans)
    told: dict[Look, str] = {}
    for name in names[: names.index(size)]:
        for letter in quilts.plans[name].letters:
            look = _look(quilts, quilts.plans[name], letter)
            if look is not None:
                told.setdefault(look, f"{letter} of {wording.title(name)}")
    return told


def _look(quilts: QuiltBook, plan: QuiltingPlan, letter: str) -> Look | None:
    """What is to be learnt from a close-up: the design, the foot, how far apart."""
    one = shown(plan, letter)
    if one is None:
        return None
    return one.design, one.foot, spread([one.drawn.spacing], quilts.system)


def _close(quilts: QuiltBook, size: str, letter: str) -> Close:
    plan = quilts.plans[size]
    fills = filled(plan, letter)
    figure = quilts.book.figure(called(size, letter))
    return Close(
        f"{letter}: {fills[0].design}",
        Figure(figure.name, figure.alt, "", figure.inches) if figure else None,
        tuple(_words(quilts, plan, letter)),
    )


def _words(quilts: QuiltBook, plan: QuiltingPlan, letter: str) -> Iterator[str]:
    fills = filled(plan, letter)
    apart = spread([one.drawn.spacing for one in fills if one.drawn.paths], quilts.system)
    number = wording.counted(len(fills), "area")
    yield f"{wording.capital(number)}, lines {apart} apart, {fills[0].foot}."
    first = next(one for one in plan.letters if _sewn(plan, one) == _sewn(plan, letter))
    if first != letter:
        yield f"Sewn as {first}."
        return
    design = quilts.designs.get(fills[0].design)
    if design is not None:
        told = design.sewn.get(fills[0].foot)
        if told:
            yield wording.sentence(told)
        if design.corner:
            yield f"Out of a corner: {wording.sentence(design.corner)}"


def _sewn(plan: QuiltingPlan, letter: str) -> tuple[str, str] | None:
    """The design and the foot of a letter."""
    return next(((one.design, one.foot) for one in plan.fills if one.area.letter == letter), None)
