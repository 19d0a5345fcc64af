"""The printed quilting pages, read back: every figure is the plan's, and a wrong one is found."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from patternbook.booklet.pdf import make_pdf
from patternbook.booklet.quilting.html import html
from patternbook.booklet.readback.quilting import quilting
from patternbook.booklet.readback.tagged import Line, lines
from patternbook.inch import INCHES
from patternbook.quilting.records import QuiltingPlan
from patternbook.shipped import shipped
from tests.quilts.small import hand_plan, quilt_book

PLAN = hand_plan("low-water", "crib")


@cache
def printed() -> bytes:
    quilts = quilt_book("low-water", "crib")
    page = html(quilts)
    drawings = quilts.book.drawings
    pdf, told = make_pdf(
        page.html, drawings, base=shipped("templates"), date=None, titles=page.titles
    )
    assert told == ()
    return pdf


@cache
def read() -> tuple[Line, ...]:
    return lines(printed())


def differs(plan: QuiltingPlan) -> list[str]:
    """What is printed otherwise than this plan has it."""
    return [one.what for one in quilting(read(), {"crib": plan}, INCHES)]


def test_what_is_printed_is_what_was_planned() -> None:
    assert differs(PLAN) == []


def test_the_same_bytes_every_time() -> None:
    first = printed()
    printed.cache_clear()
    assert printed() == first


def test_a_size_that_is_not_printed_is_missed() -> None:
    found = [one.what for one in quilting(read(), {"throw": PLAN}, INCHES)]
    assert found == ["the areas", "the figures"]


def less_an_area(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, divided=replace(plan.divided, areas=plan.divided.areas[1:]))


def other_spacing(plan: QuiltingPlan) -> QuiltingPlan:
    first, *rest = plan.fills
    wider = replace(first, drawn=first.drawn._replace(spacing=1.75))
    return replace(plan, fills=(wider, *rest))


def other_design(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, fills=tuple(replace(one, design="meander") for one in plan.fills))


def one_walk_less(plan: QuiltingPlan) -> QuiltingPlan:
    first, *rest = plan.stages
    return replace(plan, stages=(replace(first, walks=first.walks[:-1]), *rest))


def wider_gap(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, gap=plan.gap._replace(high=2.5))


def other_limit(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, wishes=replace(plan.wishes, limit=3.0))


def other_sums(**changed: object) -> Callable[[QuiltingPlan], QuiltingPlan]:
    return lambda plan: replace(plan, sums=replace(plan.sums, **changed))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("change", "what"),
    [
        (less_an_area, "areas of P"),
        (other_spacing, "lines of P"),
        (other_design, "the design of P"),
        (one_walk_less, "Planned starts"),
        (wider_gap, "Widest place without stitches"),
        (other_limit, "The batting allows"),
        (other_sums(bobbins=3), "Bobbins"),
        (other_sums(hours=(1.25, 4.0)), "Hours at the machine"),
        (other_sums(thread_top=80.0), "Thread on top, about"),
        (other_sums(thread_bobbin=80.0), "Thread in the bobbins, about"),
        (other_sums(evenness=0.09), "Spread of the density"),
        (other_sums(once=1000.0), "Stitched again"),
        (other_sums(passes={1: 9.0, 3: 1.0}), "Most threads over one another"),
        (other_sums(changes=()), "Bobbin changes on the way"),
    ],
)
def test_a_figure_that_is_not_the_plans_is_found(
    change: Callable[[QuiltingPlan], QuiltingPlan], what: str
) -> None:
    assert what in differs(change(PLAN))
