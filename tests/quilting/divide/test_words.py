"""How to mark a line is told from seams and edges, in lengths on the marks of the ruler."""

import pytest

from patternbook.quilting.areas.channel import Channel
from patternbook.quilting.areas.marking import channel_lines
from patternbook.quilting.areas.measured import told, way
from patternbook.quilting.areas.roots import Root
from patternbook.quilting.top import RULES
from tests.quilting.divide.standing import divided, on_ground, pile

FIVE = pile("A", 6, 15, 5, 8)


def test_a_channel_out_of_the_third_bar() -> None:
    top, _ = on_ground(40, 40, FIVE)
    root = Root((14.0, 20.0), (1.0, 0.0), 2.0, 8.0, 2, (0.0, 0.0))
    lines = channel_lines(Channel(root, out=10.0, turn=1, far=20.0, echo=0.5), 1, top)
    on = "then turn square and go down to the edge"
    bar = "piece A number 3 of 5, counted from the top, that ends 14″ from the left edge and 20″"
    assert [(line.kind, line.words) for line in lines] == [
        (
            "channel",
            f"Channel 1: carry on the lower side of {bar} from the top, 9″ right, {on}.",
        ),
        (
            "channel",
            f"Channel 1: carry on the upper side of {bar} from the top, 11″ right, {on}.",
        ),
        ("echo", "Channel 1: an echo ½″ outside of its line, all along."),
        ("echo", "Channel 1: an echo ½″ outside of its line, all along."),
    ]


@pytest.mark.parametrize(
    ("length", "unit", "words"),
    [
        (15.75, "in", "15¾″"),
        (0.1 + 0.2 - 0.3 + 4.5, "in", "4½″"),
        (12.7279, "in", "about 12¾″"),
        (16.5, "cm", "16.5 cm"),
        (16.4, "cm", "about 16.5 cm"),
    ],
)
def test_lengths_are_told_on_the_marks(length: float, unit: str, words: str) -> None:
    assert told(length, RULES[unit]) == words


@pytest.mark.parametrize(
    ("to", "words"),
    [
        ((5, 0), "right"),
        ((-5, 0), "left"),
        ((0, 5), "down"),
        ((0, -5), "up"),
        ((3, 3), "down and to the right"),
        ((-3, -4), "up and to the left"),
    ],
)
def test_where_a_line_goes(to: tuple[float, float], words: str) -> None:
    assert way((0, 0), to) == words


def test_a_channel_is_moved_and_its_words_with_it() -> None:
    laid = on_ground(60, 72, pile("A", 20, 25, 9, 8))
    _, marked, _ = divided(laid)
    _, moved, said = divided(laid, move={"channel 1": 0.5})
    assert said == ()
    before, after = (next(one for one in of if one.kind == "channel") for of in (marked, moved))
    (x0, y0), (x1, y1) = before.path[1], after.path[1]
    assert abs(x1 - x0) + abs(y1 - y0) == 0.5
    assert before.words != after.words


def test_a_channel_stays_where_there_is_no_room() -> None:
    laid = on_ground(60, 72, pile("A", 20, 25, 9, 8))
    parts, marked, said = divided(laid, move={"channel 1": 90.0, "channel 9": 1.0})
    assert [one.split(":")[0] for one in said] == [
        "channel 9 cannot be moved",
        "channel 1 stays where it is",
    ]
    assert (parts, marked) == divided(laid)[:2]
