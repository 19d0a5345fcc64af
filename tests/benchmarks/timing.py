"""Whole processes timed against one another: interleaved, several rounds, ratios only."""

import subprocess
import sys
import time
from collections.abc import Mapping, Sequence
from pathlib import Path
from statistics import median

ROUNDS = 9


def least(
    commands: Mapping[str, Sequence[str]], folder: Path, rounds: int = ROUNDS
) -> dict[str, float]:
    """The least seconds of each command, which must end well."""
    return {name: min(seconds) for name, seconds in _spent(commands, folder, rounds).items()}


def medians(
    commands: Mapping[str, Sequence[str]], folder: Path, rounds: int = ROUNDS
) -> dict[str, float]:
    """The median seconds of each command, which must end well."""
    return {name: median(seconds) for name, seconds in _spent(commands, folder, rounds).items()}


def _spent(
    commands: Mapping[str, Sequence[str]], folder: Path, rounds: int
) -> dict[str, list[float]]:
    """One after the other, round by round; the first round only warms up."""
    found: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(rounds + 1):
        for name, words in commands.items():
            start = time.perf_counter()
            subprocess.run(list(words), cwd=folder, check=True, capture_output=True)
            found[name].append(time.perf_counter() - start)
    return {name: seconds[1:] for name, seconds in found.items()}


def python(*words: str) -> list[str]:
    """A call of this very Python."""
    return [sys.executable, *words]
