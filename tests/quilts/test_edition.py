"""The edition `quilting`: made from a source as any other, read back, and the same every time."""

from __future__ import annotations

from pathlib import Path

from patternbook.edition.editions import asked_for, by_name
from patternbook.edition.printing import printed
from tests.booklet.small import written


def made(folder: Path, *papers: str, size: str | None = None) -> dict[str, bytes]:
    """The files of the edition, each of which was read back without a difference."""
    files, told = printed(written(folder), papers, size, ("quilting",), lambda _: None)
    assert told == (), [str(one) for one in told]
    return dict(files)


def test_it_is_named_as_other_editions_are(tmp_path: Path) -> None:
    assert set(made(tmp_path, "a4", "letter")) == {
        "doorstep-quilting-a4.pdf",
        "doorstep-quilting-letter.pdf",
        "figures.json",
    }


def test_one_size_has_its_own(tmp_path: Path) -> None:
    assert "doorstep-mat-quilting-a4.pdf" in made(tmp_path, "a4", size="mat")


def test_the_same_source_gives_the_same_bytes(tmp_path: Path) -> None:
    assert made(tmp_path, "a4") == made(tmp_path, "a4")


def test_a_source_can_ask_for_it() -> None:
    assert asked_for(["quilting"]) == ("full", "quilting")
    assert by_name["quilting"].tells == "the quilting pages"
