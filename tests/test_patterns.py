"""Every pattern that comes with patternbook: sound, short, and something of everything in it."""

from pathlib import Path

import pytest
from ruamel.yaml import YAML

from patternbook.commands.kinds import KINDS
from tests.support import ROOT, Run

PATTERNS = sorted((ROOT / "patterns").glob("*/pattern.yaml"))
EVERY = pytest.mark.parametrize("path", PATTERNS, ids=[path.parent.name for path in PATTERNS])
LONGEST = 60


@EVERY
def test_it_checks_clean_in_every_size(run: Run, path: Path) -> None:
    checked = run("check", path, "--json").json()
    told = [one["message"] for one in checked["notices"] if one["severity"] != "advice"]
    assert told == []


@EVERY
def test_it_comes_in_three_sizes_or_more_and_uses_all_that_it_lists(run: Run, path: Path) -> None:
    written = YAML(typ="safe", pure=True).load(path.read_text("utf-8"))
    sizes = run("figures", path, "--json").json()["sizes"]
    assert list(sizes) == list(written["sizes"])
    assert len(sizes) >= 3
    for letter in written["pieces"]:
        sewn = [size["pieces"][letter] for size in sizes.values() if letter in size["pieces"]]
        assert any(int(piece["count"]["value"]) for piece in sewn), letter
    for fabric in written["fabrics"]:
        assert any(_bought(size, fabric) for size in sizes.values()), fabric


def _bought(size: dict[str, dict[str, dict[str, object]]], fabric: str) -> bool:
    """Whether there is something of it in the shopping list of that size."""
    material = (size["materials"] | size["webs"]).get(fabric, {})
    return bool(material.get("buy") or material.get("packs") or material.get("pieces_of_a_pack"))


@EVERY
def test_its_words_are_there(path: Path) -> None:
    written = YAML(typ="safe", pure=True).load(path.read_text("utf-8"))
    assert {"pattern", "summary", "date", "level"} <= set(written)
    assert all(fabric["use"] for fabric in written["fabrics"].values())
    assert {"backing", "batting", "binding"} <= set(written)


@pytest.mark.parametrize("slug", KINDS.values())
def test_a_starter_is_short_and_explains_itself(slug: str) -> None:
    lines = (ROOT / "patterns" / slug / "pattern.yaml").read_text("utf-8").splitlines()
    assert lines[0].startswith("# ")
    assert len([line for line in lines if not line.lstrip().startswith("#")]) <= LONGEST


def test_no_two_have_one_name() -> None:
    names = [path.read_text("utf-8").split("\npattern: ")[1].split("\n")[0] for path in PATTERNS]
    assert len(names) == len(set(names)) >= len(KINDS)
