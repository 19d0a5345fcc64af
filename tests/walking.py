"""Walks over the text of a source: every number in it, and what becomes of a change to it."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from patternbook.edition.figures import figures
from patternbook.edition.pipeline import Examined, examine
from patternbook.notice import Notice

NUMBER = re.compile(r"(?<![\w./-])(\d+ \d+/\d+|\d+/\d+|\d+)(?![\w./])")
# Prose, and what is no figure of the quilt.
APART = frozenset(
    (
        "pattern", "summary", "by", "date", "licence", "level", "slug", "contact", "site",
        "report", "lesson", "revision", "language", "words", "note", "why", "colour", "use",
        "design", "area",
    )
)  # fmt: skip
COUNTED = frozenset(
    (
        "count", "make", "sets", "strips", "per-set", "per-strip", "squares", "pieces", "packs",
        "pack", "prints", "seed", "panels", "spare", "across", "down", "rows", "columns", "gives",
    )
)  # fmt: skip
# What may be left out and is then worked out.
OPTIONAL = (
    "count", "make", "measure", "finished", "set-measure", "before-borders", "side-length",
    "end-length", "strips", "yards", "packs", "pieces", "row-measure", "per-set",
)  # fmt: skip
STANDING = frozenset(("at", "status", "ways", "class"))


@dataclass(frozen=True)
class Number:
    """One number in the text: where it begins and ends, the keys it stands under, the places
    (`line:column`) of its scalar and its key, and its side where it is one of two."""

    start: int
    end: int
    text: str
    keys: tuple[str, ...]
    at: tuple[str, str]
    side: str = ""

    @property
    def key(self) -> str:
        """What it is a figure of: `pieces.A.cut`."""
        return ".".join(self.keys)

    @property
    def counted(self) -> bool:
        """Whether it is a whole number of things, and no length."""
        own = self.keys[0] == "sizes" and self.keys[-1] != "finished"
        return own or not COUNTED.isdisjoint(self.keys[1:])

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
    """Every number of the source but those of prose, dates, colours and addresses."""
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
        yield Number(match.start(), match.end(), match[1], entry.keys, (at[0], at[1]), side)


def replaced(text: str, *changes: tuple[Number, str]) -> str:
    """The text with numbers exchanged."""
    for number, new in sorted(changes, key=lambda change: -change[0].start):
        text = text[: number.start] + new + text[number.end :]
    return text


def without(text: str, entry: Entry) -> str:
    """The text without one key and its value."""
    begin, end = entry.key.start_mark.index, entry.value.end_mark.index
    if not entry.flow:
        first = text.rindex("\n", 0, begin) + 1
        return text[:first] + text[text.index("\n", end) + 1 :]
    if after := re.compile(r"\s*,\s*").match(text, end):
        return text[:begin] + text[after.end() :]
    return re.sub(r",\s*$", "", text[:begin]) + text[end:]


@dataclass(frozen=True)
class Outcome:
    """What a source comes to."""

    examined: Examined

    @property
    def notices(self) -> tuple[Notice, ...]:
        """All that is told."""
        return self.examined.notices

    @cached_property
    def figures(self) -> Any:
        """All figures, as `figures --json` gives them."""
        return figures(self.examined)

    @property
    def errors(self) -> tuple[Notice, ...]:
        """What keeps it from being issued."""
        return tuple(notice for notice in self.notices if notice.severity == "error")

    def told(self) -> set[tuple[str, str, tuple[str, ...]]]:
        """All that is told, whatever the line."""
        return {(one.code, one.message, one.sizes) for one in self.notices}

    def values(self) -> Any:
        """All figures, without their places."""
        return _placeless(self.figures)

    def classes(self) -> Mapping[tuple[str, str], set[str]]:
        """The classes of the figures that stand at each place (`line:column`), by side."""
        found: dict[tuple[str, str], set[str]] = {}
        for side, figure in _figures(self.figures, ""):
            if figure["at"]:
                place = ":".join(figure["at"].rsplit(":", 2)[1:])
                for key in ((place, side), (place, "")):
                    found.setdefault(key, set()).add(figure["class"])
        return found


def _placeless(record: Any) -> Any:
    if isinstance(record, dict):
        return {key: _placeless(value) for key, value in record.items() if key not in STANDING}
    return [_placeless(item) for item in record] if isinstance(record, list) else record


def _figures(record: Any, name: str) -> Iterator[tuple[str, Any]]:
    if isinstance(record, dict):
        if "class" in record:
            yield name, record
        for key, value in record.items():
            yield from _figures(value, key)
    elif isinstance(record, list):
        for item in record:
            yield from _figures(item, name)


def outcome(text: str, path: Path) -> Outcome:
    """Examine a text, written to a file of its own."""
    path.write_text(text, "utf-8")
    return Outcome(examine(path, "pattern.yaml"))


def bare(text: str, path: Path) -> str:
    """The source without any figure that can be left out, one after the other from the end."""
    for number in range(len(entries(text)) - 1, -1, -1):
        found = entries(text)
        if number < len(found) and found[number].keys[-1] in OPTIONAL:
            shorter = without(text, found[number])
            if not outcome(shorter, path).errors:
                text = shorter
    return text


@dataclass(frozen=True)
class Change:
    """One change of the text: what, the text after it, the numbers concerned, and the new one."""

    what: str
    text: str
    where: tuple[Number, ...]
    new: str


def changes(text: str, found: Sequence[Number]) -> Iterator[Change]:
    """Each number a step up and a step down, and exchanged with the next."""
    for number in found:
        for way in (1, -1):
            new = number.stepped(way)
            what = f"{number.key}: {number.text} -> {new}"
            yield Change(what, replaced(text, (number, new)), (number,), new)
    for one, other in pairwise(found):
        if value_of(one.text) != value_of(other.text):
            what = f"{one.key} {one.text} <-> {other.key} {other.text}"
            exchanged = replaced(text, (one, other.text), (other, one.text))
            yield Change(what, exchanged, (one, other), other.text)
