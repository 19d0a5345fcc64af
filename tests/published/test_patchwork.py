"""Printed sizes and counts of patchwork, each put through a source and `figures` or `check`.

The numbers in brackets are rows of the trade facts; every source stands beside its check. Expected
values are the sources' own: nothing here computes them.
"""

import pytest

from tests.published.reading import one_size, told
from tests.support import Run, WritePattern

# Golden 8 (5.25): sashes and cornerstones of 4 × 5 blocks with a sashed edge,
# http://susanintexas.blogspot.com/2009/02/quilt-math-algorithms-for-cornerstones.html
SASHED = """
pattern: Sashed
pieces:
  A: {cut: 12 1/2 square}
  S: {cut: 3 1/2 x 12 1/2, count: 49}
  T: {cut: 3 1/2 square, count: 30}
top: {rows: [A], across: 4, down: 5, sashing: {sash: S, stones: T, round: yes}}
"""


def test_sashes_and_cornerstones(run: Run, pattern: WritePattern) -> None:
    pieces = one_size(run, pattern(SASHED))["pieces"]
    assert (pieces["S"]["count"]["value"], pieces["T"]["count"]["value"]) == ("49", "30")


@pytest.mark.parametrize(("right", "wrong"), [("count: 49", "count: 48"), ("30", "20")])
def test_one_sash_fewer_is_refused(run: Run, pattern: WritePattern, right: str, wrong: str) -> None:
    notices = told(run, [pattern(SASHED.replace(right, wrong))])["trial"]
    assert [one["code"] for one in notices] == ["count"]
    assert notices[0]["needed"] in ("49", "30")


# Golden 9 (5.30): butted borders one after another, the last with corner squares; guild lesson,
# https://oldmvc.villageserver.com/4Bs_Oct.html
BORDERS = """
pattern: Three borders
width: 52
pieces:
  P: {cut: 32 1/2 x 44}
  A: {cut: 1 1/2 x WOF}
  B: {cut: 2 1/2 x WOF}
  C: {cut: 4 1/2 x WOF}
  K: {cut: 4 1/2 square, count: 4}
top:
  rows: [P]
  borders: [{strip: A}, {strip: B}, {strip: C, stones: K}]
"""
BORDER_LENGTHS = [
    # sides, ends, width and length once it is on
    ("44", "34 1/2", "34 1/2", "46"),
    ("46", "38 1/2", "38 1/2", "50"),
    ("50", "38 1/2", "46 1/2", "58"),
]


def test_butted_borders(run: Run, pattern: WritePattern) -> None:
    borders = one_size(run, pattern(BORDERS))["borders"]
    assert [
        (b["side_length"], b["end_length"], b["measure"]["across"], b["measure"]["down"])
        for b in borders
    ] == BORDER_LENGTHS


@pytest.mark.parametrize(
    ("stated", "needed"),
    [("{strip: A, end-length: 32 1/2}", "34 1/2"), ("{strip: A, side-length: 46}", "44")],
)
def test_a_border_of_another_length_is_refused(
    run: Run, pattern: WritePattern, stated: str, needed: str
) -> None:
    text = BORDERS.replace("{strip: A}", stated)
    notices = told(run, [pattern(text)])["trial"]
    assert [(one["code"], one["needed"]) for one in notices] == [("border-length", needed)]


# Golden 12 (5.38): strips 1 1/4 × 11: 17 sets give 136 slices, 9 sets the 68 others, for 68
# nine-patches of 2 3/4 raw, https://temeculaquiltco.blogspot.com/search?updated-max=2018-11-02T05:00:00-07:00
NINE_PATCHES = """
pattern: Nine-patches
width: 11
pieces:
  A: {cut: 1 1/4 x WOF}
  B: {cut: 1 1/4 x WOF}
units:
  edge: {method: strip set, from: A B A, segment: 1 1/4}
  middle: {method: strip set, from: B A B, segment: 1 1/4}
  nine: {rows: [edge, middle, edge], make: 68}
"""


def test_strip_sets_of_nine_patches(run: Run, pattern: WritePattern) -> None:
    units = one_size(run, pattern(NINE_PATCHES))["units"]
    assert (units["edge"]["sets"], units["edge"]["segments"]) == (17, 136)
    assert (units["middle"]["sets"], units["middle"]["segments"]) == (9, 68)
    assert units["nine"]["measure"]["across"]["value"] == "2 3/4"


# Golden 12 (5.39): 26 strips of 2 1/2 × 20, 13 pairs of 8 slices, 52 four-patches,
# https://www.leilagardunia.com/blog/quirky-scrap-qal-2
FOUR_PATCHES = """
pattern: Four-patches
width: 20
pieces:
  A: {cut: 2 1/2 x WOF, strips: 13}
  B: {cut: 2 1/2 x WOF, strips: 13}
units:
  pair: {method: strip set, from: A B, segment: 2 1/2}
  four: {rows: [pair, pair/half], make: 52}
"""


