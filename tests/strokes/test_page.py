"""A drawing as operators of a page: few, short, and in whole numbers."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.path import Path
from matplotlib.transforms import Affine2D

from patternbook.strokes.artists import paper
from patternbook.strokes.operators import nums, outline, page_path
from patternbook.strokes.page import PageImage, PageRenderer
from patternbook.strokes.pen import Pen
from patternbook.strokes.settled import settled
from patternbook.strokes.stroke import Drawing, Fill

DARK, LIGHT = Fill("#336699"), Fill("#ffffff")


class Sheaf:
    """Stands for the page's stream, and keeps what is written."""

    def __init__(self) -> None:
        self.stream: list[bytes] = []

    def push_state(self) -> None:
        self.stream.append(b"q")

    def pop_state(self) -> None:
        self.stream.append(b"Q")

    def set_alpha(self, *_: object, **__: object) -> None: ...

    def transform(self, *matrix: float) -> None:
        self.stream.append(f"{nums(matrix)} cm".encode())


def operators(drawing: Drawing) -> list[str]:
    sheaf = Sheaf()
    with settled():
        renderer = PageRenderer(sheaf, None)
        paper(drawing).draw(renderer)
    renderer.close()
    return [line.decode() for line in sheaf.stream]


def test_squares_of_a_fabric_are_one_path_of_rectangles() -> None:
    pen = Pen(4, 1, 0.5)
    for at in range(4):
        pen.rectangle(at, 0, 1, 1, DARK if at % 2 else LIGHT)
    assert operators(pen.drawing("row", "row", "row")) == [
        "q",
        "36 0 0 -36 0 36 cm",
        "1 1 1 rg",
        "0.133 0.133 0.133 RG",
        "0.016667 w",
        "[] 0 d",
        "0 J",
        "1 j",
        "0 0 1 1 re\n2 0 1 1 re B",
        "0.2 0.4 0.6 rg",
        "1 0 1 1 re\n3 0 1 1 re B",
        "Q",
    ]


def test_a_triangle_and_a_line_without_ends() -> None:
    pen = Pen(2, 2, 1)
    pen.patch(((0, 0), (2, 0), (0.25, 2)), DARK, None)
    pen.line(((0, 1), (2, 1)), "cut")
    written = operators(pen.drawing("d", "d", "d"))
    assert "0 0 m 8 0 l 1 8 l h f" in written
    assert written[-2] == "0 1 m 2 1 l S"


def test_an_image_fills_the_box_it_is_given() -> None:
    pen = Pen(2, 1, 1)
    image = PageImage(pen.drawing("d", "d", "d"), None)
    assert image.get_intrinsic_size(1, 16) == (192, 96, 2)
    sheaf = Sheaf()
    image.draw(sheaf, 72, 36, None)
    assert sheaf.stream == [b"q", b"0.5 0 0 -0.5 0 36 cm", b"Q"]


points = st.tuples(st.floats(-50, 50), st.floats(-50, 50))


@given(st.lists(points, min_size=3, max_size=8), st.floats(0.01, 3))
def test_whole_numbers_lose_less_than_a_hundredth_of_a_point(
    corners: list[tuple[float, float]], scale: float
) -> None:
    matrix = Affine2D().scale(72 * scale, -72 * scale)
    shape = outline(Path(np.array(corners)), matrix)
    a, b, c, d, e, f = shape.matrix
    back = [(a * x + c * y + e, b * x + d * y + f) for x, y in shape.corners.tolist()]
    there = np.asarray(matrix.transform(np.array(corners)))
    assert np.abs(np.array(back) - there).max() <= 0.0072 + 1e-6


def test_a_matrix_that_stretches_moves_the_points_and_keeps_the_pen_round() -> None:
    shape = outline(Path(np.array([(0.0, 0.0), (1.0, 1.0)])), Affine2D().scale(72, 36))
    assert shape.pen * shape.matrix[0] == pytest.approx(1)
    assert page_path(shape.corners, shape.codes) == b"0 0 m 72 36 l"
