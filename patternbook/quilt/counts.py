"""How many of each part, from the top downward: what is placed is made, what is made is cut."""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from typing import NamedTuple

from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.world import Need, StripNeed
from patternbook.notice import Edit, Mark, Notice, Place
from patternbook.quilt.hands import Hands
from patternbook.quilt.parts import TOP
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.turned_pieces import handed


class Use(NamedTuple):
    """Where so many of a part go: `number` in all of `units` units of one name."""

    unit: str
    units: int
    number: int


@dataclass
class Counted:
    """What counting found: uses of each part, lengths of each strip, units to make; how many of
    the units, and of the pieces with a slanting edge, are of the other hand."""

    uses: dict[str, list[Use]] = field(default_factory=lambda: defaultdict(list))
    runs: dict[str, list[StripNeed]] = field(default_factory=lambda: defaultdict(list))
    make: dict[str, int] = field(default_factory=dict)
    mirrored: dict[str, int] = field(default_factory=dict)
    other_hand: Counter[str] = field(default_factory=Counter)
    order: list[str] = field(default_factory=list)

    def number(self, part: str) -> int:
        """How many of a part are sewn into something."""
        return sum(use.number for use in self.uses[part])

    def sum_of(self, part: str) -> str:
        """The count written out: `12 novels × 2 = 24`, one term a unit."""
        terms = [
            f"{use.number // use.units} × {use.units} {use.unit}"
            if use.units and use.number % use.units == 0
            else f"{use.number} for {use.units} {use.unit}"
            for use in self.uses[part]
        ]
        return " + ".join(terms) or "none"


def count(resolver: Resolver) -> Counted:
    """Count every part of one size whose lengths are solved."""
    counted = Counted()
    counted.order = making_order(resolver)
    hands = Hands(resolver)
    for name in reversed(counted.order):
        unit = resolver.units[name]
        needed = 1 if name == TOP else counted.number(name)
        stated = resolver.number(unit.make, f"{name}: make")
        if not counted.uses[name] and name != TOP:
            needed = _unplaced(name, stated, resolver)
        counted.make[name] = needed
        counted.mirrored[name] = other = hands.lay(name, needed)
        parts: Counter[str] = Counter()
        for units in filter(None, (needed - other, other)):
            need = _need(resolver, name, units)
            parts.update(need.parts)
            for run in need.runs:
                counted.runs[run.letter].append(run)
        for part, number in parts.items():
            counted.uses[part].append(Use(name, needed, number))
        _of_the_other_hand(name, needed - other, other, hands, counted, resolver)
        if stated is not None and stated != needed:
            _make_differs(name, stated, needed, counted, resolver)
    return counted


def _of_the_other_hand(
    name: str, plain: int, other: int, hands: Hands, counted: Counted, resolver: Resolver
) -> None:
    """Note the pieces that lie mirrored: those of a unit's cells with /mirror, and of a unit that
    itself lies mirrored all the rest."""
    if not resolver.mirrors or name in resolver.broken:
        return
    placed = [part for part in hands.placed(name) if part.part in resolver.pieces]
    cut_apart = {part.part for part in placed if _by_template(part.part, resolver)}
    over = Counter(part.part for part in placed if part.turn.mirrored and part.part in cut_apart)
    counted.other_hand.update({letter: number * plain for letter, number in over.items()})
    if other:
        cut_apart |= {part.part for part in placed if part.outline}
        parts = _need(resolver, name, other).parts
        counted.other_hand.update(
            {letter: parts[letter] - over[letter] * other for letter in cut_apart & parts.keys()}
        )


def _by_template(letter: str, resolver: Resolver) -> bool:
    """Whether a template cuts it that has to be turned over for the other hand."""
    shape = resolver.shape(letter)
    return shape is not None and handed(shape)


def _need(resolver: Resolver, name: str, units: int) -> Need:
    if name in resolver.broken:
        return Need({}, ())
    return resolver.work(name).need(name, resolver.units[name], resolver, units)


def making_order(resolver: Resolver) -> list[str]:
    """The units, each after those it uses."""
    order: list[str] = []
    open_: set[str] = set()

    def visit(name: str) -> None:
        if name in order or name in open_ or name not in resolver.units:
            return
        open_.add(name)
        for part in _need(resolver, name, 1).parts:
            visit(part)
        order.append(name)

    for name in resolver.units:
        visit(name)
    return order


def _unplaced(name: str, stated: int | None, resolver: Resolver) -> int:
    unit = resolver.units[name]
    if TOP in resolver.units:
        if TOP not in resolver.broken:
            message = f"'{name}' is made but never sewn into the top."
            hint = "Place it in a layout, or leave the unit out."
            resolver.error("never-placed", "R3", message, unit.place, hint)
        return 0
    return stated if stated is not None else 1


def count_rule(part: str, counted: Counted, resolver: Resolver) -> str:
    """The rule that a number of parts is held to: of what lies only in blocks on point the
    numbers follow from its rows (R22), of all else from what is sewn (R3)."""
    units = [resolver.units[use.unit] for use in counted.uses[part]]
    slanting = [
        isinstance(unit, WrittenLayout) and unit.setting.at(resolver.size) == "on point"
        for unit in units
    ]
    return "R22" if slanting and all(slanting) else "R3"


def _make_differs(
    name: str, stated: int, needed: int, counted: Counted, resolver: Resolver
) -> None:
    unit = resolver.units[name]
    value = unit.make.at(resolver.size) if unit.make is not None else None
    place: Place | None = value.place if value is not None else unit.place
    edits = (Edit(value.place, value.text, str(needed)),) if value is not None else ()
    message = (
        f"make {stated} of '{name}' stated, {needed} are placed: {counted.sum_of(name)} = {needed}."
    )
    notice = Notice(
        "make",
        "error",
        "quilt",
        message,
        (Mark(place, "stated here"), Mark(unit.place, "the unit")) if place else (),
        count_rule(name, counted, resolver),
        (resolver.size,),
        str(stated),
        str(needed),
        f"Write make: {needed}, or leave it out.",
        edits,
    )
    resolver.tell(notice)
