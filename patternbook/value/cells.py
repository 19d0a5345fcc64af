"""Cells: parts written side by side as they lie on the table, `A B/left A*3 (A B)*2 .`"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final, Literal, cast

from patternbook.notice import Place
from patternbook.value.count import NO_NAMES, CountValue, parse_count
from patternbook.value.text import LETTER, NAME, NOWHERE, WORD, Text, ValueFault, one_line, quoted

Turn = Literal["right", "left", "half", "mirror"]
TURNS: Final[tuple[Turn, ...]] = ("right", "left", "half", "mirror")
MOST_CELLS: Final = 50_000
_DEEPEST: Final = 8
_PART: Final = re.compile(rf"({LETTER}(?![A-Za-z0-9])|{NAME}|\.)((?:/[a-z]+)*)")
_TIMES: Final = re.compile(rf" ?\* ?([0-9]+(?![0-9])|{WORD}|\()")


@dataclass(frozen=True)
class Cell:
    """One part as it lies; no part is an empty place, written `.`"""

    part: str | None
    turns: tuple[Turn, ...] = ()
    times: CountValue | None = None


@dataclass(frozen=True)
class Group:
    """Cells in brackets, laid down so many times."""

    items: tuple[Cell | Group, ...]
    times: CountValue | None = None


@dataclass(frozen=True)
class CellsValue:
    """A row, a column, the strips of a set, the logs of a block: parts in order."""

    items: tuple[Cell | Group, ...]
    text: str
    place: Place = NOWHERE

    @property
    def names(self) -> frozenset[str]:
        """The numbers that a size must give."""
        return frozenset(
            name for item in _all(self.items) if item.times for name in item.times.names
        )

    @property
    def parts(self) -> tuple[str, ...]:
        """Every part once, in the order of the first time it is laid."""
        cells = (item for item in _all(self.items) if isinstance(item, Cell))
        return tuple(dict.fromkeys(cell.part for cell in cells if cell.part is not None))

    def laid(self, names: Mapping[str, int] = NO_NAMES) -> tuple[Cell, ...]:
        """The cells one by one; KeyError where a name has no number."""
        return tuple(_laid(self.items, names, self.text))


def _all(items: Iterable[Cell | Group]) -> Iterator[Cell | Group]:
    for item in items:
        yield item
        if isinstance(item, Group):
            yield from _all(item.items)


def _laid(items: Iterable[Cell | Group], names: Mapping[str, int], line: str) -> list[Cell]:
    laid: list[Cell] = []
    for item in items:
        times = _times_at(item.times, names, line)
        once = (
            _laid(item.items, names, line)
            if isinstance(item, Group)
            else [replace(item, times=None)]
        )
        if len(laid) + times * len(once) > MOST_CELLS:
            raise ValueFault(
                "too-many-cells", f"{quoted(line)} is more than {MOST_CELLS:,} patches"
            )
        laid += once * times
    return laid


def _times_at(times: CountValue | None, names: Mapping[str, int], line: str) -> int:
    if times is None:
        return 1
    value = times.at(names)
    if value.denominator != 1 or value < 0:
        raise ValueFault(
            "not-whole", f"{quoted(line)}: `{times.text}` comes to {value}, which cannot be laid"
        )
    return int(value)


def parse_cells(text: Text) -> CellsValue:
    """Parts side by side, with turns and repeats."""
    line = one_line(text.replace("×", "*"))
    items, at = _items(line, 0, text.place, 0)
    if at < len(line):
        raise _not_cells(line, at)
    return CellsValue(items, line, text.place)


def _items(line: str, at: int, place: Place, deep: int) -> tuple[tuple[Cell | Group, ...], int]:
    """The items from `at` to the end, or to the bracket that closes them."""
    items: list[Cell | Group] = []
    while at < len(line) and line[at] != ")":
        if deep > _DEEPEST:
            raise ValueFault("too-deep", f"{quoted(line)}: brackets within brackets, too deep")
        item, at = _item(line, at, place, deep)
        items.append(item)
        if line[at : at + 1] == " ":
            at += 1
        elif at < len(line) and line[at] != ")":
            raise _not_cells(line, at)
    if not items:
        raise ValueFault("not-cells", f"{quoted(line)}: no part stands here")
    return tuple(items), at


def _item(line: str, at: int, place: Place, deep: int) -> tuple[Cell | Group, int]:
    if line[at] == "(":
        inside = at + 1 + (line[at + 1 : at + 2] == " ")
        items, at = _items(line, inside, place, deep + 1)
        if at >= len(line):
            raise ValueFault("open-bracket", f"{quoted(line)}: a bracket is not closed")
        times, at = _times(line, at + 1, place)
        return Group(items, times), at
    found = _PART.match(line, at)
    if not found:
        raise _not_cells(line, at)
    part = None if found[1] == "." else found[1]
    turns = _turns(found[2], line)
    times, at = _times(line, found.end(), place)
    return Cell(part, turns, times), at


def _turns(written: str, line: str) -> tuple[Turn, ...]:
    turns = tuple(written.split("/")[1:])
    for turn in turns:
        if turn not in TURNS:
            raise ValueFault(
                "not-a-turn",
                f"{quoted(line)}: `/{turn}` is no turn",
                "The turns are /right, /left, /half and /mirror.",
            )
    return cast("tuple[Turn, ...]", turns)


def _times(line: str, at: int, place: Place) -> tuple[CountValue | None, int]:
    found = _TIMES.match(line, at)
    if not found:
        return None, at
    if found[1] != "(":
        return parse_count(Text(found[1], place)), found.end()
    start, deep, at = found.end() - 1, 1, found.end()
    while at < len(line) and deep:
        deep += (line[at] == "(") - (line[at] == ")")
        at += 1
    if deep:
        raise ValueFault("open-bracket", f"{quoted(line)}: a bracket is not closed")
    return parse_count(Text(line[start:at], place)), at


def _not_cells(line: str, at: int) -> ValueFault:
    rest = line[at:]
    fault = ValueFault(
        "not-cells",
        f"{quoted(line)}: {quoted(rest)} is not a part. Parts are letters (A) and unit names "
        "(star), side by side: A star/left B*3",
    )
    if rest.startswith(")"):
        fault = ValueFault("open-bracket", f"{quoted(line)}: a bracket closes that never opened")
    elif re.match(r"[A-Z]{1,2}[0-9]?(?![A-Za-z0-9])", rest):
        fault.hint = "The letters I and O are left out: they look like 1 and 0."
    elif re.match(r"[A-Z]{3}", rest):
        fault.hint = f"Put a space between the letters: {' '.join(rest.split()[0])}."
    elif "," in line:
        fault.hint = "Parts stand side by side with a space between, without commas."
    elif rest.startswith("/"):
        fault.hint = "A turn follows its part at once: star/left."
    return fault
