"""Notices as people and programs get them."""

from dataclasses import replace
from pathlib import Path

from patternbook.commands.report import for_people, for_programs, summary
from patternbook.commands.sources import Source
from patternbook.notice import Edit, Mark, Notice, Place

ROWS = "top:\n  rows: [A A,\n         B]\n"


def written(folder: Path, text: str) -> Source:
    path = folder / "pattern.yaml"
    path.write_text(text, "utf-8")
    return Source(path, "patterns/x/pattern.yaml")


def at(line: int, column: int, end: int) -> Place:
    return Place("patterns/x/pattern.yaml", line, column, line, end)


ROW = Notice(
    code="row-length",
    severity="error",
    stage="quilt",
    rule="R1",
    sizes=("lap",),
    message="row 2 is 3½ wide, row 1 is 6½: short by 3.",
    stated="3 1/2",
    needed="6 1/2",
    hint="Cut B 6½ wide.",
    marks=(Mark(at(3, 10, 11), "the shorter row"), Mark(at(2, 10, 13), "the row it is sewn to")),
    edits=(Edit(at(3, 10, 11), "B", "B B"),),
)
FREE = Notice("free", "advice", "quilt", "nothing fixes the size.")


def test_a_notice_shows_both_sides_and_the_written_line(tmp_path: Path) -> None:
    assert for_people([ROW], [written(tmp_path, ROWS)]) == (
        "patterns/x/pattern.yaml:3:10: error row-length [lap]: "
        "row 2 is 3½ wide, row 1 is 6½: short by 3. Cut B 6½ wide.\n"
        "     3 |          B]\n"
        "                  ^\n"
        "  patterns/x/pattern.yaml:2:10: the row it is sewn to\n"
        "     2 |   rows: [A A,\n"
        "                  ^^^"
    )


def test_a_line_is_shown_once_and_advice_shows_one_place(tmp_path: Path) -> None:
    source = written(tmp_path, ROWS)
    here = (Mark(at(2, 10, 11), "A"), Mark(at(2, 12, 13), "A again"), Mark(at(3, 10, 11), "B"))
    fault = Notice("x", "warning", "quilt", "so.", here)
    assert for_people([fault], [source]).count(" | ") == 2
    assert for_people([replace(fault, severity="advice")], [source]).count(" | ") == 1


def test_a_long_line_is_cut_around_the_place(tmp_path: Path) -> None:
    line = "x" * 200 + "HERE" + "y" * 200
    notice = Notice("long", "error", "source", "so.", (Mark(at(1, 201, 205), "it"),))
    _, shown, carets = for_people([notice], [written(tmp_path, line)]).splitlines()
    assert len(shown) < 110
    start = carets.index("^")
    assert shown[start : start + 4] == "HERE"
    assert carets.count("^") == 4


def test_no_sign_of_a_source_steers_the_terminal(tmp_path: Path) -> None:
    evil = "a: \x1b[2J\u202e'"
    notice = Notice("odd", "error", "source", f"what is {evil}?", (Mark(at(1, 4, 8), "it"),))
    text = for_people([notice], [written(tmp_path, evil)])
    assert "\x1b" not in text
    assert "\u202e" not in text
    assert "\\x1b[2J" in text


def test_a_source_that_cannot_be_read_is_no_second_fault(tmp_path: Path) -> None:
    source = written(tmp_path, "")
    source.path.write_bytes(b"\xff\xfe\x00")
    assert for_people([ROW], [source]).count("\n") == 1
    source.path.unlink()
    assert for_people([ROW], [Source(tmp_path / "gone", source.shown)]).count("\n") == 1


def test_summary_counts(tmp_path: Path) -> None:
    source = written(tmp_path, ROWS)
    assert summary([], [source]) == "1 pattern checked: no faults."
    assert summary([ROW, FREE, FREE], [source] * 2) == (
        "2 patterns checked: 1 error, 2 pieces of advice."
    )


def test_the_record_for_programs(tmp_path: Path) -> None:
    record = for_programs([ROW, FREE], [written(tmp_path, ROWS)])
    assert {key: record[key] for key in ("format", "errors", "warnings", "advice")} == {
        "format": 1, "errors": 1, "warnings": 0, "advice": 1,
    }  # fmt: skip
    first, second = record["notices"]
    assert first["places"][1] == {
        "file": "patterns/x/pattern.yaml",
        "line": 2, "column": 10, "end_line": 2, "end_column": 13,
        "role": "the row it is sewn to",
    }  # fmt: skip
    assert first["fix"] == [{"at": "patterns/x/pattern.yaml:3:10", "old": "B", "new": "B B"}]
    assert (second["rule"], second["sizes"], second["hint"]) == (None, [], None)
