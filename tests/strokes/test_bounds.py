"""Nothing of a drawing may be lost at its rim."""

import pytest

from patternbook.strokes.bounds import outside, reach
from patternbook.strokes.lettering import CAP_HEIGHT, text_width
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Label, Line


def test_a_line_reaches_half_its_width_further() -> None:
    """At one inch a unit, 1.6 points are 1.6/72 of a unit."""
    half = 0.8 / 72
    cut = Line(((1, 1), (3, 1)), "cut")
    assert reach(cut, 1) == pytest.approx((1 - half, 1 - half, 3 + half, 1 + half))


def test_a_turned_label_reaches_up_as_far_as_it_is_wide() -> None:
    wide, high = text_width("2½″", 9) / 72, 9 * CAP_HEIGHT / 72
    left, top, right, low = reach(Label(5, 5, "2½″", 9, "start", angle=90), 1)
    assert low - top == pytest.approx(wide)
    assert low == pytest.approx(5)
    assert left == pytest.approx(5 - high / 2)
    assert right > 5 + high / 2  # room for what hangs below the line


def test_what_hangs_over_the_rim_is_named() -> None:
    pen = Pen(2, 2, 1)
    pen.rectangle(0, 0, 2, 2)
    pen.label(1, 1, "middle")
    pen.label(1.9, 1, "over the rim")
    pen.line(((1, 1), (1, 2.1)), "cut")
    found = outside(pen.drawing("d", "d", "d"))
    assert [stroke for stroke in pen.strokes if stroke in found] == pen.strokes[2:]
