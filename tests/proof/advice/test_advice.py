"""Advice beyond faults, each with its amount; thresholds are common practice, no source."""

from pathlib import Path

import pytest

from tests.support import Run, WritePattern


def told(run: Run, path: Path, code: str, *more: str) -> list[str]:
    notices = run("check", path, "--json", *more).json()["notices"]
    return [one["message"] for one in notices if one["code"] == code]


ROW = """
pattern: A Long Row
settings: {{{settings}}}
fabrics: {{dark: {{tone: dark}}, light: {{tone: light}}}}
pieces: {{A: {{fabric: dark, cut: 2 1/2 square}}, B: {{fabric: light, cut: 2 1/2 square}}}}
top: {{rows: [A B, B A], across: {across}, down: 2}}
"""


def test_ten_seams_drift_by_more_than_can_be_eased(run: Run, pattern: WritePattern) -> None:
    """11 squares have 10 seams: 10 × 2 × 1/32 = 20/32 = 5/8, more than 1/2."""
    (message,) = told(run, pattern(ROW.format(settings="", across=11)), "seam-drift")
    assert "a row of top comes out 10 seams × 2 × 1⁄32 = ⅝″ short" in message


def test_eight_seams_drift_by_what_can_be_eased(run: Run, pattern: WritePattern) -> None:
    """9 squares have 8 seams: 8 × 2 × 1/32 = 1/2."""
    assert told(run, pattern(ROW.format(settings="", across=9)), "seam-drift") == []


def test_the_hair_is_the_authors(run: Run, pattern: WritePattern) -> None:
    """A seam of each 1/8 in is off in all: four are off by 4 × 1/8 = 1/2 (trade facts 2.5, "What
    is a scant 1/4 seam"), eight by twice that. 8 seams × 2 × 1/16 = 1."""
    (message,) = told(run, pattern(ROW.format(settings="drift: 1/16", across=9)), "seam-drift")
    assert "8 seams × 2 × 1⁄16 = 1″" in message


def test_places_that_match_are_counted(run: Run, pattern: WritePattern) -> None:
    """Two rows of 4 squares: 3 seams of each meet 3 of the other."""
    (message,) = told(run, pattern(ROW.format(settings="", across=4)), "matching-places")
    assert message == "Places where seams must meet, 3 in top."


def test_a_single_column_has_no_place_to_match(run: Run, pattern: WritePattern) -> None:
    assert told(run, pattern(ROW.format(settings="", across=1)), "matching-places") == []


PAIR = """
pattern: Two Bars
fabrics: {{dark: {{tone: dark}}, light: {{tone: light}}}}
pieces:
  A: {{fabric: dark, cut: 2 1/2 x 4 1/2}}
  B: {{fabric: {fabric}, cut: 2 1/2 x {other}}}
  C: {{fabric: light, cut: 2 1/2 x 4 1/2}}
  D: {{fabric: light, cut: 2 1/2 x {other}}}
top: {{rows: [A C, B D]}}
"""


def test_cuts_an_eighth_apart_are_told_with_it(run: Run, pattern: WritePattern) -> None:
    """4 5/8 − 4 1/2 = 1/8, and the same of C and D."""
    messages = told(run, pattern(PAIR.format(fabric="dark", other="4 5/8")), "near-cuts")
    both = (
        "{0} and {1}: 2½ × 4½″ and 2½ × 4⅝″ are easily mixed up, 4⅝ − 4½ = ⅛″. Both cut 2½ × 4⅝″ "
        "take 1 strip 2½″ wide, 2½″ of cloth less, and each {0} is ⅛″ too large for its place "
        "until it is trimmed"
    )
    assert messages == [f"{both.format('A', 'B')}; {both.format('C', 'D')}."]


@pytest.mark.parametrize(
    ("row", "across", "comes_to"),
    [
        # 10 of A: 40 ÷ 4 = 10, 1 strip; 10 of B: 40 ÷ 4 1/4 = 9, 2 strips. 20 ÷ 9: 3 strips.
        ("A B", 2, "take 3 strips 2½″ wide, no cloth more"),
        # 100 of A are 10 strips, and 2 are for B. 110 ÷ 9: 13 strips.
        ("A A A A A A A A A A B", 11, "take 13 strips 2½″ wide, 2½″ of cloth more"),
    ],
)
def test_one_size_for_two_is_told_with_its_cloth(
    run: Run, pattern: WritePattern, row: str, across: int, comes_to: str
) -> None:
    source = f"""
pattern: Bars
fabrics: {{dark: {{tone: dark}}}}
pieces: {{A: {{fabric: dark, cut: 4 x 2 1/2}}, B: {{fabric: dark, cut: 4 1/4 x 2 1/2}}}}
top: {{rows: [{row}], across: {across}, down: 10}}
"""
    (message,) = told(run, pattern(source), "near-cuts")
    assert f"Both cut 2½ × 4¼″ {comes_to}, and each A is ¼″ too large" in message


