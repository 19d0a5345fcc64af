"""Beginning a pattern."""

from pathlib import Path

import pytest

from patternbook.commands.new import begun, named
from patternbook.commands.stop import WrongCall
from patternbook.shipped import shipped
from tests.support import Run

KINDS = ["plain", *sorted(path.parent.name for path in shipped("patterns").glob("*/pattern.yaml"))]


@pytest.fixture(autouse=True)
def _here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize(
    ("asked", "title", "slug"),
    [
        ("Winter Window", "Winter Window", "winter-window"),
        ("winter-window", "Winter Window", "winter-window"),
        ("Nan's Café No 2", "Nan's Café No 2", "nans-cafe-no-2"),
    ],
)
def test_names(asked: str, title: str, slug: str) -> None:
    assert named(asked) == (title, slug)


@pytest.mark.parametrize("asked", ["", "../up", "a/b", "a: b", "-x", "雪", "a\nb", "#7"])
def test_names_that_cannot_be(asked: str) -> None:
    with pytest.raises(WrongCall, match="cannot"):
        named(asked)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_checks_clean_under_its_new_name(run: Run, kind: str) -> None:
    ran = run("new", "Winter Window", "--kind", kind)
    path = Path("patterns/winter-window/pattern.yaml")
    assert (ran.code, ran.out) == (0, f"{path.as_posix()}\n")
    text = path.read_text("utf-8")
    assert "\npattern: Winter Window\n" in text
    assert "\nslug:" not in text
    checked = run("check", "--json").json()
    assert (checked["errors"], checked["warnings"]) == (0, 0)


def test_the_starter_tells_what_each_part_is() -> None:
    lines = begun("X", "plain").splitlines()
    assert sum(line.startswith("#") for line in lines) >= 6


def test_what_is_there_is_never_touched(run: Run) -> None:
    path = Path("patterns/winter-window/pattern.yaml")
    path.parent.mkdir(parents=True)
    path.write_text("mine")
    ran = run("new", "winter window")
    assert (ran.code, path.read_text()) == (2, "mine")
    assert "is there already" in ran.err


def test_an_unknown_kind_names_those_there_are(run: Run) -> None:
    ran = run("new", "X", "--kind", "hexagon")
    assert ran.code == 2
    assert f"There are: {', '.join(KINDS)}." in ran.err
    assert not Path("patterns").exists()
