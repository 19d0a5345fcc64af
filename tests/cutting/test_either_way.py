"""Long pieces lie along the cloth where that buys less and the author leaves it open.

The sums of these tests are our own arithmetic, on cloth 40 wide with nothing spare. Four strips
for a mitred border, 9½ × 60½. Across the cloth: 4 × 60½ = 242 of strips sewn end to end, each
straight join taking two seams of ¼: six are 6 × 40 − 5 × ½ = 237½, too few; seven take
7 × 9½ = 66½ of cloth, 15 eighths of a yard (of 4½). Along it: 4 × 9½ = 38 of the 40, side by
side, 60½ of cloth, 14 eighths.
"""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from patternbook.booklet.labels import label_sheets
from patternbook.booklet.style_words import how_planned
from patternbook.cutting.as_laid import as_laid, as_said
from patternbook.cutting.plan import plan
from patternbook.cutting.records import FabricPlan
from patternbook.edition.pipeline import Examined
from patternbook.edition.printing import printed
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Quilt, Settings
from patternbook.sewing.records import BorderStep
from tests.booklet.small import book, written
from tests.cutting.small import fabric, piece, quilt, strip
from tests.proof.spoiled import codes

SHARED = Settings(cutting="shared", spare=Fraction(0), straightening=Fraction(0))


def framed(*others: Any, wide: str = "9 1/2", **more: Any) -> Quilt:
    """Four border strips of the one cloth, beside other letters."""
    border = strip("F", wide, ("60 1/2", 4), join="straight", **more)
    return quilt(border, *others, settings=SHARED)


def cloth(made: Quilt) -> FabricPlan:
    return plan(made, full=True)[0].fabrics["cloth"]


def lies(made: FabricPlan) -> set[str]:
    return {strip.along for strip in made.strips if "F" in strip.letters}


def test_along_the_cloth_where_less_is_bought() -> None:
    found = cloth(framed())
    assert (lies(found), found.length, found.buy.amount) == (
        {"length"}, Fraction(121, 2), Fraction(14, 8),
    )  # fmt: skip
    (across,) = found.other_ways
    assert (lies(across), across.length, across.buy.amount) == (
        {"width"}, Fraction(133, 2), Fraction(15, 8),
    )  # fmt: skip


def test_across_it_where_that_buys_no_more() -> None:
    """Strips 9 wide: 7 × 9 = 63 is 14 eighths to a hair, and so is 60½ rounded up."""
    made = framed(wide="9")
    assert (lies(cloth(made)), cloth(made).length) == ({"width"}, Fraction(63))
    told = [one for one in plan(made, full=True)[1] if one.code == "lengthwise"]
    assert ["the purchase stays 1 3/4 yd" in one.message for one in told] == [True]


def test_what_lies_beside_them_counts_too() -> None:
    """Two of 8 × 60½ along the cloth leave a width of 24, where 12 squares of 12 lie two by two
    in 6 rows, 72 high: 5 of them beside the strips (60), one below, 12 more: 72½. Across:
    121 of strips are 4 (158½ ≥ 121), 4 × 8 = 32, and 12 squares 3 to a strip 4 × 12 = 48: 80."""
    border = strip("F", "8", ("60 1/2", 2), join="straight")
    found = cloth(quilt(border, piece("A", "12 square", 12), settings=SHARED))
    assert (lies(found), found.length) == ({"length"}, Fraction(145, 2))
    assert any(strip.beside for strip in found.strips)
    assert found.other_ways[0].length == 80


@pytest.mark.parametrize("said", [{"along": "width"}, {"strips": 7}])
def test_what_the_author_says_holds(said: dict[str, Any]) -> None:
    place = quilt().place
    words: dict[str, Any] = {"key_places": {"along": place}} if "along" in said else {
        "stated_strips": 7
    }  # fmt: skip
    assert lies(cloth(framed(**words))) == {"width"}


def test_plain_cutting_lays_nothing_along_the_cloth_by_itself() -> None:
    plain = replace(framed(), settings=replace(SHARED, cutting="plain"))
    assert lies(cloth(plain)) == {"width"}
    told = [one for one in plan(plain, full=True)[1] if one.code == "lengthwise"]
    assert ["1 3/4 yd would do instead of 1 7/8." in one.message for one in told] == [True]


