"""How units of triangles are put through the command line: many in one source, no top."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from tests.published.reading import one_size, told
from tests.support import Run

Unit = tuple[str, str]
# What stands behind the letter of a unit's pieces: A0, A1 … A9, AA, AB …
SECOND = "0123456789ABCDEFGHJKLMNPQRSTUVWXYZ"


def source(units: Iterable[Unit], trimming: str = "0", top: str = "") -> str:
    """A source of units, each with its pieces: `{A}` and `{B}` stand for letters of its own."""
    pieces: list[str] = []
    made: list[str] = []
    for number, (cuts, unit) in enumerate(units):
        letters = {letter: f"{letter}{SECOND[number]}" for letter in "ABCD"}
        pieces += [f"  {line.strip()}" for line in _filled(cuts, letters).split(";")]
        made.append(f"  unit-{number}: {{{_filled(unit, letters)}}}")
    lines = ["pattern: Units", "sizes: {one: {}}", f"settings: {{trimming: {trimming}}}"]
    return "\n".join([*lines, "pieces:", *pieces, "units:", *made, top]) + "\n"


def _filled(text: str, letters: dict[str, str]) -> str:
    for letter, name in letters.items():
        text = text.replace(f"<{letter}>", name)
    return text


def cut(run: Run, path: Path) -> dict[str, str]:
    """What is cut under each letter, as wide as it is."""
    pieces = one_size(run, path)["pieces"]
    return {letter: piece["cut"]["across"]["value"] for letter, piece in pieces.items()}


def faults(run: Run, path: Path) -> list[tuple[str, str, str]]:
    """Errors: code, the hint, and the line that is blamed."""
    lines = path.read_text("utf-8").splitlines()
    return [
        (one["code"], one["hint"], lines[one["places"][0]["line"] - 1].strip())
        for one in told(run, [path])[path.parent.name]
    ]


def sizes(run: Run, path: Path) -> dict[str, Any]:
    """The units of the one size."""
    units: dict[str, Any] = one_size(run, path)["units"]
    return units
