"""Drawings as SVG for the download page: real text, and whole numbers in the drawing's units."""

from __future__ import annotations

from html import escape

from patternbook.strokes.artists import paper
from patternbook.strokes.lettering import FAMILY
from patternbook.strokes.operators import Outline, num, nums, vector_path
from patternbook.strokes.renderer import Colour, Nib, StrokeRenderer, Words
from patternbook.strokes.settled import settled
from patternbook.strokes.stroke import Drawing


def svg(drawing: Drawing) -> str:
    """A whole <svg> element; its title and description tell the drawing to those who hear it."""
    with settled():
        sheet = paper(drawing)
        renderer = SvgRenderer(sheet.height * 72)
        sheet.draw(renderer)
    renderer.group("")
    width, height = (num(side) for side in drawing.inches)
    title, words = f"{drawing.name}-title", f"{drawing.name}-words"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{title} {words}" '
        f'width="{width}in" height="{height}in" '
        f'viewBox="0 0 {nums((sheet.width * 72, sheet.height * 72))}">'
        f'<title id="{title}">{escape(drawing.title)}</title>'
        f'<desc id="{words}">{escape(drawing.alt)}</desc>{"".join(renderer.written)}</svg>'
    )


def _hex(colour: Colour) -> str:
    return "#" + "".join(f"{round(255 * part):02x}" for part in colour)


class SvgRenderer(StrokeRenderer):
    """Writes artists as SVG elements; `height` is that of the sheet, in points."""

    def __init__(self, height: float) -> None:
        super().__init__()
        self.height = height
        self.written: list[str] = []
        self.open = ""

    def group(self, start: str) -> None:
        """Open a group, unless it is the one at hand; nothing at all closes the last."""
        if start == self.open:
            return
        if self.open:
            self.written.append("</g>")
        self.written.append(start)
        self.open = start

    def shape(self, shape: Outline, fill: Colour | None, nib: Nib | None) -> None:
        a, b, c, d, e, f = shape.matrix
        matrix = f"{nums((a, -b, c, -d), 8)} {nums((e, self.height - f))}"
        self.group(f'<g transform="matrix({matrix})">')
        paint = _hex(fill) if fill else "none"
        line = _line(nib, shape.pen) if nib else ""
        data = vector_path(shape.corners, shape.codes)
        self.written.append(f'<path fill="{paint}"{line} d="{data}"/>')

    def words(self, words: Words) -> None:
        face = words.face
        looks = f' font-weight="{face.weight}"' if face.weight != 400 else ""
        looks += ' font-style="italic"' if face.italic else ""
        size = num(words.size, 2)
        self.group(f'<g font-family="{FAMILY}, sans-serif" font-size="{size}"{looks}>')
        x, y = num(words.x, 2), num(self.height - words.y, 2)
        turn = f' transform="rotate({num(-words.angle)} {x} {y})"' if words.angle else ""
        self.written.append(
            f'<text x="{x}" y="{y}"{turn} fill="{_hex(words.colour)}">{escape(words.text)}</text>'
        )


def _line(nib: Nib, pen: float) -> str:
    """Attributes of the line; `pen` is a point in the units of the group."""
    written = f' stroke="{_hex(nib.colour)}" stroke-width="{num(nib.width * pen, 6)}"'
    if nib.dash:
        written += f' stroke-dasharray="{nums((mark * pen for mark in nib.dash), 5)}"'
    if nib.round_ends:
        written += ' stroke-linecap="round"'
    return written + ' stroke-linejoin="round"'
