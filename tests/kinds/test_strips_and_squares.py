"""Strips, strip sets and squares: every figure worked by hand beside it, cloth 40 inches wide.

Yards: strips × width and 3 inches spare, up to the next eighth of a yard (4½ inches).
"""

from collections import Counter

import pytest

from patternbook.commands.kinds import starters
from patternbook.edition.pipeline import examine
from patternbook.quilt.prints import mixed
from tests.kinds.by_letter import Kind
from tests.support import WritePattern


def test_strips(kind: Kind) -> None:
    crib = kind("strips", "crib")
    # 42 ÷ 2 = 21 bars, each 36½ long: one strip each. 21 × 2½ = 52½ + 3 = 55½ → 1⅝ yd.
    assert (crib.count("A"), crib.strips("A"), crib.yards("A")) == (21, 21, "1 5/8")
    throw = kind("strips", "throw")
    # 60 ÷ 2 = 30 bars of 54½ = 1,635 end to end; each diagonal join eats 2½:
    # 44 × 40 − 43 × 2½ = 1,652½ is enough, 43 × 40 − 42 × 2½ = 1,615 is not.
    assert (throw.count("A"), throw.strips("A")) == (30, 44)
    # Straight joins eat ½: 42 × 40 − 41 × ½ = 1,659½, 41 × 40 − 40 × ½ = 1,620.
    assert kind("strips", "throw", {"join: diagonal": "join: straight"}).strips("A") == 42


def test_bands(kind: Kind) -> None:
    crib = kind("bands", "crib")
    # 3 rows of 6 boats; 4 bands of 36½: 4 strips × 6½ = 26 + 3 = 29 → ⅞ yd.
    assert (crib.made("boat"), crib.count("W")) == (18, 4)
    assert (crib.strips("W"), crib.yards("W")) == (4, "7/8")
    throw = kind("bands", "throw")
    # 3 rows of 9; 4 × 54½ = 218: 6 × 40 − 5 × ½ = 237½, while 5 give 198. 6 × 12½ = 75 + 3 → 2¼ yd.
    assert (throw.made("boat"), throw.count("W")) == (27, 4)
    assert (throw.strips("W"), throw.yards("W")) == (6, "2 1/4")
    # Along the length 40 ÷ 12½ = 3 lie side by side, so 2 × 54½ = 109 + 3 = 112 → 3⅛ yd, no seams.
    assert kind("bands", "throw", {"join: straight": "along: length"}).yards("W") == "3 1/8"


def test_rail_fence(kind: Kind) -> None:
    crib = kind("rail fence", "crib")
    # 6 × 7 = 42 blocks; 40 ÷ 6½ = 6 to a set: 7 sets, none over. 7 × 2½ = 17½ + 3 = 20½ → ⅝ yd.
    assert (crib.made("rails"), crib.sets("rails"), crib.measure("rails")) == (42, 7, "6 1/2")
    assert [(crib.strips(letter), crib.yards(letter)) for letter in "ABC"] == [(7, "5/8")] * 3
    throw = kind("rail fence", "throw")
    # 9 × 11 = 99 ÷ 6 → 17 sets (102). 17 × 2½ = 42½ + 3 = 45½ → 1⅜ yd.
    assert (throw.made("rails"), throw.sets("rails")) == (99, 17)
    assert [(throw.strips(letter), throw.yards(letter)) for letter in "ABC"] == [(17, "1 3/8")] * 3


def test_four_patch(kind: Kind) -> None:
    crib = kind("four-patch", "crib")
    # 6 × 7 = 42 places, every second one: 21 and 21. 42 pairs; 40 ÷ 3½ = 11 a set → 4 sets.
    assert (crib.made("four"), crib.count("P"), crib.made("pair")) == (21, 21, 42)
    # 4 × 3½ = 14 + 3 = 17 → ½ yd; 21 ÷ 6 → 4 × 6½ = 26 + 3 = 29 → ⅞ yd.
    assert (crib.sets("pair"), crib.strips("A"), crib.strips("B")) == (4, 4, 4)
    assert (crib.yards("A"), crib.yards("B")) == ("1/2", "1/2")
    assert (crib.strips("P"), crib.yards("P")) == (4, "7/8")
    twin = kind("four-patch", "twin")
    # 10 × 12 = 120: 60 and 60. 120 pairs ÷ 11 → 11 sets (121): 38½ + 3 = 41½ → 1¼ yd.
    assert (twin.made("four"), twin.count("P"), twin.sets("pair")) == (60, 60, 11)
    assert (twin.yards("A"), twin.yards("B")) == ("1 1/4", "1 1/4")
    # 60 ÷ 6 = 10 strips, none over: 65 + 3 = 68 → 2 yd.
    assert (twin.strips("P"), twin.yards("P")) == (10, "2")


