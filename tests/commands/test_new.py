"""Beginning a pattern."""

from pathlib import Path

import pytest

from patternbook.commands.build import DEMOS
from patternbook.commands.kinds import KINDS, meant, starters
from patternbook.commands.new import begun, named
from patternbook.commands.stop import WrongCall
from tests.support import Run


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


def test_every_pattern_is_a_starter_and_every_classical_kind_has_one() -> None:
    assert list(starters()) == ["plain", *KINDS, *DEMOS]
    assert len(KINDS) == len(set(KINDS.values())) == 25
    assert all(path.is_file() for path in starters().values())


@pytest.mark.parametrize("kind", starters())
def test_every_kind_checks_clean_under_its_new_name(run: Run, kind: str) -> None:
    ran = run("new", "Winter Window", "--kind", kind)
    path = Path("patterns/winter-window/pattern.yaml")
    assert (ran.code, ran.out) == (0, f"{path.as_posix()}\n")
    text = path.read_text("utf-8")
    assert "\npattern: Winter Window\n" in text
    assert not [key for key in ("slug", "date", "site", "report") if f"\n{key}:" in text]
    assert text.count("\nby: Your name\n") == 1
    assert any(line.startswith("#") for line in text.splitlines())
    checked = run("check", "--json").json()
    assert (checked["errors"], checked["warnings"]) == (0, 0)


@pytest.mark.parametrize(
    ("asked", "kind"),
    [("Log-Cabin", "log cabin"), ("appliqué", "applique"), ("porch-left-lit", "log cabin"),
     ("Four Patch", "four-patch"), ("tea-at-four", "tea-at-four"), ("wool", "wool")],
)  # fmt: skip
def test_kinds_as_people_write_them(asked: str, kind: str) -> None:
    assert meant(asked) == kind


def test_drawings_come_along(run: Run) -> None:
    run("new", "Winter Window", "--kind", "applique")
    drawn = Path("patterns/winter-window").rglob("*.svg")
    assert sorted(path.name for path in drawn) == ["leaf.svg", "pear.svg"]


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
    ran = run("new", "X", "--kind", "wool")
    assert ran.code == 2
    assert f"There are: {', '.join(starters())}." in ran.err
    assert not Path("patterns").exists()
