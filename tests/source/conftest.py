"""A source written down, and what the reader says of it."""

from collections.abc import Callable
from pathlib import Path

import pytest

from patternbook.notice import Notice
from patternbook.source.load import Source, load
from patternbook.source.written import WrittenPattern

ReadAll = Callable[[str | bytes], tuple[Source | None, list[Notice]]]
Told = Callable[[str], list[str]]
Read = Callable[[str], WrittenPattern]


@pytest.fixture
def read_all(tmp_path: Path) -> ReadAll:

    def read(text: str | bytes) -> tuple[Source | None, list[Notice]]:
        path = tmp_path / "patterns" / "trial" / "pattern.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode() if isinstance(text, str) else text)
        source, notices = load(path, "p.yaml")
        return source, list(notices)

    return read


@pytest.fixture
def told(read_all: ReadAll) -> Told:
    """Every notice of a source, as the author reads it."""

    def tell(text: str | bytes) -> list[str]:
        source, notices = read_all(text)
        refused = any(notice.severity == "error" for notice in notices)
        assert (source is None) == refused
        return [str(notice).removeprefix("p.yaml:") for notice in notices]

    return tell


@pytest.fixture
def written(read_all: ReadAll) -> Read:
    """A source that is to be in order."""

    def read(text: str) -> WrittenPattern:
        source, notices = read_all(text)
        assert source is not None, notices
        return source.written

    return read
