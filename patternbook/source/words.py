"""All words of a source, as they were typed and where."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from patternbook.methods.written import WrittenNode
from patternbook.value import PerSize, Text


def words(value: object) -> Iterator[Text]:
    """Every text below this value: names, sentences, and the keys that are names."""
    if isinstance(value, Text):
        yield value
    elif isinstance(value, WrittenNode):
        for name in type(value).model_fields:
            yield from words(getattr(value, name))
    elif isinstance(value, PerSize):
        for _, one in value.stated():
            yield from words(one)
    elif isinstance(value, Mapping):
        for key, one in value.items():
            yield from words(key)
            yield from words(one)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from words(one)
