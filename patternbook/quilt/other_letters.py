"""The letters that units name, written otherwise, and what the numbers of the pattern come to
then: each change is tried by working the size out anew."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from operator import attrgetter
from typing import Any, Final, NamedTuple, TypeVar

from patternbook.methods.world import here
from patternbook.methods.written import WrittenMade, WrittenNode
from patternbook.notice import Place
from patternbook.quilt.counts import Counted, count
from patternbook.quilt.parts import TOP
from patternbook.quilt.resolve import Resolver
from patternbook.source.written import WrittenPattern
from patternbook.value import CellsValue, PartValue, PerSize, Text, parse_cells

LETTER: Final = re.compile(r"(?<![A-Za-z0-9])[A-Z]{1,2}[0-9]?(?![A-Za-z0-9])")
Node = TypeVar("Node", bound=WrittenNode)
Figures = Mapping[str, tuple[int, int]]


class Said(NamedTuple):
    """Cells, or the one part of a key, as a unit has them; `row` where they are one of several."""

    unit: str
    field: str
    row: int | None
    value: CellsValue | PartValue

    @property
    def text(self) -> str:
        """As typed."""
        return self.value.text if isinstance(self.value, CellsValue) else str(self.value)

    @property
    def place(self) -> Place:
        """Where it stands."""
        return self.value.place


class Change(NamedTuple):
    """What is said, and what would stand there instead."""

    said: Said
    text: str


Trial = tuple[Change, ...]


def figures(resolver: Resolver, counted: Counted) -> Figures:
    """For each letter whose number is stated: that, and how many are sewn. Of strips only those
    that strip sets take whole are counted here."""
    found = {}
    for letter, piece in resolver.pieces.items():
        stated = resolver.number(piece.count, f"{letter}: count")
        if stated is not None and not resolver.is_strip(letter):
            found[letter] = stated, counted.number(letter)
            continue
        strips = resolver.number(piece.strips, f"{letter}: strips")
        runs = counted.runs.get(letter, [])
        if strips and resolver.is_strip(letter) and all(run.whole for run in runs):
            found[letter] = strips, sum(run.number for run in runs)
    return found


def exchange(text: str, letters: Mapping[str, str]) -> str:
    return LETTER.sub(lambda found: letters.get(found[0], found[0]), text)


def said_by(name: str, unit: WrittenMade, size: str) -> Iterator[Said]:
    """All cells and parts that a unit names, its sashing's among them."""
    for field, held in _keys(unit):
        value = here(held, size) if isinstance(held, PerSize) else None
        if isinstance(value, (CellsValue, PartValue)):
            yield Said(name, field, None, value)
        elif isinstance(value, tuple):
            for row, one in enumerate(value):
                if isinstance(one, CellsValue):
                    yield Said(name, field, row, one)


def _keys(unit: WrittenNode, of: str = "") -> Iterator[tuple[str, object]]:
    for field in type(unit).model_fields:
        held = getattr(unit, field)
        yield f"{of}{field}", held
        if isinstance(held, WrittenNode):
            yield from _keys(held, f"{of}{field}.")


def tried(trial: Trial, resolver: Resolver) -> Figures | None:
    """The numbers with a change made; None where that cannot be sewn."""
    other = Resolver(_changed(trial, resolver), resolver.size, resolver.pictures)
    other.solve()
    if other.broken or any(check.off() != 0 for check in other.checks):
        return None
    return figures(other, count(other))


def _changed(trial: Trial, resolver: Resolver) -> WrittenPattern:
    units = dict(resolver.units)
    for said, text in trial:
        units[said.unit] = _rewritten(units[said.unit], said, text, resolver.size)
    top = units.pop(TOP, None)
    return resolver.written.model_copy(update={"units": units, "top": top})


def _rewritten(unit: WrittenMade, said: Said, text: str, size: str) -> WrittenMade:
    words = Text(text, said.place)
    new: Any = parse_cells(words)
    if not isinstance(said.value, CellsValue):
        new = type(said.value)(words, said.place)
    if said.row is not None:
        rows = here(attrgetter(said.field)(unit), size) or ()
        new = (*rows[: said.row], new, *rows[said.row + 1 :])
    return _with(unit, said.field, PerSize(bare=new))


def _with(node: Node, key: str, new: object) -> Node:
    first, _, rest = key.partition(".")
    return node.model_copy(update={first: _with(getattr(node, first), rest, new) if rest else new})
