"""A shape that is another one when it is turned over is cut in two hands."""

import pytest

from patternbook.exact import Exact
from patternbook.methods.made import Outline, Spot
from patternbook.quilt.turned_pieces import handed


@pytest.mark.parametrize(
    ("corners", "two_hands"),
    [
        pytest.param([(0, 0), (4, 0), (4, 4), (0, 4)], False, id="square"),
        pytest.param([(0, 0), (4, 0), (0, 4)], False, id="half square"),
        pytest.param([(0, 0), (5, 0), (8, 4), (3, 4)], False, id="diamond, on a straight edge"),
        pytest.param([(0, 0), (4, 0), (6, 3), (2, 3)], True, id="slanting oblong"),
        pytest.param([(0, 0), (3, 0), (0, 6)], True, id="half of an oblong"),
    ],
)
def test_a_shape_has_two_hands(corners: list[tuple[int, int]], two_hands: bool) -> None:
    outline = Outline(tuple(Spot(Exact(x), Exact(y)) for x, y in corners))
    assert handed(outline) is two_hands
