"""Paths as short text: whole numbers in the drawing's own units, and one matrix to points."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from matplotlib.path import Path
from matplotlib.transforms import Transform
from numpy.typing import NDArray

Whole = NDArray[np.int64]
Codes = NDArray[np.uint8]
Matrix = tuple[float, float, float, float, float, float]
_SAME = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass(frozen=True, eq=False)
class Outline:
    """Corners as whole numbers, what to do at each, the way to points, and a point's length."""

    corners: Whole
    codes: Codes
    matrix: Matrix
    pen: float


def num(value: float, digits: int = 4) -> str:
    """A number without exponent and without needless noughts."""
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text in ("", "-0") else text


def nums(values: Iterable[float], digits: int = 4) -> str:
    return " ".join(num(value, digits) for value in values)


def outline(path: Path, transform: Transform) -> Outline:
    """The path in whole numbers: in sixteenths of a unit or coarser where exact, else 1/100 pt."""
    corners = np.asarray(path.vertices, float)
    matrix = _matrix(transform)
    size = math.hypot(matrix[0], matrix[1])
    if not _even(matrix, size):  # the pen must stay round, so the points move instead
        corners, matrix, size = np.asarray(transform.transform(corners)), _SAME, 1.0
    for unit in (1, 2, 4, 8, 16, max(1, round(100 * size))):
        whole = np.rint(corners * unit)
        if np.abs(corners * unit - whole).max() < 1e-6:
            break
    a, b, c, d = (number / unit for number in matrix[:4])
    codes = path.codes
    if codes is None:
        codes = np.full(len(corners), Path.LINETO, np.uint8)
        codes[0] = Path.MOVETO
    now = (a, b, c, d, matrix[4], matrix[5])
    return Outline(whole.astype(np.int64), np.asarray(codes, np.uint8), now, unit / size)


def _matrix(transform: Transform) -> Matrix:
    (a, c, e), (b, d, f), _ = np.asarray(transform.get_affine().get_matrix()).tolist()
    return a, b, c, d, e, f


def _even(matrix: Matrix, size: float) -> bool:
    """Whether the matrix neither shears nor stretches."""
    a, b, c, d = matrix[:4]
    alike = abs(size - math.hypot(c, d)) <= 1e-6 * size
    return size > 0 and alike and abs(a * c + b * d) <= 1e-6 * size * size


def page_path(corners: Whole, codes: Codes) -> bytes:
    """The path as operators of a page; upright rectangles come first, as rectangles."""
    rectangles, rest = _rectangles(corners, codes)
    written = b""
    if rectangles.any():
        first = corners[np.flatnonzero(rectangles)]
        across = corners[np.flatnonzero(rectangles) + 2] - first
        sides = np.concatenate([first, across], axis=1)
        written = b"%d %d %d %d re\n" * len(sides) % tuple(sides.ravel().tolist())
        corners, codes = corners[rest], codes[rest]
    words = codes.tobytes().replace(b"\1", b"%d %d m ").replace(b"\2", b"%d %d l ")
    words = words.replace(b"\x4f", b"h\n")
    return (written + words % tuple(corners[codes != Path.CLOSEPOLY].ravel().tolist())).rstrip()


def _rectangles(corners: Whole, codes: Codes) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Where upright rectangles start, and which corners belong to none."""
    begins, rest = np.zeros(len(codes), bool), np.ones(len(codes), bool)
    starts = np.flatnonzero(codes == Path.MOVETO)
    starts = starts[np.diff(np.append(starts, len(codes))) == 5]
    if not len(starts):
        return begins, rest
    five = starts[:, None] + np.arange(5)
    x, y = corners[five, 0], corners[five, 1]
    closed = (codes[five] == (1, 2, 2, 2, Path.CLOSEPOLY)).all(axis=1)
    level = (y[:, 0] == y[:, 1]) & (y[:, 2] == y[:, 3])
    plumb = (x[:, 1] == x[:, 2]) & (x[:, 3] == x[:, 0])
    found = closed & level & plumb
    begins[starts[found]] = True
    rest[five[found]] = False
    return begins, rest


def vector_path(corners: Whole, codes: Codes) -> str:
    """The path as SVG data, in steps from corner to corner."""
    words: list[str] = []
    at = start = (0, 0)
    for (x, y), code in zip(corners.tolist(), codes.tolist(), strict=True):
        dx, dy = x - at[0], y - at[1]
        if code == Path.CLOSEPOLY:
            words.append("z")
            at = start
            continue
        if code == Path.MOVETO:
            words.append(f"M{x} {y}")
            start = (x, y)
        elif not dy:
            words.append(f"h{dx}")
        else:
            words.append(f"l{dx} {dy}" if dx else f"v{dy}")
        at = (x, y)
    return "".join(words).replace(" -", "-")
