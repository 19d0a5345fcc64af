"""How many of each part, from the top downward: what is placed is made, what is made is cut."""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from typing import NamedTuple

from patternbook.methods.world import Need, StripNeed
from patternbook.notice import Mark, Notice, Place
from patternbook.quilt.hands import Hands
from patternbook.quilt.resolve import TOP, Resolver


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
        if other:
            slanting = {part.part for part in hands.placed(name) if part.outline}
            need = _need(resolver, name, other)
            counted.other_hand.update({p: n for p, n in need.parts.items() if p in slanting})
        if stated is not None and stated != needed:
            _make_differs(name, stated, needed, counted, resolver)
    return counted


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


def _make_differs(
    name: str, stated: int, needed: int, counted: Counted, resolver: Resolver
) -> None:
    unit = resolver.units[name]
    value = unit.make.at(resolver.size) if unit.make is not None else None
    place: Place | None = value.place if value is not None else unit.place
    message = (
        f"make {stated} of '{name}' stated, {needed} are placed: {counted.sum_of(name)} = {needed}."
    )
    notice = Notice(
        "make",
        "error",
        "quilt",
        message,
        (Mark(place, "stated here"), Mark(unit.place, "the unit")) if place else (),
        "R3",
        (resolver.size,),
        str(stated),
        str(needed),
        f"Write make: {needed}, or leave it out.",
    )
    resolver.tell(notice)
