"""Plans of real patterns: each passes every check, and what is taken out of one is missed."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

import pytest

from patternbook.edition.pipeline import examine
from patternbook.proof.quilting import prove_quilting
from patternbook.proof.quilting.complete import complete
from patternbook.proof.quilting.joined import joined
from patternbook.proof.quilting.stitched import Stitched
from patternbook.quilt.records import Quilt
from patternbook.quilting.gap import widest
from patternbook.quilting.plan import plan
from patternbook.quilting.records import Leg, Path, QuiltingPlan, Walk
from tests.support import ROOT

# Open ground with channels, squares on point, curves, one design all over.
PATTERNS = ("late-returns", "wash-house-tiles", "pennies-for-the-organ", "second-pot")


@cache
def planned(slug: str) -> tuple[QuiltingPlan, Quilt]:
    """The smallest size."""
    first = next(iter(examine(ROOT / "patterns" / slug / "pattern.yaml", slug).sizes.values()))
    made, _ = plan(first.quilt, first.patches)
    assert made is not None
    return made, first.quilt


@pytest.mark.parametrize("slug", PATTERNS)
def test_every_check_passes(slug: str) -> None:
    assert [str(notice) for notice in prove_quilting(*planned(slug))] == []


def paths(made: QuiltingPlan, without: str = "") -> Iterator[Path]:
    for stage in made.stages:
        for walk in stage.walks:
            yield from (leg.path for leg in walk.legs if not (without and leg.area == without))


def without(made: QuiltingPlan, gone: tuple[int, int, int]) -> QuiltingPlan:
    """One leg left out, by its stage, its walk and its number."""
    stages = list(made.stages)
    walks = list(stages[gone[0]].walks)
    legs = walks[gone[1]].legs
    walks[gone[1]] = Walk(legs[: gone[2]] + legs[gone[2] + 1 :])
    stages[gone[0]] = replace(stages[gone[0]], walks=tuple(walks))
    return replace(made, stages=tuple(stages))


def numbered(made: QuiltingPlan) -> Iterator[tuple[tuple[int, int, int], Leg, Walk]]:
    for number, stage in enumerate(made.stages):
        for which, walk in enumerate(stage.walks):
            for place, leg in enumerate(walk.legs):
                yield (number, which, place), leg, walk


@pytest.mark.parametrize("slug", PATTERNS)
def test_each_leg_that_is_left_out_is_missed(slug: str) -> None:
    """Within a walk as a jump; a leg of a design, or a line stitched once, as missing too."""
    made, quilt = planned(slug)
    for gone, leg, walk in numbered(made):
        spoiled = Stitched(without(made, gone), quilt)
        if 0 < gone[2] < len(walk.legs) - 1 and leg.path[0] != leg.path[-1]:
            assert list(joined(spoiled)) != [], gone
        if leg.kind == "fill":
            assert list(complete(spoiled)) != [], gone


@pytest.mark.parametrize("slug", ["late-returns", "wash-house-tiles"])
def test_each_design_left_out_opens_its_area(slug: str) -> None:
    """To the widest circle that the lines in its area leave, but for those of the design."""
    made, _ = planned(slug)
    for fill in made.fills:
        left = list(paths(made, fill.area.key))
        inside = widest(left, fill.area.shape, rim=True)
        gap = widest(left, made.top.edge, rim=True)
        assert gap.high >= max(inside.low, made.gap.low) - 1e-3, fill.area.key
        assert gap.low >= inside.low - 1e-3, fill.area.key
        if fill.area.kind != "channel":  # a channel is narrow enough to be left open
            assert gap.low > made.gap.high + 0.5, fill.area.key
