"""The quilting of one size as programmes read it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Literal

from typing_extensions import TypedDict

if TYPE_CHECKING:  # its shapes are only loaded when the quilting is planned
    from patternbook.quilting.records import Filled, QuiltingPlan

METRES: Final[dict[str, float]] = {"yd": 0.9144, "m": 1.0}


class AreaRecord(TypedDict):
    """The areas of one letter: how many, of what kind, with which design, sewn how."""

    number: int
    kind: str
    design: str
    foot: str
    spacing: float


class QuiltingRecord(TypedDict):
    """What the quilting comes to: plain decimals of the pattern's unit, thread in metres.

    The widest gap lies between `gap_low` and `gap_high`, the binding counted as a line;
    `retraced` is a share, `evenness` the spread of the density over its mean.
    """

    gap_low: float
    gap_high: float
    limit: float
    limit_source: Literal["stated", "assumed"]
    starts: int
    bobbin_changes: int
    thread_m: float
    retraced: float
    evenness: float
    stitched: float
    areas: dict[str, AreaRecord]


def quilting(plan: QuiltingPlan | None, shop: Literal["yd", "m"]) -> QuiltingRecord | None:
    """The record; None where nothing is planned."""
    if plan is None:
        return None
    sums, wishes = plan.sums, plan.wishes
    return {
        "gap_low": round(plan.gap.low, 3),
        "gap_high": round(plan.gap.high, 3),
        "limit": wishes.limit,
        "limit_source": "stated" if wishes.limit_stated else "assumed",
        "starts": sums.starts,
        "bobbin_changes": len(sums.changes),
        "thread_m": round((sums.thread_top + sums.thread_bobbin) * METRES[shop], 1),
        "retraced": round(sums.retraced, 4),
        "evenness": round(sums.evenness, 4),
        "stitched": round(sums.stitched, 1),
        "areas": {letter: _area(plan, letter) for letter in plan.letters},
    }


def _area(plan: QuiltingPlan, letter: str) -> AreaRecord:
    areas = [area for area in plan.divided.areas if area.letter == letter]
    fill: Filled | None = next((one for one in plan.fills if one.area.letter == letter), None)
    return {
        "number": len(areas),
        "kind": areas[0].kind,
        "design": fill.design if fill else "none",
        "foot": fill.foot if fill else "none",
        "spacing": fill.drawn.spacing if fill else 0.0,
    }
