"""Logs and triangles: every figure worked by hand beside it, cloth 40 inches wide.

Yards: strips × width and 3 inches spare, up to the next eighth of a yard (4½ inches).
"""

from tests.kinds.by_letter import Kind


def test_log_cabin(kind: Kind) -> None:
    # Centre 3, logs 1½: pale logs 3½ 5 6½ 8 9½ 11 = 43½ a block, deep ones 5 6½ 8 9½ 11 12½ = 52½.
    crib, twin = (kind("log cabin", size) for size in ("crib", "twin"))
    assert (crib.made("cabin"), crib.measure("cabin")) == (12, "12 1/2")
    # 12 of each length, longest first, each into the first strip with room. Pale: the 11 in 4
    # strips (7 over in each), the 9½ in 3, the 8 in 3 (24 over in the last); of the 6½ 4 go beside
    # the 11, 3 beside the 8 (4½ over), 5 into 1 more (7½ over); of the 5 1 goes beside those, 8
    # into 1, 3 into 1 (25 over); of the 3½ 1 goes into the 4½, 7 into the 25, 4 into 1 more.
    # 4 + 3 + 3 + 1 + 1 + 1 + 1 = 14 × 2 = 28 + 3 = 31 → ⅞ yd.
    # Deep: 52½ × 12 ÷ 40 = 15¾ at the least, 17 in this way: 34 + 3 = 37 → 1⅛ yd.
    assert (crib.strips("A"), crib.yards("A")) == (14, "7/8")
    assert (crib.strips("B"), crib.yards("B")) == (17, "1 1/8")
    # 30 blocks: 32⅝ and 39⅜ strips at the least, 34 and 41 in this way.
    # 34 × 2 = 68 + 3 = 71 → 2 yd; 41 × 2 = 82 + 3 = 85 → 2⅜ yd.
    assert (twin.strips("A"), twin.yards("A")) == (34, "2")
    assert (twin.strips("B"), twin.yards("B")) == (41, "2 3/8")
    assert (crib.count("C"), twin.count("C")) == (12, 30)


def test_courthouse_steps(kind: Kind) -> None:
    crib, twin = (kind("courthouse steps", size) for size in ("crib", "twin"))
    # A block: 2 × (3½ + 6½ + 9½) = 39 of pale logs, 2 × (6½ + 9½ + 12½) = 57 of deep ones.
    # 12 blocks, pale: 24 × 9½, 4 a strip = 6; 24 × 6½, 6 a strip = 4; 24 × 3½, 11 a strip → 3: 13.
    # Deep: 24 × 12½, 3 a strip = 8; 24 × 9½, 4 a strip = 6; 24 × 6½, 6 a strip = 4: 18.
    # 26 + 3 = 29 → ⅞ yd; 36 + 3 = 39 → 1⅛ yd.
    assert (crib.strips("A"), crib.yards("A")) == (13, "7/8")
    assert (crib.strips("B"), crib.yards("B")) == (18, "1 1/8")
    # 30 blocks, pale: 60 ÷ 4 = 15, 60 ÷ 6 = 10, 60 ÷ 11 → 6: 31 = 62 + 3 = 65 → 1⅞ yd.
    # Deep: 60 ÷ 3 = 20, 60 ÷ 4 = 15, 60 ÷ 6 = 10: 45 = 90 + 3 = 93 → 2⅝ yd.
    assert (twin.strips("A"), twin.yards("A")) == (31, "1 7/8")
    assert (twin.strips("B"), twin.yards("B")) == (45, "2 5/8")


def test_pinwheels_two_at_a_time(kind: Kind) -> None:
    crib, throw = (kind("pinwheels", size) for size in ("crib", "throw"))
    # 30 × 4 = 120 blades, 2 from a pair of squares: 60 of each; 40 ÷ 5 = 8 a strip → 8 strips.
    # 8 × 5 = 40 + 3 = 43 → 1¼ yd.
    assert crib.made("blade") == 120
    assert [(crib.strips(one), crib.yards(one)) for one in "AB"] == [(8, "1 1/4")] * 2
    # 56 × 4 = 224: 112 of each = 14 strips, none over. 70 + 3 = 73 → 2⅛ yd.
    assert throw.made("blade") == 224
    assert [(throw.strips(one), throw.yards(one)) for one in "AB"] == [(14, "2 1/8")] * 2


def test_pinwheels_eight_at_a_time(kind: Kind) -> None:
    eight = {"cut: 5 square": "cut: 10 square", "gives: 2": "gives: 8"}
    # 120 ÷ 8 = 15 squares of 10, 4 a strip → 4 strips; 224 ÷ 8 = 28 = 7 strips, none over.
    assert [kind("pinwheels", "crib", eight).strips(one) for one in "AB"] == [4, 4]
    assert [kind("pinwheels", "throw", eight).strips(one) for one in "AB"] == [7, 7]


