"""Exit codes, and the manners of the command line at every end."""

import os
import subprocess
import sys
from argparse import Namespace
from pathlib import Path
from typing import NoReturn

import pytest

from patternbook import __version__, cli
from patternbook.commands import schema
from patternbook.commands.crash import LOG
from tests.support import Run

PATTERNBOOK = [sys.executable, "-m", "patternbook"]


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to work in."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def breaks(fault: BaseException) -> object:
    """A command that ends in a fault."""

    def run(_: Namespace) -> NoReturn:
        raise fault

    return run


def test_version(run: Run) -> None:
    assert run("--version").out == f"patternbook {__version__}\n"


@pytest.mark.parametrize("words", [[], ["chek"], ["check", "--jsn"], ["check", "--str"]])
def test_wrong_call_is_2_with_the_usage(run: Run, words: list[str]) -> None:
    ran = run(*words)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("usage: patternbook")


def test_help_of_every_command_loads_no_library() -> None:
    """Start-up is quick: what a command needs is loaded when it runs."""
    code = (
        "import sys; from patternbook.cli import main; main(['build', '--help']);"
        "print(sorted({name.split('.')[0] for name in sys.modules} & set(sys.argv[1:])))"
    )
    heavy = ["pydantic", "ruamel", "numpy", "matplotlib", "weasyprint", "jinja2", "pint"]
    ran = subprocess.run(
        [sys.executable, "-c", code, *heavy], capture_output=True, text=True, check=True
    )
    assert ran.stdout.splitlines()[-1] == "[]"


def test_a_fault_of_ours_is_3_and_logged(
    run: Run, here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(schema, "run", breaks(ZeroDivisionError("planted")))
    ran = run("schema")
    assert (ran.code, ran.out) == (3, "")
    assert "Traceback" not in ran.err
    assert LOG in ran.err
    log = (here / LOG).read_text("utf-8")
    assert "ZeroDivisionError: planted" in log
    assert f"patternbook {__version__}" in log
    assert "called with: ['schema']" in log


def test_where_the_folder_cannot_be_written_the_log_goes_elsewhere(
    run: Run, here: Path, monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory
) -> None:
    monkeypatch.setattr(schema, "run", breaks(ZeroDivisionError("planted")))
    (here / LOG).mkdir()
    passing = tmp_path_factory.mktemp("passing")
    monkeypatch.setattr("tempfile.tempdir", str(passing))
    ran = run("schema")
    assert ran.code == 3
    assert (passing / LOG).as_posix() in ran.err
    assert (passing / LOG).is_file()


def test_interrupted_is_130(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(schema, "run", breaks(KeyboardInterrupt()))
    ran = run("schema")
    assert (ran.code, ran.out) == (130, "")
    assert "interrupted" in ran.err


def test_every_command_has_its_own_file() -> None:
    folder = Path(cli.__file__).parent / "commands"
    for command in cli.COMMANDS:
        assert (folder / f"{command.NAME}.py").is_file()


@pytest.mark.parametrize("words", [["explain"], ["--help"], ["explain", "R1"]])
def test_a_reader_that_goes_away_makes_no_noise(words: list[str]) -> None:
    """As in `patternbook explain | head -1`: the pipe is closed before anything is written."""
    ours, theirs = os.pipe()
    os.close(ours)
    ran = subprocess.run(
        [*PATTERNBOOK, *words], stdout=theirs, stderr=subprocess.PIPE, text=True, check=False
    )
    os.close(theirs)
    assert (ran.returncode, ran.stderr) == (0, "")


@pytest.mark.parametrize(
    "place",
    [{"LC_ALL": "C", "PYTHONUTF8": "0"}, {"PYTHONIOENCODING": "ascii"}, {"LC_ALL": "tr_TR"}],
)
def test_the_trades_signs_are_no_fault_in_any_locale(place: dict[str, str]) -> None:
    ran = subprocess.run(
        [*PATTERNBOOK, "explain", "R1"], capture_output=True, check=False, env=os.environ | place
    )
    assert (ran.returncode, ran.stderr) == (0, b"")


def test_closed_streams_are_no_fault() -> None:
    ran = subprocess.run(
        ["sh", "-c", f"'{sys.executable}' -m patternbook explain >&- 2>&-"], check=False
    )
    assert ran.returncode == 0
