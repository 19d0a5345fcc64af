"""Tones are told apart in a grey print, and words read on them."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.strokes.stroke import Fill
from patternbook.strokes.tones import (
    PAPER,
    Cloth,
    Tone,
    contrast,
    differ,
    fills,
    ghost,
    ink_on,
    lightness,
    tint,
    wrong_side,
)

COLOURS = st.integers(0, 0xFFFFFF).map("#{:06x}".format)
TONES: list[Tone | None] = ["light", "medium", "dark", None]


@pytest.mark.parametrize(
    ("colour", "stated"),
    [("#ffffff", 100), ("#000000", 0), ("#ff0000", 53.24), ("#00ff00", 87.73), ("#0000ff", 32.30)],
)
def test_lightness_is_that_of_cie(colour: str, stated: float) -> None:
    """CIE 15 (L* of the sRGB primaries under D65); the values are from memory."""
    assert lightness(colour) == pytest.approx(stated, abs=0.01)


@pytest.mark.parametrize(
    ("colour", "stated"), [("#000000", 21), ("#ffffff", 1), ("#777777", 4.47), ("#767676", 4.54)]
)
def test_contrast_is_that_of_the_accessibility_guidelines(colour: str, stated: float) -> None:
    """W3C, Understanding WCAG 2.2, criterion 1.4.3, tells of #777777 on white; from memory."""
    assert contrast(colour, "#ffffff") == pytest.approx(stated, abs=0.01)


@given(COLOURS)
def test_words_read_on_every_colour(colour: str) -> None:
    assert contrast(ink_on(colour), colour) >= 4.5


@given(st.lists(st.sampled_from(TONES), max_size=12))
def test_no_two_fabrics_are_told_apart_by_hue_alone(tones: list[Tone | None]) -> None:
    chosen = fills([Cloth(f"fabric {number}", tone) for number, tone in enumerate(tones)])
    assert all(differ(one, other) for one, other in combinations(chosen.values(), 2))


@given(st.lists(COLOURS, max_size=8))
def test_colours_of_the_author_are_kept_and_hatched_where_alike(colours: list[str]) -> None:
    chosen = fills([Cloth(str(number), None, colour) for number, colour in enumerate(colours)])
    assert [fill.colour for fill in chosen.values()] == colours
    assert all(differ(one, other) for one, other in combinations(chosen.values(), 2))


def test_five_fabrics_need_no_hatching_and_the_sixth_does() -> None:
    hatches = [fill.hatch for fill in fills([Cloth(name) for name in "ABCDEF"]).values()]
    assert hatches[:5] == [None] * 5
    assert hatches[5]


def test_a_tone_looks_as_it_is_called() -> None:
    light, medium, dark = fills(
        [Cloth("a", "light"), Cloth("b", "medium"), Cloth("c", "dark")]
    ).values()
    assert lightness(light.colour) > lightness(medium.colour) > lightness(dark.colour)


@pytest.mark.parametrize("fill", list(fills([Cloth(name) for name in "ABCDEFGH"]).values()))
def test_the_wrong_side_is_paler_and_always_hatched(fill: Fill) -> None:
    back = wrong_side(fill)
    assert lightness(back.colour) > lightness(fill.colour)
    assert differ(back, fill)
    assert back.hatch


def test_a_ghost_is_a_quarter_of_the_tone() -> None:
    assert ghost(Fill("#000000")) == Fill("#bfbfbf")
    assert tint("#26436a", 1) == PAPER.colour
