"""Labels are measured with the font that the booklet prints them in."""

import pytest
from fontTools.ttLib import TTFont

from patternbook.shipped import shipped
from patternbook.strokes.lettering import CAP_HEIGHT, face, missing, text_width
from patternbook.strokes.stroke import Weight

FACES: list[tuple[Weight, bool]] = [(400, False), (400, True), (600, False), (700, False)]
NEEDED = "½¼¾⅛⅜⅝⅞⅓⅔″×→–0123456789"


@pytest.mark.parametrize(("weight", "italic"), FACES)
def test_every_face_has_what_a_pattern_prints(weight: Weight, *, italic: bool) -> None:
    assert missing(NEEDED, weight, italic=italic) == ""


def test_every_font_has_its_licence_beside_it() -> None:
    """SIL Open Font License 1.1: every copy carries the copyright notice and the licence."""
    fonts = shipped("templates") / "fonts"
    for file in fonts.glob("*.ttf"):
        licence = (fonts / f"OFL-{file.name.partition('_')[0]}.txt").read_text("utf-8")
        with TTFont(file, lazy=True) as font:
            assert font["name"].getDebugName(0) in licence
        assert "SIL OPEN FONT LICENSE Version 1.1" in licence
        assert "PERMISSION & CONDITIONS" in licence


def test_width_is_the_sum_of_the_letters() -> None:
    assert text_width("AA", 10) == pytest.approx(2 * text_width("A", 10))
    assert text_width("A", 20) == pytest.approx(2 * text_width("A", 10))
    assert text_width("A", 10, 700) > text_width("A", 10)


def test_capitals_are_as_high_as_the_fonts_say() -> None:
    for weight, italic in FACES:
        with TTFont(face(weight, italic).path, lazy=True) as font:
            assert font["OS/2"].sCapHeight / font["head"].unitsPerEm == CAP_HEIGHT


def test_a_sign_that_is_lacking_is_told() -> None:
    assert missing("☐ done ✓ ☐") == "☐✓"
    with pytest.raises(ValueError, match="☐"):
        text_width("☐", 8)
