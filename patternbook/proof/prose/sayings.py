"""The author's own sentences: which words, where they stand, and what part they speak of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from patternbook.methods.written import WrittenNode
from patternbook.value import NOWHERE, PerSize, Text

# What is said of the past, of pictures and of the house is not said of this quilt's figures.
PASSED_OVER: Final = frozenset(("revisions", "photos", "settings", "issue_as", "in_", "class_"))
TOP: Final = "top"
FINISHING: Final = ("backing", "batting", "binding")


@dataclass(frozen=True)
class Saying:
    """A text of the author's. `about` is the part it stands at (a letter, a unit's name, a cloth,
    `border 1`, `binding`); none where it speaks of the whole quilt. `size`: only of that one."""

    text: Text
    about: str | None = None
    size: str | None = None


def sayings(written: WrittenNode) -> Iterator[Saying]:
    """All of them, in the order of the source."""
    for found in _of(written, ()):
        if found.text.place != NOWHERE and found.text.strip():
            yield found


def _of(held: object, path: tuple[str, ...]) -> Iterator[Saying]:
    if isinstance(held, WrittenNode):
        yield from _node(held, path)
    elif isinstance(held, PerSize):
        for _, one in held.stated():
            yield from _of(one, path)
    elif isinstance(held, Mapping):
        for key, one in held.items():
            yield from _of(one, (*path, str(key)))
    elif isinstance(held, tuple | list):
        for number, one in enumerate(held, 1):
            yield from _of(one, (*path, str(number)))


def _node(held: WrittenNode, path: tuple[str, ...]) -> Iterator[Saying]:
    for name in type(held).model_fields:
        value = getattr(held, name)
        if _is_said(name, path) and isinstance(value, Text):
            yield Saying(value, _about(path), _size(path))
        elif name not in PASSED_OVER:
            yield from _of(value, (*path, name))


def _is_said(name: str, path: tuple[str, ...]) -> bool:
    return name == "note" or path == ("words",) or (not path and name == "summary")


def _about(path: tuple[str, ...]) -> str | None:
    """The part whose mapping the words stand in; of a border its number."""
    if not path or path[0] in ("words", "sizes"):
        return None
    if "borders" in path[:-1]:
        return f"border {path[path.index('borders') + 1]}"
    if path[0] == TOP or path[0] in FINISHING:
        return path[0]
    return path[1] if len(path) > 1 and path[0] != "quilting" else None


def _size(path: tuple[str, ...]) -> str | None:
    return path[1] if len(path) > 1 and path[0] == "sizes" else None
