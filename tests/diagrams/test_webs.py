"""Fusible web as drawn: one row of each kind, its shapes reversed inside their boxes."""

from collections import Counter

import pytest

from patternbook.diagrams import drawings
from patternbook.edition.pipeline import examine
from patternbook.strokes.stroke import Drawing, Line, Patch
from tests.diagrams.drawn import patches, words
from tests.methods.drawn_shapes import with_shapes
from tests.support import WritePattern

FLAGS = """\
pattern: Flags
sizes: {one: {}}
fabrics: {table: {}, red: {}, web: {width: 17}}
pieces:
  G: {fabric: table, cut: 10 square}
  P: {fabric: red, template: drawing, drawing: shapes/flag.svg}
units:
  plate: {method: applique, ground: G, shapes: P, web: web, measure: 9 1/2 square}
top: {rows: [plate], across: 4, down: 3}
"""


@pytest.fixture
def web(pattern: WritePattern) -> Drawing:
    made = examine(with_shapes(pattern, FLAGS), "pattern.yaml")
    return drawings(made.heading, made.sizes)["web-web-one"]  # type: ignore[arg-type]


def test_a_row_of_each_kind(web: Drawing) -> None:
    """Flags of 3 × 2 with ¼ all round are 3½ × 2½: four across 17, so 12 in three rows."""
    said = words(web)
    assert Counter(said)["P"] == 4
    assert {"width 17″", "2½″", "× 3", "4 P"} <= set(said)
    assert "3 rows, each 2½″ long with 4 P" in web.alt
    # Each shape has five corners, and is cut out in a box of four.
    assert sum(len(one.points) == 5 for one in patches(web)) == 4
    assert sum(isinstance(one, Line) and one.role == "outline" for one in web.strokes) == 4


def test_shapes_are_traced_reversed(web: Drawing) -> None:
    """The flag's notch, on its right as it is laid, lies on its left on the web."""
    paper, first, *_ = (one for one in web.strokes if isinstance(one, Patch))
    left, top = (min(point[axis] for point in paper.points) for axis in (0, 1))
    corners = {(round(x - left, 3), round(y - top, 3)) for x, y in first.points}
    assert (1.25, 1.25) in corners
    assert (2.25, 1.25) not in corners
