"""A list in two columns."""

from __future__ import annotations

from typing import NamedTuple

from hypothesis import given
from hypothesis import strategies as st

from patternbook.booklet.halves import LINE, halves


class Said(NamedTuple):
    head: str
    words: str


ENTRIES = st.lists(st.builds(Said, st.just("Seam"), st.text("ab ", min_size=1, max_size=200)))


@given(ENTRIES)
def test_the_two_columns_hold_all_in_order_and_are_about_equally_high(entries: list[Said]) -> None:
    left, right = halves(entries)
    assert [*left, *right] == entries
    high = [sum(len(one.words) // LINE + 1 for one in column) for column in (left, right)]
    assert abs(high[0] - high[1]) <= 2 * (200 // LINE + 2) + len(entries)


def test_an_odd_list_is_longer_on_the_left() -> None:
    one = Said("Nest", "to lie snugly")
    assert halves([one, one, one]) == ((one, one), (one,))