def test_nine_patch(kind: Kind) -> None:
    crib = kind("nine-patch", "crib")
    # 4 × 5 = 20: 40 outer ÷ 11 → 4 sets, 20 inner ÷ 11 → 2 sets; 2 × 4 + 2 = 10 A, 4 + 2 × 2 = 8 B.
    assert (crib.sets("outer"), crib.sets("inner")) == (4, 2)
    # 10 × 3½ = 35 + 3 = 38 → 1⅛ yd; 8 × 3½ = 28 + 3 = 31 → ⅞ yd.
    assert (crib.strips("A"), crib.yards("A")) == (10, "1 1/8")
    assert (crib.strips("B"), crib.yards("B")) == (8, "7/8")
    throw = kind("nine-patch", "throw")
    # 7 × 8 = 56: 112 ÷ 11 → 11, 56 ÷ 11 → 6; 2 × 11 + 6 = 28 A, 11 + 2 × 6 = 23 B.
    assert (throw.made("nine"), throw.sets("outer"), throw.sets("inner")) == (56, 11, 6)
    # 98 + 3 = 101 → 2⅞ yd; 80½ + 3 = 83½ → 2⅜ yd.
    assert (throw.strips("A"), throw.yards("A")) == (28, "2 7/8")
    assert (throw.strips("B"), throw.yards("B")) == (23, "2 3/8")


def test_coins(kind: Kind) -> None:
    crib = kind("coins", "crib")
    # 3 × 24 = 72 coins; 40 ÷ 8½ = 4 a strip → 18 strips.
    assert (crib.count("A"), crib.strips("A")) == (72, 18)
    # 4 × 48½ = 194: 5 × 40 − 4 × ½ = 198, 4 give 158½. 5 × 3½ = 17½ + 3 → ⅝ yd.
    assert (crib.count("S"), crib.strips("S"), crib.yards("S")) == (4, 5, "5/8")
    throw = kind("coins", "throw")
    # 5 × 32 = 160 ÷ 4 = 40 strips, the whole roll.
    assert (throw.count("A"), throw.strips("A")) == (160, 40)
    # 6 × 64½ = 387: 10 × 40 − 9 × ½ = 395½, 9 give 356. 10 × 3½ = 35 + 3 = 38 → 1⅛ yd.
    assert (throw.count("S"), throw.strips("S"), throw.yards("S")) == (6, 10, "1 1/8")


def test_bricks(kind: Kind) -> None:
    crib = kind("bricks", "crib")
    # 14 rows: 7 × 6 + 7 × 5 = 77 whole, 7 × 2 = 14 half. 40 ÷ 6½ = 6 → 13 strips; 40 ÷ 3½ = 11 → 2.
    assert (crib.count("A"), crib.count("H"), crib.of["patches"]) == (77, 14, 91)
    assert (crib.strips("A"), crib.strips("H")) == (13, 2)
    throw = kind("bricks", "throw")
    # 22 rows: 11 × 9 + 11 × 8 = 187, 22 half. 187 ÷ 6 → 32; 22 ÷ 11 = 2, none over.
    assert (throw.count("A"), throw.count("H")) == (187, 22)
    assert (throw.strips("A"), throw.strips("H")) == (32, 2)


