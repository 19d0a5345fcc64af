"""What is cut in vain is left out of as few strips as possible."""

from patternbook.cutting.planner.exactly import exactly
from patternbook.cutting.planner.ground import Plan, Recipe, plan_of
from patternbook.cutting.planner.zone import Strip


def plan(*strips: tuple[int, tuple[int, ...], int]) -> Plan:
    return plan_of((Recipe(0, Strip(height, counts)), times) for height, counts, times in strips)


def test_the_last_strip_holds_fewer() -> None:
    """Four strips of 16 are 64, 14 more than 50."""
    assert exactly(plan((20, (16,), 4)), (50,)) == plan((20, (2,), 1), (20, (16,), 3))


def test_a_strip_that_is_alone_of_its_kind_is_changed_first() -> None:
    """22 are cut, 20 are asked for: the single strip of 6 loses two."""
    before = plan((20, (8,), 2), (20, (6,), 1))
    assert exactly(before, (20,)) == plan((20, (4,), 1), (20, (8,), 2))


def test_one_strip_loses_of_both_kinds() -> None:
    """One A and two B too many: one of the three strips, not two."""
    before = plan((40, (3, 4), 3))
    assert exactly(before, (8, 10)) == plan((40, (2, 2), 1), (40, (3, 4), 2))


def test_a_strip_of_which_nothing_is_asked_is_not_cut() -> None:
    assert exactly(plan((20, (16,), 4)), (48,)) == plan((20, (16,), 3))
