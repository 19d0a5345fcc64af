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
    within = float(outside / ROOT2 + seam * 2)
    cut, off = float(raw), float(seam)
    measure = outside + seam * 2
    long, tall = cut * DIAGONAL / 2, cut * DIAGONAL / 2
    half = within / 2
    up: tuple[Point, ...] = ((-long, -half), (0.0, tall - half), (long, -half))
    down = tuple((x, -y) for x, y in up)
    opened = tuple((x, -half + 2 * off - (y + half)) for x, y in up)
    closed = tuple((x, -y) for x, y in opened)
    level = half - off
    return (
        Action(
            "sew",
            f"Lay a triangle {part} on each of two opposite sides of {inside}, right sides "
            "together, long edge to side, its middle on the middle. Sew with seams of {0} and "
            f"press {part} outward.",
            (seam,),
            (
                *square,
                pieced.wrong_side(part, up),
                pieced.wrong_side(part, down),
                pieced.sew((-half, -level), (half, -level)),
                pieced.sew((-half, level), (half, level)),
            ),
        ),
        Action(
            "sew",
            f"Sew a triangle {part} to the other two sides in the same way and press them outward.",
            (),
            (
                pieced.cloth(part, opened),
                pieced.cloth(part, closed),
                *square,
                pieced.wrong_side(part, tuple((-y, x) for x, y in up)),
                pieced.wrong_side(part, tuple((y, x) for x, y in up)),
                pieced.sew((-level, -half), (-level, half)),
                pieced.sew((level, -half), (level, half)),
            ),
        ),
        Action(
            "trim",
            "Trim to {0}, and leave {1} of cloth beyond every point of the square within.",
            (Sides(measure, measure), seam),
        ),
    )
