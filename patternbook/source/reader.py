"""From text to mappings, lists and words with their places: every scalar stays as it was typed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

from patternbook.notice import Mark, Notice, Place
from patternbook.source import slips
from patternbook.source.decode import BEGIN, plain_spaces
from patternbook.source.events import Event, events
from patternbook.source.stops import UNTOLD
from patternbook.source.tell import Refused, notice
from patternbook.source.tree import Listing, Tree
from patternbook.value import Text, quoted

MERGE: Final = "<<"


def read(text: str, shown: str) -> tuple[Tree | None, tuple[Notice, ...]]:
    """The source as a tree; none where its form could not be understood."""
    lines = plain_spaces(text).split("\n")
    odd = slips.odd_spaces(text, shown)
    tabs = slips.tabs(lines, shown)
    if tabs:
        return None, (*odd, *tabs)
    builder = _Builder(lines, shown)
    try:
        for event in events(lines, shown):
            builder.take(event)
        root = builder.finished()
    except Refused as refused:
        # Where a slip has been told already, "this line cannot be read" is only what came of it.
        last = () if builder.told and refused.notice.code == UNTOLD else (refused.notice,)
        return None, (*odd, *builder.told, *last)
    return (None if builder.told else root), (*odd, *builder.told)


@dataclass
class _Open:
    """A mapping or a list that is not closed yet; `key` waits for its value."""

    node: Tree | Listing
    braces: bool
    key: Text | None = None

    def takes_key(self) -> bool:
        """Whether a key comes next."""
        return isinstance(self.node, Tree) and self.key is None


@dataclass
class _Builder:
    """Builds the tree, event by event; what YAML takes silently and nobody means, it tells."""

    lines: Sequence[str]
    shown: str
    told: list[Notice] = field(default_factory=list)
    root: Tree | Listing | Text | None = None
    open: list[_Open] = field(default_factory=list)

    def take(self, event: Event) -> None:
        """One event more."""
        if event.kind == "end":
            self.open.pop()
        elif event.kind == "word":
            self._word(event)
        else:
            self._begin(event, Tree() if event.kind == "mapping" else Listing())

    def finished(self) -> Tree:
        """The whole pattern."""
        if isinstance(self.root, Tree):
            return self.root
        place = self.root.place if self.root is not None else Place(self.shown, 1, 1, 1, 1)
        if isinstance(self.root, Text) and (slip := slips.no_space_after_colon(self.root)):
            raise Refused(notice("yaml-space", place, slip))
        message = "a pattern is made of keys and their values, line by line."
        raise Refused(notice("not-a-pattern", place, message, BEGIN))

    def _begin(self, event: Event, node: Tree | Listing) -> None:
        if self.open and self.open[-1].takes_key():
            raise Refused(slips.brackets_for_key(self.lines, event.place))
        node.place = self._put(node) or event.place
        self.open.append(_Open(node, event.braces))

    def _word(self, event: Event) -> None:
        text = Text(event.text, event.place)
        top = self.open[-1] if self.open else None
        if top and isinstance(top.node, Tree) and top.key is None:
            self._key(text, top, top.node, bare=event.bare)
            return
        if event.bare and (slip := self._slip(text, top)):
            self.told.append(slip)
        self._put(text)

    def _key(self, key: Text, top: _Open, node: Tree, *, bare: bool) -> None:
        top.key = key
        if key == MERGE and bare:
            message = "`<<` merges mappings in YAML; a pattern states each thing where it belongs."
            raise Refused(notice("merge-key", key.place, message))
        if bare and (slip := slips.no_space_after_colon(key)):
            raise Refused(notice("yaml-space", key.place, slip))
        if before := node.key(key):
            marks = (Mark(key.place, "again"), Mark(before.place, "first"))
            message = f"{quoted(key)} stands twice in the same place."
            self.told.append(
                Notice("duplicate-key", "error", "source", message, marks, hint="Keep one.")
            )

    def _slip(self, text: Text, top: _Open | None) -> Notice | None:
        key = top.key if top else None
        if top and top.braces and isinstance(top.node, Tree) and key is not None and not text:
            alone = slips.alone_in_braces(self.lines, key, tuple(top.node))
            if alone:
                return alone
        return slips.swallowed(self.lines, text, key)

    def _put(self, node: Tree | Listing | Text) -> Place | None:
        """Puts a node where it belongs, and gives the place of its key, if it has one."""
        top = self.open[-1] if self.open else None
        if top is None:
            self.root = node
        elif isinstance(top.node, Listing):
            top.node.append(node)
        elif top.key is not None:
            key, top.key = top.key, None
            top.node.setdefault(key, node)
            return key.place
        return None
