"""Where each stated value of one size stands: the value itself, so that a notice points at it."""

from __future__ import annotations

from patternbook.methods.written import WrittenNode, hyphenated
from patternbook.notice import Place
from patternbook.value import NOWHERE, PerSize


def value_places(node: WrittenNode, size: str) -> dict[str, Place]:
    """By key; the key's own place where the value has none, or is not stated for this size."""
    fields = {hyphenated(name): name for name in type(node).model_fields}
    return {
        key: _place(getattr(node, fields.get(key, ""), None), size) or place
        for key, place in node.key_places.items()
    }


def _place(value: object, size: str) -> Place | None:
    held = value.at(size) if isinstance(value, PerSize) else value
    place = getattr(held, "place", None)
    return place if isinstance(place, Place) and place != NOWHERE else None
