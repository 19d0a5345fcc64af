"""Units that a method of its own sews: sketches in the order of work, and the unit as made."""

import math
from collections import Counter

import pytest

from patternbook.diagrams import pieced
from patternbook.diagrams.laid import Lying, shown
from patternbook.diagrams.panels import in_lines
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.shape import Points, centre, holds
from patternbook.diagrams.sheet import cropped
from patternbook.methods.made import Action, Drawn, Turn
from patternbook.quilt.records import PiecedMade, Unit
from patternbook.strokes.stroke import Arrow, Drawing, Patch
from tests.diagrams.by_hand import patch, seam, size_with, square, unit
from tests.diagrams.drawn import clashes, covered, drawn, labels, pattern_of, told, words
from tests.support import Golden

PINWHEEL = "tests/data/kinds/10-pinwheel.yaml"
ON_POINT = "tests/data/kinds/19-on-point.yaml"
CHURN = "tests/data/kinds/22-churn-dash.yaml"

PATCHES = [
    patch("A", (2, 0), (4, 2), (0, 2)),
    patch("B", (0, 0), (2, 0), (0, 2)),
    patch("B", (2, 0), (4, 0), (4, 2)),
]
CORNERS = Drawn("back", ((0, 0), (2.5, 0), (2.5, 2.5), (0, 2.5)), "B")
CLOTH = Drawn("patch", ((0, 0), (4.5, 0), (4.5, 2.5), (0, 2.5)), "A")
GOOSE = unit(
    4,
    2,
    PATCHES,
    [seam((2, 0), (0, 2), 0, 1, 1), seam((2, 0), (4, 2), 0, 2, 2)],
    [
        Action("mark", "Draw a line.", (), (CORNERS, Drawn("mark", ((2.5, 0), (0, 2.5))))),
        Action("press", "Press."),
        Action("sew", "Sew.", (), (CLOTH, CORNERS, Drawn("sew", ((2.5, 0), (0, 2.5))))),
    ],
)
PEAR = unit(
    9, 9, [square("A", 0, 0, 9, 9), patch("B", (3, 3), (6, 3), (6, 6), (3, 6), laid_on=True)]
)


def made_of(one: Unit) -> tuple[Drawing, Size]:
    """Its drawing."""
    size = size_with(one)
    assert isinstance(one.made, PiecedMade)
    pen = in_lines(pieced.panels(size, one, one.made), (3.5, 3.3), 0.16)
    return cropped(pen, "unit-trial", "Trial", pieced.described(size, one, one.made)), size


def test_a_sketch_has_the_number_of_its_action() -> None:
    """The second action has none, so the second sketch is the third's."""
    said = words(made_of(GOOSE)[0])
    assert [word for word in said if word.isdigit()] == ["1", "3"]


def test_every_patch_is_lettered_and_measured_raw_edge_to_raw_edge() -> None:
    said = Counter(words(made_of(GOOSE)[0]))
    assert said["4½″"] == said["2½″"] == 1
    assert said["B"] == 4  # twice in the sketches, twice as made
    assert said["A"] == 2


def test_the_words_say_where_each_piece_lies() -> None:
    assert made_of(GOOSE)[0].alt == (
        "Trial as made: A at the bottom, B top left and top right. It measures 4½ × 2½″ from raw "
        "edge to raw edge. Its seams are pressed toward B. Sketches: 1: wrong side of B, 1 pencil "
        "line; 3: right side of A, wrong side of B, 1 seam."
    )


@pytest.mark.parametrize("one", [GOOSE, PEAR])
def test_no_words_run_into_one_another(one: Unit) -> None:
    drawing, _ = made_of(one)
    assert list(clashes(drawing)) == []
    assert list(covered(drawing)) == []


def test_the_letter_of_a_ground_is_written_beside_what_is_laid_on_it() -> None:
    drawing, size = made_of(PEAR)
    ground, pear = shown(size, Lying("trial", Turn(), 0, 0, 9, 9))
    assert ground.over == (pear.points,)
    heads = {label.text: label for label in labels(drawing)}
    assert math.dist((heads["A"].x, heads["A"].y), (heads["B"].x, heads["B"].y)) > 1.5


# ---- what comes of a source


def shapes(source: str, called: str) -> list[tuple[str, Points]]:
    """The patches of a unit as made, by letter."""
    size = pattern_of(source).first
    one = size.quilt.units[called]
    sides = float(one.finished.across), float(one.finished.down)
    return [
        (patch.letter, patch.points or ())
        for patch in shown(size, Lying(called, Turn(), 0, 0, *sides))
    ]


def test_a_half_square_triangle_in_full(golden: Golden) -> None:
    golden(told(drawn(PINWHEEL)["unit-blade"]), "strokes/unit-blade.txt")


def test_every_wing_of_a_pinwheel_turns_one_way() -> None:
    """As the source lays them: a blade's A lies top left; turned right, half and left."""
    middles = [centre(points) for letter, points in shapes(PINWHEEL, "windmill") if letter == "A"]
    turns = sorted(math.degrees(math.atan2(y - 4, x - 4)) % 90 for x, y in middles)
    assert turns == pytest.approx([turns[0]] * 4)
    # Each wing is at the clockwise side of its blade: 18.4 degrees behind the quarter's middle.
    assert turns[0] != pytest.approx(45)


@pytest.mark.parametrize("source", [PINWHEEL, CHURN])
def test_a_press_arrow_points_into_the_part_that_takes_the_seam(source: str) -> None:
    """From the drawing alone: the arrow's head lies in the patch that the plan names."""
    for size, one in pattern_of(source).units():
        if isinstance(one.made, PiecedMade):
            toward = size.plans.sewing.pressing[one.name].inner[0]
            assert toward is not None
            drawing = drawn(source)[f"unit-{one.name}"]
            (arrow,) = (
                stroke
                for stroke in drawing.strokes
                if isinstance(stroke, Arrow) and stroke.role == "press"
            )
            head = arrow.points[-1]
            found = [
                stroke
                for stroke in drawing.strokes
                if isinstance(stroke, Patch) and holds(stroke.points, head)
            ]
            letter = one.placed[toward].part
            assert size.fill(letter, 1) in [stroke.fill for stroke in found]


def test_turned_units_lie_apart_with_the_sign_of_their_top() -> None:
    """Churn dash: four corners and four bars, one of each lying as made; nine signs with the
    heading's own."""
    signs = [
        stroke
        for stroke in drawn(CHURN)["unit-churn"].strokes
        if isinstance(stroke, Patch) and stroke.outline is None and len(stroke.points) == 3
    ]
    assert len(signs) == 8 + 2


def test_slanting_rows_are_numbered_from_the_top_left() -> None:
    """Crib: 3 × 4 blocks and the grid between, in six slanting rows."""
    drawing = drawn(ON_POINT)["rows-top-crib"]
    numbers = [label for label in labels(drawing) if label.text.isdigit()]
    assert [label.text for label in numbers] == ["1", "2", "3", "4", "5", "6"]
    places = [label.x + label.y for label in numbers]
    assert places == sorted(places)
    said = Counter(words(drawing))
    assert (said["nine"], said["S"], said["K"]) == (18, 10, 4)
