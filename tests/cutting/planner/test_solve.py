"""Plans that can be reckoned by hand, the sums beside them. Lengths are eighths of an inch, 320 to
a usable width of 40 inches (common practice, no source)."""

import pytest

from patternbook.cutting.planner.records import Answer, Kind, Limits, Manner, Task
from patternbook.cutting.planner.solve import solve
from tests.benchmarks.cut_lists import cut_lists
from tests.benchmarks.cut_runs import asked
from tests.cutting.planner.small import EIGHTH_YARD, kind, told

LENGTH = Limits(goal="length")


def cut(*kinds: Kind, manner: Manner = "shared", width: int = 320, **more: object) -> Answer:
    return solve(Task(width, kinds, manner, **more), LENGTH)  # type: ignore[arg-type]


def test_one_kind_takes_whole_strips() -> None:
    """40 ÷ 2½ = 16 to a strip; 50 ÷ 16 = 3⅛, so 4 strips of 2½ inches are 10 inches."""
    answer = cut(kind("A", 20, 20, 50))
    assert answer.length == answer.bound == 80
    assert told(answer) == ["3 × 20: 16 A 20×20", "1 × 20: 2 A 20×20"]


def test_what_is_bought_is_rounded_up_to_the_step() -> None:
    """10 inches and a spare of 4 are 14 inches; in eighths of a yard (4½ inches) four."""
    answer = solve(Task(320, (kind("A", 20, 20, 50),), step=EIGHTH_YARD, allowance=32))
    assert (answer.bought, answer.bought_bound, answer.proven) == (4, 4, True)


def test_a_stack_from_one_sub_cut() -> None:
    """A strip of 15½ inches gives two of 7½ to a sub-cut: 2 A at 12½ are 25 inches long, and the
    15 that are left take two sub-cuts of 7½, four B."""
    pieces = kind("A", 100, 124, 2, turns=False), kind("B", 60, 60, 4)
    assert told(cut(*pieces)) == ["1 × 124: 2 A 100×124, 4 B 60×60 in 2"]
    assert cut(*pieces).length == 124
    # Trimmed, not stacked: two B beside the A, two in a strip of their own.
    assert cut(*pieces, manner="trimmed").length == 124 + 60
    # Even: the B in strips of their own, which take five.
    assert told(cut(*pieces, manner="even")) == ["1 × 124: 2 A 100×124", "1 × 60: 4 B 60×60"]


def test_turned_where_that_is_less_cloth() -> None:
    """6½ × 3½: 6 to a strip of 3½ inches, or 11 to one of 6½. Eleven: two strips of 3½ are 7
    inches, one of 6½ is less."""
    assert told(cut(kind("A", 52, 28, 11))) == ["1 × 52: 11 A 28×52"]
    assert cut(kind("A", 52, 28, 11, turns=False)).length == 56


def test_own_width_is_neither_trimmed_nor_stacked_nor_turned() -> None:
    """Strips of the binding, 2½ inches: not from the rest of a strip 5 inches wide."""
    pieces = kind("A", 40, 40, 4), kind("B", 100, 20, 2, turns=False)
    assert cut(*pieces).length == 40
    own = pieces[0], pieces[1]._replace(own_width=True)
    assert told(cut(*own)) == ["1 × 40: 4 A 40×40", "1 × 20: 2 B 100×20"]


def test_no_strip_is_wider_than_the_widest_allowed() -> None:
    """A of 8 × 20 inches could stand in a strip of 20; no strip is wider than 10, and B is."""
    pieces = kind("A", 64, 160, 4), kind("B", 100, 90, 1)
    assert cut(*pieces, width=360).length == 160
    capped = cut(*pieces, width=360, highest=80)
    assert {strip.height for strip in capped.strips} == {64, 90}


