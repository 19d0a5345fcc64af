"""How flying geese are sewn, in words and sketches: four at once, one flipped, or triangles."""

from __future__ import annotations

from typing import Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Sides
from patternbook.methods.pieced import Point

DIAGONAL: Final = float(ROOT2)
CHECK: Final = "{0} of cloth must stand above the tip: there the next seam takes it."
TRIM: Final = (
    "Trim to {0}: the tip lies in the middle, {1} below the upper edge, and both seams end in the "
    "lower corners, {1} in from both edges."
)


def flips(goose: str, wings: str, measure: Sides, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    """One at a time: squares flipped onto the ends of a rectangle."""
    wide, high, side = float(measure.across), float(measure.down), float(raw)
    run = float(seam) * DIAGONAL
    base = pieced.cloth(goose, pieced.rectangle(0, 0, wide, high))
    over = pieced.wrong_side(wings, pieced.rectangle(wide - side, 0, side, side))
    on_right = pieced.sew((wide - side, 0.0), (wide, side))
    off_right = pieced.cut((wide - side + run, 0.0), (wide, side - run))
    turned = pieced.cloth(wings, ((wide - side, 0.0), (wide, 0.0), (wide, side)))
    left = pieced.wrong_side(wings, pieced.rectangle(0, 0, side, side))
    return (
        pieced.marked(wings, side, falling=True),
        Action(
            "sew",
            f"Lay one {wings} on the right end of {goose}, right sides together, its line from the "
            "lower right corner up to the middle. Sew on the line.",
            (),
            (base, over, on_right),
        ),
        Action(
            "cut",
            f"Fold {wings} over: it must fill the corner. Then cut off both layers under it {{0}} "
            f"outside the seam and press {wings} to the corner.",
            (seam,),
            (base, over, on_right, off_right),
        ),
        Action(
            "sew",
            f"Do the same with a second {wings} on the left end, its line from the lower left "
            "corner up to the middle. The two overlap above the tip.",
            (),
            (base, turned, left, pieced.sew((0.0, side), (side, 0.0))),
        ),
    )


def four(goose: str, wings: str, large: Exact, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    """Four at once: four small squares sewn onto a large one and cut apart."""
    full, side, run = float(large), float(raw), float(seam) * DIAGONAL
    return (
        pieced.marked(wings, side, falling=True),
        *_first_two(goose, wings, full, side, run, seam),
        *_other_two(goose, wings, full, side, run, seam),
    )


def _first_two(
    goose: str, wings: str, full: float, side: float, run: float, seam: Exact
) -> tuple[Action, ...]:
    """Small squares in opposite corners, sewn along one long line and cut into two hearts."""
    far = full - side
    laid = (
        pieced.cloth(goose, pieced.rectangle(0, 0, full, full)),
        pieced.wrong_side(wings, pieced.rectangle(0, 0, side, side)),
        pieced.wrong_side(wings, pieced.rectangle(far, far, side, side)),
        pieced.sew((run, 0.0), (full, full - run)),
        pieced.sew((0.0, run), (full - run, full)),
    )
    sewn = (
        f"Lay two {wings} in opposite corners of {goose}, right sides together; they overlap "
        "in the middle, and their lines are one. Sew on both sides of the line, {0} away from "
        "it."
    )
    cut = f"Cut on the line and press {wings} away from {goose}: two pieces shaped like hearts."
    line = pieced.cut((0.0, 0.0), (full, full))
    return Action("sew", sewn, (seam,), laid), Action("cut", cut, (), (*laid, line))


def _other_two(
    goose: str, wings: str, full: float, side: float, run: float, seam: Exact
) -> tuple[Action, ...]:
    """One more small square on each heart, sewn and cut into two geese."""
    far = full - side
    third = pieced.wrong_side(wings, pieced.rectangle(far, 0, side, side))
    laid = (*_heart(goose, wings, full, side, run), third)
    down = ((full, 0.0), (far, side))
    beside = (
        pieced.sew((full - run, 0.0), (far, side - run)),
        pieced.sew((full, run), (far + run, side)),
    )
    sewn = (
        f"Lay another {wings} on the large corner of each heart, right sides together, its "
        "line from the corner to the gap between the two. Sew on both sides of the line, {0} "
        "away from it."
    )
    cut = f"Cut on the line and press {wings} away from {goose}: that makes 4."
    return (
        Action("sew", sewn, (seam,), (*laid, pieced.mark(*down), *beside)),
        Action("cut", cut, (), (*laid, *beside, pieced.cut(*down))),
    )


def _heart(goose: str, wings: str, full: float, side: float, run: float) -> tuple[Drawn, ...]:
    """The upper right half once it is cut, both small triangles folded over their seam."""

    def folded(x: float, y: float) -> Point:
        return y + run, x - run

    far = full - side
    return (
        pieced.cloth(goose, ((run, 0.0), (full, 0.0), (full, full - run))),
        pieced.cloth(wings, (folded(0.0, 0.0), folded(side, side), folded(side, 0.0))),
        pieced.cloth(wings, (folded(far, far), folded(full, full), folded(full, far))),
    )


def one(goose: str, wings: str, large: Exact, raw: Exact, seam: Exact) -> tuple[Action, ...]:
    """One at a time, of triangles cut beforehand."""
    wide, side, run = float(large), float(raw), float(seam) * DIAGONAL
    low = wide / 2
    base = pieced.cloth(goose, ((low, 0.0), (wide, low), (0.0, low)))
    ends = ((wide, low), (wide - side, low - side))
    right = pieced.wrong_side(wings, (ends[0], (wide - side, low), ends[1]))
    line = pieced.sew((wide - run, low), (wide - side, low - side + run))
    turned = pieced.cloth(wings, (ends[1], (wide - run, low - side), (wide - run, low - run)))
    left = pieced.wrong_side(wings, ((0.0, low), (side, low - side), (side, low)))
    other = pieced.sew((run, low), (side, low - side + run))
    return (
        Action(
            "sew",
            f"Lay a triangle {wings} on {goose}, right sides together, the long edge of {wings} "
            f"along the right short edge of {goose}, level with it at the lower end; at the tip "
            f"it stands over by {{1}}. Sew with a seam of {{0}} and press {wings} outward.",
            (seam, seam * ROOT2),
            (base, right, line),
        ),
        Action(
            "sew",
            f"Sew a second {wings} to the left short edge in the same way and press it outward.",
            (),
            (base, turned, left, other),
        ),
    )
