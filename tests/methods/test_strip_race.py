"""Strip races: width, rows, joins, and where each strip comes to lie.

Width = (N × L - join × (N - 1) - cut off) ÷ 2^folds - ½, the sum that quilters print:
https://quiltkisses.blogspot.com/2015/01/calculations-for-race-quilt-variations.html; that rows
only double (26 cannot be): https://patchworkplayground.blogspot.com/2012/03/flaw-in-math.html
"""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.methods.made import PiecedMade
from patternbook.methods.race_rows import Row, folded
from patternbook.quilt.records import Unit
from tests.methods.test_cut_apart import _area
from tests.methods.test_logs import quilt
from tests.published.reading import one_size, told
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

RACE = """
pattern: Race
sizes: {one: {finished: about FINISHED}}
fabrics:
  roll: {use: strips, form: strip roll, size: 2 1/2 x 40, pack: 40}
pieces:
  A: {fabric: roll, cut: 2 1/2 x WOF, join: JOIN}
  B: {fabric: roll, cut: 2 1/2 x WOF, join: JOIN}
top: {method: strip race, from: STRIPS, folds: FOLDS, shorten: 18}
"""


def race(strips: str, folds: int, finished: str = "", join: str = "diagonal") -> str:
    text = RACE.replace("STRIPS", strips).replace("FOLDS", str(folds)).replace("JOIN", join)
    if "B" not in strips:
        text = text.replace(text[text.index("  B:") : text.index("top:")], "")
    stated = f"finished: about {finished}" if finished else ""
    return text.replace("finished: about FINISHED", stated)


@pytest.mark.parametrize(
    ("strips", "folds", "join", "finished", "exactly"),
    [
        # 20 × 40 - 19 × 2½ = 752½ - 18 = 734½; ÷ 16 = 45.906 - ½ = 45.41; 16 × 2 = 32
        ("A*20", 4, "diagonal", "45 3/8 x 32", 45.40625),
        # 40 × 40 - 39 × 2½ = 1502½ - 18 = 1484½; ÷ 32 = 46.391 - ½ = 45.89; 32 × 2 = 64
        ("(A B)*20", 5, "diagonal", "45 7/8 x 64", 45.890625),
        # 40 × 40 - 39 × ½ = 1580½ - 18 = 1562½; ÷ 32 = 48.828 - ½ = 48.33
        ("A*40", 5, "straight", "48 3/8 x 64", 48.328125),
    ],
)
def test_width_and_rows(
    run: Run,
    pattern: WritePattern,
    strips: str,
    folds: int,
    join: str,
    finished: str,
    exactly: float,
) -> None:
    path = pattern(race(strips, folds, finished, join))
    assert "roll" in one_size(run, path)["materials"]
    made = quilt(path.read_text("utf-8"), 1)
    assert made.finished is not None
    assert float(made.finished.across) == exactly
    assert sum(run.number for piece in made.pieces.values() for run in piece.runs) == int(
        strips.split("*")[1]
    ) * len(made.pieces)


def test_each_fold_turns_the_right_half() -> None:
    """A strip of 8, folded twice: its quarters come to lie 1, 4, 3 and 2 from the top. The first
    fold lays 1 2 over 4 3, run backward; the second the right half of both, last row first."""
    one, two, three, four = ((Exact(n), Exact(n + 2)) for n in (0, 2, 4, 6))
    assert folded(Exact(8), 1) == (
        Row(Exact(0), Exact(4), back=False),
        Row(Exact(4), Exact(8), back=True),
    )
    assert folded(Exact(8), 2) == (
        Row(*one, back=False),
        Row(*four, back=True),
        Row(*three, back=False),
        Row(*two, back=True),
    )


def top(folder: Path, text: str) -> tuple[Unit, PiecedMade]:
    found = worked_out(folder, text).sizes["one"].units["top"]
    assert isinstance(found.made, PiecedMade)
    return found, found.made


