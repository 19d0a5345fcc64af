"""Whether each walk is one thread: every leg begins where the one before it stopped."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from patternbook.notice import Notice
from patternbook.proof.quilting.stitched import Stitched


def joined(stitched: Stitched) -> Iterator[Notice]:
    for stage in stitched.plan.stages:
        for number, walk in enumerate(stage.walks, start=1):
            name = f"walk {number} of the stage '{stage.name}'"
            if not walk.legs or any(len(leg.path) < 2 for leg in walk.legs):
                yield stitched.wrong("quilting-jump", f"{name} has a leg without a stitch.")
            for before, after in pairwise(leg for leg in walk.legs if leg.path):
                apart = math.dist(before.path[-1], after.path[0])
                if apart > stitched.same:
                    yield stitched.wrong(
                        "quilting-jump",
                        f"{name} jumps over {stitched.told(apart)}, from {before.kind} to "
                        f"{after.kind}.",
                    )