def test_flying_geese(kind: Kind) -> None:
    crib, throw = (kind("flying geese", size) for size in ("crib", "throw"))
    # 3 × 14 = 42, 4 at a time → 11 large squares; 40 ÷ 7¼ = 5 → 3 strips × 7¼ = 21¾ + 3 → ¾ yd.
    # 11 × 4 = 44 small ones; 40 ÷ 3⅞ = 10 → 5 × 3⅞ = 19⅜ + 3 = 22⅜ → ⅝ yd.
    assert crib.made("flyer") == 42
    assert (crib.strips("A"), crib.yards("A")) == (3, "3/4")
    assert (crib.strips("B"), crib.yards("B")) == (5, "5/8")
    # 4 bars × 42½ = 170: 5 × 40 − 4 × ½ = 198, 4 give 158½.
    assert (crib.count("S"), crib.strips("S")) == (4, 5)
    # 5 × 22 = 110 → 28: 28 ÷ 5 → 6 × 7¼ = 43½ + 3 = 46½ → 1⅜ yd.
    # 28 × 4 = 112 ÷ 10 → 12 × 3⅞ = 46½ + 3 = 49½, exactly 1⅜ yd.
    assert throw.made("flyer") == 110
    assert (throw.strips("A"), throw.yards("A")) == (6, "1 3/8")
    assert (throw.strips("B"), throw.yards("B")) == (12, "1 3/8")
    # 6 bars × 66½ = 399: 10 × 40 − 9 × ½ = 395½ is short, so 11.
    assert (throw.count("S"), throw.strips("S")) == (6, 11)


def test_sawtooth_stars(kind: Kind) -> None:
    crib, twin = (kind("sawtooth stars", size) for size in ("crib", "twin"))
    # One set of 4 geese a star. 12 of 7¼, 5 a strip → 3; 48 of 3⅞, 10 → 5; 48 of 3½, 11 → 5;
    # 12 of 6½, 6 → 2, none over.
    assert (crib.made("star"), crib.made("point")) == (12, 48)
    assert [crib.strips(letter) for letter in "ABCM"] == [3, 5, 5, 2]
    # 30 ÷ 5 = 6; 120 ÷ 10 = 12; 120 ÷ 11 → 11 (121); 30 ÷ 6 = 5.
    assert [twin.strips(letter) for letter in "ABCM"] == [6, 12, 11, 5]
    # 43½ + 3 and 46½ + 3 → 1⅜ yd; 32½ + 3 = 35½ → 1 yd.
    assert [twin.yards(letter) for letter in "ABM"] == ["1 3/8", "1 3/8", "1"]


def test_square_in_a_square(kind: Kind) -> None:
    crib, throw = (kind("square in a square", size) for size in ("crib", "throw"))
    # 4 triangles a round, 2 from a square: 60 and 60 squares for 30 blocks.
    assert (crib.made("letter"), crib.squares("B"), crib.squares("D")) == (30, 60, 60)
    # 40 ÷ 4½ = 8 → 4 (18 + 3 → ⅝); 40 ÷ 3¾ = 10 → 6 (22½ + 3 → ¾); 40 ÷ 4⅞ = 8 → 8 (39 + 3 → 1¼).
    assert [crib.strips(letter) for letter in "ABD"] == [4, 6, 8]
    assert [crib.yards(letter) for letter in "ABD"] == ["5/8", "3/4", "1 1/4"]
    # 56 ÷ 8 = 7 (31½ + 3 → 1); 112 ÷ 10 → 12 (45 + 3 → 1⅜); 112 ÷ 8 = 14 (68¼ + 3 → 2).
    assert [throw.strips(letter) for letter in "ABD"] == [7, 12, 14]
    assert [throw.yards(letter) for letter in "ABD"] == ["1", "1 3/8", "2"]


def test_the_cuts_of_a_square_in_a_square_worked_back(kind: Kind) -> None:
    # Left out, they come from the centre: 4 ÷ √2 + ⅞ = 3.70 → 3¾ and 4 + ⅞ = 4⅞.
    no_cuts = {"cut: 3 3/4 square, ": "", "cut: 4 7/8 square, ": ""}
    exact = kind(
        "square in a square", "crib", no_cuts | {"rounds: B D": "rounds: B D\n    trimming: 0"}
    )
    assert (exact.cut("B"), exact.cut("D")) == ("3 3/4", "4 7/8")
    # And ⅛ more to trim away, if the author does not say otherwise.
    usual = kind("square in a square", "crib", no_cuts)
    assert (usual.cut("B"), usual.cut("D")) == ("3 7/8", "5")


def test_churn_dash(kind: Kind) -> None:
    crib, throw = (kind("churn dash", size) for size in ("crib", "throw"))
    # 20 × 4 = 80 corners, 2 from a pair: 40 of each; 40 ÷ 4 = 10 a strip → 4, none over.
    # 80 bars; 40 ÷ 3½ = 11 a set → 8 sets. 20 middles ÷ 11 → 2.
    assert (crib.made("corner"), crib.made("bar"), crib.sets("bar")) == (80, 80, 8)
    assert [crib.strips(letter) for letter in "ABDEM"] == [4, 4, 8, 8, 2]
    # 42 × 4 = 168: 84 squares → 9 strips × 4 = 36 + 3 = 39 → 1⅛ yd.
    # 168 ÷ 11 → 16 sets × 2 = 32 + 3 = 35 → 1 yd; 42 ÷ 11 → 4.
    assert [throw.strips(letter) for letter in "ABDEM"] == [9, 9, 16, 16, 4]
    assert [throw.yards(letter) for letter in "ABDE"] == ["1 1/8", "1 1/8", "1", "1"]