def test_straight_joins_lie_where_the_folds_bring_them(tmp_path: Path) -> None:
    """Two strips of 40, straight: 79½ - 18 = 61½ long, one fold: rows of 30¾ raw, 30¼ finished.
    The join lies 40 - 18 - ¼ = 21¾ from the cut end: 21½ in the first row, A then B; the second
    row is all B."""
    found, _ = top(tmp_path, race("A B", 1, join="straight"))
    lie = [(part.part, part.x, part.y, part.across) for part in found.placed]
    assert lie == [
        ("A", Exact(0), Exact(0), Exact(Fraction(43, 2))),
        ("B", Exact(Fraction(43, 2)), Exact(0), Exact(Fraction(35, 4))),
        ("B", Exact(0), Exact(2), Exact(Fraction(121, 4))),
    ]


def test_diagonal_joins_lean(tmp_path: Path) -> None:
    """The same on the diagonal: 77½ - 18 = 59½; the middle of the join 40 - 18 - 1¼ = 20¾ from the
    cut end, 20½ in the row; over a row of 2 it runs from 19½ to 21½."""
    found, _ = top(tmp_path, race("A B", 1))
    first, second, _ = found.placed
    assert first.outline is not None
    assert {(float(spot.x), float(spot.y)) for spot in first.outline.corners} == {
        (0, 0),
        (19.5, 0),
        (21.5, 2),
        (0, 2),
    }
    assert (second.part, float(second.x), float(second.across)) == ("B", 19.5, 29.25 - 19.5)


def test_it_is_told_round_by_round(tmp_path: Path) -> None:
    _, made = top(tmp_path, race("A*20", 4))
    join, off, *rounds = made.actions
    assert "right angle" in join.words
    assert off.figures[0] == 18
    assert len(rounds) == 4
    assert "not twisted" in rounds[0].words
    # 734½ halved again and again, to the nearest eighth: 367¼, 183⅝, 91⅞ (of 91 13⁄16), 45⅞.
    lengths = [one.figures[-2] for one in rounds]
    assert lengths == [Fraction(number, 8) for number in (2938, 1469, 735, 367)]
    assert made.stitched == 19 + 4


# ---- bad input


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        (race("A*20", 0), "race-folds", "Write `folds: 4`"),
        (race("A*20", 11), "race-folds", "Write `folds: 4`"),
        (
            race("A*20", 4, "45 3/8 x 52"),
            "race-rows",
            "folds: 4 gives 16 rows, 32 long; folds: 5 gives 32 rows, 64 long.",
        ),
        (race("A*20", 4).replace("18", "39"), "race-shorten", "Cut off less than half"),
        (race("A*40000", 10), "race-many", "Look for a count"),
        (race("A*2", 8), "race-short", "Take more strips"),
        (race("A*20", 4, join="none"), "race-join", "Write `join: diagonal`"),
        (race("A*20", 4).replace("2 1/2 x WOF", "2 1/2 square"), "not-a-strip", "Write A's cut"),
    ],
)
def test_bad_input(run: Run, pattern: WritePattern, text: str, code: str, hint: str) -> None:
    notices = told(run, [pattern(text)])["trial"]
    assert {one["code"] for one in notices} - {"finished-size"} == {code}
    assert all(one["hint"].startswith(hint) for one in notices if one["code"] == code)


def test_strips_of_two_widths(run: Run, pattern: WritePattern) -> None:
    text = race("(A B)*10", 4)
    at = text.rindex("2 1/2 x WOF")
    notices = told(run, [pattern(text[:at] + "2 x WOF" + text[at + len("2 1/2 x WOF") :])])["trial"]
    assert "race-widths" in {one["code"] for one in notices}


@given(
    st.integers(4, 24),
    st.integers(1, 4),
    st.sampled_from(["diagonal", "straight"]),
)
def test_the_area_is_that_of_the_strips(number: int, folds: int, join: str) -> None:
    """All that is sewn in: the long strip less two seams at the ends of each row, a row high."""
    made = quilt(race(f"A*{number}", folds, join=join), 1)
    found = made.units["top"]
    loss = Exact(Fraction(5, 2)) if join == "diagonal" else Exact(Fraction(1, 2))
    long = Exact(40 * number - 18) - loss * (number - 1)
    area = sum((_area(part) for part in found.placed), Exact(0))
    assert area == (long - Exact(2**folds) / 2) * 2
