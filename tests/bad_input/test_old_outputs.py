"""A build that fails leaves the last good booklet as it was, byte for byte."""

import errno
import os
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from tests.support import Run

GOOD = """
pattern: Good
fabrics: {red: {use: squares}}
pieces: {A: {fabric: red, cut: 6 1/2 square}}
top: {rows: [A], across: 4, down: 5}
"""
BETTER = GOOD.replace("across: 4", "across: 5")


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A sound pattern, and we stand beside it."""
    monkeypatch.chdir(tmp_path)
    write(GOOD)


def write(text: str) -> None:
    path = Path("patterns", "good", "pattern.yaml")
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")


def outputs() -> Mapping[str, bytes]:
    return {str(path): path.read_bytes() for path in Path("build").rglob("*") if path.is_file()}


def build(run: Run, *more: str) -> int:
    return run("build", "--paper", "a4", "--quiet", *more).code


def test_an_error_in_the_source(run: Run) -> None:
    assert build(run) == 0
    good = outputs()
    assert [name for name in good if name.endswith(".pdf")] == ["build/good/good-a4.pdf"]
    for text in ("", "\0", "pattern: [", GOOD.replace("6 1/2", "0"), BETTER + "sizes: {}\n"):
        write(text)
        assert build(run) == 1
        assert outputs() == good
    Path("patterns", "good", "pattern.yaml").unlink()
    assert build(run) == 2
    assert outputs() == good


def dies_at(move: int, fault: BaseException) -> Callable[[Any, Any], None]:
    """A stand-in for the moving of finished files, that ends the program at one of them."""
    moves, move_it = [0], os.replace

    def replace(old: Any, new: Any) -> None:
        moves[0] += 1
        if moves[0] == move:
            raise fault
        move_it(old, new)

    return replace


FULL = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


@pytest.mark.parametrize(
    ("move", "fault", "code"),
    [(1, FULL, 1), (2, FULL, 1), (2, KeyboardInterrupt(), 130), (3, KeyboardInterrupt(), 130)],
)
def test_an_end_while_the_files_are_put_in_place(
    run: Run, monkeypatch: pytest.MonkeyPatch, move: int, fault: BaseException, code: int
) -> None:
    """Whether at the first, the second or the last file: none of them is new."""
    assert build(run) == 0
    good = outputs()
    write(BETTER)
    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", dies_at(move, fault))
        assert build(run) == code
    assert outputs() == good
    assert build(run) == 0
    assert outputs()["build/good/good-a4.pdf"] != good["build/good/good-a4.pdf"]


def test_the_first_build_that_fails_leaves_nothing(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "replace", dies_at(2, KeyboardInterrupt()))
    assert build(run) == 130
    assert outputs() == {}


@pytest.mark.parametrize(
    "out", ["a-file", "a-file/below", "/proc/nowhere", "build/good/good-a4.pdf"]
)
def test_a_folder_that_cannot_be_written(run: Run, out: str) -> None:
    """A file, or below one, or where the system lets nobody write."""
    Path("a-file").write_text("mine", "utf-8")
    assert build(run) == 0
    good = outputs()
    ran = run("build", "--paper", "a4", "--quiet", "--out", out)
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.startswith(f"patternbook: {out}/good cannot be written: ")
    assert Path("a-file").read_text("utf-8") == "mine"
    assert outputs() == good
