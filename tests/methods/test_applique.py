"""Appliqué: shapes in their places, in the order of stitching, reversed where they are traced.

How far a shape goes under its neighbour (1/4 inch) is common practice, no source; so is cutting
the ground larger and trimming it.
"""

from pathlib import Path
from typing import Any

import pytest

from patternbook.edition.pipeline import examine
from patternbook.exact import Exact
from patternbook.methods.made import Action, PiecedMade, Placed
from patternbook.quilt.records import Unit
from tests.methods.drawn_shapes import with_shapes
from tests.methods.making import faults
from tests.published.reading import one_size
from tests.support import Run, WritePattern

DRAWN = {"P": ("red", "flag"), "L": ("green", "box")}


def source(block: str, ground: str = "cut: 10 square") -> str:
    """A top of four blocks, with the pieces and cloths that the block names."""
    used = {letter: drawn for letter, drawn in DRAWN.items() if letter in block}
    cloths = "".join(f", {cloth}: {{}}" for cloth, _ in used.values())
    cloths += ", web: {width: 17}" if "web:" in block else ""
    pieces = "".join(
        f"  {letter}: {{fabric: {cloth}, template: drawing, drawing: shapes/{name}.svg}}\n"
        for letter, (cloth, name) in used.items()
    )
    return f"""\
pattern: Block
sizes: {{one: {{}}}}
fabrics: {{table: {{}}{cloths}}}
pieces:
  G: {{fabric: table, {ground}}}
{pieces}units:
  plate: {{method: applique, ground: G, measure: 9 1/2 square, {block}}}
top: {{rows: [plate plate, plate plate]}}
"""


def plate(path: Path) -> Unit:
    made = examine(path, "pattern.yaml")
    assert [str(one) for one in made.notices if one.severity != "advice"] == []
    return made.quilts["one"].units["plate"]


def pieced(unit: Unit) -> PiecedMade:
    assert isinstance(unit.made, PiecedMade)
    return unit.made


def boxes(unit: Unit) -> list[tuple[str, bool, Any, Any, Any, Any]]:
    return [(one.part, one.laid_on, one.x, one.y, one.across, one.down) for one in unit.placed]


def corners(placed: Placed) -> list[tuple[float, float]]:
    assert placed.outline is not None
    return [(float(x), float(y)) for x, y in placed.outline.corners]


def test_shapes_have_places_from_the_seam_lines(pattern: WritePattern) -> None:
    """Stitched first, the leaf goes under the flag: 1 wide of its 2."""
    path = with_shapes(pattern, source("shapes: L P, at: [2 x 4, 3 x 3 1/2], web: web"))
    unit = plate(path)
    assert boxes(unit) == [
        ("G", False, 0, 0, 9, 9),
        ("L", True, 2, 4, 2, 1),
        ("P", True, 3, Exact(7) / 2, 3, 2),
    ]
    assert corners(unit.placed[2]) == [(3, 3.5), (6, 3.5), (5, 4.5), (6, 5.5), (3, 5.5)]


def test_without_a_place_a_shape_lies_in_the_middle(pattern: WritePattern) -> None:
    unit = plate(with_shapes(pattern, source("shapes: P, web: web")))
    assert boxes(unit)[1] == ("P", True, 3, Exact(7) / 2, 3, 2)


def test_a_shape_is_turned_as_it_is_written(pattern: WritePattern) -> None:
    """The flag's notch lies on its right; mirrored on its left, turned right below."""
    block = "shapes: P/mirror P/right, at: [0 x 0, 5 x 0], web: web"
    unit = plate(with_shapes(pattern, source(block)))
    mirrored, turned = unit.placed[1:]
    assert (mirrored.turn.mirrored, turned.turn.quarters) == (True, 1)
    assert (1.0, 1.0) in corners(mirrored)
    assert (6.0, 2.0) in corners(turned)
    assert (turned.across, turned.down) == (Exact(2), Exact(3))


def told(actions: tuple[Action, ...], kind: str) -> str:
    return " ".join(one.words for one in actions if one.kind == kind).replace("\u00a0", " ")