def test_strips_beside_the_block_cost_nothing() -> None:
    """Two borders 5 inches wide and 38 long lie side by side: 10 inches of the 42. The 32 beside
    them hold squares of 4 inches 8 to a strip; 9 strips are 36 inches, 72 squares."""
    borders = (kind("side", 304, 40, 2, turns=False),)
    answer = cut(kind("A", 32, 32, 72), width=336, lengthwise=borders)
    assert (answer.length, answer.bound) == (304, 304)
    assert told(answer) == ["9 × 32 beside: 8 A 32×32"]
    assert answer.block is not None
    assert (answer.block.width, answer.block.length) == (80, 304)
    # Another 8 lie below the block, in one strip more.
    more = cut(kind("A", 32, 32, 80), width=336, lengthwise=borders)
    assert more.length == 304 + 32


def test_where_not_every_block_was_tried_the_bound_is_of_any() -> None:
    """Three times forty sashes lie in more ways than are tried. All pieces together are as large
    as 40 × (100 + 101 + 102) × 12 ÷ 336 = 432⁶⁄₇ of the cloth and the squares' 300 × 32 × 32 ÷ 336
    = 914²⁄₇: no plan is shorter than 1348 eighths."""
    sashes = tuple(kind(f"S{n}", 100 + n, 12, 40) for n in range(3))
    answer = cut(kind("A", 32, 32, 300), width=336, lengthwise=sashes)
    assert 1348 <= answer.bound <= answer.length
    assert answer.limit_hit


def test_nothing_but_lengthwise_pieces() -> None:
    answer = cut(width=336, lengthwise=(kind("side", 304, 44, 2, turns=False),))
    assert (answer.length, answer.bound, answer.strips) == (304, 304, ())


def test_nothing_at_all() -> None:
    answer = cut(kind("A", 20, 20, 0))
    assert (answer.length, answer.bound, answer.strips, answer.block) == (0, 0, (), None)


def test_the_easy_plan_buys_no_more() -> None:
    """A log cabin, eight lengths of one width: the search mixes them in many ways, each a recipe
    that the cutter has to mind; for as many eighths of a yard fewer will do."""
    task = asked(cut_lists()["f05logs-queen"], "shared")
    first, easy = solve(task, Limits(easing=0)), solve(task)
    assert easy.bought == first.bought == first.bought_bound
    assert len(easy.strips) < len(first.strips)
    assert sum(strip.times for strip in easy.strips) < sum(strip.times for strip in first.strips)


@pytest.mark.parametrize("limit", [{"rounds": 0}, {"nodes": 1}])
def test_where_work_ends_plan_and_bound_are_both_told(limit: dict[str, int]) -> None:
    """A list that is proven only by trying every strip (`cut_lists`)."""
    task = asked(cut_lists()["f20runner-throw"], "shared")
    stopped = Limits(dives=0, patterns=0, easing=0, goal="length")._replace(**limit)  # type: ignore[arg-type]
    answer = solve(task, stopped)
    assert answer.limit_hit
    assert answer.bound < answer.length
    whole = solve(task)
    assert answer.bound <= whole.length
    assert whole.bound <= answer.length
    assert not whole.limit_hit


def test_a_hundred_kits_are_no_more_than_a_hundred_times_one() -> None:
    pieces = kind("A", 52, 28, 31), kind("B", 40, 40, 57), kind("C", 20, 20, 200)
    one = solve(Task(336, pieces, step=EIGHTH_YARD), LENGTH)
    many = tuple(each._replace(number=each.number * 100) for each in pieces)
    kits = solve(Task(336, many, step=EIGHTH_YARD), LENGTH)
    assert kits.proven
    assert kits.length <= 100 * one.length


def test_nothing_is_printed(capfd: pytest.CaptureFixture[str]) -> None:
    pieces = kind("A", 52, 28, 31), kind("B", 40, 40, 57), kind("C", 20, 36, 20)
    solve(Task(336, pieces, step=EIGHTH_YARD))
    solve(Task(336, pieces), LENGTH)
    assert capfd.readouterr() == ("", "")
