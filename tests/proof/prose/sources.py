"""Invented sources whose sentences are read, and how they are read."""

from pathlib import Path
from textwrap import indent

from patternbook.edition.pipeline import examine
from patternbook.notice import Notice

# Cups in a lattice, in two sizes: 30 cups or 48, of four squares cut 3 1/2.
CUPS = """
pattern: Cups
width: 42
sizes:
  lap: {finished: 50 x 58, across: 5, down: 6}
  throw: {finished: 58 x 74, across: 6, down: 8}
fabrics:
  tea: {use: dark squares, tone: dark, yards: {lap: 7/8, throw: 1 1/4}}
  milk: {use: light squares, tone: light}
  linen: {use: lattice, tone: medium}
  saucer: {use: border and binding, tone: medium}
  back: {use: backing}
pieces:
  A: {fabric: tea, cut: 3 1/2 x WOF}
  B: {fabric: milk, cut: 3 1/2 x WOF}
  S: {fabric: linen, cut: 2 1/2 x 6 1/2NOTE-S}
  T: {fabric: tea, cut: 2 1/2 square}
  F: {fabric: saucer, cut: 4 1/2 x WOF, join: straight}
units:
  pair: {method: strip set, from: A B, segment: 3 1/2}
  cup: {rows: [pair, pair/half]NOTE-CUP}
top:
  rows: [cup]
  across: across
  down: down
  sashing: {sash: S, stones: T, round: yes}
  borders: [{strip: F}]
backing: {fabric: back, over: 4}
batting: {over: 4}
binding: {fabric: saucer, cut: 2 1/2 x WOF}
"""

# Plain squares and half-square triangles, of one size; nothing is said of a top.
PARTS = """
pattern: Parts
width: 42
pieces:
  A: {cut: 6 1/2 square, count: 20}
  B: {cut: 6 7/8 square}
  C: {cut: 6 7/8 square}
units:
  half: {method: half-square triangles, from: B C, gives: 2, finished: 6 square, make: 20}
"""


# Quarter-square triangles that finish 5: the squares are cut 5 + 1 1/4.
HOURS = """
pattern: Hours
width: 42
fabrics: {light: {use: light}, dark: {use: dark}}
pieces:
  A: {fabric: light, cut: 6 1/4 square}
  B: {fabric: dark, cut: 6 1/4 square}
units:
  hour: {method: quarter-square triangles, from: A B, make: 8, finished: 5 square}
"""


def told(folder: Path, sentence: str, source: str = CUPS, at: str = "words") -> list[Notice]:
    """What is told of a sentence, by the prose alone; advice is left out."""
    return [one for one in all_told(folder, sentence, source, at) if one.severity != "advice"]


def all_told(folder: Path, sentence: str, source: str = CUPS, at: str = "words") -> list[Notice]:
    """What is told of a sentence, with the advice: of `words`, or of a note at S or the cup."""
    quoted = "'" + sentence.replace("'", "''") + "'"
    for spot in ("S", "CUP"):
        mark = f"NOTE-{spot}"
        source = source.replace(mark, f", note: {quoted}" if at == spot else "")
    if at == "words":
        source += "words:\n  sewing: |\n" + indent(sentence, "    ") + "\n"
    path = folder / "pattern.yaml"
    path.write_text(source.lstrip(), "utf-8")
    notices = examine(path, "p.yaml").notices
    return [one for one in notices if one.code in CODES]


_TOLD = """
    said-length said-unlabelled said-yards said-count said-number sum-wrong said-equivalent
    count-beside-size two-units said-off-ruler other-word unknown-abbreviation no-such-step
    typed-step typed-page no-such-figure"""
CODES = frozenset(_TOLD.split())
