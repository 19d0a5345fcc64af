"""All sources in tests/data are read: 25 kinds of quilt, probes, printed faults, and two more."""

from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.methods.layout_written import WrittenLayout
from patternbook.notice import Notice, Place
from patternbook.source.load import Source, load
from patternbook.value import LetterValue, NameValue, PerSize

DATA = Path(__file__).resolve().parent.parent / "data"
ALL = sorted(DATA.glob("*/*.yaml"))
# A fault of form: a number that reads two ways. All others are faults of arithmetic.
OF_FORM = "a69-vane-cut"
SOUND = [path for path in ALL if path.stem != OF_FORM]


def read(name: str) -> tuple[Source | None, tuple[Notice, ...]]:
    path = next(path for path in ALL if path.stem == name)
    return load(path, path.name)


def test_they_are_all_there() -> None:
    counted = {folder: len(list((DATA / folder).glob("*.yaml"))) for folder in ("kinds", "faults")}
    assert counted == {"kinds": 25, "faults": 21}


@pytest.mark.parametrize(
    "path", [path for path in ALL if path.stem != OF_FORM], ids=lambda p: p.stem
)
def test_a_source_is_read_without_a_word(path: Path) -> None:
    source, notices = load(path, path.name)
    assert source is not None
    assert notices == ()
    assert source.text == path.read_text("utf-8")


def test_two_to_four_inches_is_refused() -> None:
    """Errata case A-69: two strips of 4 inches, or strips of 2 to 4?"""
    source, (notice,) = read(OF_FORM)
    assert source is None
    assert (notice.code, notice.rule) == ("hyphen-number", "R23")
    assert notice.marks[0].place == Place("a69-vane-cut.yaml", 3, 19, 3, 32)


def test_what_was_written_is_what_is_read() -> None:
    source, _ = read("06-coins")
    assert source is not None
    written = source.written
    assert {str(size): dict(node.numbers) for size, node in written.sizes.items()} == {
        "crib": {"stacks": 3, "coins": 24},
        "throw": {"stacks": 5, "coins": 32},
    }
    coin, sash = written.pieces[LetterValue("A")], written.pieces[LetterValue("S")]
    assert coin.cut is not None
    assert coin.cut.bare is not None
    assert (coin.cut.bare.across, coin.cut.bare.down) == (Fraction(17, 2), Fraction(5, 2))
    assert sash.cut is not None
    assert sash.cut.bare is not None
    assert sash.cut.bare.down == "fit"
    assert sash.stated("join")
    assert not coin.stated("join")
    assert coin.join == PerSize(bare="diagonal")
    assert written.fabrics[NameValue("roll")].form == "strip roll"
    assert written.top is not None
    assert written.top.method == "layout"


def test_every_value_knows_where_it_stands() -> None:
    source, _ = read("06-coins")
    assert source is not None

    def words_at(place: Place) -> str:
        assert (place.file, place.line) == ("06-coins.yaml", place.end_line)
        return source.text.splitlines()[place.line - 1][place.column - 1 : place.end_column - 1]

    coin = source.written.pieces[LetterValue("A")]
    assert coin.cut is not None
    assert coin.strips is not None
    assert words_at(coin.cut.place) == "8 1/2 x 2 1/2"
    assert words_at(coin.key_places["strips"]) == "strips"
    assert words_at(coin.place) == "A"
    assert words_at(coin.strips.place) == "strips"
    assert [words_at(value.place) for _, value in coin.strips.stated()] == ["18", "40"]
    assert [words_at(letter.place) for letter in source.written.pieces] == ["A", "S"]
    assert isinstance(source.written.top, WrittenLayout)
    assert source.written.top.rows is not None
    ((_, (row,)),) = source.written.top.rows.stated()
    assert words_at(row.place) == "S (stack S)*stacks"


def test_a_fragment_is_a_pattern_in_one_size(tmp_path: Path) -> None:
    path = tmp_path / "pattern.yaml"
    path.write_text("pattern: Sun\npieces: {Y: {cut: {one: 3 square}}}\n", "utf-8")
    source, notices = load(path, "p.yaml")
    assert source is not None
    assert notices == ()
    assert list(source.written.sizes) == ["one"]
    assert source.written.top is None
