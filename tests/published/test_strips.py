"""Printed counts of strips and cutting lists, each put through a source and `check` or `figures`.

The numbers in brackets are rows of the trade facts; every source stands beside its check. Expected
values are the sources' own: nothing here computes them.
"""

import pytest

from tests.published.reading import one_size, told
from tests.support import Run, WritePattern

# 11.F: strips from a yard and from half a yard, hand-out,
# https://docsbay.net/number-of-squares-from-a-fat-quarter
# 1/2 in lost when the edge is straightened reproduces it (our fit, computed), but for one cell.
FROM_THE_YARD = """
1 1/2 23 11|2 17 8|2 1/2 13 7|3 11 5|3 1/2 10 5|4 8 4|4 1/2 7 3|5 7 3|5 1/2 6 3|6 5 2|7 5 2|8 4 2
"""
STRIPS = """
pattern: Strips from the yard
settings: {{spare: {spare}}}
fabrics: {{plain: {{yards: {yards}}}}}
pieces: {{A: {{fabric: plain, cut: {cut} x WOF, strips: {strips}}}}}
"""
Cell = tuple[str, str]  # yards, width of the strips


def from_the_yard() -> dict[Cell, int]:
    cells: dict[Cell, int] = {}
    for row in FROM_THE_YARD.strip().split("|"):
        *size, yard, half = row.split()
        cells["1", " ".join(size)] = int(yard)
        cells["1/2", " ".join(size)] = int(half)
    return cells


def short_strips(
    run: Run, pattern: WritePattern, cells: dict[Cell, int], spare: str = "1/2"
) -> set[Cell]:
    """The cells whose strips the purchase does not give."""
    names = {f"s{n}": cell for n, cell in enumerate(cells)}
    paths = [
        pattern(STRIPS.format(spare=spare, yards=yards, cut=cut, strips=cells[yards, cut]), name)
        for name, (yards, cut) in names.items()
    ]
    errors = told(run, paths)
    assert {one["code"] for found in errors.values() for one in found} <= {"yards-short"}
    return {names[name] for name, found in errors.items() if found}


def test_strips_from_the_yard(run: Run, pattern: WritePattern) -> None:
    """Of 24 cells 23 are the most that come out; 13 of 2 1/2 in from a yard are not: 14 do."""
    cells = from_the_yard()
    assert len(cells) == 24
    assert short_strips(run, pattern, cells) == set()
    one_more = {cell: number + 1 for cell, number in cells.items()}
    assert short_strips(run, pattern, one_more) == set(cells) - {("1", "2 1/2")}
    assert short_strips(run, pattern, {("1", "2 1/2"): 15}) == {("1", "2 1/2")}


def test_another_source_counts_fourteen(run: Run, pattern: WritePattern) -> None:
    """36 ÷ 2 1/2 = 14.4, https://batikindonesia.com/how-many-2-5-strips-in-a-yard-of-fabric/"""
    assert short_strips(run, pattern, {("1", "2 1/2"): 14}, spare="0") == set()
    assert short_strips(run, pattern, {("1", "2 1/2"): 15}, spare="0") == {("1", "2 1/2")}


# 11.2: the better of both directions, found where strips may be cut either way, "Calculating
# yardage", https://patchworktimes.com/2011/11/12/calculating-yardage
EITHER_WAY = """
pattern: Either way
settings: {spare: 0, cutting: shared}
fabrics: {plain: {use: all of it}}
pieces: {A: {fabric: plain, cut: 2 1/2 x 4 1/2, count: 48}}
"""


def test_the_better_direction_is_found_and_proven(run: Run, pattern: WritePattern) -> None:
    """3 strips of 4 1/2, 13 1/2 in, and not 6 of 2 1/2, 15 in."""
    cloth = one_size(run, pattern(EITHER_WAY))["materials"]["plain"]
    (strips,) = cloth["strips"]
    assert (strips["times"], strips["width"], cloth["length"]) == (3, "4 1/2", "13 1/2")
    assert (cloth["bound"], cloth["proven"]) == ("13 1/2", True)
    lengths = {other["style"]: other["length"] for other in cloth["others"]}
    assert lengths["plain"] == "15"


# 11.7: a printed cutting list, 10 strips of 5 1/2 for 64 squares and 16 of 8 1/2 for 64, and
# 8 strips of binding round 72 × 72, https://issuu.com./eeschenck/docs/q-046_fishful_thinking
# The blocks of 8 in are not pieced here, and so the smaller squares are not sewn.
GRID = """
pattern: Eight by eight
fabrics: {sea: {use: blocks}, edge: {use: binding}}
sizes: {throw: {finished: 72 x 72}}
pieces:
  A: {fabric: sea, cut: 8 1/2 square, strips: 16}
  B: {fabric: sea, cut: 4 1/2 x WOF}
top: {rows: [A], across: 8, down: 8, borders: [{strip: B}]}
binding: {fabric: edge, cut: 2 1/2 x WOF, strips: 8}
"""