def test_strip_sets_of_four_patches(run: Run, pattern: WritePattern) -> None:
    size = one_size(run, pattern(FOUR_PATCHES))
    assert (size["units"]["pair"]["sets"], size["units"]["pair"]["per_set"]) == (13, 8)
    assert [size["pieces"][one]["own_strips"]["value"] for one in "AB"] == ["13", "13"]


def test_one_more_four_patch_needs_another_set(run: Run, pattern: WritePattern) -> None:
    notices = told(run, [pattern(FOUR_PATCHES.replace("make: 52", "make: 53"))])["trial"]
    assert {(one["code"], one["needed"]) for one in notices} == {("strips-short", "14")}


# Golden 12 (5.40): a quilter's own mistake: 6 strips of each colour for 120 four-patches of 2 in
# squares, where 12 are needed, http://kristaquilts.blogspot.com/2015/12/math-fail.html
MATH_FAIL = """
pattern: Math fail
pieces:
  A: {cut: 2 square, strips: STRIPS}
  B: {cut: 2 square, strips: STRIPS}
units:
  four: {rows: [A B, B A], make: 120}
"""


def test_six_strips_where_twelve_are_needed(run: Run, pattern: WritePattern) -> None:
    notices = told(run, [pattern(MATH_FAIL.replace("STRIPS", "6"))])["trial"]
    assert [(n["code"], n["stated"], n["needed"]) for n in notices] == [
        ("strips-short", "6", "12"),
        ("strips-short", "6", "12"),
    ]
    assert run("check", pattern(MATH_FAIL.replace("STRIPS", "12"))).code == 0


# Golden 12 (5.44): the patches of 12 blocks, and its own erratum: 48 blue oblongs were printed
# where 96 are needed, https://patchworktimes.com/2011/11/11/block-pieces-needed/
# The block's own seams are diagonal; here the same patches lie in two rows of bars.
BLOCK_PIECES = """
pattern: Block pieces
pieces:
  C: {cut: 4 1/2 square, count: 12}
  D: {cut: 2 1/2 x 4 1/2, count: 48}
  E: {cut: 2 1/2 square, count: 144}
  F: {cut: 2 1/2 x 4 1/2, count: 96}
  G: {cut: 2 1/2 square, count: 144}
units:
  light: {columns: [E E]}
  blue: {columns: [G G]}
  block:
    rows: [C D*4 F*7, F light*6 blue*6]
    make: 12
"""


def test_pieces_of_twelve_blocks_and_their_erratum(run: Run, pattern: WritePattern) -> None:
    pieces = one_size(run, pattern(BLOCK_PIECES))["pieces"]
    counts = [piece["count"]["value"] for piece in pieces.values()]
    assert counts == ["12", "48", "144", "96", "144"]
    printed = BLOCK_PIECES.replace("count: 96", "count: 48")
    notices = told(run, [pattern(printed)])["trial"]
    assert [(n["code"], n["stated"], n["needed"]) for n in notices] == [("count", "48", "96")]


# 5.28: 20 nine-inch blocks with 3 5/8 in sashing all round, printed 55 3/8 × 66 3/4,
# https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/
SASHING_SLIP = """
pattern: Sashing slip
sizes: {one: {finished: PRINTED x 66 3/4}}
pieces:
  A: {cut: 9 1/2 square}
  S: {cut: 4 1/8 x 9 1/2}
  T: {cut: 4 1/8 square}
top: {rows: [A], across: 4, down: 5, sashing: {sash: S, stones: T, round: yes}}
"""


def test_the_width_of_a_sashed_top(run: Run, pattern: WritePattern) -> None:
    """The width is refused, the length is right."""
    notices = told(run, [pattern(SASHING_SLIP.replace("PRINTED", "55 3/8"))])["trial"]
    assert [n["code"] for n in notices] == ["finished-size"]
    assert (notices[0]["stated"], notices[0]["needed"]) == ("55 3/8", "54 1/8")
    assert run("check", pattern(SASHING_SLIP.replace("PRINTED", "54 1/8"))).code == 0


# 5.46: "11 × 20 and 9 × 20 make a 20 square",
# http://quilton.blogspot.com/2011/09/before-i-start-today.html
TWO_OBLONGS = """
pattern: Two oblongs
pieces:
  A: {cut: 11 x 20}
  B: {cut: 9 x 20}
units:
  square: {rows: [A B], measure: MEASURE}
"""


def test_two_oblongs_do_not_make_a_square(run: Run, pattern: WritePattern) -> None:
    """One side of the square is right, so the square is believed: an oblong is too narrow."""
    (notice,) = told(run, [pattern(TWO_OBLONGS.replace("MEASURE", "20 square"))])["trial"]
    assert (notice["code"], notice["rule"]) == ("unit-measure", "R1")
    assert (notice["stated"], notice["needed"]) == ("9", "9 1/2")
    news = [fix["new"] for fix in notice["fix"]]
    assert news == ["9 1/2 x 20", "11 1/2 x 20", "19 1/2 x 20"]
    assert run("check", pattern(TWO_OBLONGS.replace("MEASURE", "19 1/2 x 20"))).code == 0