def test_the_order_of_stitching_is_numbered(pattern: WritePattern) -> None:
    path = with_shapes(pattern, source("shapes: L P L, at: [2 x 4, 3 x 3 1/2, 0 x 0], web: web"))
    actions = pieced(plate(path)).actions
    kinds = " ".join(one.kind for one in actions)
    assert kinds == "trace fuse cut lay fuse sew trim"
    assert "Trace 2 L and 1 P on the paper side of the web" in told(actions, "trace")
    assert "1 L, 2 P, 3 L" in told(actions, "lay")
    assert "in the same order: 1 L, 2 P, 3 L" in told(actions, "sew")
    assert "hot" in told(actions, "fuse")


def test_what_is_traced_is_reversed_and_what_is_laid_is_not(pattern: WritePattern) -> None:
    """The flag's notch is on the left on the wrong side of its cloth, on the right in place."""
    actions = pieced(plate(with_shapes(pattern, source("shapes: P, web: web")))).actions
    on_cloth = next(action.sketch for action in actions if action.kind == "fuse")
    traced = next(one for one in on_cloth if one.kind == "mark")
    assert (1.0, 1.0) in traced.points
    laid = next(action for action in actions if action.kind == "lay").sketch[1]
    # The ground is cut 10 and the block finishes 9: the shape lies half an inch further in.
    assert (5.5, 5.0) in laid.points


def test_without_web_shapes_are_basted(pattern: WritePattern) -> None:
    actions = pieced(plate(with_shapes(pattern, source("shapes: P")))).actions
    assert [one.kind for one in actions] == ["trace", "cut", "lay", "baste", "sew", "trim"]
    assert "wrong side of their cloth" in told(actions, "trace")


def test_the_ground_is_cut_larger_and_trimmed(run: Run, pattern: WritePattern) -> None:
    """Kind 25: cut 10, trimmed to 9½; the shapes are cut as they are drawn."""
    text = source("shapes: P, web: web", ground="join: straight")
    pieces = one_size(run, with_shapes(pattern, text))["pieces"]
    cut = {
        letter: [side["value"] for side in one["cut"].values()] for letter, one in pieces.items()
    }
    assert cut == {"G": ["10", "10"], "P": ["3", "2"]}


WARNED = [
    ("side by side, edges touching", "at: [1 x 4, 3 x 3 1/2]", "shape-overlap"),
    ("an eighth under", "at: [1 1/8 x 4, 3 x 3 1/2]", "shape-overlap"),
    ("a quarter under", "at: [1 1/4 x 4, 3 x 3 1/2]", None),
    ("apart", "at: [0 x 0, 3 x 3 1/2]", None),
    ("wholly under", "at: [3 x 4, 3 x 3 1/2]", "shape-hidden"),
]


@pytest.mark.parametrize(("how", "at", "code"), WARNED, ids=[one[0] for one in WARNED])
def test_how_far_shapes_go_under_one_another(
    run: Run, pattern: WritePattern, how: str, at: str, code: str | None
) -> None:
    text = source(f"shapes: L P, {at}, web: web")
    found = run("check", with_shapes(pattern, text), "--json").json()["notices"]
    warned = [one["code"] for one in found if one["severity"] == "warning"]
    assert warned == ([code] if code else []), how


WRONG = [
    ("a plain square as a shape", "shapes: G", "applique-shape"),
    ("no shapes", "shapes: .", "applique-shape"),
    ("a place too few", "shapes: L P, at: [1 x 1]", "applique-places"),
    ("a shape beyond the block", "shapes: L P, at: [8 x 0, 1 x 1]", "shape-beyond"),
    ("a web that nobody lists", "shapes: L P, at: [0 x 0, 3 x 3], web: glue", "unknown-fabric"),
]


@pytest.mark.parametrize(("what", "block", "code"), WRONG, ids=[one[0] for one in WRONG])
def test_told(run: Run, pattern: WritePattern, what: str, block: str, code: str) -> None:
    assert code in {one[0] for one in faults(run, with_shapes(pattern, source(block)))}, what
