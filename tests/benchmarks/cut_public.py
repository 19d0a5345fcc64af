"""The public lists gcut1d to gcut12d, and the least lengths of cloth known for them.

The lists are those of Cintra, Miyazawa, Wakabayashi and Xavier 2008, "Algorithms for
two-dimensional cutting stock and strip packing problems", EJOR 191, 61-85 (10 to 50 kinds, 590
to 2,751 pieces), as tables of github.com/fontanf/packingsolver, folder data/rectangle (MIT). They
are not kept here; a folder of them is named with --public. No table of least lengths in strips,
trimmed, was found in print. LEAST are our own first proofs (bound = length), where the two-stage
solver of that repository, another programme, found the same length in 19 of the 24 and none
shorter.
"""

import csv
from collections import Counter
from pathlib import Path
from typing import Final

from patternbook.cutting.planner.records import Kind, Task

# As they lie, and turned where that is less.
LEAST: Final[dict[str, tuple[int, int]]] = {
    "gcut1d": (51604, 50611),
    "gcut2d": (77436, 59866),
    "gcut3d": (80121, 77297),
    "gcut4d": (196470, 175940),
    "gcut5d": (91177, 78390),
    "gcut6d": (168011, 138049),
    "gcut7d": (243095, 226175),
    "gcut8d": (332703, 300505),
    "gcut9d": (122611, 119433),
    "gcut10d": (272780, 236311),
    "gcut11d": (314932, 285685),
    "gcut12d": (573679, 549195),
}


def public(folder: Path) -> dict[str, tuple[Task, int]]:
    """Every list as it lies and turned, with the least length known."""
    return {
        f"{name} {'turning' if turns else 'as it lies'}": (_task(folder, name, turns), least)
        for name, both in LEAST.items()
        for turns, least in zip((False, True), both, strict=True)
    }


def _task(folder: Path, name: str, turns: bool) -> Task:
    width = int(_rows(folder / "cintra2008" / f"{name}.txt_bins.csv")[0]["WIDTH"])
    numbers = Counter[tuple[int, int]]()
    for row in _rows(folder / "cintra2008" / f"{name}.txt_items.csv"):
        numbers[int(row["WIDTH"]), int(row["HEIGHT"])] += int(row["COPIES"])
    kinds = (
        Kind(f"p{place}", along, across, number, turns)
        for place, ((along, across), number) in enumerate(numbers.items())
    )
    return Task(width, tuple(kinds), "trimmed")


def _rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))
