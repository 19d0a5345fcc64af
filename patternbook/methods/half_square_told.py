"""How half-square triangles are sewn, in words and sketches: one, two, four or eight at a time."""

from __future__ import annotations

from math import sqrt
from typing import Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn

TRIM: Final = (
    "Trim to {0}: lay the 45° line of the ruler on the seam, so that it runs from corner to corner."
)


def _one(first: str, second: str, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    side, sewn = float(raw), float(seam)
    back: Drawn = pieced.wrong_side(second, ((0.0, side), (0.0, 0.0), (side, 0.0)))
    offset = sewn * sqrt(2)
    line = pieced.sew((0.0, side - offset), (side - offset, 0.0))
    words = (
        f"Lay a triangle {second} on a triangle {first}, right sides together. Sew along the long "
        "edge with a seam of {0}. It is cut on the bias: do not pull it."
    )
    return (Action("sew", words, (seam,), (back, line)),)


def _two(first: str, second: str, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    drawn, sewn = pieced.pair_sewn(first, second, raw, seam)
    back, *_ = drawn.sketch
    side, both = float(raw), pieced.beside_diagonal(float(raw), float(seam * ROOT2))
    across = pieced.cut((side, 0.0), (0.0, side))
    return drawn, sewn, Action("cut", "Cut on the line: that makes 2.", (), (back, *both, across))


def _four(first: str, second: str, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    side, sewn = float(raw), float(seam)
    back = pieced.wrong_side(second, pieced.rectangle(0, 0, side, side))
    inner = pieced.rectangle(sewn, sewn, side - 2 * sewn, side - 2 * sewn)
    ring = pieced.sew(*inner, inner[0])
    cuts = (pieced.cut((0.0, 0.0), (side, side)), pieced.cut((side, 0.0), (0.0, side)))
    return (
        Action(
            "sew",
            f"Lay {second} on {first}, right sides together. Sew all round, {{0}} from the edge.",
            (seam,),
            (back, ring),
        ),
        Action(
            "cut",
            "Cut on both diagonals: that makes 4. Their outer edges are on the bias: do not pull "
            "them.",
            (),
            (back, ring, *cuts),
        ),
    )


def _eight(first: str, second: str, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    side, sewn = float(raw), float(seam)
    back = pieced.wrong_side(second, pieced.rectangle(0, 0, side, side))
    lines = (pieced.mark((side, 0.0), (0.0, side)), pieced.mark((0.0, 0.0), (side, side)))
    off = sewn * sqrt(2)
    both = (
        pieced.sew((side - off, 0.0), (0.0, side - off)),
        pieced.sew((side, off), (off, side)),
        pieced.sew((off, 0.0), (side, side - off)),
        pieced.sew((0.0, off), (side - off, side)),
    )
    cuts = (
        pieced.cut((side / 2, 0.0), (side / 2, side)),
        pieced.cut((0.0, side / 2), (side, side / 2)),
        pieced.cut((side, 0.0), (0.0, side)),
        pieced.cut((0.0, 0.0), (side, side)),
    )
    return (
        Action(
            "mark",
            f"Draw both diagonals on the wrong side of each {second}.",
            (),
            (back, *lines),
        ),
        Action(
            "sew",
            f"Lay {second} on {first}, right sides together. Sew on both sides of both lines, "
            "{0} away from them.",
            (seam,),
            (back, *lines, *both),
        ),
        Action(
            "cut",
            "Without moving the cloth, cut through the middle down and across, then on both "
            "lines: that makes 8.",
            (),
            (back, *both, *cuts),
        ),
    )


SEWN: Final = {1: _one, 2: _two, 4: _four, 8: _eight}
