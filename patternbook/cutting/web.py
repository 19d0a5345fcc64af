"""Fusible web: the boxes of all traced shapes in rows across it, and how much of it is bought.

The rows are filled as shelves are: the tallest boxes first, each into the first place with room
for it; what is lower than its row stands in columns, one above the other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import groupby
from typing import NamedTuple

from patternbook.cutting.amounts_told import Purchase, amount_notices
from patternbook.cutting.backing import metres
from patternbook.cutting.buying import stated_amount
from patternbook.cutting.records import Buy, Line, WebBox, WebPlan, WebRow
from patternbook.cutting.told import Told, long, number
from patternbook.inch import step_up
from patternbook.methods.made import Fusing
from patternbook.notice import Notice
from patternbook.quilt.records import Fabric, PiecedMade, Quilt, Unit


class Traced(NamedTuple):
    """So many shapes of one letter and size: the box of each with its margin."""

    letter: str
    across: Fraction
    down: Fraction
    turned: bool = False


def web_plans(quilt: Quilt) -> tuple[Mapping[str, WebPlan], tuple[Notice, ...]]:
    """The plan of every web that shapes are fused with."""
    plans: dict[str, WebPlan] = {}
    told: list[Notice] = []
    for name, fused in _fused(quilt).items():
        fabric = quilt.fabrics.get(name)
        if fabric is None:  # which the recount of all names tells
            continue
        traced, margin = _traced(quilt, [unit for unit, _ in fused]), fused[0][1].margin
        faults = list(_faults(quilt, fabric, traced, margin))
        told += faults
        if any(fault.code == "web-narrow" for fault in faults):
            continue
        plans[name], more = _plan(quilt, fabric, traced, margin)
        told += more
    return plans, tuple(told)


def _fused(quilt: Quilt) -> Mapping[str, list[tuple[Unit, Fusing]]]:
    """The units whose shapes are fused, by the web."""
    found: dict[str, list[tuple[Unit, Fusing]]] = {}
    for unit in quilt.units.values():
        if isinstance(unit.made, PiecedMade) and unit.made.fused is not None:
            found.setdefault(unit.made.fused.web, []).append((unit, unit.made.fused))
    return found


def _traced(quilt: Quilt, units: Sequence[Unit]) -> Mapping[Traced, int]:
    """Every shape as large as it is drawn, however it lies on its block."""
    found: Counter[Traced] = Counter()
    for unit in units:
        for part in unit.placed:
            if part.laid_on and part.part in quilt.pieces:
                across, down = quilt.pieces[part.part].finished
                step = quilt.system.step / 8
                found[Traced(part.part, across.up(step), down.up(step))] += unit.make
    return found


def _faults(
    quilt: Quilt, fabric: Fabric, traced: Mapping[Traced, int], margin: Fraction
) -> Iterator[Notice]:
    about = ("R4", fabric.place, fabric.place)
    if "width" not in fabric.key_places:
        message = f"{fabric.name}: nothing says how wide this web is."
        hint = "Write its `width`, as `width: 17`; the label on the roll says it."
        yield Told("web-width", *about, hint).notice(quilt, "error", message)
    letters = [piece.letter for piece in quilt.pieces.values() if piece.fabric == fabric.name]
    if letters:
        message = f"{fabric.name} is a web that fuses shapes, and {letters[0]} is cut from it."
        hint = "Give the cloth and the web names of their own under `fabrics`."
        yield Told("web-cloth", *about, hint).notice(quilt, "error", message)
    for shape in traced:
        needed = min(shape.across, shape.down) + margin * 2
        if needed > fabric.width:
            message = (
                f"{shape.letter} and its margin take {long(needed, quilt.system)} of the width of "
                f"{fabric.name}, which is {long(fabric.width, quilt.system)} wide."
            )
            hint = "Take a wider web, or draw the shape in two parts."
            yield Told("web-narrow", *about, hint).notice(quilt, "error", message)


def _plan(
    quilt: Quilt, fabric: Fabric, traced: Mapping[Traced, int], margin: Fraction
) -> tuple[WebPlan, tuple[Notice, ...]]:
    shelves = shelved([*_boxes(traced, margin, fabric.width)], fabric.width)
    boxes = tuple(box for shelf in shelves for box in shelf.boxes())
    rows = tuple(_rows(shelves))
    length = sum((row.times * row.down for row in rows), Fraction(0))
    lines = tuple(Line(_named(row), row.times, row.down) for row in rows)
    buy, least = _bought(quilt, fabric, lines, length)
    sums = " + ".join(f"{line.strips} × {number(line.width, quilt.system)}" for line in lines)
    sums = f"{sums} = {long(length, quilt.system)}"
    purchase = Purchase(fabric, sums, length, least, metres(length, quilt), "R4")
    plan = WebPlan(fabric.name, fabric.width, margin, boxes, rows, length, buy)
    return plan, tuple(amount_notices(quilt, purchase))


def _bought(
    quilt: Quilt, fabric: Fabric, lines: tuple[Line, ...], length: Fraction
) -> tuple[Buy, Fraction]:
    """No spare is added: web has no edge to straighten. Also the least that is sold."""
    system, settings = quilt.system, quilt.settings
    step = settings.yard_step if system.unit == "in" else settings.metre_step
    least = step_up(length / system.bolt, step)
    stated = stated_amount(quilt, fabric)
    enough = stated is not None and stated * system.bolt >= length
    amount = stated if enough and stated is not None else least
    in_metres = amount if system.unit == "cm" else metres(max(length, amount * system.bolt), quilt)
    buy = Buy(
        lines=lines,
        needed=length,
        amount=amount,
        unit=system.bolt_unit,
        spare=amount * system.bolt - length,
        metres=in_metres,
        stated=enough,
    )
    return buy, least


def _boxes(
    traced: Mapping[Traced, int], margin: Fraction, width: Fraction
) -> Iterator[tuple[Traced, int]]:
    """Each shape with its margin all round; one wider than the web is traced on its side."""
    for shape, times in traced.items():
        across, down = shape.across + margin * 2, shape.down + margin * 2
        if across > width:
            yield Traced(shape.letter, down, across, True), times
        else:
            yield Traced(shape.letter, across, down), times


# ---- the shelves


@dataclass
class Column:
    """Boxes one above the other in a row."""

    x: Fraction
    across: Fraction
    stood: list[Traced] = field(default_factory=list)
    high: Fraction = Fraction(0)


@dataclass
class Shelf:
    """One row across the web, as long as its tallest box."""

    y: Fraction
    down: Fraction
    columns: list[Column] = field(default_factory=list)
    used: Fraction = Fraction(0)

    def takes(self, box: Traced, width: Fraction) -> bool:
        """Put the box where there is room; False where there is none."""
        if box.down > self.down:
            return False
        for column in self.columns:
            if box.across <= column.across and column.high + box.down <= self.down:
                break
        else:
            if self.used + box.across > width:
                return False
            column = Column(self.used, box.across)
            self.columns.append(column)
            self.used += box.across
        column.stood.append(box)
        column.high += box.down
        return True

    def boxes(self) -> Iterator[WebBox]:
        """The boxes in their places."""
        for column in self.columns:
            y = self.y
            for box in column.stood:
                yield WebBox(box.letter, column.x, y, box.across, box.down, box.turned)
                y += box.down

    def shapes(self) -> tuple[tuple[str, int], ...]:
        """How many of each letter stand in it."""
        counts = Counter(box.letter for column in self.columns for box in column.stood)
        return tuple(counts.items())


def shelved(boxes: Iterable[tuple[Traced, int]], width: Fraction) -> list[Shelf]:
    """The tallest first, each into the first row with room. None is wider than the web."""
    shelves: list[Shelf] = []
    low = Fraction(0)
    for box, times in sorted(boxes, key=lambda one: (-one[0].down, -one[0].across, one[0].letter)):
        at = 0  # where one of this kind found no room, the next will find none
        for _ in range(times):
            while at < len(shelves) and not shelves[at].takes(box, width):
                at += 1
            if at == len(shelves):
                shelves.append(Shelf(low, box.down))
                low += box.down
                shelves[at].takes(box, width)
    return shelves


def _rows(shelves: Sequence[Shelf]) -> Iterator[WebRow]:
    """Rows that follow one another alike are told as one."""
    for (down, shapes), alike in groupby(shelves, key=lambda one: (one.down, one.shapes())):
        yield WebRow(down, shapes, len(list(alike)))


def _named(row: WebRow) -> str:
    return " and ".join(letter for letter, _ in row.shapes)
