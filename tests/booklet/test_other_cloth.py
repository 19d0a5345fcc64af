"""What the booklet says of other cloth: pre-cuts instead, narrower, one-way, washed, on trust."""

from pathlib import Path

from patternbook.booklet.book import Book
from patternbook.booklet.parts.notes import notes
from patternbook.booklet.parts.requirements import requirements
from tests.booklet.small import book, written

SP = "\N{NO-BREAK SPACE}"
STOOP = """
    pattern: Stoop
    width: 42
    settings: {spare: 3, shrinkage: 5%}
    sizes:
      mat: {finished: 12 x 56, across: 2, down: 4}
      rug: {finished: 24 x 56, across: 4, down: 4}
    fabrics:
      coal: {use: bars, prints: 2}
      penny: {use: squares, form: squares, size: 5 square}
      chalk: {use: squares, form: squares, size: 5 square, pack: 42}
      rope: {use: binding}
      back: {use: backing, form: wide backing}
    pieces:
      A: {fabric: coal, cut: 6 1/2 x 10 1/2}
      B: {fabric: penny, cut: 4 1/2 square}
      C: {fabric: chalk, cut: 2 1/2 x 4 1/2}
    units:
      step: {rows: [B C]}
      stair:
        columns: [A step]
    top: {rows: [stair], across: across, down: down}
    backing: {fabric: back}
    binding: {fabric: rope, cut: 2 1/2 x WOF}
    """


def stoop(folder: Path, *sizes: str) -> Book:
    """The booklet with all that a full run works out."""
    return book(written(folder, STOOP, full=True), *sizes)


def plain(words: object) -> str:
    return str(words).replace(SP, " ")


def test_what_would_do_instead_is_told_in_one_line_a_fabric(tmp_path: Path) -> None:
    """Own sums: a quarter gives 2 bars of 6½ × 10½ and more, each print's apart."""
    assert [plain(line) for line in requirements(stoop(tmp_path)).instead] == [
        "Coal, instead: fat quarters (18 × 21″): mat 2, rug 4, with none to spare.",
        "Penny, instead: mat ¼ yd, rug ⅜ yd off the bolt, or 1 fat quarter, with none to spare.",
        "Chalk, instead: ¼ yd off the bolt, or 1 fat quarter, with none to spare.",
        "Rope, instead: 2 fat quarters, or strips (2½ × 40″): mat 4, rug 5, with none to spare.",
    ]


def test_a_copy_for_one_size_names_no_other(tmp_path: Path) -> None:
    lines = [plain(line) for line in requirements(stoop(tmp_path, "mat")).instead]
    assert lines[0] == "Coal, instead: 2 fat quarters (18 × 21″), with none to spare."
    assert not any("rug" in line for line in lines)


def test_what_the_packet_alone_knows_is_on_trust(tmp_path: Path) -> None:
    made = stoop(tmp_path)
    known = "how many squares a pack holds, and whether they measure so to the points of a pinked"
    assert [plain(line) for line in requirements(made).remarks][1:] == [
        f"On trust (Penny): {known} edge or to its valleys. Read the packet, and count.",
        "On trust (Chalk): 42 squares to a pack. Read the packet, and count.",
    ]
    packs = {plain(row.head): plain(row.cells[0]) for row in requirements(made).table.rows}
    assert packs["Penny (squares): B"] == "see the packet"


def test_wide_backing_is_told_with_its_width(tmp_path: Path) -> None:
    """108 less 5 in the hundred and two selvedges of 1 in: 100.6, 100½ on the ruler."""
    rows = {
        plain(row.head): plain(row.cells[0]) for row in requirements(stoop(tmp_path)).table.rows
    }
    assert rows["Back (backing), 100½″ wide, 4″ over each side"] == "⅝ yd or 0.6 m"


def test_what_is_over_is_told_as_pieces_too(tmp_path: Path) -> None:
    """Own sum: 80 squares of 2½ are 5 strips, 12½ in; with 3 spare 15½, bought 18 (½ yd); 5 are
    over but the ½ for the edge: 2 strips of 16."""
    made = written(
        tmp_path,
        """
        pattern: Over
        fabrics: {plain: {use: all}}
        pieces: {A: {fabric: plain, cut: 2 1/2 square}}
        top: {rows: [A], across: 8, down: 10}
        """,
    )
    (row,) = requirements(book(made)).spare.rows
    assert (row.head, plain(row.cells[0])) == ("Plain (all)", "5″ (32 A)")


def test_the_notes_give_the_rules_and_what_other_cloth_takes(tmp_path: Path) -> None:
    """Own sums, 5 % shrunk: four bars of 10½ lie in 42, three in 41: 3 strips of 6½ and 3 spare
    are 22½, 23¾ before washing, ¾ yd. Upright six lie in a strip of 10½: 2 strips, 24, 25⅜, ¾."""
    words = {note.head: plain(note.words) for half in notes(stoop(tmp_path)).notes for note in half}
    assert words["Width of fabric"].endswith(
        "Of narrower cloth more is needed. Cloth 41″ wide or less: buy Coal ¾ yd (mat), "
        "1¼ yd (rug)."
    )
    assert words["Washing"].startswith("The amounts count on fabrics that are washed")
    assert words["Amounts"].endswith(
        "Washing is taken to shorten cloth off the bolt by 5%: what is needed is divided by "
        "1 − 5⁄100. Of a one-way print buy Coal ¾ yd (mat), 1⅛ yd (rug)."
    )
