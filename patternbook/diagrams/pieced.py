"""A unit sewn in a way of its own: a sketch of each action, and the unit as made."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from math import atan2, degrees, dist
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.as_made import headed, measured
from patternbook.diagrams.laid import MARK, Lying, draw, parts, turn_mark
from patternbook.diagrams.panels import Panel
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.pressing import free, slanted
from patternbook.diagrams.shape import Points, box, centre
from patternbook.diagrams.shown import Shown
from patternbook.diagrams.sketch import sketched, told
from patternbook.methods.made import SewnSeam, Sketch
from patternbook.quilt.records import PiecedMade, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Point

SHARES: Final = (0.5, 0.7, 0.3, 0.6, 0.4, 0.8, 0.2, 0.9, 0.1)  # where on a seam an arrow may stand
MOST_SEAMS: Final = 24
MOST_PLACES: Final = 4  # that a letter is told to lie at
NEAR: Final = 1e-6
# How far from the middle of a unit the centre of a part lies that is at a side, as a share.
ASIDE: Final = 0.08
PLACES: Final[Mapping[tuple[int, int], str]] = {
    (0, 0): "in the middle",
    (-1, 0): "at the left",
    (1, 0): "at the right",
    (0, -1): "at the top",
    (0, 1): "at the bottom",
    (-1, -1): "top left",
    (1, -1): "top right",
    (-1, 1): "bottom left",
    (1, 1): "bottom right",
}


def panels(size: Size, unit: Unit, made: PiecedMade) -> tuple[Panel, ...]:
    """The sketches, numbered as the actions are, then the unit as made."""
    sketches = [
        Panel(_sketch(size, action.sketch), number)
        for number, action in enumerate(made.actions, start=1)
        if action.sketch
    ]
    return (*sketches, Panel(lambda pen: _as_made(pen, size, unit, made)))


def _sketch(size: Size, sketch: Sketch) -> Callable[[Pen], None]:
    return partial(sketched, size=size, sketch=sketch)


def _as_made(pen: Pen, size: Size, unit: Unit, made: PiecedMade) -> None:
    """Patches and letters, pressing, measures."""
    raw = float(size.quilt.seam)
    sides = float(unit.finished.across), float(unit.finished.down)
    whole = Lying(unit.name, Lying.upright, 0, 0, *sides)
    found = draw(pen, size, whole, raw)
    turn_mark(pen, whole, raw + pen.pt(MARK + 1))  # outside, for a tip may lie at the edge
    bare = [one for one in found if not labels.inside(pen, one, one.letter)]
    _pressed(pen, size, unit, made)
    _tagged(pen, bare, sides[0] + raw)
    measured(pen, size, unit, whole, left=bool(bare))
    headed(pen, unit, -raw, -raw - pen.pt(MARK))


def _tagged(pen: Pen, bare: Sequence[Shown], right: float) -> None:
    """The letters of patches too small for them beside the unit, one of each."""
    tags: dict[str, labels.Tag] = {}
    for one in sorted(bare, key=lambda one: -one.x - one.across):
        tags.setdefault(one.letter, labels.Tag(*one.middle, one.letter))
    labels.beside(pen, list(tags.values()), right + pen.pt(12))


# ---- pressing


def _pressed(pen: Pen, size: Size, unit: Unit, made: PiecedMade) -> None:
    """An arrow over every seam where there is room for one; of very many seams, over the first
    of those that run and are pressed alike."""
    lying = list(parts(size, unit).values())
    many, shown = len(made.seams) > MOST_SEAMS, set[tuple[int, bool]]()
    ways = size.plans.sewing.pressing[unit.name].inner
    for seam, way in zip(made.seams, ways, strict=True):
        one, other = (_corners(lying[number]) for number in seam.between)
        along = _way(seam, one, other)
        toward = None if way is None else centre(_corners(lying[way]))
        kind = (_lean(along), way is None)
        for share in SHARES if kind not in shown else ():
            at, direction = _on(along, share)
            if free(pen, at, direction):
                beyond = _beyond(at, toward, centre(one), centre(other), way == seam.between[0])
                slanted(pen, at, direction, beyond)
                if many:
                    shown.add(kind)
                break


def _lean(way: Points) -> int:
    """How a seam lies, in degrees."""
    (ax, ay), (bx, by) = way[0], way[-1]
    return round(degrees(atan2(by - ay, bx - ax))) % 180


def _beyond(at: Point, toward: Point | None, one: Point, other: Point, first: bool) -> Point | None:
    """A point on the side that the seam is pressed to: as the two parts lie to one another."""
    if toward is None:
        return None
    start, end = (other, one) if first else (one, other)
    return at[0] + end[0] - start[0], at[1] + end[1] - start[1]


def _corners(part: Lying) -> Points:
    return part.points or box(part.x, part.y, part.across, part.down)


def _way(seam: SewnSeam, one: Points, other: Points) -> Points:
    """The seam as it runs: along the curve that both parts share, or straight."""
    ends = ((float(seam.start.x), float(seam.start.y)), (float(seam.end.x), float(seam.end.y)))
    for start, end in (ends, ends[::-1]):
        run = _run(one, start, end)
        if len(run) > 2 and all(any(dist(here, there) < NEAR for there in other) for here in run):
            return run
    return ends


def _run(points: Points, start: Point, end: Point) -> Points:
    """The corners of a part from one to another."""
    found = [number for number, point in enumerate(points) if dist(point, start) < NEAR]
    if not found:
        return ()
    round_ = (*points[found[0] :], *points[: found[0]])
    last = next((number for number, point in enumerate(round_) if dist(point, end) < NEAR), -1)
    return round_[: last + 1]


def _on(way: Points, share: float) -> tuple[Point, Point]:
    """The place at that share of a seam, and the direction of the seam there."""
    at = share * (len(way) - 1)
    first = min(int(at), len(way) - 2)
    (ax, ay), (bx, by) = way[first : first + 2]
    return (ax + (bx - ax) * (at - first), ay + (by - ay) * (at - first)), (bx - ax, by - ay)


# ---- words


def described(size: Size, unit: Unit, made: PiecedMade) -> str:
    """What lies where, its measure, its pressing, and what the sketches show."""
    measure = words.sides(unit.measure, size.system)
    steps = [
        f"{number}: {told(action.sketch)}"
        for number, action in enumerate(made.actions, start=1)
        if action.sketch
    ]
    sketches = f" Sketches: {'; '.join(steps)}." if steps else ""
    return (
        f"{words.title(unit.name)} as made: {', '.join(_places(size, unit))}. It measures "
        f"{measure} from raw edge to raw edge.{_pressing(size, unit)}{sketches}"
    )


def _places(size: Size, unit: Unit) -> Iterator[str]:
    """`A top left`, `B top right and bottom left`."""
    found: dict[str, dict[str, None]] = {}
    for part in parts(size, unit).values():
        where = "on top" if part.laid_on else _place(unit, part)
        found.setdefault(part.part, {})[where] = None
    for part_, where_all in found.items():
        yield f"{part_} {words.listed(where_all) if len(where_all) <= MOST_PLACES else 'all over'}"


def _place(unit: Unit, part: Lying) -> str:
    middle = centre(_corners(part))
    off = [at / float(side) - 0.5 for at, side in zip(middle, unit.finished, strict=True)]
    across, down = ((share > ASIDE) - (share < -ASIDE) for share in off)
    return PLACES[across, down]


def _pressing(size: Size, unit: Unit) -> str:
    """` Its seam is pressed toward A.`, where all are pressed alike."""
    ways = size.plans.sewing.pressing[unit.name].inner
    names = {None if way is None else unit.placed[way].part for way in ways}
    if len(names) != 1:
        return ""
    name = names.pop()
    seams = "Its seam is" if len(ways) == 1 else "Its seams are"
    return f" {seams} pressed {'open' if name is None else f'toward {name}'}."
