"""Half-square triangles: published sizes in, the same sizes out.

The numbers in brackets are rows of the trade facts; every source stands beside its check.
"""

from pathlib import Path

import pytest

from patternbook.methods.made import PiecedMade
from tests.methods.making import cut, faults, sizes, source
from tests.published.reading import told
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

HALVES = "method: half-square triangles, from: <A> <B>"


def finishing(side: str, gives: int = 2, also: str = "") -> tuple[str, str]:
    return "<A>: {}; <B>: {}", f"{HALVES}, gives: {gives}, finished: {side} square{also}"


# (5.1) fin + 7/8: http://cwkalina.blogspot.com/2009/06/half-square-triangle-formula.html
# (5.4) eight from a pair, 2 × (fin + 7/8):
# http://simplyputplus.blogspot.com/2013/04/tutorial-equation-for-half-squares.html and
# https://ewespecial.blogspot.com/2022/05/hard-way-to-get-9.html
# (5.3) oversized by 1/8 http://sewstormy.blogspot.com/2015/02/pinwheel-block-of-monthweek-1friendship.html
# (+ 1 in all: https://mythicseam.com/half-square-triangle-two-at-a-time-math/), or by 1/4
# http://north-hampshire-quilters.org.uk/hblk402b.htm
# (5.5) eight, oversized: https://pamrealthai49.com/j25cr/65cfee-half-square-triangles-8-at-a-time-chart
# (5.42) a nine-grid of 12 in: 1 1/3 finished, "just shy of 2 1/4":
# https://oneworldfabrics.blogspot.com/2017/10
@pytest.mark.parametrize(
    ("side", "gives", "trimming", "square"),
    [
        ("3", 2, "0", "3 7/8"),
        ("2", 2, "0", "2 7/8"),
        ("3", 8, "0", "7 3/4"),
        ("1", 8, "0", "3 3/4"),
        ("1 1/2", 8, "0", "4 3/4"),
        ("4", 2, "1/8", "5"),
        ("3", 2, "1/4", "4 1/8"),
        ("3", 8, "1/8", "8"),
        ("1 1/3", 2, "0", "2 1/4"),
    ],
)
def test_squares_for_a_finished_size(
    run: Run, pattern: WritePattern, side: str, gives: int, trimming: str, square: str
) -> None:
    path = pattern(source([finishing(side, gives)], trimming))
    assert cut(run, path) == {"A0": square, "B0": square}


def test_trimming_is_stated_for_one_unit(run: Run, pattern: WritePattern) -> None:
    path = pattern(source([finishing("4", also=", trimming: 1/8"), finishing("4")]))
    assert cut(run, path) == {"A0": "5", "B0": "5", "A1": "4 7/8", "B1": "4 7/8"}


# (5.6) four from a pair sewn all round: what a unit measures raw, 21 rows. The source calls it
# "finished"; by its own arithmetic, (S - 1/2) ÷ √2, it is the raw edge. Quilters' forum,
# https://forum.missouriquiltco.com/forum/we-don-t-know-much-but-we-know-quilters/quilting-questions/29022-hsts-using-jenny-s-method-beginning-and-ending-sizes
FOUR_FROM_A_PAIR = [
    ("2", "1.06"),
    ("2 1/2", "1.41"),
    ("3", "1.77"),
    ("3 1/2", "2.12"),
    ("4", "2.47"),
    ("4 1/2", "2.83"),
    ("5", "3.18"),
    ("5 1/2", "3.54"),
    ("6", "3.89"),
    ("6 1/2", "4.24"),
    ("7", "4.60"),
    ("7 1/2", "4.95"),
    ("8", "5.30"),
    ("8 1/2", "5.66"),
    ("9", "6.01"),
    ("9 1/2", "6.36"),
    ("10", "6.72"),
    ("10 1/2", "7.07"),
    ("11", "7.42"),
    ("11 1/2", "7.78"),
    ("12", "8.13"),
]


def test_four_from_a_pair_sewn_all_round(tmp_path: Path) -> None:
    units = [
        (f"<A>: {{cut: {square} square}}; <B>: {{cut: {square} square}}", f"{HALVES}, gives: 4")
        for square, _ in FOUR_FROM_A_PAIR
    ]
    quilt = worked_out(tmp_path, source(units)).sizes["one"]
    made = [unit.made for unit in quilt.units.values()]
    before = [one.before for one in made if isinstance(one, PiecedMade)]
    assert [f"{float(one.across):.2f}" for one in before if one] == [
        edge for _, edge in FOUR_FROM_A_PAIR
    ]


# (5.7) the same on a class sheet, trimmed raw sizes; four of its cells are larger than the
# cloth gives, https://classicquiltersofla.blogspot.com/2010/06/easiest-hst-ever.html
CLASS_SHEET = [
    ("2", "1"),
    ("2 1/2", "1 1/2"),
    ("3 1/2", "2"),
    ("4", "2 1/2"),
    ("5", "3"),
    ("5 1/2", "3 1/2"),
    ("6", "4"),
    ("7", "4 1/2"),
    ("8", "5"),
    ("8 1/2", "5 1/2"),
    ("9", "6"),
    ("10", "7"),
]
TOO_LARGE = ["2 1/2", "4", "6", "10"]


