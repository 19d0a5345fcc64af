"""Which sources a command is about."""

from pathlib import Path

import pytest

from patternbook.commands.sources import Source, chosen
from patternbook.commands.stop import WrongCall


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Two patterns and a house file, and we stand beside them."""
    monkeypatch.chdir(tmp_path)
    for slug in ("b", "a", "no-pattern"):
        (tmp_path / "patterns" / slug).mkdir(parents=True)
    for slug in ("b", "a"):
        (tmp_path / "patterns" / slug / "pattern.yaml").touch()
    (tmp_path / "patterns" / "house.yaml").touch()
    return tmp_path


@pytest.mark.usefixtures("home")
def test_none_named_is_all_of_patterns_in_order() -> None:
    assert [source.shown for source in chosen([])] == [
        "patterns/a/pattern.yaml",
        "patterns/b/pattern.yaml",
    ]


@pytest.mark.usefixtures("home")
def test_a_file_or_its_folder_once_each() -> None:
    path = Path("patterns/a/pattern.yaml")
    assert chosen([Path("patterns/a"), path]) == (Source(path, path.as_posix()),)
    assert chosen([path])[0].slug == "a"


@pytest.mark.usefixtures("home")
@pytest.mark.parametrize(
    ("named", "said"),
    [
        ("patterns/no-pattern", "a folder without a pattern.yaml"),
        ("patterns/c", "does not exist"),
        ("/dev/null", "is not a file"),
    ],
)
def test_what_is_not_there_is_a_wrong_call(named: str, said: str) -> None:
    with pytest.raises(WrongCall, match=said):
        chosen([Path(named)])


def test_no_patterns_at_all(tmp_path: Path) -> None:
    with pytest.raises(WrongCall, match=r"no patterns/NAME/pattern\.yaml here"):
        chosen([], tmp_path)


def test_in_the_folder_of_a_pattern_itself(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(home / "patterns" / "a")
    (source,) = chosen([Path()])
    assert (source.shown, source.slug) == ("pattern.yaml", "a")
