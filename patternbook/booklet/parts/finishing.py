"""Once the top is made: backing, layers, basting, quilting, trimming, binding, label."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Book, Figure, Table, told_by_size
from patternbook.cutting.records import BindingPlan, Panels
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import Finish


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
    told = (quilt.backing, quilt.batting, quilt.binding)
    notes = tuple(said for whole in told if whole for said in book.said(whole.note))
    drawn = book.figure("backings")
    return Finishing(
        "Finishing",
        book.said(quilt.words.get("finishing")),
        tuple(_actions(book)),
        Table("Backing, batting and binding", ("", *book.names), told_by_size(book, ROWS)),
        notes,
        book.said(quilt.words.get("care")),
        (drawn,) if drawn else (),
    )


def _finish(book: Book, kind: str) -> Finish | None:
    return next((one for one in book.first.sewing.finishing if one.kind == kind), None)


def _actions(book: Book) -> Iterator[Action]:
    if any(known.cutting.backing for known in book.all):
        yield Action("Backing", _backing(book))
    yield from _layers(book)
    yield from _edges(book)


def _backing(book: Book) -> str:
    plan = book.first.cutting.backing
    if plan is None:
        return ""
    seam, over, frame, home = (
        wording.length(length, book.system)
        for length in (plan.seam, plan.over, plan.frame.over, plan.home.over)
    )
    return (
        "Cut the lengths that the table names and trim off the selvedges. Join them side by side "
        f"with {seam} seams and press the seams open. It is {over} larger on each side: a frame "
        f"wants {frame}, at home {home} will do."
    )


def _layers(book: Book) -> Iterator[Action]:
    layer, baste, quilt = (_finish(book, kind) for kind in ("layer", "baste", "quilt"))
    if layer:
        yield Action(
            "Layer",
            "Tape the backing wrong side up on a flat floor, smooth but not stretched. Lay the "
            "batting on it, then the pressed top right side up in the middle.",
        )
    if baste and baste.spacing:
        apart = wording.between(*baste.spacing, book.system)
        yield Action("Baste", f"From the middle outward, pin through all layers every {apart}.")
    if quilt:
        yield Action(
            "Quilt", "Quilt as the quilting page suggests, or as you like, from the middle outward."
        )


def _edges(book: Book) -> Iterator[Action]:
    trim, bind, label = (_finish(book, kind) for kind in ("trim", "bind", "label"))
    if trim:
        yield Action("Trim", "Trim batting and backing level with the top, with square corners.")
    plan = book.first.cutting.binding
    if bind and plan:
        yield Action("Bind", _binding(book, plan, bind))
    if label:
        yield Action(
            "Label",
            "Sew a label to the back: your name, the quilt's name, for whom, the date, the "
            "place, and how to wash it.",
        )


def _binding(book: Book, plan: BindingPlan, bind: Finish) -> str:
    seam = wording.length(book.first.quilt.seam, book.system)
    join = (
        "Lay the ends of two strips at right angles, right sides together, sew from corner to "
        f"corner, trim to {seam} and press open"
        if plan.join == "diagonal"
        else "Join the strips end to end with straight seams and press them open"
    )
    fold = (
        "Fold the strip in half along its length, wrong sides together, and press. "
        if bind.fold == "double"
        else ""
    )
    return (
        f"{join}; so on for all strips. {fold}Begin in the middle of a side, raw edges level "
        f"with the quilt's front, and sew with a {seam} seam. At each corner stop {seam} before "
        "the edge, fold the strip up and down again, and go on. Join the ends, turn the "
        "fold to the back and sew it down."
    )


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
    if best.panels == 1:
        return "none"
    return "from side to side" if best.seams == "crosswise" else "from top to bottom"


def _batting(known: Evidence) -> str:
    plan = known.cutting.batting
    return wording.cut_size(plan.size, known.quilt.system) if plan else wording.NONE


def _strips(known: Evidence) -> str:
    plan = known.cutting.binding
    if plan is None:
        return wording.NONE
    if plan.square is not None:
        return "cut on the bias"
    return f"{plan.strips}, {wording.length(plan.cut, known.quilt.system)}{wording.NBSP}wide"


def _needed(known: Evidence) -> str:
    plan = known.cutting.binding
    return wording.length(plan.length, known.quilt.system) if plan else wording.NONE


def _made(known: Evidence) -> str:
    plan = known.cutting.binding
    return wording.length(plan.made, known.quilt.system) if plan else wording.NONE


ROWS = (
    ("Backing, at least", _backing_size),
    ("Backing lengths", _lengths),
    ("Backing seams run", _seams),
    ("Batting, at least", _batting),
    ("Binding strips", _strips),
    ("Binding needed", _needed),
    ("Binding once joined", _made),
)
