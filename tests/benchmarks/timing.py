"""Whole processes timed against one another: interleaved, the least of several, ratios only."""

import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

ROUNDS = 9


def least(
    commands: Mapping[str, Sequence[str]], folder: Path, rounds: int = ROUNDS
) -> dict[str, float]:
    """The least seconds of each command, which must end well; the first round only warms up."""
    found: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(rounds + 1):
        for name, words in commands.items():
            start = time.perf_counter()
            subprocess.run(list(words), cwd=folder, check=True, capture_output=True)
            found[name].append(time.perf_counter() - start)
    return {name: min(seconds[1:]) for name, seconds in found.items()}


def python(*words: str) -> list[str]:
    """A call of this very Python."""
    return [sys.executable, *words]
