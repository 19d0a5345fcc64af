"""The same drawing as SVG and as a picture."""

import struct
from xml.etree import ElementTree as ET

from patternbook.strokes.pen import Pen
from patternbook.strokes.png import png
from patternbook.strokes.stroke import Drawing, Fill, Hatch
from patternbook.strokes.svg import svg
from tests.support import Golden

NAME = "{http://www.w3.org/2000/svg}"


def unit() -> Drawing:
    pen = Pen(2, 2, 0.5)
    pen.patch(((0, 0), (2, 0), (0, 2)), Fill("#26436a"))
    pen.patch(((2, 0), (2, 2), (0, 2)), Fill("#f6ecd9", Hatch((0,), 24)))
    pen.line(((0, 1), (2, 1)), "seam")
    pen.arrow(((0.5, 0.5), (1.5, 0.5)))
    pen.letter(0.5, 0.5, "A", Fill("#26436a"))
    pen.label(1.5, 1.5, "cut <2½″>", 6, anchor="end", angle=90, italic=True, plate="#ffffff")
    return pen.drawing("unit", "Half-square triangle", "A dark & a light triangle.")


def test_a_small_unit_in_full(golden: Golden) -> None:
    golden(svg(unit()).replace("><", ">\n<") + "\n", "strokes/unit.svg")


def test_it_tells_what_it_shows() -> None:
    root = ET.fromstring(svg(unit()))  # noqa: S314 - our own words
    assert root.get("role") == "img"
    assert root.findtext(f"{NAME}title") == "Half-square triangle"
    assert root.findtext(f"{NAME}desc") == "A dark & a light triangle."
    ids = {child.get("id") for child in root}
    assert set((root.get("aria-labelledby") or "").split()) <= ids
    assert [text.text for text in root.iter(f"{NAME}text")] == ["A", "cut <2½″>"]


def test_half_the_scale_is_half_the_size_and_the_same_corners() -> None:
    def whole(scale: float) -> tuple[str, str]:
        pen = Pen(2, 2, scale)
        pen.rectangle(0, 0, 1.5, 2, Fill("#26436a"))
        root = ET.fromstring(svg(pen.drawing("d", "d", "d")))  # noqa: S314
        (path,) = root.iter(f"{NAME}path")
        return root.get("width") or "", path.get("d") or ""

    (wide, one), (half, two) = whole(1), whole(0.5)
    assert (wide, half) == ("2in", "1in")
    assert one == two


def test_a_picture_has_the_size_asked_for_and_the_same_bytes_twice() -> None:
    picture = png(unit(), dpi=200)
    assert struct.unpack(">II", picture[16:24]) == (200, 200)
    assert picture == png(unit(), dpi=200)
    assert b"tEXt" not in picture
    assert b"tIME" not in picture
