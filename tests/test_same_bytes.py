"""The same source gives the same bytes, wherever, whenever and in whatever locale it is built."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import StreamObject

from patternbook.commands.new import begun

# One size keeps it quick; the demonstration patterns go the same way.
SOURCE = re.sub(r", throw: \d+|\n  throw: .*", "", begun("Winter Window", "plain"))
PLACES = {
    "plain": {"TZ": "UTC", "PYTHONHASHSEED": "0", "LC_ALL": "C"},
    "a folder with spaces": {"TZ": "Asia/Tokyo", "PYTHONHASHSEED": "77", "LC_ALL": "tr_TR.UTF-8"},
}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The outputs of one build in each place, called by the whole path from elsewhere."""
    found = {}
    for name, conditions in PLACES.items():
        home = tmp_path_factory.mktemp("home") / name
        folder = home / "patterns" / "winter-window"
        folder.mkdir(parents=True)
        (folder / "pattern.yaml").write_text(SOURCE, "utf-8")
        words = ["build", str(folder), "--out", str(home / "build"), "--quiet"]
        subprocess.run(
            [sys.executable, "-m", "patternbook", *words],
            cwd=home, env=os.environ | conditions, check=True, capture_output=True,
        )  # fmt: skip
        found[name] = home / "build" / "winter-window"
    return found


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}


def test_same_bytes_everywhere(built: dict[str, Path]) -> None:
    one, other = (contents(folder) for folder in built.values())
    assert sorted(one) == sorted(other)
    assert [name for name in one if one[name] != other[name]] == []
    assert sum(name.endswith(".pdf") for name in one) == 2


def test_no_path_of_this_machine_in_any_output(built: dict[str, Path]) -> None:
    for folder in built.values():
        inside = [os.fsencode(part) for part in folder.parts[-4:-2]]
        for path in folder.iterdir():
            for text in readable(path):
                assert not [name for name in inside if name in text], path.name


def test_no_link_leads_to_a_file(built: dict[str, Path]) -> None:
    for path in built["a folder with spaces"].glob("*.pdf"):
        for text in readable(path):
            assert b"file:" not in text


def readable(path: Path) -> list[bytes]:
    """All that a file holds, with the streams of a PDF unpacked."""
    if path.suffix != ".pdf":
        return [path.read_bytes()]
    reader = PdfReader(path)
    numbers = reader.xref.get(0, {}).keys() | reader.xref_objStm.keys()
    objects = [reader.get_object(number) for number in sorted(numbers) if number]
    streams = [one.get_data() for one in objects if isinstance(one, StreamObject)]
    return [path.read_bytes(), *streams, *(repr(one).encode() for one in objects)]
