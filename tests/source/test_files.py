"""Files that hold no pattern: a notice each, and never an exception."""

import os
from pathlib import Path

import pytest

from patternbook.source.load import load
from tests.source.conftest import ReadAll, Told


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "1:1: error empty-source: the file is empty."),
        (b"  \n\n", "1:1: error empty-source: the file is empty."),
        (b"# only a comment\n", "1:1: error not-a-pattern:"),
        (b"\x00\x01\x02", "1:1: error not-text: a character that is no text"),
        (b"pattern: a\nby: b\x00c\n", "2:6: error not-text: a character that is no text"),
        (b"pattern: caf\xe9\n", "1:13: error not-text: this is not text in UTF-8."),
        ("pattern: a\n".encode("utf-16"), "1:1: error not-text: this is not text in UTF-8."),
        (b"just words\n", "1:1: error not-a-pattern:"),
        (b"- a\n- b\n", "1:1: error not-a-pattern:"),
        (b"pattern:X\n", "1:1: error yaml-space:"),
        (b"pattern: a\nnote: |\n" + b"  words\n" * 130_000, "1:1: error too-large:"),
    ],
)
def test_what_is_no_pattern(
    read_all: ReadAll,
    data: bytes,
    said: str,
) -> None:
    source, (notice,) = read_all(data)
    assert source is None
    assert str(notice).removeprefix("p.yaml:").startswith(said)


@pytest.mark.parametrize(
    "text",
    ["\ufeffpattern: Trial\n", "pattern: Trial\r\nby: Anna\r\n", "pattern: Trial\rby: Anna\r"],
    ids=["byte order mark", "Windows lines", "old Macintosh lines"],
)
def test_texts_of_other_systems(told: Told, text: str) -> None:
    assert told(text) == []


def test_a_folder_is_its_pattern(tmp_path: Path) -> None:
    (tmp_path / "pattern.yaml").write_text("pattern: Trial\nby: 5 6\nbai: 7\n", "utf-8")
    _, (notice,) = load(tmp_path, "patterns/trial/")
    assert notice.marks[0].place.file == "patterns/trial/pattern.yaml"
    source, _ = load(tmp_path / "pattern.yaml", "it")
    assert source is None


def test_files_that_are_not_there(tmp_path: Path) -> None:
    for path in (tmp_path / "none.yaml", tmp_path, tmp_path / "a\0b", Path(os.devnull)):
        source, (notice,) = load(path, "shown")
        assert (source, notice.code) == (None, "no-source")
        assert str(tmp_path) not in str(notice)


def test_a_file_that_cannot_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Refused by the system: the superuser, whom it refuses nothing, runs the tests too."""

    def refuse(*_args: object, **_more: object) -> None:
        raise PermissionError(13, "Permission denied")

    path = tmp_path / "pattern.yaml"
    path.write_text("pattern: Trial\n", "utf-8")
    monkeypatch.setattr(Path, "open", refuse)
    source, (notice,) = load(path, "p.yaml")
    assert source is None
    assert str(notice) == (
        "p.yaml:1:1: error unreadable: the file cannot be read: permission denied."
    )
