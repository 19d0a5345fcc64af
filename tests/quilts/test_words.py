"""The words of the quilting pages: finished sentences and numbers, made from the plan."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from patternbook.booklet.book import Row
from patternbook.booklet.quilting.areas import areas_table, seams_in, why
from patternbook.booklet.quilting.before import before, cautions
from patternbook.booklet.quilting.choices import choices
from patternbook.booklet.quilting.close import closes
from patternbook.booklet.quilting.figures import figures_table
from patternbook.booklet.quilting.hand_over import hand_over
from patternbook.booklet.quilting.html import html
from patternbook.booklet.quilting.marking import marking
from patternbook.booklet.quilting.measures import (
    at_most,
    hours,
    in_shop,
    percent,
    spread,
    thread,
    told,
    way,
    where,
)
from patternbook.booklet.quilting.part import part
from patternbook.booklet.quilting.practice import practice
from patternbook.booklet.quilting.steps import steps
from patternbook.inch import CENTIMETRES, INCHES
from patternbook.quilting.records import Drawn, Leg, Path, Spot, Walk
from tests.quilts.small import hand_plan, quilt_book
from tests.support import Golden

SP = "\N{NO-BREAK SPACE}"
BOOK = quilt_book("low-water", "crib")
PLAN = hand_plan("low-water", "crib")
EMPTY = Drawn((), 0.0)


def plain(text: str) -> str:
    return text.replace(SP, " ")


def test_the_areas_of_a_size() -> None:
    assert [
        tuple(map(plain, (row.head, *row.cells))) for row in areas_table(PLAN, INCHES).rows
    ] == [
        ("P", "7", "open band", "straight lines", "1½″", "walking foot", "none"),
        ("Q", "3", "piecing", "straight lines", "1½″", "walking foot", "40″"),
    ]


def test_an_area_that_is_left_open_says_so() -> None:
    bare = replace(PLAN, fills=tuple(one for one in PLAN.fills if one.area.letter == "P"))
    assert areas_table(bare, INCHES).rows[1].cells[2:5] == ("left open", "–", "–")


def test_why_tells_the_seams_that_were_measured() -> None:
    last = [*why(PLAN, INCHES)][-1]
    assert plain(last) == (
        "P is the plainest (no seams in it); Q is the busiest (40″ of seams); straight lines suit "
        "both."
    )


def test_seams_in_a_square_of_ten_by_ten() -> None:
    """0.4 inches of seam to the square inch are 40 inches to a hundred square inches."""
    areas = tuple(area for area in PLAN.divided.areas if area.letter == "Q")
    assert seams_in(areas, INCHES) == "40″"


def test_the_figures_are_those_of_the_plan() -> None:
    rows = {row.head: tuple(map(plain, row.cells)) for row in figures_table(BOOK).rows}
    assert rows == {
        "Stitching, about": ("56 yd",),
        "Thread on top, about": ("60 yd",),
        "Thread in the bobbins, about": ("60 yd",),
        "Bobbins": ("2",),
        "Planned starts": ("3",),
        "Bobbin changes on the way": ("1",),
        "Hours at the machine": ("1¼ to 2½",),
        "Widest place without stitches": ("2⅛″",),
        "The same, binding not counted": ("3½″",),
        "The batting allows": ("4″, assumed",),
        "Spread of the density": ("5 %",),
        "Stitched again": ("5 %",),
        "Most threads over one another": ("2",),
    }


def test_a_column_for_each_size() -> None:
    table = figures_table(quilt_book("low-water"))
    assert table.head == ("", "Crib", "Throw", "Queen")
    assert all(len(row.cells) == 3 for row in table.rows)


def test_the_first_step_in_words() -> None:
    first = steps(BOOK, "crib")[0]
    assert first.title == "Step 1: hold the layers together (walking foot)"
    assert [plain(line) for line in first.shown[0].words] == [
        "S1: start on the left edge, 6″ from the top edge.",
        "1 to 9 in the ditch: right and left in turn.",
        "E1: stop on the right edge, 6″ from the bottom edge; cut the thread.",
        "S2: start on the top edge, 3″ from the left edge.",
        "10 on the marked line: down.",
        "E2: stop 3″ from the left edge and 6″ from the top edge; cut the thread.",
    ]


def test_the_second_step_goes_from_area_to_area_and_says_where_a_new_bobbin_goes_in() -> None:
    shown = steps(BOOK, "crib")[1].shown[0]
    assert [plain(line) for line in shown.words][1] == "1 to 7 P, 8 to 10 Q."
    assert (
        plain(shown.words[-1])
        == "B: fill in a new bobbin on the right edge, 21″ from the top edge."
    )


def test_starts_stand_beside_bobbin_changes() -> None:
    told_ = [plain(step.intro[1]) for step in steps(BOOK, "crib")]
    assert told_[0].startswith("2 planned starts, no bobbin change on the way.")
    assert told_[1].startswith("1 planned start, 1 bobbin change on the way.")
    assert told_[0].endswith("(no way straight on over the crossings takes less).")


def test_many_short_threads_are_told_together() -> None:
    walks = tuple(Walk((Leg("fill", one.drawn.paths[0], one.area.key),)) for one in PLAN.fills)
    stage = replace(PLAN.stages[1], walks=walks)
    one = replace(BOOK, plans={"crib": replace(PLAN, stages=(PLAN.stages[0], stage))})
    assert plain(steps(one, "crib")[1].shown[0].words[0]) == (
        "1 to 7 P, 8 to 10 Q. Each of S1 to S10 is a start of its own; stop at the E of the same "
        "number and cut the thread."
    )


def test_a_channel_of_its_own_lines_has_no_spacing_and_no_close_up() -> None:
    bare = tuple(
        replace(one, design="its own lines", drawn=Drawn((), 0.0))
        if one.area.letter == "Q"
        else one
        for one in PLAN.fills
    )
    plan = replace(PLAN, fills=bare)
    assert areas_table(plan, INCHES).rows[1].cells[2:4] == ("its own lines", "–")
    one = replace(BOOK, plans={"crib": plan})
    assert [shown.title for shown in closes(one, "crib")] == ["P: straight lines"]
    assert [element.figure.caption for element in practice(one).elements] == ["Straight lines"]


def test_what_to_mark() -> None:
    found = marking(BOOK, "crib")
    assert found is not None
    assert found.lines == (
        "A line down from the top edge, 3″ from the left edge, to the first long seam.",
    )
    bare = replace(PLAN, divided=replace(PLAN.divided, marked=()))
    assert marking(replace(BOOK, plans={"crib": bare}), "crib") is None


def test_every_letter_close_up_with_its_way_out_of_a_corner() -> None:
    found = closes(BOOK, "crib")
    assert [one.title for one in found] == ["P: straight lines", "Q: straight lines"]
    assert plain(found[0].words[0]) == "7 areas, lines 1½″ apart, walking foot."
    assert any(line.startswith("Out of a corner: ") for line in found[0].words)


def test_what_an_earlier_size_shows_is_not_shown_again() -> None:
    twice = replace(BOOK, plans={"crib": PLAN, "throw": PLAN})
    assert closes(twice, "throw") == ()


def test_other_ways_to_sew_it() -> None:
    assert choices(PLAN).rows == (
        Row("P", ("wavy lines", "–", "meander")),
        Row("Q", ("straight lines", "straight lines", "–")),
    )
    alike = replace(PLAN, others={"P": PLAN.others["P"], "Q": PLAN.others["P"]})
    assert choices(alike).rows == (Row("P, Q", ("wavy lines", "–", "meander")),)


def test_before_the_first_stitch() -> None:
    heads = [head for head, _ in before(BOOK)]
    assert heads == ["Layers", "Test piece", "Needle", "Thread", "Bobbins", "Starting and stopping"]
    words = dict(before(BOOK))
    assert "same colour in the bobbin" in words["Thread"]
    assert "Two colours only on purpose" in words["Thread"]
    assert plain(words["Bobbins"]).startswith("Wind them first: 2 bobbins.")


def test_what_can_hurt_is_said_and_others_are_deferred_to() -> None:
    told_ = {one.head: one.words for one in cautions()}
    assert {"Iron", "Needle and pins", "Quilts and babies", "Threads"} <= set(told_)
    assert "Ask your health visitor or doctor" in told_["Quilts and babies"]
    assert "Local rules" in html(BOOK).html


def test_the_page_for_a_long_arm_quilter() -> None:
    page = hand_over(BOOK)
    rows = {row.head: plain(row.cells[0]) for row in page.table.rows}
    assert rows["Top, finished"] == "36 × 42″"
    assert rows["Backing, at least"] == "44 × 50″"
    assert rows["Lines no farther apart than"] == "4″, assumed"
    assert rows["Density: lines about"] == "1½″ apart"
    wanted = " ".join(page.blanks)
    for word in ("Top edge", "All-over or custom", "Thread colour", "Trimmed"):
        assert word in wanted


def test_practice_shows_each_design_once() -> None:
    assert [one.figure.caption for one in practice(BOOK).elements] == ["Straight lines"]


def test_the_part_in_the_booklet(golden: Golden) -> None:
    found = part(quilt_book("low-water"))
    assert found is not None
    assert found.areas.caption == "The areas (Crib)"
    lines = [*found.steps, found.areas.caption, found.figures.caption]
    for table in (found.areas, found.figures):
        lines += [" | ".join(table.head)]
        lines += [" | ".join((row.head, *row.cells)) for row in table.rows]
    golden("\n".join(lines) + "\n", "quilts/part.txt")


def test_the_pages_of_a_size(golden: Golden) -> None:
    golden(html(replace(BOOK, designs={})).html, "quilts/pages.html")


@pytest.mark.parametrize(
    ("value", "said"), [(1.5, "1½″"), (1.49, "1½″"), (0.88, "⅞″"), (2.0, "2″"), (1.44, "1½″")]
)
def test_spacings_are_told_in_eighths(value: float, said: str) -> None:
    assert told(value, INCHES) == said
    assert told(3.8, CENTIMETRES) == f"3.75{SP}cm"


@pytest.mark.parametrize(
    ("gap", "said"), [(2.125, "2⅛″"), (2.13, "2¼″"), (2.9995, "3″"), (3.001, "3″"), (3.01, "3⅛″")]
)
def test_a_gap_is_never_told_smaller_than_it_is(gap: float, said: str) -> None:
    assert at_most(gap, INCHES) == said


def test_no_gap_is_told_where_nothing_is_stitched() -> None:
    assert at_most(math.inf, INCHES) == "–"


def test_amounts_are_rounded_up() -> None:
    assert plain(in_shop(36 * 2.1, INCHES)) == "2½ yd"
    assert plain(in_shop(36 * 10.1, INCHES)) == "11 yd"
    assert plain(in_shop(100 * 3.0, CENTIMETRES)) == "3 m"
    assert plain(thread(51.0, INCHES)) == "60 yd"
    assert plain(percent(0.051)) == "6 %"
    assert plain(percent(0.0)) == "0 %"


def test_hours_are_a_range() -> None:
    assert plain(hours(1.3, 2.3)) == "1¼ to 2½"
    assert plain(hours(12.4, 20.2)) == "12 to 21"
    assert plain(hours(0.1, 0.2)) == "¼"


def test_spacings_that_differ_are_a_range() -> None:
    assert plain(spread([1.0, 1.5, 1.25], INCHES)) == "1 to 1½″"


@pytest.mark.parametrize(
    ("spot", "said"),
    [
        ((0.0, 6.0), "on the left edge, 6″ from the top edge"),
        ((36.0, 40.0), "on the right edge, 2″ from the bottom edge"),
        ((30.0, 42.0), "on the bottom edge, 6″ from the right edge"),
        ((0.0, 0.1), "at the top left corner"),
        ((36.0, 42.0), "at the bottom right corner"),
        ((10.0, 30.0), "10″ from the left edge and 12″ from the bottom edge"),
    ],
)
def test_places_are_told_from_the_nearest_edges(spot: Spot, said: str) -> None:
    assert where(spot, PLAN.top, INCHES) == said


@pytest.mark.parametrize(
    ("path", "said"),
    [
        (((0, 0), (9, 0)), "right"),
        (((9, 0), (0, 1)), "left"),
        (((0, 0), (0, 9)), "down"),
        (((5, 5), (0, 0)), "up and left"),
        (((0, 0), (9, 0), (9, 9)), ""),
    ],
)
def test_ways_are_told_as_the_picture_shows_them(path: Path, said: str) -> None:
    assert way(path) == said
