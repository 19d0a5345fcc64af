"""Half-rectangle triangles. No published formula was found (common practice, no source): sizes
are set against the lines of the triangle itself, each moved out by one seam."""

from itertools import pairwise
from math import dist

import pytest

from tests.methods.making import cut, faults, sizes, source
from tests.published.reading import one_size
from tests.support import Run, WritePattern

HALVES = "method: half-rectangle triangles, from: <A> <B>"
OPEN = "<A>: {}; <B>: {}"
Point = tuple[float, float]
SIZES = [("2", "4"), ("3", "6"), ("4", "2"), ("3", "3"), ("1", "5"), ("2 1/2", "3 1/2")]


def raw_legs(wide: float, high: float, seam: float) -> tuple[float, float]:
    """The short edges of a right triangle with all its seam lines moved out by one seam."""
    corners: list[Point] = [(0, 0), (wide, 0), (0, high), (0, 0)]
    lines = []
    for (x, y), (u, v) in pairwise(corners):
        long = dist((x, y), (u, v))
        out = ((v - y) / long * seam, (x - u) / long * seam)
        lines.append(((x + out[0], y + out[1]), (u + out[0], v + out[1])))
    right, low, square = (_cross(lines[n], lines[n - 1]) for n in (1, 2, 0))
    return right[0] - square[0], low[1] - square[1]


def _cross(one: tuple[Point, Point], other: tuple[Point, Point]) -> Point:
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    far = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / turn
    return ax + far * (bx - ax), ay + far * (by - ay)


def number(typed: str) -> float:
    """A typed length."""
    return sum(
        float(part.split("/")[0]) / float(part.partition("/")[2] or 1) for part in typed.split()
    )


@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_rectangles_are_cut_an_eighth_too_large_at_most(
    run: Run, pattern: WritePattern, wide: str, high: str
) -> None:
    path = pattern(source([(OPEN, f"{HALVES}, finished: {wide} x {high}")]))
    piece = one_size(run, path)["pieces"]["A0"]["cut"]
    needed = raw_legs(number(wide), number(high), 0.25)
    for side, least in zip(("across", "down"), needed, strict=True):
        # rounded up to a sixty-fourth, then to the ruler's next mark
        assert 0 <= number(piece[side]["value"]) - least < 1 / 8 + 1 / 64


def test_a_square_needs_what_half_square_triangles_need(run: Run, pattern: WritePattern) -> None:
    path = pattern(source([(OPEN, f"{HALVES}, finished: 3 square")]))
    assert cut(run, path) == {"A0": "3 7/8", "B0": "3 7/8"}


def test_an_eighth_less_is_too_small(run: Run, pattern: WritePattern) -> None:
    """2 × 4 needs 2.655 × 5.309."""
    text = source([("<A>: {cut: SIZE}; <B>: {cut: SIZE}", f"{HALVES}, finished: 2 x 4")])
    assert run("check", pattern(text.replace("SIZE", "2 3/4 x 5 3/8"))).code == 0
    for size in ("2 5/8 x 5 3/8", "2 3/4 x 5 1/4"):
        found = faults(run, pattern(text.replace("SIZE", size), size[:5].replace("/", "-")))
        assert {one[0] for one in found} == {"pieces-small"}
        assert all("at least 2 3/4 x 5 3/8" in one[1] for one in found)


def test_a_unit_is_as_large_as_its_rectangles_let_it_be(run: Run, pattern: WritePattern) -> None:
    path = pattern(source([("<A>: {cut: 2 3/4 x 5 1/2}; <B>: {cut: 2 3/4 x 5 1/2}", HALVES)]))
    finished = sizes(run, path)["unit-0"]["finished"]
    assert (finished["across"]["value"], finished["down"]["value"]) == ("2", "4 1/8")


def test_hands_are_counted_apart(run: Run, pattern: WritePattern) -> None:
    """Three of one hand and one of the other: two pairs and one, or three triangles and one."""
    text = """
        pattern: Two hands
        sizes: {one: {}}
        settings: {trimming: 0}
        pieces: {A: {DIAGONAL}, B: {DIAGONAL}}
        units:
          half: {method: half-rectangle triangles, from: A B, gives: GIVES, finished: 2 x 4}
        top: {rows: [half half half/half half/mirror]}
        """
    for gives, diagonal, count, other in (("2", "", "3", 1), ("1", "diagonal: once", "4", 1)):
        path = pattern(text.replace("DIAGONAL", diagonal).replace("GIVES", gives), f"g{gives}")
        assert run("check", path).code == 0, run("check", path).err
        piece = run("figures", path, "--json").json()["sizes"]["one"]["pieces"]["A"]
        assert (piece["count"]["value"], piece["mirrored"]) == (count, other)


@pytest.mark.parametrize(
    ("pieces", "unit", "code", "hint"),
    [
        ("{}", "gives: 2", "half-rectangle", "`finished: 2 x 4`"),
        ("{cut: 3 x 6}", "gives: 4", "half-rectangle", "`gives: 2`"),
        ("{cut: 3 x 6}", "gives: 1", "diagonal", "`diagonal: once`"),
        ("{cut: 3 x 6, diagonal: once}", "gives: 2", "diagonal", "`gives: 2`"),
        ("{cut: 3 x WOF}", "gives: 2", "cut-through", "`cut: 4 square`"),
    ],
)
def test_what_cannot_be_made_is_told_with_what_can(
    run: Run, pattern: WritePattern, pieces: str, unit: str, code: str, hint: str
) -> None:
    found = faults(run, pattern(source([(f"<A>: {pieces}; <B>: {pieces}", f"{HALVES}, {unit}")])))
    assert {one[0] for one in found} == {code}
    assert any(hint in one[1] for one in found), found
