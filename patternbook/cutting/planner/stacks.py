"""Thrifty cutting: on from the plan of shared cutting, with pieces of different kinds one above the
other in a sub-cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from patternbook.cutting.planner.ground import Ground
from patternbook.cutting.planner.records import Task
from patternbook.cutting.planner.search import Incumbent, Search
from patternbook.cutting.planner.stack_zone import StackZone
from patternbook.cutting.planner.work import Work


def over_shared(shared: Sequence[Search], incumbent: Incumbent, work: Work) -> list[Search]:
    """Searches every ground once more. The plan that shared cutting found stays unless a better
    one is found; the bounds are those of thrifty cutting."""
    searches = []
    for before in shared:
        search = Search(_stacked(incumbent.task, before.ground), incumbent, work)
        search.use(before.master.recipes)
        search.begin([incumbent.plan] if incumbent.ground is before.ground else [])
        searches.append(search)
    for search in sorted(searches, key=lambda search: search.bound):
        search.finish()
    return searches


def _stacked(task: Task, ground: Ground) -> Ground:
    zones = [StackZone(ground.kinds, task.width, task.highest)]
    if ground.block and len(ground.zones) > 1:
        width = task.width - ground.block.width
        zones.append(StackZone(ground.kinds, width, task.highest, ground.block.length))
    return replace(ground, zones=tuple(zones))
