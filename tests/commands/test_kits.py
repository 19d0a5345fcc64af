"""`kits`, as it is called: tables, the record, the sheet of pages, and wrong calls."""

import re
from collections.abc import Callable, Mapping
from io import BytesIO
from pathlib import Path

import jsonschema
import pytest
from pypdf import PdfReader

from patternbook.booklet import pango
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.html import html
from patternbook.commands.new import begun
from patternbook.commands.schema import schema_of
from patternbook.cutting.kits_plan import plan_kits
from patternbook.edition import kits as edition
from patternbook.notice import Notice
from patternbook.proof.prose.size_facts import Facts
from tests.booklet.small import DOORSTEP, book, demo, written
from tests.booklet.test_language import faults, sentences
from tests.support import Golden, Run, WritePattern

SOUND = begun("Winter Window", "plain")
FAULTY = SOUND.replace("measure: 6 1/2 square", "measure: 6 1/4 square")
FRAGMENT = """
    pattern: Only Pieces
    pieces:
      A: {cut: 4 1/2 square, count: 20}
    """


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, pattern: WritePattern) -> Path:
    """A folder with one sound pattern."""
    monkeypatch.chdir(tmp_path)
    pattern(SOUND)
    return tmp_path


def written_files(folder: Path) -> list[str]:
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*.pdf"))


# ---- what is said


@pytest.mark.usefixtures("here")
def test_tables_for_people(run: Run, golden: Golden, monkeypatch: pytest.MonkeyPatch) -> None:
    stand_in(monkeypatch)
    ran = run("kits", "patterns/trial", "--size", "crib", "--kits", "12", "--paper", "a4")
    assert (ran.code, ran.err) == (0, "")
    golden(ran.out, "kits/starter.txt")


def test_json_keeps_to_its_schema_and_writes_no_sheet(run: Run, here: Path) -> None:
    ran = run("kits", "patterns/trial", "--size", "crib", "--kits", "12", "--json")
    record = ran.json()
    jsonschema.validate(record, schema_of("kits"))
    assert (record["size"], record["kits"]) == ("crib", 12)
    assert written_files(here) == []


@pytest.mark.parametrize("style", ["plain", "shared", "thrifty"])
def test_all_kits_are_so_many_of_one(run: Run, style: str) -> None:
    """Recounted from the record alone: what the strips give is what the bags need."""
    words = ("patterns/late-returns", "--size", "throw", "--kits", "11", "--json", "--cutting")
    record = run("kits", *words, style).json()
    given: dict[str, int] = {}
    for material in record["materials"].values():
        assert material["style"] == style
        for strip in material["strips"]:
            whole = any(cut["whole"] for cut in strip["cuts"])
            for letter, number in strip["all"].items():
                given[letter] = given.get(letter, 0) + (strip["times"] if whole else number)
    wanted = {line["letter"]: line["all"] for line in record["bag"]}
    assert given == wanted
    assert all(line["all"] == 11 * line["number"] for line in record["bag"])


def test_one_kit_of_the_only_size_needs_neither_named(run: Run, pattern: WritePattern) -> None:
    only = re.sub(r"\n      rug: .*", "", DOORSTEP)
    record = run("kits", pattern(only), "--json").json()
    assert (record["size"], record["kits"]) == ("mat", 1)
    # The mat: binding 2 × (12 + 12) + 10 = 58 inches, two strips, which are joined.
    assert record["materials"]["cord"]["strips"][0]["joined"]


# ---- the sheet of pages


def stand_in(monkeypatch: pytest.MonkeyPatch, faults: tuple[Notice, ...] = ()) -> None:
    """A few bytes a paper, or a fault, in place of the page layout."""

    def sheets(
        kits: edition.Kits, papers: tuple[str, ...], step: Callable[[str], None]
    ) -> tuple[Mapping[str, bytes], tuple[Notice, ...]]:
        step("laying out")
        files = {} if faults else {f"{kits.stem}-{paper}.pdf": b"%PDF" for paper in papers}
        return files, faults

    monkeypatch.setattr(edition, "kit_sheets", sheets)


