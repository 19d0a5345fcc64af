"""Many prints mixed by chance: no two alike touch, all are used evenly, always the same way."""

import subprocess
import sys
from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.quilt.joins import touching
from patternbook.quilt.place import patches
from patternbook.quilt.prints import mixed, nameless
from patternbook.quilt.records import CutSize, Quilt
from tests.sewing.hand import Hand, bricks, grid

FEW = st.integers(1, 7)


def alike_neighbours(quilt: Quilt) -> int:
    prints, _ = mixed(quilt)
    pairs = touching(patches(quilt, "top"))
    return sum(one in prints and prints[one] == prints.get(other) for one, other in pairs)


@given(FEW, FEW, st.integers(5, 12), st.integers(0, 5))
def test_five_prints_are_enough_for_any_grid(
    across: int, down: int, prints: int, seed: int
) -> None:
    """A square has four neighbours, so one print in five is always free."""
    made = grid(across, down).fabric("scraps", "A", prints=prints, seed=seed).quilt()
    assert alike_neighbours(made) == 0
    assert mixed(made)[1] == ()


@given(st.integers(2, 6), FEW, st.integers(7, 12), st.integers(0, 5))
def test_seven_prints_are_enough_for_a_brick_wall(
    across: int, down: int, prints: int, seed: int
) -> None:
    """A brick has six neighbours."""
    made = bricks(across, down).fabric("scraps", "A H", prints=prints, seed=seed).quilt()
    assert alike_neighbours(made) == 0


@given(FEW, FEW, st.integers(0, 5))
def test_two_prints_fall_into_a_chequerboard(across: int, down: int, seed: int) -> None:
    made = grid(across, down).fabric("scraps", "A", prints=2, seed=seed).quilt()
    assert alike_neighbours(made) == 0


@given(FEW, FEW, st.integers(9, 20), st.integers(0, 5))
def test_prints_are_used_evenly(across: int, down: int, prints: int, seed: int) -> None:
    made = grid(across, down).fabric("scraps", "A", prints=prints, seed=seed).quilt()
    used = Counter(mixed(made)[0].values())
    counts = [used[number] for number in range(1, prints + 1)]
    assert max(counts) - min(counts) <= 2
    assert sum(counts) == across * down


def test_every_patch_shows_a_print_that_there_is() -> None:
    made = grid(6, 7).fabric("scraps", "A", prints=6).quilt()
    assert set(mixed(made)[0].values()) == {1, 2, 3, 4, 5, 6}


def test_another_seed_gives_another_arrangement() -> None:
    by_seed = [
        mixed(grid(5, 5).fabric("scraps", "A", prints=6, seed=seed).quilt())[0] for seed in (1, 2)
    ]
    assert by_seed[0] != by_seed[1]


def test_no_print_takes_more_than_its_one_strip() -> None:
    """A roll of eight strips, each 40 long, one a print: 30 bars of 8½ and 6½ are 225."""
    hand = Hand(A=(8, 2), B=(6, 2))
    hand.columns("tall", " ".join("A" * 15)).columns("low", " ".join("B" * 15))
    hand.fabric(
        "roll",
        "A B",
        form="strip roll",
        size=CutSize(Fraction(5, 2), Fraction(40)),
        prints=8,
        pack=8,
    )
    made = hand.rows("top", "tall low/half").quilt()
    laid, (prints, notices) = patches(made, "top"), mixed(made)
    used: Counter[int] = Counter()
    for number, shown in prints.items():
        used[shown] += 17 if laid[number].letter == "A" else 13  # halves of an inch
    assert max(used.values()) <= 80
    assert notices == ()
    assert alike_neighbours(made) == 0


def test_too_few_prints_are_told_with_how_often_they_touch() -> None:
    """In a brick wall three bricks touch one another in turn, which two prints cannot part."""
    made = bricks(3, 3).fabric("scraps", "A H", prints=2).quilt()
    (notice,) = mixed(made)[1]
    assert (notice.code, notice.severity) == ("prints-touch", "advice")
    assert f"touch at {alike_neighbours(made)} places" in notice.message
    assert mixed(bricks(3, 3).fabric("scraps", "A H", prints=2, apart=False).quilt())[1] == ()