def test_a_printed_list_of_strips(run: Run, pattern: WritePattern) -> None:
    size = one_size(run, pattern(GRID), "throw")
    assert size["pieces"]["A"]["count"]["value"] == "64"
    assert size["pieces"]["A"]["own_strips"]["value"] == "16"
    assert size["binding"]["strips"] == 8


@pytest.mark.parametrize(("cut", "strips"), [("5 1/2", 10), ("8 1/2", 16)])
def test_one_strip_fewer_than_printed_is_refused(
    run: Run, pattern: WritePattern, cut: str, strips: int
) -> None:
    text = "pattern: Squares\npieces: {{A: {{cut: {} square, count: 64, strips: {}}}}}"
    assert told(run, [pattern(text.format(cut, strips))])["trial"] == []
    (notice,) = told(run, [pattern(text.format(cut, strips - 1))])["trial"]
    assert (notice["code"], notice["needed"]) == ("strips-short", str(strips))


# 11.8: a printed cutting list of mixed lengths, from cloth of 40 to 42,
# https://hazelsdiary.wordpress.com/2019/03/26/virginias-puzzle-cutting-the-prints/
MIXED = """
pattern: Mixed lengths
fabrics: {{print: {{use: all of it}}}}
pieces:
  A: {{fabric: print, cut: 2 1/2 x 6 1/2, count: {long}, strip-width: 2 1/2, strips: {strips}}}
  B: {{fabric: print, cut: 2 1/2 x 4 1/2, count: {middle}, with: A}}
  C: {{fabric: print, cut: 2 1/2 square, count: {short}, with: A}}
"""
LISTS = [(27, 26, 168, 16), (7, 18, 6, 44)]


@pytest.mark.parametrize(("strips", "long", "middle", "short"), LISTS)
def test_mixed_lengths_from_printed_strips(
    run: Run, pattern: WritePattern, strips: int, long: int, middle: int, short: int
) -> None:
    """At 40 the printed strips are enough."""
    text = MIXED.format(strips=strips, long=long, middle=middle, short=short)
    assert told(run, [pattern(text)])["trial"] == []


@pytest.mark.parametrize(("printed", "enough"), [(26, True), (25, False)])
def test_the_longer_list_has_one_strip_to_spare(
    run: Run, pattern: WritePattern, printed: int, *, enough: bool
) -> None:
    """5 strips hold the 6 1/2s, 21 the rest: 26 of the 27 that are printed."""
    text = MIXED.format(strips=printed, long=26, middle=168, short=16)
    codes = [one["code"] for one in told(run, [pattern(text)])["trial"]]
    assert codes == ([] if enough else ["strips-short"])


# 11.9: a pattern that hangs on the width of its cloth: eight strips of 5 1/2, five of them cut to
# 40 1/2, three pieced to two of 55 1/2, eight of binding 2 1/4, from 2 yd,
# http://twocraftywomen.blogspot.com/2010/06/easy-quilt-pattern.html
BY_WIDTH = """
pattern: By the width of the cloth
width: WIDTH
settings: {spare: 0}
fabrics: {lattice: {use: strips, yards: 2}}
pieces:
  L: {fabric: lattice, cut: 5 1/2 x 40 1/2, count: 5, strips: 5}
  M: {fabric: lattice, cut: 5 1/2 x 55 1/2, count: 2, strips: 3, join: straight}
  K: {fabric: lattice, cut: 2 1/4 x WOF, strips: 8}
"""


def test_a_pattern_that_needs_forty_and_a_half(run: Run, pattern: WritePattern) -> None:
    size = one_size(run, pattern(BY_WIDTH.replace("WIDTH", "40 1/2")))
    cloth = size["materials"]["lattice"]
    assert (cloth["length"], cloth["least_width"]) == ("62", "40 1/2")


def test_the_same_from_cloth_of_forty_is_refused(run: Run, pattern: WritePattern) -> None:
    """A length of 40 1/2 would need a join, and five strips are too few."""
    (notice,) = told(run, [pattern(BY_WIDTH.replace("WIDTH", "40"))])["trial"]
    assert (notice["code"], notice["stated"], notice["needed"]) == ("strips-short", "5", "6")
