"""Into which areas well-known tops fall, told as a quilter would."""

import pytest
import shapely
from shapely import Polygon

from patternbook.quilting.areas import areas
from tests.quilting.areas.laid import at, box, counted, demo, divided, laid, tops, wished
from tests.support import WritePattern


@pytest.mark.parametrize(
    "slug",
    [
        "cut-before-you-worry",  # cut-apart nine-patch
        "hollow-lane-palings",  # rail fence
        "masons-day-off",  # bricks
        "porch-left-lit",  # log cabin
        "post-for-the-island",  # postage stamps
        "slow-ferry-home",  # strips
        "train-window-hours",  # hexagons
        "windy-bench",  # pinwheels
    ],
)
def test_where_all_is_piecing_the_top_is_one_body(slug: str) -> None:
    for top in demo(slug).values():
        (body,) = divided(top).areas
        assert (body.kind, body.key) == ("body", "P 1")
        assert body.shape.equals(top.edge)


FOUR_PATCH = """
    pattern: Tiles
    sizes: {crib: {finished: 24 x 18}}
    fabrics: {dark: {use: four-patches}, light: {use: four-patches}, plain: {use: squares}}
    pieces:
      A: {fabric: dark, cut: 3 1/2 square}
      B: {fabric: light, cut: 3 1/2 square}
      P: {fabric: plain, cut: 6 1/2 square}
    units: {four: {rows: [A B, B A]}}
    top: {rows: [four P four P, P four P four, four P four P]}
"""


def test_four_patches_and_plain_squares_are_areas_each(pattern: WritePattern) -> None:
    """12 blocks of 6: the plain squares touch in their corners only, and so do the four-patches.
    In a four-patch lie two seams of 6 in 36 square inches: ⅓. P is a piece: areas start at Q."""
    found = divided(tops(pattern(FOUR_PATCH))["crib"])
    assert counted(found) == {"square": 6, "piecing": 6}
    assert [area.key for area in found.areas] == [f"{x} {n}" for x in "QR" for n in range(1, 7)]
    first = at(found, 1, 1)
    assert (first.key, first.letters, first.units) == ("Q 1", ("A", "B"), ("four",))
    assert first.piecing == pytest.approx(1 / 3, abs=1e-3)
    second = at(found, 8, 1)
    assert (second.key, second.kind, second.piecing) == ("R 1", "square", 0)
    assert at(found, 8, 8).key == "Q 3"


def test_rows_of_boats_lie_between_bands_of_water() -> None:
    """The water between the sails and beside the hulls is too narrow to be ground: it belongs to
    the row of boats, whose rims are straight."""
    found = divided(demo("low-water")["crib"])
    assert counted(found) == {"band": 4, "piecing": 3}
    for area in found.areas:
        left, _, right, _ = area.shape.bounds
        assert (left, right) == pytest.approx((0, 36))
        assert area.shape.equals(area.shape.envelope)


def test_long_bars_are_bands_though_they_are_narrow() -> None:
    """Bars of 4½, 4 and 6 between columns of flying geese."""
    for top in demo("south-on-thursday").values():
        found = divided(top)
        assert {area.kind for area in found.areas} == {"band", "piecing"}
        assert len({area.letter for area in found.areas}) == 2


def test_each_pile_of_books_is_one_area() -> None:
    found = divided(demo("late-returns")["crib"])
    piles = [area for area in found.areas if area.kind == "piecing"]
    assert len(piles) == 3
    assert all(pile.shape.equals(pile.shape.envelope) for pile in piles)


def test_on_point_plain_squares_are_squares_and_setting_triangles_ground() -> None:
    """3 × 4 nine-patches on point, 2 × 3 plain squares between them; at the sides 10 setting
    triangles, and 4 smaller ones in the corners."""
    found = divided(demo("wash-house-tiles")["crib"])
    assert counted(found) == {"piecing": 12, "square": 6, "ground": 14}
    squares = [area.shape for area in found.areas if area.kind == "square"]
    assert all(shape.area == pytest.approx(81) for shape in squares)
    triangles = sorted(round(area.shape.area, 2) for area in found.areas if area.kind == "ground")
    assert triangles == [20.25] * 4 + [40.5] * 10


