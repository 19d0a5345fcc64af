"""Printed charts of squares, each cell put through a source and `check`.

The numbers in brackets are rows of the trade facts; every source stands beside its check. Expected
values are the sources' own: nothing here computes them.
"""

from collections.abc import Iterable, Mapping

from tests.published.reading import told
from tests.support import Run, WritePattern

# Squares of 1/2 in would vanish in seams of 1/4 in; for cutting the seam makes no difference.
SQUARES = """
pattern: Squares from one yard
width: {width}
seam: 1/8
settings: {{spare: 0}}
fabrics: {{plain: {{yards: 1}}}}
pieces: {{A: {{fabric: plain, cut: {cut} square, count: {count}}}}}
"""


def short_cells(
    run: Run, pattern: WritePattern, cells: Mapping[tuple[str, str], int], more: int = 0
) -> set[tuple[str, str]]:
    """The cells (width of cloth, size of square) whose squares one yard does not give."""
    names = {f"w{n}": cell for n, cell in enumerate(cells)}
    paths = [
        pattern(SQUARES.format(width=width, cut=cut, count=cells[width, cut] + more), name)
        for name, (width, cut) in names.items()
    ]
    errors = told(run, paths)
    assert {one["code"] for found in errors.values() for one in found} <= {"yards-short"}
    return {names[name] for name, found in errors.items() if found}


# Golden 1 (11.A): squares from 1 yd by usable width, 39 to 42, craft blog,
# https://www.alandacraft.com/2020/03/22/how-many-quilting-squares-can-you-get-from-a-yard-of-fabric/
FROM_A_YARD = """
1/2    5616 5760 5904 6048 | 4 1/2   64   64   72   72 | 8 1/2   16   16   16   16
1      1404 1440 1476 1512 | 5       49   56   56   56 | 9       16   16   16   16
1 1/2   624  624  648  672 | 5 1/2   42   42   42   42 | 9 1/2   12   12   12   12
2       342  360  360  378 | 6       36   36   36   42 | 10       9   12   12   12
2 1/2   210  224  224  224 | 6 1/2   30   30   30   30 | 10 1/2   9    9    9   12
3       156  156  156  168 | 7       25   25   25   30 | 11       9    9    9    9
3 1/2   110  110  110  120 | 7 1/2   20   20   20   20 | 11 1/2   9    9    9    9
4        81   90   90   90 | 8       16   20   20   20 | 12       9    9    9    9
"""


def chart(text: str, widths: Iterable[str]) -> dict[tuple[str, str], int]:
    """A printed chart of squares: the size, then the number for each width."""
    cells: dict[tuple[str, str], int] = {}
    wide = tuple(widths)
    for row in (part for line in text.strip().splitlines() for part in line.split("|")):
        words = row.split()
        size = " ".join(words[: -len(wide)])
        counts = words[-len(wide) :]
        cells |= {(width, size): int(n) for width, n in zip(wide, counts, strict=True)}
    return cells


def test_squares_from_one_yard(run: Run, pattern: WritePattern) -> None:
    """All 96 cells: so many, and not one more."""
    cells = chart(FROM_A_YARD, ("39", "40", "41", "42"))
    assert len(cells) == 96
    assert short_cells(run, pattern, cells) == set()
    assert short_cells(run, pattern, cells, more=1) == set(cells)


# 11.C: squares from 1 yd, 44 usable, block-library chart of 2002,
# http://www.quilterscache.com/M/MathChartsPage.html
FROM_44 = """
1 1584|1 1/2 696|1 7/8 437|2 396|2 1/2 238|2 7/8 180|3 168|3 1/2 120|3 7/8 99|4 99|4 1/2 72
4 7/8 63|5 56|5 1/2 48|5 7/8 42|6 42|6 1/2 30|6 7/8 30|7 35|7 1/2 20|7 7/8 20|8 20|8 1/2 20
8 7/8 16|9 16|9 1/2 12|9 7/8 12|10 12|10 1/2 12|10 7/8 12|11 12|11 1/2 9|11 7/8 9|12 9
12 1/2 6|12 7/8 6
"""


def test_the_slip_in_a_chart_for_44_inches(run: Run, pattern: WritePattern) -> None:
    """36 cells; only 7 in squares, printed 35, do not come out of the yard: 30 do."""
    cells = chart(FROM_44, ("44",))
    assert len(cells) == 36
    assert short_cells(run, pattern, cells) == {("44", "7")}
    assert short_cells(run, pattern, {("44", "7"): 30}) == set()


# 11.E: squares from 1 yd, 36 and 45 wide,
# http://quiltville.blogspot.com/2005/06/how-many-squares-in-yard.html
FROM_36_AND_45 = """
3 144 180|4 81 99|5 49 63|6 36 42|7 25 30|8 16 25|9 16 20|10 9 12|11 9 12|12 9 12|13 4 6|14 4 6
15 4 4|16 4 4|17 4 4|18 4 4
"""


def test_the_two_slips_in_a_chart_for_36_and_45_inches(run: Run, pattern: WritePattern) -> None:
    """8 in at 45 are 20, not 25; 12 in at 45 are 9, not 12."""
    cells = chart(FROM_36_AND_45, ("36", "45"))
    assert short_cells(run, pattern, cells) == {("45", "8"), ("45", "12")}
    assert short_cells(run, pattern, {("45", "8"): 20, ("45", "12"): 9}) == set()
