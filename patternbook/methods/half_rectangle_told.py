"""How half-rectangle triangles are sewn, in words and sketches: cut apart, tips over, trimmed."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Sides
from patternbook.methods.pieced import Point

# A length that is told with `about` is read to this part of the unit.
STEPS: Final = {"in": 8, "cm": 10}
TRIM: Final = (
    "Trim to {0}. The seam does not end in the cut corners: at both its ends it must cross the "
    "point that lies {1} in from both edges, so that it comes to the corners once it is sewn in."
)


def actions(
    first: str, second: str, raw: Sides, seam: Exact, gives: int, steps: int
) -> tuple[Action, ...]:
    """Cut apart where whole rectangles are taken, laid tip over tip, sewn and pressed."""
    right, low = float(raw.across), float(raw.down)
    cutting: list[Action] = []
    if gives == 2:
        slant = pieced.cut((right, 0.0), (0.0, low))
        cloth = pieced.cloth(second, pieced.rectangle(0, 0, right, low))
        words = (
            f"Lay {first} and {second} right side up. Cut each from the top right corner to the "
            "bottom left: 2 triangles of each. For units of the other hand, as in a mirror, cut "
            "from the top left corner to the bottom right."
        )
        cutting = [Action("cut", words, (), (cloth, slant))]
    over, sketch = _laid(first, second, right, low, float(seam))
    words = (
        f"Lay a triangle {second} on a triangle {first}, right sides together, the long edges "
        "level. The square corners point two ways, and each sharp tip stands about {1} over the "
        "blunter tip of the other. Sew the long edge with a seam of {0}; it is cut on the bias: "
        "do not pull it."
    )
    tip = Exact(Fraction(round(over * steps), steps))
    sew = Action("sew", words, (seam, tip), sketch)
    return (*cutting, sew, pieced.PRESS)


def _laid(
    first: str, second: str, right: float, low: float, seam: float
) -> tuple[float, tuple[Drawn, ...]]:
    """How far the sharp tips stand over, and the triangles as they are laid: the second, wrong
    side up, is the first turned half round and folded over along the long edge."""
    long = (right * right + low * low) ** 0.5
    # from the finished corner to the raw tip along the long edge: seam ÷ tan of half the angle
    at_right, at_low = (seam * (one + long) / other for one, other in ((right, low), (low, right)))
    along = (right / long, -low / long)
    away = (low / long, right / long)

    def flipped(point: Point) -> Point:
        """Turned half round about the middle, folded over along the edge, moved by the tips."""
        x, y = right - point[0], low - point[1]
        beyond = (x - right) * away[0] + y * away[1]
        x, y = x - 2 * beyond * away[0], y - 2 * beyond * away[1]
        shift = at_right - at_low
        return x - shift * along[0], y - shift * along[1]

    corners = ((0.0, 0.0), (right, 0.0), (0.0, low))
    line = [(x - seam * away[0], y - seam * away[1]) for x, y in corners[1:]]
    over = flipped(corners[1]), flipped(corners[2]), flipped(corners[0])
    return abs(at_right - at_low), (
        pieced.cloth(first, corners),
        pieced.wrong_side(second, over),
        pieced.sew(*line),
    )
