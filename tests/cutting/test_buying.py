"""Yards, metres and packs."""

from fractions import Fraction

import pytest

from patternbook.inch import CENTIMETRES
from patternbook.quilt.records import Backing, Binding, CutSize, Settings
from tests.cutting.small import codes, cut, fabric, inches, piece, planned, strip, the, told

NO_SPARE = Settings(spare=Fraction(0))


@pytest.mark.parametrize(
    ("size", "count", "yards"),
    [
        ("6 1/2 square", 21, "7/8"),
        ("6 1/2 square", 60, "2"),
        ("5 square", 60, "1 1/4"),
        ("4 1/2 square", 30, "5/8"),
        ("2 1/2 x 12 1/2", 49, "1 3/8"),
    ],
)
def test_spare_then_up_to_an_eighth(size: str, count: int, yards: str) -> None:
    """Strips × width + 3 in, up to the next ⅛ yd (own arithmetic by the default house rules)."""
    assert planned(piece("A", size, count)).fabrics["cloth"].buy.amount == inches(yards)


def test_the_sum_is_kept_line_by_line() -> None:
    made = planned(
        piece("A", "3 1/2 square", 96),
        strip("F", "6 1/2", ("51 1/2", 2), ("45 1/2", 2), join="straight"),
        finished="36 x 42",
        binding=Binding("cloth", Fraction(5, 2)),
        backing=Backing("cloth"),
    )
    buy = made.fabrics["cloth"].buy
    assert [(line.what, line.strips, line.length) for line in buy.lines] == [
        ("F", 5, inches("32 1/2")),
        ("A", 9, inches("31 1/2")),
        ("binding", 5, inches("12 1/2")),
        ("backing", 2, 88),
    ]
    assert buy.needed == inches("76 1/2") + 3 + 88
    assert buy.amount == inches("2 1/4") + inches("2 1/2")
    assert buy.spare == buy.amount * 36 - inches("164 1/2") - Fraction(1, 2)


def test_spare_cloth_gives_more_pieces() -> None:
    """14 in of strips and 3 to spare; half a yard leaves 3½ when the edge is straight."""
    buy = planned(piece("A", "3 1/2 square", 44)).fabrics["cloth"].buy
    assert (buy.amount, buy.spare, buy.more) == (Fraction(1, 2), inches("3 1/2"), {"A": 11})


def test_metres_beside_yards() -> None:
    """1 yd = 0.9144 m exactly (1959): 27½ in are 69.85 cm, bought as 0.7 m."""
    buy = planned(piece("S", "2 1/2 x 12 1/2", 31), settings=NO_SPARE).fabrics["cloth"].buy
    assert buy.needed == inches("27 1/2")
    assert buy.metres == Fraction(7, 10)


@pytest.mark.parametrize(
    ("metres", "squares"), [(1, 12), ("3/2", 20), (2, 28), ("5/2", 36), (3, 44)]
)
def test_ten_inch_squares_by_the_metre(metres: int | str, squares: int) -> None:
    """alandacraft.com, "cut 10 in squares from meterage" (2020): 5 of 5 cells."""
    cloth = fabric(width=Fraction(42), stated_metres=Fraction(metres))
    fits = told(piece("A", "10 square", squares), cloth=cloth, settings=NO_SPARE)
    short = told(piece("A", "10 square", squares + 1), cloth=cloth, settings=NO_SPARE)
    assert codes(fits, "error") == []
    assert the(short, "metres-short").rule == "R17"


# "How many quilting squares can you get from a yard of fabric?", alandacraft.com (2020):
# side of the square -> squares from one yard at 39, 40, 41 and 42 in usable.
SQUARES_A_YARD = {
    "1/2": (5616, 5760, 5904, 6048), "1": (1404, 1440, 1476, 1512), "1 1/2": (624, 624, 648, 672),
    "2": (342, 360, 360, 378), "2 1/2": (210, 224, 224, 224), "3": (156, 156, 156, 168),
    "3 1/2": (110, 110, 110, 120), "4": (81, 90, 90, 90), "4 1/2": (64, 64, 72, 72),
    "5": (49, 56, 56, 56), "5 1/2": (42, 42, 42, 42), "6": (36, 36, 36, 42),
    "6 1/2": (30, 30, 30, 30), "7": (25, 25, 25, 30), "7 1/2": (20, 20, 20, 20),
    "8": (16, 20, 20, 20), "8 1/2": (16, 16, 16, 16), "9": (16, 16, 16, 16),
    "9 1/2": (12, 12, 12, 12), "10": (9, 12, 12, 12), "10 1/2": (9, 9, 9, 12),
    "11": (9, 9, 9, 9), "11 1/2": (9, 9, 9, 9), "12": (9, 9, 9, 9),
}  # fmt: skip


@pytest.mark.parametrize("width", [39, 40, 41, 42])
@pytest.mark.parametrize("side", SQUARES_A_YARD)
def test_squares_from_a_yard(side: str, width: int) -> None:
    """All 96 cells: so many are had from the yard, and one more is not."""
    squares = SQUARES_A_YARD[side][width - 39]
    cloth = fabric(width=Fraction(width), stated_yards=Fraction(1))
    for count, faults in ((squares, []), (squares + 1, ["yards-short"])):
        notices = told(piece("A", f"{side} square", count), cloth=cloth, settings=NO_SPARE)
        assert codes(notices, "error") == faults


