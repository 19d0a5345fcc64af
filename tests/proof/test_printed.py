"""Patterns that are in print already: tables typed by hand, figures told twice, and what is not
told at all. The sums are the handbook's (common practice, no source); a yard is 36 inches by the
international yard and pound agreement of 1959."""

import pytest

from tests.support import Run, WritePattern

CARD = """
pattern: Shop Card
width: 42
charts:
  squares:
    rows:
      - {ROW}
"""


@pytest.mark.parametrize(
    ("row", "rule", "stated", "needed"),
    [
        # 42 / 8 = 5 side by side, 36 / 8 = 4 rows: 20.
        ("yards: 1, cut: 8 square, gives: 25", "R9", "25", "20"),
        # 16 squares of 2 1/2 lie on 42, 7 rows on half a yard: 16 x 7 = 112.
        ("yards: 1/2, cut: 2 1/2 square, across: 16, down: 8, gives: 112", "R9", "8", "7"),
        # 16 x 13 uses 44 inches; on 42 lie 15 x 13 = 195.
        ("yards: 1, cut: 2 3/4 square, gives: 208", "R20", "208", "195"),
        ("yards: 7/8, inches: 33", "R17", "33", "31 1/2"),
        ("yards: 1/3, inches: 13", "R17", "13", "12"),
        ("metres: 0.5, cm: 55", "R17", "55", "50"),
        # A fat quarter: 2 rows of 3.
        ("from: 18 x 21, cut: 6 1/2 square, gives: 9", "R6", "9", "6"),
    ],
)
def test_a_cell_of_a_typed_table(
    row: str, rule: str, stated: str, needed: str, run: Run, pattern: WritePattern
) -> None:
    """The wrong cell is told with the right value, and written it is silent."""
    text = CARD.replace("ROW", row)
    (told,) = run("check", pattern(text), "--json").json()["notices"]
    assert (told["severity"], told["rule"], told["stated"], told["needed"]) == (
        "error",
        rule,
        stated,
        needed,
    )
    assert told["places"][0]["line"] == 6
    better = text.replace(f": {stated}", f": {needed}")
    assert run("check", pattern(better), "--json").json()["notices"] == []


def test_the_width_over_a_table_holds_for_its_rows(run: Run, pattern: WritePattern) -> None:
    """44 inches hold 16 squares of 2 3/4 a row."""
    text = CARD.replace("ROW", "yards: 1, cut: 2 3/4 square, gives: 208")
    text = text.replace("    rows:", "    width: 44\n    rows:")
    assert run("check", pattern(text), "--json").json()["notices"] == []


TWICE = """
pattern: River Star
width: 42
elsewhere:
  page 5: {S: {cut: 3 square}, point: {make: 24}, gold: {yards: 1/2}}
fabrics:
  gold: {use: star points, yards: 1/2}
  river: {use: ground}
pieces:
  S: {fabric: gold, cut: 3 1/2 square}
  G: {fabric: river, cut: 6 1/2 x 3 1/2}
units:
  point: {method: flying geese, goose: G, wings: S, gives: 1, make: 24}
"""


@pytest.mark.parametrize(
    ("right", "wrong", "rule", "needed"),
    [
        ("cut: 3 1/2 square}, point", "cut: 3 square}, point", "R20", "3 1/2 square"),
        ("make: 24}, gold", "make: 20}, gold", "R20", "24"),
        ("{yards: 1/2}}", "{yards: 3/8}}", "R20", "1/2"),
        ("point: {make: 24}, gold", "pint: {make: 24}, gold", "R19", None),
        ("page 5: {S: {cut", "page 5: {S: {fabric: river, cut", "R11", "gold"),
    ],
)
def test_what_another_page_says(
    right: str, wrong: str, rule: str, needed: str | None, run: Run, pattern: WritePattern
) -> None:
    sound = TWICE.replace("{cut: 3 square}", "{cut: 3 1/2 square}")
    assert run("check", pattern(sound)).code == 0
    assert right in sound
    notices = run("check", pattern(sound.replace(right, wrong)), "--json").json()["notices"]
    (told,) = [one for one in notices if one["severity"] == "error"]
    assert (told["rule"], told["needed"], told["places"][0]["line"]) == (rule, needed, 4)


