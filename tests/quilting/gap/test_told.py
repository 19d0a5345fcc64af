"""What the author is told where the quilting leaves more open than the batting allows."""

from dataclasses import replace
from fractions import Fraction

import pytest

from patternbook.inch import CENTIMETRES
from patternbook.notice import Place
from patternbook.quilt.records import Batting, Quilting
from patternbook.quilting.records import Drawn, Gap, QuiltingPlan, Wishes
from patternbook.quilting.told import told
from tests.proof.quilting import by_hand

HERE = Place("trial", 9, 5, 9, 6)
THERE = Place("trial", 20, 5, 20, 6)


def open_as(gap: float, at: tuple[float, float] = (5, 9), stated: bool = True) -> QuiltingPlan:
    wishes = Wishes("walking foot", 3.0, stated)
    return replace(by_hand.plan(), gap=Gap(gap, gap, at), wishes=wishes)


@pytest.mark.parametrize("gap", [2, 3, 3.001])
def test_what_the_batting_allows_is_not_told(gap: float) -> None:
    assert list(told(open_as(gap), by_hand.quilt())) == []


def test_an_error_where_the_limit_is_stated() -> None:
    """Lines 2 apart leave 3 3/4: 2 × 3 / 3 3/4 = 1.6, on the ruler 1 1/2."""
    (notice,) = told(open_as(3.75), by_hand.quilt())
    assert (notice.code, notice.severity, notice.stage) == ("quilting-gap", "error", "quilting")
    assert notice.message == (
        "the quilting leaves a place of 3¾″ open in P 1 (straight lines, 2″ apart); 3″ is the most "
        "(the batting's limit)."
    )
    assert notice.hint == (
        "Write a spacing of 1½″ or less for P 1, or take a batting that may lie open farther, and "
        "state its limit."
    )
    assert (notice.stated, notice.needed, notice.sizes) == ("3¾″", "3″", ("crib",))


def test_a_warning_where_it_is_assumed() -> None:
    (notice,) = told(open_as(3.75, stated=False), by_hand.quilt())
    assert notice.severity == "warning"
    assert "(assumed, none is stated)" in notice.message


def test_an_excluded_area() -> None:
    (notice,) = told(open_as(3.75, (5, 21)), by_hand.quilt())
    assert "in Q 1, which is excluded from the quilting" in notice.message
    assert (notice.hint or "").startswith("Quilt that place too")


def test_an_area_without_a_design_takes_lines_as_far_apart_as_the_limit() -> None:
    plan = open_as(10)
    (notice,) = told(replace(plan, fills=plan.fills[1:]), by_hand.quilt())
    assert "in P 1, where no design finds room" in notice.message
    assert (notice.hint or "").startswith("Write a spacing of 3″ or less for P 1")
    bare = replace(plan.fills[0], design="in the ditch", drawn=Drawn((), 0.0))
    (notice,) = told(replace(plan, fills=(bare, plan.fills[1])), by_hand.quilt())
    assert "in P 1 (in the ditch); 3″ is the most" in notice.message
    assert (notice.hint or "").startswith("Write a spacing of 3″ or less for P 1")


def test_the_author_is_shown_what_she_wrote() -> None:
    quilt = replace(
        by_hand.quilt(),
        quilting=(Quilting("ground", None, Fraction(2), place=HERE),),
        batting=Batting(limit=Fraction(3), places={"limit": THERE}),
    )
    (notice,) = told(open_as(3.75), quilt)
    assert [(mark.place, mark.role) for mark in notice.marks] == [
        (HERE, "spacing stated here"),
        (THERE, "limit stated here"),
    ]


def test_in_centimetres() -> None:
    """7.3 is told as it is, and the mend to the quarter centimetre: 2 × 3 / 7.3 = 0.82."""
    plan = open_as(7.3)
    plan = replace(plan, top=replace(plan.top, rules=plan.top.rules._replace(inch=2.54, step=0.25)))
    (notice,) = told(plan, by_hand.quilt(CENTIMETRES))
    assert "a place of 7.5 cm open" in notice.message
    assert "a spacing of 0.75 cm or less" in (notice.hint or "")
