"""Types and small readers that several tests share."""

import ast
import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "patternbook"


@dataclass(frozen=True)
class Ran:
    """How a command ended, and what it said."""

    code: int
    out: str
    err: str

    def json(self) -> Any:
        """The record on standard output."""
        return json.loads(self.out)


class Run(Protocol):
    """Calls the command line as a function: run("check", path, "--json")."""

    def __call__(self, *words: str | Path) -> Ran: ...


class WritePattern(Protocol):
    """Writes a source: pattern('''...''') gives its path, in a folder of its own."""

    def __call__(self, text: str, name: str = "trial") -> Path: ...


class Golden(Protocol):
    """Compares a text with tests/golden/NAME: golden(text, "figures/crib.txt")."""

    def __call__(self, text: str, name: str) -> None: ...


def imports(text: str) -> Iterator[tuple[int, str]]:
    """Every module that a text imports, anywhere in it, with its line."""
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, name.name) for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.lineno, "." * node.level + (node.module or "")