def test_stated_yards_are_bought() -> None:
    made = planned(piece("A", "5 square", 60), cloth=fabric(stated_yards=Fraction(11, 8)))
    assert (made.fabrics["cloth"].buy.amount, made.fabrics["cloth"].buy.stated) == (
        inches("1 3/8"),
        True,
    )


def test_enough_cloth_in_a_step_that_is_not_sold() -> None:
    """31 in are 0.86 yd: 0.87 would do, but ⅞ is what the shop cuts."""
    cloth = fabric(stated_yards=Fraction(87, 100))
    notices = told(piece("A", "3 1/2 square", 88), cloth=cloth)
    assert the(notices, "odd-yards").severity == "advice"


def test_many_prints_are_bought_one_by_one() -> None:
    """21 strips of seven prints: three of each, 7½ in, so ¼ yd of each."""
    buy = planned(piece("A", "36 1/2 x 2 1/2", 21), cloth=fabric(prints=7)).fabrics["cloth"].buy
    assert (buy.amount, buy.each_print) == (inches("1 5/8"), Fraction(1, 4))


def test_centimetre_patterns_buy_metres() -> None:
    """24 squares of 16.5 cm from 107 cm: four strips, 66 cm and 8 to spare, so 0.8 m."""
    made = planned(
        piece("A", "33/2 square", 24),
        cloth=fabric(width=Fraction(107)),
        settings=Settings(spare=Fraction(8), straightening=Fraction(1)),
        system=CENTIMETRES,
        seam=Fraction(3, 4),
    )
    buy = made.fabrics["cloth"].buy
    assert (buy.amount, buy.unit, buy.metres) == (Fraction(8, 10), "m", Fraction(8, 10))


def test_strips_of_the_other_width_are_suggested_where_they_save_a_purchase() -> None:
    """patchworktimes.com, "Calculating yardage": 15 in the one way, 13½ the other."""
    saving = the(told(piece("A", "2 1/2 x 4 1/2", 48), settings=NO_SPARE), "turned-strip")
    assert saving.needed == "4 1/2"
    assert "turned-strip" not in codes(told(piece("A", "2 1/2 x 4 1/2", 48)))


# Pre-cuts.
# quilterscache.com, MathChartsPage: squares from an 18 × 22 fat quarter, 15 of 15 cells.
SQUARES_A_QUARTER = {
    "2": 99, "2 1/2": 56, "2 7/8": 42, "3": 42, "3 1/2": 30, "3 7/8": 20, "4": 20, "4 1/2": 16,
    "4 7/8": 12, "5": 12, "5 1/2": 12, "5 7/8": 9, "6": 9, "6 1/2": 6, "6 7/8": 6,
}  # fmt: skip


@pytest.mark.parametrize("side", SQUARES_A_QUARTER)
def test_squares_from_a_fat_quarter(side: str) -> None:
    quarter = fabric(form="fat quarter", size=cut("18 x 22"))
    squares = SQUARES_A_QUARTER[side]
    for count, quarters in ((squares, 1), (squares + 1, 2)):
        made = planned(piece("A", f"{side} square", count), cloth=quarter)
        assert made.fabrics["cloth"].buy.number == quarters


def test_sheets_hold_every_strip() -> None:
    made = planned(
        piece("A", "3 1/2 x 6 1/2", 24),
        piece("B", "2 1/2 square", 40),
        cloth=fabric(form="fat quarter"),
    ).fabrics["cloth"]
    lying = [0] * len(made.strips)
    for sheet in made.sheets:
        for row in sheet.rows:
            lying[row.strip] += row.times * sheet.times
    assert lying == [one.times for one in made.strips]
    for sheet in made.sheets:
        deep = sheet.across if sheet.turned else sheet.down
        assert sum(row.times * made.strips[row.strip].width for row in sheet.rows) <= deep


def test_a_panel_is_one_piece() -> None:
    panel = fabric(form="panel", size=cut("23 1/2 x 41 1/2"))
    made = planned(piece("P", "23 1/2 x 41 1/2", 1), cloth=panel)
    assert (made.fabrics["cloth"].buy.number, made.fabrics["cloth"].buy.packs) == (1, 1)
    assert made.yields == {"P": 1}


ROLL = fabric(
    form="strip roll", size=CutSize(Fraction(5, 2), Fraction(40)), pack=40, stated_packs=1
)


@pytest.mark.parametrize(("coins", "strips", "spare"), [(72, 18, 22), (160, 40, 0)])
def test_coins_from_a_strip_roll(coins: int, strips: int, spare: int) -> None:
    """Four coins of 8½ to a strip (own arithmetic): forty strips are the whole roll."""
    buy = planned(piece("A", "8 1/2 x 2 1/2", coins), cloth=ROLL).fabrics["cloth"].buy
    assert (buy.number, buy.packs, buy.spare_precuts) == (strips, 1, spare)
    assert ("exact-packs" in codes(told(piece("A", "8 1/2 x 2 1/2", coins), cloth=ROLL))) == (
        not spare
    )


def test_a_strip_roll_of_another_width() -> None:
    assert "strip-narrow" in codes(told(piece("A", "3 square", 4), cloth=ROLL), "error")


def test_only_the_packet_knows() -> None:
    roll = fabric(form="strip roll", size=CutSize(Fraction(5, 2), None))
    assert codes(told(piece("A", "8 1/2 x 2 1/2", 72), cloth=roll)) == [
        "exact-count",
        "pack-unknown",
    ]


def test_squares_of_no_stated_size() -> None:
    assert "no-size" in codes(
        told(piece("A", "5 square", 4), cloth=fabric(form="squares")), "error"
    )
