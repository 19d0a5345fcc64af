"""Quilts of the demonstration patterns with plans made by hand, drawn and told in the tests."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from patternbook.booklet.book import Book, Paper
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.drawings import quilt_drawings
from patternbook.diagrams import drawn_from
from patternbook.diagrams.pattern import Size
from patternbook.edition.pipeline import Examined, examine
from patternbook.quilting.designs import by_name
from patternbook.quilting.records import QuiltingPlan
from tests.quilts.by_hand import plan_by_hand
from tests.support import ROOT


@cache
def examined(slug: str) -> Examined:
    """What is known of a demonstration pattern."""
    shown = f"patterns/{slug}/pattern.yaml"
    return examine(ROOT / shown, shown)


@cache
def hand_plan(slug: str, size: str) -> QuiltingPlan:
    """A plan made by hand for a size of it."""
    known = examined(slug).sizes[size]
    return plan_by_hand(known.quilt, known.patches)


@cache
def size_of(slug: str, name: str) -> Size:
    """The size as it is drawn."""
    known = examined(slug)
    assert known.heading is not None
    drawn = drawn_from(known.heading, known.sizes)
    return next(size for size in drawn.sizes if size.name == name)


@cache
def quilt_book(slug: str, *sizes: str, paper: Paper = "a4") -> QuiltBook:
    """The contents of its quilting pages, for these sizes or for all."""
    known = examined(slug)
    assert known.heading is not None
    names = sizes or tuple(known.sizes)
    plans = {name: hand_plan(slug, name) for name in names}
    book = Book(known.heading, {name: known.sizes[name] for name in names}, {}, paper)
    return QuiltBook(replace(book, drawings=quilt_drawings(book, plans, by_name)), plans, by_name)
