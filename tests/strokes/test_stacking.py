"""Strokes are gathered by look, and never pass over one another."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from patternbook.strokes.pen import Pen
from patternbook.strokes.placing import Placing
from patternbook.strokes.stacking import layers
from patternbook.strokes.stroke import Fill, Patch, Point, Stroke

DARK, LIGHT = Fill("#26436a"), Fill("#f6ecd9")


def looks(pen: Pen) -> list[int]:
    """How many strokes each layer holds, lowest first."""
    return [len(layer.strokes) for layer in layers(pen.drawing("d", "d", "d"))]


def test_a_chequered_top_is_two_layers() -> None:
    pen = Pen(30, 30, 0.2)
    for row in range(30):
        for column in range(30):
            pen.rectangle(column, row, 1, 1, DARK if (row + column) % 2 else LIGHT)
    assert looks(pen) == [450, 450]


def test_triangles_of_one_square_do_not_hold_one_another_up() -> None:
    pen = Pen(8, 8, 1)
    for corner in range(8):
        halves = ((DARK, LIGHT), (LIGHT, DARK))[corner % 2]
        pen.patch(((corner, 0), (corner + 1, 0), (corner, 1)), halves[0])
        pen.patch(((corner + 1, 0), (corner + 1, 1), (corner, 1)), halves[1])
    assert looks(pen) == [8, 8]


def test_squares_on_point_are_gathered_too() -> None:
    pen = Pen(20, 20, 1)
    for step in range(1, 18):
        square = [(step + 1, step), (step + 2, step + 1), (step + 1, step + 2), (step, step + 1)]
        pen.patch(square, DARK)
    assert looks(pen) == [17]


def test_a_patch_on_top_stays_on_top() -> None:
    pen = Pen(4, 4, 1)
    pen.rectangle(0, 0, 2, 2, DARK)
    pen.rectangle(1, 1, 2, 2, LIGHT)
    pen.rectangle(1.5, 1.5, 2, 2, DARK)
    assert looks(pen) == [1, 1, 1]


def test_an_upper_piece_of_the_same_fabric_hides_the_edge_below() -> None:
    pen = Pen(4, 4, 1)
    pen.rectangle(0, 0, 2, 2, DARK)
    pen.rectangle(0.2, 0.2, 2, 2, DARK)
    assert looks(pen) == [1, 1]


def test_long_lines_over_a_top_are_one_layer() -> None:
    pen = Pen(20, 20, 0.3)
    for row in range(20):
        for column in range(20):
            pen.rectangle(column, row, 1, 1, DARK)
    for shift in range(20):
        pen.line(((0, shift), (20, 20 - shift)), "quilting")
    assert looks(pen) == [400, 20]


shapes = st.tuples(
    st.integers(0, 9), st.integers(0, 9), st.integers(1, 6), st.integers(1, 6), st.booleans()
)


@given(st.lists(shapes, max_size=25), st.integers(0, 1))
def test_what_overlaps_keeps_its_order(drawn: list[tuple[int, ...]], turn: int) -> None:
    """Whichever of two overlapping patches was drawn later is painted later."""
    pen = Pen(16, 16, 1)
    for x, y, width, height, dark in drawn:
        pen.rectangle(x, y, width, height, DARK if dark else LIGHT)
    pen.strokes = [Placing.still.turned(turn).moved(16 * turn, 0).stroke(s) for s in pen.strokes]
    painted = [s for layer in layers(pen.drawing("d", "d", "d")) for s in layer.strokes]
    assert sorted(map(id, painted)) == sorted(map(id, pen.strokes))
    place = {id(stroke): index for index, stroke in enumerate(painted)}
    for index, upper in enumerate(pen.strokes):
        for lower in pen.strokes[:index]:
            if overlap(upper, lower):
                assert place[id(lower)] < place[id(upper)]


def overlap(one: Stroke, two: Stroke) -> bool:
    """For upright rectangles: reckoned apart from what is tested."""
    (a, b), (c, d) = (sides(stroke, 0) for stroke in (one, two))
    (e, f), (g, h) = (sides(stroke, 1) for stroke in (one, two))
    return min(b, d) > max(a, c) and min(f, h) > max(e, g)


def sides(stroke: Stroke, axis: int) -> Point:
    assert isinstance(stroke, Patch)
    values = sorted(point[axis] for point in stroke.points)
    return values[0], values[-1]


def test_the_layers_do_not_grow_with_the_quilt() -> None:
    counts = []
    for size in (10, 40):
        pen = Pen(size, size, 0.1)
        for row in range(size):
            for column in range(size):
                fill = DARK if (row * column) % 3 else LIGHT
                pen.rectangle(column, row, 1, 1, fill)
                pen.letter(column + 0.5, row + 0.5, "A", fill, 2)
        counts.append(len(looks(pen)))
    assert all(a == b for a, b in pairwise(counts))
