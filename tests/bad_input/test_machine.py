"""A small machine, a reader that goes away, a hand on Ctrl-C: never a traceback."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Mapping
from pathlib import Path
from textwrap import dedent

import pytest

from tests.support import ROOT

PATTERNBOOK = [sys.executable, "-m", "patternbook"]
SOUND = """
pattern: Good
fabrics: {red: {use: squares}}
pieces: {A: {fabric: red, cut: 6 1/2 square}}
top: {rows: [A], across: 4, down: 5}
"""
# Nine times nine times nine ...: 43 million words, were it ever written out.
ALIASES = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"{name}: &{name} [{', '.join([f'*{before}'] * 9)}]\n"
    for before, name in zip("abcdefg", "bcdefgh", strict=True)
)
SECONDS, KILOBYTES = 1.0, 200_000
DEEP = "".join(f"  u{n}: {{rows: [u{n + 1}*9]}}\n" for n in range(400))
BOMBS: Mapping[str, tuple[str, str]] = {
    "aliases": (ALIASES, "error anchor:"),
    "a merge of aliases": ("a: &a {x: 1}\n<<: [*a, *a]\n", "error anchor:"),
    "three thousand square brackets": ("[" * 3_000, "error too-deep:"),
    "three thousand braces": ("a: " + "{a: " * 3_000, "error too-deep:"),
    "three thousand lists": ("- " * 3_000, "error too-deep:"),
    "cells that multiply": (
        SOUND.replace("[A]", f"[{'(' * 8}A{'*99)' * 8}]"),
        "error cells [one]: ",
    ),
    "a count that multiplies": (
        SOUND.replace("across: 4", f"across: {'*'.join(['9'] * 80)}"),
        "error count-value [one]: ",
    ),
    "a unit in a unit, four hundred times": (
        SOUND.replace("top: {rows: [A]", f"units:\n{DEEP}  u400: {{rows: [A]}}\ntop: {{rows: [u0]"),
        "error too-nested [one]: ",
    ),
}


@pytest.mark.parametrize(("text", "said"), BOMBS.values(), ids=BOMBS)
def test_a_bomb_is_refused_at_once(tmp_path: Path, text: str, said: str) -> None:
    """The whole process, start-up included."""
    source = tmp_path / "pattern.yaml"
    source.write_text(text, "utf-8")
    with (tmp_path / "told").open("w+b") as told:
        ran = subprocess.Popen([*PATTERNBOOK, "check", source], cwd=ROOT, stderr=told)
        _, status, used = os.wait4(ran.pid, 0)
        ran.returncode = os.waitstatus_to_exitcode(status)
        told.seek(0)
        words = told.read().decode()
    assert ran.returncode == 1
    assert said in words
    assert "Traceback" not in words
    assert used.ru_utime + used.ru_stime < SECONDS
    assert used.ru_maxrss < KILOBYTES  # as Linux counts


def test_without_the_libraries_of_the_page(tmp_path: Path) -> None:
    """No folder holds a library for this process; `build` says what to install, `check` works."""
    (tmp_path / "pattern.yaml").write_text(SOUND, "utf-8")
    program = dedent(
        """
        import cffi, sys

        def dlopen(self, name, flags=0):
            raise OSError(f"cannot load library {name!r}: no such file")

        cffi.FFI.dlopen = dlopen
        from patternbook.cli import main
        sys.exit(main(sys.argv[1:]))
        """
    )
    env = os.environ | {"PYTHONPATH": str(ROOT), "LD_LIBRARY_PATH": str(tmp_path / "nowhere")}
    for command, code in (("check", 0), ("build", 1)):
        ran = subprocess.run(
            [sys.executable, "-c", program, command, "."],
            cwd=tmp_path,
            env=env,
            capture_output=True,
            text=True,
            check=False,
        )
        assert (ran.returncode, ran.stdout) == (code, "")
        assert "Traceback" not in ran.stderr
    assert "error no-pango: the booklet cannot be laid out" in ran.stderr
    assert "apt-get install -y --no-install-recommends libpango-1.0-0" in ran.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == ["pattern.yaml"]


def test_a_reader_that_goes_away(tmp_path: Path) -> None:
    """As in `patternbook figures . | head -1`."""
    (tmp_path / "pattern.yaml").write_text(SOUND, "utf-8")
    line = f"'{sys.executable}' -m patternbook figures '{tmp_path}' | head -1"
    ran = subprocess.run(["sh", "-c", line], cwd=ROOT, capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")
    assert ran.stdout == "Good, revision 1; lengths in inches\n"


def test_interrupted_by_hand(tmp_path: Path) -> None:
    """Ctrl-C in the middle of a long check."""
    letters = [f"{a}{b}{c}" for a in "ABCDEFGHJK" for b in "ABCDEFGHJKLMNPQ" for c in range(10)]
    pieces = "".join(f"  {letter}: {{fabric: red, cut: 6 1/2 square}}\n" for letter in letters)
    text = f"pattern: Long\nfabrics: {{red: {{use: all}}}}\npieces:\n{pieces}"
    (tmp_path / "pattern.yaml").write_text(f"{text}top: {{rows: [{' '.join(letters)}]}}\n", "utf-8")
    ran = subprocess.Popen(
        [*PATTERNBOOK, "check", tmp_path], cwd=ROOT, stderr=subprocess.PIPE, text=True
    )
    time.sleep(1.5)
    ran.send_signal(signal.SIGINT)
    _, words = ran.communicate(timeout=60)
    assert (ran.returncode, words) == (
        130,
        "patternbook: interrupted. No file was left half written.\n",
    )
