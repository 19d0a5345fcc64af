"""Units with a method of their own: their shapes, the cloth of a go, and what is counted."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from patternbook import proof
from patternbook.edition.pipeline import examine
from patternbook.exact import ROOT2, Exact
from patternbook.inch import INCHES
from patternbook.methods.made import Outline, PiecedMade, Placed, SewnSeam, Spot, Taking
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.grid import grid
from patternbook.proof.pieced import pieced
from patternbook.proof.seams import seams
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.records import CutSize, LayoutMade, Piece, Sides, Turn, Unit
from tests.proof.planting import in_made, in_piece, in_quilt, in_unit, tea
from tests.proof.shapes_laid import Number, box, curved, halves, quarters, shape

WHEELS = """
pattern: Wheels
sizes: {small: {across: 3, down: 3}, large: {across: 4, down: 5}}
fabrics:
  red: {use: blades}
  cream: {use: background}
  back: {use: backing}
pieces:
  A: {fabric: red, cut: 4 7/8 square, spare: 3}
  B: {fabric: cream, cut: 4 7/8 square, spare: 3}
units:
  blade: {method: half-square triangles, from: A B, finished: 4 square}
  wheel:
    rows: [blade/right blade/half, blade blade/left]
top:
  rows: [wheel]
  across: across
  down: down
