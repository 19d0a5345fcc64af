"""House rules hold for every pattern that has no word of its own."""

from pathlib import Path

import pytest

from patternbook.notice import Notice
from patternbook.source.load import Source, load

HOUSE = "by: The Tuesday class\nseam: 3/8\nwidth: 42\nsettings: {spare: 4, trimming: 1/4}\n"


def under(tmp_path: Path, house: str, pattern: str) -> tuple[Source | None, tuple[Notice, ...]]:
    path = tmp_path / "patterns" / "trial" / "pattern.yaml"
    path.parent.mkdir(parents=True)
    (path.parent.parent / "house.yaml").write_text(house, "utf-8")
    path.write_text(pattern, "utf-8")
    return load(path, "patterns/trial/pattern.yaml")


def test_the_pattern_wins_key_by_key(tmp_path: Path) -> None:
    source, notices = under(tmp_path, HOUSE, "pattern: Trial\nwidth: 40\nsettings: {spare: 2}\n")
    assert notices == ()
    assert source is not None
    written, settings = source.written, source.written.settings
    assert (written.by, written.seam and written.seam.text) == ("The Tuesday class", "3/8")
    assert written.width is not None
    assert written.width.text == "40"
    assert (settings.spare and settings.spare.text) == "2"
    assert settings.trimming is not None
    assert settings.trimming.text == "1/4"
    assert settings.trimming.place.file == "patterns/house.yaml"


def test_inches_of_the_house_do_not_reach_a_pattern_in_centimetres(tmp_path: Path) -> None:
    source, notices = under(tmp_path, HOUSE, "pattern: Trial\nwritten-in: cm\n")
    assert notices == ()
    assert source is not None
    assert source.written.by == "The Tuesday class"
    assert source.written.seam is None
    assert source.written.settings.spare is None


@pytest.mark.parametrize(
    ("house", "said"),
    [
        ("seem: 1/4\n", "1:1: error unknown-key: `seem` is not a key of the house rules."),
        ("seam: 0.25\n", "1:7: error decimal-inches:"),
        ("pattern: Trial\n", "1:1: error unknown-key: `pattern` is not a key"),
        ("seam:1/4\n", "1:1: error yaml-space:"),
        ("settings: {cuting: plain}\n", "1:12: error unknown-key: `cuting` is not a key of the"),
        ("", "1:1: error empty-source:"),
    ],
)
def test_faults_of_the_house_are_told_at_the_house(tmp_path: Path, house: str, said: str) -> None:
    source, (notice,) = under(tmp_path, house, "pattern: Trial\n")
    assert source is None
    assert str(notice).startswith(f"patterns/house.yaml:{said}")


def test_the_house_is_found_from_the_folder_of_the_pattern(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    under(tmp_path, "seem: 1/4\n", "pattern: Trial\n")
    monkeypatch.chdir(tmp_path / "patterns" / "trial")
    _, (notice,) = load(Path("pattern.yaml"), "pattern.yaml")
    assert notice.marks[0].place.file == "../house.yaml"
