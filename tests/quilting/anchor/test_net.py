"""The net of all ways that the needle may go."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from patternbook.quilting.net import Net
from patternbook.quilting.noding import NEAR, Way, split
from patternbook.quilting.records import AnchorLine, LegKind, Path, measured
from tests.quilting.anchor.walked import laid_demo, squares

EDGE: tuple[LegKind, ...] = ("edge",)


def total(net: Net, *, needed: bool = False) -> float:
    return sum(
        length for length, need in zip(net.lengths, net.needed, strict=True) if need or not needed
    )


def test_four_squares_are_four_seams_and_four_parts_of_the_edge() -> None:
    net = Net.of(squares(2, 2), ())
    assert sorted(net.kinds) == ["ditch"] * 4 + ["edge"] * 4
    assert len(net.spots) == 5
    assert total(net) == 4 * 6 + 48


def test_a_marked_line_cuts_the_seams_that_it_crosses() -> None:
    net = Net.of(squares(2, 2), [AnchorLine(((3.0, 0.0), (3.0, 12.0)), "marked")])
    assert sorted(net.kinds) == ["ditch"] * 5 + ["edge"] * 6 + ["marked"] * 2
    assert total(net, needed=True) == 12


def test_a_marked_line_on_a_seam_is_the_seam() -> None:
    net = Net.of(squares(2, 2), [AnchorLine(((6.0, 0.0), (6.0, 12.0)), "marked")])
    assert "marked" not in net.kinds
    assert total(net, needed=True) == 12


def test_a_line_in_the_ditch_that_ends_within_a_seam_needs_no_more_of_it() -> None:
    net = Net.of(squares(1, 2), [AnchorLine(((0.0, 6.0), (2.0, 6.0)), "ditch")])
    assert total(net, needed=True) == 2


@pytest.mark.parametrize("slug", ["courtyard-rain", "train-window-hours", "wash-house-tiles"])
def test_the_edge_of_curves_hexagons_and_slants_is_whole(slug: str) -> None:
    laid = laid_demo(slug, "lap" if slug.startswith("train") else "crib")
    net = Net.of(laid, ())
    rim = sum(net.lengths[e] for e, kind in enumerate(net.kinds) if kind == "edge")
    seams = sum(net.lengths[e] for e, kind in enumerate(net.kinds) if kind == "ditch")
    assert rim == pytest.approx(laid.edge.exterior.length)
    assert seams == pytest.approx(sum(measured(seam.path) for seam in laid.seams))


def test_what_is_stitched_later_is_cut_in_too() -> None:
    net = Net.of(squares(1, 2), (), [Way("fill", ((3.0, 0.0), (3.0, 12.0)))])
    assert net.kinds.count("fill") == 2


spots = some.tuples(some.integers(0, 20), some.integers(0, 20)).map(
    lambda spot: (spot[0] / 2, spot[1] / 2)
)
paths = some.lists(spots, min_size=2, max_size=5).filter(
    lambda path: all(a != b for a, b in itertools.pairwise(path))
)


@given(paths.map(tuple), some.lists(some.floats(0.01, 0.99), max_size=4, unique=True))
def test_a_path_cut_is_the_same_path_in_parts(path: Path, shares: list[float]) -> None:
    length = measured(path)
    places = sorted(round(share * length, 2) for share in shares)
    marks = [(place, _at(path, place)) for place in dict.fromkeys(places)]
    marks = [mark for mark in marks if NEAR < mark[0] < length - NEAR]
    parts = list(split(path, marks))
    assert len(parts) == len(marks) + 1
    assert sum(map(measured, parts)) == pytest.approx(length)
    assert all(one[-1] == other[0] for one, other in itertools.pairwise(parts))


def _at(path: Path, place: float) -> tuple[float, float]:
    for (x0, y0), (x1, y1) in itertools.pairwise(path):
        far = math.dist((x0, y0), (x1, y1))
        if place <= far:
            return x0 + (x1 - x0) * place / far, y0 + (y1 - y0) * place / far
        place -= far
    return path[-1]
