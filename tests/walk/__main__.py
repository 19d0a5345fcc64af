"""The number walk over the patterns, by hand; CI walks a sample of the same changes.

python -m tests.walk [NAMES...] [--seed N --sample N] [--jobs N] [--kind step|swap|pair]
"""

import argparse
import random
import sys
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.support import ROOT
from tests.walk.bare import bare
from tests.walk.changes import changes
from tests.walk.outcomes import Bench
from tests.walk.walking import Walked, tried

PATTERNS = sorted(path.parent for path in (ROOT / "patterns").glob("*/pattern.yaml"))


def one(task: tuple[Path, bool, int, int | None, str | None]) -> tuple[Walked, float]:
    """One pattern, as written or bare, in a process of its own."""
    pattern, as_written, seed, sample, kind = task
    begun = time.perf_counter()
    with TemporaryDirectory() as folder:
        bench = Bench(pattern, Path(folder))
        text = bench.text if as_written else bare(bench, bench.outcome(bench.text))[0]
        some = [change for change in changes(text) if kind in {None, change.kind}]
        if sample is not None:
            chosen = random.Random(f"{seed} {pattern.name}")  # noqa: S311
            some = chosen.sample(some, min(sample, len(some)))
        walked = tried(bench, text, some, as_written=as_written)
    return walked, time.perf_counter() - begun


def told(walked: Walked, seconds: float) -> None:
    """One pattern's result."""
    how = "as written" if walked.as_written else "bare"
    head = f"{walked.pattern} ({how}): {walked.numbers} numbers, {walked.tried} changes"
    print(f"{head}, {len(walked.survivors)} unseen [{seconds:.0f} s]")
    for (kind, classed, became), times in sorted(walked.became.items()):
        print(f"    {kind:5} {classed:8} {became:14} {times}")
    for line in walked.survivors:
        print(f"  ! {line}")
    for line in walked.explained:
        print(f"  = {line}")
    sys.stdout.flush()


def main() -> int:
    """Exit code 1 where a change goes unseen."""
    parser = argparse.ArgumentParser(prog="python -m tests.walk")
    parser.add_argument("names", nargs="*")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--sample", type=int, help="so many changes of each pattern")
    parser.add_argument("--kind", choices=("step", "swap", "pair"))
    parser.add_argument("--jobs", type=int, default=1)
    options = parser.parse_args()
    chosen = [one for one in PATTERNS if not options.names or one.name in options.names]
    if unknown := set(options.names) - {one.name for one in chosen}:
        parser.error(f"no such pattern: {', '.join(sorted(unknown))}")
    tasks = [
        (pattern, as_written, options.seed, options.sample, options.kind)
        for pattern in chosen
        for as_written in (True, False)
    ]
    total: Counter[tuple[str, str, str]] = Counter()
    survivors = explained = 0
    with ProcessPoolExecutor(options.jobs) as pool:
        for walked, seconds in pool.map(one, tasks):
            told(walked, seconds)
            total += walked.became
            survivors += len(walked.survivors)
            explained += len(walked.explained)
    print(f"\nall: {total.total()} changes, {survivors} unseen, {explained} explained")
    for (kind, classed, became), times in sorted(total.items()):
        print(f"    {kind:5} {classed:8} {became:14} {times}")
    return 1 if survivors else 0


if __name__ == "__main__":
    sys.exit(main())
