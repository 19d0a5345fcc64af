"""The back of a block: every seam with its allowances lying as they are pressed."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Final, NamedTuple

from patternbook.diagrams import labels, words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.shape import Points, around, clipped, reaching, turned
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import Shown
from patternbook.quilt.place import patches
from patternbook.quilt.points import points_of
from patternbook.quilt.pressing import PressingPlan, Way
from patternbook.quilt.records import LayoutMade, Line, PiecedMade, Placed, Quilt, Unit
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill, Point
from patternbook.strokes.tones import tint

MOST: Final = (1.7, 1.9)
SCALE: Final = 0.16  # inches on paper for an inch of cloth, at most
FEWEST: Final = 4  # seams, below which the front's arrows say it all
PALE: Final = 0.72
FLAP: Final = 0.3
NEAR: Final = 1e-6
WAYS: Final[Mapping[Way, Point]] = {
    "left": (-1.0, 0.0),
    "right": (1.0, 0.0),
    "up": (0.0, -1.0),
    "down": (0.0, 1.0),
}


class Seam(NamedTuple):
    """A seam as it lies in a unit, and the way its allowances are pressed; None: open."""

    start: Point
    end: Point
    way: Point | None


def backs(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for each unit that is a block: rows or columns of more than one part."""
    for size, unit in pattern.units():
        if isinstance(unit.made, LayoutMade) and len(unit.made.lines) > 1:
            found = tuple(seams(size.quilt, size.plans.sewing.pressing, unit.name))
            if len(found) >= FEWEST:
                yield _back(pattern, size, unit, found)


def seams(quilt: Quilt, plans: Mapping[str, PressingPlan], unit: str) -> Iterator[Seam]:
    """All seams of a unit in the order they are sewn, those inside its parts first."""
    of = quilt.units[unit]
    for part in of.placed:
        if part.part in quilt.units:
            inner = quilt.units[part.part].finished
            sides = float(inner.across), float(inner.down)
            for seam in seams(quilt, plans, part.part):
                yield _moved(seam, part, sides)
    yield from _own(of, plans[unit])


def _moved(seam: Seam, part: Placed, sides: tuple[float, float]) -> Seam:
    x, y = float(part.x), float(part.y)
    tip = None
    if seam.way is not None:
        tip = (seam.start[0] + seam.way[0], seam.start[1] + seam.way[1])
    points = [point for point in (seam.start, seam.end, tip) if point is not None]
    lie = [_lies(point, part, sides) for point in points]
    moved = [(a + x, b + y) for a, b in lie]
    way = (moved[2][0] - moved[0][0], moved[2][1] - moved[0][1]) if tip else None
    return Seam(moved[0], moved[1], way)


def _lies(point: Point, part: Placed, sides: tuple[float, float]) -> Point:
    return turned((point,), *sides, part.turn)[0]


def _own(unit: Unit, plan: PressingPlan) -> Iterator[Seam]:
    """The seams that a unit itself sews."""
    if isinstance(unit.made, PiecedMade):
        yield from _inner(unit, unit.made, plan)
    elif isinstance(unit.made, LayoutMade):
        for number, line in enumerate(unit.made.lines):
            yield from _of_line(line.parts, plan.lines[number].seams, upright=line.role == "column")
        yield from _between(unit.made.lines, plan.between, upright=unit.made.by == "columns")
    else:
        yield from _of_line(unit.placed, plan.lines[0].seams, upright=False)


def _inner(unit: Unit, made: PiecedMade, plan: PressingPlan) -> Iterator[Seam]:
    for seam, toward in zip(made.seams, plan.inner, strict=True):
        start, end = ((float(spot.x), float(spot.y)) for spot in (seam.start, seam.end))
        way = None
        if toward is not None:
            part = unit.placed[toward]
            corners = part.outline.corners if part.outline else ()
            xs = [float(spot.x) for spot in corners] or [float(part.x + part.across / 2)]
            ys = [float(spot.y) for spot in corners] or [float(part.y + part.down / 2)]
            way = _side(start, end, (sum(xs) / len(xs), sum(ys) / len(ys)))
        yield Seam(start, end, way)


def _side(start: Point, end: Point, toward: Point) -> Point:
    """One unit of length across a seam, to the side of a point."""
    long = math.dist(start, end)
    across = ((end[1] - start[1]) / long, (start[0] - end[0]) / long)
    there = (toward[0] - start[0]) * across[0] + (toward[1] - start[1]) * across[1]
    return across if there >= 0 else (-across[0], -across[1])


