"""The text of a source: every number in it and every key, and how to exchange or leave out one."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

NUMBER = re.compile(r"(?<![\w./-])(\d+ \d+/\d+|\d+/\d+|\d+)(?![\w./])")
# Sentences, names, addresses and dates: no figure of the quilt stands there.
APART = frozenset(
    (
        "pattern", "summary", "by", "date", "licence", "level", "slug", "contact", "site",
        "report", "lesson", "words", "note", "why", "colour", "use", "design", "drawing",
    )
)  # fmt: skip
# Whole numbers of things; every other number is a length.
COUNTED = frozenset(
    (
        "count", "mirrored", "make", "sets", "strips", "per-set", "per-strip", "squares", "pieces",
        "packs", "pack", "prints", "seed", "panels", "spare", "across", "down", "rows", "columns",
        "between", "from", "logs", "corners", "shapes", "gives", "folds", "revision", "language",
        "area",
    )
)  # fmt: skip
NAMED = frozenset(("sizes", "fabrics", "pieces", "units"))


@dataclass(frozen=True)
class Number:
    """One number in the text: where it begins and ends, the keys it stands under, the places
    (`line:column`) of its scalar and its key, its side where it is one of two, and whether it was
    said to be only about so much."""

    start: int
    end: int
    text: str
    keys: tuple[str, ...]
    at: tuple[str, str]
    side: str = ""
    about: bool = False

    @property
    def key(self) -> str:
        """What it is a figure of: `pieces.A.cut`."""
        return ".".join(self.keys)

    @property
    def part(self) -> tuple[str, ...]:
        """The part it stands beside: `pieces.A`, `top`."""
        return self.keys[: 2 if self.keys[0] in NAMED else 1]

    @property
    def counted(self) -> bool:
        """Whether it is a whole number of things, and no length."""
        if self.keys[0] == "sizes":
            return self.keys[-1] != "finished"
        return not COUNTED.isdisjoint(self.keys[len(self.part) :] or self.keys)

    def stepped(self, way: int) -> str:
        """The number one step further up or down, as a person would write it."""
        value = value_of(self.text) + way * (1 if self.counted else Fraction(1, 8))
        whole, rest = divmod(value, 1)
        return " ".join(str(part) for part in (whole, rest) if part) or "0"


def value_of(text: str) -> Fraction:
    """`2 1/2` as a fraction."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


@dataclass(frozen=True)
class Entry:
    """A key and its value in the text, with the keys above it."""

    keys: tuple[str, ...]
    key: ScalarNode
    value: Node
    flow: bool


def entries(text: str) -> list[Entry]:
    """Every key of the source, in order."""
    return list(_entries(YAML(typ="safe", pure=True).compose(text), ()))


def _entries(node: Node, keys: tuple[str, ...]) -> Iterator[Entry]:
    if isinstance(node, MappingNode):
        for key, value in node.value:
            yield Entry((*keys, key.value), key, value, bool(node.flow_style))
            yield from _entries(value, (*keys, key.value))
    elif isinstance(node, SequenceNode):
        for item in node.value:
            yield from _entries(item, keys)


def numbers(text: str) -> list[Number]:
    """Every number of the source but those of sentences, dates, colours and addresses."""
    found = []
    for entry in entries(text):
        if not APART.isdisjoint(entry.keys):
            continue
        items = entry.value.value if isinstance(entry.value, SequenceNode) else [entry.value]
        for item in items:
            if isinstance(item, ScalarNode):
                found += list(_in_scalar(text, entry, item))
    return sorted(found, key=lambda number: number.start)


def _in_scalar(text: str, entry: Entry, item: ScalarNode) -> Iterator[Number]:
    begin, end = item.start_mark.index, item.end_mark.index
    at = tuple(f"{m.line + 1}:{m.column + 1}" for m in (item.start_mark, entry.key.start_mark))
    matches = list(NUMBER.finditer(text, begin, end))
    two = len(matches) == 2 and " x " in text[begin:end]
    sides = ("across", "down") if two else ("",) * len(matches)
    for match, side in zip(matches, sides, strict=True):
        place, about = (at[0], at[1]), text.startswith("about ", begin)
        yield Number(match.start(), match.end(), match[1], entry.keys, place, side, about)


def replaced(text: str, changes: Mapping[Number, str]) -> str:
    """The text with numbers exchanged."""
    for number in sorted(changes, key=lambda number: -number.start):
        text = text[: number.start] + changes[number] + text[number.end :]
    return text


def without(text: str, left_out: Iterable[Entry]) -> str:
    """The text without some keys and their values."""
    for entry in sorted(left_out, key=lambda entry: -entry.key.start_mark.index):
        begin, end = entry.key.start_mark.index, _end(entry.value)
        if not entry.flow:
            first, line = text.rindex("\n", 0, begin) + 1, text.index("\n", end) + 1
            text = text[:first] + text[line:]
        elif after := re.compile(r"\s*,\s*").match(text, end):
            text = text[:begin] + text[after.end() :]
        else:
            text = re.sub(r",\s*$", "", text[:begin]) + text[end:]
    return text


def _end(node: Node) -> int:
    """Behind the last sign of a value; a block's own mark lies behind the empty lines after it."""
    if isinstance(node, MappingNode) and not node.flow_style:
        return _end(node.value[-1][1])
    if isinstance(node, SequenceNode) and not node.flow_style:
        return _end(node.value[-1])
    block = isinstance(node, ScalarNode) and node.style in {"|", ">"}
    return int(node.end_mark.index) - block
