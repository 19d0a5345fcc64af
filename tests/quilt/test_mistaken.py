"""Letters in the wrong place, and repeats: told where the numbers prove them, and only there.
The sources with the faults are in tests/errata/cases (a42, a43, b42, b43); here are those that
look like them and are not. (Common practice, no source.)"""

from typing import Any

import pytest

from tests.support import Run, WritePattern

NINE = """
pattern: Nine
width: 42
pieces:
  A: {{cut: 2 1/2 square{a}}}
  B: {{cut: 2 1/2 square{b}}}
  E: {{cut: {e} square{e_count}}}
units:
  nine: {{rows: [A B A, B A B, A B A], make: 20}}
  row: {{rows: [E], make: {e_made}}}
"""


def told(run: Run, source: str, pattern: WritePattern) -> list[dict[str, Any]]:
    notices = run("check", pattern(source), "--json").json()["notices"]
    return [notice for notice in notices if notice["severity"] != "advice"]


def nine(**figures: str) -> str:
    plain = {"a": "", "b": "", "e": "3", "e_count": "", "e_made": "1"}
    return NINE.format(**(plain | figures))


@pytest.mark.parametrize(
    ("figures", "codes"),
    [
        # A count alone is wrong: nothing says that a letter is.
        ({"a": ", count: 80", "b": ", count: 80"}, ["count"]),
        ({"a": ", count: 100", "b": ", count: 60"}, ["count"]),
        ({"a": ", count: 120", "b": ", count: 80"}, ["count"]),
        # Two counts are wrong, and not one for the other.
        ({"a": ", count: 90", "b": ", count: 90"}, ["count", "count"]),
        # A letter that is not as large cannot have been meant.
        ({"a": ", count: 80", "e": "3", "e_count": ", count: 20", "e_made": "1"}, ["count"] * 2),
        # All is well.
        ({"a": ", count: 100", "b": ", count: 80"}, []),
    ],
)
def test_a_wrong_count_is_no_wrong_letter(
    run: Run, pattern: WritePattern, figures: dict[str, str], codes: list[str]
) -> None:
    assert [one["code"] for one in told(run, nine(**figures), pattern)] == codes


def test_letters_in_each_others_place_are_told_once(run: Run, pattern: WritePattern) -> None:
    (one,) = told(run, nine(a=", count: 80", b=", count: 100"), pattern)
    assert (one["code"], one["rule"], one["needed"]) == ("letters-exchanged", "R11", "B A B")
    assert "A is cut 80 times and sewn 100 times, B cut 100 and sewn 80 times" in one["message"]


def test_of_equal_letters_none_is_blamed(run: Run, pattern: WritePattern) -> None:
    """Four strips of D fit in place of A, B or C alike: that D is over is told, and no more."""
    source = """
pattern: Any of Three
width: 42
pieces:
  A: {cut: 2 x WOF}
  B: {cut: 2 x WOF}
  C: {cut: 2 x WOF}
  D: {cut: 2 x WOF, strips: 4}
units:
  band: {method: strip set, from: A B C, segment: 10 1/2, sets: 4, make: 16}
"""
    assert told(run, source, pattern) == []


@pytest.mark.parametrize(
    ("logs", "measure", "offered"),
    [
        ("(A A A A)*5", "9 1/2", "(A A A A)*4"),
        ("(A A A A)*3", "9 1/2", "(A A A A)*4"),
        ("(A A A A)*4", "9 3/4", None),
    ],
)
def test_rounds_are_offered_where_they_come_out(
    run: Run, pattern: WritePattern, logs: str, measure: str, offered: str | None
) -> None:
    source = f"""
pattern: Rounds
width: 42
pieces:
  C: {{cut: 1 1/2 square}}
  A: {{cut: 1 1/2 x WOF}}
units:
  log:
    method: log cabin
    centre: C
    logs: {logs}
    measure: {measure} square
    make: 1
"""
    (one,) = told(run, source, pattern)
    offers = [fix["new"] for fix in one["fix"] if fix["old"] == logs]
    assert offers == ([offered] if offered else [])
    assert one["places"][0]["line"] == 11


@pytest.mark.parametrize(
    ("counted", "code", "line", "needed"),
    [
        # 36 + 2 x 3 = 42 long, 14 squares: 2 x 14 + 2 x 16 = 60 are cut.
        (60, "repeated-wrongly", 9, "B*14"),
        (56, "border-length", 16, "42"),
    ],
)
def test_repeats_that_the_counts_bear_out(
    run: Run, pattern: WritePattern, counted: int, code: str, line: int, needed: str
) -> None:
    """Without the number of pieces the border's length is told, and the repeats are offered."""
    source = f"""pattern: Pieced Ends
sizes: {{lap: {{finished: 42 x 54}}}}
fabrics: {{leaf: {{tone: light}}}}
pieces:
  A: {{fabric: leaf, cut: 6 1/2 square}}
  B: {{fabric: leaf, cut: 3 1/2 square, count: {counted}}}
units:
  side: {{columns: [B*16]}}
  end: {{rows: [B*12]}}
top:
  rows: [A]
  across: 6
  down: 8
  before-borders: 36 1/2 x 48 1/2
  borders:
    - {{sides: side, ends: end}}
"""
    (one,) = told(run, source, pattern)
    assert (one["code"], one["places"][0]["line"], one["needed"]) == (code, line, needed)
    assert "B*14" in [fix["new"] for fix in one["fix"]]


def test_a_name_spelt_otherwise(run: Run, pattern: WritePattern) -> None:
    source = """pattern: Spelt
sizes: {lap: {finished: 36 x 48}}
fabrics: {leaf: {tone: light}}
pieces:
  A: {fabric: leaf, cut: 6 1/2 square}
units:
  four: {rows: [A A, A A]}
top:
  rows: [fours]
  across: 3
  down: 4
"""
    (one,) = told(run, source, pattern)
    assert (one["rule"], one["places"][0]["line"], one["needed"]) == ("R19", 9, "four")
