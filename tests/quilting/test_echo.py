"""Straight quilting lines: nowhere farther apart than asked, never on a long seam."""

from fractions import Fraction
from itertools import pairwise

import pytest

from patternbook.edition.pipeline import examine
from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.quilting.echo import plan
from patternbook.quilting.echo_records import QuiltingMap
from tests.diagrams.drawn import ALL, DEMOS, examined
from tests.support import WritePattern

COLUMNS = """
    pattern: Columns
    sizes: {crib: {finished: 15 x 20}}
    fabrics: {paper: {use: ground}, ink: {use: bars}}
    pieces:
      A: {fabric: ink, cut: 4 1/2 x 20 1/2}
      B: {fabric: paper, cut: 7 1/2 x 20 1/2}
    top: {rows: [A B A]}
"""


def mapped(path: object) -> tuple[QuiltingMap, tuple[Notice, ...]]:
    known = examine(path, "trial").sizes["crib"]  # type: ignore[arg-type]
    made, told = plan(known.quilt, known.patches)
    assert made is not None
    return made, told


def test_columns_are_echoed_line_by_line(pattern: WritePattern) -> None:
    """Columns 4, 7 and 4 wide, lines at most 2 apart: two lines in 4 (1 and 3 from its start), four
    in 7 (1¾ apart, ⅞ from its seams). By hand: 8 lines, each 20 less ½ at both ends."""
    made, told = mapped(
        pattern(COLUMNS + "    quilting: [{area: all over, design: straight lines, spacing: 2}]\n")
    )
    assert made.way == "down"
    eighth = Fraction(1, 8)
    assert sorted(line.at for line in made.lines) == [
        *(1, 3),
        *(4 + 7 * eighth, 4 + 21 * eighth, 4 + 35 * eighth, 4 + 49 * eighth),
        *(12, 14),
    ]
    assert made.gap == 2
    assert made.length == 8 * 19
    assert told == ()


def test_without_a_word_of_hers_lines_suit_the_batting(pattern: WritePattern) -> None:
    """Nothing stated: 3 in at most, as the source language has it; a batting of 2 in is obeyed."""
    made, _ = mapped(pattern(COLUMNS))
    assert (str(made.spacing), made.stated, made.limit_stated) == ("3", False, False)
    assert made.gap <= 3
    made, told = mapped(pattern(COLUMNS + "    batting: {limit: 2}\n"))
    assert (str(made.spacing), str(made.limit), made.limit_stated) == ("2", "2", True)
    assert made.gap <= 2
    assert told == ()


def test_lines_too_far_apart_for_the_batting_are_an_error(pattern: WritePattern) -> None:
    """Lines 4 apart at most: one in each column of 4, two in that of 7; 2 + 1¾ over the seam."""
    wide = "    quilting: [{area: all over, design: straight lines, spacing: 4}]\n"
    _, told = mapped(pattern(COLUMNS + wide + "    batting: {limit: 3}\n"))
    (notice,) = told
    assert (notice.code, notice.severity, notice.stated, notice.needed) == (
        "quilting-wide",
        "error",
        "3¾″",
        "3″",
    )
    assert notice.marks[0].place.line == 8
    _, told = mapped(pattern(COLUMNS + wide))
    assert [(one.code, one.severity) for one in told] == [("quilting-wide", "warning")]


@pytest.mark.parametrize("source", ALL)
def test_lines_keep_their_distance_and_their_margin(source: str) -> None:
    for known in examined(source).sizes.values():
        made, _ = plan(known.quilt, known.patches)
        assert made is not None
        assert known.quilt.finished is not None
        wide, long = known.quilt.finished
        side, other = (wide, long) if made.way == "down" else (long, wide)
        places = sorted(line.at for line in made.lines)
        gaps = [b - a for a, b in pairwise([Exact(0), *places, side])]
        assert max(gaps) == made.gap <= made.spacing
        assert made.margin <= places[0]
        assert places[-1] <= side - made.margin
        assert made.length == (other - 2 * made.margin) * len(places)
        seams = {band.start for band in made.bands}
        assert not seams & set(places)


@pytest.mark.parametrize("source", DEMOS)
def test_the_first_half_is_quilted_from_the_middle_out_then_the_other(source: str) -> None:
    for known in examined(source).sizes.values():
        made, _ = plan(known.quilt, known.patches)
        assert made is not None
        assert [line.order for line in made.lines] == list(range(1, len(made.lines) + 1))
        near = [line for line in made.lines if line.start[made.way == "down"] == made.margin]
        far = made.lines[len(near) :]
        assert [line.at for line in near] == sorted(line.at for line in near)
        assert [line.at for line in far] == sorted((line.at for line in far), reverse=True)
        assert {line.end[made.way == "down"] for line in far} == {made.margin}
        assert abs(len(near) - len(far)) <= 1