def test_irish_chain(kind: Kind) -> None:
    crib = kind("irish chain", "crib")
    # 7 × 9 = 63, corners pieced: 32 and 31. 40 ÷ 2½ = 16 a set, to the last thread:
    # 64 outer = 4 sets, 32 inner = 2 sets; 2 × 4 + 2 = 10 A, 4 + 2 × 2 = 8 B.
    assert (crib.made("nine"), crib.count("P")) == (32, 31)
    assert (crib.sets("outer"), crib.sets("inner")) == (4, 2)
    assert (crib.strips("A"), crib.strips("B")) == (10, 8)
    # 31 ÷ 6 → 6 × 6½ = 39 + 3 = 42 → 1¼ yd.
    assert (crib.strips("P"), crib.yards("P")) == (6, "1 1/4")
    throw = kind("irish chain", "throw")
    # 9 × 11 = 99: 50 and 49. 100 ÷ 16 → 7 sets (112), 50 ÷ 16 → 4 (64); 14 + 4 A, 7 + 8 B.
    assert (throw.made("nine"), throw.count("P")) == (50, 49)
    assert (throw.sets("outer"), throw.sets("inner")) == (7, 4)
    assert (throw.strips("A"), throw.strips("B")) == (18, 15)
    # 49 ÷ 6 → 9 × 6½ = 58½ + 3 = 61½ → 1¾ yd.
    assert (throw.strips("P"), throw.yards("P")) == (9, "1 3/4")


ONE_CLOTH = {
    "D: {fabric: morning, cut: 4 1/2 square}": "D: {fabric: doors, cut: 4 1/2 square, with: A}",
    "E: {fabric: morning, cut: 4 1/2 square, with: D}": (
        "E: {fabric: doors, cut: 4 1/2 square, with: A}"
    ),
}


def test_pluses(kind: Kind) -> None:
    # All letters from the same strips, as one cloth: 40 ÷ 4½ = 8 squares a strip.
    # 9 × 11 = 99 ÷ 8 → 13; 14 × 16 = 224 ÷ 8 = 28, none over.
    crib, throw = (kind("pluses", size, ONE_CLOTH) for size in ("crib", "throw"))
    assert (sum(map(crib.count, "ABCDE")), crib.strips("A")) == (99, 13)
    assert (sum(map(throw.count, "ABCDE")), throw.strips("A")) == (224, 28)
    assert (crib.finished, throw.finished) == (("36", "44"), ("56", "64"))


@pytest.mark.parametrize(("size", "groups", "whole"), [("crib", 28, 13), ("throw", 57, 34)])
def test_every_plus_is_of_one_print(
    pattern: WritePattern, size: str, groups: int, whole: int
) -> None:
    """With as many prints as there are pluses, each is of its own; counted on squared paper, 13 of
    28 and 34 of 57 have all five squares, the others 1, 3 or 4: the edge cuts them off."""
    text = starters()["pluses"].read_text("utf-8")
    for old, new in (*ONE_CLOTH.items(), ("{crib: 9, throw: 16, twin: 24}", str(groups))):
        text = text.replace(old, new)
    prints, told = mixed(examine(pattern(text), "pluses").quilts[size])
    squares = Counter(Counter(prints.values()).values())
    assert (told, sum(squares.values()), squares[5]) == ((), groups, whole)
    assert set(squares) == {1, 3, 4, 5}


def test_postage_stamp(kind: Kind) -> None:
    crib, twin = (kind("postage stamp", size) for size in ("crib", "twin"))
    # 8 ribbons a sheet: 12 × 8 = 96 and 30 × 8 = 240. 19 a set: 6 sets of 8 = 48, 13 of 8 = 104.
    assert (crib.made("sheet"), crib.made("ribbon")) == (12, 96)
    assert (crib.sets("ribbon"), crib.strips("A")) == (6, 48)
    assert (twin.made("sheet"), twin.made("ribbon")) == (30, 240)
    assert (twin.sets("ribbon"), twin.strips("A")) == (13, 104)
    # As many as lie on 40 inches, 20 a set: 96 ÷ 20 → 5 sets = 40 strips, 240 ÷ 20 = 12 = 96.
    full = {"    per-set: 19\n": ""}
    assert kind("postage stamp", "crib", full).strips("A") == 40
    assert kind("postage stamp", "twin", full).strips("A") == 96


def test_binding(kind: Kind) -> None:
    # Once round and 10 inches; each diagonal join eats 2½, so n strips make 37½ × n + 2½.
    assert kind("rail fence", "crib").binding == 5  # 36 × 42: 166 ≤ 190, 4 make 152½
    assert kind("log cabin", "crib").binding == 5  # 36 × 48: 178 ≤ 190
    assert kind("rail fence", "throw").binding == 7  # 54 × 66: 250 ≤ 265, 6 make 227½
    # 60 × 72: 274, and 7 make only 265; "length ÷ 40" would say 7.
    assert kind("four-patch", "twin").binding == 8
