"""Drawings beside the source: read for their lines alone, whatever else is in them."""

from __future__ import annotations

import math
import time
from itertools import pairwise
from pathlib import Path

import pytest

from patternbook.source.bends import area, simpler
from patternbook.source.load import load
from patternbook.source.svg import DrawingFault, picture

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
CIRCLE = (
    f'{HEAD} width="4in" height="4in" viewBox="0 0 400 400">'
    '<circle cx="200" cy="200" r="100"/></svg>'
)
SHAPE = '<path d="M0 0 H96 V96 H0 Z"/>'
LAUGHS = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))


def svg(inside: str, before: str = "") -> str:
    return f"{before}{HEAD}>{inside}</svg>"


def test_a_circle_is_round_to_a_sixty_fourth_and_as_large_as_drawn() -> None:
    found = picture(CIRCLE)
    assert (found.across, found.down) == pytest.approx((2, 2), abs=1e-3)
    (curve,) = found.curves
    assert curve[0] == curve[-1]
    for (ax, ay), (bx, by) in pairwise(curve):
        assert math.hypot(ax - 1, ay - 1) == pytest.approx(1, abs=1e-3)
        assert 1 - math.hypot((ax + bx) / 2 - 1, (ay + by) / 2 - 1) < 1 / 64
    assert abs(area(curve[:-1])) == pytest.approx(math.pi, rel=2e-3)


def test_the_largest_closed_line_is_the_shape_and_others_stay() -> None:
    vein = '<path d="M10 48 L80 48" fill="none" stroke="black"/>'
    eye = '<circle cx="20" cy="20" r="5"/>'
    found = picture(svg(eye + vein + SHAPE))
    assert abs(area(found.curves[0][:-1])) == pytest.approx(1)  # a square inch
    assert len(found.curves) == 3
    assert sum(curve[0] != curve[-1] for curve in found.curves) == 1


def test_transforms_and_units_are_worked_in() -> None:
    moved = svg(f'<g transform="translate(50 20) scale(2)">{SHAPE}</g>')
    assert picture(moved).across == pytest.approx(2)
    metric = (
        f'{HEAD} width="10cm" height="10cm" viewBox="0 0 100 100">'
        '<rect width="50" height="100"/></svg>'
    )
    found = picture(metric)
    assert (found.across * 2.54, found.down * 2.54) == pytest.approx((5, 10))


def test_what_cannot_be_seen_is_no_line() -> None:
    guide = '<rect width="900" height="900" fill="none" stroke="none"/>'
    hidden = '<rect width="900" height="900" style="display:none"/>'
    text = "<text>pear</text><script>alert(1)</script>"
    assert picture(svg(guide + hidden + text + SHAPE)).across == pytest.approx(1)


def test_a_plain_document_type_is_no_fault() -> None:
    before = (
        '<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" '
        '"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'
    )
    assert picture(svg(SHAPE, before)).across == pytest.approx(1)


BAD = {
    "entities": (svg("<text>&l9;</text>", f"<!DOCTYPE svg [{LAUGHS}]>"), "drawing-unsafe"),
    "a file of the machine": (
        svg(f"<text>&x;</text>{SHAPE}", '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>'),
        "drawing-unsafe",
    ),
    "a picture of the network": (
        svg(f'<image xlink:href="http://example.invalid/p.png"/>{SHAPE}'),
        "drawing-unsafe",
    ),
    "a copy from another file": (svg('<use href="other.svg#a"/>'), "drawing-unsafe"),
    "copies of copies": (
        svg(
            f'<g id="a0">{SHAPE}</g>'
            + "".join(f'<g id="a{n}">{f"""<use href="#a{n - 1}"/>""" * 9}</g>' for n in range(1, 9))
        ),
        "drawing-unsafe",
    ),
    "groups without end": (
        svg("<g transform='scale(1)'>" * 9000 + "</g>" * 9000),
        "drawing-unsafe",
    ),
    "thousands of parts": (svg(SHAPE * 5000), "drawing-unsafe"),
    "thousands of bends": (
        svg(f'<path d="M0 0 {"C 1 2 3 4 5 6 " * 5000} Z"/>'),
        "drawing-unsafe",
    ),
    "cut off": (f"{HEAD}><path d='M0 0", "drawing-unreadable"),
    "not drawn at all": ("<html><body/></html>", "drawing-unreadable"),
    "nothing": ("", "drawing-unreadable"),
    "only a line": (svg('<path d="M0 0 L9 9" fill="none" stroke="red"/>'), "drawing-shape"),
    "only words": (svg("<text>pear</text>"), "drawing-shape"),
    "a shape of no size": (svg('<rect width="0" height="0"/>'), "drawing-shape"),
    "numbers that are none": (svg('<path d="M0 0 L nan 9 1e999 8 Z"/>'), None),
}


@pytest.mark.parametrize("what", BAD)
def test_what_is_no_drawing_is_told_and_quickly(what: str) -> None:
    text, code = BAD[what]
    start = time.perf_counter()
    with pytest.raises(DrawingFault) as fault:
        picture(text)
    assert time.perf_counter() - start < 2
    assert code in (fault.value.code, None)
    assert fault.value.hint


def source(folder: Path, drawing: str) -> Path:
    path = folder / "pear" / "pattern.yaml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(
        "pattern: Trial\nsizes: {one: {}}\npieces:\n"
        f"  L: {{template: drawing, drawing: {drawing}, count: 1}}\n"
    )
    return path


@pytest.mark.parametrize(
    ("drawing", "code"),
    [
        ("pear.svg", "drawing-missing"),
        ("../outside.svg", "drawing-missing"),
        ("/etc/hostname", "drawing-missing"),
        ("pear.txt", "drawing-missing"),
        ("big.svg", "drawing-unsafe"),
        ("wide.svg", "drawing-unreadable"),
    ],
)
def test_a_file_that_cannot_be_used_is_named(tmp_path: Path, drawing: str, code: str) -> None:
    path = source(tmp_path, drawing)
    (tmp_path / "outside.svg").write_text(CIRCLE)
    (path.parent / "pear.txt").write_text(CIRCLE)
    (path.parent / "big.svg").write_bytes(b"<svg>" + b" " * 1_000_001)
    (path.parent / "wide.svg").write_bytes(CIRCLE.encode("utf-16"))
    _, notices = load(path, "pattern.yaml")
    assert [notice.code for notice in notices] == [code]
    assert drawing in notices[0].message
    assert notices[0].marks[0].place.line == 4


def test_a_drawing_in_the_folder_is_read(tmp_path: Path) -> None:
    path = source(tmp_path, "shapes/pear.svg")
    (path.parent / "shapes").mkdir()
    (path.parent / "shapes" / "pear.svg").write_text(CIRCLE)
    found, notices = load(path, "pattern.yaml")
    assert not notices
    assert found is not None
    assert list(found.pictures) == ["shapes/pear.svg"]


def test_a_simpler_line_stays_near() -> None:
    wave = [(x / 10, math.sin(x / 10)) for x in range(100)]
    few = simpler(wave, 0.02)
    assert len(few) < 40
    assert (few[0], few[-1]) == (wave[0], wave[-1])
