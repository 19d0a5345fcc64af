"""Whether the answers are the same everywhere: a digest of many, made by a process of its own.

python -m tests.benchmarks.cut_same SEED [NAMES...]    the kinds of each list in an order by SEED
"""

import hashlib
import os
import random
import subprocess
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace

from patternbook.cutting.planner.records import Answer, Kind, Limits, Prices, Task
from patternbook.cutting.planner.solve import solve
from tests.benchmarks.cut_lists import cut_lists
from tests.benchmarks.cut_runs import asked
from tests.support import ROOT


def digest(seed: int, names: Sequence[str]) -> str:
    """Of the plans, bounds and prices of these lists; the smallest in two manners."""
    found = hashlib.sha256()
    for name in names:
        task = shuffled(cut_lists()[name], seed)
        found.update(said(solve(asked(task, "shared"), Limits())).encode())
        if name.endswith("-crib"):
            found.update(said(solve(asked(task, "thrifty"), Limits())).encode())
    return found.hexdigest()


def shuffled(task: Task, seed: int) -> Task:
    """The same list in another order."""
    chance = random.Random(seed)  # noqa: S311
    kinds, lengthwise = list[Kind](task.kinds), list[Kind](task.lengthwise)
    chance.shuffle(kinds)
    chance.shuffle(lengthwise)
    return replace(task, kinds=tuple(kinds), lengthwise=tuple(lengthwise))


def said(answer: Answer) -> str:
    """All of an answer but the order in which the kinds were asked for."""
    prices = [_in_order(one) for one in answer.prices]
    bounds = (answer.length, answer.bound, answer.by_prices, answer.limit_hit)
    return repr((answer.strips, answer.block, bounds, prices))


def _in_order(prices: Prices) -> Prices:
    return prices._replace(kinds=tuple(sorted(prices.kinds)))


def elsewhere(seed: int, names: Sequence[str], *, slow: bool = False) -> str:
    """The digest of another process with another hash seed; `slow`: as the last in the queue for
    one core."""
    words = [sys.executable, "-m", "tests.benchmarks.cut_same", str(seed), *names]
    ran = subprocess.run(
        [*(["nice", "-n", "19"] if slow else []), *words],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONHASHSEED": str(seed)},
    )
    assert not ran.stderr, ran.stderr
    return ran.stdout.strip()


@contextmanager
def busy_core(others: int = 2) -> Iterator[None]:
    """This process and all it starts have one core, with others that never rest beside them."""
    cores = os.sched_getaffinity(0)
    os.sched_setaffinity(0, {max(cores)})
    rest_not = ["nice", "-n", "19", sys.executable, "-c", "while True: pass"]
    restless = [subprocess.Popen(rest_not) for _ in range(others)]
    try:
        yield
    finally:
        for one in restless:
            one.kill()
            one.wait()
        os.sched_setaffinity(0, cores)


if __name__ == "__main__":
    print(digest(int(sys.argv[1]), sys.argv[2:] or list(cut_lists())))