backing: {fabric: back}
binding: {fabric: red, cut: 2 1/2 x WOF}
"""


@pytest.fixture(scope="module")
def wheels(tmp_path_factory: pytest.TempPathFactory) -> Evidence:
    """9 windmills of 4 blades, two blades from each pair of squares: 18 goes."""
    path = tmp_path_factory.mktemp("wheels") / "pattern.yaml"
    path.write_text(WHEELS, "utf-8")
    return examine(path, "pattern.yaml").sizes["small"]


def codes(evidence: Evidence) -> set[str]:
    return {notice.code for notice in proof.prove(evidence)}


def test_the_windmills_hold(wheels: Evidence) -> None:
    assert [str(notice) for notice in proof.prove(wheels)] == []
    assert len(wheels.patches) == 72
    assert (wheels.lying["blade"], wheels.taken["blade"]) == (36, 36)


def test_squares_a_size_too_small(wheels: Evidence) -> None:
    """2 triangles with short sides of 4.854 take 23.56; 4¾ squared is 22.56."""
    small = in_piece(wheels, "A", cut=CutSize(Fraction(19, 4), Fraction(19, 4)))
    (notice,) = pieced(small)
    assert notice.code == "piece-too-small"
    assert "2 patches of A, 4.85 × 4.85 with the seams round them: 23.56 sq in" in notice.message
    assert "1 of A (4¾ × 4¾): 22.56 sq in, 0.99 too little" in notice.message


def blade(change: Callable[[Unit], Unit]) -> Callable[[Evidence], Evidence]:
    return lambda evidence: in_unit(evidence, "blade", change)


def first_corner_moved(unit: Unit) -> Unit:
    """The seam no longer ends in the corner of the second triangle."""
    first, *others = unit.placed
    assert first.outline is not None
    one, two, three = first.outline.corners
    corners = (one, Spot(two.x - Fraction(1, 8), two.y), three)
    return replace(unit, placed=(first._replace(outline=Outline(corners)), *others))


def both_the_same(unit: Unit) -> Unit:
    """Two triangles in one half: their areas add up."""
    first, second = unit.placed
    return replace(unit, placed=(first, second._replace(outline=first.outline)))


def without_second(unit: Unit) -> Unit:
    return replace(unit, placed=unit.placed[:1])


def seam_elsewhere(unit: Unit) -> Unit:
    assert isinstance(unit.made, PiecedMade)
    seam = SewnSeam(Spot(Exact(0), Exact(0)), Spot(Exact(4), Exact(4)), (0, 1), 0)
    return replace(unit, made=replace(unit.made, seams=(seam,)))


def leaf_beyond(unit: Unit) -> Unit:
    leaf = Placed("A", Turn(), Exact(3), Exact(1), Exact(2), Exact(1), laid_on=True)
    return replace(unit, placed=(*unit.placed, leaf))


@pytest.mark.parametrize(("plant", "code"), [
    (blade(first_corner_moved), "unit-filled"),
    (blade(both_the_same), "unit-filled"),
    (blade(without_second), "unit-filled"),
    (blade(seam_elsewhere), "seam-inside"),
    (blade(leaf_beyond), "shape-beyond"),
    (lambda one: in_made(one, "blade", goes=17), "goes-count"),
    (lambda one: in_made(one, "blade", takes=(Taking("A", 1),)), "goes-count"),
    (lambda one: in_made(one, "blade", takes=(Taking("A", 2), Taking("B", 1))), "sewn-count"),
    (lambda one: in_made(one, "blade", gives=1), "sewn-count"),
    (lambda one: in_piece(one, "A", count=36), "sewn-count"),
    (lambda one: replace(one, patches=one.patches[1:]), "tiling-uncovered"),
    (lambda one: replace(one, patches=(*one.patches, one.patches[0])), "tiling-overlap"),
])  # fmt: skip
def test_a_planted_fault_is_found(
    wheels: Evidence, plant: Callable[[Evidence], Evidence], code: str
) -> None:
    told = [notice for notice in proof.prove(plant(wheels)) if notice.code == code]
    assert told
    assert all(notice.severity == "error" and notice.rule and notice.hint for notice in told)


def test_a_fault_of_shape_is_told_with_both_areas(wheels: Evidence) -> None:
    (notice,) = grid(blade(without_second)(wheels))
    assert "'blade' finishes 4 × 4; its 1 parts cover 8 in area, it has 16" in notice.message
    (notice,) = grid(blade(both_the_same)(wheels))
    assert "its parts lie over one another or leave a gap" in notice.message


def test_units_that_are_cut_up_are_counted_though_none_lies_in_the_top(wheels: Evidence) -> None:
    """Blades sewn from pairs of wheels: each go takes 2, of each wheel 4 blades; 18 goes make 36
    wheels, 144 blades in 72 goes, and 72 of A."""
    quilt = wheels.quilt
    wheel, old = quilt.units["wheel"], quilt.units["blade"]
    assert isinstance(old.made, PiecedMade)
    from_wheels = replace(old.made, takes=(Taking("wheel", 2),))
    new = replace(old, name="shard", made=from_wheels)
    four = tuple(part._replace(part="shard") for part in wheel.placed)
    block = replace(wheel, name="block", placed=four)
    field = replace(
        quilt.units["top"],
        placed=tuple(part._replace(part="block") for part in quilt.units["top"].placed),
    )
    units = {"blade": old, "wheel": wheel, "shard": new, "block": block, "top": field}
    made = in_quilt(wheels, units=units)
    made = replace(made, patches=patches(made.quilt, "top"))
    assert (made.lying["blade"], made.lying["wheel"], made.lying["shard"]) == (0, 0, 36)
    assert (made.taken["shard"], made.taken["wheel"], made.taken["blade"]) == (36, 36, 144)
    told = [notice for notice in proof.prove(made) if notice.code == "sewn-count"]
    assert "A: 18 are counted, 72 lie in the top" in told[0].message


# ---- the trade's cut sizes hold what they give, and an eighth less does not


def go(cut: Number, lying: list[Patch], side: Number, gives: int, **more: object) -> list[Notice]:
    """One piece, cut square, that gives so many units with these patches."""
    size = Exact.of(cut).fraction
    piece = Piece("S", None, CutSize(size, size), Sides(Exact(1), Exact(1)), gives)
    placed = tuple(
        Placed("S", Turn(), one.x, one.y, one.across, one.down, one.outline) for one in lying
    )
    sides = Sides(Exact.of(side), Exact.of(side))
    made = PiecedMade("unit", gives, 1, (Taking("S", 1),), (), None, (), 1, Exact(1))
    unit = Unit("unit", "by hand", sides, sides, gives, placed, {"S": 1}, made)
    quilt = replace(
        tea().quilt, seam=Fraction(1, 4), system=INCHES, pieces={"S": replace(piece, **more)},  # type: ignore[arg-type]
        units={"unit": unit}, top="unit",
    )  # fmt: skip
    return list(pieced(replace(tea(), quilt=quilt, patches=())))


HALF = halves(box(0, 0, 4, 4), rising=True)[:1]
HOURGLASS = quarters(box(0, 0, 4, 4))[:2]
GOOSE = [shape((2, 0), (4, 2), (0, 2))]
PIE = curved(4, 3)[:1]
EIGHTH = Fraction(1, 8)


@pytest.mark.parametrize(("lying", "gives", "cut", "less"), [
    # + 7/8, http://north-hampshire-quilters.org.uk/hblk402b.htm
    (HALF, 2, Fraction(39, 8), EIGHTH),
    # eight from a pair 2 × (+ 7/8),
    # http://simplyputplus.blogspot.com/2013/04/tutorial-equation-for-half-squares.html
    (HALF, 8, Fraction(39, 4), EIGHTH),
    # four from a pair sewn all round: (side − ½) ÷ √2 − ½ (from the geometry)
    (HALF, 4, Fraction(55, 8), EIGHTH),
    # quarter-square triangles + 1 1/4; a pair gives two units, in each two triangles of a letter
    # http://quiltville.blogspot.com/2005/06/cutting-quarter-square-triangles.html
    (HOURGLASS, 2, Fraction(21, 4), EIGHTH),
    # four geese of 2 × 4 from a square of 5 1/4 (the chart named in trade facts 5.10)
    (GOOSE, 4, Fraction(21, 4), EIGHTH),
    # a quarter circle of radius 3 lies in 3½ square; the pie itself takes 8.2, 2.8 square
    (PIE, 1, Fraction(7, 2), Fraction(3, 4)),
])  # fmt: skip
def test_the_trades_sizes_are_enough(
    lying: list[Patch], gives: int, cut: Fraction, less: Fraction
) -> None:
    assert go(cut, lying, 4, gives) == []
    assert [notice.code for notice in go(cut - less, lying, 4, gives)] == ["piece-too-small"]


def test_triangles_cut_beforehand_have_their_share_of_the_square() -> None:
    assert go(Fraction(39, 8), HALF, 4, 1, diagonal="once") == []
    (notice,) = go(Fraction(19, 4), HALF, 4, 1, diagonal="once")
    assert "1 of S (4¾ × 4¾, cut once on the diagonal): 11.28 sq in" in notice.message
    assert go(Fraction(21, 4), HOURGLASS[:1], 4, 1, diagonal="twice") == []


def test_a_shape_laid_on_has_no_seams(wheels: Evidence) -> None:
    """A leaf fused on takes what is seen of it."""
    leaf = Placed("A", Turn(), Exact(0), Exact(0), Exact(4), Exact(1), laid_on=True)
    more = in_unit(wheels, "blade", lambda unit: replace(unit, placed=(leaf, *unit.placed)))
    (notice,) = pieced(more)
    assert "take" in notice.message
    assert "31.56 sq in of cloth" in notice.message  # 23.56 + 2 × 4


# ---- rows of any shape


def row(*parts: Placed) -> list[str]:
    """What is told of a row on the slant."""
    unit = tea().quilt.units["top"]
    assert isinstance(unit.made, LayoutMade)
    line = replace(unit.made.lines[0], role="slant", parts=parts)
    made = replace(unit.made, lines=(line,), borders=())
    quilt = replace(tea().quilt, units={"top": replace(unit, made=made)})
    return [notice.code for notice in seams(replace(tea(), quilt=quilt))]


def lying(one: Patch) -> Placed:
    return Placed("S", Turn(), one.x, one.y, one.across, one.down, one.outline)


def test_a_row_on_the_slant_is_sewn_edge_to_edge() -> None:
    half = ROOT2 * 2
    block = shape((half, half), (half * 2, half * 2), (half, half * 3), (0, half * 2))
    beside = shape((half * 2, 0), (half * 3, half), (half * 2, half * 2), (half, half))
    corner = shape((0, half * 2), (half, half * 3), (0, half * 4))
    assert row(lying(corner), lying(block), lying(beside)) == []
    small = shape((half * 2, 0), (half * 2 + 1, 1), (half * 2, 2))
    assert row(lying(block), lying(small)) == ["seam-edges"]


def test_a_part_on_point_has_the_box_of_its_own_sides(wheels: Evidence) -> None:
    """A wheel that finishes 8 lies 11.31 both ways on point; triangles of cloth fill the rest."""
    side, half = ROOT2 * 8, ROOT2 * 4
    wheel = Placed("wheel", Turn(0, False, True), Exact(0), Exact(0), side, side)
    corners = [
        shape((0, 0), (half, 0), (0, half)),
        shape((half, 0), (side, 0), (side, half)),
        shape((side, half), (side, side), (half, side)),
        shape((0, half), (half, side), (0, side)),
    ]
    placed = (wheel, *(lying(one)._replace(part="A") for one in corners))

    def on_point(*parts: Placed) -> set[str]:
        unit = replace(wheels.quilt.units["top"], name="x", placed=parts)
        unit = replace(unit, finished=Sides(side, side))
        units = {**wheels.quilt.units, "x": unit}
        return {notice.code for notice in grid(in_quilt(wheels, units=units))}

    assert on_point(*placed) == set()
    assert on_point(*placed[1:]) == {"unit-filled"}
    assert on_point(wheel._replace(across=side + 1), *placed[1:]) == {"part-size"}
