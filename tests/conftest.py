"""What all tests share: goldens renewed by one flag, commands called as functions, no luck."""

from __future__ import annotations

from difflib import unified_diff
from pathlib import Path
from textwrap import dedent

import pytest
from hypothesis import settings

from patternbook.cli import main
from tests.support import Golden, Ran, Run, WritePattern

GOLDEN = Path(__file__).parent / "golden"

# The same cases in every run: a fault found today is found tomorrow.
settings.register_profile("steady", derandomize=True, deadline=None, max_examples=100)
settings.load_profile("steady")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--renew", action="store_true", help="write the goldens anew; then read the difference"
    )


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:

    def call(*words: str | Path) -> Ran:
        capsys.readouterr()
        code = main([str(word) for word in words])
        said = capsys.readouterr()
        return Ran(code, said.out, said.err)

    return call


@pytest.fixture
def pattern(tmp_path: Path) -> WritePattern:

    def write(text: str, name: str = "trial") -> Path:
        path = tmp_path / "patterns" / name / "pattern.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(dedent(text).lstrip("\n"), "utf-8")
        return path

    return write


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:

    def compare(text: str, name: str) -> None:
        file = GOLDEN / name
        if request.config.getoption("--renew"):
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(text, "utf-8")
        if not file.exists():
            pytest.fail(f"there is no golden {name}: `pytest --renew` writes it")
        kept = file.read_text("utf-8")
        if text != kept:
            lines = unified_diff(kept.splitlines(), text.splitlines(), name, "now", lineterm="")
            pytest.fail("\n".join(lines))

    return compare
