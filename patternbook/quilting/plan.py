"""The whole stitchable plan of one size: areas, designs, the order, the walks, the proof."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

from patternbook.notice import Notice
from patternbook.quilt.place import Patch
from patternbook.quilt.records import Quilt
from patternbook.quilting import before
from patternbook.quilting.anchor import anchor_lines, anchor_stage
from patternbook.quilting.areas import areas
from patternbook.quilting.asked import wishes
from patternbook.quilting.bobbins import bobbin_changes
from patternbook.quilting.choice import Choice
from patternbook.quilting.gap import widest
from patternbook.quilting.held import held
from patternbook.quilting.own_designs import own_designs
from patternbook.quilting.records import Path, QuiltingPlan, Stage
from patternbook.quilting.route import fill_stages
from patternbook.quilting.sums import per_bobbin, sums
from patternbook.quilting.told import told
from patternbook.quilting.top import top as top_of


def plan(
    quilt: Quilt, patches: Sequence[Patch], level: str | None = None
) -> tuple[QuiltingPlan | None, tuple[Notice, ...]]:
    """The plan of one size, and what is to be told of it; None where there is no top."""
    top = top_of(quilt, patches)
    if top is None:
        return None, ()
    asked = wishes(quilt, level)
    divided, notices = areas(top, asked)
    lines = anchor_lines(top, divided)
    choice = Choice(top, divided, asked)
    fills = held(top, choice, asked.limit, lines)
    anchor = anchor_stage(top, lines)
    stages = (anchor, *fill_stages(top, lines, anchor, fills))
    stages = before.told([stage for stage in stages if stage.walks], top.rules.inch)
    changes = bobbin_changes(stages, top, per_bobbin(top))
    stitched = list(_paths(stages))
    made = QuiltingPlan(
        top,
        asked,
        divided,
        fills,
        lines,
        stages,
        widest(stitched, top.edge, rim=True),
        widest(stitched, top.edge, rim=False),
        sums(top, stages, fills, changes),
        choice.others,
    )
    return made, (*notices, *own_designs(quilt), *told(made, quilt))


def _paths(stages: Sequence[Stage]) -> Iterator[Path]:
    walks = chain.from_iterable(stage.walks for stage in stages)
    return (leg.path for walk in walks for leg in walk.legs)
