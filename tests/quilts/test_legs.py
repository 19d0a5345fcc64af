"""The stages cut into panels: everything in order, nothing twice, few numbers to a picture."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.diagrams.quilts.legs import FEW, MANY, panels, window
from patternbook.diagrams.quilts.paths import straights, windowed
from patternbook.quilting.records import Leg, Path, QuiltingPlan, Walk, measured
from tests.quilts.small import hand_plan

PLAN = hand_plan("low-water", "crib")
SPOTS = st.tuples(st.floats(-20, 20), st.floats(-20, 20))
PATHS = st.lists(SPOTS, min_size=2, max_size=12, unique=True).map(tuple)


def stitched(plan: QuiltingPlan, stage: int) -> float:
    return sum(measured(leg.path) for walk in plan.stages[stage].walks for leg in walk.legs)


@pytest.mark.parametrize("stage", [0, 1])
def test_every_inch_of_a_stage_is_in_one_panel(stage: int) -> None:
    shown = sum(measured(piece.path) for panel in panels(PLAN)[stage] for piece in panel.pieces)
    assert math.isclose(shown, stitched(PLAN, stage))


def test_numbers_run_on_from_panel_to_panel() -> None:
    for found in panels(hand_plan("low-water", "queen")):
        numbers = [number for panel in found for number in panel.numbers]
        assert numbers == list(range(1, len(numbers) + 1))


def test_few_numbers_to_a_panel() -> None:
    for plan in (PLAN, hand_plan("nine-jars-of-plum", "queen")):
        for stage, found in zip(plan.stages, panels(plan), strict=True):
            assert all(len(panel.numbers) <= FEW.get(stage.name, MANY) for panel in found)


def test_a_walk_goes_on_where_the_panel_before_left_it() -> None:
    (first, second, *_), _ = panels(hand_plan("nine-jars-of-plum", "queen"))
    assert not first.runs[-1].stops
    assert not second.runs[0].starts
    assert second.runs[0].start == first.runs[-1].end


def test_starts_and_stops_are_those_of_the_walks() -> None:
    for stage, found in zip(PLAN.stages, panels(PLAN), strict=True):
        runs = [run for panel in found for run in panel.runs]
        assert [run.start for run in runs if run.starts] == [w.path[0] for w in stage.walks]
        assert [run.end for run in runs if run.stops] == [w.path[-1] for w in stage.walks]


def test_a_bobbin_is_changed_in_one_panel() -> None:
    places = [spot for found in panels(PLAN) for panel in found for spot in panel.changes]
    assert places == [change.at for change in PLAN.sums.changes]


def test_straight_parts_of_a_line_with_two_corners() -> None:
    path = ((0.0, 0.0), (9.0, 0.0), (9.0, 7.0), (2.0, 7.0))
    assert list(straights(path, 4.0)) == [path[:2], path[1:3], path[2:]]


def test_a_short_jog_has_no_number_of_its_own() -> None:
    path = ((0.0, 0.0), (9.0, 0.0), (9.0, 1.0), (18.0, 1.0))
    assert list(straights(path, 4.0)) == [path[:2], path[1:]]


@given(PATHS, st.floats(0.5, 9.0))
def test_straight_parts_are_the_whole_line(path: Path, least: float) -> None:
    parts = list(straights(path, least))
    assert parts[0][0] == path[0]
    assert parts[-1][-1] == path[-1]
    assert math.isclose(sum(map(measured, parts)), measured(path))


@given(PATHS)
def test_a_window_shows_what_lies_in_it(path: Path) -> None:
    box = (-10.0, -10.0, 10.0, 10.0)
    for part in windowed(path, box):
        assert all(-10.000001 <= x <= 10.000001 and -10.000001 <= y <= 10.000001 for x, y in part)
    if all(-10 <= x <= 10 and -10 <= y <= 10 for x, y in path):
        assert math.isclose(sum(map(measured, windowed(path, box))), measured(path), rel_tol=1e-6)


def lined(lines: int, deep: float = 42.0) -> QuiltingPlan:
    """A plan whose second stage is one area of so many lines, with turns along the edge."""
    legs: list[Leg] = []
    for number in range(lines):
        x = 1.0 + number
        path: Path = ((x, 0.0), (x, deep)) if number % 2 == 0 else ((x, deep), (x, 0.0))
        if legs:
            legs.append(Leg("edge", (legs[-1].path[-1], path[0]), "P 1"))
        legs.append(Leg("fill", path, "P 1"))
    stage = replace(PLAN.stages[1], walks=(Walk(tuple(legs)),))
    return replace(PLAN, stages=(PLAN.stages[0], stage))


def test_an_area_of_many_lines_has_a_number_for_each() -> None:
    (panel,) = panels(lined(20))[1]
    assert panel.numbers == tuple(range(1, 21))
    assert all(piece.line == bool(piece.number) for piece in panel.pieces)


def test_of_many_lines_some_numbers_are_written() -> None:
    (panel,) = panels(lined(20))[1]
    assert panel.shown == {1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 20}


def test_many_lines_are_told_in_several_panels() -> None:
    found = panels(lined(35))[1]
    assert [len(panel.numbers) for panel in found] == [18, 17]


def test_an_area_of_few_lines_is_one_piece_with_its_turns() -> None:
    (panel,) = panels(lined(4))[1]
    (piece,) = panel.pieces
    assert piece.area == "P 1"
    assert [leg.kind for leg in piece.legs] == ["fill", "edge"] * 3 + ["fill"]


def test_a_panel_about_a_part_of_the_top_shows_that_part() -> None:
    plan = lined(20, 10.0)
    (panel,) = panels(plan)[1]
    assert window(plan, panel) == (0.0, 0.0, 22.0, 12.0)
    assert window(PLAN, panels(PLAN)[0][0]) == (0.0, 0.0, 36.0, 42.0)


def test_a_slim_part_is_shown_with_what_lies_beside_it() -> None:
    plan = lined(7, 25.0)
    (panel,) = panels(plan)[1]
    left, top, right, low = window(plan, panel)
    assert (left, top, low) == (0.0, 0.0, 27.0)
    assert math.isclose(right - left, 0.7 * 27)
