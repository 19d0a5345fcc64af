"""Where the bobbin is changed."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.quilting.bobbins import bobbin_changes
from patternbook.quilting.records import Leg, Stage, Walk
from tests.quilting.route.walking import board, winding

TOP = board(10, 10)  # 60 x 60


def stage(*walks: tuple[Leg, ...]) -> Stage:
    return Stage("lines", "walking foot", tuple(Walk(legs) for legs in walks), 0.0, 0.0)


def test_a_bobbin_that_lasts_is_not_changed() -> None:
    leg = Leg("fill", ((10, 10), (50, 10)), "P 1")
    assert bobbin_changes([stage((leg,))], TOP, 40.0) == ()


def test_it_is_changed_at_the_edge_even_if_a_tenth_is_left() -> None:
    """From the edge 45 in in, along, and out again to it at 90; a line goes on to 110. Of a bobbin
    of 100 in, the edge comes before the corner at 94."""
    walk = (Leg("fill", ((0, 10), (45, 10), (0, 12), (0, 16), (16, 16)), "P 1"),)
    (change,) = bobbin_changes([stage(walk)], TOP, 100.0)
    assert (change.place, change.at) == ("edge", (0, 16))
    assert change.used == pytest.approx((45 + (45**2 + 2**2) ** 0.5 + 4) / 100, abs=1e-6)


def test_between_two_legs_comes_before_a_corner() -> None:
    walk = (
        Leg("fill", ((10, 10), (50, 10)), "P 1"),
        Leg("ditch", ((50, 10), (50, 20), (48, 20))),
        Leg("fill", ((48, 20), (10, 20)), "P 2"),
    )
    (change,) = bobbin_changes([stage(walk)], TOP, 54.0)
    assert (change.place, change.at) == ("between", (48, 20))
    (change,) = bobbin_changes([stage(walk)], TOP, 51.0)
    assert (change.place, change.at) == ("corner", (50, 20))


def test_a_bobbin_goes_on_in_the_next_stage() -> None:
    """30 in sewn, 30 more in the next stage: a bobbin of 40 in is changed where that begins."""
    first = stage((Leg("fill", ((10, 10), (40, 10)), "P 1"),))
    second = stage((Leg("fill", ((10, 20), (40, 20)), "P 2"),))
    (change,) = bobbin_changes([first, second], TOP, 40.0)
    assert (change.stage, change.walk) == (1, 0)
    assert change.place in ("between", "inside")
    assert change.used <= 1.0


@given(st.floats(20.0, 400.0), st.integers(2, 30))
def test_no_bobbin_runs_out(per_bobbin: float, lines: int) -> None:
    path = winding((2, 2, 58, 58), lines)
    walk = stage((Leg("fill", path, "P 1"),))
    changes = bobbin_changes([walk, replace(walk, name="border")], TOP, per_bobbin)
    whole = 2 * (56 * lines + 56)
    assert all(0 < change.used <= 1 for change in changes)
    used = sum(change.used for change in changes) * per_bobbin
    assert used < whole
    assert whole - used <= per_bobbin * (1 + 1e-6)
    # Less than a fifth of a bobbin is ever given away.
    assert all(change.used >= 0.8 for change in changes)
