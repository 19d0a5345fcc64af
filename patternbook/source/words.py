"""What is written anywhere below one part of a source: its words, its sizes, as they were typed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeVar

from patternbook.methods.written import WrittenNode
from patternbook.value import PerSize, Text

T = TypeVar("T")


def words(value: object) -> Iterator[Text]:
    """Every text below this value: names, sentences, and the keys that are names."""
    return held(value, Text)


def held(value: object, *kinds: type[T]) -> Iterator[T]:
    """Every value of these kinds below this one."""
    if isinstance(value, kinds):
        yield value
    elif isinstance(value, WrittenNode):
        for name in type(value).model_fields:
            yield from held(getattr(value, name), *kinds)
    elif isinstance(value, PerSize):
        for _, one in value.stated():
            yield from held(one, *kinds)
    elif isinstance(value, Mapping):
        for key, one in value.items():
            yield from held(key, *kinds)
            yield from held(one, *kinds)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from held(one, *kinds)
