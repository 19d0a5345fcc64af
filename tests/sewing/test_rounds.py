"""Pairs, then pairs of pairs (chain piecing: common practice, no source)."""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, log2

from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.quilt.records import Sides
from patternbook.sewing.records import Round
from patternbook.sewing.rounds import Joined, rounds

SEAMS = Exact(Fraction(1, 2))


def stack(parts: Sequence[str], make: int = 1, high: int = 2) -> tuple[Round, ...]:
    """Bars 8 wide and `high` high, finished, one under the other."""
    joined = Joined([Exact(high)] * len(parts), Exact(8), "down", SEAMS, SEAMS)
    return rounds(parts, joined, make)


@given(st.lists(st.sampled_from("AB"), min_size=1, max_size=70), st.integers(1, 9))
def test_all_rounds_together_are_one_seam_fewer_than_parts(parts: list[str], make: int) -> None:
    made = stack(parts, make)
    assert sum(round_.joins for round_ in made) == len(parts) - 1
    assert sum(round_.all for round_ in made) == (len(parts) - 1) * make
    assert [round_.number for round_ in made] == list(range(1, len(made) + 1))


@given(st.integers(1, 70))
def test_like_parts_take_as_many_rounds_as_doublings(bars: int) -> None:
    made = stack("A" * bars)
    assert len(made) == ceil(log2(bars))
    assert all(sum(g.one * g.parts for g in round_.groups) == bars for round_ in made)
    assert [round_.left for round_ in made][-1:] == [1] * (bars > 1)


def test_seven_bars_for_each_of_three_stacks() -> None:
    first, second, third = stack("A" * 7, make=3)
    assert (first.joins, first.all, first.odd, first.left) == (3, 9, True, 4)
    # Three pairs and the odd one: a pair measures 2 + 2 and the two seams, 4½.
    pairs, odd = first.groups
    assert (pairs.parts, pairs.one, pairs.all) == (2, 3, 9)
    assert pairs.measure == Sides(Exact(Fraction(17, 2)), Exact(Fraction(9, 2)))
    assert (odd.parts, odd.one) == (1, 1)
    assert (second.joins, second.odd, [group.parts for group in second.groups]) == (
        2,
        False,
        [4, 3],
    )
    assert (third.joins, [group.parts for group in third.groups]) == (1, [7])


def test_a_long_run_of_bars_is_joined_before_the_ground_at_its_ends() -> None:
    made = stack("DAAAAAE")
    assert [round_.part for round_ in made] == ["A", "A", "A", None, None]
    assert [round_.joins for round_ in made] == [2, 1, 1, 1, 1]
    assert [group.parts for group in made[2].groups] == [5]
    assert [group.parts for group in made[-1].groups] == [7]


def test_groups_that_differ_in_size_have_no_measure() -> None:
    lengths = [Exact(2), Exact(2), Exact(4), Exact(4)]
    first, last = rounds("AABB", Joined(lengths, Exact(8), "across", SEAMS, SEAMS), 1)
    assert first.groups[0].measure is None
    assert last.groups[0].measure == Sides(Exact(Fraction(25, 2)), Exact(Fraction(17, 2)))
