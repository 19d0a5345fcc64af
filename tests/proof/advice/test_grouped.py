"""Advice of one code is told once a pattern, with each letter's and each size's amount."""

from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from patternbook.edition.pipeline import examine
from patternbook.notice import Mark, Notice, Place
from patternbook.proof.advice.grouped import grouped
from tests.support import ROOT, Run, WritePattern

CRIB, TWIN = ("crib",), ("twin",)


def advice(message: str, sizes: tuple[str, ...], line: int, code: str = "exact-count") -> Notice:
    place = (Mark(Place("pattern.yaml", line, 1, line, 9), "here"),)
    return Notice(code, "advice", "cutting", message, place, "R5", sizes)


def spare(letter: str, strips: str, gives: int) -> str:
    return f"{letter}: {strips} give exactly {gives}. There is none to spare."


def test_letters_and_sizes_each_with_its_amount() -> None:
    """The later line first, and the sizes against their order: told in the pattern's own."""
    (one,) = grouped(
        [
            advice(spare("B", "3 strips of 8", 24), TWIN, 5),
            advice(spare("A", "9 strips of 5", 45), TWIN, 4),
            advice(spare("A", "6 strips of 5", 30), CRIB, 4),
        ],
        ("crib", "twin"),
    )
    assert one.message == (
        "A: 6 strips of 5 give exactly 30 (crib); 9 strips of 5 give exactly 45 (twin); "
        "B: 3 strips of 8 give exactly 24 (twin). There is none to spare."
    )
    assert one.sizes == ("crib", "twin")
    assert [mark.place.line for mark in one.marks] == [4, 5]


def test_letters_with_one_figure_stand_together() -> None:
    told = [
        advice(spare(letter, "2 strips of 3", 6), CRIB, 4 + at) for at, letter in enumerate("ABC")
    ]
    (one,) = grouped(told, ("crib", "twin"))
    assert one.message == ("A, B and C: 2 strips of 3 give exactly 6. There is none to spare.")
    assert one.sizes == CRIB


def test_a_sentence_reads_on_behind_its_figures() -> None:
    words = "places are pressed the same way."
    told = [
        replace(advice(f"'top': at {at} {words}", size, 9, "press-blocks"), hint="Turn one.")
        for at, size in (("3 of the 9", CRIB), ("5 of the 14", TWIN))
    ]
    (one,) = grouped(told, ("crib", "twin"))
    assert one.message == f"'top': at 3 of the 9 (crib); at 5 of the 14 (twin) {words}"
    assert one.hint == "Turn one."


def test_a_bare_figure_at_the_end_is_no_such_sentence() -> None:
    told = [
        advice(spare("G", "5 strips of 4", 20), CRIB, 4),
        advice(spare("L", "1 of 20", 20), CRIB, 5),
    ]
    (one,) = grouped(told, CRIB)
    assert one.message.startswith("G: 5 strips of 4 give exactly 20; L: 1 of 20 give exactly 20.")


def test_used_up_and_none_to_spare_are_one_cause() -> None:
    """A lies 10 × 4 = 40 in a strip of 40, and 22 such strips give 220, all that are needed."""
    fit = advice("A: 10 × 4 = 40″ of 40″. A shorter strip would not do.", CRIB, 4, "exact-fit")
    count = advice(spare("A", "22 strips of 10", 220), CRIB, 4)
    other = advice(spare("M", "10 strips of 11", 110), CRIB, 7)
    one, two = grouped([count, fit, other], CRIB)
    assert (one.code, one.message) == ("exact-fit", f"{fit.message} {count.message}")
    assert two == other


def test_the_needed_figure_is_kept_where_it_is_one() -> None:
    def rule(size: tuple[str, ...], needed: str) -> Notice:
        told = advice(f"binding: {needed} strips.", size, 8, "binding-rule")
        return replace(told, needed=needed)

    (same,) = grouped([rule(CRIB, "8"), rule(TWIN, "8")], ("crib", "twin"))
    (apart,) = grouped([rule(CRIB, "8"), rule(TWIN, "11")], ("crib", "twin"))
    assert (same.needed, apart.needed) == ("8", None)
    assert apart.message == "binding: 8 strips (crib); 11 strips (twin)."


def test_faults_and_advice_on_a_single_figure_stay_where_they_are() -> None:
    faults = [Notice("yards-short", "error", "cutting", f"{n} short.") for n in (1, 2)]
    trust = [Notice("on-trust", "advice", "quilt", f"top {n} wide.") for n in (36, 54)]
    assert set(grouped([*faults, *trust], CRIB)) == {*faults, *trust}


SOURCE = """
pattern: Two Cloths
sizes: {crib: {down: 10}, twin: {down: 20}}
fabrics: {dark: {tone: dark}, light: {tone: light}}
pieces: {A: {fabric: dark, cut: 6 square}, B: {fabric: light, cut: 6 square}}
top: {rows: [A B, B A], across: 6, down: down}
"""


def test_the_whole_way_from_a_source(run: Run, pattern: WritePattern) -> None:
    """40 ÷ 6 = 6 a strip. 3 × 10 = 30 of each are 5 strips, and 3 × 20 = 60 are 10."""
    notices = run("check", pattern(SOURCE), "--json").json()["notices"]
    (one,) = [notice for notice in notices if notice["code"] == "exact-count"]
    assert one["message"] == (
        "A and B: 5 strips of 6 give exactly 30 (crib); 10 strips of 6 give exactly 60 (twin). "
        "There is none to spare."
    )
    assert one["sizes"] == ["crib", "twin"]
    assert {place["line"] for place in one["places"]} == {4}
    assert [place["column"] for place in one["places"]] == [33, 10, 68, 44]


@pytest.mark.parametrize("path", sorted((ROOT / "patterns").glob("*/pattern.yaml")), ids=str)
def test_a_beginner_reads_a_handful(path: Path) -> None:
    """No code twice in a pattern, but where the hints differ or a single figure is meant."""
    told = [one for one in examine(path, "pattern.yaml").notices if one.severity == "advice"]
    assert len(told) <= 7
    each = Counter((one.code, one.hint) for one in told if one.stage != "quilt")
    assert set(each.values()) <= {1}
