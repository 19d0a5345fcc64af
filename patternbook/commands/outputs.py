"""Finished files are written whole or not at all; a failed run leaves the last good ones alone."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from shutil import copyfile

from patternbook.commands.stop import Stopped


def write_all(folder: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Writes the files (a name may hold folders) once all of them lie complete beside their place.

    Stopped, with nothing changed, where the folder cannot be written or the disk is full.
    """
    wanted = {folder / name: content for name, content in files.items()}
    parts = {target: _beside(target, "part") for target in wanted}
    olds = {target: _beside(target, "old") for target in wanted}
    try:
        for target, content in wanted.items():
            _written(target, parts[target], content)
        for target, old in olds.items():
            if target.exists():
                copyfile(target, old)
        _replaced(parts, olds)
    except OSError as fault:
        reason = fault.strerror or type(fault).__name__
        raise Stopped(f"{folder.as_posix()} cannot be written: {reason.lower()}.") from fault
    finally:
        for left in (*parts.values(), *olds.values()):
            with suppress(OSError):
                left.unlink(missing_ok=True)
    return tuple(wanted)


def _beside(target: Path, ending: str) -> Path:
    return target.with_name(f".{target.name}.{os.getpid()}.{ending}")


def _written(target: Path, part: Path, content: bytes) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    if target.is_dir():
        raise IsADirectoryError(None, f"there is a folder called {target.name}")
    with part.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _replaced(parts: Mapping[Path, Path], olds: Mapping[Path, Path]) -> None:
    """Puts all in place; where that ends in the middle, the old ones are put back."""
    done: list[Path] = []
    try:
        for target, part in parts.items():
            done.append(target)
            part.replace(target)
    except BaseException:
        for target in done:
            with suppress(OSError):
                if olds[target].exists():
                    olds[target].replace(target)
                else:
                    target.unlink(missing_ok=True)
        raise