def test_a_print_with_one_way_up_stays_across() -> None:
    made = framed()
    one_way = replace(made, fabrics={"cloth": fabric(one_way=True)})
    assert lies(cloth(one_way)) == {"width"}


def test_the_quilt_as_it_is_laid_and_as_it_is_said() -> None:
    made = framed()
    laid = as_laid(made, plan(made, full=True)[0])
    assert (laid.pieces["F"].along, as_said(laid).pieces["F"].along) == ("length", "width")


# ---- through a source: sewing and booklet follow

FRAME = """
    pattern: Window frame
    settings: {cutting: STYLE, spare: 0, straightening: 0}
    sizes:
      window: {finished: 60 x 60}
    fabrics:
      glass: {use: the middle, tone: light, width: 60}
      frame: {use: borders, tone: dark, width: 40}
    pieces:
      A: {fabric: glass, cut: 42 1/2 square}
      F: {fabric: frame, cut: 9 1/2 x WOF, join: straightMORE}
    top:
      layout: [A]
      borders: [{strip: F, corners: mitred}]
    """


def window(folder: Path, style: str = "shared", more: str = "") -> Examined:
    text = FRAME.replace("STYLE", style).replace("MORE", more)
    return written(folder, text.replace("layout", "rows"), full=True)


def of(examined: Examined) -> tuple[Evidence, FabricPlan, bool]:
    known = examined.sizes["window"]
    steps = [step for step in known.sewing.steps if isinstance(step, BorderStep)]
    return known, known.cutting.fabrics["frame"], any(step.joined for step in steps)


@pytest.mark.parametrize("style", ["shared", "thrifty"])
def test_the_booklet_says_so_and_nothing_is_joined(tmp_path: Path, style: str) -> None:
    examined = window(tmp_path, style)
    _, made, joined = of(examined)
    assert (lies(made), joined) == ({"length"}, False)
    said = how_planned(book(examined)).replace("\N{NO-BREAK SPACE}", " ")
    assert (
        "F of Frame is cut along the length of the cloth: across it you would buy ⅛ yd more."
        in said
    )


def test_its_booklet_reads_back(tmp_path: Path) -> None:
    """All of it, with how much longer than its edge a mitred strip is cut: 2 × 9 and two seams."""
    files, told = printed(window(tmp_path), ("a4",), None, ("full",), lambda _: None)
    assert ([one.message for one in told], len(files)) == ([], 2)


def test_the_label_of_its_pile_has_their_size(tmp_path: Path) -> None:
    """42 + 2 × 9 and 1 more, as mitred strips are cut (trade facts 5.32): 61."""
    labels = label_sheets(book(window(tmp_path)))
    assert "9½ × 61″" in labels.html.replace("\N{NO-BREAK SPACE}", " ")
    assert "4 lengths" in labels.html.replace("\N{NO-BREAK SPACE}", " ")


def test_where_she_says_across_the_strips_are_joined(tmp_path: Path) -> None:
    examined = window(tmp_path, more=", along: width")
    _, made, joined = of(examined)
    assert (lies(made), joined, made.other_ways) == ({"width"}, True, ())
    assert "along the length" not in how_planned(book(examined))


# ---- and the recounts hold it to that


def test_what_is_told_of_other_ways_is_recounted(tmp_path: Path) -> None:
    known, made, _ = of(window(tmp_path))
    (across,) = made.other_ways

    def told(**changes: Any) -> set[str]:
        fabrics = {**known.cutting.fabrics, "frame": replace(made, **changes)}
        return codes(replace(known, cutting=replace(known.cutting, fabrics=fabrics)))

    assert told() == set()
    lower = replace(across, bound=made.bound - 1)
    assert told(other_ways=(lower,)) == {"bound-high"}
    shorter = replace(across, length=Fraction(50), bound=made.bound)
    assert "bound-told" in told(other_ways=(shorter,))


def test_pieces_lie_as_they_are_sewn(tmp_path: Path) -> None:
    known, _, _ = of(window(tmp_path))
    said = as_said(known.quilt)
    assert codes(known) == set()
    assert codes(replace(known, quilt=said)) == {"cut-turned"}
