"""Blocks cut apart: the nine-patch in four, what is measured from which seam, and what cannot be.

The disappearing nine-patch, nine squares cut s: the block measures 3s - 1, a part (3s - 1) ÷ 2, and
finishes (3s - 2) ÷ 2; https://raevenfea.com/quilting/disappearing-nine-patch/
"""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.methods.made import PiecedMade, Placed, Sides
from patternbook.quilt.records import Unit
from tests.methods.test_logs import quilt
from tests.published.reading import one_size, told
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

NINE = """
pattern: Nine in Four
sizes: {one: {numbers}}
pieces:
  A: {cut: SQUARE square}
  B: {cut: SQUARE square}
  C: {cut: SQUARE square}
units:
  nine: {rows: [A B A, B C B, A B A]}
  part: {method: cut apart, from: nine, ACROSS}
top: {rows: [part part/right, part/left part/half], across: 6, down: 7}
""".replace("{numbers}", "{}")


def nine(square: str = "5", parts: str = "across: 2, down: 2") -> str:
    return NINE.replace("SQUARE", square).replace("ACROSS", parts)


def test_the_nine_patch_in_four(run: Run, pattern: WritePattern) -> None:
    # s 5: 3 × 5 - 1 = 14; 14 ÷ 2 = 7; 7 - ½ = 6½. 6 × 7 = 42 parts ÷ 4 → 11 blocks, 99 squares.
    figures = one_size(run, pattern(nine()))
    block, part = figures["units"]["nine"], figures["units"]["part"]
    assert block["measure"]["across"]["value"] == "14"
    assert part["measure"]["across"]["value"] == "7"
    assert part["finished"]["across"]["value"] == "6 1/2"
    assert (block["make"]["value"], part["make"]["value"]) == ("11", "42")
    assert {n: p["count"]["value"] for n, p in figures["pieces"].items()} == {
        "A": "44",
        "B": "44",
        "C": "11",
    }


def unit(folder: Path, text: str, name: str = "part") -> tuple[Unit, PiecedMade]:
    found = worked_out(folder, text).sizes["one"].units[name]
    assert isinstance(found.made, PiecedMade)
    return found, found.made


def box(part: Placed) -> tuple[str, ...]:
    return part.part, *(plain(side) for side in (part.x, part.y, part.across, part.down))


def test_the_part_is_what_lies_at_the_top_left(tmp_path: Path) -> None:
    """The square whole (4½), half of its neighbours (2¼ less a seam), a quarter of the middle."""
    found, made = unit(tmp_path, nine())
    assert [box(part) for part in found.placed] == [
        ("A", "0", "0", "4 1/2", "4 1/2"),
        ("B", "4 1/2", "0", "2", "4 1/2"),
        ("B", "0", "4 1/2", "4 1/2", "2"),
        ("C", "4 1/2", "4 1/2", "2", "2"),
    ]
    assert (made.gives, made.goes, made.stitched) == (4, 11, 0)


def test_cuts_are_measured_from_the_seams(tmp_path: Path) -> None:
    """The cut runs 6¾ finished from the edge, the seams of the middle at 4½ and 9: 2¼ from both."""
    _, made = unit(tmp_path, nine())
    lay, down, across, done = made.actions
    assert "measured from the seams beside it and not from the edge" in lay.words
    assert down.words == "Cut down: lay the ruler {0} from the seams on both sides of the cut."
    assert across.words.startswith("Do not move the parts. Cut across: lay the ruler {0}")
    assert [plain(down.figures[0]), plain(across.figures[0])] == ["2 1/4", "2 1/4"]  # type: ignore[arg-type]
    assert done.figures == (Sides(Exact(7), Exact(7)),)


TRIANGLES = """
pattern: Triangles in Four
sizes: {one: {}}
pieces: {A: {cut: 6 7/8 square}, B: {cut: 6 7/8 square}, D: {cut: 6 1/2 x 6 1/2}}
settings: {trimming: 0}
units:
  half: {method: half-square triangles, from: A B}
  block: {rows: [D half D, half D half, D half D]}
  part: {method: cut apart, from: block, across: 2, down: 2}
"""