def _of_line(parts: tuple[Placed, ...], ways: tuple[Way, ...], *, upright: bool) -> Iterator[Seam]:
    for part, way in zip(parts[1:], ways, strict=True):
        x, y = float(part.x), float(part.y)
        end = (x + float(part.across), y) if upright else (x, y + float(part.down))
        yield Seam((x, y), end, WAYS.get(way))


def _between(lines: tuple[Line, ...], ways: tuple[Way, ...], *, upright: bool) -> Iterator[Seam]:
    for line, way in zip(lines[1:], ways, strict=True):
        first, last = line.parts[0], line.parts[-1]
        start = (float(first.x), float(first.y))
        end = (float(last.x + last.across), float(first.y))
        if upright:
            end = (float(first.x), float(last.y + last.down))
        yield Seam(start, end, WAYS.get(way))


def _back(pattern: Pattern, size: Size, unit: Unit, found: tuple[Seam, ...]) -> Drawing:
    def drawn(pen: Pen) -> None:
        _draw(pen, size, unit, found)

    scale = SCALE / (2.54 if size.system.unit == "cm" else 1)
    title = f"{words.title(unit.name)} from the back, as pressed"
    alt = (
        f"The back of {unit.name}: {words.counted(len(found), 'seam')} with the allowances as "
        f"they are pressed; left and right are exchanged, as when it is turned over."
    )
    return cropped(
        fitted(drawn, MOST, scale),
        name("back", unit.name),
        title + pattern.drawn_for(size, unit),
        alt,
    )


def _draw(pen: Pen, size: Size, unit: Unit, found: tuple[Seam, ...]) -> None:
    across, down = float(unit.finished.across), float(unit.finished.down)
    raw = float(size.quilt.seam)
    inside = patches(size.quilt, unit.name)
    shown = []
    for patch in inside:
        fill = _pale(size.fill(patch.letter, 1), PALE)
        points = _mirrored(reaching(points_of(patch), across, down, raw), across)
        pen.patch(points, fill, None)
        shown.append(Shown(patch.letter, *around(points), fill, points))
    for seam in found:
        _flaps(pen, seam, (across, down), raw)
    pen.rectangle(-raw, -raw, across + 2 * raw, down + 2 * raw, None, "edge")
    for one in shown:
        labels.inside(pen, one, one.letter)


def _flaps(pen: Pen, seam: Seam, sides: tuple[float, float], raw: float) -> None:
    """The allowances beside a seam, seen from the back: both on one side, or one on each."""
    across, down = sides
    start, end = _mirrored(_to_the_edge(seam.start, seam.end, sides, raw), across)
    if seam.way is None:
        normal = _side(start, end, (start[0] + 1.0, start[1] + 1.0))
        offsets = [normal, (-normal[0], -normal[1])]
    else:
        offsets = [(-seam.way[0], seam.way[1])]
    for way in offsets:
        flap = (
            start,
            end,
            (end[0] + way[0] * raw, end[1] + way[1] * raw),
            (start[0] + way[0] * raw, start[1] + way[1] * raw),
        )
        points = clipped(_clockwise(flap), -raw, -raw, across + raw, down + raw)
        if len(points) > 2:
            pen.patch(points, Fill(tint("#222222", 1 - FLAP)), "fine")
    pen.line((start, end), "sewn")


def _to_the_edge(start: Point, end: Point, sides: tuple[float, float], raw: float) -> Points:
    """A seam that ends at the edge of the unit runs on through its allowance."""
    long = math.dist(start, end)
    along = ((end[0] - start[0]) / long * 2 * raw, (end[1] - start[1]) / long * 2 * raw)
    if _at_edge(start, sides):
        start = (start[0] - along[0], start[1] - along[1])
    if _at_edge(end, sides):
        end = (end[0] + along[0], end[1] + along[1])
    return start, end


def _at_edge(point: Point, sides: tuple[float, float]) -> bool:
    return any(min(abs(at), abs(at - side)) < NEAR for at, side in zip(point, sides, strict=True))


def _clockwise(points: Points) -> Points:
    area = sum(
        a[0] * b[1] - b[0] * a[1] for a, b in zip(points, (*points[1:], points[0]), strict=True)
    )
    return points if area > 0 else tuple(reversed(points))


def _mirrored(points: Points, across: float) -> Points:
    return tuple((across - x, y) for x, y in points)


def _pale(fill: Fill, share: float) -> Fill:
    return Fill(tint(fill.colour, share))
