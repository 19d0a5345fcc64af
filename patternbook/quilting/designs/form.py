"""What a quilting design says of itself, and the room that it is drawn in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from shapely import Polygon

from patternbook.quilting.records import AreaKind, Drawn, Foot, Path, Rules, Spot


class Room(NamedTuple):
    """The place for one design.

    `shape` is the area; `free` what of it a design may use that keeps clear of seams and of the
    finished edge (the largest part, where it falls in several; empty where nothing is left).
    `edge` is the finished edge of the whole top: only lines that run up to it may come closer
    than `free` does. `corners` are the corners of the patches in the area (for lines through the
    corners of squares), `centre` the middle line of a channel.
    """

    shape: Polygon
    free: Polygon
    edge: Polygon
    kind: AreaKind
    rules: Rules
    corners: tuple[Spot, ...] = ()
    centre: Path | None = None


Draw = Callable[[Room, float, int], Drawn | None]


@dataclass(frozen=True)
class Design:
    """One design. `draw` takes the room, the spacing wanted (in the pattern's unit) and a seed,
    and gives nothing where it does not come out in that room.

    `kinds` are the kinds of area that it is made for, the best first; `plain`: it goes over busy
    piecing; else it wants open ground. `suits` tells from the room whether to try it. `sewn` says
    for each foot in which it can be sewn, how; `foot` is the usual one. `corner` is the way out
    of a corner, `element` one element of it to practise, about `size` inches across, from where
    to start to where to stop.
    """

    name: str
    foot: Foot
    plain: bool
    kinds: tuple[AreaKind, ...]
    suits: Callable[[Room], bool]
    draw: Draw
    sewn: Mapping[Foot, str]
    corner: str
    element: Callable[[], tuple[Path, ...]]
