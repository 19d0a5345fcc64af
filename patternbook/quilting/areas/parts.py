"""One part of a top before it has its letter: what divides the top hands these on."""

from __future__ import annotations

from typing import NamedTuple

from shapely import Polygon

from patternbook.quilting.records import AreaKind, Path


class Part(NamedTuple):
    """A shape and the kind of place it is; `centre` is the middle line of a channel."""

    kind: AreaKind
    shape: Polygon
    centre: Path | None = None
