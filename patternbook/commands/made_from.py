"""What a booklet was made from, so that one that would come out the same is not made again."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from functools import cache
from hashlib import sha256
from importlib.metadata import distributions
from pathlib import Path
from typing import Final

from patternbook.commands.sources import Source
from patternbook.shipped import shipped

RECORD: Final = ".made-from.json"


def key(source: Source, choices: Sequence[str]) -> str:
    """One number for all that a booklet rests on: its folder, the house rules, us, the choices."""
    home = source.path.resolve().parent
    house = home.parent / "house.yaml"
    look = home.parent / "look"
    parts = [*_contents(home), *_contents(look), house.read_bytes() if house.is_file() else b""]
    return _digest([_ours(), *(choice.encode() for choice in choices), *parts])


def fresh(folder: Path, wanted: str) -> tuple[Path, ...]:
    """The files made before from the same, where they lie there untouched; else none."""
    try:
        record = json.loads((folder / RECORD).read_text("utf-8"))
        made: dict[str, str] = record["files"]
        same = record["key"] == wanted and all(
            _digest([(folder / name).read_bytes()]) == digest for name, digest in made.items()
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return ()
    return tuple(folder / name for name in made) if same else ()


def record_of(wanted: str, files: Mapping[str, bytes]) -> bytes:
    """The record to lay beside the files."""
    digests = {name: _digest([content]) for name, content in files.items()}
    return json.dumps({"key": wanted, "files": digests}, indent=2).encode()


def _contents(folder: Path) -> Iterable[bytes]:
    for file in sorted(folder.rglob("*")):
        if file.is_file():
            yield file.relative_to(folder).as_posix().encode(errors="surrogateescape")
            with suppress(OSError):  # what cannot be read goes into no booklet
                yield file.read_bytes()


@cache
def _ours() -> bytes:
    """Our own code and templates, and the version of every library beside them."""
    code = sorted(Path(__file__).parents[1].rglob("*.py"))
    versions = sorted(f"{one.name} {one.version}" for one in distributions())
    parts = [*(file.read_bytes() for file in code), *_contents(shipped("templates"))]
    return _digest([*parts, *map(str.encode, versions)]).encode()


def _digest(parts: Iterable[bytes]) -> str:
    total = sha256()
    for part in parts:
        total.update(len(part).to_bytes(8, "big") + part)
    return total.hexdigest()
