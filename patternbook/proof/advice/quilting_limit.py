"""Quilting lines that are stated further apart than the batting allows (rule R15)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.inch import length
from patternbook.notice import Notice
from patternbook.proof.advice.told import advised, place_of
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Quilting


def quilting_limit(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Each suggestion whose own spacing is wider than the packet's limit."""
    found = {one.quilt.size: words for one in sizes if (words := _wide(one))}
    place = next((way.place for one in sizes for way in _ways(one)), None) or place_of(sizes)
    yield from advised(
        "quilting-limit",
        "R15",
        found,
        place,
        "Quilting lines further apart than the batting's limit:",
        hint="Draw them closer, or take a batting that allows more.",
    )


def _ways(one: Evidence) -> Iterator[Quilting]:
    limit = one.quilt.batting.limit if one.quilt.batting else None
    for way in one.quilt.quilting:
        if limit is not None and way.spacing is not None and way.spacing > limit:
            yield way


def _wide(one: Evidence) -> str | None:
    batting, system = one.quilt.batting, one.quilt.system
    return (
        ", ".join(
            f"{way.area} {length(way.spacing, system)}, limit {length(batting.limit, system)}"
            for way in _ways(one)
            if way.spacing and batting and batting.limit
        )
        or None
    )