@pytest.mark.parametrize(("fabric", "other"), [("dark", "4 7/8"), ("dark", "4 1/2")])
def test_cuts_further_apart_or_alike_are_not(
    run: Run, pattern: WritePattern, fabric: str, other: str
) -> None:
    assert told(run, pattern(PAIR.format(fabric=fabric, other=other)), "near-cuts") == []


def test_near_cuts_of_two_fabrics_are_told_apart_by_eye(run: Run, pattern: WritePattern) -> None:
    """B is light here, as C is: A has no neighbour in its own fabric."""
    messages = told(run, pattern(PAIR.format(fabric="light", other="4 5/8")), "near-cuts")
    assert not any(message.startswith("A") for message in messages)


SQUARES = """
pattern: Squares of One Cloth
width: {width}
fabrics: {{dark: {{tone: dark}}}}
pieces: {{A: {{fabric: dark, cut: {side} square}}}}
top: {{rows: [A], across: 12, down: 11}}
"""


def squares(pattern: WritePattern, side: str, width: str = "40") -> Path:
    return pattern(SQUARES.format(side=side, width=width))


def test_a_smaller_square_saves_two_strips(run: Run, pattern: WritePattern) -> None:
    """40 ÷ 4 1/2 = 8 is the published sum (trade facts 3.2, "How to figure yardage for a quilt").
    132 of 4 1/2: 40 ÷ 4 1/2 = 8, 132 ÷ 8 = 17 strips. 40 ÷ 9 = 4 3/8: 132 ÷ 9 = 15 strips.
    2 × 4 1/2 = 9 in, more than 1/8 yd = 4 1/2 in."""
    (message,) = told(run, squares(pattern, "4 1/2"), "saves-strips")
    assert message == (
        "A smaller piece would save cloth: A 4⅜″ along the strip, not 4½″: 132 at 9 a strip, "
        "not 8, take 15 of them, not 17 (2 × 4½ = 9″ of cloth)."
    )


def test_one_more_a_strip_is_too_far_off(run: Run, pattern: WritePattern) -> None:
    """40 ÷ 6 = 6 5/8, but the square is 7 1/2: 7/8 less is another block."""
    assert told(run, squares(pattern, "7 1/2"), "saves-strips") == []


def test_the_least_width_is_told_with_what_is_spare(run: Run, pattern: WritePattern) -> None:
    """9 × 4 3/8 = 39 3/8; 40 − 39 3/8 = 5/8."""
    (message,) = told(run, squares(pattern, "4 3/8"), "least-width")
    assert "dark 39⅜″ (40 − 39⅜ = ⅝″ spare)" in message


def test_cloth_that_was_measured_to_41_and_a_half(run: Run, pattern: WritePattern) -> None:
    """Of several cottons none came to the 42 of their label, and the best to 41 1/2: a pattern
    that asked for 41 1/2 nearly failed (trade facts 3.3, "45 in fabric pillowcases").
    6 × 6 7/8 = 41 1/4; 42 − 41 1/4 = 3/4."""
    (message,) = told(run, squares(pattern, "6 7/8", "42"), "least-width")
    assert "dark 41¼″ (42 − 41¼ = ¾″ spare)" in message


@pytest.mark.parametrize("side", ["4 1/4", "4"])
def test_an_inch_to_spare_or_none_is_not(run: Run, pattern: WritePattern, side: str) -> None:
    """9 × 4 1/4 = 38 1/4 leaves 1 3/4; 10 × 4 = 40 leaves nothing: that is `exact-fit`."""
    assert told(run, squares(pattern, side), "least-width") == []


CM = """
pattern: A Row in Centimetres
written-in: cm
width: {width}
fabrics: {{dark: {{tone: dark}}}}
pieces: {{A: {{fabric: dark, cut: {side} square}}, B: {{fabric: dark, cut: {other} x 5}}}}
top: {{rows: [{row}], across: {across}, down: 4}}
{more}
"""


