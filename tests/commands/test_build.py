"""`build`, as it is called; the pages themselves are stood in for by a few bytes here."""

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from types import ModuleType

import pytest

from patternbook.booklet import pango
from patternbook.commands.new import begun
from patternbook.edition.editions import EDITIONS
from patternbook.notice import Notice
from tests.support import Run

SOUND = begun("Winter Window", "plain")
ASKED = "issue-as: {editions: [left-handed, labels]}"
FAULTY = SOUND.replace("measure: 6 1/2 square", "measure: 6 1/4 square")


class Printer:
    """Stands in for the page layout: gives a few bytes a paper, or a fault."""

    def __init__(self) -> None:
        self.calls: list[tuple[tuple[str, ...], str | None, tuple[str, ...]]] = []
        self.faults: tuple[Notice, ...] = ()
        self.content = b"%PDF"

    def printed(
        self, _: object, papers: tuple[str, ...], size: str | None, editions: tuple[str, ...],
        step: Callable[[str], None],
    ) -> tuple[Mapping[str, bytes], tuple[Notice, ...]]:  # fmt: skip
        step("laying out")
        self.calls.append((papers, size, editions))
        return {f"{paper}.pdf": self.content for paper in papers}, self.faults


@pytest.fixture
def printer(monkeypatch: pytest.MonkeyPatch) -> Printer:
    stand_in = Printer()
    module = ModuleType("patternbook.edition.printing")
    module.printed = stand_in.printed  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "patternbook.edition.printing", module)
    return stand_in


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with two sound patterns."""
    monkeypatch.chdir(tmp_path)
    for slug in ("first", "second"):
        (tmp_path / "patterns" / slug).mkdir(parents=True)
        (tmp_path / "patterns" / slug / "pattern.yaml").write_text(SOUND)
    return tmp_path


def spoil(folder: Path) -> None:
    (folder / "patterns" / "first" / "pattern.yaml").write_text(FAULTY)


def made(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.glob("build/*/*.pdf"))
    }


@pytest.mark.usefixtures("here")
def test_both_papers_of_every_pattern(run: Run, printer: Printer) -> None:
    ran = run("build")
    assert ran.code == 0
    assert ran.out.splitlines() == [
        f"build/{slug}/{paper}.pdf" for slug in ("first", "second") for paper in ("a4", "letter")
    ]
    assert printer.calls == [(("a4", "letter"), None, ("full",))] * 2


def test_what_was_asked_for_is_passed_on(run: Run, here: Path, printer: Printer) -> None:
    words = ("--size", "crib", "--paper", "a4", "--out", "elsewhere")
    assert run("build", "patterns/first", *words).out == "elsewhere/first/a4.pdf\n"
    assert printer.calls == [(("a4",), "crib", ("full",))]
    assert made(here) == {}


def test_an_edition_alone(run: Run, here: Path, printer: Printer) -> None:
    assert run("build", "patterns/first", "--edition", "labels").code == 0
    assert printer.calls == [(("a4", "letter"), None, ("labels",))]
    (here / "patterns" / "first" / "pattern.yaml").write_text(f"{SOUND}\n{ASKED}\n")
    run("build", "patterns/first", "--edition", "full")
    assert printer.calls[-1][2] == ("full",)


def test_the_editions_that_the_source_asks_for_are_made_too(
    run: Run, here: Path, printer: Printer
) -> None:
    (here / "patterns" / "first" / "pattern.yaml").write_text(f"{SOUND}\n{ASKED}\n")
    ran = run("build")
    assert [editions for _, _, editions in printer.calls] == [
        ("full", "left-handed", "labels"),  # the booklet always, then as asked
        ("full",),
    ]
    assert "not-used-yet" not in ran.err


def test_an_edition_that_there_is_not(run: Run, here: Path, printer: Printer) -> None:
    asked = "issue-as: {editions: [lables]}"
    (here / "patterns" / "first" / "pattern.yaml").write_text(f"{SOUND}\n{asked}\n")
    ran = run("build", "patterns/first")
    assert (ran.code, printer.calls) == (1, [])
    assert "there is no edition `lables`. Editions: full, labels, left-handed, quilting." in ran.err


def test_what_else_may_be_issued_is_kept_for_later(run: Run, here: Path) -> None:
    asked = "issue-as: {editions: labels, papers: a4, appendices: [lesson]}"
    (here / "patterns" / "first" / "pattern.yaml").write_text(f"{SOUND}\n{asked}\n")
    said = run("check", "patterns/first").err
    assert "`papers` is kept, and not used yet" in said
    assert "`appendices` is kept, and not used yet" in said
    assert "`issue-as` is kept" not in said


def test_the_help_names_every_edition(run: Run) -> None:
    said = " ".join(run("build", "--help").out.split())
    for edition in EDITIONS:
        assert f"{edition.name}: {edition.tells}" in said


def test_a_pattern_with_a_fault_is_not_built_and_the_others_are(
    run: Run, here: Path, printer: Printer
) -> None:
    spoil(here)
    ran = run("build")
    assert ran.code == 1
    assert "unit-measure" in ran.err
    assert list(made(here)) == ["build/second/a4.pdf", "build/second/letter.pdf"]
    assert len(printer.calls) == 1


def test_a_failed_build_never_harms_the_last_good_file(
    run: Run, here: Path, printer: Printer
) -> None:
    run("build")
    good = made(here)
    printer.content = b"worse"
    printer.faults = (Notice("page-warning", "error", "booklet", "it does not fit."),)
    ran = run("build", "--force")
    assert ran.code == 1
    assert "it does not fit" in ran.err
    spoil(here)
    assert run("build").code == 1
    assert made(here) == good


def test_what_would_come_out_the_same_is_not_made_again(
    run: Run, here: Path, printer: Printer
) -> None:
    first = run("build", "patterns/first")
    again = run("build", "patterns/first")
    assert (again.out, len(printer.calls)) == (first.out, 1)
    assert "has not changed" in again.err
    run("build", "patterns/first", "--force")
    assert len(printer.calls) == 2
    run("build", "patterns/first", "--paper", "a4")
    assert len(printer.calls) == 3
    (here / "patterns" / "house.yaml").write_text("seam: 1/4\n")
    run("build", "patterns/first", "--paper", "a4")
    assert len(printer.calls) == 4
    (here / "build" / "first" / "a4.pdf").write_bytes(b"spoiled")
    run("build", "patterns/first", "--paper", "a4")
    assert made(here)["build/first/a4.pdf"] == b"%PDF"


@pytest.mark.usefixtures("printer")
def test_an_unwritable_folder(run: Run, here: Path) -> None:
    (here / "build").write_text("mine")
    ran = run("build")
    assert (ran.code, ran.out) == (1, "")
    assert "cannot be written" in ran.err
    assert (here / "build").read_text() == "mine"


def test_without_the_libraries_that_lay_out_pages(
    run: Run, here: Path, printer: Printer, monkeypatch: pytest.MonkeyPatch
) -> None:
    lacking = Notice("no-pango", "error", "booklet", "a library is missing", hint="Install it.")
    monkeypatch.setattr(pango, "missing", lambda: (lacking,))
    ran = run("build")
    assert (ran.code, ran.out, printer.calls, made(here)) == (1, "", [], {})
    assert "Install it." in ran.err


@pytest.mark.usefixtures("here", "printer")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--demo", "patterns/first"), "name no source beside it"),
        (("--size", "king"), "no pattern here has a size king. Sizes: crib, throw."),
        (("--paper", "a5"), "invalid choice: 'a5'"),
        (("--edition", "lables"), "invalid choice: 'lables'"),
        (("patterns/third",), "does not exist"),
    ],
)
def test_wrong_calls(run: Run, words: tuple[str, ...], said: str) -> None:
    ran = run("build", *words)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err


@pytest.mark.usefixtures("here")
def test_the_demos_come_from_where_patternbook_lies(run: Run, printer: Printer) -> None:
    ran = run("build", "--demo", "--paper", "a4")
    assert ran.code == 0
    assert len(printer.calls) == len(ran.out.splitlines()) >= 2
    assert "build/first" not in ran.out
