"""The author's own sentences, read against the model of the sizes that they speak of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.prose.check import checked
from patternbook.proof.prose.sayings import sayings
from patternbook.source.load import Source


def proofread(source: Source, sizes: Mapping[str, Evidence]) -> Iterator[Notice]:
    """What is wrong in the words of a pattern, in any of its sizes."""
    lines: Sequence[str] = source.text.split("\n")
    known: Iterable[Evidence] = sizes.values()
    yield from checked(tuple(sayings(source.written)), lines, tuple(known))
