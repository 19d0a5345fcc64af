"""A plan laid by hand passes every check, and each way to spoil it is told by its name."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from patternbook.proof.quilting import prove_quilting
from patternbook.proof.recounted import OURS
from patternbook.quilting.records import BobbinChange, Drawn, Gap, Leg, Path, QuiltingPlan, Walk
from tests.proof.quilting import by_hand
from tests.proof.quilting.by_hand import FIRST, RIGHT, with_leg, with_legs

Spoil = Callable[[QuiltingPlan], QuiltingPlan]


def all_told(plan: QuiltingPlan) -> dict[str, list[str]]:
    """The messages of every code."""
    found: dict[str, list[str]] = {}
    for notice in prove_quilting(plan, by_hand.quilt()):
        assert (notice.severity, notice.stage, notice.hint) == ("error", "proof", OURS)
        found.setdefault(notice.code, []).append(notice.message)
    return found


def test_the_plan_is_sound() -> None:
    assert all_told(by_hand.plan()) == {}


def design_left_out(plan: QuiltingPlan) -> QuiltingPlan:
    return with_legs(plan, lambda _, leg: iter(() if leg.area == "P 2" else (leg,)))


def seam_left_out(plan: QuiltingPlan) -> QuiltingPlan:
    first, *rest = plan.stages
    return replace(plan, stages=(replace(first, walks=first.walks[:1]), *rest))


def moved(path: Path) -> Path:
    """The line at 9 by half an inch, and what joins it to its neighbours."""
    return tuple((x, 9.5 if y == 9 else y) for x, y in path)


def line_moved(plan: QuiltingPlan) -> QuiltingPlan:
    return with_leg(plan, 2, Leg("fill", moved(FIRST), "P 1"))


def line_moved_everywhere(plan: QuiltingPlan) -> QuiltingPlan:
    """In the design too, so that only the open place has changed, from 2 to 2 1/2."""
    fills = (replace(plan.fills[0], drawn=Drawn((moved(FIRST),), 2.0)), plan.fills[1])
    return replace(line_moved(plan), fills=fills)


def beyond_the_edge(plan: QuiltingPlan) -> QuiltingPlan:
    path = tuple((-0.5, y) if x == 0.5 else (x, y) for x, y in FIRST)
    fills = (replace(plan.fills[0], drawn=Drawn((path,), 2.0)), plan.fills[1])
    return replace(with_leg(plan, 2, Leg("fill", path, "P 1")), fills=fills)


def in_the_margin(plan: QuiltingPlan) -> QuiltingPlan:
    path = tuple((0.25, y) if x == 0.5 else (x, y) for x, y in FIRST)
    fills = (replace(plan.fills[0], drawn=Drawn((path,), 2.0)), plan.fills[1])
    return replace(with_leg(plan, 2, Leg("fill", path, "P 1")), fills=fills)


def astray(plan: QuiltingPlan) -> QuiltingPlan:
    """On its way to the second design the thread takes a ditch where there is no seam."""
    ways = ((9.75, 19), (9.75, 19.5), (10, 19.5), (10, 19))
    return with_leg(plan, 3, Leg("ditch", ways))


def not_again(plan: QuiltingPlan) -> QuiltingPlan:
    """The walk of the designs comes first, on a seam that nobody has stitched yet."""
    return replace(plan, stages=plan.stages[::-1])


def long_step(plan: QuiltingPlan) -> QuiltingPlan:
    """From the first design straight to the end of the second."""
    return with_legs(
        plan,
        lambda number, leg: iter(
            () if number in {4, 6, 7} else
            (Leg("step", ((9.75, 19), (10.25, 1))),) if number == 3 else
            (Leg("fill", leg.path[::-1], "P 2"),) if number == 5 else
            (leg,)
        ),
    )  # fmt: skip


def off_the_edge(plan: QuiltingPlan) -> QuiltingPlan:
    """Along the edge, and nearly half an inch within it."""
    along = Leg("edge", ((10, 0), (10, 0.4), (12, 0.4)))
    return with_legs(
        plan,
        lambda number, leg: iter((leg, along) if number == 7 else (leg,)),
    )


def wrong_design(plan: QuiltingPlan) -> QuiltingPlan:
    return with_leg(plan, 2, Leg("fill", FIRST, "P 2"))


def gap(low: float, high: float, at: tuple[float, float] = (5, 2)) -> Spoil:
    return lambda plan: replace(plan, gap=Gap(low, high, at))


def bare_gap(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, gap_bare=plan.gap)


def sums(**changed: object) -> Spoil:
    return lambda plan: replace(plan, sums=replace(plan.sums, **changed))  # type: ignore[arg-type]


def area_left_out(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, divided=replace(plan.divided, areas=plan.divided.areas[:2]))


def area_twice(plan: QuiltingPlan) -> QuiltingPlan:
    wider = replace(RIGHT, shape=shapely.box(9, 0, 20, 20))
    areas = (plan.divided.areas[0], wider, plan.divided.areas[2])
    return replace(plan, divided=replace(plan.divided, areas=areas))


def area_unfilled(plan: QuiltingPlan) -> QuiltingPlan:
    areas = (*plan.divided.areas[:2], replace(plan.divided.areas[2], excluded=False))
    return replace(plan, divided=replace(plan.divided, areas=areas))


def in_the_excluded(plan: QuiltingPlan) -> QuiltingPlan:
    more = Leg("fill", ((10, 20), (10, 21), (9, 21)), "Q 1")
    return with_legs(
        plan,
        lambda number, leg: iter((leg, more) if number == 3 else (leg,)),
    )


def density(plan: QuiltingPlan) -> QuiltingPlan:
    return replace(plan, fills=(replace(plan.fills[0], density=0.6), plan.fills[1]))


def stage(number: int, **changed: object) -> Spoil:
    def spoil(plan: QuiltingPlan) -> QuiltingPlan:
        stages = list(plan.stages)
        stages[number] = replace(stages[number], **changed)  # type: ignore[arg-type]
        return replace(plan, stages=tuple(stages))

    return spoil


def dropped(which: int) -> Spoil:
    return lambda plan: with_leg(plan, which)


def change(*told: BobbinChange) -> Spoil:
    return sums(changes=told, bobbins=len(told) + 1)


@pytest.mark.parametrize(
    ("spoil", "code", "words"),
    [
        (design_left_out, "quilting-missed", "the design of area P 2 is not stitched"),
        (design_left_out, "quilting-open", "a grid over the top finds between"),
        (seam_left_out, "quilting-missed", "a line of the first stage (ditch) is not stitched"),
        (line_moved, "quilting-missed", "the design of area P 1 is not stitched"),
        (line_moved, "quilting-travel", "is no part of the design of its area"),
        (line_moved_everywhere, "quilting-open", "is told as between 2″ and 2″"),
        *((dropped(number), "quilting-jump", "jumps over") for number in range(1, 7)),
        (beyond_the_edge, "quilting-outside", "(fill) is stitched beyond the edge"),
        (in_the_margin, "quilting-outside", "kept free for the binding"),
        (off_the_edge, "quilting-outside", "kept free for the binding"),
        (off_the_edge, "quilting-travel", "lies on no line for it (edge)"),
        (astray, "quilting-travel", "lies on no line for it (ditch)"),
        (not_again, "quilting-travel", "is called stitched before, and was not"),
        (long_step, "quilting-travel", "is no step"),
        (wrong_design, "quilting-travel", "is no part of the design of its area"),
        (gap(1.6, 1.6), "quilting-open", "is told as between 1.6″ and 1.6″ (the edge counted)"),
        (gap(2.5, 2.5), "quilting-open", "is told as between 2.5″ and 2.5″ (the edge counted)"),
        (gap(2, 2, (5, 1.5)), "quilting-open", "the place told as the widest"),
        (gap(2, 2, (-1, 2)), "quilting-open", "the place told as the widest"),
        (bare_gap, "quilting-open", "(the edge not counted)"),
        (sums(starts=2), "quilting-starts", "2 starts are told, and 3 walks are sewn"),
        (sums(bobbins=2), "quilting-starts", "2 bobbins are told, and 0 changes"),
        (sums(stitched=250.0), "quilting-again", "the whole length is told as 250″"),
        (sums(once=240.0), "quilting-again", "the length without doubles is told as 240″"),
        (sums(passes={1: 258.0, 3: 2.0}), "quilting-again", "the same, each line once"),
        (sums(passes={1: 262.0}), "quilting-again", "by how often it is stitched"),
        (sums(thread_top=12.0), "quilting-thread", "12.0 yd of top thread are told, and 13.1"),
        (sums(thread_bobbin=26.3), "quilting-thread", "26.3 yd of bobbin thread are told"),
        (sums(hours=(0.01, 1.0)), "quilting-thread", "hours are told"),
        (sums(hours=(2.0, 1.0)), "quilting-thread", "hours are told"),
        (sums(evenness=0.2), "quilting-even", "is told to differ by 20.0% from area to area"),
        (density, "quilting-even", "area P 1 is told as 0.600"),
        (area_left_out, "quilting-tiling", "40.00 square in lies in no area"),
        (area_twice, "quilting-tiling", "20.00 square in lies in two areas"),
        (area_unfilled, "quilting-missed", "area Q 1 has no design"),
        (in_the_excluded, "quilting-excluded", "area Q 1 is excluded"),
        (stage(0, needed=35.0, extra=5.0), "quilting-extra", "are told as 35″"),
        (stage(0, bound=5.0), "quilting-extra", "adds less than the least that is proven"),
        (stage(1, extra=1.0), "quilting-extra", "its walks come to"),
        (stage(1, bound=1.0, proven=True), "quilting-extra", "adds more than the least"),
        (change(BobbinChange(2, 5, (9, 9), "inside", 0.1)), "quilting-starts", "on its walk"),
        (change(BobbinChange(1, 0, (0, 9), "edge", 0.1)), "quilting-starts", "on its walk"),
        (change(BobbinChange(1, 0, (10, 0), "edge", 1.1)), "quilting-starts", "after 110% of"),
    ],
)  # fmt: skip
def test_spoiled(spoil: Spoil, code: str, words: str) -> None:
    messages = all_told(spoil(by_hand.plan())).get(code, [])
    assert any(words in message for message in messages), messages


def test_changes_that_are_not_in_order() -> None:
    one = BobbinChange(1, 0, (10, 0), "edge", 0.1)
    spoiled = change(one, replace_stage(one, 0))(by_hand.plan())
    assert "not in order" in all_told(spoiled)["quilting-starts"][0]


def replace_stage(one: BobbinChange, stage: int) -> BobbinChange:
    return one._replace(stage=stage)


def test_a_channel_between_its_own_lines_is_not_uneven() -> None:
    """Nothing is drawn in the second square; of one area alone there is no spread."""
    plan = with_legs(by_hand.plan(), lambda _, leg: iter(() if leg.area == "P 2" else (leg,)))
    bare = replace(plan.fills[1], drawn=Drawn((), 0.0), density=0.0)
    assert "quilting-even" not in all_told(replace(plan, fills=(plan.fills[0], bare)))


def test_a_walk_without_a_stitch() -> None:
    plan = by_hand.plan()
    last = replace(plan.stages[-1], walks=(*plan.stages[-1].walks, Walk(())))
    assert "quilting-jump" in all_told(replace(plan, stages=(*plan.stages[:-1], last)))


def test_a_bobbin_that_runs_out() -> None:
    """65 yards last for 65 × 36 / (1.4 × 1.15) = 1,453 in; four times the walks are 1,056."""
    plan = by_hand.plan()
    many = tuple(walk for _ in range(6) for walk in plan.stages[1].walks)
    longer = replace(plan, stages=(plan.stages[0], replace(plan.stages[1], walks=many)))
    found = all_told(longer)["quilting-starts"]
    assert "3 starts are told, and 8 walks are sewn." in found
    assert not any("emptied" in message for message in found)
    many = tuple(walk for _ in range(7) for walk in plan.stages[1].walks)
    longer = replace(plan, stages=(plan.stages[0], replace(plan.stages[1], walks=many)))
    found = all_told(longer)["quilting-starts"]
    assert "1 bobbins are told, and 2 are emptied." in found


def test_over_again_and_not_so_called() -> None:
    """The seam is stitched before; a leg that goes a little farther than an earlier one is new."""
    silent = with_leg(by_hand.plan(), 7, Leg("ditch", ((10, 1), (10, 0))))
    assert "was stitched before, and not so called" in all_told(silent)["quilting-travel"][0]
    edge = Leg("edge", ((10, 0), (12, 0))), Leg("edge", ((12, 0), (10, 0)), again=True)
    farther = Leg("edge", ((10, 0), (12.07, 0)))
    longer = with_legs(
        by_hand.plan(), lambda number, leg: iter((leg, *edge, farther) if number == 7 else (leg,))
    )
    assert "quilting-travel" not in all_told(longer)
