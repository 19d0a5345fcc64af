"""One helper of the quilt tests: a source text worked out without the command line."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent

from patternbook.notice import Notice, gathered
from patternbook.quilt.build import Quilts, quilts
from patternbook.source.load import load


def worked_out(folder: Path, text: str) -> Quilts:
    """All sizes of a source; faults of form fail the test."""
    path = folder / "pattern.yaml"
    path.write_text(dedent(text), "utf-8")
    source, notices = load(path, "pattern.yaml")
    assert source is not None, [str(notice) for notice in notices]
    return quilts(source.written, source.pictures)


def told(made: Quilts) -> list[Notice]:
    """The notices but advice, in order."""
    return [notice for notice in gathered(made.notices) if notice.severity != "advice"]
