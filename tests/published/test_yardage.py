"""Printed amounts of cloth, each put through a source and `figures` or `check`.

The numbers in brackets are rows of the trade facts; every source stands beside its check. Expected
values are the sources' own: nothing here computes them.
"""

from typing import NamedTuple

import pytest

from tests.published.reading import one_size, told
from tests.support import Run, WritePattern

# Golden 4 (7.10): a printed pattern in five sizes, shop listing,
# https://www.equilter.com/product/265806/garden-gems-quilt-pattern-by-cotton-+-joy
# Backing with 8 in over in all, from cloth of 42, up to the next 1/4 yd; binding
# (perimeter + 10) ÷ 40 in strips of 2 1/2, up to the next 1/8 yd, joins not counted.
FIVE_SIZES = """
pattern: Five sizes
settings: {spare: 0, joins: not counted}
sizes:
  a: {finished: 45 x 45, across: 3, down: 3}
  b: {finished: 60 x 75, across: 4, down: 5}
  c: {finished: 75 x 90, across: 5, down: 6}
  d: {finished: 90 x 105, across: 6, down: 7}
  e: {finished: 105 x 105, across: 7, down: 7}
fabrics:
  front: {use: blocks}
  edge: {use: binding, width: 40, yards: {a: 3/8, b: 1/2, c: 5/8, d: 3/4, e: 7/8}}
  back: {use: backing, width: 42, yards: {a: 3, b: 4, c: 5 1/2, d: 8 1/4, e: 9 1/2}}
pieces:
  A: {fabric: front, cut: 15 1/2 square}
top: {rows: [A], across: across, down: down}
backing: {fabric: back, over: 4}
binding: {fabric: edge, cut: 2 1/2 x WOF}
"""
BACKING_YARDS = {"a": "3", "b": "4", "c": "5 1/2", "d": "8 1/4", "e": "9 1/2"}
BINDING_YARDS = {"a": "3/8", "b": "1/2", "c": "5/8", "d": "3/4", "e": "7/8"}


@pytest.mark.parametrize("stated", [True, False])
def test_backing_and_binding_of_five_sizes(
    run: Run, pattern: WritePattern, *, stated: bool
) -> None:
    """The printed yards are found without being stated, and stated they are enough."""
    text = "\n".join(line if stated else line.split(", yards")[0] + "}" * (", yards" in line)
                     for line in FIVE_SIZES.splitlines())  # fmt: skip
    path = pattern(text)
    assert run("check", path).code == 0
    sizes = run("figures", path, "--json").json()["sizes"]
    backing = {name: size["materials"]["back"]["buy"]["amount"] for name, size in sizes.items()}
    binding = {name: size["materials"]["edge"]["buy"]["amount"] for name, size in sizes.items()}
    assert (backing, binding) == (BACKING_YARDS, BINDING_YARDS)


@pytest.mark.parametrize(
    ("printed", "less", "size"),
    [
        ("c: 5 1/2", "c: 5 1/4", "c"),
        ("d: 8 1/4", "d: 8", "d"),
        ("a: 3/8", "a: 1/4", "a"),
        ("e: 7/8", "e: 3/4", "e"),
    ],
)
def test_a_step_less_cloth_is_refused(
    run: Run, pattern: WritePattern, printed: str, less: str, size: str
) -> None:
    notices = told(run, [pattern(FIVE_SIZES.replace(printed, less))])["trial"]
    assert [(one["code"], one["sizes"]) for one in notices] == [("yards-short", [size])]


# Golden 8 (5.26): inner sashes only, cloth of 42: 3 a strip, 11 strips, 38 1/2 in, 1 1/8 yd,
# https://slideblast.com/lesson-11-a-math-for-quilt-sashings-and-borders_59b543311723dd3183ad3f4f.html
INNER_SASHES = """
pattern: Inner sashes
width: 42
settings: {spare: 0}
fabrics: {lattice: {use: sashes}, rest: {use: the rest}}
pieces:
  A: {fabric: rest, cut: 12 1/2 square}
  S: {fabric: lattice, cut: 3 1/2 x 12 1/2, strips: 11}
  T: {fabric: rest, cut: 3 1/2 square}
top: {rows: [A], across: 4, down: 5, sashing: {sash: S, stones: T}}
"""


def test_yardage_of_inner_sashes(run: Run, pattern: WritePattern) -> None:
    size = one_size(run, pattern(INNER_SASHES))
    cloth = size["materials"]["lattice"]
    assert size["pieces"]["S"]["count"]["value"] == "31"
    assert size["pieces"]["S"]["own_strips"]["value"] == "11"
    assert (cloth["length"], cloth["buy"]["amount"]) == ("38 1/2", "1 1/8")


