"""The figures of advice are counted from what is cut and laid, not from the plans' own words."""

from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

import pytest

from patternbook.edition.pipeline import examine
from patternbook.proof.advice.drift import drift
from patternbook.proof.advice.least_width import least_width
from patternbook.proof.evidence import Evidence
from tests.support import ROOT


@lru_cache
def sizes_of(name: str) -> tuple[Evidence, ...]:
    return tuple(examine(ROOT / "patterns" / name / "pattern.yaml", "p.yaml").sizes.values())


def with_least(one: Evidence, fabric: str, least: Fraction | None) -> Evidence:
    plan = replace(one.cutting.fabrics[fabric], least_width=least)
    cutting = replace(one.cutting, fabrics={**one.cutting.fabrics, fabric: plan})
    return replace(one, cutting=cutting)


@pytest.mark.parametrize("off", [Fraction(1, 8), Fraction(-1), None])
def test_a_wrong_least_width_is_our_error(off: Fraction | None) -> None:
    one = sizes_of("wash-house-tiles")[0]
    name, plan = next(
        (name, plan) for name, plan in one.cutting.fabrics.items() if plan.least_width
    )
    assert not [told for told in least_width([one]) if told.severity == "error"]
    wrong = None if off is None or plan.least_width is None else plan.least_width + off
    (told,) = [
        told for told in least_width([with_least(one, name, wrong)]) if told.severity == "error"
    ]
    assert told.code == "least-width-differs"
    assert told.message.startswith(f"{name}: the strips' own cuts need a width of ")


def test_the_told_width_does_not_rest_on_the_plans() -> None:
    """Whatever the plan says, what is told of the width is the same."""
    sizes = sizes_of("wash-house-tiles")
    wrong = [with_least(one, name, None) for one in sizes for name in [*one.cutting.fabrics][:1]]
    right, other = (
        [one.message for one in least_width(of) if one.severity == "advice"]
        for of in (sizes, wrong)
    )
    assert right == other != []


def test_seams_are_counted_without_the_sewing() -> None:
    sizes = sizes_of("masons-day-off")
    unsewn = [replace(one, sewing=replace(one.sewing, steps=())) for one in sizes]
    assert list(drift(unsewn)) == list(drift(sizes)) != []


def test_rows_on_the_slant_end_in_two_of_the_four_corners() -> None:
    """Across the slanted rows of the queen size lie 13 seams between the rows and 2 corners':
    15 seams × 2 × 1/32 = 15/16."""
    queen = sizes_of("wash-house-tiles")[-1]
    rows = next(made for unit, made in queen.layouts() if unit.name == "top").lines
    assert len(rows) == 14
    (told,) = drift([queen])
    assert "15 seams × 2 × 1⁄32 = 15⁄16″ short" in told.message


def test_papers_keep_their_size() -> None:
    """Hexagons over papers do not drift, however many lie in a row."""
    assert list(drift(sizes_of("train-window-hours"))) == []
