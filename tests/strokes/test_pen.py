"""The pen records strokes; nothing is drawn yet."""

import math

import pytest

from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import Arrow, Drawing, Fill, Label, Line, Patch
from tests.support import PACKAGE, imports

CREAM = Fill("#f6ecd9")


def test_strokes_are_kept_in_the_order_drawn() -> None:
    pen = Pen(4, 2, 0.5)
    pen.rectangle(0, 0, 2, 2, CREAM)
    pen.line(((0, 1), (2, 1)), "cut")
    pen.label(1, 1, "A")
    drawing = pen.drawing("unit", "A unit", "A square, cut in two.")
    assert drawing.strokes == (
        Patch(((0, 0), (2, 0), (2, 2), (0, 2)), CREAM),
        Line(((0, 1), (2, 1)), "cut"),
        Label(1, 1, "A", 8.0),
    )
    assert drawing.inches == (2, 1)


def test_a_point_on_paper_depends_on_the_scale() -> None:
    assert Pen(10, 10, 0.5).pt(36) == pytest.approx(1)  # half an inch on paper is one unit


def test_a_dimension_has_two_bars_an_arrow_and_its_words_above() -> None:
    pen = Pen(12, 4, 1)
    pen.dimension((1, 2), (9, 2), "8½″")
    kinds = [type(stroke) for stroke in pen.strokes]
    assert kinds == [Line, Line, Arrow, Label]
    words = pen.strokes[-1]
    assert isinstance(words, Label)
    assert (words.x, words.angle) == (5, 0)
    assert words.y < 2


@pytest.mark.parametrize(
    ("a", "b", "angle"),
    [((0, 0), (4, 0), 0), ((4, 0), (0, 0), 0), ((0, 4), (0, 0), 90), ((0, 0), (0, 4), 90)],
)
def test_words_of_a_dimension_are_never_upside_down(
    a: tuple[float, float], b: tuple[float, float], angle: float
) -> None:
    pen = Pen(4, 4, 1)
    pen.dimension(a, b, "4″")
    words = pen.strokes[-1]
    assert isinstance(words, Label)
    assert words.angle == pytest.approx(angle)


def test_a_label_fits_a_wide_patch_and_not_a_narrow_one() -> None:
    pen = Pen(10, 10, 1)
    assert pen.fits("6½″ × 6½″", 8, 1, 1)
    assert not pen.fits("6½″ × 6½″", 8, 0.3, 1)
    assert not pen.fits("A", 8, 1, 0.08)


def test_a_letter_on_hatching_gets_a_slip_to_stand_on() -> None:
    from patternbook.strokes.tones import WASTE

    pen = Pen(1, 1, 1)
    pen.letter(0.5, 0.5, "A", WASTE)
    pen.letter(0.5, 0.5, "A", Fill("#26436a"))
    assert [(s.plate, s.colour) for s in pen.strokes if isinstance(s, Label)] == [
        ("#f4f4f4", "#222222"),
        (None, "#ffffff"),
    ]


@pytest.mark.parametrize(
    ("quarters", "tip"), [(0, (1, 0)), (1, (0, 1)), (2, (-1, 0)), (3, (0, -1)), (-1, (0, -1))]
)
def test_quarter_turns_go_clockwise_as_seen(quarters: int, tip: tuple[float, float]) -> None:
    assert Placing.still.turned(quarters).point((1, 0)) == tip


def test_placings_are_chained_in_the_order_they_happen() -> None:
    assert Placing.still.moved(1, 0).turned(1).scaled(2).point((1, 0)) == (0, 4)
    assert Placing.still.turned(1).moved(1, 0).point((1, 0)) == (1, 1)
    assert Placing.still.mirrored().point((3, 1)) == (-3, 1)


def test_a_drawing_put_into_another_keeps_its_labels_upright() -> None:
    unit = Pen(2, 2, 1)
    unit.patch(((0, 0), (2, 0), (0, 2)), CREAM)
    unit.label(0.5, 0.5, "A")
    pen = Pen(4, 4, 1)
    pen.place(unit.drawing("unit", "A unit", "Half a square."), Placing.still.turned(2).moved(2, 2))
    assert pen.strokes == [
        Patch(((2, 2), (0, 2), (2, 0)), CREAM),
        Label(1.5, 1.5, "A", 8.0),
    ]


def test_a_circle_is_round_to_less_than_a_hundredth_of_its_radius() -> None:
    pen = Pen(2, 2, 1)
    pen.circle(1, 1, 1)
    (patch,) = pen.strokes
    assert isinstance(patch, Patch)
    middles = [
        math.dist((1, 1), ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2))
        for a, b in zip(patch.points, patch.points[1:], strict=False)
    ]
    assert 0.99 < min(middles) <= max(middles) < 1


@pytest.mark.parametrize(
    ("name", "alt", "width"),
    [("Unit", "x", 1), ("a_b", "x", 1), ("unit", " ", 1), ("unit", "x", 0)],
)
def test_a_drawing_has_a_name_words_and_a_size(name: str, alt: str, width: float) -> None:
    with pytest.raises(ValueError, match=r"name|words|size"):
        Drawing(name, "title", alt, width, 1, 1, ())


def test_a_colour_is_six_digits() -> None:
    with pytest.raises(ValueError, match="colour"):
        Fill("red")


@pytest.mark.parametrize("module", ["stroke", "placing", "pen", "signs", "tones", "lettering"])
def test_the_pen_needs_neither_numpy_nor_matplotlib(module: str) -> None:
    text = (PACKAGE / "strokes" / f"{module}.py").read_text("utf-8")
    heavy = {"artists", "operators", "page", "paper", "png", "renderer", "settled", "svg"}
    names = {name for _, name in imports(text)}
    assert not {name for name in names if name.partition(".")[0] in ("numpy", "matplotlib")}
    assert not names & {f"patternbook.strokes.{name}" for name in heavy}
