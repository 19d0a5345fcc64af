"""The tiling proof: an overlap and a gap of equal area do not cancel."""

from dataclasses import replace
from fractions import Fraction
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import ROOT2, Exact
from patternbook.proof.evidence import Evidence
from patternbook.proof.tiling import tiling
from patternbook.quilt.place import Patch
from patternbook.quilt.records import Sides
from tests.proof.planting import tea
from tests.proof.shapes_laid import box, oblongs


def top(across: Exact | int, down: Exact | int, *patches: Patch) -> Evidence:
    """A top of this size with these patches."""
    finished = Sides(Exact.of(across), Exact.of(down))
    return replace(tea(), quilt=replace(tea().quilt, finished=finished), patches=patches)


def codes(evidence: Evidence) -> list[str]:
    return [notice.code for notice in tiling(evidence)]


def test_a_covered_top() -> None:
    assert codes(top(4, 4, box(0, 0, 4, 1), box(0, 1, 1, 3), box(1, 1, 3, 3))) == []


def test_an_overlap_and_a_gap_of_equal_area() -> None:
    """The areas add up to 16, and one place is covered twice, another not at all."""
    assert codes(top(4, 4, box(0, 0, 2, 4), box(1, 0, 2, 4))) == ["tiling-overlap"]


def test_a_patch_beyond_the_edge() -> None:
    assert codes(top(4, 4, box(0, 0, 2, 4), box(3, 0, 2, 4))) == ["tiling-outside"]


def test_a_gap() -> None:
    (notice,) = tiling(top(4, 4, box(0, 0, 4, 1), box(0, 1, 4, 2)))
    assert notice.code == "tiling-uncovered"
    assert "cover 12, the top is 16 in area, 4 apart" in notice.message


def test_lengths_with_roots() -> None:
    half = ROOT2 / 2
    side = ROOT2 * 2
    assert codes(top(side, side, box(0, 0, half, side), box(half, 0, side - half, side))) == []
    over = [box(0, 0, half + half, side), box(half, 0, side - half, side)]
    assert codes(top(side, side, *over)) == ["tiling-overlap", "tiling-uncovered"]


def test_one_patch_moved_onto_its_twin() -> None:
    """A planted overlap and gap of equal area in a real top."""
    twins = [
        n for n, one in enumerate(tea().patches) if one.letter == "S" and not one.turn.sideways
    ]
    first, last = twins[0], twins[-1]
    patches = list(tea().patches)
    patches[first] = patches[last]
    assert codes(replace(tea(), patches=tuple(patches))) == ["tiling-overlap"]


@given(oblongs(12), st.randoms(use_true_random=False))
def test_what_is_cut_up_covers_whatever_the_order(patches: list[Patch], by: Random) -> None:
    by.shuffle(patches)
    assert codes(top(12, 8, *patches)) == []


@given(oblongs(12), st.data())
def test_no_patch_can_be_moved(patches: list[Patch], data: st.DataObject) -> None:
    """Moved a little, a patch lies over another or beyond the edge; the areas still add up."""
    at = data.draw(st.integers(0, len(patches) - 1))
    step = Fraction(data.draw(st.sampled_from([-1, 1])), 64)
    patches[at] = patches[at]._replace(x=patches[at].x + step)
    assert codes(top(12, 8, *patches)) in (
        ["tiling-overlap"],
        ["tiling-outside"],
        ["tiling-outside", "tiling-overlap"],
    )