def test_triangles_are_cut_through_exactly(tmp_path: Path) -> None:
    """Blocks of 6: the cut runs 2¾ into the second one, whose seam runs from its top right."""
    found, _ = unit(tmp_path, TRIANGLES)
    assert found.finished == Sides(Exact(35) / 4, Exact(35) / 4)
    shapes = [part.outline for part in found.placed if part.outline]
    assert sum(len(shape.corners) for shape in shapes) > 0
    area = sum((_area(part) for part in found.placed), Exact(0))
    assert area == found.finished.across * found.finished.down


def _area(part: Placed) -> Exact:
    if part.outline is None:
        return part.across * part.down
    corners = part.outline.corners
    twice = sum(
        (
            before.x * spot.y - spot.x * before.y
            for before, spot in zip((corners[-1], *corners), corners, strict=False)
        ),
        Exact(0),
    )
    return twice / 2


# ---- bad input


FOUR = nine().replace("A B A, B C B, A B A", "A B, C A")


@pytest.mark.parametrize(
    ("text", "code", "hint"),
    [
        (FOUR, "cut-on-seam", "Cut it into another number"),
        (nine(parts="across: 3, down: 3"), "cut-on-seam", "Cut it into another number"),
        (nine(parts="across: 1"), "cut-apart-parts", "Write `across: 2`"),
        (nine(parts="across: 40"), "cut-apart-parts", "Write `across: 2`"),
        (nine().replace("from: nine", "from: A"), "cut-apart-piece", "Name the block"),
    ],
)
def test_bad_input(run: Run, pattern: WritePattern, text: str, code: str, hint: str) -> None:
    notices = told(run, [pattern(text)])["trial"]
    assert {one["code"] for one in notices} - {"finished-size"} == {code}
    assert all(one["hint"].startswith(hint) for one in notices if one["code"] == code)


def test_a_share_off_the_ruler_names_the_nearest_blocks(run: Run, pattern: WritePattern) -> None:
    # 3 × 4⅝ - 1 = 12⅞; ÷ 2 = 6 7⁄16. On the ruler (halves of ¼): 12¾ and 13.
    notices = run("check", pattern(nine("4 5/8")), "--json").json()["notices"]
    (one,) = [notice for notice in notices if notice["code"] == "cut-off-ruler"]
    assert one["hint"] == "A block that measures 12 3/4 or 13 would do."


@pytest.mark.parametrize(
    ("rows", "differ"),
    [
        ("A B A, B C B, A B A", False),
        ("A B C, B C B, A B A", True),
        ("A B A, C A C, A B A", True),
    ],
)
def test_parts_that_differ_are_told(
    run: Run, pattern: WritePattern, rows: str, differ: bool
) -> None:
    text = nine().replace("A B A, B C B, A B A", rows)
    codes = {one["code"] for one in run("check", pattern(text), "--json").json()["notices"]}
    assert ("parts-differ" in codes) is differ


@given(st.integers(12, 40).map(lambda quarters: plain(Exact(quarters) / 4)))
def test_its_patches_tile_the_part(square: str) -> None:
    """Whatever the squares; the proof of `check` tiles the whole top besides."""
    part = quilt(nine(square), 7).units["part"]
    area = sum((one.across * one.down for one in part.placed), Exact(0))
    assert area == part.finished.across * part.finished.down


CURVES = """
pattern: Curves in Four
pieces:
  P: {template: quarter circle, radius: 4}
  G: {cut: 6 1/2 square, template: quarter hollow, radius: 4}
  D: {cut: 6 1/2 square}
units:
  moon: {method: curved seam, pie: P, ground: G}
  block: {rows: [D moon D, moon D moon, D moon D]}
  part: {method: cut apart, from: block, across: 2, down: 2}
top: {rows: [part part], down: 2}
"""


def test_a_curve_is_not_cut_through(run: Run, pattern: WritePattern) -> None:
    notices = told(run, [pattern(CURVES)])["trial"]
    assert [one["code"] for one in notices] == ["cut-apart-shape"]
