"""How corners are flipped on, in words and sketches."""

from __future__ import annotations

from typing import Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Sides
from patternbook.methods.pieced import Point

DIAGONAL: Final = float(ROOT2)
NAMES: Final = ("top left", "top right", "bottom right", "bottom left")


def actions(
    base: str, corners: tuple[str, ...], measure: Sides, cut: list[Exact], seam: Exact
) -> tuple[Action, ...]:
    """One corner in full, then all the others in the same way."""
    covered = [at for at, part in enumerate(corners) if part]
    named = list(dict.fromkeys(corners[at] for at in covered))
    first = covered[0]
    letter, side = corners[first], float(cut[first])
    alone = pieced.wrong_side(letter, pieced.rectangle(0, 0, side, side))
    under = pieced.cloth(base, pieced.rectangle(0, 0, *map(float, measure)))
    laid = _laid(letter, first, side, measure)
    line = pieced.sew(*_across(first, side, measure))
    inner = pieced.cut(*_across(first, side - float(seam) * DIAGONAL, measure))
    done = [
        pieced.cloth(corners[at], (_tip(at, measure), *_across(at, float(cut[at]), measure)))
        for at in covered
    ]
    where = _listed([f"{corners[at]} at the {NAMES[at]}" for at in covered])
    return (
        Action(
            "mark",
            f"Draw a line from corner to corner on the wrong side of each {_listed(named, 'or')}.",
            (),
            (alone, pieced.mark((side, 0.0), (0.0, side))),
        ),
        Action(
            "sew",
            f"Lay {letter} in the {NAMES[first]} corner of {base}, right sides together, its line "
            "across the corner. Sew on the line.",
            (),
            (under, laid, line),
        ),
        Action(
            "cut",
            f"Fold {letter} over: it must fill the corner. Then cut off both layers under it {{0}} "
            f"outside the seam and press {letter} to the corner.",
            (seam,),
            (under, laid, line, inner),
        ),
        Action(
            "press",
            f"Do the same with every corner: {where}. It still measures {{0}}.",
            (measure,),
            (under, *done),
        ),
    )


def _listed(words: list[str], last: str = "and") -> str:
    if len(words) == 1:
        return words[0]
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def _tip(at: int, measure: Sides) -> Point:
    right, low = map(float, measure)
    return ((0.0, 0.0), (right, 0.0), (right, low), (0.0, low))[at]


def _across(at: int, side: float, measure: Sides) -> tuple[Point, Point]:
    """The line across a corner, so far from its tip along both edges."""
    x, y = _tip(at, measure)
    to_right, to_low = (1 if x == 0 else -1), (1 if y == 0 else -1)
    return (x + to_right * side, y), (x, y + to_low * side)


def _laid(part: str, at: int, side: float, measure: Sides) -> Drawn:
    x, y = _tip(at, measure)
    return pieced.wrong_side(
        part, pieced.rectangle(x if x == 0 else x - side, y if y == 0 else y - side, side, side)
    )
