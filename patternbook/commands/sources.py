"""Which sources a command is about: a file, a folder that holds one, or all of patterns/."""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from patternbook.commands.say import shortened
from patternbook.commands.stop import WrongCall

FILE: Final = "pattern.yaml"
FOLDER: Final = "patterns"


@dataclass(frozen=True)
class Source:
    """One pattern source, and its name as the person called it."""

    path: Path
    shown: str

    @property
    def slug(self) -> str:
        """The folder's name, which a pattern goes by where its source names no other."""
        return self.path.resolve().parent.name


def add_sources(parser: ArgumentParser) -> None:
    """Lets a command take any number of sources."""
    parser.add_argument(
        "sources",
        nargs="*",
        type=Path,
        metavar="SOURCE",
        help=f"a pattern source or its folder (default: all of ./{FOLDER})",
    )


def chosen(named: Sequence[Path], home: Path = Path()) -> tuple[Source, ...]:
    """The sources that were named, or all of `patterns/`; WrongCall where there is none."""
    return tuple(dict.fromkeys(map(_named, named))) if named else _all_in(home / FOLDER)


def one(named: Path) -> Source:
    """The one source that was named."""
    return _named(named)


def _named(path: Path) -> Source:
    try:
        return _found(path)
    except OSError as fault:  # a name that no file can have, a folder that may not be entered
        reason = (fault.strerror or type(fault).__name__).lower()
        raise WrongCall(f"{shortened(path.as_posix())} cannot be opened: {reason}.") from fault


def _found(path: Path) -> Source:
    if path.is_dir():
        path /= FILE
        if not path.exists():
            raise WrongCall(f"{path.parent.as_posix()} is a folder without a {FILE}.{_near(path)}")
    if not path.exists():
        raise WrongCall(f"{path.as_posix()} does not exist.")
    if not path.is_file():
        raise WrongCall(f"{path.as_posix()} is not a file.")
    return Source(path, path.as_posix())


def _near(path: Path) -> str:
    """Where a folder of patterns was named, one of them."""
    inside = sorted(path.parent.glob(f"*/{FILE}"), key=Path.as_posix)
    return f" Name one that has: {inside[0].parent.as_posix()}." if inside else ""


def _all_in(folder: Path) -> tuple[Source, ...]:
    found = sorted(folder.glob(f"*/{FILE}"), key=Path.as_posix)
    if not found:
        raise WrongCall(
            f"there is no {FOLDER}/NAME/{FILE} here. Name a source, go to the folder that "
            f"holds {FOLDER}/, or begin one with `patternbook new NAME`."
        )
    return tuple(map(_named, found))
