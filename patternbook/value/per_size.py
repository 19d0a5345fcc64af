"""A value that may differ from size to size: one for all, or one beside each size's name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final, Generic, Self, TypeVar

from patternbook.notice import Place
from patternbook.value.text import NOWHERE

T = TypeVar("T")
OTHERS: Final = "others"


@dataclass(frozen=True)
class PerSize(Generic[T]):
    """`6`, or `{crib: 6, throw: 9}`, or `{crib: 6, others: 9}`."""

    bare: T | None = None
    by_size: Mapping[str, T] = field(default_factory=lambda: MappingProxyType({}))
    others: T | None = None
    place: Place = NOWHERE

    def at(self, size: str) -> T | None:
        """What holds in this size; None where nothing is stated for it."""
        if self.bare is not None:
            return self.bare
        return self.by_size.get(size, self.others)

    def __deepcopy__(self, _memo: object) -> Self:
        """Itself: it never changes, and defaults are copied for every part of a source."""
        return self

    def stated(self) -> tuple[tuple[str | None, T], ...]:
        """Everything that was written, each with its size; no size where it is for all."""
        if self.bare is not None:
            return ((None, self.bare),)
        rest = () if self.others is None else ((OTHERS, self.others),)
        return (*self.by_size.items(), *rest)


def every(value: T) -> PerSize[T]:
    """One value for every size, as a default has it."""
    return PerSize(bare=value)
