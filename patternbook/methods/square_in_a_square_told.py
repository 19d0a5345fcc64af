"""How the rounds of a square in a square are sewn on, in words and sketches."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Placed, Sides, Spot
from patternbook.methods.pieced import Point

DIAGONAL: Final = float(ROOT2)


def square_so_far(placed: Sequence[Placed], side: Exact, seam: Exact) -> tuple[Drawn, ...]:
    """The square so far, raw, about its own middle."""
    raw, finished = float(side + seam * 2), float(side)

    def spread(spot: Spot) -> Point:
        x, y = (float(one) / finished * raw - raw / 2 for one in spot)
        return x, y

    return tuple(
        pieced.cloth(part.part, map(spread, part.outline.corners))
        if part.outline
        else pieced.cloth(part.part, _box(part, spread))
        for part in placed
    )


def _box(part: Placed, spread: Callable[[Spot], Point]) -> tuple[Point, ...]:
    (left, top), (right, low) = (
        spread(Spot(part.x, part.y)),
        spread(Spot(part.x + part.across, part.y + part.down)),
    )
    return pieced.rectangle(left, top, right - left, low - top)


def sewn_on(
    part: str,
    inside: str,
    square: tuple[Drawn, ...],
    outside: Exact,
    raw: Exact,
    seam: Exact,
) -> tuple[Action, ...]:
    """One round: opposite sides, the other two, trimmed."""
    half, off = float(outside / ROOT2 + seam * 2) / 2, float(seam)
    long = float(raw) * DIAGONAL / 2
    up: tuple[Point, ...] = ((-long, -half), (0.0, long - half), (long, -half))
    measure, laid = outside + seam * 2, _opposite(part, up, half, off)
    return (
        Action(
            "sew",
            f"Lay a triangle {part} on each of two opposite sides of {inside}, right sides "
            "together, long edge to side, its middle on the middle. Sew with seams of {0} and "
            f"press {part} outward.",
            (seam,),
            (*square, *laid),
        ),
        Action(
            "sew",
            f"Sew a triangle {part} to the other two sides in the same way and press them outward.",
            (),
            (
                *_opened(part, up, half, off),
                *square,
                *map(_sideways, _opposite(part, up, half, off)),
            ),
        ),
        Action(
            "trim",
            "Trim to {0}, and leave {1} of cloth beyond every point of the square within.",
            (Sides(measure, measure), seam),
        ),
    )


def _opposite(part: str, up: tuple[Point, ...], half: float, off: float) -> tuple[Drawn, ...]:
    """Triangles laid on the upper and lower side of the square, and their seams."""
    level = half - off
    return (
        pieced.wrong_side(part, up),
        pieced.wrong_side(part, tuple((x, -y) for x, y in up)),
        pieced.sew((-half, -level), (half, -level)),
        pieced.sew((-half, level), (half, level)),
    )


def _opened(part: str, up: tuple[Point, ...], half: float, off: float) -> tuple[Drawn, ...]:
    """The first two triangles once they are pressed outward."""
    above = tuple((x, 2 * off - 2 * half - y) for x, y in up)
    return pieced.cloth(part, above), pieced.cloth(part, tuple((x, -y) for x, y in above))


def _sideways(drawn: Drawn) -> Drawn:
    """The same on the left and the right side."""
    return drawn._replace(points=tuple((y, x) for x, y in drawn.points))
