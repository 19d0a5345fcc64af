"""The author's sentences: every word she may use in braces, and what is told of slips."""

from pathlib import Path
from textwrap import dedent

import pytest

from patternbook.booklet.named import NAMED
from patternbook.booklet.sentences import author_texts, fill, told
from patternbook.edition.pipeline import examine
from patternbook.notice import Notice, Place
from patternbook.value import Text
from tests.booklet.small import DOORSTEP, demo, written

SP = "\N{NO-BREAK SPACE}"

# What is said of the rug of DOORSTEP, or of the throw of a demonstration pattern.
RUG = {
    "{{ count.C }}": "12",
    "{{ cut.C }}": f"6½{SP}×{SP}6½″",
    "{{ cut.binding }}": f"2½″{SP}× width of fabric",
    "{{ strips.A }}": "3",
    "{{ strips.binding }}": "4",
    "{{ squares.C }}": "12",
    "{{ finished.four }}": f"6{SP}×{SP}6″",
    "{{ measure.four }}": f"6½{SP}×{SP}6½″",
    "{{ make.four }}": "12",
    "{{ yards.cord }}": f"⅜{SP}yd",
    "{{ length.C }}": "6½″",
    "{{ length.binding }}": "130″",
    "{{ number.across }}": "4",
    "{{ size.back }}": None,
    "{{ size.backing }}": f"32{SP}×{SP}44″",
    "{{ step.four }}": "3",
    "{{ packs.coal }}": None,
}


@pytest.mark.parametrize(("typed", "said"), RUG.items())
def test_every_word_is_filled_in(typed: str, said: str | None, tmp_path: Path) -> None:
    rug = written(tmp_path).sizes["rug"]
    words, notices = fill(f"so {typed} it is", (rug,))
    if said is None:
        assert [notice.code for notice in notices] == ["unknown-fill"]
    else:
        assert (words, notices) == (f"so {said} it is", ())


def test_no_word_is_left_untried() -> None:
    assert {typed.strip("{} ").partition(".")[0] for typed in RUG} == set(NAMED)


def test_packs_of_a_strip_roll() -> None:
    throw = demo("late-returns").sizes["throw"]
    assert fill("{{ packs.books }} of {{ size.books }}", (throw,))[0] == f"1 of 2½{SP}×{SP}40″"


def test_a_figure_that_differs_is_given_size_by_size(tmp_path: Path) -> None:
    both = tuple(written(tmp_path).sizes.values())
    assert fill("Cut {{ count.C }}.", both)[0] == f"Cut mat{SP}2, rug{SP}12."
    assert fill("Each is {{ cut.C }}.", both)[0] == f"Each is 6½{SP}×{SP}6½″."


def test_a_free_number_is_printed_bare(tmp_path: Path) -> None:
    both = tuple(written(tmp_path).sizes.values())
    assert fill("over [[4]] evenings", both) == ("over 4 evenings", ())


def slips(source: str, folder: Path) -> list[Notice]:
    path = folder / "pattern.yaml"
    path.write_text(dedent(source).lstrip("\n"), "utf-8")
    notices = examine(path, "pattern.yaml").notices
    return [notice for notice in notices if notice.code == "unknown-fill"]


@pytest.mark.parametrize(
    ("typed", "message", "hint"),
    [
        ("{{ count.Z }}", "Z is not a piece", "Name a part"),
        ("{{ counts.A }}", "counts is not one of count, cut", "Did you mean count?"),
        ("{{ 3 + 4 }}", "a word, a full stop and a name are wanted", "Write it as {{ cut.A }}."),
        ("{{ measure.C }}", "C is not a unit", "Name a part"),
    ],
)
def test_a_slip_is_told_with_its_place(typed: str, message: str, hint: str, tmp_path: Path) -> None:
    place = Place("pattern.yaml", 7, 3, 7, 20)
    (notice,) = fill(Text(f"so {typed}", place), (written(tmp_path).sizes["mat"],))[1]
    assert notice.code == "unknown-fill"
    assert message in notice.message
    assert hint in str(notice.hint)
    assert [mark.place for mark in notice.marks] == [place]


def test_check_reads_every_text_of_the_author(tmp_path: Path) -> None:
    source = DOORSTEP.replace("pair/half]", "pair/half]\n        note: Make {{ make.fore }}.")
    (notice,) = slips(source, tmp_path)
    assert notice.sizes == ("mat", "rug")
    assert "fore is not a unit" in notice.message
    assert str(notice.marks[0].place) == "pattern.yaml:21:11"


@pytest.mark.parametrize(
    "key", ["words:\n  care: |\n    Make {{ make.fore }}.", "summary: |\n  Make {{ make.fore }}."]
)
def test_words_of_the_cover_and_the_chapters_are_read_too(key: str, tmp_path: Path) -> None:
    kept = "\n".join(line for line in dedent(DOORSTEP).splitlines() if "summary" not in line)
    (notice,) = slips(f"{kept}\n{key}\n", tmp_path)
    assert "fore is not a unit" in notice.message
    assert notice.marks


def test_the_demos_are_free_of_slips() -> None:
    for name in ("late-returns", "tea-at-four"):
        examined = demo(name)
        assert examined.heading is not None
        assert any(list(author_texts(known)) for known in examined.sizes.values())
        assert told(examined.heading, examined.sizes) == ()
