"""A fault of a sentence stands at the number itself, however the text is written in the source."""

from pathlib import Path

import pytest

from patternbook.edition.pipeline import examine
from patternbook.source.reader import read

HEAD = "pattern: One\nwidth: 42\npieces:\n  A: {cut: 3 1/2 square, count: 8}\nwords:\n"


@pytest.mark.parametrize(
    ("words", "line", "column"),
    [
        ("  cutting: A is cut 3 1/4 square.\n", 6, 21),
        ("  cutting: |\n    Take care.\n    A is cut 3 1/4 square.\n", 8, 14),
        ("  cutting: >\n    Take care.\n    A is cut\n    3 1/4 square.\n", 9, 5),
        ("  cutting: 'A is cut 3 1/4 square.'\n", 6, 22),
        ('  cutting: "A is cut 3 1/4\n    square."\n', 6, 22),
        ("  cutting: |  # as in print\n    A is cut 3¼ square.\n", 7, 14),
        # A quotation mark written twice: the place of the whole text is all that is known.
        ("  cutting: 'It''s A that is cut 3 1/4 square.'\n", 6, 12),
    ],
)
def test_the_line_and_column_of_the_number(
    tmp_path: Path, words: str, line: int, column: int
) -> None:
    path = tmp_path / "pattern.yaml"
    path.write_text(HEAD + words, "utf-8")
    (notice,) = (one for one in examine(path, "p").notices if one.code == "said-length")
    assert (notice.marks[0].place.line, notice.marks[0].place.column) == (line, column)
    assert notice.needed == "3 1/2"


def test_the_edit_leaves_every_other_sign_alone(tmp_path: Path) -> None:
    path = tmp_path / "pattern.yaml"
    text = HEAD + "  cutting: |\n    Take care.\n    A is cut 3 1/4 square.\n"
    path.write_text(text, "utf-8")
    (notice,) = (one for one in examine(path, "p").notices if one.code == "said-length")
    (edit,) = notice.edits
    lines = text.split("\n")
    line = lines[edit.place.line - 1]
    assert line[edit.place.column - 1 : edit.place.end_column - 1] == edit.old == "3 1/4"
    mended = line[: edit.place.column - 1] + edit.new + line[edit.place.end_column - 1 :]
    assert mended == "    A is cut 3 1/2 square."
    assert read(text, "p")[1] == ()
