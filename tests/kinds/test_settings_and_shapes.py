"""Blocks cut apart, panels, sashes, blocks on point, races and shapes: worked by hand.

Yards: strips × width and 3 inches spare, up to the next eighth of a yard (4½ inches).
"""

from tests.kinds.by_letter import Kind


def test_disappearing_nine_patch(kind: Kind) -> None:
    # Squares of 5: 3 × 5 − 4 × ½ = 14 raw, quarters 7, finished 6½.
    lap, throw = (kind("disappearing nine-patch", size) for size in ("lap", "throw"))
    assert (lap.measure("nine"), lap.measure("quarter")) == ("14", "7")
    # 6 × 7 = 42 quarters ÷ 4 → 11 nine-patches (2 quarters over): 44 + 44 + 11 = 99 squares.
    assert (lap.made("quarter"), lap.made("nine")) == (42, 11)
    assert [lap.count(letter) for letter in "ABC"] == [44, 44, 11]
    # 9 × 11 = 99 ÷ 4 → 25 (1 over): 100 + 100 + 25 = 225.
    assert (throw.made("quarter"), throw.made("nine")) == (99, 25)
    assert [throw.count(letter) for letter in "ABC"] == [100, 100, 25]
    # 6 × 6½ = 39, 7 × 6½ = 45½; 9 × 6½ = 58½, 11 × 6½ = 71½.
    assert (lap.finished, throw.finished) == (("39", "45 1/2"), ("58 1/2", "71 1/2"))


def test_panel(kind: Kind) -> None:
    small, large = (kind("panel", size) for size in ("small", "large"))
    # Panel 23 × 41 in a frame of 3-inch squares with 27 × 45 inside: (27 − 23) ÷ 2 = 2, cut 2½.
    assert (small.cut("C"), small.cut("D"), small.finished) == ("2 1/2", "2 1/2", ("33", "51"))
    # 2 × 15 + 2 × 11 = 52 squares; 40 ÷ 3½ = 11 → 5 strips.
    assert (small.count("A"), small.strips("A"), large.count("A")) == (52, 5, 52)
    # Border 6: 2 × 51½ + 2 × 45½ = 194: 5 × 40 − 4 × ½ = 198. 5 × 6½ = 32½ + 3 = 35½ → 1 yd.
    assert (large.strips("F"), large.yards("F"), large.finished) == (5, "1", ("45", "63"))


def test_panel_that_trims_smaller(kind: Kind) -> None:
    """The coping takes up what the panel lacks: (27 − 22¼) ÷ 2 = 2⅜ and (45 − 40) ÷ 2 = 2½."""
    trimmed = {
        "cut: 23 1/2 x 41 1/2": "cut: 22 3/4 x 40 1/2",
        "before-borders: 23 1/2 x 41 1/2\n    ": "",
    }
    small = kind("panel", "small", trimmed)
    assert (small.cut("C"), small.cut("D")) == ("2 7/8", "3")


def test_sampler(kind: Kind) -> None:
    lap, throw = (kind("sampler", size) for size in ("lap", "throw"))
    # 3 × 4 blocks: 4 × 4 + 5 × 3 = 31 sashes, 40 ÷ 12½ = 3 a strip → 11 × 2½ = 27½ + 3 → ⅞ yd;
    # 4 × 5 = 20 stones; 3 × 12 + 4 × 2 = 44, 4 × 12 + 5 × 2 = 58.
    assert (lap.count("S"), lap.strips("S"), lap.yards("S")) == (31, 11, "7/8")
    assert (lap.count("T"), lap.finished) == (20, ("44", "58"))
    # 4 × 5 blocks: 5 × 5 + 6 × 4 = 49 → 17 × 2½ = 42½ + 3 → 1⅜ yd; 5 × 6 = 30 stones.
    assert (throw.count("S"), throw.strips("S"), throw.yards("S")) == (49, 17, "1 3/8")
    assert (throw.count("T"), throw.finished) == (30, ("58", "72"))


def test_on_point(kind: Kind) -> None:
    crib, throw = (kind("on point", size) for size in ("crib", "throw"))
    # 3 × 4 + 2 × 3 = 18 blocks in 3 + 4 − 1 = 6 slanting rows; 2 × (3 + 4 − 2) = 10 sides, 4 from
    # a square cut twice: 3 squares; 4 corners from 2 squares.
    assert (crib.made("nine"), crib.count("P"), len(crib.of["rows"])) == (12, 6, 6)
    assert (crib.count("S"), crib.squares("S")) == (10, 3)
    # 5 × 6 + 4 × 5 = 50 blocks in 10 rows; 2 × (5 + 6 − 2) = 18 sides, 5 squares.
    assert (throw.made("nine"), throw.count("P"), len(throw.of["rows"])) == (30, 20, 10)
    assert (throw.count("S"), throw.squares("S")) == (18, 5)
    for size in (crib, throw):
        assert (size.count("K"), size.squares("K")) == (4, 2)
    # 3 × 9√2 = 38.18, 4 × 9√2 = 50.91; 5 × 9√2 = 63.64, 6 × 9√2 = 76.37.
    assert (crib.finished, throw.finished) == (("38.18", "50.91"), ("63.64", "76.37"))