def test_sheets_on_both_papers(run: Run, here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    stand_in(monkeypatch)
    ran = run("kits", "patterns/trial", "--size", "crib", "--kits", "3")
    files = [f"build/trial/winter-window-crib-3-kits-{paper}.pdf" for paper in ("a4", "letter")]
    assert ran.out.splitlines()[-2:] == files
    assert written_files(here) == files
    run("kits", "patterns/trial", "--size", "throw", "--json", "--out", "sheets", "--paper", "a4")
    assert written_files(here)[-1] == "sheets/trial/winter-window-throw-1-kit-a4.pdf"


def test_sheets_are_written_whole_or_not_at_all(
    run: Run, here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    stand_in(monkeypatch, (Notice("page-warning", "error", "booklet", "it does not fit."),))
    ran = run("kits", "patterns/trial", "--size", "crib")
    assert (ran.code, ran.out, written_files(here)) == (1, "", [])
    assert "it does not fit" in ran.err
    stand_in(monkeypatch)
    (here / "build").write_text("mine")
    ran = run("kits", "patterns/trial", "--size", "crib")
    assert (ran.code, ran.out) == (1, "")
    assert "cannot be written" in ran.err
    assert (here / "build").read_text() == "mine"


def test_without_the_libraries_that_lay_out_pages(
    run: Run, here: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The record needs none of them."""
    lacking = Notice("no-pango", "error", "booklet", "a library is missing", hint="Install it.")
    monkeypatch.setattr(pango, "missing", lambda: (lacking,))
    ran = run("kits", "patterns/trial", "--size", "crib")
    assert (ran.code, ran.out, written_files(here)) == (1, "", [])
    assert run("kits", "patterns/trial", "--size", "crib", "--json").code == 0


def kit_book(number: int) -> KitBook:
    known = demo("tea-at-four")
    made = book(known, "lap")
    return KitBook(made, plan_kits(made.first.quilt, number, made.first.cutting))


def test_pages_in_words(tmp_path: Path, golden: Golden) -> None:
    made = book(written(tmp_path, DOORSTEP), "rug")
    kits = KitBook(made, plan_kits(made.first.quilt, 6, made.first.cutting))
    golden(html(kits).html, "kits/doorstep.html")


@pytest.mark.parametrize("name", ["tea-at-four", "porch-left-lit", "one-good-picture"])
def test_its_words_keep_the_rules_of_the_booklets(name: str) -> None:
    """A count never beside a size, marks that a ruler has, one term for one thing."""
    examined = demo(name)
    for size, known in examined.sizes.items():
        made = book(examined, size)
        page = html(KitBook(made, plan_kits(known.quilt, 12, known.cutting))).html
        words = tuple(sentences(page))
        assert len(words) > 40
        facts = (Facts(known),)
        assert [(one.code, said) for said in words for one in faults(said, facts)] == []


def test_cautions_and_a_label_for_each_letter() -> None:
    page = html(kit_book(6)).html
    for caution in ("Rotary cutter", "Iron", "Quilts and babies"):
        assert f"<strong>{caution}.</strong>" in page
    assert "Local rules" in page
    labels = re.findall(r'<div class="label">.*?<h3>(\w+)</h3>', page, re.DOTALL)
    assert labels == ["A", "B", "S", "T", "F", "Binding"]


@pytest.mark.parametrize(("paper", "sides"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_the_printed_pages(paper: str, sides: tuple[int, int]) -> None:
    """ISO 216 A4, and 8½ × 11 in, in points."""
    examined = demo("tea-at-four")
    assert examined.heading is not None
    kits, told = edition.kits_of(examined.heading, examined.sizes["lap"], 20, None)
    files, more = edition.kit_sheets(kits, (paper,), lambda _: None)
    assert (told, more) == ((), ())
    again, _ = edition.kit_sheets(kits, (paper,), lambda _: None)
    assert files == again
    (pdf,) = files.values()
    pages = PdfReader(BytesIO(pdf)).pages
    assert tuple(round(float(side)) for side in pages[0].mediabox[2:]) == sides
    heads = [
        "Cloth to buy",
        "Cutting plan",
        "Count every letter",
        "Labels for one kit",
        "Class list",
    ]
    texts = [" ".join(page.extract_text().split()) for page in pages]
    assert [next(n for n, text in enumerate(texts) if head in text) for head in heads] == [
        0, 1, 2, 3, 4,
    ]  # fmt: skip


# ---- wrong calls


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--kits", "0"), "'0' is no number of kits from 1 to 10000"),
        (("--kits", "-3"), "'-3' is no number of kits"),
        (("--kits", "x"), "'x' is no number of kits"),
        (("--kits", "10001"), "'10001' is no number of kits"),
        (("--kits", "2.5"), "'2.5' is no number of kits"),
        (("--kits", "٣"), "is no number of kits"),
        (("--kits", "9" * 5000), "is no number of kits"),
        ((), "comes in several sizes: crib, throw. Name one with --size."),
        (("--size", "king"), "has no size king. It has: crib, throw."),
        (("--size", "crib", "--paper", "a5"), "invalid choice: 'a5'"),
        (("--size", "crib", "--cutting", "wild"), "invalid choice: 'wild'"),
    ],
)
def test_wrong_calls(run: Run, words: tuple[str, ...], said: str) -> None:
    ran = run("kits", "patterns/trial", *words)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert len(ran.err) < 1500


def test_a_pattern_with_a_fault_has_no_kits(run: Run, pattern: WritePattern) -> None:
    ran = run("kits", pattern(FAULTY), "--size", "crib")
    assert (ran.code, ran.out) == (1, "")
    assert "unit-measure" in ran.err


def test_a_fragment_has_no_kits(run: Run, pattern: WritePattern) -> None:
    ran = run("kits", pattern(FRAGMENT), "--kits", "3")
    assert (ran.code, ran.out) == (1, "")
    assert "no quilt top in any size, so there is nothing to make a kit of" in ran.err


def test_the_most_kits_of_a_large_quilt(run: Run) -> None:
    """Ten thousand kits of the largest size are no longer a list than one."""
    words = ("patterns/post-for-the-island", "--size", "king", "--json", "--kits")
    one, many = (run("kits", *words, number).json() for number in ("1", "10000"))
    for name, material in many["materials"].items():
        assert len(material["strips"]) <= len(one["materials"][name]["strips"]) + 2
