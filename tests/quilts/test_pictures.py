"""The pictures of the quilting pages: what must be on them, and that all of it can be read."""

from __future__ import annotations

import math
from itertools import combinations

import pytest

from patternbook.diagrams.quilts import close, division, overview, quilts
from patternbook.diagrams.quilts.division import to_mark
from patternbook.diagrams.quilts.measure import apart
from patternbook.diagrams.quilts.practice import called as practice_called
from patternbook.diagrams.quilts.practice import practice as practised
from patternbook.diagrams.quilts.signs import signs
from patternbook.diagrams.quilts.steps import room as step_room
from patternbook.diagrams.quilts.widest import MOST as GAP
from patternbook.quilting.designs import DESIGNS
from patternbook.quilting.designs.form import Design
from patternbook.strokes.stroke import Drawing, Label, Line, Patch
from tests.diagrams.drawn import box, clashes, covered, labels, words
from tests.quilts.small import hand_plan, size_of

SMALLEST = 6.0  # points
CASES = (("low-water", "crib"), ("low-water", "queen"), ("nine-jars-of-plum", "queen"))
MOST = {"overview": overview.MOST, "overview-small": overview.SMALL}
MOST |= {"area": close.MOST, "gap": GAP, "mark": division.MOST}


def drawn(slug: str, size: str) -> dict[str, Drawing]:
    return {one.name: one for one in quilts(size_of(slug, size), hand_plan(slug, size))}


CRIB = drawn("low-water", "crib")


def pictures(slug: str, size: str, step: str) -> int:
    """How many a step has."""
    return sum(called.startswith(f"quilts-{size}-step-{step}-") for called in drawn(slug, size))


@pytest.mark.parametrize(("slug", "size"), CASES)
def test_it_fits_its_place_and_nothing_is_clipped(slug: str, size: str) -> None:
    for called, drawing in drawn(slug, size).items():
        kind = called.removeprefix(f"quilts-{size}-")
        wide, high = MOST.get(kind) or (
            step_room(pictures(slug, size, kind.split("-")[1]))
            if kind.startswith("step-")
            else MOST[kind.split("-")[0]]
        )
        assert drawing.inches[0] <= wide + 0.005, called
        assert drawing.inches[1] <= high + 0.005, called
        for stroke in drawing.strokes:
            left, top, right, low = box(stroke, drawing)
            assert min(left, top) >= -1e-9, (called, stroke)
            assert right <= drawing.width + 1e-9, (called, stroke)
            assert low <= drawing.height + 1e-9, (called, stroke)


@pytest.mark.parametrize(("slug", "size"), CASES)
def test_no_number_covers_another_and_no_words_are_too_small(slug: str, size: str) -> None:
    for called, drawing in drawn(slug, size).items():
        assert list(clashes(drawing)) == [], called
        assert list(covered(drawing)) == [], called
        assert min((one.size for one in labels(drawing)), default=SMALLEST) >= SMALLEST


@pytest.mark.parametrize(("slug", "size"), CASES)
def test_discs_do_not_overlap(slug: str, size: str) -> None:
    for called, drawing in drawn(slug, size).items():
        discs = [one for one in drawing.strokes if isinstance(one, Patch) and one.outline == "disc"]
        rounds = [_round(one) for one in discs if len(one.points) > 4]
        for ((x, y), radius), ((u, v), other) in combinations(rounds, 2):
            assert math.dist((x, y), (u, v)) >= radius + other, called


def _round(disc: Patch) -> tuple[tuple[float, float], float]:
    xs, ys = zip(*disc.points, strict=True)
    middle = sum(xs) / len(xs), sum(ys) / len(ys)
    return middle, math.dist(middle, disc.points[0])


def test_the_overview_names_every_area_and_shows_every_line() -> None:
    plan = hand_plan("low-water", "crib")
    drawing = CRIB["quilts-crib-overview"]
    assert sorted(words(drawing)) == sorted(area.letter for area in plan.divided.areas)
    lines = [one for one in drawing.strokes if isinstance(one, Line)]
    assert len(lines) == len(plan.lines) + sum(len(fill.drawn.paths) for fill in plan.fills)


def test_a_step_has_its_starts_its_stops_and_its_numbers() -> None:
    found = words(CRIB["quilts-crib-step-1-1"])
    assert sorted(found) == sorted([*map(str, range(1, 11)), "S1", "E1", "S2", "E2"])


def test_earlier_steps_are_grey_and_ways_over_them_hollow() -> None:
    drawing = CRIB["quilts-crib-step-2-1"]
    roles = [one.role for one in drawing.strokes if isinstance(one, Line)]
    plan = hand_plan("low-water", "crib")
    assert roles.count("stitched") == len(plan.lines)
    assert roles.count("travel") == roles.count("hollow") == len(plan.fills) - 1
    assert words(drawing).count("B") == 1


def test_the_gap_is_a_ring_as_wide_as_the_gap_at_its_place() -> None:
    plan = hand_plan("low-water", "throw")
    drawing = drawn("low-water", "throw")["quilts-throw-gap"]
    (ring,) = (s for s in drawing.strokes if isinstance(s, Patch) and s.outline == "emphasis")
    wide = max(x for x, _ in ring.points) - min(x for x, _ in ring.points)
    assert wide >= plan.gap.high
    assert words(drawing) == ["2⅛″"]


def test_a_close_up_measures_between_two_lines() -> None:
    assert "1½″" in words(CRIB["quilts-crib-area-p"])


def test_lines_that_lie_side_by_side_are_found() -> None:
    """Three lines 2 apart: what is measured is 2 long and square to them."""
    parts = [((x, 0.0), (x, 10.0)) for x in (1.0, 3.0, 5.0)]
    found = apart(parts, 2.0, (0.0, 0.0, 6.0, 10.0))
    assert found is not None
    (ax, ay), (bx, by) = found
    assert math.isclose(abs(ax - bx), 2.0, abs_tol=1e-3)
    assert math.isclose(ay, by, abs_tol=1e-9)


def test_nothing_is_measured_where_no_lines_lie_so_far_apart() -> None:
    parts = [((x, 0.0), (x, 10.0)) for x in (1.0, 3.0, 5.0)]
    assert apart(parts, 1.5, (0.0, 0.0, 6.0, 10.0)) is None


def test_lines_to_mark_that_are_told_alike_share_a_number() -> None:
    plan = hand_plan("low-water", "crib")
    assert list(to_mark(plan).values()) == [1]
    assert words(CRIB["quilts-crib-mark"]) == ["1"]


@pytest.mark.parametrize("design", DESIGNS, ids=lambda one: one.name)
def test_practice_is_at_full_size(design: Design) -> None:
    drawing = practised(design)
    assert drawing.scale == 1.0
    xs = [x for path in design.element() for x, _ in path]
    lines = [one for one in drawing.strokes if isinstance(one, Line)]
    shown = [x for line in lines for x, _ in line.points]
    assert math.isclose(max(xs) - min(xs), max(shown) - min(shown), abs_tol=1e-6)
    assert max(drawing.inches) <= 7.2
    assert list(clashes(drawing)) == []


def test_the_signs_are_told() -> None:
    texts = words(signs())
    for sign in (
        "S",
        "E",
        "B",
        "start",
        "stop, cut the thread",
        "new bobbin",
        "along the edge, under the binding",
    ):
        assert sign in texts
    assert all(isinstance(one, Label) for one in labels(signs()))


def test_the_same_strokes_every_time() -> None:
    again = drawn("low-water", "crib")
    assert again == CRIB
    assert practice_called("wavy lines") == "quilts-practice-wavy-lines"
