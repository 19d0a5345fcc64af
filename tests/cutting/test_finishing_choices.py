"""The choices of the finishing: a strip let in, wide backing, a roll of batting, bias, the label.

Own arithmetic unless a source is named; every stated figure is tried right and wrong.
"""

from fractions import Fraction
from math import pi, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.cutting import bias
from patternbook.cutting.binding import ROUND
from patternbook.exact import Exact
from patternbook.quilt.records import Backing, Batting, Binding
from tests.cutting.small import cut, fabric, inches, planned, the, told
from tests.support import Run, WritePattern

SOURCE = """
pattern: Choices
sizes: {{one: {{finished: 36 x 42}}}}
fabrics:
  front: {{use: squares, tone: light, yards: {yards}}}
  edge: {{use: binding, tone: dark, yards: 1}}
  back: {{use: backing{back}}}
pieces: {{A: {{fabric: front, cut: 6 1/2 square}}}}
top: {{rows: [A], across: 6, down: 7}}
{layers}
"""


def source(layers: str, yards: str = "2", back: str = "") -> str:
    return SOURCE.format(layers=layers, yards=yards, back=back)


def codes(run: Run, path: Any, *severities: str) -> list[str]:
    notices = run("check", path, "--json").json()["notices"]
    return [one["code"] for one in notices if one["severity"] in severities]


def one(run: Run, path: Any) -> Any:
    return run("figures", path, "--json").json()["sizes"]["one"]


# ---- a strip of spare cloth in the backing

PIECED = "backing: {fabric: back, quilted-by: home, pieced: yes}"


def test_a_strip_of_spare_cloth_saves_a_length(run: Run, pattern: WritePattern) -> None:
    """42 × 48 from cloth of 40. One length from side to side leaves 48 − 40 + 2 × 1 = 10 in. Of
    the front 72 − 7 × 6½ − ½ = 26 in are over: four patches 10 × 26, of which two make
    2 × 26 − 1 = 51 of 42. Without the strip two lengths of 42 would be bought."""
    path = pattern(source(PIECED))
    assert run("check", path).code == 0
    backing = one(run, path)["backing"]
    assert (backing["panels"], backing["buy"]["amount"], backing["made"]) == (1, "1 1/4", "48")
    assert backing["insert"] == {
        "width": "10",
        "length": "42",
        "made": "51",
        "patches": [{"fabric": "front", "number": 2, "across": "10", "along": "26"}],
    }
    whole = one(run, pattern(source(PIECED.replace(", pieced: yes", ""))))["backing"]
    assert (whole["panels"], whole["buy"]["amount"], whole["insert"]) == (2, "2 1/2", None)


@pytest.mark.parametrize(
    ("insert", "wide", "told_of"), [("12", "12", []), ("9", "10", ["strip-narrow"])]
)
def test_a_stated_strip(
    run: Run, pattern: WritePattern, insert: str, wide: str, told_of: list[str]
) -> None:
    path = pattern(source(PIECED.replace("pieced: yes", f"insert: {insert}")))
    assert codes(run, path, "error") == told_of
    assert one(run, path)["backing"]["insert"]["width"] == wide


def test_too_little_spare_cloth_for_a_strip(run: Run, pattern: WritePattern) -> None:
    """1⅜ yd leave 3½ in: four patches 10 × 3½ come to 4 × 3½ − 3 = 11; the binding's spare cloth
    is counted too."""
    path = pattern(source(PIECED, yards="1 3/8"))
    assert codes(run, path, "error") == ["strip-short"]
    assert one(run, path)["backing"]["insert"] is None


def test_no_strip_where_one_length_does(run: Run, pattern: WritePattern) -> None:
    path = pattern(source(PIECED, back=", width: 48"))
    assert codes(run, path, "error") == []
    assert "strip-idle" in codes(run, path, "advice")


@given(st.integers(36, 90), st.integers(36, 90), st.integers(0, 60))
def test_a_strip_always_covers_and_comes_from_what_is_over(
    across: int, down: int, more: int
) -> None:
    """Whatever the quilt: the lengths and the strip cover it, and the patches are long enough."""
    made = planned(
        finished=f"{across} x {down}",
        backing=Backing(pieced=True),
        binding=Binding("cloth", Fraction(5, 2)),
        cloth=fabric(stated_yards=Fraction(12 + more, 8)),
    ).backing
    assert made
    strip = made.best.insert
    if strip is None:
        return
    covered = made.size.across if made.best.seams == "lengthwise" else made.size.down
    joins = max(2, made.best.panels)
    assert made.best.panels * 40 + strip.width - joins == made.best.made >= (covered or 0)
    number = sum(patches.number for patches in strip.patches)
    assert sum(p.number * p.along for p in strip.patches) - (number - 1) >= made.best.each
    assert made.whole
    assert made.best.length < made.whole.length


# ---- wide backing, and the direction of the seams

