"""The page of sizes, read back: how large each finishes, and of how many pieces."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from patternbook.booklet.readback.reading import Differs, Table, compared, near, title
from patternbook.proof.evidence import Evidence


def glance(found: Sequence[Table], sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    """On the cover and at a glance."""
    for table in found:
        head = " ".join(table.head[:2])
        if not head.startswith("Size Finished"):
            continue
        pieces = table.head.index("Pieces") if "Pieces" in table.head else None
        for size, known in sizes.items():
            finished = known.quilt.finished
            row = table.row(title(size))
            if finished is None:
                continue
            right = tuple(near(side, known.quilt.system) for side in finished)
            yield from compared("the finished size", size, row, 1, right)
            if pieces is not None:
                number = (Fraction(sum(known.lies.values())),)
                yield from compared("the number of pieces", size, row, pieces, number)
