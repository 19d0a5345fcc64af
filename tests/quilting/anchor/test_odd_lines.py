"""Lines as nobody would mark them: it must come to an end, and be whole."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from patternbook.quilting.anchor import anchor_lines, anchor_stage
from patternbook.quilting.records import AnchorLine, Divided
from tests.quilting.anchor.walked import squares, wrong

spots = some.tuples(some.integers(0, 12), some.integers(0, 12)).map(
    lambda spot: (spot[0] * 1.0, spot[1] * 1.0)
)
lines = some.lists(
    some.lists(spots, min_size=2, max_size=4, unique=True).map(
        lambda path: AnchorLine(tuple(path), "marked")
    ),
    min_size=1,
    max_size=4,
)


@given(lines)
@settings(max_examples=60, deadline=None)
def test_marked_lines_of_any_kind_are_all_stitched(marked: list[AnchorLine]) -> None:
    laid = squares(2, 2)
    found = [*anchor_lines(laid, Divided((), ())), *marked]
    stage = anchor_stage(laid, found)
    said = [one for one in wrong(laid, found, stage) if "starts or stops inside" not in one]
    # Lines on one another may be told as in the ditch; where each lies is what is looked at.
    assert [one for one in said if "leaves its way" not in one] == []
    assert stage.proven


def test_a_line_that_touches_nothing_is_a_walk_of_its_own() -> None:
    laid = squares(2, 2)
    line = AnchorLine(((1.0, 1.0), (4.0, 2.0)), "marked")
    stage = anchor_stage(laid, [*anchor_lines(laid, Divided((), ())), line])
    assert (len(stage.walks), stage.proven) == (2, True)


def test_a_ring_of_two_lines_that_touches_nothing_is_gone_round_once() -> None:
    laid = squares(1, 1)
    half = [((1.0, 1.0), (4.0, 1.0), (4.0, 4.0)), ((4.0, 4.0), (1.0, 4.0), (1.0, 1.0))]
    stage = anchor_stage(laid, [AnchorLine(path, "marked") for path in half])
    assert (stage.needed, stage.extra, len(stage.walks), stage.proven) == (12, 0, 1, True)


@pytest.mark.parametrize(
    "path",
    [
        ((0.0, 0.0), (12.0, 12.0)),
        ((0.0, 0.0), (12.0, 0.0)),
        ((3.0, 3.0), (9.0, 3.0), (9.0, 9.0), (3.0, 9.0), (3.0, 3.0)),
        ((6.0, 0.0), (6.0, 12.0)),
        ((5.9999999, 0.0), (6.0000001, 12.0)),
        ((1.0, 1.0), (1.0, 1.0)),
    ],
)
def test_hard_lines_come_to_an_end(path: tuple[tuple[float, float], ...]) -> None:
    laid = squares(2, 2)
    assert anchor_stage(laid, [AnchorLine(path, "marked")]).proven
