"""A source without any figure that can be left out."""

from collections.abc import Sequence

from tests.walk.outcomes import Bench, Outcome
from tests.walk.text import Entry, entries, without

# What may be left out and is then worked out. What the quilt or the shopping is decided by
# (a cut, `over`, `spare`, `panels`) is no such figure.
OPTIONAL = frozenset(
    (
        "count", "mirrored", "squares", "strips", "per-strip", "cut-cm",  # of a piece
        "finished", "measure", "make",  # of any part
        "sets", "per-set", "set-measure", "lengths",  # of strip sets and logs
        "row-measure", "before-borders", "side-length", "end-length",  # of a layout
        "yards", "metres", "packs", "pieces",  # of a cloth and of a size
        "length",  # of the binding
    )
)  # fmt: skip
# Stated sizes of the backing and the batting; a fabric's own size is what is bought.
ASKED = frozenset((("backing", "size"), ("batting", "size")))


def is_optional(entry: Entry) -> bool:
    """Whether it is a figure that may be left out."""
    last = entry.keys[-1]
    if entry.keys in ASKED:
        return True
    return last in OPTIONAL and len(entry.keys) > 1 and entry.keys != ("pieces", last)


def bare(bench: Bench, base: Outcome) -> tuple[str, list[Entry]]:
    """The source without what can be left out, and the figures that had to stay: without one of
    those it would be another quilt, or none."""
    found = [entry for entry in entries(base.text) if is_optional(entry)]
    gone: list[Entry] = []
    stays: list[Entry] = []
    _leave_out(bench, base, found[::-1], (gone, stays))
    return without(base.text, gone), stays


def _leave_out(
    bench: Bench, base: Outcome, some: Sequence[Entry], into: tuple[list[Entry], list[Entry]]
) -> None:
    """As many of these as can be, by halves: most can go at once."""
    gone, stays = into
    if not some:
        return
    tried = bench.outcome(without(base.text, [*gone, *some]))
    if not tried.errors and tried.sizes_and_counts() == base.sizes_and_counts():
        gone += some
    elif len(some) == 1:
        stays += some
    else:
        half = len(some) // 2
        _leave_out(bench, base, some[:half], into)
        _leave_out(bench, base, some[half:], into)