def test_the_class_sheet_is_wrong_in_four_cells(run: Run, pattern: WritePattern) -> None:
    found = {}
    paths = {}
    for square, edge in CLASS_SHEET:
        pieces = f"<A>: {{cut: {square} square}}; <B>: {{cut: {square} square}}"
        unit = f"{HALVES}, gives: 4, measure: {edge} square"
        name = square.replace(" ", "-").replace("/", "-")
        paths[square] = pattern(source([(pieces, unit)]), name)
    by_folder = told(run, paths.values())
    for square, path in paths.items():
        found[square] = {one["code"] for one in by_folder[path.parent.name]}
    assert [square for square, codes in found.items() if codes] == TOO_LARGE
    assert {code for codes in found.values() for code in codes} == {"pieces-small"}


# (5.43) a star on a grid of nine: squares and triangles cut for four sizes,
# http://delawarequilts.com/BOMs/FriendshipStar/index.html and, for 6 in,
# https://www.allpeoplequilt.com/quilt-patterns/quilt-blocks/friendship-star-quilt-block
STAR = """
pattern: Star of nine
sizes: {a: {finished: 3 square}, b: {finished: 4 1/2 square}, c: {finished: 6 square},
  d: {finished: 12 square}}
pieces:
  M: {cut: {a: 1 1/2 square, b: 2 square, c: 2 1/2 square, d: 4 1/2 square}}
  A: {cut: {a: 1 7/8 square, b: 2 3/8 square, c: 2 7/8 square, d: 4 7/8 square}}
  B: {cut: {a: 1 7/8 square, b: 2 3/8 square, c: 2 7/8 square, d: 4 7/8 square}}
units:
  point: {method: half-square triangles, from: A B}
top:
  rows: [M point M, point/left M point/right, M point/half M]
"""


def test_a_star_in_four_sizes(run: Run, pattern: WritePattern) -> None:
    """Three squares of 4 1/2 finish 12, not 12 1/2."""
    assert run("check", pattern(STAR)).code == 0
    wrong = pattern(STAR.replace("12 square", "12 1/2 square"), "wrong")
    assert {one["code"] for one in told(run, [wrong])["wrong"]} == {"finished-size"}


# ---- faults, each with the size that would do


def pair(cut_to: str, unit: str) -> tuple[str, str]:
    return f"<A>: {{cut: {cut_to}}}; <B>: {{cut: {cut_to}}}", f"{HALVES}, {unit}"


@pytest.mark.parametrize(
    ("cut_to", "unit", "code", "hint"),
    [
        ("3 3/4 square", "finished: 3 square", "pieces-small", "Cut A0 at least 3 7/8 square."),
        ("7 1/2 square", "gives: 8, finished: 3 square", "pieces-small", "at least 7 3/4 square"),
        ("4 x 5", "finished: 3 square", "not-square", "4 x 4"),
        ("3 7/8 square, diagonal: once", "finished: 3 square", "diagonal", "gives: 1"),
        ("3 7/8 square", "gives: 1, finished: 3 square", "diagonal", "`diagonal: once`"),
        ("3 x WOF", "finished: 2 square", "cut-through", "`cut: 4 square`"),
    ],
)
def test_what_cannot_be_made_is_told_with_what_can(
    run: Run, pattern: WritePattern, cut_to: str, unit: str, code: str, hint: str
) -> None:
    found = faults(run, pattern(source([pair(cut_to, unit)])))
    assert {one[0] for one in found} == {code}
    assert any(hint in one[1] for one in found), found


def test_a_unit_is_not_cut_through(run: Run, pattern: WritePattern) -> None:
    path = pattern("""
        pattern: Cut through
        pieces: {A: {cut: 2 square}, B: {cut: 3 1/2 square}}
        units:
          four: {rows: [A A, A A]}
          half: {method: half-square triangles, from: four B}
        """)
    assert [one[0] for one in faults(run, path)] == ["cut-through"]


@pytest.mark.parametrize(("letters", "codes"), [("<A>", ["two-pieces"]), ("<A> <B>", [])])
def test_two_pieces_are_named(
    run: Run, pattern: WritePattern, letters: str, codes: list[str]
) -> None:
    unit = f"method: half-square triangles, from: {letters}, finished: 3 square"
    path = pattern(source([("<A>: {}; <B>: {cut: 3 7/8 square}", unit)]))
    assert [one[0] for one in faults(run, path) if one[0] == "two-pieces"] == codes


def test_whole_goes_are_counted(run: Run, pattern: WritePattern) -> None:
    """Five units take three pairs two at a time, one pair eight at a time, five triangles each."""
    units = [
        ("<A>: {}; <B>: {}", f"{HALVES}, finished: 3 square, make: 5"),
        ("<A>: {}; <B>: {}", f"{HALVES}, gives: 8, finished: 3 square, make: 5"),
        (
            "<A>: {diagonal: once}; <B>: {diagonal: once}",
            f"{HALVES}, gives: 1, finished: 3 square, make: 5",
        ),
    ]
    path = pattern(source(units))
    assert [one["make"]["value"] for one in sizes(run, path).values()] == ["5", "5", "5"]
    pieces = run("figures", path, "--json").json()["sizes"]["one"]["pieces"]
    assert [pieces[f"A{n}"]["count"]["value"] for n in range(3)] == ["3", "1", "5"]
    assert pieces["A2"]["squares"] == 3
