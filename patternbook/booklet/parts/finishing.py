"""Once the top is made: backing, layers, basting, quilting, trimming, binding, label."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, told_by_size
from patternbook.booklet.finishing_words import actions
from patternbook.cutting.records import BackingFor, Panels
from patternbook.proof.evidence import Evidence


@dataclass(frozen=True)
class Action:
    """One of the last steps."""

    head: str
    words: str


@dataclass(frozen=True)
class Finishing:
    """The last steps, their figures by size, and the backing drawn."""

    title: str
    words: tuple[str, ...]
    actions: tuple[Action, ...]
    table: Table
    notes: tuple[str, ...]
    care: tuple[str, ...]
    figures: tuple[Figure, ...]


def finishing(book: Book) -> Finishing:
    """From the finished top to the label."""
    quilt = book.first.quilt
    told = (quilt.backing, quilt.batting, quilt.binding, quilt.label)
    notes = tuple(said for whole in told if whole for said in book.said(whole.note))
    drawn = book.figure("backings")
    return Finishing(
        "Finishing",
        book.said(quilt.words.get("finishing")),
        tuple(Action(head, words) for head, words in actions(book)),
        Table("Backing, batting and binding", ("", *book.names), told_by_size(book, _rows(book))),
        notes,
        book.said(quilt.words.get("care")),
        (drawn,) if drawn else (),
    )


def _rows(book: Book) -> tuple[tuple[str, Callable[[Evidence], str]], ...]:
    """One size's own copy has room for all of them; among several, at home is told where less
    cloth is then bought."""
    if len(book.all) == 1:
        return ROWS
    plans = [known.cutting.backing for known in book.all if known.cutting.backing]
    less = any(plan.home.best.amount < plan.best.amount for plan in plans)
    left = (*OWN_COPY, *(() if less else (AT_HOME,)))
    return tuple(row for row in ROWS if row[0] not in left)


def _best(known: Evidence) -> Panels | None:
    return known.cutting.backing.best if known.cutting.backing else None


def _backing_size(known: Evidence) -> str:
    plan = known.cutting.backing
    return wording.cut_size(plan.size, known.quilt.system) if plan else wording.NONE


def _lengths(known: Evidence) -> str:
    best = _best(known)
    if best is None:
        return wording.NONE
    each = wording.length(best.each, known.quilt.system)
    return f"{best.panels}, each{wording.NBSP}{each}"


def _seams(known: Evidence) -> str:
    best = _best(known)
    if best is None:
        return wording.NONE
    if not best.joins:
        return "none"
    return "side to side" if best.seams == "crosswise" else "top to bottom"


def _strip(known: Evidence) -> str:
    """The strip of spare cloth that is let in: how wide it is cut, how long it is."""
    best = _best(known)
    if best is None or best.insert is None:
        return wording.NONE
    return wording.size(best.insert.width, best.insert.length, known.quilt.system)


def _otherwise(*, frame: bool) -> Callable[[Evidence], str]:
    """The backing for the way of quilting that it is not made for, where that differs."""

    def tell(known: Evidence) -> str:
        plan = known.cutting.backing
        if plan is None:
            return wording.NONE
        way: BackingFor = plan.frame if frame else plan.home
        if way.over == plan.over or plan.stated:
            return wording.NONE
        amount = wording.amount(way.best.amount, plan.unit)
        return f"{wording.cut_size(way.size, known.quilt.system)}, {amount}"

    return tell


def _batting(known: Evidence) -> str:
    plan = known.cutting.batting
    return wording.cut_size(plan.size, known.quilt.system) if plan else wording.NONE


def _roll(known: Evidence) -> str:
    """Lengths of batting off a roll: `2, each 68″ off 48″`."""
    plan = known.cutting.batting
    if plan is None or plan.roll is None or plan.roll_width is None:
        return wording.NONE
    each, wide = (
        wording.length(one, known.quilt.system) for one in (plan.roll.each, plan.roll_width)
    )
    return f"{plan.roll.panels}, each{wording.NBSP}{each}, of {wide}{wording.NBSP}wide"


def _strips(known: Evidence) -> str:
    plan = known.cutting.binding
    if plan is None or plan.square is not None:
        return wording.NONE
    return f"{plan.strips}, {wording.length(plan.cut, known.quilt.system)}{wording.NBSP}wide"


def _square(known: Evidence) -> str:
    """What bias is cut from, and into how many strips."""
    plan = known.cutting.binding
    if plan is None or plan.square is None:
        return wording.NONE
    side = wording.size(plan.square, plan.square, known.quilt.system)
    told = f"{plan.squares},{wording.NBSP}{side}"
    return f"{told}: {wording.counted(plan.bias_strips, 'strip')}" if plan.bias_strips else told


def _needed(known: Evidence) -> str:
    plan = known.cutting.binding
    return wording.length(plan.length, known.quilt.system) if plan else wording.NONE


def _joins(known: Evidence) -> str:
    """The seams that make it one length; one long strip from a square has none."""
    plan = known.cutting.binding
    if plan is None:
        return wording.NONE
    return f"{plan.joins} {plan.join}" if plan.joins else "none"


def _made(known: Evidence) -> str:
    plan = known.cutting.binding
    return wording.length(plan.made, known.quilt.system) if plan else wording.NONE


def _left(known: Evidence) -> str:
    """What of it is over once it is on."""
    plan = known.cutting.binding
    if plan is None:
        return wording.NONE
    return wording.length(plan.left, known.quilt.system) if plan.left > 0 else "none"


def _label(known: Evidence) -> str:
    plan = known.cutting.label
    if plan is None:
        return wording.NONE
    cut = wording.cut_size(plan.cut, known.quilt.system)
    if plan.of_backing:  # trimmed off it
        return f"{cut} of {plan.source or 'backing'}"
    return f"{cut} of {plan.source or 'any light cloth'}"


AT_HOME: Final = "At home instead"
ROWS = (
    ("Backing, at least", _backing_size),
    ("Backing lengths", _lengths),
    ("Backing seams run", _seams),
    ("Strip let in, cut", _strip),
    (AT_HOME, _otherwise(frame=False)),
    ("On a frame instead", _otherwise(frame=True)),
    ("Batting, at least", _batting),
    ("Batting lengths", _roll),
    ("Binding strips", _strips),
    ("Binding squares", _square),
    ("Binding joins", _joins),
    ("Binding needed", _needed),
    ("Binding once joined", _made),
    ("Binding left over", _left),
    ("Label, cut", _label),
)
# What the purchase or the other rows tell already, in a booklet of several sizes.
OWN_COPY = ("Binding joins",)
