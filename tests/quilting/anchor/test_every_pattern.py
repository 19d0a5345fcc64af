"""The first stage of every pattern that comes with patternbook, in every size, looked over by the
second pair of eyes."""

import math
import random
from dataclasses import replace

import pytest
import shapely

from patternbook.quilting.anchor import anchor_lines, anchor_stage
from patternbook.quilting.areas import areas
from patternbook.quilting.records import AnchorLine, Stage, Top, Walk, Wishes
from tests.quilting.anchor.walked import every_size, laid_demo, legs, wrong
from tests.support import ROOT

PATTERNS = sorted(path.parent.name for path in (ROOT / "patterns").glob("*/pattern.yaml"))
WISHES = Wishes("walking foot", 3.0, limit_stated=False)


def staged(laid: Top) -> tuple[tuple[AnchorLine, ...], Stage]:
    lines = anchor_lines(laid, areas(laid, WISHES)[0])
    return lines, anchor_stage(laid, lines)


@pytest.mark.parametrize("slug", PATTERNS)
def test_it_is_whole_and_at_its_least(slug: str) -> None:
    for size, laid in every_size(slug):
        lines, stage = staged(laid)
        assert wrong(laid, lines, stage) == [], size
        assert stage.proven, size
        assert stage.extra == stage.bound, size
        assert len(stage.walks) <= 1, size


@pytest.mark.parametrize(
    ("slug", "size"),
    [("post-for-the-island", "king"), ("cut-before-you-worry", "lap"), ("windy-bench", "crib")],
)
def test_where_two_lines_cross_it_goes_straight_on(slug: str, size: str) -> None:
    laid = laid_demo(slug, size)
    _, stage = staged(laid)
    turns = shapely.points([leg.path[-1] for leg in legs(stage)])
    assert float(shapely.distance(turns, laid.edge.exterior).max()) < 1e-3


def test_the_same_top_is_the_same_walk() -> None:
    laid = laid_demo("late-returns", "twin")
    assert staged(laid) == staged(laid)


def test_a_dropped_leg_is_seen() -> None:
    laid = laid_demo("late-returns", "crib")
    lines, stage = staged(laid)
    (walk,) = stage.walks
    for number in range(0, len(walk.legs), 4):
        left = Walk(walk.legs[:number] + walk.legs[number + 1 :])
        assert wrong(laid, lines, replace(stage, walks=(left,))), number


def test_a_moved_leg_is_seen() -> None:
    laid = laid_demo("late-returns", "crib")
    lines, stage = staged(laid)
    (walk,) = stage.walks
    chance = random.Random(3)  # noqa: S311 - no secret
    for number, leg in list(enumerate(walk.legs))[::4]:
        turn = chance.uniform(0, math.tau)
        path = tuple((x + 0.5 * math.cos(turn), y + 0.5 * math.sin(turn)) for x, y in leg.path)
        moved = (*walk.legs[:number], leg._replace(path=path), *walk.legs[number + 1 :])
        assert wrong(laid, lines, replace(stage, walks=(Walk(moved),))), number


def test_a_leg_called_by_another_name_is_seen() -> None:
    laid = laid_demo("tea-at-four", "lap")
    lines, stage = staged(laid)
    (walk,) = stage.walks
    for number, leg in list(enumerate(walk.legs))[::4]:
        for other in (leg._replace(again=not leg.again), leg._replace(kind="edge")):
            legs_ = (*walk.legs[:number], other, *walk.legs[number + 1 :])
            assert wrong(laid, lines, replace(stage, walks=(Walk(legs_),))), number


def test_sums_that_are_not_what_is_sewn_are_seen() -> None:
    laid = laid_demo("courtyard-rain", "crib")
    lines, stage = staged(laid)
    assert wrong(laid, lines, replace(stage, extra=stage.extra - 1))
    assert wrong(laid, lines, replace(stage, needed=stage.needed + 1))
    assert sum(1 for _ in legs(stage)) == len(stage.walks[0].legs)
