"""`check --fix`: one number mended, every other byte left alone."""

import re

import pytest

from patternbook.commands.mend import mended
from patternbook.commands.new import begun
from patternbook.notice import Edit, Place
from tests.support import Run, WritePattern

SOUND = begun("Winter Window", "plain")


def edit(line: int, column: int, old: str, new: str) -> Edit:
    return Edit(Place("x", line, column, line, column + len(old)), old, new)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_only_the_number_changes(end: str) -> None:
    text = end.join(["# ½ × a comment", "strips: 4   # four", "count: 7", ""])
    better, number = mended(text, [edit(2, 9, "4", "12"), edit(3, 8, "7", "9")])
    assert number == 2
    assert better == end.join(["# ½ × a comment", "strips: 12   # four", "count: 9", ""])


def test_what_is_not_there_any_more_is_left() -> None:
    assert mended("strips: 5\n", [edit(1, 9, "4", "12")]) == ("strips: 5\n", 0)


def test_sizes_that_need_different_numbers_are_the_authors_to_settle() -> None:
    edits = [edit(1, 9, "4", "5"), edit(1, 9, "4", "7")]
    assert mended("strips: 4\n", edits) == ("strips: 4\n", 0)


def test_check_mends_and_checks_again(run: Run, pattern: WritePattern) -> None:
    """A pattern of one size, with too few strips of A stated."""
    alone = re.sub(r", throw: \d+|\n  throw: .*", "", SOUND)
    text = alone.replace("cut: 3 1/2 x WOF}", "cut: 3 1/2 x WOF, strips: 1}  # ½", 1)
    path = pattern(text)
    assert run("check", path).code == 1
    ran = run("check", path, "--fix")
    assert ran.code == 0, ran.err
    assert "1 number was mended" in ran.err
    assert path.read_text("utf-8") == text.replace("strips: 1", "strips: 4")


def test_where_nothing_can_be_mended_the_file_is_not_touched(
    run: Run, pattern: WritePattern
) -> None:
    path = pattern("pattern: [")
    before = path.stat().st_mtime_ns
    assert run("check", path, "--fix").code == 1
    assert path.stat().st_mtime_ns == before
