"""The changes that are tried: each number up and down, neighbours exchanged, pairs that cancel."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from ruamel.yaml.nodes import ScalarNode, SequenceNode

from tests.walk.text import Entry, Number, entries, numbers, replaced, value_of

# What a piece or a unit measures, and how many there are of it.
MEASURES = frozenset(
    (
        "cut", "finished", "side", "radius", "measure", "segment", "set-measure", "row-measure",
        "before-borders",
    )
)  # fmt: skip
HOW_MANY = frozenset(("count", "make", "mirrored", "squares", "spare"))
WORD = re.compile(r"[A-Za-z][A-Za-z0-9-]*")


@dataclass(frozen=True)
class Change:
    """One change of the text: its kind, what it is, and each number with its new text."""

    kind: str
    what: str
    news: Mapping[Number, str]

    def made(self, text: str) -> str:
        """The text after it."""
        return replaced(text, self.news)


def changes(text: str) -> Iterator[Change]:
    """All changes of a source."""
    found = numbers(text)
    yield from steps(found)
    yield from swaps(found)
    yield from pairs(text, found)


def steps(found: Sequence[Number]) -> Iterator[Change]:
    """Each number a step up and a step down."""
    for number in found:
        for way in (1, -1):
            new = number.stepped(way)
            yield Change("step", f"{named(number)} -> {new}", {number: new})


def swaps(found: Sequence[Number]) -> Iterator[Change]:
    """Each number exchanged with the next."""
    for one, other in pairwise(found):
        if value_of(one.text) != value_of(other.text):
            what = f"{named(one)} <-> {named(other)}"
            yield Change("swap", what, {one: other.text, other: one.text})


def named(number: Number) -> str:
    """`12 pieces.A.cut across 2 1/2`: the line, the key, the side and the number."""
    line = number.at[0].split(":")[0]
    return " ".join(filter(None, (line, number.key, number.side, number.text)))


def pairs(text: str, found: Sequence[Number]) -> Iterator[Change]:
    """Two numbers of one kind, one a step up and the other a step down: beside one part, of one
    name in all sizes, and of parts that are sewn into one unit. A part and its unit are also
    changed the same way, which hides a fault between the two."""
    sizes = {
        entry.keys[1] for entry in entries(text) if entry.keys[0] == "sizes" and entry.keys[1:]
    }
    tried: set[frozenset[Number]] = set()
    for one, other, alike in (*_beside(found), *_sewn_together(text, found, sizes)):
        pair = frozenset((one, other))
        if pair in tried or one.counted != other.counted:
            continue
        tried.add(pair)
        ways = [(1, -1), (-1, 1), *([(1, 1), (-1, -1)] if alike else [])]
        for way, back in ways:
            news = {one: one.stepped(way), other: other.stepped(back)}
            what = " and ".join(f"{named(number)} -> {new}" for number, new in news.items())
            yield Change("pair", what, news)


Pair = tuple[Number, Number, bool]


def _beside(found: Sequence[Number]) -> Iterator[Pair]:
    """Two numbers beside one part, and the same number of two sizes."""
    for one, other in combinations(found, 2):
        own = one.keys[0] == "sizes" and other.keys[0] == "sizes" and one.keys[2:] == other.keys[2:]
        if one.part == other.part or (own and one.side == other.side):
            yield one, other, False


def _sewn_together(text: str, found: Sequence[Number], sizes: set[str]) -> Iterator[Pair]:
    """Two parts of one unit, or a part and its unit, in sizes that they share."""
    own: dict[str, list[Number]] = {}
    for number in found:
        if number.keys[0] in {"pieces", "units"} and number.part[-1] != number.keys[-1]:
            own.setdefault(number.part[1], []).append(number)
        elif number.keys[0] == "top" or number.key.endswith(".finished"):
            own.setdefault("top", []).append(number)
    for unit, parts in _parts(text, set(own)).items():
        for one, other in combinations((unit, *sorted(parts - {unit})), 2):
            for first in own.get(one, ()):
                for second in own.get(other, ()):
                    if _comparable(first, second, sizes):
                        yield first, second, one == unit


def _comparable(one: Number, other: Number, sizes: set[str]) -> bool:
    """Whether both are measures of one side in one size, or both say how many."""
    mine, theirs = sizes.intersection(one.keys), sizes.intersection(other.keys)
    if mine and theirs and mine != theirs:
        return False
    if one.side and other.side and one.side != other.side:
        return False
    return any(
        not kind.isdisjoint(one.keys) and not kind.isdisjoint(other.keys)
        for kind in (MEASURES, HOW_MANY)
    )


def _parts(text: str, known: set[str]) -> dict[str, set[str]]:
    """The parts that each unit names in any of its words."""
    found: dict[str, set[str]] = {}
    for entry in entries(text):
        if entry.keys[0] == "units" and len(entry.keys) > 2:
            found.setdefault(entry.keys[1], set()).update(_words(entry) & known)
        elif entry.keys[0] == "top" and len(entry.keys) > 1:
            found.setdefault("top", set()).update(_words(entry) & known)
    return found


def _words(entry: Entry) -> set[str]:
    if entry.keys[-1] in {"note", "press", "method"}:
        return set()
    items = entry.value.value if isinstance(entry.value, SequenceNode) else [entry.value]
    return {
        word for item in items if isinstance(item, ScalarNode) for word in WORD.findall(item.value)
    }
