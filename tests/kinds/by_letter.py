"""A pattern with every stated figure taken out and a cloth for every letter, and its figures.

So each count, strip and yard of a test is worked out from the pieces alone, and the yards of a
letter hold nothing but that letter.
"""

import shutil
from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from patternbook.commands.kinds import starters
from tests.support import Run

# What an author may state beside a piece or unit to have it checked.
STATED = ("count", "squares", "strips", "sets", "make", "yards", "packs")


@dataclass(frozen=True)
class Figures:
    """What `figures --json` says of one size."""

    of: Mapping[str, Any]

    @property
    def finished(self) -> tuple[str, str]:
        """Width and length."""
        finished = self.of["finished"]
        return finished["across"]["value"], finished["down"]["value"]

    @property
    def binding(self) -> int:
        """The strips of binding."""
        return int(self.of["binding"]["strips"])

    def count(self, letter: str) -> int:
        """How many are sewn."""
        return int(self.of["pieces"][letter]["count"]["value"])

    def squares(self, letter: str) -> int:
        """How many squares are cut on the diagonal."""
        return int(self.of["pieces"][letter]["squares"])

    def cut(self, letter: str) -> str:
        """How wide it is cut."""
        return str(self.of["pieces"][letter]["cut"]["across"]["value"])

    def strips(self, letter: str) -> int:
        """The strips of that letter."""
        return int(self.of["pieces"][letter]["own_strips"]["value"])

    def yards(self, letter: str) -> str:
        """What is bought of its cloth."""
        return str(self.of["materials"][cloth(letter)]["buy"]["amount"])

    def made(self, unit: str) -> int:
        """How many of a unit lie in the top."""
        return int(self.of["units"][unit]["make"]["value"])

    def sets(self, unit: str) -> int:
        """How many strip sets it takes."""
        return int(self.of["units"][unit]["sets"])

    def measure(self, unit: str) -> str:
        """How wide it is from raw edge to raw edge."""
        return str(self.of["units"][unit]["measure"]["across"]["value"])


Kind = Callable[..., Figures]


def figures_of(run: Run, folder: Path, kind: str, size: str, changes: Mapping[str, str]) -> Figures:
    """The figures of a kind's pattern in one size, once some of its text is changed."""
    source = starters()[kind]
    text = source.read_text("utf-8")
    for old, new in changes.items():
        assert old in text, f"{source.parent.name} has no {old!r}"
        text = text.replace(old, new)
    target = folder / "patterns" / source.parent.name
    shutil.copytree(source.parent, target, dirs_exist_ok=True)
    (target / "pattern.yaml").write_text(by_letter(text), "utf-8")
    ran = run("figures", target, "--size", size, "--json")
    assert ran.code == 0, ran.err
    return Figures(ran.json()["sizes"][size])


def by_letter(text: str) -> str:
    """The source with the figures left out that its author states, and a cloth for each letter."""
    yaml = YAML(typ="safe", pure=True)
    source = yaml.load(text)
    for part in (*source["fabrics"].values(), *source["pieces"].values(), *_units(source)):
        for key in STATED:
            part.pop(key, None)
    for letter, piece in source["pieces"].items():
        own = cloth(piece.get("with", letter))
        source["fabrics"].setdefault(own, deepcopy(source["fabrics"][piece["fabric"]]))
        piece["fabric"] = own
    written = StringIO()
    yaml.dump(source, written)
    return written.getvalue()


def _units(source: Mapping[str, Any]) -> list[dict[str, Any]]:
    return [*source.get("units", {}).values(), source["top"]]


def cloth(letter: str) -> str:
    """The cloth of one letter."""
    return f"cloth-{letter.lower()}"
