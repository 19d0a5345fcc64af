"""Each part's finished words: every figure is the plan's own, size by size."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.booklet.html import parts, text
from patternbook.booklet.parts.back import back
from patternbook.booklet.parts.cover import cover
from patternbook.booklet.parts.cutting import cutting
from patternbook.booklet.parts.finishing import finishing
from patternbook.booklet.parts.glance import glance
from patternbook.booklet.parts.notes import notes, seam_test
from patternbook.booklet.parts.requirements import requirements
from patternbook.booklet.parts.steps import steps
from patternbook.booklet.parts.tools import tools
from patternbook.edition.figures import figures
from patternbook.edition.pipeline import examine
from patternbook.inch import printed
from tests.booklet.small import DOORSTEP, book, demo, written
from tests.support import ROOT, Golden

SP = "\N{NO-BREAK SPACE}"
TEA = (ROOT / "patterns" / "tea-at-four" / "pattern.yaml").read_text("utf-8")
PARTS = ("cover", "glance", "requirements", "cutting", "steps", "finishing", "back")


def plain(words: object) -> str:
    """Spaces that may and may not be broken look alike to a reader."""
    return str(words).replace(SP, " ")


@pytest.mark.parametrize("part", PARTS)
def test_the_part_reads_as_it_was_reviewed(part: str, tmp_path: Path, golden: Golden) -> None:
    golden(parts(book(written(tmp_path)))[part], f"booklet/{part}.html")


def test_a_size_with_more_rows_says_which_are_alike(tmp_path: Path) -> None:
    page = steps(book(written(tmp_path)))
    row = page.shown[3]
    assert row.title == "Quilt top: join row 1 and those like it"
    numbers = row.tables[1].rows[0]
    assert (numbers.head, numbers.cells) == ("Rows", ("1", "1, 3, 5"))
    assert row.press == "Press to the right."
    assert "in pairs" in row.does[0]  # the rug's rows have four parts


def test_rows_of_one_bar_are_counted_size_by_size() -> None:
    """Strip quilt of booklet anatomy, kind 1: 21 bars for the crib, 30 for the throw."""
    path = ROOT / "tests/data/kinds/01-strip.yaml"
    (step,) = steps(book(examine(path, path.name))).shown
    assert step.does[0] == "From the top: all the A."
    assert (step.tables[0].rows[0].head, step.tables[0].rows[0].cells) == ("A in all", ("21", "30"))


def test_a_step_of_one_size_says_so_and_a_pieced_border_is_compared() -> None:
    path = ROOT / "tests/data/kinds/17-panel.yaml"
    shown = {step.title: step for step in steps(book(examine(path, path.name))).shown}
    assert "Quilt top: border 2, sides (large only)" in shown
    pieced = shown["Quilt top: border 1, sides"].does[1]
    assert pieced.startswith("Compare it with the two borders named side.")


def test_one_size_has_no_columns_of_others(tmp_path: Path, golden: Golden) -> None:
    made = parts(book(written(tmp_path), "rug"))
    golden(made["steps"], "booklet/steps-rug.html")
    assert not re.search(r"\bMat\b", text("".join(made.values())))


def test_at_a_glance_says_zero_places_to_match() -> None:
    """Late Returns is made so that no seams meet, which is worth printing."""
    page = glance(book(demo("late-returns")))
    places = page.table.head.index("Places where seams must meet") - 1
    assert [row.cells[places] for row in page.table.rows] == ["0"] * 4
    assert plain(page.table.rows[1].cells[0]) == "59 × 70″"
    assert plain(page.table.rows[1].cells[1]) == "about 150 × 178 cm"


def test_packs_are_told_with_the_strips_needed_and_to_spare() -> None:
    """Reader complaint 12: the number of strips, then the packs, and what is over."""
    page = requirements(book(demo("late-returns")))
    rows = {row.head: [plain(cell) for cell in row.cells] for row in page.table.rows}
    throw = demo("late-returns").sizes["throw"].cutting.fabrics["books"].buy
    assert rows["Books: A, B, C, packs of 40"][1] == "1 pack"
    assert rows["Books, needed"][1] == f"{throw.number} strips, 2½ × 40″"
    spare = {row.head: row.cells for row in page.spare.rows}
    assert plain(spare["Books"][1]) == f"{40 - (throw.number or 0)} strips"


def test_yards_and_metres_stand_side_by_side() -> None:
    page = requirements(book(demo("tea-at-four")))
    rows = {row.head: [plain(cell) for cell in row.cells] for row in page.table.rows}
    # 6 strips of 4½ and 6 of 2½, and 3 to spare: 45 in are 1¼ yd, 1.143 m.
    assert rows["Saucer (border and binding): F"][0] == "1¼ yd or 1.2 m"
    # Two lengths of 58, 66 and 74 + 8 in: 116, 164 and 196 in are 3¼, 4¾ and 5½ yd.
    # In metres, as figures tells them: 2.95, 4.17 and 4.98, up to 0.1 m.
    back = rows["Back (backing), 4″ over each side"]
    assert back == ["3¼ yd or 3 m", "4¾ yd or 4.2 m", "5½ yd or 5 m"]


@pytest.mark.parametrize("name", ["late-returns", "tea-at-four"])
def test_the_amounts_in_print_are_those_of_the_figures(name: str) -> None:
    """The same purchase, read by a person and by a program, in yards and in metres."""
    examined = demo(name)
    told = figures(examined)
    assert told is not None
    rows = {plain(row.head): row.cells for row in requirements(book(examined)).table.rows}
    compared = 0
    for number, size in enumerate(told["sizes"].values()):
        bought = {f"{cloth.capitalize()} ": one["buy"] for cloth, one in size["materials"].items()}
        if size["backing"] is not None:
            bought["Back "] = size["backing"]["buy"]
        for head, buy in bought.items():
            cells = [cells[number] for row, cells in rows.items() if row.startswith(head)]
            if buy is not None and buy["metres"] is not None and len(cells) == 1:
                yards, metres = plain(cells[0]).split(" or ")
                assert yards == f"{printed(sum(map(Fraction, buy['amount'].split())))} yd"
                assert metres == f"{buy['metres']} m"
                compared += 1
    assert compared >= 3 * len(told["sizes"])


def test_a_backing_from_the_grounds_own_fabric_is_bought_once(tmp_path: Path) -> None:
    text = TEA.replace("backing: {fabric: back, over: 4}", "backing: {fabric: milk, over: 3}")
    rows = {row.head: row.cells for row in requirements(book(written(tmp_path, text))).table.rows}
    assert "Of that milk, for the backing, 3″ over each side" in {plain(head) for head in rows}
    assert not any("frame" in head for head in rows)


def test_a_frame_wants_more_than_a_home_machine(tmp_path: Path) -> None:
    text = TEA.replace("backing: {fabric: back, over: 4}", "backing: {fabric: back, over: 3}")
    rows = {
        plain(row.head): row.cells for row in requirements(book(written(tmp_path, text))).table.rows
    }
    assert [plain(rows["Back (backing), 3″ over each side"][1]).split()[0]] == ["4½"]
    assert [plain(rows["Back (backing), quilted on a frame"][1]).split()[0]] == ["4¾"]


def test_the_chart_parts_count_from_size() -> None:
    """Reader complaint 16: never `2 6½` side by side; count and size have columns of their own."""
    chart = cutting(book(demo("late-returns"))).sizes[1]
    books, floor, ribbon = chart.tables
    assert books.head == ("From books", "Pieces", "Cut size", "Strips", "Wide")
    assert [(row.head, *map(plain, row.cells)) for row in books.rows] == [
        ("A", "46", "8½ × 2½″", "18", "2½″"),
        ("C", "12", "4½ × 2½″", "with A", "–"),
        ("B", "34", "6½ × 2½″", "with A", "–"),
    ]
    assert [(row.head, *map(plain, row.cells)) for row in ribbon.rows] == [
        ("Binding", "–", "whole strips", "8", "2½″")
    ]
    assert [row.head for row in floor.rows][:1] == ["D"]  # the widest strip is cut first


def test_shared_strips_are_told_in_words_where_no_lay_is_drawn() -> None:
    told = cutting(book(demo("late-returns"))).sizes[1].remarks[0]
    assert plain(told).startswith("Cut the 2½″ strips like this: 11 strips give four A and one C")


def test_only_tools_that_this_pattern_needs() -> None:
    small = [plain(tool) for tool in tools(book(demo("tea-at-four"))).tools]
    assert "ruler, 12½ × 12½″" not in small  # no strip is wider than the long ruler's 6 in
    assert "ruler, 6 × 24″" in small
    assert "ruler, 12½ × 12½″" in map(plain, tools(book(demo("late-returns"))).tools)


def test_the_seam_test_is_the_published_one() -> None:
    """Three strips of 1½ in joined: the middle one must measure 1 in (booklet anatomy 2.6)."""
    cut, _, measure = seam_test(book(demo("late-returns")))
    assert "each 1½″ wide" in cut
    assert "must now measure 1″" in measure


def test_the_rules_of_rounding_are_printed() -> None:
    told = {
        note.head: plain(note.words)
        for column in notes(book(demo("late-returns"))).notes
        for note in column
    }
    assert "3″ (of which ½″ squares the edge), rounded up to the next ⅛ yd" in told["Amounts"]
    assert "the backing to the next ¼ yd" in told["Amounts"]
    assert "taken as 40″" in told["Width of fabric"]


def test_every_step_says_what_it_should_measure_and_how_many() -> None:
    for name in ("late-returns", "tea-at-four"):
        for step in steps(book(demo(name))).shown:
            rows = [row.head for table in step.tables for row in table.rows]
            told = f"{step.check} {' '.join(rows)}"
            assert "hould measure" in told, step.title
            assert any(word in told for word in ("Make", "sew on", "Quilt top")) or (
                step.title.startswith("Quilt top")
            ), step.title


def test_pairs_then_pairs_of_pairs() -> None:
    first = steps(book(demo("late-returns"))).shown[0]
    assert first.title == "Novels: join the parts of each column"
    assert first.does[0] == "From the top: D, then all the A, then E."
    assert "chain piecing" in first.does[1]
    assert "pairs to pairs" in first.does[2]
    assert first.press == "Press all seams one way, downward."
    (table,) = first.tables
    assert [(row.head, *map(plain, row.cells)) for row in table.rows] == [
        ("A in each", "15", "23", "29", "30"),
        ("Should measure, with seam allowances",
         "8½ × 46½″", "8½ × 70½″", "8½ × 88½″", "8½ × 104½″"),
        ("Make", "1", "2", "2", "3"),
    ]  # fmt: skip


def test_borders_are_measured_before_they_are_cut() -> None:
    """The sequence of reader complaint 14: measure, cut to that, the printed length a check."""
    side = steps(book(demo("tea-at-four"))).shown[6]
    assert side.title == "Quilt top: border 1, sides"
    assert side.does[0].startswith("Measure the quilt top through the middle, from top to bottom")
    assert side.does[1] == "Join F strips end to end. Cut two to your length."
    assert side.press == "Press toward the border."
    rows = {row.head: [plain(cell) for cell in row.cells] for row in side.tables[0].rows}
    assert rows["Your length should be about"] == ["50½″", "66½″", "82½″"]


def test_an_order_that_differs_by_size_is_told_for_each() -> None:
    (top,) = steps(book(demo("late-returns"))).shown[3:]
    orders = {row.head: row.cells[0] for row in top.tables[0].rows}
    assert orders["Crib"] == "S, novels, S, poems, S, rhymes, S."
    assert "poems (turned half round)" in orders["Queen"]


def test_the_binding_counts_what_the_joins_take() -> None:
    """7 strips would give 265 in of the 268 needed: the sum of source fact 6.3."""
    rows = {row.head: row.cells for row in finishing(book(demo("late-returns"))).table.rows}
    assert plain(rows["Binding strips"][1]) == "8, 2½″ wide"
    assert rows["Binding needed"][1] == "268″"
    assert rows["Binding once joined"][1] == "302½″"


def test_the_backing_says_which_way_its_seams_run() -> None:
    rows = {row.head: row.cells for row in finishing(book(demo("late-returns"))).table.rows}
    assert plain(rows["Backing lengths"][1]) == "2, each 67″"
    assert rows["Backing seams run"][1:3] == ("side to side", "top to bottom")


def test_a_baby_quilt_is_no_bedding() -> None:
    """Paediatric and health-service advice, trade facts 13.1 to 13.3: no quilt under one year."""
    cautions = {one.head: one.words for one in back(book(demo("late-returns"))).cautions}
    assert "under one year sleeps with no quilt" in cautions["Quilts and babies"]
    assert set(cautions) == {
        "Rotary cutter", "Iron", "Needle and pins", "Quilts and babies", "Small parts",
    }  # fmt: skip


def test_a_revision_says_what_to_do_if_cut_or_sewn(tmp_path: Path) -> None:
    source = DOORSTEP.replace(
        "    sizes:",
        """    revision: 2
    revisions:
      - number: 2
        date: 2027-01-05
        why: C was 6 1/4 square.
        if-cut: Cut {{ count.C }} again.
        if-sewn: Trim the four to 6 1/4.
    sizes:""",
    )
    page = back(book(written(tmp_path, source), "rug"))
    (change,) = page.changes
    assert plain(change.head) == "Revision 2, 5 January 2027"
    assert (change.why, change.if_cut, change.if_sewn) == (
        "C was 6¼ square.", "Cut 12 again.", "Trim the four to 6¼.",
    )  # fmt: skip
    assert "the first" not in page.newest


def test_the_glossary_has_the_terms_used_and_no_others() -> None:
    used = text(parts(book(demo("late-returns")))["glossary"])
    assert "Selvedge" in used
    assert "Border" not in used
    assert "Border" in text(parts(book(demo("tea-at-four")))["glossary"])


def test_the_level_is_worked_out_where_the_author_is_silent(tmp_path: Path) -> None:
    assert cover(book(written(tmp_path))).level == "Beginner"  # its four-patches have to match
    assert cover(book(demo("late-returns"))).level == "First quilt"
    assert "matching seams" in cover(book(written(tmp_path))).skills
    assert "matching seams" not in cover(book(demo("late-returns"))).skills
