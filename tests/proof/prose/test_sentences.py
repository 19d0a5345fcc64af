"""Numbers in the author's own sentences: each with what is told of it, and silent once mended.

The sentences are invented after the kinds seen in print (common practice, no source); every right
value was reckoned by hand.
"""

from pathlib import Path
from typing import Final, NamedTuple

import pytest

from tests.proof.prose.sources import CUPS, HOURS, PARTS, all_told, told


class Wrong(NamedTuple):
    """A sentence with its wrong figure, and what must be told."""

    sentence: str
    code: str
    rule: str
    stated: str
    needed: str
    source: str = CUPS
    at: str = "words"


# In the lap 30 cups, 6 rows of 5; each finishes 6 and measures 6 1/2.
WRONG: Final = (
    # Lengths of a part that is named.
    Wrong("A is cut 3 1/4 wide.", "said-length", "R20", "3 1/4", "3 1/2"),
    Wrong("Cut S 2 1/2 x 6.", "said-length", "R20", "2 1/2 x 6", "2 1/2 x 6 1/2"),
    Wrong("Cut T 2 3/8 inches square.", "said-length", "R20", "2 3/8", "2 1/2"),
    Wrong("Every cup measures 6 3/4.", "said-length", "R20", "6 3/4", "6 1/2"),
    Wrong("Cut it 2 1/2 x 6 3/4.", "said-length", "R20", "2 1/2 x 6 3/4", "2 1/2 x 6 1/2", at="S"),
    Wrong("Sew an 8 1/8 inch strip on.", "said-length", "R20", "8 1/8", "6 1/2"),
    # Finished and raw.
    Wrong("The block measures 6.", "said-unlabelled", "R12", "6", "6 1/2"),
    Wrong("It measures 6.", "said-unlabelled", "R12", "6", "6 1/2", at="CUP"),
    Wrong("The cup finishes at 6 1/2.", "said-unlabelled", "R12", "6 1/2", "6"),
    Wrong("A cup measures 6 1/2 and finishes at 7.", "said-unlabelled", "R12", "7", "6"),
    Wrong("Trim the cup to 6 square.", "said-unlabelled", "R12", "6", "6 1/2"),
    Wrong(
        "The lap quilt measures 50 1/2 x 58.",
        "said-unlabelled",
        "R12",
        "50 1/2 x 58",
        "50 1/2 x 58 1/2",
    ),
    Wrong(
        "The centre of the lap measures 42 x 50 1/2 before borders.",
        "said-unlabelled",
        "R12",
        "42 x 50 1/2",
        "42 1/2 x 50 1/2",
    ),
    Wrong("Sew a 6 inch block.", "said-unlabelled", "R12", "6 inch block", "6 inch finished block"),
    # Counts. Of 12 squares 3 1/2 to a strip of 42 come 5 strips for 60 squares.
    Wrong("For the lap cut 6 strips of A.", "said-count", "R5", "6", "5"),
    Wrong("Make 32 cups for the lap.", "said-count", "R3", "32", "30"),
    Wrong("For the lap cut 70 rectangles 2 1/2 x 6 1/2.", "said-count", "R3", "70", "71"),
    Wrong("For the lap cut 40 squares 2 1/2.", "said-count", "R3", "40", "42"),
    Wrong("For the lap cut 70.", "said-count", "R3", "70", "71", at="S"),
    Wrong("Cut 5 strips of binding for the lap.", "said-count", "R14", "5", "6"),
    Wrong("Cut twelve strips of binding for the lap.", "said-count", "R14", "twelve", "6"),
    Wrong("Lay out 7 rows of 5 cups for the lap.", "said-count", "R8", "7", "6"),
    Wrong("Cut 20 squares of B.", "said-count", "R3", "20", "10", PARTS),
    Wrong("Make 18 half-square triangles.", "said-count", "R3", "18", "20", PARTS),
    Wrong("Buy 3/4 yd of tea for the lap.", "said-yards", "R4", "3/4", "7/8"),
    # Sums.
    Wrong("5 x 6 + 12 = 41.", "sum-wrong", "R24", "41", "42"),
    Wrong("In the lap 232 in needed / 42 = 5 strips.", "sum-wrong", "R5", "5", "6"),
    Wrong("42 / 2 1/2 = 17 squares.", "sum-wrong", "R5", "17", "16"),
    Wrong("In the lap 216 / 42 = 5 strips of binding.", "sum-wrong", "R14", "5", "6"),
    Wrong("120 / (110 / 12) x 12 = 157.", "sum-wrong", "R5", "157", "168"),
    Wrong("Half yard, 2 1/2 squares: 112 = 16 across x 8 down.", "sum-wrong", "R9", "8", "7"),
    Wrong("8 in squares from 1 yd: 25.", "sum-wrong", "R9", "25", "20"),
    Wrong("2 3/4 in squares from one yard: 208 = 16 x 13.", "sum-wrong", "R9", "16", "15"),
    Wrong("Cut triangles 6 1/2 + 7/8 = 7 3/8.", "sum-wrong", "R24", "7 3/8", "6 7/8", PARTS),
    Wrong("Cut squares 5 + 7/8 = 5 7/8.", "sum-wrong", "R2", "5 7/8", "6 1/4", HOURS),
    Wrong("Cut squares 5 1/2 + 1 1/4 = 6 3/4.", "sum-wrong", "R24", "6 3/4", "6 1/4", HOURS),
    Wrong("The unit finishes 5 1/2.", "said-unlabelled", "R12", "5 1/2", "5", HOURS),
    Wrong("Cut 4 light and 5 dark squares.", "said-count", "R3", "5", "4", HOURS),
    # The same in two units.
    Wrong("7/8 yd = 33 in.", "said-equivalent", "R17", "33", "31 1/2"),
    Wrong("1/3 yd = 13 in.", "said-equivalent", "R17", "13", "12"),
    Wrong("It measures 6 1/2 in (16 cm).", "said-equivalent", "R17", "16", "17", at="CUP"),
    Wrong("Cut S 2 1/2 in (6.25 cm) wide.", "said-equivalent", "R17", "6.25", "6.4"),
    # How it is written.
    Wrong(
        "Cut 4 2 1/2 squares.",
        "count-beside-size",
        "R23",
        "4 2 1/2 squares",
        "4 squares, each 2 1/2",
    ),
    Wrong("Cut 4-2½ squares.", "count-beside-size", "R23", "4-2½ squares", "4 squares, each 2½"),
    Wrong(
        "Cut 4 x 2 1/2 squares.",
        "count-beside-size",
        "R23",
        "4 x 2 1/2 squares",
        "4 squares, each 2 1/2",
    ),
    Wrong('Use 5/8" yard.', "two-units", "R23", '5/8" yard', "5/8 yard"),
    Wrong("Sew seams of 1/3 in.", "said-off-ruler", "R23", "1/3", "1/4"),
    Wrong("Cut T 2.5 in square.", "said-off-ruler", "R23", "2.5", "2 1/2"),
    # Words.
    Wrong("Cut WOF strips.", "unknown-abbreviation", "R10", "WOF", "width of fabric"),
    Wrong("Baste the wadding.", "other-word", "R10", "wadding", "batting"),
)