WIDE = fabric(form="wide backing", width=Fraction(106))


@pytest.mark.parametrize(
    ("finished", "seams", "length"),
    [("90 x 96", "crosswise", 98), ("90 x 120", "lengthwise", 128), ("120 x 90", "crosswise", 128)],
)
def test_wide_backing_either_way_round(finished: str, seams: str, length: int) -> None:
    """One piece, whichever way less of it is bought."""
    made = planned(finished=finished, backing=Backing("cloth"), cloth=WIDE).backing
    assert made
    assert (made.best.panels, made.best.seams) == (1, seams)
    assert made.best.length == length


def test_wide_backing_takes_no_notice_of_seams_it_does_not_need() -> None:
    asked = Backing("cloth", seams="crosswise")
    made = planned(finished="90 x 120", backing=asked, cloth=WIDE).backing
    assert made
    assert made.best.panels == 1


def test_wide_backing_that_is_too_narrow() -> None:
    notice = the(
        told(finished="100 x 110", backing=Backing("cloth"), cloth=WIDE), "wide-too-narrow"
    )
    assert (notice.severity, notice.stated, notice.needed) == ("warning", "106", "108")
    asked = Backing("cloth", stated_panels=2)
    notices = told(finished="100 x 110", backing=asked, cloth=WIDE)
    assert "wide-too-narrow" not in [one.code for one in notices]


def test_the_dearer_direction_is_told() -> None:
    asked = Backing("cloth", seams="lengthwise")
    notice = the(told(finished="57 x 70", backing=asked, cloth=fabric()), "backing-dearer")
    assert "2 × 78 = 156″ with lengthwise seams" in notice.message
    assert "2 × 65 = 130″ with crosswise ones" in notice.message


@pytest.mark.parametrize(
    ("down", "panels", "made"), [(34, 1, 40), (72, 2, 79), (110, 3, 118), (150, 4, 157)]
)
def test_one_to_four_panels(down: int, panels: int, made: int) -> None:
    """Lengths of 40, less a seam of 1 in between each two."""
    backing = planned(finished=f"120 x {down - 8}", backing=Backing(seams="crosswise")).backing
    assert backing
    assert backing.best.panels == panels
    assert backing.best.made == made


# ---- batting


def test_batting_off_the_roll() -> None:
    """68 × 80 off a roll 90 wide: 68 in, the roll's width along the quilt; off one 60 wide two
    lengths of 68, edge to edge."""
    wide = planned(finished="60 x 72", batting=Batting(width=Fraction(90))).batting
    assert wide
    assert wide.roll
    assert wide.pack is None
    assert wide.roll.panels == 1
    assert wide.roll.each == 68
    assert wide.roll.amount == inches("2")
    narrow = planned(finished="60 x 72", batting=Batting(width=Fraction(60))).batting
    assert narrow
    assert narrow.roll
    assert narrow.roll.panels == 2
    assert narrow.roll.length == 136


def test_a_stated_length_off_the_roll(run: Run, pattern: WritePattern) -> None:
    """44 × 50 off a roll 90 wide: 44 in."""
    right = source("batting: {width: 90, length: 44}")
    assert "batting-short" not in codes(run, pattern(right), "error")
    assert codes(run, pattern(right.replace("44}", "40}")), "error") == ["batting-short"]
    assert "spare-batting" in codes(run, pattern(right.replace("44}", "50}")), "advice")
    no_roll = right.replace("width: 90, ", "")
    assert codes(run, pattern(no_roll), "warning").count("batting-no-roll") == 1


def test_two_packages_edge_to_edge() -> None:
    """124 square is more than any package is long; 118 × 150 goes on to two of 120 × 120, side by
    side 120 × 240, and not on to two of 90 × 108, 180 × 108 or 90 × 216."""
    none = planned(finished="116 square", batting=Batting()).batting
    assert none
    assert none.pack is None
    two = planned(finished="110 x 142", batting=Batting()).batting
    assert two
    assert (two.packs, two.pack) == (2, cut("120 square"))


# ---- binding


def test_round_corners_are_never_told_short() -> None:
    """The bound of π is above it, by less than three in ten million."""
    assert 0 < float(ROUND) - pi < 3e-7


@given(st.integers(20, 120), st.integers(20, 120), st.integers(1, 10))
def test_the_way_round_with_round_corners(across: int, down: int, radius: int) -> None:
    """Sides less two radii each and four quarter circles, up to the next eighth."""
    made = planned(
        finished=f"{across} x {down}",
        binding=Binding("cloth", Fraction(5, 2), bias=True, radius=Fraction(radius)),
    ).binding
    assert made
    curve = 2 * (across + down) - 8 * radius + 2 * pi * radius
    assert curve <= made.perimeter < curve + 0.1251
    assert made.length == made.perimeter + 10


