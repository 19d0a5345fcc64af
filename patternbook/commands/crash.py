"""A fault of ours is written to a log file, with the versions, and told in plain words."""

from __future__ import annotations

import platform
import sys
import tempfile
from collections.abc import Iterable, Sequence
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from traceback import format_exception
from typing import Final

LOG: Final = "patternbook-fault.log"
LIBRARIES: Final = ("patternbook", "pydantic", "ruamel.yaml", "matplotlib", "weasyprint", "pydyf")


def log_of(fault: BaseException, words: Sequence[str]) -> str:
    """Writes the log where the person works, else where the system keeps what is passing."""
    text = "\n".join([*_versions(), f"called with: {list(words)}", "", *format_exception(fault)])
    sorry = "patternbook: something went wrong that is our fault, not your pattern's."
    for folder in (Path(), Path(tempfile.gettempdir())):
        try:
            (folder / LOG).write_text(text, encoding="utf-8", errors="backslashreplace")
        except OSError:
            continue
        return (
            f"{sorry} The details are in {(folder / LOG).as_posix()}; please send that file to "
            "whoever gave you patternbook. Read it first: it names folders of your computer."
        )
    return f"{sorry} No log could be written. It was: {type(fault).__name__}: {fault}"


def _versions() -> Iterable[str]:
    yield f"Python {sys.version}"
    yield platform.platform()
    for name in LIBRARIES:
        try:
            yield f"{name} {version(name)}"
        except PackageNotFoundError:
            yield f"{name} is not installed"
