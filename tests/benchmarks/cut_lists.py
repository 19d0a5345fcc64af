"""Invented cut lists of one fabric each: 24 kinds of quilt in five sizes, crib to king."""

import math
from collections.abc import Callable, Iterator
from functools import cache
from typing import Final, NamedTuple

from patternbook.cutting.planner.records import Kind, Task

# All sides are whole eighths or sixteenths of an inch, which a float holds exactly.
WIDE: Final = 0.0  # as long as the cloth is wide
BINDING: Final = 2.5


class Row(NamedTuple):
    """Like pieces: `along` the width of the cloth, `across` it, `number` of them."""

    name: str
    along: float
    across: float
    number: float
    turns: bool = True
    lengthwise: bool = False


class Quilt(NamedTuple):
    """A size of quilt in inches; `few` and `runs` grow with it, `rails` by halves."""

    name: str
    wide: int
    high: int
    few: int
    runs: int
    rails: float

    def across(self, block: int) -> int:
        return max(2, round(self.wide / block))

    def down(self, block: int) -> int:
        return max(2, round(self.high / block))

    def blocks(self, block: int) -> int:
        return self.across(block) * self.down(block)

    def around(self, usable: float, more: float = 0) -> int:
        """So many strips go once round it."""
        return math.ceil((2 * (self.wide + self.high) + more) / usable)

    def binding(self, width: int = 40) -> Row:
        return Row("binding", WIDE, BINDING, self.around(width - BINDING, 10), turns=False)


QUILTS: Final = (
    Quilt("crib", 36, 48, 1, 1, 0.5),
    Quilt("throw", 60, 72, 2, 2, 1),
    Quilt("twin", 68, 90, 2, 3, 1.5),
    Quilt("queen", 90, 100, 3, 4, 2),
    Quilt("king", 108, 108, 4, 5, 2.5),
)


def rail(q: Quilt) -> list[Row]:
    return [Row("A", 6.5, 15.5, 24 * q.rails), Row("B", 4.5, 8.5, 12 * q.rails), q.binding()]


def squares(q: Quilt) -> list[Row]:
    half = q.blocks(6) // 2
    rows = (Row("A", 5.5, 5.5, half), Row("B", 1.5, 5.5, half), Row("C", 1.5, 6.5, half))
    return [*rows, q.binding()]


def triangles(q: Quilt) -> list[Row]:
    """Squares for half-square triangles, two at a time."""
    n = q.blocks(8)
    return [Row("A", 4.875, 4.875, 2 * n), Row("B", 4.5, 4.5, n), q.binding()]


def geese(q: Quilt) -> list[Row]:
    """The background of flying geese, four at a time."""
    n = q.blocks(12)
    return [
        Row("A", 5.25, 5.25, n),
        Row("B", 2.875, 2.875, 4 * n),
        Row("C", 2.5, 4.5, 4 * n),
        Row("D", 2.5, 2.5, 4 * n),
    ]


def logs(q: Quilt) -> list[Row]:
    """One fabric's side of a block of rounds."""
    return [Row(f"L{i}", 2, 2 + 1.5 * i, q.blocks(12)) for i in range(8)]


def sashing(q: Quilt) -> list[Row]:
    across, down = q.across(14), q.down(14)
    return [
        Row("sash", 2.5, 12.5, across * (down - 1) + down * (across - 1)),
        Row("corner", 2.5, 2.5, (across - 1) * (down - 1)),
        Row("border", WIDE, 3.5, q.around(39.5), turns=False),
        q.binding(),
    ]


def star(q: Quilt) -> list[Row]:
    """A background with setting triangles."""
    n = q.blocks(17)
    return [
        Row("sq", 3.5, 3.5, 4 * n),
        Row("qst", 4.25, 4.25, n),
        Row("rect", 3.5, 6.5, 4 * n),
        Row("sash", 2.5, 12.5, 2 * n),
        Row("side", 18.25, 18.25, math.ceil((q.across(17) + q.down(17) - 2) / 2)),
        Row("cor", 9.375, 9.375, 2),
    ]


