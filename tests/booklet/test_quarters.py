"""Fat quarters in the booklet: what to buy, and how they are cut.

The sums are our own arithmetic, on quarters of 18 × 21 and eighths of 9 × 21.
"""

from pathlib import Path

from patternbook.booklet.book import Book
from patternbook.booklet.parts.cutting import cutting
from patternbook.booklet.parts.requirements import requirements
from patternbook.diagrams import drawings
from tests.booklet.small import written
from tests.diagrams.drawn import clashes, words

SP = "\N{NO-BREAK SPACE}"
BOATS = """
    pattern: Paper boats
    date: 2026-11-25
    sizes:
      cot: {finished: 36 x 48, across: 3, down: 4}
      throw: {finished: 60 x 72, across: 5, down: 6}
    fabrics:
      sails: {use: sails, form: fat quarter, prints: 3, tone: light}
      keels: {use: keels, form: fat eighth, tone: medium, packs: {cot: 5}}
      pond: {use: the pond, tone: dark}
    pieces:
      A: {fabric: sails, cut: 6 7/8 square}
      B: {fabric: pond, cut: 6 7/8 square}
      H: {fabric: sails, cut: 12 1/2 x 3 1/2}
      K: {fabric: keels, cut: 12 1/2 x 2 1/2}
      W: {fabric: pond, cut: 12 1/2 x 1 1/2}
    units:
      sail: {method: half-square triangles, from: A B, finished: 6 square, press: toward B}
      boat: {rows: [sail sail, H, K, W]}
    top:
      rows: [boat]
      across: across
      down: down
    """


def plain(text: str) -> str:
    return text.replace(SP, " ")


def boats(folder: Path) -> Book:
    examined = written(folder, BOATS)
    assert examined.heading
    made = drawings(examined.heading, examined.sizes)
    return Book(examined.heading, examined.sizes, made, "a4")


def test_they_are_bought_singly_and_are_at_least_so_large(tmp_path: Path) -> None:
    """Three keels of 2½ × 12½ lie side by side on 9, and one below the other is 25 of 21: three to
    an eighth. The cot has 12, four eighths, of which she states five; the throw 30, ten."""
    rows = {
        plain(row.head): tuple(map(plain, row.cells))
        for row in requirements(boats(tmp_path)).table.rows
    }
    assert rows["Keels: K, each at least 9 × 21″"] == ("5 fat eighths", "10 fat eighths")
    assert not any(head.endswith("needed") for head in rows)


def test_the_lay_tells_what_a_whole_quarter_gives(tmp_path: Path) -> None:
    """Three strips of two A (13¾ of 18) take 20⅝ of 21: six, not the two of one strip."""
    eighth = words(boats(tmp_path).drawings["lay-keels-cot"])
    assert "3 K, 12½ × 2½″" in eighth
    quarter = words(boats(tmp_path).drawings["lay-sails-cot"])
    assert "6 A, 6⅞ × 6⅞″" in quarter


def test_a_quarter_of_two_letters_is_drawn_in_every_size(tmp_path: Path) -> None:
    captions = [figure.caption for figure in cutting(boats(tmp_path)).lays]
    assert [one for one in captions if one.startswith("Sails")] == [
        "Sails, cot: how it is cut", "Sails, throw: how it is cut",
    ]  # fmt: skip
    assert "Keels, cot: how it is cut (the other sizes alike)" in captions


BACK = """
    pattern: Mat
    written-in: cm
    width: 107
    sizes: {cot: {finished: 84 x 108}}
    fabrics: {back: {use: backing}, river: {use: all of it}}
    pieces: {A: {fabric: river, cut: 85.5 x 109.5}}
    top: {rows: [A]}
    backing: {fabric: back, over: 10}
    """


def test_one_length_of_backing_is_labelled_below_its_measure(tmp_path: Path) -> None:
    examined = written(tmp_path, BACK)
    assert examined.heading
    made = drawings(examined.heading, examined.sizes)
    assert "1 length of 128 cm" in words(made["backings"])
    assert [*clashes(made["backings"])] == []
