"""The walk itself: every change of one pattern tried, and each that nobody would see named."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.walk.bare import bare
from tests.walk.changes import Change, changes
from tests.walk.explained import reason
from tests.walk.outcomes import Bench, Outcome, classed, is_another_quilt, verdict, wanted
from tests.walk.text import numbers


@dataclass
class Walked:
    """What became of the changes of one pattern, by kind of change and class of number."""

    pattern: str
    as_written: bool
    numbers: int = 0
    became: Counter[tuple[str, str, str]] = field(default_factory=Counter)
    survivors: list[str] = field(default_factory=list)
    explained: list[str] = field(default_factory=list)

    @property
    def tried(self) -> int:
        """How many changes were tried."""
        return self.became.total()


def walk(pattern: Path, *, as_written: bool = True) -> Walked:
    """All changes of one pattern, as it is written or bare."""
    with TemporaryDirectory() as folder:
        bench = Bench(pattern, Path(folder))
        text = bench.text if as_written else bare(bench, bench.outcome(bench.text))[0]
        return tried(bench, text, changes(text), as_written=as_written)


def tried(bench: Bench, text: str, some: Iterable[Change], *, as_written: bool = True) -> Walked:
    """Some changes of one text."""
    base = bench.outcome(text)
    assert not base.errors, base.faults
    walked = Walked(bench.path.parent.name, as_written, len(numbers(text)))
    for change in some:
        became = _became(base, bench.outcome(change.made(text)), change)
        walked.became[change.kind, _class(base, change), became] += 1
        if became == "another quilt" or became in wanted(base, change):
            continue
        line = f"{became}: {change.what}"
        why = reason(walked.pattern, change)
        (walked.explained if why else walked.survivors).append(f"{line} ({why})" if why else line)
    return walked


def _became(base: Outcome, changed: Outcome, change: Change) -> str:
    found = verdict(base, changed, change)
    agree = found in {"told", "shown"} and "shown" not in wanted(base, change)
    return "another quilt" if agree and is_another_quilt(base, changed, change) else found


def _class(base: Outcome, change: Change) -> str:
    """The strictest class of its numbers; a figure of at least so much changed upward is apart."""
    found = {classed(base, number) for number in change.news}
    return next(kind for kind in ("exact", "at least", "free") if kind in found)
