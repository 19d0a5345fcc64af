"""A small quilt in two sizes, read and planned as any other, for the tests of words and pages."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent

from patternbook.booklet.book import Book
from patternbook.edition.pipeline import Examined, examine
from patternbook.notice import failed
from tests.support import ROOT

DOORSTEP = """
    pattern: Doorstep
    summary: Four patches and a plain square, 6 1/2 x 6 1/2 as cut.
    by: Somebody
    date: 2026-11-25
    sizes:
      mat: {finished: 12 x 12, across: 2, down: 2}
      rug: {finished: 24 x 36, across: 4, down: 6}
    fabrics:
      coal: {use: dark squares, tone: dark}
      chalk: {use: ground, tone: light}
      cord: {use: binding, tone: dark}
      back: {use: backing, tone: light}
    pieces:
      A: {fabric: coal, cut: 3 1/2 x WOF}
      B: {fabric: chalk, cut: 3 1/2 x WOF}
      C: {fabric: chalk, cut: 6 1/2 square}
    units:
      pair: {method: strip set, from: A B, segment: 3 1/2, press: toward A}
      four:
        rows: [pair, pair/half]
    top:
      rows: [four C, C four]
      across: across
      down: down
    backing: {fabric: back}
    binding: {fabric: cord, cut: 2 1/2 x WOF}
    quilting:
      - {area: all over, design: straight lines, spacing: 2}
    """


def written(folder: Path, text: str = DOORSTEP, *, full: bool = False) -> Examined:
    """The source, read and planned (`full`: in shared strips too); it must have no error."""
    path = folder / "pattern.yaml"
    path.write_text(dedent(text).lstrip("\n"), "utf-8")
    examined = examine(path, "pattern.yaml", full=full)
    assert not failed(examined.notices), [str(notice) for notice in examined.notices]
    return examined


def demo(name: str) -> Examined:
    """A demonstration pattern."""
    shown = f"patterns/{name}/pattern.yaml"
    return examine(ROOT / shown, shown)


def book(examined: Examined, *sizes: str) -> Book:
    """The booklet of these sizes, or of all, without drawings."""
    assert examined.heading is not None
    names = sizes or tuple(examined.sizes)
    return Book(examined.heading, {name: examined.sizes[name] for name in names}, {}, "a4")
