"""The source as plain mappings, lists and words, every one of which knows where it stands."""

from __future__ import annotations

from patternbook.notice import Place
from patternbook.value import NOWHERE, Text


class Tree(dict[Text, object]):
    """A mapping; its place is its key's, or its own where it stands in a list."""

    place: Place = NOWHERE

    def key(self, name: str) -> Text | None:
        """The key as it was written, with its place."""
        if name not in self:
            return None
        return next(key for key in self if key == name)


class Listing(list[object]):
    """A list; its place is its key's, or its own where it stands in a list."""

    place: Place = NOWHERE
