"""A small machine, a reader that goes away, a hand on Ctrl-C: never a traceback."""

import os
import signal
import subprocess
import sys
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


# A small process in between: a child is charged with the memory of the one that starts it.
MEASURE = """
import os, subprocess, sys
ran = subprocess.Popen(sys.argv[1:])
_, status, used = os.wait4(ran.pid, 0)
print(os.waitstatus_to_exitcode(status), used.ru_utime + used.ru_stime, used.ru_maxrss)
"""


@pytest.mark.parametrize(("text", "said"), BOMBS.values(), ids=BOMBS)
def test_a_bomb_is_refused_at_once(tmp_path: Path, text: str, said: str) -> None:
    """The whole process, start-up included."""
    (tmp_path / "pattern.yaml").write_text(text, "utf-8")
    words = [sys.executable, "-c", MEASURE, *PATTERNBOOK, "check", str(tmp_path)]
    ran = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=True)
    code, seconds, kilobytes = map(float, ran.stdout.split())
    assert code == 1
    assert said in ran.stderr
    assert "Traceback" not in ran.stderr
    assert seconds < SECONDS
    assert kilobytes < KILOBYTES  # as Linux counts


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
    """Ctrl-C once the first booklet is there and the second begun."""
    for name in ("first", "second"):
        (tmp_path / "patterns" / name).mkdir(parents=True)
        (tmp_path / "patterns" / name / "pattern.yaml").write_text(SOUND, "utf-8")
    ran = subprocess.Popen(
        [*PATTERNBOOK, "build", "--paper", "a4", "--quiet"],
        cwd=tmp_path,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert ran.stdout is not None
    assert ran.stdout.readline() == "build/first/good-a4.pdf\n"
    ran.send_signal(signal.SIGINT)
    _, words = ran.communicate(timeout=60)
    told = "patternbook: interrupted. No file was left half written.\n"
    assert (ran.returncode, words) == (130, told)
    made = {path.parent.name for path in tmp_path.rglob("build/*/*")}
    assert made == {"first"}