PRINTED = """
pattern: Toolbox
width: 42
seam: 1/4
printed: yes
fabrics:
  tool: {use: tools, yards: 1 1/4}
pieces:
  A: {fabric: tool, cut: 3 1/2 square}
units:
  box: {rows: [A*4, A*4, A*4, A*4], finished: 12 square, make: 8}
"""


@pytest.mark.parametrize(
    ("stated", "needed", "line"),
    [
        (", yards: 1 1/4", "1 1/4", 6),
        (", finished: 12 square", "12 square", 10),
        ("seam: 1/4", "1/4", 1),
    ],
)
def test_what_is_not_stated(
    stated: str, needed: str, line: int, run: Run, pattern: WritePattern
) -> None:
    """4 x 3 finished is 12; 128 squares, 12 a strip, are 11 strips of 3 1/2: 38 1/2, and 3
    inches to spare: 1 1/4 yards."""
    assert run("check", pattern(PRINTED), "--strict").code == 0
    notices = run("check", pattern(PRINTED.replace(stated, "")), "--json").json()["notices"]
    (told,) = [one for one in notices if one["severity"] != "advice"]
    assert (told["code"], told["rule"], told["needed"]) == ("not-stated", "R10", needed)
    assert told["places"][0]["line"] == line
    assert run("check", pattern(PRINTED.replace(stated, "").replace("printed: yes", ""))).code == 0


ONE = """
pattern: One Square
width: 42
fabrics:
  ten: {form: squares, size: 10 square, pack: 40}
  sky: {use: ground}
pieces:
  A: {fabric: ten, cut: 5 square, count: 8, per-square: 4}
  C: {fabric: sky, cut: 2 1/2 square, count: 18, strip-length: 45}
"""


@pytest.mark.parametrize(
    ("right", "wrong", "code", "needed"),
    [
        ("per-square: 4", "per-square: 5", "per-square", "4"),
        # Two side by side of 5 1/8 want 10 1/4: one row, one column.
        ("cut: 5 square", "cut: 5 1/8 square", "per-square", "1"),
        # 18 x 2 1/2 = 45.
        ("strip-length: 45", "strip-length: 40", "strip-length", "45"),
    ],
)
def test_what_one_square_and_so_much_strip_give(
    right: str, wrong: str, code: str, needed: str, run: Run, pattern: WritePattern
) -> None:
    assert run("check", pattern(ONE)).code == 0
    notices = run("check", pattern(ONE.replace(right, wrong)), "--json").json()["notices"]
    (told,) = [one for one in notices if one["severity"] == "error"]
    assert (told["code"], told["needed"]) == (code, needed)


POINTS = """
pattern: Eight Points
pieces:
  D:
    template: outline
    outline: [0 x 0, 4 x 0, 6 7/8 x 2 7/8, 2 7/8 x 2 7/8]
    angle: 45
    around: 8
    count: 8
"""


@pytest.mark.parametrize(("around", "needed"), [("6", "60"), ("10", "36")])
def test_points_round_one_place(around: str, needed: str, run: Run, pattern: WritePattern) -> None:
    """8 x 45 = 360; of six each wants 60 degrees, of ten 36."""
    assert run("check", pattern(POINTS), "--strict").code == 0
    text = POINTS.replace("around: 8", f"around: {around}")
    (told,) = [one for one in _notices(run, pattern, text) if one["code"] == "round-point"]
    assert (told["rule"], told["stated"], told["needed"]) == ("R13", "45", needed)


def test_points_that_are_drawn_too_sharp(run: Run, pattern: WritePattern) -> None:
    """A rise of 2 3/4 on 2 7/8 is a point of 43 1/2 degrees: 8 x 43 1/2 = 348."""
    text = POINTS.replace("    angle: 45\n", "").replace("7/8 x 2 7/8", "7/8 x 2 3/4")
    assert run("check", pattern(POINTS.replace("    angle: 45\n", "")), "--strict").code == 0
    (told,) = [one for one in _notices(run, pattern, text) if one["code"] == "round-point"]
    assert (told["rule"], told["stated"], told["needed"]) == ("R13", "43 1/2", "45")


def _notices(run: Run, pattern: WritePattern, text: str) -> list[dict[str, str]]:
    notices: list[dict[str, str]] = run("check", pattern(text), "--json").json()["notices"]
    return notices
