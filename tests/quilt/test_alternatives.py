"""Where sums do not agree: every number that alone would mend them, and which one is blamed.

The cases are invented after the kinds seen in print (common practice, no source).
"""

from pathlib import Path
from textwrap import dedent

import pytest

from patternbook.notice import Notice
from tests.quilt.support_quilt import told, worked_out

# What is written, the rule, what stands at the first mark and is needed there, and all that would
# do: the first is what is blamed, and `sure` where `check --fix` may make it.
CASES = [
    pytest.param(
        """\
        pieces: {A: {cut: 2 1/4 x 9}, B: {cut: 3 3/4 x 9}}
        units: {rails: {rows: [A B], measure: 5 3/4 x 9}}
        """,
        ("R1", "5 3/4", "5 1/2", True),
        ["5 1/2 x 9", "4 x 9", "2 1/2 x 9"],
        id="a stated figure that nothing confirms is blamed before the pieces",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 8 x 15}, B: {cut: 7 x 15}}
        units: {tray: {rows: [A B], measure: 15 square}}
        """,
        ("R1", "7", "7 1/2", False),
        ["7 1/2 x 15", "8 1/2 x 15", "14 1/2 x 15"],
        id="a square whose other side is right is believed",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 3 1/2 square}}
        units: {four: {rows: [A A, A A], measure: 7 1/2 square}}
        """,
        ("R1", "7 1/2", "6 1/2", True),
        ["6 1/2 square", "4 square"],
        id="both sides of one square are one fault",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 5 square}}
        units: {squares: {rows: [A], across: 5, down: 8, measure: 23 x 36}}
        """,
        ("R12", "36", "36 1/2", True),
        ["23 x 36 1/2"],
        id="a finished length beside a measured width",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 4 1/2 square}}
        units: {tide: {rows: [A A, A A], measure: 8 1/2 square, finished: 9 square}}
        """,
        ("R12", "9", "8", True),
        ["8 square"],
        id="two figures of one unit at odds, of which the pieces confirm one",
    ),
    pytest.param(
        """\
        pieces: {R: {cut: 10 1/2 x 3}, A: {cut: 2 x 4}, B: {cut: 3 x 4}, C: {cut: 4 1/2 x 4}}
        units: {house: {rows: [R, A B A C]}}
        """,
        ("R1", "4 1/2", "5", False),
        ["5 x 4", "3 1/2 x 4", "2 1/4 x 4", "10 x 3"],
        id="a short row: a cut of it, met once, before all else",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 6 3/4 square}, B: {cut: 6 1/2 square}}
        units: {check: {rows: [A B, B A], measure: 12 1/2 square}}
        """,
        ("R1", "6 3/4", "6 1/2", True),
        ["6 1/2 square"],
        id="the one cut that mends several sums is to blame",
    ),
    pytest.param(
        """\
        pieces: {A: {cut: 6 1/2 square, finished: 6 1/2 square}}
        units: {row: {rows: [A A], finished: 12 x 6}}
        """,
        ("R1", "6 1/2", "6", True),
        ["6 square"],
        id="of a piece's two figures the one that nothing confirms",
    ),
]


def first_of(tmp_path: Path, text: str) -> Notice:
    """The first fault of a fragment."""
    notices = told(worked_out(tmp_path, "pattern: Odd One\nwidth: 42\n" + dedent(text)))
    return next(notice for notice in notices if notice.severity == "error")


@pytest.mark.parametrize(("text", "blamed", "news"), CASES)
def test_what_would_mend_it_is_named(
    tmp_path: Path, text: str, blamed: tuple[str, str, str, bool], news: list[str]
) -> None:
    notice = first_of(tmp_path, text)
    assert (notice.rule, notice.stated, notice.needed, bool(notice.mend)) == blamed
    assert [edit.new for edit in notice.edits] == news
    assert notice.marks[0].place == notice.edits[0].place
    assert notice.hint is not None
    assert all(new in notice.hint for new in news)


@pytest.mark.parametrize(("text", "blamed", "news"), CASES)
def test_each_alone_makes_all_sums_hold(
    tmp_path: Path, text: str, blamed: tuple[str, str, str, bool], news: list[str]
) -> None:
    """Every alternative is put into the source, one at a time, and nothing is left to tell."""
    whole = "pattern: Odd One\nwidth: 42\n" + dedent(text)
    for edit in first_of(tmp_path, text).edits:
        lines = whole.splitlines()
        place = edit.place
        line = lines[place.line - 1]
        lines[place.line - 1] = line[: place.column - 1] + edit.new + line[place.end_column - 1 :]
        left = told(worked_out(tmp_path, "\n".join(lines)))
        assert [str(one) for one in left if one.severity != "advice"] == [], (blamed, news, edit)


SHARED = """\
sizes: {crib: {finished: 12 square}, twin: {finished: 12 square}}
pieces: {A: {cut: 6 1/2 square}, B: {cut: {crib: 6 1/2 square, twin: 7 x 6 1/2}}}
units: {pair: {rows: [A B], measure: MEASURE}}
top: {rows: [pair, pair]}
"""


def all_offered(tmp_path: Path, text: str) -> set[str]:
    """What all edits of all notices would write."""
    made = worked_out(tmp_path, "pattern: Odd One\nwidth: 42\n" + text)
    return {edit.new for notice in told(made) for edit in notice.edits}


def test_a_number_that_sizes_share_is_only_changed_where_all_agree(tmp_path: Path) -> None:
    """The crib's measure is right; what the twin wants must not be written over it."""
    shared = all_offered(tmp_path, SHARED.replace("MEASURE", "12 1/2 x 6 1/2"))
    assert shared == {"6 1/2 x 6 1/2", "12 1/2 x 12"}
    each = SHARED.replace("MEASURE", "{crib: 12 1/2 x 6 1/2, twin: 12 1/2 x 6 1/2}")
    assert all_offered(tmp_path, each) == {*shared, "13 x 6 1/2"}


def test_on_point_the_next_mark_of_the_ruler_is_needed(tmp_path: Path) -> None:
    """5 x 6 x 1.4142 + 8 = 50.43 and 7 x 6 x 1.4142 + 8 = 67.40 (by hand)."""
    text = """\
        sizes: {one: {finished: 50 x 66}}
        pieces:
          A: {cut: 6 1/2 square}
          S: {diagonal: twice}
          T: {diagonal: once}
          F: {cut: 4 1/2 x WOF}
        top:
          setting: on point
          rows: [A]
          across: 5
          down: 7
          side-triangle: S
          corner-triangle: T
          borders: [{strip: F}]
        """
    notice = first_of(tmp_path, text)
    assert (notice.code, notice.needed) == ("finished-size", "50 1/2 x 67 1/2")
    assert "about 50.43" in notice.message
    right = dedent(text).replace("50 x 66", notice.needed or "")
    left = told(worked_out(tmp_path, "pattern: Odd One\nwidth: 42\n" + right))
    assert [one.code for one in left if one.severity == "error"] == []