def test_the_setting_triangles_worked_back(kind: Kind) -> None:
    """Left out, the cuts come from the block: 9√2 + 1¼ = 13.98 → 14, 9 ÷ √2 + ⅞ = 7.24 → 7¼."""
    crib = kind("on point", "crib", {"cut: 14 square, ": "", "cut: 7 1/4 square, ": ""})
    assert (crib.cut("S"), crib.cut("K")) == ("14", "7 1/4")


def test_strip_race(kind: Kind) -> None:
    # 20 × 40 − 19 × 2½ − 18 = 734½ ÷ 16 − ½ = 45.40625; 16 rows × 2 = 32.
    assert kind("strip race", "crib").finished == ("45 13/32", "32")
    # 40 × 40 − 39 × 2½ − 18 = 1,484½ ÷ 32 − ½ = 45.890625; 32 rows × 2 = 64.
    assert kind("strip race", "lap").finished == ("45 57/64", "64")
    # Straight joins: 40 × 40 − 39 × ½ − 18 = 1,562½ ÷ 32 − ½ = 48.328125.
    straight = {"join: diagonal": "join: straight", "finished: about": "x-was:"}
    assert kind("strip race", "lap", straight).finished == ("48 21/64", "64")


def test_curves(kind: Kind) -> None:
    crib, twin = (kind("curves", size) for size in ("crib", "twin"))
    # 6 × 8 = 48: 40 ÷ 4½ = 8 → 6 × 4½ = 27 + 3 → ⅞ yd; 40 ÷ 6½ = 6 → 8 × 6½ = 52 + 3 → 1⅝ yd.
    assert (crib.count("P"), crib.strips("P"), crib.yards("P")) == (48, 6, "7/8")
    assert (crib.count("G"), crib.strips("G"), crib.yards("G")) == (48, 8, "1 5/8")
    # 120: 15 × 4½ = 67½ + 3 = 70½ → 2 yd; 20 × 6½ = 130 + 3 = 133 → 3¾ yd.
    assert (twin.count("P"), twin.strips("P"), twin.yards("P")) == (120, 15, "2")
    assert (twin.count("G"), twin.strips("G"), twin.yards("G")) == (120, 20, "3 3/4")
    # Grounds cut 7 and trimmed: 40 ÷ 7 = 5 → 24 × 7 = 168 + 3 = 171, exactly 4¾ yd.
    large = kind("curves", "twin", {"cut: 6 1/2 square": "cut: 7 square"})
    assert (large.strips("G"), large.yards("G")) == (24, "4 3/4")


def test_hexagons(kind: Kind) -> None:
    lap, throw = (kind("hexagons", size) for size in ("lap", "throw"))
    # 10 rows of 14 and 10 of 13 = 270, and 10 × 2 halves; squares of 3¾, 10 a strip → 27;
    # 101¼ + 3 = 104¼ → 3 yd.
    assert (lap.count("H"), lap.count("N")) == (270, 20)
    assert (lap.strips("H"), lap.yards("H")) == (27, "3")
    # 15 rows of 22 and 14 of 21 = 624, and 14 × 2 halves → 63; 236¼ + 3 = 239¼ → 6¾ yd.
    assert (throw.count("H"), throw.count("N")) == (624, 28)
    assert (throw.strips("H"), throw.yards("H")) == (63, "6 3/4")
    # 14 × 1½√3 = 36.37, 19 × 2¼ + 3 = 45¾; 22 × 1½√3 = 57.16, 28 × 2¼ + 3 = 66.
    assert (lap.finished, throw.finished) == (("36.37", "45 3/4"), ("57.16", "66"))


def test_applique(kind: Kind) -> None:
    crib, throw = (kind("applique", size) for size in ("crib", "throw"))
    # 20 grounds of 10, 4 a strip → 5 × 10 = 50 + 3 = 53 → 1½ yd; 42 → 11: 110 + 3 = 113 → 3¼ yd.
    assert (crib.count("G"), crib.strips("G"), crib.yards("G")) == (20, 5, "1 1/2")
    assert (throw.count("G"), throw.strips("G"), throw.yards("G")) == (42, 11, "3 1/4")
    # Pears of 6 × 7 with ¼ all round, two across web 17 wide, leaves in the 4 inches beside them:
    # 10 rows × 7½ = 75 → 2⅛ yd; 21 × 7½ = 157½, exactly 4⅜ yd. Web needs no edge straightened.
    webs = [size.of["webs"]["web"]["buy"]["amount"] for size in (crib, throw)]
    assert webs == ["2 1/8", "4 3/8"]
