"""The plan of every pattern that comes with patternbook, in every size, against the bars that it
is to keep: each measured by the plan, and proven again by checks that share no code with it."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from shapely import STRtree

from patternbook.edition.pipeline import examine
from patternbook.proof.quilting import prove_quilting
from patternbook.quilting.plan import plan
from patternbook.quilting.records import QuiltingPlan
from tests.support import ROOT

PATTERNS = sorted(path.parent.name for path in (ROOT / "patterns").glob("*/pattern.yaml"))
LEFT_OPEN = {"in the ditch"}
OPEN = {"ground", "square", "band", "corner"}
# A filler is no smaller than a quarter of what lies beside it: the practitioner's rule is two
# thirds to a half, "not under ¼" (our collection of quilting advice, from makers' pages).
SCALE = 0.25


def over(made: QuiltingPlan) -> Iterator[str]:
    """Each bar that is not kept."""
    sums = made.sums
    if made.gap.high > made.wishes.limit:
        yield f"gap {made.gap.high:.3f} over {made.wishes.limit}"
    if sums.starts > sums.bobbins + 2:
        yield f"{sums.starts} starts, {sums.bobbins} bobbins"
    if sums.retraced > 0.125:
        yield f"retraced {sums.retraced:.1%}"
    if sums.evenness > 0.10:
        yield f"evenness {sums.evenness:.3f}"
    built_up = sum(length * times for times, length in sums.passes.items() if times >= 4)
    if built_up > 0.015 * sums.stitched:
        yield f"four threads or more on {built_up / sums.stitched:.1%}"
    if any(stage.name == "anchor" and not stage.proven for stage in made.stages):
        yield "the first stage is not proven least"
    for one, other in beside(made):
        if min(one, other) < SCALE * max(one, other):
            yield f"lines {one} apart beside lines {other} apart"
    yield from (f"{fill.area.key} is left" for fill in made.fills if fill.design in LEFT_OPEN)


def beside(made: QuiltingPlan) -> Iterator[tuple[float, float]]:
    """How far apart lines lie in each two areas of open ground that touch."""
    fills = [fill for fill in made.fills if fill.area.kind in OPEN and fill.drawn.paths]
    shapes = [fill.area.shape for fill in fills]
    for one, other in STRtree(shapes).query(shapes, predicate="touches").T if shapes else ():
        yield fills[one].drawn.spacing, fills[other].drawn.spacing


@pytest.mark.parametrize("slug", PATTERNS)
def test_every_size_keeps_the_bars(slug: str) -> None:
    examined = examine(ROOT / "patterns" / slug / "pattern.yaml", slug)
    for size, known in examined.sizes.items():
        made = known.quilting
        assert made is not None, size
        assert list(over(made)) == [], size
        assert [str(one) for one in prove_quilting(made, known.quilt)] == [], size


@pytest.mark.parametrize("slug", ["late-returns", "wash-house-tiles", "low-water", "pear-thief"])
@pytest.mark.parametrize("level", ["first quilt", "confident beginner"])
def test_so_it_does_for_others_than_it_is_written_for(slug: str, level: str) -> None:
    """The smallest size, sewn by one who has quilted before and by one who has not."""
    known = next(iter(examine(ROOT / "patterns" / slug / "pattern.yaml", slug).sizes.values()))
    made, _ = plan(replace(known.quilt, quilting=()), known.patches, level)
    assert made is not None
    assert list(over(made)) == []
    feet = {stage.foot for stage in made.stages}
    assert ("free motion" in feet) == (level == "confident beginner")


def test_the_same_source_is_the_same_plan() -> None:
    known = examine(ROOT / "patterns/late-returns/pattern.yaml", "late").sizes["crib"]
    one, _ = plan(known.quilt, known.patches)
    other, _ = plan(known.quilt, known.patches)
    assert one == other
