"""Outputs are written whole or not at all."""

import errno
import os
from pathlib import Path

import pytest

from patternbook.commands.outputs import write_all
from patternbook.commands.stop import Stopped


def files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_writes_all_and_leaves_nothing_beside(tmp_path: Path) -> None:
    new = {"a.pdf": b"1", "pictures/top.svg": b"2"}
    assert write_all(tmp_path / "build" / "x", new) == (
        tmp_path / "build/x/a.pdf",
        tmp_path / "build/x/pictures/top.svg",
    )
    assert files(tmp_path / "build" / "x") == new


def test_the_usual_rights_of_new_files(tmp_path: Path) -> None:
    (tmp_path / "plain").write_bytes(b"")
    (made,) = write_all(tmp_path, {"a.pdf": b"1"})
    assert made.stat().st_mode == (tmp_path / "plain").stat().st_mode


@pytest.mark.parametrize("works_for", [0, 1])
def test_a_full_disk_harms_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, works_for: int
) -> None:
    """The disk is full at the first or the second file."""
    write_all(tmp_path, {"a.pdf": b"good", "b.pdf": b"good"})
    left = [works_for]

    def sync(_: int) -> None:
        left[0] -= 1
        if left[0] < 0:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", sync)
    with pytest.raises(Stopped, match="no space left"):
        write_all(tmp_path, {"a.pdf": b"new", "b.pdf": b"new"})
    assert files(tmp_path) == {"a.pdf": b"good", "b.pdf": b"good"}


def test_a_folder_in_the_way_is_found_before_anything_is_replaced(tmp_path: Path) -> None:
    write_all(tmp_path, {"a.pdf": b"good", "b.pdf/inner": b""})
    with pytest.raises(Stopped, match=r"a folder called b\.pdf"):
        write_all(tmp_path, {"a.pdf": b"new", "b.pdf": b"new"})
    assert files(tmp_path) == {"a.pdf": b"good", "b.pdf/inner": b""}


def test_a_file_where_the_folder_should_be(tmp_path: Path) -> None:
    (tmp_path / "build").write_bytes(b"mine")
    with pytest.raises(Stopped, match="build/x cannot be written"):
        write_all(tmp_path / "build" / "x", {"a.pdf": b"1"})
    assert files(tmp_path) == {"build": b"mine"}
