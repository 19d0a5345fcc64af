"""What the author asks of the quilting, and the house's way where she asks nothing."""

from __future__ import annotations

from typing import Final

from patternbook.quilt.records import Foot, Quilt, Quilting
from patternbook.quilting.limit import LIMIT
from patternbook.quilting.records import Wish, Wishes

ALL_OVER: Final = "all over"
SAMPLER: Final = "sampler"
# Who has sewn a few quilts is trusted with free motion on open ground; others walk.
CONFIDENT: Final = "confident"


def wishes(quilt: Quilt, level: str | None = None) -> Wishes:
    """The wishes of one size. What is said of `all over` without a design of its own holds for
    every area; `design: sampler` there asks for many designs."""
    stated = quilt.batting.limit if quilt.batting else None
    whole = [one for one in quilt.quilting if one.area == ALL_OVER]
    usual: Foot = "free motion" if CONFIDENT in (level or "") else "walking foot"
    limit = LIMIT[quilt.system.unit] if stated is None else stated
    return Wishes(
        skill=next((one.skill for one in whole if one.skill), usual),
        limit=float(limit),
        limit_stated=stated is not None,
        seed=next((one.seed for one in whole if one.seed is not None), 1),
        sampler=any(one.design == SAMPLER for one in whole),
        areas=tuple(_wish(one) for one in quilt.quilting),
    )


def _wish(one: Quilting) -> Wish:
    return Wish(
        one.area,
        None if one.design == SAMPLER else one.design,
        float(one.spacing) if one.spacing else None,
        one.skill,
        one.seed,
        one.name,
        one.merge,
        {line: float(far) for line, far in one.move} or None,
        one.exclude,
    )
