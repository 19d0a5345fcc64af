"""The top as it is drawn: all of it, to scale, and every fabric told from its neighbours."""

import pytest

from patternbook.diagrams.tops import patched
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Patch
from patternbook.strokes.tones import APART, lightness
from tests.diagrams.drawn import ALL, DEMOS, area, drawn, patches, pattern_of, words


@pytest.mark.parametrize("source", ALL)
def test_the_patches_drawn_cover_the_top_and_no_more(source: str) -> None:
    for size in pattern_of(source).tops:
        pen = Pen(1, 1, 0.1)
        patched(pen, size, 0, 0)
        drawn_patches = [one for one in pen.strokes if isinstance(one, Patch)]
        assert len(drawn_patches) == len(size.plans.patches)
        whole = area(Patch(size.edge, None))
        assert sum(map(area, drawn_patches)) == pytest.approx(whole)


@pytest.mark.parametrize("source", DEMOS)
def test_half_the_scale_is_the_same_strokes_at_half_the_size(source: str) -> None:
    size = pattern_of(source).first
    pens = [Pen(1, 1, scale) for scale in (0.08, 0.04)]
    for pen in pens:
        patched(pen, size, 0, 0, "outline")
    assert pens[0].strokes == pens[1].strokes
    one, half = (pen.drawing("top", "Top", "The top.") for pen in pens)
    assert half.inches == tuple(side / 2 for side in one.inches)


@pytest.mark.parametrize("source", DEMOS)
def test_all_sizes_are_drawn_to_one_scale(source: str) -> None:
    drawing = drawn(source)["tops"]
    edges = [patch for patch in patches(drawing) if patch.outline == "edge"]
    drawn_sides = [
        (max(x for x, _ in edge.points) - min(x for x, _ in edge.points)) for edge in edges
    ]
    assert drawn_sides == pytest.approx([size.top[0] for size in pattern_of(source).tops])


def test_width_and_length_are_written_out() -> None:
    """Readers mix up the two (a complaint of readers' own)."""
    said = words(drawn(DEMOS[0])["tops"])
    assert [word for word in said if word.startswith("width")] == [
        "width 36″",
        "width 59″",
        "width 67½″",
        "width 99″",
    ]
    assert "length 46″" in said


def test_neighbouring_prints_are_drawn_in_different_tones() -> None:
    """The pile of books: no two alike touch."""
    for size in pattern_of(DEMOS[0]).tops:
        below = {(one.x, round(one.y, 6)): number for number, one in enumerate(size.shown)}
        pairs = 0
        for number, one in enumerate(size.shown):
            other = below.get((one.x, round(one.y + one.down, 6)))
            letters = {size.plans.patches[n].letter for n in (number, other) if n is not None}
            if other is not None and letters <= set("ABC"):
                pairs += 1
                assert size.fills[number] != size.fills[other]
        assert pairs > 20


@pytest.mark.parametrize("source", ALL)
def test_prints_stay_as_far_from_other_fabrics_as_their_own(source: str) -> None:
    cloths = pattern_of(source).first.cloths
    for fabric, prints in cloths.prints.items():
        for name, other in cloths.by_fabric.items():
            if name == fabric or other.hatch != cloths.by_fabric[fabric].hatch:
                continue
            apart = [abs(lightness(one.colour) - lightness(other.colour)) for one in prints]
            assert min(apart) >= APART - 1, (fabric, name)


def test_the_cover_has_its_binding_round_it() -> None:
    for source in DEMOS:
        size = pattern_of(source).cover
        frame, *rest = patches(drawn(source)["cover"])
        assert size.quilt.binding is not None
        assert frame.fill == size.cloths.fabric(size.quilt.binding.fabric)
        assert area(frame) > sum(map(area, rest))


def test_a_colouring_page_has_lines_and_no_tone() -> None:
    for source in DEMOS:
        for size in pattern_of(source).tops:
            drawing = drawn(source)[f"colouring-{size.name}"]
            assert all(patch.fill is None for patch in patches(drawing))
            assert len(patches(drawing)) == len(size.plans.patches) + 1
            assert words(drawing) == []
