"""Patches of any shape laid by hand and at random, for the tests of the proofs and of the joins."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from patternbook.exact import ROOT2, ROOT3, Exact
from patternbook.methods.made import Arc, Outline, Spot
from patternbook.quilt.place import Patch, around
from patternbook.quilt.records import Turn

Number = Exact | Fraction | int
Corner = tuple[Number, Number]
NOUGHT = Spot(Exact(0), Exact(0))


def outline(*corners: Corner, arcs: tuple[Arc, ...] = ()) -> Outline:
    """Straight edges from corner to corner, clockwise, but for the arcs."""
    return Outline(tuple(Spot(Exact.of(x), Exact.of(y)) for x, y in corners), arcs)


def shape(*corners: Corner, arcs: tuple[Arc, ...] = (), letter: str = "S") -> Patch:
    """A patch with this outline."""
    made = outline(*corners, arcs=arcs)
    return Patch(letter, *around(made), Turn(), ("top",), made)


def box(x: Number, y: Number, across: Number, down: Number) -> Patch:
    """An upright rectangle."""
    left, upper, wide, high = (Exact.of(side) for side in (x, y, across, down))
    return Patch("S", left, upper, wide, high, Turn(), ("top",))


def halves(one: Patch, *, rising: bool) -> list[Patch]:
    """A rectangle cut in two from corner to corner."""
    left, top, right, low = one.x, one.y, one.x + one.across, one.y + one.down
    if rising:
        return [
            shape((left, top), (right, top), (left, low)),
            shape((right, top), (right, low), (left, low)),
        ]
    return [
        shape((left, top), (right, low), (left, low)),
        shape((left, top), (right, top), (right, low)),
    ]


def quarters(one: Patch) -> list[Patch]:
    """A rectangle cut from corner to corner both ways."""
    left, top, right, low = one.x, one.y, one.x + one.across, one.y + one.down
    corners = ((left, top), (right, top), (right, low), (left, low))
    middle = ((left + right) / 2, (top + low) / 2)
    return [shape(corners[n - 1], corners[n], middle) for n in range(4)]


def curved(side: Number, radius: Number) -> list[Patch]:
    """A square of two pieces: a quarter circle at the top left, and the ground round it."""
    edge = Exact.of(radius)
    pie = shape((0, 0), (edge, 0), (0, edge), arcs=(Arc(1, NOUGHT, edge, False),))
    corners = [(edge, 0), (side, 0), (side, side), (0, side), (0, edge)]
    if edge == side:
        corners = corners[1:-1]
    arc = Arc(len(corners) - 1, NOUGHT, edge, True)
    return [pie, shape(*corners, arcs=(arc,))]


def on_point(across: int, down: int, side: Number) -> list[Patch]:
    """Squares set on point, those in the gaps too, with side and corner triangles."""
    half = ROOT2 * side / 2
    squares, laid = [], []
    for y in range(down):
        squares += [(2 * x + 1, 2 * y + 1) for x in range(across)]
    squares += [(2 * x, 2 * y) for y in range(1, down) for x in range(1, across)]
    for x, y in squares:
        ends = ((x, y - 1), (x + 1, y), (x, y + 1), (x - 1, y))
        laid.append(shape(*((half * a, half * b) for a, b in ends)))
    wide, deep = 2 * across, 2 * down
    for x in range(2, wide, 2):
        laid.append(shape(*_times(half, (x - 1, 0), (x + 1, 0), (x, 1))))
        laid.append(shape(*_times(half, (x + 1, deep), (x - 1, deep), (x, deep - 1))))
    for y in range(2, deep, 2):
        laid.append(shape(*_times(half, (0, y + 1), (0, y - 1), (1, y))))
        laid.append(shape(*_times(half, (wide, y - 1), (wide, y + 1), (wide - 1, y))))
    laid.append(shape(*_times(half, (0, 0), (1, 0), (0, 1))))
    laid.append(shape(*_times(half, (wide - 1, 0), (wide, 0), (wide, 1))))
    laid.append(shape(*_times(half, (wide, deep - 1), (wide, deep), (wide - 1, deep))))
    laid.append(shape(*_times(half, (1, deep), (0, deep), (0, deep - 1))))
    return laid


def _times(unit: Exact, *corners: tuple[int, int]) -> tuple[Corner, ...]:
    return tuple((unit * x, unit * y) for x, y in corners)


def hexagon(x: Number, y: Number, side: Number) -> Patch:
    """A hexagon on its point, its middle at (x, y)."""
    far, half = ROOT3 * side / 2, Exact.of(side) / 2
    x, y = Exact.of(x), Exact.of(y)
    return shape(
        (x, y - half * 2),
        (x + far, y - half),
        (x + far, y + half),
        (x, y + half * 2),
        (x - far, y + half),
        (x - far, y - half),
    )


@st.composite
def oblongs(draw: st.DrawFn, most: int) -> list[Patch]:
    """An oblong of 12 × 8 cut in two again and again, at most so often."""
    patches = [box(0, 0, 12, 8)]
    for _ in range(draw(st.integers(1, most))):
        one = patches.pop(draw(st.integers(0, len(patches) - 1)))
        part = Fraction(draw(st.integers(1, 7)), 8)
        if draw(st.booleans()):
            wide = one.across * part
            patches.append(one._replace(across=wide))
            patches.append(one._replace(x=one.x + wide, across=one.across - wide))
        else:
            high = one.down * part
            patches.append(one._replace(down=high))
            patches.append(one._replace(y=one.y + high, down=one.down - high))
    return patches


@st.composite
def cut_up(draw: st.DrawFn) -> list[Patch]:
    """Such an oblong with some of its parts cut from corner to corner."""
    patches = draw(oblongs(8))
    pieces: list[Patch] = halves(patches.pop(), rising=draw(st.booleans()))
    for one in patches:
        way = draw(st.integers(0, 3))
        pieces += [[one], halves(one, rising=True), halves(one, rising=False), quarters(one)][way]
    return pieces