YARDAGE = """
pattern: Yardage
width: {width}
settings: {{spare: {spare}}}
fabrics: {{plain: {{use: all of it}}}}
pieces: {{A: {{fabric: plain, cut: {cut}, count: {pieces}{more}}}}}
"""


class Yardage(NamedTuple):
    """A sum of cloth: what is cut, and the strips, their length and the yards that are printed."""

    cut: str
    pieces: int
    width: str
    spare: str
    more: str
    strips: str
    length: str
    yards: str | None  # None: the source rounds otherwise, or not at all


WALK_THROUGHS = [
    # 11.1: 16 a strip; 6 % more is 13 1/4 in: "How to figure yardage for a quilt",
    # https://featheredstar.wordpress.com/category/faqs/
    Yardage("2 1/2 square", 80, "40", "3/4", "", "5", "12 1/2", "3/8"),
    # 11.2: both cut directions, "Calculating yardage",
    # https://patchworktimes.com/2011/11/12/calculating-yardage
    Yardage("2 1/2 x 4 1/2", 48, "40", "0", ", strip-width: 2 1/2", "6", "15", None),
    Yardage("2 1/2 x 4 1/2", 48, "40", "0", ", strip-width: 4 1/2", "3", "13 1/2", None),
    Yardage("4 1/2 square", 12, "40", "0", "", "2", "9", None),
    # 11.3: 4 a strip, forum, https://www.quiltingboard.com/6228687-post7.html
    Yardage("9 1/2 square", 63, "42", "0", "", "16", "152", None),
    # 11.4: 9 a strip of 42, 8 of 40, tutorial,
    # http://www.modernquiltingbyb.com/2015/02/single-block-quilt-tutorial-series.html
    Yardage("2 1/2 x 4 1/2", 140, "42", "0", ", strip-width: 2 1/2", "16", "40", None),
    Yardage("2 1/2 x 4 1/2", 140, "40", "0", ", strip-width: 2 1/2", "18", "45", None),
    # 11.6: the squares of 60 triangles, 10 a strip,
    # http://quilting.about.com/od/stepbystepquilting/ss/calculate_yards_2.htm
    # The last step, 0.32 yd up to 1/2, is of those who buy by quarters of a yard,
    # https://perkyhobby.com/sewing/how-much-fabric-do-i-need-for-a-quilt-back.html
    Yardage("3 7/8 square", 30, "40", "0, yard-step: 1/4", "", "3", "11 5/8", "1/2"),
    # 11.10: 12 a strip of 42, https://sweetpotatoquiltsblog.com/?p=2293
    Yardage("3 1/2 square", 48, "42", "0", "", "4", "14", None),
    Yardage("2 1/2 x 4 1/2", 18, "42", "0", ", strip-width: 2 1/2", "2", "5", None),
]


@pytest.mark.parametrize("printed", WALK_THROUGHS)
def test_yardage_walk_throughs(run: Run, pattern: WritePattern, printed: Yardage) -> None:
    size = one_size(run, pattern(YARDAGE.format(**printed._asdict())))
    cloth = size["materials"]["plain"]
    assert size["pieces"]["A"]["own_strips"]["value"] == printed.strips
    assert cloth["length"] == printed.length
    assert printed.yards in (None, cloth["buy"]["amount"])


# 9.9: quilts and the batting listed for them by a chart whose own rule is 6 in more each way,
# http://www.honeybegood.com/blogs/resources/12653533-common-quilt-and-batting-sizes
BATTING = """
pattern: Batting for beds
pieces: {{A: {{cut: {across} 1/2 x 1 1/2}}}}
top: {{rows: [A], down: {down}}}
batting: {{over: 3, size: {batting}}}
"""


@pytest.mark.parametrize(
    ("across", "down", "batting", "holds"),
    [
        (39, 54, "45 x 60", True),  # crib
        (65, 88, "72 x 90", False),  # twin: 94 long
        (80, 88, "81 x 96", False),  # full: 86 wide
        (86, 93, "90 x 108", False),  # queen: 92 wide
        (104, 93, "120 x 120", True),  # king
        (100, 97, "120 x 120", True),
    ],
)
def test_batting_by_a_chart_that_breaks_its_own_rule(
    run: Run, pattern: WritePattern, across: int, down: int, batting: str, *, holds: bool
) -> None:
    text = BATTING.format(across=across, down=down, batting=batting)
    codes = [one["code"] for one in told(run, [pattern(text)])["trial"]]
    assert codes == ([] if holds else ["batting-short"])