def test_one_print_per_group_of_one_letter_that_touches() -> None:
    """A plus is five squares of one letter; two pluses of one letter apart are two groups."""
    hand = Hand(A=(2, 2), B=(2, 2))
    hand.fabric("scraps", "A B", prints=9, one_print_per="group")
    made = hand.rows("top", "B A B B", "A A A B", "B A B A").quilt()
    prints, _ = mixed(made)
    plus = {prints[number] for number in (1, 4, 5, 6, 9)}
    assert len(plus) == 1
    assert prints[11] not in {prints[7], prints[10]}
    assert prints[2] == prints[3] == prints[7]


def test_one_print_per_block() -> None:
    hand = Hand(A=(2, 2), B=(2, 2)).fabric("scraps", "A", prints=4, one_print_per="block")
    made = hand.rows("block", "A B", "B A").rows("top", "block block", "block block").quilt()
    prints, _ = mixed(made)
    laid = patches(made, "top")
    by_block: dict[str, set[int]] = {}
    for number, shown in prints.items():
        by_block.setdefault("/".join(laid[number].within), set()).add(shown)
    assert sorted(map(len, by_block.values())) == [1, 1, 1, 1]
    assert set().union(*by_block.values()) == {1, 2, 3, 4}


def test_slices_of_one_set_show_its_prints() -> None:
    """Two sets of four strips give ten slices: there are two rows of prints, each five times."""
    hand = Hand(A=(2, None)).fabric("scraps", "A", prints=8)
    hand.strips("ribbon", "A A A A", 2, per_set=5, sets=2)
    made = hand.rows("top", *["ribbon", "ribbon/half"] * 5).quilt()
    prints, notices = mixed(made)
    # Patches are numbered as the slice is made, so a turned one reads the same.
    slices = Counter(
        tuple(prints[number + strip] for strip in range(4)) for number in range(0, 40, 4)
    )
    assert sorted(slices.values()) == [5, 5]
    assert len({shown for slice_ in slices for shown in slice_}) == 8
    assert notices == ()


def test_one_print_per_something_that_is_not_there() -> None:
    hand = grid(2, 2).fabric("scraps", "A", prints=3, one_print_per="tops")
    (notice,) = nameless(hand.quilt())
    assert (notice.code, notice.severity, notice.hint) == (
        "print-unit",
        "error",
        "Did you mean top?",
    )
    assert list(nameless(grid(2, 2).fabric("scraps", "A", prints=3).quilt())) == []


def test_nothing_is_mixed_without_a_top_or_a_choice() -> None:
    assert mixed(grid(2, 2).quilt()) == ({}, ())
    assert mixed(grid(2, 2).fabric("scraps", "A", prints=3).quilt(top=None)) == ({}, ())


@pytest.mark.parametrize("hash_seed", ["0", "1", "4242"])
def test_the_mixture_does_not_depend_on_the_hash_seed(hash_seed: str) -> None:
    text = (
        "from tests.sewing.hand import bricks\n"
        "from patternbook.quilt.prints import mixed\n"
        "print(mixed(bricks(5, 6).fabric('scraps', 'A H', prints=5).quilt())[0])"
    )
    run = subprocess.run(
        [sys.executable, "-c", text],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONHASHSEED": hash_seed},
    )
    here = mixed(bricks(5, 6).fabric("scraps", "A H", prints=5).quilt())[0]
    assert run.stdout.strip() == str(here)


def test_patches_of_different_fabrics_may_show_the_same_number() -> None:
    hand = Hand(A=(2, 2), B=(2, 2)).fabric("one", "A", prints=2).fabric("two", "B", prints=2)
    made = hand.rows("top", *[" ".join(row) for row in ("ABAB", "BABA")]).quilt()
    prints, notices = mixed(made)
    assert notices == ()
    assert Counter(prints.values()) == {1: 4, 2: 4}
    assert set(prints) == set(range(8))