def plus(q: Quilt) -> list[Row]:
    n = q.blocks(12)
    return [Row("long", 4.5, 12.5, n // 2), Row("sq", 4.5, 4.5, n), q.binding()]


def dash(q: Quilt) -> list[Row]:
    n = q.blocks(12)
    square = Row("hst", 4.875, 4.875, 2 * n)
    return [square, Row("bar", 2.5, 4.5, 4 * n), Row("ctr", 4.5, 4.5, n)]


def strips(q: Quilt) -> list[Row]:
    """Strip sets alone."""
    n = q.blocks(6)
    wide = Row("strip3", WIDE, 3.5, n // 12 + 2, turns=False)
    return [Row("strip", WIDE, 2.5, n // 8 + 4, turns=False), wide, q.binding()]


def medallion(q: Quilt) -> list[Row]:
    """Many sizes, few of each."""
    m = q.few
    return [
        Row("ctr", 16.5, 16.5, 1),
        Row("b1", 2.5, 16.5, 2),
        Row("b2", 2.5, 20.5, 2),
        Row("hst", 4.875, 4.875, 10 * m),
        Row("b3", 4.5, 28.5, 2 * m),
        Row("b4", 4.5, 36.5, 2 * m),
        Row("qs", 5.25, 5.25, 7 * m),
        Row("sm", 2.875, 2.875, 28 * m),
        Row("cs", 8.5, 8.5, 4),
        Row("spacer", 1.75, 8.75, 6 * m),
        Row("rec", 6.25, 9.75, 8 * m),
    ]


def long_borders(q: Quilt) -> list[Row]:
    """Outer borders along the length, and blocks."""
    half = q.blocks(10) // 2
    return [
        Row("side", 5.5, q.high - 10, 2, turns=False, lengthwise=True),
        Row("topbot", 5.5, q.wide, 2, turns=False, lengthwise=True),
        Row("rect", 5.5, 10.5, half),
        Row("sq", 5.5, 5.5, half),
        q.binding(42),
    ]


def long_sashing(q: Quilt) -> list[Row]:
    """Sashing between columns, along the length."""
    n = q.blocks(15)
    column = Row("col", 3.5, q.high, q.across(15) - 1, turns=False, lengthwise=True)
    return [column, Row("sq", 6.5, 6.5, n), Row("rect", 3.5, 6.5, 2 * n)]


def one_way(q: Quilt) -> list[Row]:
    """A directional print."""
    n = q.blocks(12)
    rows = (Row("A", 6.5, 10.5, n), Row("B", 8.5, 4.5, n), Row("C", 4.5, 4.5, n // 2))
    return [row._replace(turns=False) for row in rows]


def metric(q: Quilt) -> list[Row]:
    """In millimetres."""
    joined = q.around(1000 / 25.4, 250 / 25.4)
    return [
        Row("A", 165, 390, 24 * q.rails),
        Row("B", 115, 215, 12 * q.rails),
        Row("C", 90, 90, 30 * q.rails),
        Row("bind", WIDE, 65, joined, turns=False),
    ]


def sixteenths(q: Quilt) -> list[Row]:
    n = q.blocks(10)
    return [
        Row("A", 3.4375, 3.4375, 4 * n),
        Row("B", 5.9375, 5.9375, n),
        Row("C", 1.8125, 6.4375, 2 * n),
        Row("D", 2.375, 9.1875, n),
    ]


def coins(q: Quilt) -> list[Row]:
    stacks = max(3, q.wide // 12)
    sash = math.ceil((stacks + 1) * q.high / 39)
    coin = Row("coin", 2.5, 6.5, stacks * q.high // 4)
    return [coin, Row("sash", WIDE, 4.5, sash, turns=False), q.binding()]


def open_space(q: Quilt) -> list[Row]:
    """Large plain pieces."""
    m = q.few
    return [
        Row("P1", 20.5, 30.5, 1 if q.name == "crib" else 2),
        Row("P2", 10.5, 36.5, 2 * m),
        Row("P3", 10.5, 20.5, 2 * m),
        Row("P4", 2.5, 10.5, 8 * m),
        Row("P5", 2.5, 2.5, 24 * m),
        Row("P6", 14.5, 9.25, 3 * m),
    ]


def half_rectangles(q: Quilt) -> list[Row]:
    n = q.blocks(9)
    rows = (Row("hr", 4, 7.5, n), Row("rc", 3.5, 6.5, n), Row("sq", 3.5, 3.5, n))
    return [*rows, q.binding()]


def runner(q: Quilt) -> list[Row]:
    """A small project of odd sizes."""
    m = q.few
    return [
        Row("a", 14.5, 18.25, 2 * m),
        Row("b", 7.625, 12.125, 3 * m),
        Row("c", 3.125, 13.5, 5 * m),
        Row("d", 4.75, 4.75, 9 * m),
        Row("e", 1.625, 10.125, 7 * m),
        Row("f", 10.5, 5.75, 4 * m),
    ]


def pixels(q: Quilt) -> list[Row]:
    """A background in runs of many lengths."""
    counts = (9, 7, 8, 5, 6, 4, 3, 5, 2, 3, 2)
    return [Row(f"r{i}", 2.5, 2.5 + 2 * i, n * q.runs) for i, n in enumerate(counts)]


def courthouse(q: Quilt) -> list[Row]:
    n = q.blocks(11)
    rounds = (Row(f"w{i}", 1.5, 2.5 + 2 * i, 2 * n) for i in range(5))
    return [*rounds, Row("ctr", 2.5, 2.5, n), Row("sash", 1.5, 11.5, n)]


def chain(q: Quilt) -> list[Row]:
    n = q.blocks(10)
    strip = Row("strip", WIDE, 2.5, math.ceil(n * 12 / 16), turns=False)
    return [strip, Row("blk", 6.5, 10.5, n // 2), Row("bar", 2.5, 6.5, n)]


def snowballs(q: Quilt) -> list[Row]:
    n = q.blocks(9)
    return [
        Row("blk", 9.5, 9.5, n // 2),
        Row("crn", 3.5, 3.5, 2 * n),
        Row("bord", WIDE, 6.5, q.around(41), turns=False),
        q.binding(42),
    ]


class Cloth(NamedTuple):
    """How wide it is, in how many units to the inch (or millimetre), and the step it is sold in."""

    width: int = 42
    units: int = 8
    step: float = 4.5
    highest: int = 24  # strips of stacked kinds, in thrifty cutting


NARROW: Final = Cloth(40)
FAMILIES: Final[dict[str, tuple[Cloth, Callable[[Quilt], list[Row]]]]] = {
    "f01rail": (NARROW, rail),
    "f02squares": (Cloth(), squares),
    "f03hst": (NARROW, triangles),
    "f04geese": (Cloth(), geese),
    "f05logs": (NARROW, logs),
    "f06sash": (Cloth(), sashing),
    "f07star": (Cloth(), star),
    "f08plus": (NARROW, plus),
    "f09dash": (Cloth(), dash),
    "f10strips": (NARROW, strips),
    "f11medal": (Cloth(), medallion),
    "f12lofborder": (Cloth(), long_borders),
    "f13lofsash": (Cloth(), long_sashing),
    "f14direct": (Cloth(), one_way),
    "f15metric": (Cloth(1060, units=1, step=100, highest=600), metric),
    "f16sixteenth": (Cloth(units=16), sixteenths),
    "f17coins": (NARROW, coins),
    "f18space": (Cloth(), open_space),
    "f19hrt": (NARROW, half_rectangles),
    "f20runner": (Cloth(), runner),
    "f21pixel": (Cloth(), pixels),
    "f22court": (NARROW, courthouse),
    "f23chain": (Cloth(), chain),
    "f24snow": (Cloth(), snowballs),
}


def _whole(size: float) -> int:
    """As a whole number, which it is already."""
    assert size == int(size), size
    return int(size)


def _kinds(rows: list[Row], cloth: Cloth, *, lengthwise: bool) -> Iterator[Kind]:
    for row in rows:
        if row.lengthwise == lengthwise and row.number:
            along = _whole((row.along or cloth.width) * cloth.units)
            across = _whole(row.across * cloth.units)
            sides = (across, along) if lengthwise else (along, across)
            yield Kind(row.name, *sides, _whole(row.number), turns=row.turns)


def _task(cloth: Cloth, rows: list[Row]) -> Task:
    return Task(
        width=cloth.width * cloth.units,
        kinds=tuple(_kinds(rows, cloth, lengthwise=False)),
        step=_whole(cloth.step * cloth.units),
        lengthwise=tuple(_kinds(rows, cloth, lengthwise=True)),
        highest=cloth.highest * cloth.units,
    )


@cache
def cut_lists() -> dict[str, Task]:
    """All of them by name, sorted; shared cutting is asked for."""
    return {
        f"{family}-{quilt.name}": _task(cloth, rows(quilt))
        for family, (cloth, rows) in FAMILIES.items()
        for quilt in sorted(QUILTS)
    }
