"""Finished files are written whole or not at all; a failed run leaves the last good ones alone."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from patternbook.commands.stop import Stopped


def write_all(folder: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Writes the files (a name may hold folders) once all of them lie complete beside their place.

    Stopped, with nothing changed, where the folder cannot be written or the disk is full.
    """
    wanted = {folder / name: content for name, content in files.items()}
    beside = {target: target.with_name(f".{target.name}.{os.getpid()}.part") for target in wanted}
    try:
        for target, content in wanted.items():
            _written(target, beside[target], content)
        for target, part in beside.items():
            part.replace(target)
    except OSError as fault:
        reason = fault.strerror or type(fault).__name__
        raise Stopped(f"{folder.as_posix()} cannot be written: {reason.lower()}.") from fault
    finally:
        for part in beside.values():
            with suppress(OSError):
                part.unlink(missing_ok=True)
    return tuple(wanted)


def _written(target: Path, part: Path, content: bytes) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    if target.is_dir():
        raise IsADirectoryError(None, f"there is a folder called {target.name}")
    with part.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
