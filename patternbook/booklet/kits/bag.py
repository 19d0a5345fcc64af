"""The bag of one kit: what is in it, to be ticked off, and a label to clip to each letter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Figure, Row, Table
from patternbook.booklet.kits.book import KitBook, called, cloth_of
from patternbook.booklet.labels import Label, used_in
from patternbook.booklet.parts.cover import revision
from patternbook.cutting.kits_bag import Bagged
from patternbook.cutting.records import BINDING
from patternbook.diagrams.naming import name as drawn
from patternbook.inch import System

# A count and a size never stand side by side, so that none is read for the other.
HEAD = ("Letter", "How many", "Fabric", "Cut size", "In the bag")


@dataclass(frozen=True)
class Bag:
    """The list of one bag, and its labels."""

    title: str
    intro: str
    table: Table
    blanks: tuple[str, ...]
    labels_title: str
    labels_intro: str
    labels: tuple[Label, ...]


def in_the_bag(kits: KitBook) -> Bag:
    """One kit, whatever their number."""
    rows = (*map(_row, [kits.system] * len(kits.bag), kits.bag), *_layers(kits))
    copies = f" Print them {kits.number} times." if kits.number > 1 else ""
    return Bag(
        "In each bag",
        f"{kits.book.heading.pattern}, {kits.size}, {_lower(revision(kits.book))}. Count every "
        "letter into the bag and tick it off; put this list in with it.",
        Table("", HEAD, tuple(rows), ("number", "words", "words", "words")),
        ("Packed by", "Counted again by", "Date"),
        "Labels for one kit",
        f"Cut the labels out and clip each to its pile.{copies}",
        tuple(_label(kits, line) for line in kits.bag),
    )


def _lower(words: str) -> str:
    return words[:1].lower() + words[1:]


def how_many(line: Bagged, number: int) -> str:
    """`15`, `5 strips`, `12 triangles`, for so many kits."""
    count = line.number * number
    if line.kind == "strips":
        return wording.counted(count, "strip")
    return wording.counted(count, "triangle") if line.diagonal else str(count)


def how_large(system: System, line: Bagged) -> str:
    """The cut size; of a triangle that of the square it is cut from."""
    return f"{_size(system, line)}{_besides(system, line)}"


def _size(system: System, line: Bagged) -> str:
    size = wording.cut_size(line.size, system)
    return f"from a {wording.shape(line.size)} {size}" if line.diagonal else size


def _besides(system: System, line: Bagged) -> str:
    """What else there is to say of strips."""
    if line.last is not None:
        return f", one of them {wording.length(line.last, system)} or longer"
    return ", to be joined" if line.join else ""


def _row(system: System, line: Bagged) -> Row:
    cells = how_many(line, 1), cloth_of(line.fabric), how_large(system, line), ""
    return Row(called(line.letter), cells)


def _layers(kits: KitBook) -> Iterator[Row]:
    """Web, and backing and batting where kits hold them too."""
    one, system = kits.plan.one, kits.system
    if one.backing:
        panels = wording.counted(one.backing.best.panels, "length")
        each = wording.length(one.backing.best.each, system)
        cells = panels, cloth_of(one.backing.fabric), each, ""
        yield Row("Backing, if it is in the kit", cells)
    if one.batting:
        size = wording.cut_size(one.batting.size, system)
        cells = "1", wording.NONE, f"{size} or larger", ""
        yield Row("Batting, if it is in the kit", cells)
    for name, web in one.webs.items():
        length = wording.length(web.length, system)
        yield Row("Fusible web", (wording.counted(1, "length"), cloth_of(name), length, ""))


def _label(kits: KitBook, line: Bagged) -> Label:
    figure = kits.book.figure(drawn("kit-piece", line.letter))
    return Label(
        letter=called(line.letter),
        fabric=cloth_of(line.fabric),
        picture=Figure(figure.name, figure.alt, "", figure.inches) if figure else None,
        cut=_size(kits.system, line),
        number=f"{_told(line)}{_besides(kits.system, line)}",
        use="" if line.letter == BINDING else used_in(kits.known, line.letter),
        size=f"{kits.book.heading.pattern}, {kits.size}, revision {kits.book.heading.revision}",
    )


def _told(line: Bagged) -> str:
    """`15 pieces`."""
    if line.kind == "patches" and not line.diagonal:
        return wording.counted(line.number, "piece")
    return wording.counted(line.number, "length") if line.kind == "lengths" else how_many(line, 1)
