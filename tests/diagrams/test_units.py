"""Units, strip sets and rounds of pairs: every piece lettered, measured with its seams."""

from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.diagrams.pairs import stages
from patternbook.diagrams.table import shortened
from patternbook.diagrams.words import repeats
from patternbook.quilt.records import StripSetMade
from patternbook.sewing.records import LineStep, Round
from tests.diagrams.drawn import ALL, DEMOS, drawn, examined, pattern_of, told, words
from tests.support import Golden

LATE, TEA = DEMOS


@pytest.mark.parametrize("called", ["seam-test", "set-pair", "unit-cup"])
def test_a_small_drawing_in_full(called: str, golden: Golden) -> None:
    golden(told(drawn(TEA)[called]), f"strokes/{called}.txt")


@pytest.mark.parametrize("source", ALL)
def test_every_part_of_a_unit_is_named(source: str) -> None:
    """In its patch, or beside it, or with the number of its like."""
    for _, unit in pattern_of(source).units():
        kind = "set" if isinstance(unit.made, StripSetMade) else "unit"
        said = " ".join(words(drawn(source)[f"{kind}-{unit.name}"])).split()
        for part in {part.part for part in unit.placed}:
            assert part in said, (unit.name, part)


@pytest.mark.parametrize("source", ALL)
def test_a_unit_shows_its_measure_with_the_seams(source: str) -> None:
    """Width and length from raw edge to raw edge: finished and two seam allowances."""
    from patternbook.diagrams.words import length

    for size, unit in pattern_of(source).units():
        if not isinstance(unit.made, StripSetMade):
            said = words(drawn(source)[f"unit-{unit.name}"])
            for side in unit.finished:
                assert length(side + 2 * size.quilt.seam, size.system) in said


def test_a_stack_of_books_letter_by_letter() -> None:
    """Crib: D, fifteen A, E, as the source says."""
    letters = Counter(word for word in words(drawn(LATE)["unit-novels"]) if len(word) == 1)
    assert letters == {"D": 1, "A": 15, "E": 1}
    assert drawn(LATE)["unit-novels"].alt == (
        "Novels as made, from the top. D, 15 A, E. It measures 8½ × 46½″ from raw edge to raw "
        "edge. Seams are pressed down."
    )


def test_a_unit_that_differs_between_sizes_says_which_is_drawn() -> None:
    assert "(drawn for crib)" in drawn(LATE)["unit-novels"].title
    assert "drawn for" not in drawn(TEA)["unit-cup"].title


def test_the_sets_of_every_size_stand_under_the_strip_set() -> None:
    """66 slices in lap are 6 sets of 11, as 3½ goes 11 times into 40."""
    assert "Sets: lap 6, throw 9, twin 13. Each, 40″ long, is cut into 11 slices." in words(
        drawn(TEA)["set-pair"]
    )


@pytest.mark.parametrize("source", ALL)
def test_rounds_are_those_of_the_sewing_plan(source: str) -> None:
    """What lies together in the drawing after each round, and how many seams that took."""
    for known in examined(source).sizes.values():
        for step in known.sewing.steps:
            if isinstance(step, LineStep) and step.rounds:
                names = [laid.part for laid in step.sequence for _ in range(laid.times)]
                drawn_stages = stages(names, step.rounds)
                joins = sum(one.joins for one in step.rounds)
                assert len(drawn_stages[0]) - len(drawn_stages[-1]) == joins == len(names) - 1
                for stage, one in zip(drawn_stages[1:-1], step.rounds, strict=False):
                    groups = Counter({group.parts: group.one for group in one.groups})
                    single = len(names) - names.count(one.part) if one.part else 0
                    assert Counter(map(len, stage)) == groups + Counter({1: single})


@given(st.integers(2, 200))
def test_rounds_join_neighbours_until_one_is_left(parts: int) -> None:
    rounds = [Round(n, None, 0, 0, odd=False, left=0, groups=()) for n in range(1, 9)]
    made = stages(["A"] * parts, rounds)
    assert len(made[0]) == parts
    assert made[-1] == (tuple(range(parts)),)
    for before, after in pairwise(made):
        assert sum(before, ()) == sum(after, ()) == tuple(range(parts))
        assert len(after) == -(-len(before) // 2)


def test_a_run_of_bars_is_joined_before_the_ground_at_its_ends() -> None:
    rounds = [
        Round(number, part, 0, 0, odd=False, left=0, groups=())
        for number, part in enumerate(("A", "A", None, None), start=1)
    ]
    assert stages("DAAAAE", rounds) == (
        ((0,), (1,), (2,), (3,), (4,), (5,)),
        ((0,), (1, 2), (3, 4), (5,)),
        ((0,), (1, 2, 3, 4), (5,)),
        ((0, 1, 2, 3, 4, 5),),
    )


@given(st.lists(st.sampled_from("ab"), min_size=1, max_size=6), st.integers(1, 9))
def test_repeats_left_out_can_be_put_back(beginning: list[str], times: int) -> None:
    line = (beginning * times)[: len(beginning) * times - (times > 2)]
    kept = shortened(line)
    period = len(repeats(line))
    assert kept[0] == 0
    assert kept[-1] == len(line) - 1
    assert list(kept) == sorted(set(kept))
    gaps = [(one, other) for one, other in pairwise(kept) if other != one + 1]
    assert len(gaps) <= 1
    assert all((other - one - 1) % period == 0 for one, other in gaps)


def test_rows_with_repeats_left_out_keep_their_numbers() -> None:
    """Lap: six rows of blocks; rows 1, 2 and the last are drawn."""
    assert [word for word in words(drawn(TEA)["rows-top"]) if word.isdigit()] == ["1", "2", "6"]


def test_tops_that_differ_are_laid_apart_each() -> None:
    named = [called for called in drawn(LATE) if called.startswith("rows-")]
    assert named == ["rows-top-crib", "rows-top-throw", "rows-top-twin", "rows-top-queen"]
    said = Counter(words(drawn(LATE)["rows-top-crib"]))
    assert said == {"S": 4, "novels": 1, "poems": 1, "rhymes": 1}
