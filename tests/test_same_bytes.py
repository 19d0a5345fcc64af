"""The same source gives the same bytes, wherever, whenever and in whatever language it is built;
and no output says where that was."""

import os
import re
import shutil
import subprocess
import sys
import zlib
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from tests.support import ROOT

HOMES = {"plain": "UTC", "with a space": "Asia/Kolkata"}


def surroundings(home: str) -> dict[str, str]:
    """Another time zone, hash seed, language and time of the build for each folder."""
    plain = home == "plain"
    kept = {name: os.environ[name] for name in ("PATH", "HOME") if name in os.environ}
    return kept | {
        "PYTHONPATH": str(ROOT),
        "PYTHONHASHSEED": "0" if plain else "4711",
        "TZ": HOMES[home],
        "LC_ALL": "C.UTF-8" if plain else "C",
        "LANG": "C.UTF-8" if plain else "de_DE.UTF-8",
        "SOURCE_DATE_EPOCH": "1" if plain else "2000000000",
    }


def said(home: Path, *words: str) -> str:
    """What the command says on standard output, run in a folder."""
    ran = subprocess.run(
        [sys.executable, "-m", "patternbook", *words],
        cwd=home,
        env=surroundings(home.name),
        capture_output=True,
        check=False,
        encoding="utf-8",
    )
    assert ran.returncode == 0, ran.stderr
    return ran.stdout


@pytest.fixture(scope="module")
def homes(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Two folders with the demos, both built: once by folder, once by the source's full path."""
    base = tmp_path_factory.mktemp("same")
    for name in HOMES:
        shutil.copytree(ROOT / "patterns", base / name / "patterns")
    plain, other = (base / name for name in HOMES)
    said(plain, "build", "--out", "out", "--quiet")
    sources = sorted(str(path) for path in (other / "patterns").glob("*/pattern.yaml"))
    said(other, "build", *sources, "--out", str(other / "out"), "--quiet")
    return {name: base / name for name in HOMES}


def files(home: Path) -> Mapping[str, bytes]:
    """All files that were built, by their name below the folder of outputs."""
    out = home / "out"
    found = sorted(path for path in out.rglob("*") if path.is_file())
    return {str(path.relative_to(out)): path.read_bytes() for path in found}


def test_the_same_bytes(homes: dict[str, Path]) -> None:
    one, other = (files(home) for home in homes.values())
    assert any(name.endswith(".pdf") for name in one)
    assert one.keys() == other.keys()
    assert [name for name in one if one[name] != other[name]] == []


@pytest.mark.parametrize("command", ["check", "figures"])
def test_the_same_words_for_programs(homes: dict[str, Path], command: str) -> None:
    one, other = (said(home, command, "patterns/late-returns", "--json") for home in homes.values())
    assert one == other


def readable(data: bytes) -> Iterator[bytes]:
    """A file, and all that is packed in it."""
    yield data
    for match in re.finditer(rb"stream\r?\n(.*?)\r?\nendstream", data, re.DOTALL):
        try:
            yield zlib.decompress(match[1])
        except zlib.error:
            continue


def test_no_output_says_where_it_was_made(homes: dict[str, Path]) -> None:
    told = re.compile(b"|".join(re.escape(str(path).encode()) for path in (ROOT, Path.home())))
    for home in homes.values():
        here = home.parent.name.encode()
        for name, data in files(home).items():
            for part in readable(data):
                assert here not in part, name
                assert not told.search(part), name
