"""A cutting plan for one cloth and a bound that no plan of its manner is below."""

from __future__ import annotations

from typing import NamedTuple

from patternbook.cutting.planner.certificate import for_any_block
from patternbook.cutting.planner.easiest import easiest, tidiest
from patternbook.cutting.planner.exactly import exactly
from patternbook.cutting.planner.ground import BESIDE, Ground, Plan
from patternbook.cutting.planner.lengthwise import blocks
from patternbook.cutting.planner.plain_zone import PlainZone
from patternbook.cutting.planner.records import (
    Answer,
    Block,
    Kind,
    Limits,
    Manner,
    Prices,
    StripLaid,
    Task,
)
from patternbook.cutting.planner.search import Incumbent, Search
from patternbook.cutting.planner.shelves import by_shelves, own_strips
from patternbook.cutting.planner.stacks import over_shared
from patternbook.cutting.planner.work import Work
from patternbook.cutting.planner.zone import Zone


def solve(task: Task, limits: Limits = Limits()) -> Answer:  # noqa: B008 - a tuple
    """The plan. Every kind must fit the cloth: strips no wider than it is long (`Kind.along`, or
    `across` if it turns, is at most the width); the block's pieces no wider than the cloth."""
    kinds = tuple(sorted((kind for kind in task.kinds if kind.number), key=_in_order))
    work = Work(limits)
    options, every_block = blocks(task.lengthwise, task.width, task.longest)
    if not kinds:
        return _block_alone(task, options, every_block)
    incumbent = Incumbent(task, limits.goal == "length")
    grounds = [_ground(task, kinds, block) for block in options or (None,)]
    searches = [Search(ground, incumbent, work) for ground in grounds]
    for search in searches:
        shelves = by_shelves(search.ground, task.manner, task.width)
        search.begin([own_strips(search.ground), *shelves])
    for search in sorted(searches, key=lambda search: search.bound):
        search.finish()
    deciding = over_shared(searches, incumbent, work) if task.manner == "thrifty" else searches
    proof = _proof(task, deciding, every_block)
    if limits.easing:
        _ease(incumbent, [*searches, *deciding])
    return _answer(task, incumbent, proof, work)


class _Proof(NamedTuple):
    """What no plan is below, the certificates, and whether the search was settled."""

    bound: int
    prices: tuple[Prices, ...]
    settled: bool


def _proof(task: Task, searches: list[Search], every_block: bool) -> _Proof:
    """Of the grounds together; where there are blocks that were not tried, of those too."""
    prices = [search.prices for search in searches]
    bounds = [search.bound for search in searches]
    settled = every_block and all(search.closed for search in searches)
    if not every_block:
        first = searches[0]
        prices.append(for_any_block(first.ground, first.prices, task.width, task.lengthwise))
        bounds.append(prices[-1].bound)
    return _Proof(min(bounds), tuple(prices), settled)


def _ease(incumbent: Incumbent, searches: list[Search]) -> None:
    """Takes an easier plan instead that is as good."""
    search = next(search for search in searches if search.ground is incumbent.ground)
    if incumbent.by_length:
        incumbent.plan = tidiest(search, incumbent.plan)
    else:
        incumbent.plan = easiest(search, incumbent.plan, incumbent.as_good)


def _in_order(kind: Kind) -> tuple[int, int, bool, bool, int, str]:
    """The order in which kinds are reckoned with, whatever that of the task."""
    return -kind.across, -kind.along, kind.turns, kind.own_width, kind.number, kind.name


def _ground(task: Task, kinds: tuple[Kind, ...], block: Block | None) -> Ground:
    # Thrifty cutting begins where shared cutting came to, with strips as wide as any piece.
    thrifty = task.manner == "thrifty"
    manner: Manner = "shared" if thrifty else task.manner
    highest = None if thrifty else task.highest
    zones: list[Zone] = [PlainZone(kinds, task.width, manner, highest)]
    if block and block.width < task.width:
        width = task.width - block.width
        beside = PlainZone(kinds, width, manner, highest, block.length)
        zones += [beside] if beside.heights else []
    return Ground(kinds, tuple(zones), block)


def _block_alone(task: Task, options: list[Block], every_block: bool) -> Answer:
    """Nothing but lengthwise pieces: the shortest block."""
    block = options[0] if options else None
    length = block.length if block else 0
    size = (block.width, block.length) if block else (0, 0)
    bound = length if every_block else max(kind.along for kind in task.lengthwise)
    prices = (Prices((), size, bound=length),)
    return Answer(task, (), block, length, bound, bound, prices, not every_block)


def _answer(task: Task, incumbent: Incumbent, proof: _Proof, work: Work) -> Answer:
    ground = incumbent.ground
    assert ground is not None  # noqa: S101 - strips of the kinds' own are always a plan
    plan = exactly(incumbent.plan, ground.demand)
    length = ground.length(plan)
    by_prices = min(length, *(priced.bound for priced in proof.prices))
    return Answer(
        task,
        tuple(_laid(ground, plan)),
        ground.block,
        length,
        min(length, proof.bound),
        by_prices,
        proof.prices,
        not proof.settled,
        work.told(),
    )


def _laid(ground: Ground, plan: Plan) -> list[StripLaid]:
    return [
        StripLaid(
            recipe.height,
            ground.zones[recipe.zone].layout(recipe.strip),
            times,
            recipe.zone == BESIDE,
        )
        for recipe, times in plan
    ]
