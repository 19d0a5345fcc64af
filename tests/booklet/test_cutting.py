"""The cutting in words: sentences for one size, charts for several, tables of shared strips."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.booklet.book import Book, Table
from patternbook.booklet.chart_strips import strips
from patternbook.booklet.cut_sentences import CutFrom, sentences
from patternbook.booklet.html import parts
from patternbook.booklet.parts.cutting import SizeChart, cutting
from patternbook.booklet.style_words import how_planned
from patternbook.cutting.records import Cut, Strip
from patternbook.edition.pipeline import examine
from patternbook.proof.evidence import Evidence
from tests.booklet.cabin import CABIN, SHELF
from tests.booklet.small import book, demo, written
from tests.support import ROOT, Golden

SP = "\N{NO-BREAK SPACE}"
TWO = "(two rulers side by side)"
BESIDE = "from what is left beside the lengths"


def lines(cut: tuple[CutFrom, ...]) -> list[str]:
    """As they stand on the page, pieces behind a hyphen."""
    return [line.replace(SP, " ") for line in _lines(cut)]


def _lines(cut: tuple[CutFrom, ...]) -> Iterator[str]:
    for fabric in cut:
        yield fabric.title
        for one in fabric.strips:
            yield one.words
            yield from (f"- {piece}" for piece in one.pieces)


def of(name: str, size: str) -> list[str]:
    return lines(sentences(demo(name).sizes[size]))


def rows(table: Table) -> list[tuple[str, ...]]:
    return [tuple(cell.replace(SP, " ") for cell in (row.head, *row.cells)) for row in table.rows]


def test_strips_first_and_from_these_the_pieces() -> None:
    """The customary form: from a fabric so many strips, from these so many pieces with their
    letter ("Cutting day", hazelsdiary.wordpress.com, 2019-03-26); counts written as words, so
    that none stands beside a size (a submission guideline asks for that,
    wanderingwolfdesign.com/agreements/gdln-kn-cro.txt)."""
    assert of("tea-at-four", "lap") == [
        "From tea:",
        "Six strips, 3½″ × width of fabric (A). Leave them whole.",
        "Three strips, 2½″ × width of fabric; from these, in stacks of up to four layers, cut",
        "- 42 squares, 2½ × 2½″ (T)",
        "From milk:",
        "Six strips, 3½″ × width of fabric (B). Leave them whole.",
        "From linen:",
        "Twelve strips, 2½″ × width of fabric; from these, in stacks of up to four layers, cut",
        "- 71 rectangles, 2½ × 6½″ (S)",
        "From saucer:",
        "Six strips, 4½″ × width of fabric (F), cut later to your measure.",
        "Six strips, 2½″ × width of fabric, for the binding.",
    ]


def test_where_letters_share_a_strip_each_strip_is_told() -> None:
    told = of("late-returns", "throw")
    assert told[1:6] == [
        "Eleven pre-cut strips, 2½ × 40″; from each, in stacks of up to four layers, cut",
        "- four rectangles, 8½ × 2½″ (A)",
        "- one rectangle, 4½ × 2½″ (C)",
        "One pre-cut strip, 2½ × 40″; from it cut",
        "- two rectangles, 8½ × 2½″ (A)",
    ]


def test_folds_rulers_and_joins_are_told_where_they_matter() -> None:
    told = of("late-returns", "throw")
    assert told[told.index("From floor:") + 1 :][:2] == [
        f"One strip, 8½″ × width of fabric {TWO}; from it, folded in two layers, cut",
        "- two rectangles, 8½ × 18½″ (D)",
    ]
    assert "- one rectangle, 4½ × 30½″ (H), measured 15¼″ from a fold" in told
    joined = told.index(
        "Eleven strips, 5″ × width of fabric; join them end to end with straight seams; from "
        "these cut"
    )
    assert told[joined + 1] == "- six rectangles, 5 × 70½″ (S), measured with a tape"


@pytest.mark.parametrize(
    ("source", "size", "said"),
    [
        (
            "13-square-in-square", "crib",
            "- 60 squares, 3¾ × 3¾″ (B); cut each once on the diagonal, into 120 triangles in all",
        ),
        ("17-panel", "small", "One panel, 23½ × 41½″, used whole (P)."),
        ("15-cut-apart-nine", "lap", "Eleven squares, 5 × 5″, used whole (C)."),
        ("15-cut-apart-nine", "lap", "- two strips, 2½″ wide, for the binding"),
        ("03-rail-fence", "crib", "Seven strips, 2½″ × width of fabric (A). Leave them whole."),
    ],
)  # fmt: skip
def test_triangles_panels_squares_and_strip_sets(source: str, size: str, said: str) -> None:
    path = ROOT / f"tests/data/kinds/{source}.yaml"
    assert said in lines(sentences(examine(path, path.name).sizes[size]))


@pytest.mark.parametrize("name", ["late-returns", "tea-at-four"])
def test_no_count_stands_beside_a_size(name: str) -> None:
    """Reader complaint 16: never `2 6½`."""
    for size in demo(name).sizes:
        for line in of(name, size):
            first, second, *_ = line.removeprefix("- ").split()
            assert not second[0].isdigit(), (first, line)


def test_one_size_has_sentences_and_several_have_charts(tmp_path: Path, golden: Golden) -> None:
    examined = written(tmp_path)
    alone, several = cutting(book(examined, "rug")).sizes[0], cutting(book(examined)).sizes[1]
    assert (bool(alone.tables), bool(alone.cut)) == (False, True)
    assert (bool(several.tables), bool(several.cut)) == (True, False)
    golden(parts(book(examined, "rug"))["cutting"], "booklet/cutting-rug.html")


# ---- lengths of logs


def cabin(tmp_path: Path, *sizes: str) -> SizeChart:
    return cutting(book(written(tmp_path, CABIN), *sizes)).sizes[0]


def test_the_lengths_of_logs_have_a_small_table(tmp_path: Path) -> None:
    """Own arithmetic: a centre of 2 in finished, logs 1 in: the light ones are cut 2½, 3½, 4½
    and 5½ in, four of each; six of 5½ are 33, and with one of 4½ 37½ of 40."""
    light, dark = cabin(tmp_path).lengths
    assert light.head == ("Strips of A", "5½″", "4½″", "3½″", "2½″")
    assert rows(light)[-1] == ("In all", "4", "4", "4", "4")
    assert rows(light)[0] == ("1 strip", "4", "4", "–", "–")
    assert rows(dark)[-1] == ("In all", "4", "4", "4", "4")
    assert [chart.head for chart in cabin(tmp_path).lengths] == [light.head, dark.head]
    assert cabin(tmp_path).remarks[0].startswith("Sort the lengths and label each pile")


def test_the_sentence_of_logs_sends_to_the_table(tmp_path: Path) -> None:
    page = cabin(tmp_path, "mat")
    assert (
        "Two strips, 1½″ × width of fabric (A). Cut them into lengths: see the table below."
        in lines(page.cut)
    )
    assert len(page.lengths) == 2


# ---- shared and thrifty strips


def shelf(tmp_path: Path, style: str = "shared") -> Book:
    return book(written(tmp_path, SHELF.replace("STYLE", style), full=True))


def test_shared_strips_are_told_strip_by_strip(tmp_path: Path) -> None:
    """Own arithmetic: a 12½ in strip holds four B (30) and one D (6½); D lies in two widths."""
    chart = cutting(shelf(tmp_path)).sizes[1]
    letters, order, binding = chart.tables
    assert letters.head == ("From oak", "Pieces", "Cut size")
    assert sorted(rows(letters)) == [
        ("A", "4", "12½ × 9½″"), ("B", "4", "12½ × 7½″"), ("D", "8", "6½ × 5½″"),
    ]  # fmt: skip
    assert order.head == ("In order", "Strips", "Wide", "Each gives")
    assert [row[0] for row in rows(order)] == ["1", "2", "3"]
    assert sorted(row[1:] for row in rows(order)) == [
        ("1", "12½″", "four A"),
        ("1", "12½″", "four B and one D"),
        ("1", "6½″", "seven D"),
    ]
    assert rows(binding) == [("Binding", "–", "whole strips", "6", "2½″")]


def test_plain_cutting_keeps_the_chart_of_letters(tmp_path: Path) -> None:
    chart = cutting(shelf(tmp_path, "plain")).sizes[1]
    assert [len(table.head) for table in chart.tables] == [5, 5]


TRIED = """
    pattern: Squares
    settings: {cutting: shared, spare: 0, straightening: 0}
    sizes: {small: {a: 5}, large: {a: 6}}
    fabrics:
      oak: {use: squares, width: 40}
      ash: {use: more squares, width: 40}
    pieces:
      A: {fabric: oak, cut: 7 square, count: a}
      B: {fabric: oak, cut: 5 square, count: 1}
      C: {fabric: ash, cut: 8 square, count: 5}
    """


def test_what_was_found_by_trying_is_told_as_such(tmp_path: Path) -> None:
    """Own arithmetic: five squares of 7 are 35, with one of 5 behind them 40: 7 of cloth. A sixth
    takes a second strip, 14; by area 6 × 49 + 25 = 319 over 40 is 8, and that is all that prices
    show, for half a seventh strip is worth little. Five of 8 are 40, and no less than 8."""
    examined = written(tmp_path, TRIED, full=True)
    said = how_planned(book(examined))
    assert "No cutting of this kind needs less to be bought. For Oak (large) this was found" in said
    assert "and no such cutting can be made of them. For all other cloth a sum shows it." in said
    assert "by trying" not in how_planned(book(examined, "small"))


def test_plain_cutting_claims_nothing(tmp_path: Path) -> None:
    plain = written(tmp_path, TRIED.replace("shared", "plain"), full=True)
    assert "trying" not in how_planned(book(plain))


def by_hand(*cut: Strip) -> Evidence:
    """The throw of Late Returns with other strips for its floor."""
    known = demo("late-returns").sizes["throw"]
    floor = replace(known.cutting.fabrics["floor"], strips=cut, style="thrifty")
    fabrics = {"floor": floor}
    return replace(known, cutting=replace(known.cutting, fabrics=fabrics))


def test_lengthwise_beside_and_stacked_are_told_too() -> None:
    """Six S along the selvedge, D beside them, and under each of two D of 12 in a J."""
    sides = [Fraction(n, 2) for n in (141, 37, 17, 33, 9)]
    tall, wide, deep, long, low = sides
    lengthwise = Strip(tall, Fraction(40), 1, (Cut("S", Fraction(5), tall, 6),), "length")
    beside = Strip(wide, Fraction(10), 2, (Cut("D", deep, wide, 1),), beside=True)
    stack = Cut("D", wide, deep, 2, above=(Cut("J", long, low, 2),))
    known = by_hand(lengthwise, beside, Strip(Fraction(13), Fraction(40), 1, (stack,)))
    assert rows(strips(known, known.cutting.fabrics["floor"])) == [
        ("1, lengthwise", "1", "70½″", "six S"),
        ("2, beside it", "2", "18½″", "one D"),
        ("3", "1", "13″", "two D and two J"),
    ]
    assert lines(sentences(known)) == [
        "From floor:",
        "One length of fabric, 70½″ from cut to cut; from it cut",
        "- six rectangles, 5 × 70½″ (S)",
        f"Two strips, 18½ × 10″, {BESIDE}; from these, stacked in two layers, cut",
        "- two rectangles, 8½ × 18½″ (D)",
        "One strip, 13″ × width of fabric; from it, folded in two layers, cut",
        "- two rectangles, 8½ × 18½″ (D)",
        "- two rectangles, 4½ × 16½″ (J)",
    ]


# ---- the left hand


def test_the_left_hand_begins_at_the_right(tmp_path: Path) -> None:
    right = book(written(tmp_path))
    left = replace(right, hand="left")
    for one, other in zip(cutting(right).how, cutting(left).how, strict=True):
        assert one.replace("the left", "the right") == other
    assert "from the left" in " ".join(cutting(right).how)
    assert "left-handed, from the right" in parts(left)["cover"]
    assert "handed" not in parts(right)["cover"]
