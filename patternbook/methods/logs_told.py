"""The sewing of logs in words and sketches: the first log, then round by round, each log's length
and side told, and what the block measures after each round."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Placed, Sides, Sketch

A_ROUND: Final = 4
WHERE: Final = {
    "right": "to the right side",
    "bottom": "to the bottom",
    "left": "to the left side",
    "top": "to the top",
}
EDGES: Final = {
    "right": "right edges",
    "bottom": "lower edges",
    "left": "left edges",
    "top": "upper edges",
}


class Told(NamedTuple):
    """One log: its letter, the side it is sewn to, and its cut length."""

    part: str
    side: str
    length: Exact


def actions(
    placed: tuple[Placed, ...], logs: Sequence[Told], seam: Exact, press: str | None
) -> tuple[Action, ...]:
    """The first log is laid and sewn, then one sentence a round; `placed` are centre and logs."""
    made = [_first(placed, logs[0], seam), _pressed(placed[:2], press, seam)]
    for start in range(0, len(logs), A_ROUND):
        end = min(start + A_ROUND, len(logs))
        made.append(_round(start, end, placed, logs, seam))
    return tuple(made)


def measured(placed: Sequence[Placed], seam: Exact) -> Sides:
    """Raw edge to raw edge, of the parts sewn so far."""
    left, top = min(part.x for part in placed), min(part.y for part in placed)
    right = max(part.x + part.across for part in placed)
    low = max(part.y + part.down for part in placed)
    return Sides(right - left + seam * 2, low - top + seam * 2)


def _first(placed: tuple[Placed, ...], log: Told, seam: Exact) -> Action:
    centre = placed[0]
    words = (
        f"Lay {log.part} ({{0}} long) on {centre.part}, right sides together, their "
        f"{EDGES[log.side]} level. Sew along that edge with a seam of {{1}}."
    )
    return Action("sew", words, (log.length, seam), _laid(placed, log, seam))


def _laid(placed: tuple[Placed, ...], log: Told, seam: Exact) -> Sketch:
    """The first log turned over onto the centre, with its seam."""
    centre, first, raw = placed[0], placed[1], float(seam)
    across, down = float(centre.across) + 2 * raw, float(centre.down) + 2 * raw
    wide = float(first.across if log.side in ("left", "right") else first.down) + 2 * raw
    box = {
        "right": (across - wide, 0.0, wide, down),
        "left": (0.0, 0.0, wide, down),
        "bottom": (0.0, down - wide, across, wide),
        "top": (0.0, 0.0, across, wide),
    }[log.side]
    line = {
        "right": ((across - raw, 0.0), (across - raw, down)),
        "left": ((raw, 0.0), (raw, down)),
        "bottom": ((0.0, down - raw), (across, down - raw)),
        "top": ((0.0, raw), (across, raw)),
    }[log.side]
    return (
        pieced.cloth(centre.part, pieced.rectangle(0.0, 0.0, across, down)),
        pieced.wrong_side(log.part, pieced.rectangle(*box)),
        pieced.sew(*line),
    )


def _pressed(placed: tuple[Placed, ...], press: str | None, seam: Exact) -> Action:
    """Away from the centre, unless the author has it otherwise."""
    way = {None: "away from the centre", "out": "away from the centre", "open": "open"}.get(
        press, "toward the centre" if press == "in" else "{way}"
    )
    words = f"Open it out and press the seam {way}. Press every log so before the next is sewn on."
    return Action("press", words, (), _state(placed, seam))


def _round(
    start: int, end: int, placed: tuple[Placed, ...], logs: Sequence[Told], seam: Exact
) -> Action:
    """`Round 2: sew A (6½″ long) to the right side, …`."""
    number = start // A_ROUND + 1
    here = logs[max(start, 1) : end]  # the very first log has been told
    figures: list[Exact | Sides] = []
    parts = []
    for side_letters, same in groupby(here, key=lambda log: (log.part, log.length)):
        letter, length = side_letters
        sides = [WHERE[log.side] for log in same]
        figures.append(length)
        many = f"{letter} ({{{len(figures) - 1}}} long)"
        if len(sides) > 1:
            many = f"{letter} (each {{{len(figures) - 1}}} long)"
        parts.append(f"{many} {' and '.join(sides)}")
    figures.append(measured(placed[: end + 1], seam))
    after = f"It now measures {{{len(figures) - 1}}}."
    if not parts:
        words = f"Round {number} is that one log. {after}"
    else:
        begin = "Go on with round 1" if start == 0 else f"Round {number}"
        words = f"{begin}: sew {', then '.join(parts)}. "
        words += after
    return Action("sew", words, tuple(figures), _state(placed[: end + 1], seam))


def _state(placed: Sequence[Placed], seam: Exact) -> Sketch:
    """The block so far, right side up, its outer edges raw."""
    left, top = min(part.x for part in placed), min(part.y for part in placed)
    right = max(part.x + part.across for part in placed)
    low = max(part.y + part.down for part in placed)
    shown: list[Drawn] = []
    for part in placed:
        x, y = part.x, part.y
        end, under = x + part.across, y + part.down
        x = x - seam if x == left else x
        y = y - seam if y == top else y
        end = end + seam if end == right else end
        under = under + seam if under == low else under
        points = pieced.rectangle(
            float(x - left + seam), float(y - top + seam), float(end - x), float(under - y)
        )
        shown.append(pieced.cloth(part.part, points))
    return tuple(shown)
