"""The libraries that lay out text, and the fonts they may see: only those that we name."""

from __future__ import annotations

import ctypes.util
import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, redirect_stdout
from io import StringIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final
from warnings import catch_warnings
from xml.sax.saxutils import escape

from patternbook.notice import Notice

INSTALL: Final = (
    "On Debian or Ubuntu: apt-get install -y --no-install-recommends libpango-1.0-0 "
    "libpangoft2-1.0-0 libharfbuzz-subset0. On macOS: brew install pango. On Windows: in MSYS2, "
    "pacman -S mingw-w64-ucrt-x86_64-pango, and its folder ucrt64\\bin named in "
    "WEASYPRINT_DLL_DIRECTORIES."
)


def missing() -> tuple[Notice, ...]:
    """A notice where the libraries that lay out text cannot be loaded."""
    try:
        # It prints advice of its own, and warns where the machine has no fonts; ours come later.
        with redirect_stdout(StringIO()), catch_warnings(action="ignore"), _unsearched():
            from weasyprint.text.ffi import harfbuzz_subset
    except OSError as fault:
        return (_missing(str(fault).partition(":")[0]),)
    # It would do without, but more slowly, and with other bytes than everywhere else.
    return () if harfbuzz_subset else (_missing("cannot load library 'libharfbuzz-subset'"),)


def _missing(said: str) -> Notice:
    message = f"the booklet cannot be laid out: {said}."
    return Notice("no-pango", "error", "booklet", message, hint=INSTALL)


def _not_found(name: str) -> None:
    """Leaves it to the loader, which knows where libraries are."""


@contextmanager
def _unsearched() -> Iterator[None]:
    """Load libraries by their names: on Linux a search for each would start a compiler."""
    found = ctypes.util.find_library
    if sys.platform.startswith("linux"):
        ctypes.util.find_library = _not_found
    try:
        yield
    finally:
        ctypes.util.find_library = found


@contextmanager
def environment(**values: str) -> Iterator[None]:
    """The process's environment with these values, put back afterwards."""
    before = {name: os.environ.get(name) for name in values}
    os.environ.update(values)
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value


@contextmanager
def private_fonts(folders: Iterable[Path]) -> Iterator[None]:
    """Let text be laid out with the fonts of these folders alone, whatever the machine has."""
    with TemporaryDirectory(prefix="patternbook-", ignore_cleanup_errors=True) as scratch:
        # Whole paths: a relative one makes fontconfig fall back to other fonts with no word.
        listed = "".join(f"<dir>{escape(str(folder.resolve()))}</dir>" for folder in folders)
        cache = f"<cachedir>{escape(scratch)}</cachedir>"
        config = Path(scratch, "fonts.conf")
        config.write_text(
            '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">'
            f"<fontconfig>{listed}{cache}</fontconfig>",
            "utf-8",
        )
        with environment(FONTCONFIG_FILE=str(config)):
            yield