@pytest.mark.parametrize("wrong", WRONG, ids=lambda wrong: wrong.sentence)
def test_a_wrong_figure_is_told_with_the_right_one(tmp_path: Path, wrong: Wrong) -> None:
    notices = told(tmp_path, wrong.sentence, wrong.source, wrong.at)
    found = [(one.code, one.rule, one.stated, one.needed) for one in notices]
    assert (wrong.code, wrong.rule, wrong.stated, wrong.needed) in found


# Of these no single number is the mend, or the mend is a matter of words.
NOT_ONE_NUMBER: Final = (
    "Cut triangles 6 1/2",
    "Cut squares 5",
    "2 3/4 in",
    "Sew an 8 1/8",
    "Use 5/8",
    "Cut 4",
    "Lay out 7",
)


@pytest.mark.parametrize("wrong", WRONG, ids=lambda wrong: wrong.sentence)
def test_the_mended_sentence_is_silent(tmp_path: Path, wrong: Wrong) -> None:
    if wrong.sentence.startswith(NOT_ONE_NUMBER):
        return
    mended = wrong.sentence.replace(wrong.stated, wrong.needed, 1)
    assert told(tmp_path, mended, wrong.source, wrong.at) == []


@pytest.mark.parametrize(
    "sentence",
    [
        "For the lap cut 5 strips of A; for the throw 8.",
        "Make 30 cups for the lap and 48 for the throw.",
        "Sew 5 cups into each row of the lap.",
        "Press for 20 minutes at 180 °, as in 2019.",
        "The first was sewn on 2026-11-25 at 10:30.",
        "We needed [[437]] pins and {{ count.T }} squares.",
        "Use a 6 1/2 x 24 inch ruler, a size 14 needle and 2 mm stitches.",
        "WOF (width of fabric) is 42 inches.",
        "Sew two cups together, then two pairs.",
        "Sew 6 in a row.",
        "Sew 2 cups together.",
        "Buy 1/3 more if you doubt.",
        "DO NOT iron it.",
        "Cut [[4]] squares, each 2 1/2, for practice from each strip.",
        "Leave 1/4 inch all round.",
    ],
)
def test_what_is_right_or_no_figure_of_the_quilt_is_silent(tmp_path: Path, sentence: str) -> None:
    assert told(tmp_path, sentence) == []


@pytest.mark.parametrize(
    ("sentence", "code", "severity"),
    [
        ("Go back to step 3.", "typed-step", "advice"),
        ("Go back to step 30.", "no-such-step", "error"),
        ("See page 4.", "typed-page", "warning"),
        ("See figure 9.", "no-such-figure", "error"),
        ("There are 437 reasons.", "said-number", "warning"),
    ],
)
def test_references_and_numbers_of_nothing(
    tmp_path: Path, sentence: str, code: str, severity: str
) -> None:
    found = [(one.code, one.severity) for one in all_told(tmp_path, sentence)]
    assert found == [(code, severity)]
