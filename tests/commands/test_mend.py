"""`check --fix`: one number mended, every other byte left alone."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.cli import main
from patternbook.commands import mend as mending
from patternbook.commands.mend import mended
from patternbook.commands.new import begun
from patternbook.edition.pipeline import Examined
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
    line = text[: text.index("strips: 1")].count("\n") + 1
    assert f"{path}:{line}: mended\n  was | " in ran.err
    assert path.read_text("utf-8") == text.replace("strips: 1", "strips: 4")


def test_where_nothing_can_be_mended_the_file_is_not_touched(
    run: Run, pattern: WritePattern
) -> None:
    path = pattern("pattern: [")
    before = path.stat().st_mtime_ns
    assert run("check", path, "--fix").code == 1
    assert path.stat().st_mtime_ns == before


@pytest.mark.parametrize(
    ("written", "old", "new", "then"),
    [
        ("7½ × 15", "7 1/2 x 15", "8 1/2 x 15", "8½ × 15"),
        ("7½×15″", "7 1/2 x 15″", "8 x 15″", "8×15″"),
        ("'3 1/2 square'", "3 1/2 square", "4 square", "'4 square'"),
        ('"about 50 x 66"', "about 50 x 66", "about 50 1/2 x 66", '"about 50 1/2 x 66"'),
        ("2¼ x WOF", "2 1/4 x WOF", "2 5/16 x WOF", "2 5/16 x WOF"),
    ],
)
def test_the_authors_own_signs_are_kept(written: str, old: str, new: str, then: str) -> None:
    here = Edit(Place("x", 1, 6, 1, 6 + len(written)), old, new)
    assert mended(f"cut: {written}  # so\n", [here]) == (f"cut: {then}  # so\n", 1)


FRAGMENT = """\
# a comment, ½
pattern: Two Rails
pieces: {A: {cut: 2 1/4 x 9}, B: {cut: "3¾ × 9"}}   # flow
units:
  rails:
    rows: [A B]
    measure: 5 3/4 x 9  # printed
    make: 6
"""
# One number of it is wrong: both pieces come to 5 1/2.
RIGHT = FRAGMENT.replace("5 3/4 x 9", "5 1/2 x 9")


@given(
    end=st.sampled_from(["\n", "\r\n", "\r"]),
    mark=st.sampled_from([b"", b"\xef\xbb\xbf"]),
    before=st.lists(st.text("ab½× #\t", max_size=20).map("# {}".format), max_size=4),
    after=st.lists(st.text("ab½× #", max_size=20).map("  # {}".format), max_size=4),
)
def test_every_other_byte_is_kept(
    tmp_path_factory: pytest.TempPathFactory,
    end: str,
    mark: bytes,
    before: list[str],
    after: list[str],
) -> None:
    """Whatever the line ends, the mark before the text and the comments; and done twice it is
    done once."""
    path = tmp_path_factory.mktemp("mend") / "pattern.yaml"

    def written(text: str) -> bytes:
        return mark + end.join([*before, *text.split("\n")[:-1], *after, ""]).encode()

    path.write_bytes(written(FRAGMENT))
    assert main(["check", str(path), "--fix", "--quiet"]) == 0
    assert path.read_bytes() == written(RIGHT)
    assert main(["check", str(path), "--fix", "--quiet"]) == 0
    assert path.read_bytes() == written(RIGHT)
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_what_was_changed_is_shown(run: Run, pattern: WritePattern) -> None:
    path = pattern(FRAGMENT)
    assert run("check", path, "--fix", "--quiet").err == (
        f"{path}:7: mended\n"
        "  was |     measure: 5 3/4 x 9  # printed\n"
        "  now |     measure: 5 1/2 x 9  # printed\n"
    )


def test_one_of_several_numbers_is_the_authors_to_choose(run: Run, pattern: WritePattern) -> None:
    """Either row may be wrong, and either piece of the short one: all are named, none is made."""
    text = "pattern: Rows\npieces: {A: {cut: 8 x 3}, B: {cut: 4 x 3}, C: {cut: 3 x 3}}\n"
    path = pattern(text + "units: {u: {rows: [A, B C], make: 2}}\n")
    before = path.read_bytes()
    ran = run("check", path, "--fix")
    assert ran.code == 1
    assert "Cut C 4 1/2 x 3, or B 5 1/2 x 3, or A 6 1/2 x 3." in ran.err
    assert "mended" not in ran.err
    assert path.read_bytes() == before


def test_one_mend_may_show_the_next(run: Run, pattern: WritePattern) -> None:
    """Counts are reckoned once the lengths hold: both are mended in one call."""
    path = pattern(FRAGMENT.replace("2 1/4 x 9}", "2 1/4 x 9, count: 5}"))
    assert run("check", path, "--fix").code == 0
    assert "count: 6" in path.read_text("utf-8")


def test_nothing_is_written_that_leaves_as_many_errors(
    run: Run, pattern: WritePattern, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The mend is made to be a wrong one: it is tried, and let go."""
    path = pattern(FRAGMENT)
    before = path.read_bytes()
    real = mending.mended
    monkeypatch.setattr(
        mending, "mended", lambda text, edits: real(text.replace("2 1/4", "2 1/8"), edits)
    )
    ran = run("check", path, "--fix")
    assert ran.code == 1
    assert f"{path}: nothing was mended" in ran.err
    assert path.read_bytes() == before


def test_a_file_that_may_only_be_read_is_left(run: Run, pattern: WritePattern) -> None:
    path = pattern(FRAGMENT)
    path.chmod(0o444)
    ran = run("check", path, "--fix")
    assert ran.code != 0
    assert "it may only be read" in ran.err
    assert path.read_text("utf-8") == FRAGMENT


def test_a_file_that_was_changed_meanwhile_is_left(
    run: Run, pattern: WritePattern, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = pattern(FRAGMENT)
    real = mending._errors

    def changed(found: Examined) -> int:
        path.write_text("pattern: Another\n", "utf-8")
        return real(found)

    monkeypatch.setattr(mending, "_errors", changed)
    ran = run("check", path, "--fix")
    assert "it was changed meanwhile" in ran.err
    assert path.read_text("utf-8") == "pattern: Another\n"


def test_every_source_is_mended_by_itself(run: Run, pattern: WritePattern) -> None:
    """The rights of a file are kept; a sound one is not touched."""
    one, two, sound = pattern(FRAGMENT, "a"), pattern(FRAGMENT, "b"), pattern(RIGHT, "c")
    one.chmod(0o640)
    before = sound.stat().st_mtime_ns
    ran = run("check", one, two, sound, "--fix")
    assert ran.code == 0
    assert [path.read_text("utf-8") for path in (one, two, sound)] == [RIGHT] * 3
    assert one.stat().st_mode & 0o777 == 0o640
    assert sound.stat().st_mtime_ns == before


def test_with_json_the_changes_are_told_beside_it(run: Run, pattern: WritePattern) -> None:
    """Only the record goes to standard output."""
    path: Path = pattern(FRAGMENT)
    ran = run("check", path, "--fix", "--json")
    assert ran.json()["errors"] == 0
    assert "mended" in ran.err