def test_corners_too_round_for_the_quilt(run: Run, pattern: WritePattern) -> None:
    layers = "binding: {fabric: edge, bias: yes, corners: rounded, radius: 19}"
    assert "corner-radius" in codes(run, pattern(source(layers)), "error")
    assert "corner-radius" not in codes(run, pattern(source(layers.replace("19", "18"))), "error")


@pytest.mark.parametrize(
    ("layers", "code"),
    [
        ("bias: yes, strips: 5", "bias-strips"),
        ("square: 20", "binding-not-bias"),
        ("bias-from: strips", "binding-not-bias"),
        ("bias: yes, square: 12", "bias-square"),
        ("bias: yes, square: 30", "bias-square"),
        ("bias: yes, square: 24", "spare-square"),
    ],
)
def test_bias_and_what_is_not(run: Run, pattern: WritePattern, layers: str, code: str) -> None:
    path = pattern(source(f"binding: {{fabric: edge, {layers}}}"))
    assert code in codes(run, path, "error", "warning", "advice")


def test_bias_strips_are_as_long_as_the_square_is_across() -> None:
    """Of 20 in, strips 2½ wide: along the diagonal of 28.28 in, each side gives 5 with midlines of
    25.8, 20.8, 15.8, 10.8 and 5.8 in, 78.9 in; both sides 157.8."""
    assert bias.per_half(Fraction(20), Fraction(5, 2)) == 5
    midlines = 2 * sum(20 * sqrt(2) - Fraction(5, 2) * (2 * at + 1) for at in range(5))
    assert float(bias.in_strips(Fraction(20), Fraction(5, 2))) == pytest.approx(midlines)


@given(st.integers(6, 60), st.sampled_from([Fraction(2), Fraction(9, 4), Fraction(5, 2)]))
def test_no_bias_beyond_the_cloth(side: int, wide: Fraction) -> None:
    """Whatever the way, no more than the square's own area; seams only take from it."""
    area = Exact(Fraction(side) ** 2 / wide)
    assert bias.in_strips(Fraction(side), wide) <= area
    assert bias.squared_strips(Fraction(side), wide) <= bias.in_strips(Fraction(side), wide)
    assert bias.continuous(Fraction(side), wide, Fraction(1, 4)) <= area


@pytest.mark.parametrize("bias_from", ["square", "strips"])
@pytest.mark.parametrize("join", ["diagonal", "straight"])
def test_a_square_less_would_not_do(bias_from: str, join: str) -> None:
    asked = Binding("cloth", Fraction(5, 2), bias=True, bias_from=bias_from, join=join)  # type: ignore[arg-type]
    made = planned(finished="30 x 36", binding=asked).binding
    assert made
    assert made.made >= made.length
    assert made.square
    smaller = Binding(
        "cloth", Fraction(5, 2), bias=True, bias_from=bias_from, join=join,  # type: ignore[arg-type]
        stated_square=made.square - 1,
    )  # fmt: skip
    assert the(told(finished="30 x 36", binding=smaller), "bias-square").severity == "error"


def test_a_binding_that_does_not_close(run: Run, pattern: WritePattern) -> None:
    """The ends overlap by the strip's width: 2½ over is just enough."""
    text = source("binding: {fabric: edge, cut: 2 1/2 x WOF}")
    for over, told_of in (("2", ["binding-open"]), ("2 1/2", [])):
        path = pattern(text.replace("sizes:", f"settings: {{binding-over: {over}}}\nsizes:"))
        assert [one for one in codes(run, path, "warning") if one == "binding-open"] == told_of


# ---- the label


@pytest.mark.parametrize(
    ("label", "told_of", "of"),
    [
        ("", [], "front"),  # the lightest that has a piece of 6½ × 4½
        ("label: {fabric: edge}", [], "edge"),  # dark, but she says so
        ("label: {size: 12 x 30}", [], None),  # 26 in of the front by 40 hold 12½ × 30½
        ("label: {size: 30 x 45, fabric: front}", ["label-short"], None),
        ("label: {fabric: fornt}", ["unknown-fabric"], None),
        ("label: {size: 6 x 1, lines: [one, two, three]}", ["label-crowded"], "front"),
    ],
)
def test_the_label_is_cut_from_what_is_over(
    run: Run, pattern: WritePattern, label: str, told_of: list[str], of: str | None
) -> None:
    path = pattern(source(f"binding: {{fabric: edge, cut: 2 1/2 x WOF}}\n{label}"))
    about = {"label-short", "label-crowded", "unknown-fabric"}
    assert [c for c in codes(run, path, "error", "warning") if c in about] == told_of
    if "12 x 30" in label:
        of = "front"
    assert one(run, path)["label"]["fabric"] == of


def test_the_label_is_not_cut_from_what_the_backing_takes(run: Run, pattern: WritePattern) -> None:
    assert one(run, pattern(source(PIECED)))["label"]["fabric"] != "front"