@pytest.mark.parametrize(
    ("code", "given", "says"),
    [
        # 18 squares have 17 seams: 17 × 2 × 0.1 = 3.4, more than 1.25
        ("seam-drift", {"across": 18}, "17 seams × 2 × 0.1 = 3.4 cm short"),
        # 4 rows of 18 squares: 3 × 17
        ("matching-places", {"across": 18}, "51 in top."),
        # 5.5 − 5 = 0.5: 8 of each are 2 strips, and 16 of 5.5 one, 5 wide, for 103 ÷ 5.5 = 18
        ("near-cuts", {"row": "A B", "other": "5.5"}, "take 1 strip 5 cm wide, 5 cm of cloth less"),
        # 103 ÷ 12 = 8, 103 ÷ 9 = 11.25 and more: 72 squares are 9 strips of 8, and 8 of 9
        ("saves-strips", {"side": "12", "across": 18}, "take 8 of them, not 9 (1 × 12 = 12 cm"),
        # 17 × 6 = 102; 104 − 102 = 2
        ("least-width", {"side": "6", "across": 17, "width": "104"}, "(104 − 102 = 2 cm spare)"),
        # lines 20 apart, where 15 are allowed
        ("quilting-limit", {"across": 18}, "all over 20 cm, limit 15 cm"),
        # 4 × 20 = 80, and 103 ÷ 5 = 20 a strip
        ("exact-count", {"across": 20}, "A: 4 strips of 20 give exactly 80"),
        # 21 × 5 = 105
        ("exact-fit", {"across": 20, "width": "105"}, "21 × 5 = 105 cm of a strip 105 cm long"),
    ],
)
def test_in_centimetres(
    run: Run, pattern: WritePattern, code: str, given: dict[str, str | int], says: str
) -> None:
    words = {"width": "103", "side": "5", "other": "5", "row": "A", "across": 4, **given}
    quilted = "quilting: [{area: all over, design: lines, spacing: 20}]\nbatting: {limit: 15}"
    source = CM.format(more=f"settings: {{drift: 0.1}}\n{quilted}", **words)
    if "B" not in str(words["row"]):
        source = source.replace(", B: {fabric: dark, cut: 5 x 5}", "")
    (message,) = told(run, pattern(source), code)
    assert says in message


QUILTED = """
quilting: [{area: all over, design: straight lines, spacing: SPACING}]
batting: {over: 4, limit: 6}
"""


@pytest.mark.parametrize(("spacing", "number"), [("8", 1), ("6", 0)])
def test_lines_beyond_the_packets_limit(
    run: Run, pattern: WritePattern, spacing: str, number: int
) -> None:
    source = ROW.format(settings="", across=4) + QUILTED.replace("SPACING", spacing)
    messages = told(run, pattern(source), "quilting-limit")
    assert len(messages) == number
    assert all("all over 8″, limit 6″" in message for message in messages)


def test_full_tells_of_lines_too_far_apart_once(run: Run, pattern: WritePattern) -> None:
    """With --full the lines are drawn, and `quilting-gap` tells of them as they lie."""
    source = SQUARES.replace("12, down: 11", "3, down: 3").format(side="16 1/2", width="40")
    path = pattern(source + QUILTED.replace("SPACING", "8"))
    assert len(told(run, path, "quilting-limit")) == 1
    assert told(run, path, "quilting-limit", "--full") == []
    assert len(told(run, path, "quilting-gap", "--full")) == 1


def codes(run: Run, path: Path, *more: str) -> set[str]:
    notices = run("check", path, "--json", *more).json()["notices"]
    return {one["code"] for one in notices if one["code"] in {"seam-drift", "matching-places"}}


@pytest.mark.parametrize(
    ("advice", "left"),
    [
        ("all", {"seam-drift", "matching-places"}),
        ("none", set()),
        ("seam-drift", {"seam-drift"}),
        ("[seam-drift, matching-places]", {"seam-drift", "matching-places"}),
    ],
)
def test_the_settings_say_which_is_told(
    run: Run, pattern: WritePattern, advice: str, left: set[str]
) -> None:
    source = ROW.format(settings=f"advice: {advice}", across=11)
    assert codes(run, pattern(source)) == left


def test_an_option_says_so_too(run: Run, pattern: WritePattern) -> None:
    path = pattern(ROW.format(settings="", across=11))
    assert codes(run, path, "--advice", "none") == set()


def test_a_slip_in_a_code_names_the_nearest(run: Run, pattern: WritePattern) -> None:
    path = pattern(ROW.format(settings="advice: seam-drit", across=11))
    (notice,) = [
        one
        for one in run("check", path, "--json").json()["notices"]
        if one["code"] == "advice-unknown"
    ]
    assert (notice["severity"], notice["needed"]) == ("warning", "seam-drift")


@pytest.mark.parametrize(
    ("house", "own", "left"),
    [
        ("none", "", set()),
        ("seam-drift", "", {"seam-drift"}),
        ("none", "advice: all", {"seam-drift", "matching-places"}),
    ],
)
def test_the_house_says_so_for_all_patterns(
    run: Run, pattern: WritePattern, house: str, own: str, left: set[str]
) -> None:
    """`house.yaml` stands one folder above the patterns; a pattern's own word wins."""
    path = pattern(ROW.format(settings=own, across=11))
    rules = path.resolve().parent.parent / "house.yaml"
    rules.write_text(f"settings: {{advice: {house}}}\n", "utf-8")
    assert codes(run, path) == left


def test_no_advice_hides_no_fault(run: Run, pattern: WritePattern) -> None:
    """A wrong count of A: 22 squares in all, of which 11 are A."""
    source = ROW.format(settings="advice: none", across=11)
    path = pattern(source.replace("fabric: dark, cut", "fabric: dark, count: 10, cut"))
    ran = run("check", path, "--json", "--advice", "none")
    assert ran.code == 1
    assert ran.json()["errors"] >= 1