def test_each_block_is_ground_around_the_figure_laid_on_it() -> None:
    """20 blocks of 9 with a pear and its leaf each: 20 figures, each in its own ground."""
    found = divided(demo("pear-thief")["crib"])
    assert counted(found) == {"ground": 20, "figure": 20}
    assert len({area.letter for area in found.areas}) == 2
    for area in found.areas:
        if area.kind == "ground":
            assert len(area.shape.interiors) == 1
            assert Polygon(area.shape.exterior).area == pytest.approx(81)


def test_a_printed_panel_is_one_area_however_large() -> None:
    """The picture is 23 × 41 = 943 square inches."""
    found = divided(demo("one-good-picture")["small"])
    (picture,) = (area for area in found.areas if area.kind == "ground")
    assert picture.shape.area == pytest.approx(943)


def test_sashes_are_cut_from_one_another_along_their_seams() -> None:
    """Four plain blocks of 9 with sashes of 2½ around: a lattice with four holes. The sashes down
    run through; the short ones between lie on their own."""
    places = [(x, y) for y in range(5) for x in range(5)]

    def side(number: int) -> tuple[float, float]:
        return (number // 2) * 11.5 + (2.5 if number % 2 else 0), 9 if number % 2 else 2.5

    patches = [
        ("A" if x % 2 and y % 2 else "B", box(side(x)[0], side(y)[0], side(x)[1], side(y)[1]))
        for x, y in places
    ]
    found = divided(laid(patches, plain="A"))
    assert counted(found) == {"square": 4, "piecing": 3 + 6}
    sashes = sorted(round(a.shape.area, 2) for a in found.areas if a.kind == "piecing")
    assert sashes == [22.5] * 6 + [2.5 * 25.5] * 3


def test_a_large_square_on_its_corner_is_ground_and_its_corners_piecing() -> None:
    """24 square, the middle on point: half of it, 288 square inches, is the square."""
    square = Polygon([(12, 0), (24, 12), (12, 24), (0, 12)])
    corners = shapely.get_parts(box(0, 0, 24, 24).difference(square))
    found = divided(laid([("A", square), *(("B", one) for one in corners)], plain="A"))
    corner_areas = [area for area in found.areas if area.kind == "piecing"]
    assert [round(area.shape.area, 6) for area in corner_areas] == [72] * 4
    assert {area.letter for area in corner_areas} == {"P"}
    ground = [area.shape.area for area in found.areas if area.kind != "piecing"]
    assert sum(ground) == pytest.approx(288)


def test_small_corners_of_a_snowball_belong_to_it() -> None:
    """A square of 12 whose corners of 3 are cut off: 4½ square inches are no area of their own."""
    corners = [
        Polygon([(x, y), (abs(x - 3), y), (x, abs(y - 3))]) for x in (0, 12) for y in (0, 12)
    ]
    ball = box(0, 0, 12, 12).difference(shapely.union_all(corners))
    assert isinstance(ball, Polygon)
    found = divided(laid([("A", ball), *(("B", one) for one in corners)], plain="A"))
    (area,) = found.areas
    assert (area.kind, area.letters) == ("square", ("A", "B"))
    assert area.shape.area == pytest.approx(144)


def test_one_cloth_alone_is_all_ground() -> None:
    found = divided(laid([("A", box(0, 0, 12, 12))], plain="A"))
    assert [(area.key, area.kind) for area in found.areas] == [("P 1", "square")]


def test_many_large_patches_side_by_side_are_piecing() -> None:
    """A chessboard of two plain fabrics has nothing between its squares that were no ground."""
    squares = [("AB"[(x + y) % 2], box(6 * x, 6 * y, 6, 6)) for y in range(4) for x in range(4)]
    assert counted(divided(laid(squares, plain="AB"))) == {"body": 1}


def test_centimetres_are_measured_alike() -> None:
    """The same four-patch top 2.54 times as large: the same areas, a seam in so much less."""
    patches = [
        (letter, box(x * 15.24, y * 15.24 + down * 7.62, 15.24, 7.62 if letter == "B" else 15.24))
        for y in range(3)
        for x in range(4)
        for letter, down in ([("A", 0)] if (x + y) % 2 else [("B", 0), ("B", 1)])
    ]
    found, _ = areas(laid(patches, plain="A", unit="cm"), wished())
    assert counted(found) == {"square": 6, "piecing": 6}
    assert at(found, 1, 1).piecing == pytest.approx(15.24 / 15.24**2, abs=1e-3)
