"""Reading a page back: its upright boxes in points after all matrices, and its pixels."""

from collections.abc import Iterator

import numpy as np
import pypdfium2
from numpy.typing import NDArray
from pypdf import PageObject, PdfReader
from pypdf.generic import ContentStream

Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]


def _then(a: Matrix, b: Matrix) -> Matrix:
    return (
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    )


def boxes(page: PageObject, reader: PdfReader) -> Iterator[Point]:
    """Width and height of every rectangle that the page draws."""
    stack: list[Matrix] = []
    now: Matrix = (1, 0, 0, 1, 0, 0)
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        values = [float(v) for v in operands] if operator in (b"cm", b"re") else []
        match operator:
            case b"q":
                stack.append(now)
            case b"Q":
                now = stack.pop()
            case b"cm":
                a, b, c, d, e, f = values
                now = _then((a, b, c, d, e, f), now)
            case b"re":
                _, _, width, height = values
                yield abs(width * now[0] + height * now[2]), abs(width * now[1] + height * now[3])


def pixels(pdf: bytes, number: int = 0, dpi: int = 100) -> NDArray[np.int16]:
    """One page in grey values."""
    page = pypdfium2.PdfDocument(pdf)[number]
    return np.asarray(page.render(scale=dpi / 72, grayscale=True).to_numpy(), np.int16)


def lines(page: PageObject, reader: PdfReader) -> Iterator[list[Point]]:
    """Every drawn way of more than one point, its corners in points on the page."""
    stack: list[Matrix] = []
    now: Matrix = (1, 0, 0, 1, 0, 0)
    way: list[Point] = []
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator == b"q":
            stack.append(now)
        elif operator == b"Q":
            now = stack.pop()
        elif operator == b"cm":
            a, b, c, d, e, f = (float(value) for value in operands)
            now = _then((a, b, c, d, e, f), now)
        elif operator in (b"m", b"l"):
            x, y = (float(value) for value in operands)
            if operator == b"m":
                if len(way) > 1:
                    yield way
                way = []
            way.append((x * now[0] + y * now[2] + now[4], x * now[1] + y * now[3] + now[5]))
        elif operator in (b"S", b"B", b"f"):
            if len(way) > 1:
                yield way
            way = []


Rect = tuple[float, float, float, float]


def overprinted(pdf: bytes) -> Iterator[tuple[int, str, str]]:
    """Runs of words that lie over one another: the page from 1, and both runs."""
    for number, page in enumerate(pypdfium2.PdfDocument(pdf), 1):
        text = page.get_textpage()
        rects: list[Rect] = [text.get_rect(n) for n in range(text.count_rects())]
        for at, one in enumerate(rects):
            for other in rects[at + 1 :]:
                if _over(one, other):
                    yield number, text.get_text_bounded(*one), text.get_text_bounded(*other)


def _over(one: Rect, other: Rect) -> bool:
    """By more than letters that lean into their neighbours: left, bottom, right, top in points."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide > 2 and high > 4
