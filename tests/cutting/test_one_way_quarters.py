"""A print with one way up in quarters, eighths and panels: it stands upright in every piece.

A fat quarter of 18 × 21 is half a yard of the bolt by half the width of the cloth; prints run
along the bolt, so up the side of 18 (common practice, no source). The sums are our own arithmetic.
"""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from patternbook.booklet.parts.requirements import requirements
from patternbook.cutting.plan import plan
from patternbook.cutting.records import FabricPlan, Sheet
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece, Quilt, Settings
from patternbook.sewing.plan import plan as plan_sewing
from tests.booklet.small import book, written
from tests.cutting.small import cut, fabric, piece, quilt
from tests.proof.spoiled import codes


def quarters(*pieces: Piece, style: Any = "plain", **more: Any) -> Evidence:
    settings = Settings(cutting=style)
    cloth = fabric(**{"form": "fat quarter", "one_way": True, **more})
    made: Quilt = quilt(*pieces, cloth=cloth, settings=settings)
    cutting, _ = plan(made, full=style != "plain")
    return Evidence(made, (), cutting, plan_sewing(made)[0])


def of(evidence: Evidence) -> FabricPlan:
    return evidence.cutting.fabrics["cloth"]


# 5 × 9 with its print up the 9: four side by side in 21 (20), two rows in 18: eight. With the
# print up the 21 it would be three side by side in 18, two rows: six, and two quarters.
@pytest.mark.parametrize("size", [None, "18 x 21", "21 x 18"])
@pytest.mark.parametrize("style", ["plain", "shared", "thrifty"])
def test_the_print_runs_up_the_shorter_side(size: str | None, style: str) -> None:
    made = quarters(piece("A", "5 x 9", 8), style=style, size=cut(size) if size else None)
    assert of(made).buy.number == 1
    assert {(sheet.across, sheet.down) for sheet in of(made).sheets} == {
        (Fraction(21), Fraction(18))
    }
    assert codes(made) == set()


def test_a_piece_as_long_as_the_longer_side_must_lie_across() -> None:
    """20 × 5 lies across (21), three strips of 5 in 18; 5 × 20 would stand 20 high in 18."""
    assert of(quarters(piece("A", "20 x 5", 3))).buy.number == 1
    made = quarters(piece("A", "5 x 20", 3))
    told = plan(made.quilt)[1]
    assert [one.code for one in told if one.severity == "error"] != []


@pytest.mark.parametrize("style", ["shared", "thrifty"])
def test_strips_may_run_up_the_quarter_and_pieces_stand_upright(style: str) -> None:
    """Six of 3½ × 18 stand side by side in 21, each a strip of its own: one quarter."""
    made = quarters(piece("A", "3 1/2 x 18", 6), piece("B", "2 x 3", 4), style=style)
    assert codes(made) == set()


def test_a_panel_stands_as_its_size_is_stated() -> None:
    made = quarters(piece("A", "20 x 12", 3), form="panel", size=cut("24 x 36"))
    assert [(sheet.across, sheet.down) for sheet in of(made).sheets] == [
        (Fraction(24), Fraction(36))
    ]
    assert codes(made) == set()


@pytest.mark.parametrize("form", ["fat quarter", "panel"])
def test_a_print_lying_down_is_found_by_the_recount(form: str) -> None:
    made = quarters(piece("A", "5 x 4", 8), form=form, size=cut("18 x 21"))

    def turned(sheet: Sheet) -> Sheet:
        return replace(sheet, across=sheet.down, down=sheet.across)

    found = replace(of(made), sheets=tuple(map(turned, of(made).sheets)))
    cutting = replace(made.cutting, fabrics={"cloth": found})
    assert "cut-turned" in codes(replace(made, cutting=cutting))


def test_cloth_of_any_direction_still_lies_either_way() -> None:
    """5 × 20 lies down: three strips of 5 × 21 in 18."""
    made = quarters(piece("A", "5 x 20", 3), one_way=False)
    assert of(made).buy.number == 1
    assert codes(made) == set()


SOURCE = """
    pattern: Sails
    date: 2026-11-25
    sizes: {cot: {finished: 27 x 34}}
    fabrics: {boats: {use: all of it, form: fat quarter, direction: one-way}}
    pieces: {A: {fabric: boats, cut: 5 x 9}}
    top: {rows: [A A A A A A], down: 4}
    """


def test_the_reader_is_told_how_the_print_is_taken_to_run(tmp_path: Path) -> None:
    made = book(written(tmp_path, SOURCE))
    (said,) = (one.replace("\N{NO-BREAK SPACE}", " ") for one in requirements(made).remarks)
    assert "The print is taken to run along the 18″ side of each fat quarter." in said
    assert "where it runs along the other side, you may need more." in said
