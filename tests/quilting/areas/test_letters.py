"""Areas that are alike share a letter, and are numbered row by row."""

from shapely import Polygon
from shapely.affinity import rotate, scale, translate

from patternbook.quilting.areas.letters import lettered, reading
from patternbook.quilting.areas.parts import Part
from patternbook.quilting.records import AreaKind
from patternbook.quilting.top import RULES
from tests.quilting.areas.laid import box

INCHES = RULES["in"]
HOOK = Polygon([(0, 0), (9, 0), (9, 3), (3, 3), (3, 6), (0, 6)])


def keys(*shapes: Polygon, kind: AreaKind = "ground", pieces: str = "") -> list[str]:
    found = lettered([Part(kind, shape) for shape in shapes], INCHES, pieces)
    return [f"{letter}{number}" for letter, number in found]


def test_a_shape_turned_or_mirrored_keeps_its_letter() -> None:
    assert keys(HOOK, rotate(HOOK, 90), rotate(HOOK, 45), scale(HOOK, -1)) == [
        *("P1", "P2", "P3", "P4")
    ]


def test_another_size_or_shape_gets_another_letter() -> None:
    assert keys(box(0, 0, 6, 6), box(9, 0, 6, 6), box(0, 9, 6, 7), HOOK) == ["P1", "P2", "Q1", "R1"]


def test_strips_are_told_alike_by_their_width() -> None:
    strips = box(0, 0, 4, 40), box(0, 0, 60, 4), box(0, 0, 5, 40)
    assert keys(*strips, kind="border") == ["P1", "P2", "Q1"]
    assert keys(*strips, kind="piecing") == ["P1", "P2", "Q1"]


def test_the_letters_of_pieces_are_not_used_again() -> None:
    shapes = [box(0, 0, 6, 6), box(0, 0, 6, 8), box(0, 0, 6, 10)]
    assert keys(*shapes, pieces="ABPR") == ["Q1", "S1", "T1"]


def test_with_many_sizes_those_that_are_nearly_alike_go_together() -> None:
    """Nine squares of 6 to 18, each 1½ larger: more than eight letters. Within 12 %, 13½ goes with
    12 (1½ of 13½ is 11 %), and 16½ with 15; 15 would lie a fifth over 12."""
    squares = [box(0, 0, 6 + 1.5 * n, 6 + 1.5 * n) for n in range(9)]
    assert keys(*squares) == ["P1", "Q1", "R1", "S1", "T1", "T2", "U1", "U2", "V1"]


def test_areas_are_read_row_by_row() -> None:
    """Middles half an inch apart in height lie in one row."""
    places = [(9, 0.5), (0, 0), (18, 0), (0, 9), (9, 8.5)]
    parts = [Part("ground", translate(box(0, 0, 6, 6), x, y)) for x, y in places]
    read = [part.shape.bounds[:2] for part in reading(parts, 1.0)]
    assert read == [(0, 0), (9, 0.5), (18, 0), (0, 9), (9, 8.5)]
