"""The same sources give the same bytes wherever, whenever and by whomever they are built, and
nothing in them tells of the machine."""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Mapping
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import DecodedStreamObject, StreamObject

from tests.support import ROOT

# Stands in the name of every folder and of the user, and nowhere in a pattern.
MARK = "wolpertinger"
PLACES: Mapping[str, dict[str, str]] = {
    f"{MARK}-one": {"TZ": "UTC", "LC_ALL": "C", "PYTHONHASHSEED": "0"},
    f"{MARK} two": {"TZ": "Pacific/Kiritimati", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "1"},
    f"{MARK} (3)/deep/down": {
        "TZ": "America/St_Johns",
        "LC_ALL": "C",
        "PYTHONUTF8": "0",
        "PYTHONHASHSEED": "4000000000",
    },
}
BUILT = ["patterns/late-returns", "patterns/tea-at-four"]
BUILD = ["build", *BUILT, "--size", "throw", "--paper", "a4", "--out", "out", "--quiet"]
TELL = [["check", "--json"], ["figures", "patterns/tea-at-four", "--json"]]
FOLDERS = [Path.home(), sys.prefix, tempfile.gettempdir(), "/root", "/home/", "/work/", "/usr/"]
MACHINE = [MARK, str(ROOT), *map(str, FOLDERS)]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Mapping[str, bytes]]:
    """By place: every file that was built there, and what the commands said."""
    home = tmp_path_factory.mktemp(MARK)
    running = {}
    for place, own in PLACES.items():
        folder = home / place
        shutil.copytree(ROOT / "patterns", folder / "patterns")
        person = {"HOME": str(folder), "USER": MARK, "LOGNAME": MARK, "PYTHONPATH": str(ROOT)}
        running[place] = [
            call(words, folder, os.environ | person | own) for words in (BUILD, *TELL)
        ]
    return {place: results(home / place, calls) for place, calls in running.items()}


def call(words: list[str], folder: Path, env: Mapping[str, str]) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, "-m", "patternbook", *words],
        cwd=folder,
        env=env,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )


def results(folder: Path, calls: list[subprocess.Popen[bytes]]) -> dict[str, bytes]:
    found = {}
    for ran in calls:
        said, complaint = ran.communicate(timeout=300)
        assert ran.returncode == 0, complaint.decode()
        found[" ".join(map(str, ran.args[3:] if isinstance(ran.args, list) else ()))] = said
    for path in sorted((folder / "out").rglob("*")):
        if path.is_file():
            found[path.relative_to(folder).as_posix()] = path.read_bytes()
    return found


def test_the_same_bytes_everywhere(made: Mapping[str, Mapping[str, bytes]]) -> None:
    first, *others = made.values()
    assert sum(name.endswith(".pdf") for name in first) == 2
    assert sum(name.endswith(".json") for name in first) >= 2
    for other in others:
        assert other.keys() == first.keys()
        assert [name for name in first if other[name] != first[name]] == []


def test_nothing_tells_of_the_machine(made: Mapping[str, Mapping[str, bytes]]) -> None:
    for name, content in made[f"{MARK} two"].items():
        for text in insides(content):
            assert [word for word in MACHINE if word in text] == [], name


def test_words_in_a_packed_stream_would_be_found() -> None:
    """The search itself: what is planted in a stream is not in the raw bytes, and is found."""
    writer = PdfWriter()
    writer.add_blank_page(72, 72)
    stream = DecodedStreamObject()
    stream.set_data(b"BT (planted words) Tj ET")
    writer._add_object(stream.flate_encode())
    out = BytesIO()
    writer.write(out)
    assert b"planted words" not in out.getvalue()
    assert any("planted words" in text for text in insides(out.getvalue()))


def insides(content: bytes) -> Iterator[str]:
    """All text of a file: of a PDF also its pages' words, its strings, and its streams unpacked."""
    yield content.decode("latin-1")
    if content.startswith(b"%PDF"):
        reader = PdfReader(BytesIO(content))
        yield from (page.extract_text() for page in reader.pages)
        yield repr(reader.metadata)
        for number in range(1, int(str(reader.trailer["/Size"]))):
            thing = reader.get_object(number)
            yield repr(thing)
            if isinstance(thing, StreamObject):
                data = bytes(thing.get_data())
                yield data.decode("latin-1")
                yield data.decode("utf-16-be", "ignore")
