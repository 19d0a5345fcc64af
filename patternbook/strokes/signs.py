"""The signs of the diagrams: seams, bias edges, selvages, breaks, arrows of pressing and grain."""

from __future__ import annotations

import math
from collections.abc import Sequence

from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import INK, Fill, Point, Role


def _way(a: Point, b: Point) -> tuple[float, Point, Point]:
    """Length of the way from a to b, its direction, and the direction to its left."""
    length = math.dist(a, b)
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    return length, along, (along[1], -along[0])


def _off(start: Point, along: Point, far: float, left: Point, beside: float) -> Point:
    """The point `far` along the way and `beside` to its left."""
    return (
        start[0] + along[0] * far + left[0] * beside,
        start[1] + along[1] * far + left[1] * beside,
    )


def seam(pen: Pen, a: Point, b: Point) -> None:
    """A seam to be sewn: dashed, with a dot where it starts and where it ends."""
    pen.line((a, b), "seam")
    pen.dot(*a, 2.6)
    pen.dot(*b, 2.6)


def bias_edge(pen: Pen, a: Point, b: Point) -> None:
    """An edge that stretches: a wavy line along it."""
    length, along, left = _way(a, b)
    steps = max(2, round(length / pen.pt(1.2)))
    height = pen.pt(1.4)
    waves = round(length / pen.pt(7)) or 1
    pen.line(
        (
            _off(
                a,
                along,
                length * step / steps,
                left,
                height * math.sin(2 * math.pi * waves * step / steps),
            )
            for step in range(steps + 1)
        ),
        "bias",
    )


def selvage(pen: Pen, a: Point, b: Point, side: int = 1) -> None:
    """A selvage: a line with short slanted ticks, to its left (1) or to its right (-1)."""
    length, along, left = _way(a, b)
    pen.line((a, b), "selvage")
    tick, count = pen.pt(3), max(1, int(length / pen.pt(4)))
    for at in range(count):
        far = length * at / count
        ends = (_off(a, along, far, left, 0), _off(a, along, far + tick, left, tick * side))
        pen.line(ends, "selvage")


def broken(pen: Pen, a: Point, b: Point, role: Role = "outline") -> None:
    """A line that is longer than it is drawn: a zig-zag in its middle."""
    length, along, left = _way(a, b)
    half, high = pen.pt(4), pen.pt(4)
    zigzag = ((-half, 0.0), (-half / 2, high), (half / 2, -high), (half, 0.0))
    middle = (_off(a, along, length / 2 + far, left, beside) for far, beside in zigzag)
    pen.line((a, *middle, b), role)


def grain(pen: Pen, a: Point, b: Point) -> None:
    """The straight grain: an arrow with two heads, parallel to the selvage."""
    pen.arrow((a, b), "grain", "both", 4.5)


def press(pen: Pen, a: Point, b: Point) -> None:
    """Pressing: across the seam, the head on the fabric that receives the allowances."""
    pen.arrow((a, b), "press", "end", 5.0)


def press_open(pen: Pen, at: Point, along: Point) -> None:
    """A seam pressed open: heads on both sides; `along` is the direction of the seam."""
    _, _, left = _way((0, 0), along)
    far = pen.pt(9)
    ends = (_off(at, along, 0, left, -far), _off(at, along, 0, left, far))
    pen.arrow(ends, "press", "both", 5.0)


def twirl(pen: Pen, x: float, y: float, radius: float) -> None:
    """A seam crossing whose allowances are fanned: a small arrow three quarters round."""
    turns = [math.radians(15 * step) for step in range(19)]
    points = ((x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns)
    pen.arrow(tuple(points), "press", "end", 4.0)


def scissors(pen: Pen, x: float, y: float, angle: float = 0.0) -> None:
    """The start of a cut: two open blades and their handles, pointing along `angle` degrees."""
    turn = math.radians(-angle)
    way = (math.cos(turn), math.sin(turn))
    left = (way[1], -way[0])
    for side in (1, -1):
        tip = _off((x, y), way, pen.pt(6), left, pen.pt(2.2 * side))
        heel = _off((x, y), way, pen.pt(-4), left, pen.pt(-1.8 * side))
        pen.line((heel, tip), "edge")
        handle = _off((x, y), way, pen.pt(-5.8), left, pen.pt(-2.4 * side))
        pen.circle(*handle, pen.pt(1.7), None, "outline")


def start_dot(pen: Pen, x: float, y: float) -> None:
    """Where quilting starts."""
    pen.dot(x, y, 5.0, INK)


def end_bar(pen: Pen, at: Point, along: Point) -> None:
    """Where quilting ends: a bar across the line, whose direction is `along`."""
    _, _, left = _way((0, 0), along)
    half = pen.pt(4)
    pen.line((_off(at, along, 0, left, -half), _off(at, along, 0, left, half)), "emphasis")


def plus(pen: Pen, x: float, y: float) -> None:
    """Between two pieces that are to be joined."""
    half = pen.pt(3)
    pen.line(((x - half, y), (x + half, y)), "edge")
    pen.line(((x, y - half), (x, y + half)), "edge")


def box(pen: Pen, x: float, y: float, *, ticked: bool = False) -> None:
    """A box to tick, its middle at (x, y)."""
    half = pen.pt(4)
    pen.rectangle(x - half, y - half, 2 * half, 2 * half)
    if ticked:
        tick: Sequence[tuple[float, float]] = ((-0.6, 0.0), (-0.1, 0.5), (0.7, -0.6))
        pen.line(((x + half * dx, y + half * dy) for dx, dy in tick), "edge")


def count(pen: Pen, x: float, y: float, number: int, *, size: float = 7.0) -> None:
    """An order number in a ring."""
    pen.circle(x, y, pen.pt(size * 0.85), Fill("#ffffff"), "outline")
    pen.label(x, y, str(number), size, weight=600)
