"""What the README says to paste is what CI runs, and what it shows is what happens."""

import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from patternbook.cli import COMMANDS
from tests.support import PACKAGE, ROOT, Run, WritePattern, imports

README = (ROOT / "README.md").read_text("utf-8")
CI = (ROOT / ".ci" / "run").read_text("utf-8")


def debian_lines() -> list[str]:
    """The lines to paste on Debian, in order."""
    return [line for line in README.splitlines() if line.startswith("apt-get ")]


def installs(line: str) -> list[str]:
    """What a line asks Debian for."""
    step = next(part for part in line.split(" && ") if part.startswith("apt-get install"))
    return [word for word in shlex.split(step)[2:] if not word.startswith("-")]


def test_two_lines_to_paste_first_the_booklets_then_the_tests() -> None:
    demo, tests = debian_lines()
    assert demo.endswith("patternbook build --demo")
    for tool in ("ruff check .", "mypy", "pytest -n 2"):
        assert f".venv/bin/{tool}" in tests
    assert installs(demo) == installs(tests)


def test_ci_runs_the_readme_test_line_itself() -> None:
    """The words of .ci/run that pick the line are run here, and must find the README's own."""
    pick = re.search(r"^line=\$\((.*)\)$", CI, re.MULTILINE)
    assert pick
    found = subprocess.run(
        ["bash", "-c", pick[1]], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert found.stdout.strip() == debian_lines()[1]
    assert 'bash -o pipefail -c "$line"' in CI


@pytest.mark.parametrize(
    ("said", "code"),
    [("1 passed in 0.01s", 0), ("1 passed, 1 skipped in 0.01s", 1), ("1 failed in 0.01s", 1)],
)
def test_ci_fails_on_a_skipped_or_failed_test(tmp_path: Path, said: str, code: int) -> None:
    """The script itself is run, over a README whose test line only talks."""
    (tmp_path / ".ci").mkdir()
    (tmp_path / ".ci" / "run").write_text(CI)
    ending = "; exit 1" if "failed" in said else ""
    (tmp_path / "bin").mkdir()
    (tmp_path / "bin" / "apt-get").write_text(f"#!/bin/sh\necho '== {said} =='{ending}\n")
    (tmp_path / "bin" / "apt-get").chmod(0o755)
    (tmp_path / "README.md").write_text("**Run the tests**\n\n```sh\napt-get update\n```\n")
    ran = subprocess.run(
        ["bash", ".ci/run"], cwd=tmp_path, capture_output=True, text=True, check=False,
        env={"PATH": f"{tmp_path / 'bin'}:/usr/bin:/bin"}, stdin=subprocess.DEVNULL,
    )  # fmt: skip
    assert (ran.returncode, said in ran.stdout) == (code, True)


def test_every_command_is_in_the_table() -> None:
    assert [command.NAME for command in COMMANDS] == re.findall(
        r"^\| `patternbook (\w+)", README, re.MULTILINE
    )


def test_every_library_that_is_imported_is_declared() -> None:
    """By the name it is installed under, where that differs from the name it is imported by."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    declared = {re.split(r"[><=~! ]", line)[0] for line in project["dependencies"]}
    texts = [file.read_text("utf-8") for file in PACKAGE.rglob("*.py")]
    used = {name.split(".")[0] for text in texts for _, name in imports(text)}
    installed = {
        "ruamel": "ruamel.yaml",
        "fontTools": "fonttools",
        "typing_extensions": "typing-extensions",
        "pydantic_core": "pydantic",  # its other half, of one version with it
    }
    outside = used - sys.stdlib_module_names - {"patternbook"}
    assert {installed.get(name, name) for name in outside} == declared


def test_the_failed_check_is_what_happens(
    run: Run, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    """The starter with one measure misstated, checked; `pytest --renew` writes what is said."""
    monkeypatch.chdir(tmp_path)
    run("new", "Winter Window")
    source = Path("patterns/winter-window/pattern.yaml")
    text = source.read_text("utf-8")
    source.write_text(text.replace("measure: 6 1/2 square", "measure: 6 1/4 square"), "utf-8")
    ran = run("check")
    block = re.compile(r"(<!-- failed-check -->\n```text\n)(.*?)(```\n<!-- end -->)", re.DOTALL)
    if request.config.getoption("--renew"):
        renewed = block.sub(lambda parts: parts[1] + ran.err + parts[3], README)
        (ROOT / "README.md").write_text(renewed, "utf-8")
    shown = block.search((ROOT / "README.md").read_text("utf-8"))
    assert shown
    assert (shown[2], 1) == (ran.err, ran.code)


def test_the_fragment_to_proof_read_has_the_two_faults_told_of(
    run: Run, pattern: WritePattern
) -> None:
    fragment = README.partition("```yaml\n")[2].partition("```")[0]
    notices = run("check", pattern(fragment), "--json").json()["notices"]
    told = [(one["code"], one["needed"]) for one in notices if one["severity"] == "error"]
    assert told == [("elsewhere", "3 1/2 square"), ("chart-yield", "20")]
