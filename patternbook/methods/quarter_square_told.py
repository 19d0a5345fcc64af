"""How quarter-square triangles are sewn, in words and sketches: two at once, or one."""

from __future__ import annotations

from typing import Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn

DIAGONAL: Final = float(ROOT2)
TRIM: Final = (
    "Trim to {0}: the seams cross in the middle, and the 45° line of the ruler lies on one of them."
)


def two(parts: tuple[str, ...], raw: Exact, seam: Exact) -> tuple[Action, ...]:
    """Two from a pair of squares: sewn and cut, laid together, sewn and cut again."""
    first, second = parts
    half = float(raw) - float(seam) * DIAGONAL
    above, below = ((0.0, 0.0), (half, 0.0), (0.0, half)), ((half, 0.0), (half, half), (0.0, half))
    halves = (pieced.cloth(second, above), pieced.cloth(first, below))
    cut = "Cut on the line. Press both seams toward the same piece."
    nested = (pieced.wrong_side(second, above), pieced.wrong_side(first, below))
    return (
        *pieced.pair_sewn(first, second, raw, seam),
        Action("cut", cut, (), halves),
        *_crossed(first, second, nested, half, seam),
    )


def _crossed(
    first: str, second: str, nested: tuple[Drawn, ...], half: float, seam: Exact
) -> tuple[Action, ...]:
    """The halves laid together with their seams nested, sewn and cut across the first seam."""
    across = pieced.mark((0.0, 0.0), (half, half))
    last = _mirrored(half, pieced.beside_diagonal(half, float(seam) * DIAGONAL))
    return (
        Action(
            "mark",
            f"Lay one on the other, right sides together, {second} on {first}, so that the seams "
            "nest. Draw a line from corner to corner across the seam.",
            (),
            (*nested, across),
        ),
        Action(
            "sew",
            "Pin where the seams meet. Sew on both sides of the line, {0} away from it.",
            (seam,),
            (*nested, across, *last),
        ),
        Action(
            "cut",
            "Cut on the line: that makes 2. Press the last seam to one side, or open where it is "
            "thick.",
            (),
            (*nested, *last, pieced.cut((0.0, 0.0), (half, half))),
        ),
    )


def _mirrored(side: float, lines: tuple[Drawn, ...]) -> tuple[Drawn, ...]:
    return tuple(
        line._replace(points=tuple((side - x, y) for x, y in line.points)) for line in lines
    )


def one(around: tuple[str, ...], raw: Exact, seam: Exact) -> tuple[Action, ...]:
    """The first to the second and the third to the fourth, then both halves."""
    side, off = float(raw), float(seam)
    top, right, low, left = around
    tall = side / 2
    triangle = ((0.0, 0.0), (side, 0.0), (tall, tall))
    run = off * DIAGONAL
    line = pieced.sew((side - run, 0.0), (tall - run / 2, tall - run / 2))
    lay = (pieced.wrong_side(right, triangle), line)
    edge = side - run
    halves = (
        pieced.wrong_side(top, ((0.0, 0.0), (edge / 2, edge / 2), (0.0, edge))),
        pieced.wrong_side(right, ((0.0, edge), (edge / 2, edge / 2), (edge, edge))),
        pieced.sew((0.0, run), (edge - run, edge)),
    )
    return (
        Action(
            "sew",
            f"Lay a triangle {right} on a triangle {top}, right sides together. Sew the short edge "
            "on the right with a seam of {0}.",
            (seam,),
            lay,
        ),
        Action(
            "sew",
            f"In the same way lay a triangle {left} on a triangle {low} and sew the short edge on "
            "the right with a seam of {0}. Press both seams so that they nest when the halves are "
            "laid together.",
            (seam,),
            (pieced.wrong_side(left, triangle), line),
        ),
        Action(
            "sew",
            "Lay the halves together, right sides facing, the seams nested. Sew the long edge with "
            "a seam of {0}; it is cut on the bias: do not pull it. Press the seam to one side, or "
            "open where it is thick.",
            (seam,),
            halves,
        ),
    )
