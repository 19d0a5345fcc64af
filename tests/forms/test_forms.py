"""Cloth forms: how large they are, how strips lie in them; each is one file and one line.

The numbers in brackets are rows of the trade facts; every source stands beside its check.
"""

from fractions import Fraction

import pytest

from patternbook.forms import FORMS, by_length, by_name
from patternbook.forms.form import Lie, Stock
from patternbook.inch import CENTIMETRES, INCHES
from tests.support import PACKAGE, Run, WritePattern

WASHED = Fraction(1)


def test_a_form_is_one_file_and_one_line() -> None:
    files = {file.stem for file in (PACKAGE / "forms").glob("*.py")} - {"__init__", "form"}
    assert {form.name.replace(" ", "_") for form in FORMS} == files


@pytest.mark.parametrize(
    ("form", "inches", "centimetres"),
    [
        # (4.4) 18 × 22, 18 × 21 or 18 × 20 in, the small usable one of the second:
        # anniescatalog.com, quilting content 804; (3.6) 50 × 53.5 cm from 107 cm wide cloth:
        # beyond-fabrics.co.uk.
        ("fat quarter", (18, 21), (50, Fraction("53.5"))),
        # (4.5) 9 × 21 in, the same source; half a fat quarter in centimetres: common practice,
        # no source.
        ("fat eighth", (9, 21), (25, Fraction("53.5"))),
    ],
)
def test_small_usable_sizes(
    form: str, inches: tuple[int, int], centimetres: tuple[int, Fraction]
) -> None:
    sizes: list[object] = [by_name[form].size(None, of) for of in (INCHES, CENTIMETRES)]
    assert sizes == [inches, centimetres]


def test_a_stated_size_is_believed() -> None:
    """(4.4) An 18 × 22 in quarter is a quarter of 36 × 44: sew4home.com, glossary."""
    stated = Fraction(18), Fraction(22)
    assert by_name["fat quarter"].size(stated, INCHES) == stated


def test_panels_and_squares_have_no_usual_size() -> None:
    assert by_name["panel"].size(None, INCHES) is by_name["squares"].size(None, INCHES) is None


def test_wide_backing_is_sold_108_wide() -> None:
    """(3.5) 108 in: katieskitchenblog.com; (3.4) selvedges of 1 in or less: scribd.com 583268903.
    270 cm: common practice, no source."""
    wide = by_name["wide backing"]
    assert wide.width(INCHES, WASHED) == 106
    assert wide.width(CENTIMETRES, WASHED) == 265
    assert wide.width(INCHES, Fraction(97, 100)) == Fraction("102.75")  # 104.76 − 2, on a mark
    assert by_name["yardage"].width(INCHES, WASHED) is None


def test_which_are_bought_by_length() -> None:
    assert [form.name for form in FORMS if by_length(form.name)] == ["yardage", "wide backing"]


def test_strips_lie_either_way_in_a_fat_quarter() -> None:
    stock = Stock(Fraction(40), (Fraction(18), Fraction(21)), one_way=False)
    across, down = Lie(Fraction(18), deep=Fraction(21)), Lie(Fraction(21), deep=Fraction(18))
    ways = list(by_name["fat quarter"].ways(stock))
    assert {way._replace(long_side=False, turned=False) for way in ways} == {across, down}
    assert len(ways) == 4


@pytest.mark.parametrize("size", [("18", "21"), ("21", "18")])
def test_a_one_way_print_runs_along_the_bolt(size: tuple[str, str]) -> None:
    """A quarter is half a yard of the bolt, 18, by half the width of the cloth (trade facts 4.4);
    its selvedge is on the shorter side, and the print runs along the selvedge (common practice, no
    source). A panel's print stands as its size is stated, width before length."""
    stock = Stock(Fraction(40), (Fraction(size[0]), Fraction(size[1])), one_way=True)
    assert list(by_name["fat quarter"].ways(stock)) == [Lie(Fraction(21), deep=Fraction(18))]
    assert list(by_name["panel"].ways(stock)) == [Lie(Fraction(size[0]), deep=Fraction(size[1]))]


def test_strips_of_no_stated_length_are_as_long_as_cloth_is_wide() -> None:
    """(4.1) "40, 42 or 44: read the packet": carmelascreations.com, guide to precuts."""
    stock = Stock(Fraction(42), (Fraction("2.5"), None), one_way=False)
    assert list(by_name["strip roll"].ways(stock)) == [Lie(Fraction(42), Fraction("2.5"))]


SOURCE = """
pattern: Any form
fabrics: {{cloth: {{use: all of it, form: {form}, size: 10 square}}}}
pieces: {{A: {{fabric: cloth, cut: 5 square, count: 8}}}}
"""


@pytest.mark.parametrize("form", [form.name for form in FORMS])
def test_a_source_may_name_any_form(run: Run, pattern: WritePattern, form: str) -> None:
    ran = run("check", pattern(SOURCE.format(form=form)))
    assert "error" not in ran.err.replace("strip-narrow", "")


def test_an_unknown_form_is_told_with_the_known_ones(run: Run, pattern: WritePattern) -> None:
    ran = run("check", pattern(SOURCE.format(form="remnant")))
    assert ran.code == 1
    assert all(form.name in ran.err for form in FORMS)
