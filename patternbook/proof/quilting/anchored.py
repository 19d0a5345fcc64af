"""Whether a stage comes to what it says: what had to be stitched, and what was added."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import shapely

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched, as_lines
from patternbook.quilting.records import Stage

SLACK: Final = 2e-3


def anchored(stitched: Stitched) -> Iterator[Notice]:
    for stage in stitched.plan.stages:
        if stage.walks:
            yield from _stage(stitched, stage)


def _stage(stitched: Stitched, stage: Stage) -> Iterator[Notice]:
    paths = [leg.path for walk in stage.walks for leg in walk.legs]
    whole = float(shapely.length(as_lines(paths)).sum())
    slack = SLACK * whole + stitched.same
    if abs(stage.needed + stage.extra - whole) > slack:
        yield stitched.wrong(
            "quilting-extra",
            f"the stage '{stage.name}' needs {stitched.told(stage.needed)} and adds "
            f"{stitched.told(stage.extra)}; its walks come to {stitched.told(whole)}.",
        )
    if stage.name == "anchor":
        lines = as_lines([line.path for line in stitched.plan.lines])
        once = float(shapely.union_all(lines, grid_size=stitched.same / 2).length)
        if abs(once - stage.needed) > SLACK * once + stitched.same:
            yield stitched.wrong(
                "quilting-extra",
                f"the lines of the first stage come to {stitched.told(once)}, and are told as "
                f"{stitched.told(stage.needed)}.",
            )
    if stage.bound is not None and stage.extra < stage.bound - slack:
        message = f"the stage '{stage.name}' adds less than the least that is proven."
        yield stitched.wrong("quilting-extra", message)
    if stage.proven and (stage.bound is None or stage.extra > stage.bound + slack):
        message = f"the stage '{stage.name}' is called proven, and adds more than the least."
        yield stitched.wrong("quilting-extra", message)
