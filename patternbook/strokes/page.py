"""Drawings written straight into the booklet's page, their words in the page's own fonts.

WeasyPrint shows what it finds in its image cache, so a drawing is put there under the address
`diagram:NAME` that the page's image names. That cache is public; what it asks of an image, the
page's stream and the binding to Pango are not documented. The version is pinned for them, and
a test holds the SVG of the same drawing against the page.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from weasyprint.pdf.fonts import Font
from weasyprint.pdf.stream import Stream
from weasyprint.text.ffi import TO_UNITS, ffi, gobject, pango
from weasyprint.text.fonts import FontConfiguration

from patternbook.strokes.artists import paper
from patternbook.strokes.lettering import FAMILY, Face
from patternbook.strokes.operators import Outline, num, nums, page_path
from patternbook.strokes.paper import Paper
from patternbook.strokes.renderer import Colour, Nib, StrokeRenderer, Words
from patternbook.strokes.settled import settled
from patternbook.strokes.stroke import Drawing

_PAINT = {(True, True): b" B", (True, False): b" f", (False, True): b" S"}


class StrangeFontError(ValueError):
    """A font of the family that drawings are lettered in, which is not ours."""


def page_images(drawings: Mapping[str, Drawing], fonts: FontConfiguration) -> dict[str, PageImage]:
    """The image cache of a page, for the font configuration that the page is laid out with."""
    return {f"diagram:{name}": PageImage(drawing, fonts) for name, drawing in drawings.items()}


@dataclass
class PageImage:
    """One drawing as WeasyPrint takes an image."""

    drawing: Drawing
    fonts: FontConfiguration

    @cached_property
    def paper(self) -> Paper:
        with settled():
            return paper(self.drawing)

    def get_intrinsic_size(self, _resolution: float, _font_size: float) -> tuple[float, ...]:
        """Width and height in CSS pixels, and their ratio."""
        width, height = self.drawing.inches
        return width * 96, height * 96, width / height

    def draw(self, stream: Stream, width: float, height: float, _style: object) -> None:
        """Write it into the page, in a box of the page's own units."""
        scale = width / (self.drawing.inches[0] * 72)
        stream.push_state()
        stream.set_alpha("1", stroke=True, fill=True)
        stream.transform(scale, 0, 0, -scale, 0, height)
        renderer = PageRenderer(stream, self.fonts)
        with settled():
            self.paper.draw(renderer)
        renderer.close()
        stream.pop_state()


class PageRenderer(StrokeRenderer):
    """Writes artists as operators of a page: points, y up, and only what changes."""

    def __init__(self, stream: Stream, fonts: FontConfiguration) -> None:
        super().__init__()
        self.stream, self.fonts = stream, fonts
        self.run = ""
        self.state: dict[str, str] = {}
        self.page_fonts: dict[Face, Font] = {}

    def close(self) -> None:
        """End the last run."""
        self._enter("")

    def _write(self, operators: str | bytes) -> None:
        self.stream.stream.append(operators if isinstance(operators, bytes) else operators.encode())

    def _enter(self, run: str) -> None:
        """Begin a run of paths under one matrix, or of words, unless it is the one at hand."""
        if run == self.run:
            return
        if self.run == "BT":
            self._write("ET")
        if self.run:
            self.stream.pop_state()
        self.run, self.state = run, {}
        if run:
            self.stream.push_state()
            self._write(run)

    def _put(self, key: str, operators: str) -> None:
        if self.state.get(key) != operators:
            self.state[key] = operators
            self._write(operators)

    def shape(self, shape: Outline, fill: Colour | None, nib: Nib | None) -> None:
        self._enter(f"{nums(shape.matrix[:4], 8)} {nums(shape.matrix[4:])} cm")
        if fill:
            self._put("rg", nums(fill, 3) + " rg")
        if nib:
            self._take(nib, shape.pen)
        self._write(page_path(shape.corners, shape.codes) + _PAINT[bool(fill), bool(nib)])

    def _take(self, nib: Nib, pen: float) -> None:
        """Colour and style of the line; `pen` is a point in the units of the run."""
        self._put("RG", nums(nib.colour, 3) + " RG")
        self._put("w", num(nib.width * pen, 6) + " w")
        self._put("d", f"[{nums((mark * pen for mark in nib.dash), 5)}] 0 d")
        self._put("J", f"{nib.round_ends:d} J")
        self._put("j", "1 j")

    def words(self, words: Words) -> None:
        glyphs, font = words.face.glyphs, self._font(words.face)
        self._enter("BT")
        for letter in words.text:
            glyph, width = glyphs[letter]
            font.widths[glyph], font.to_unicode[glyph] = width * 1000, letter
        self._put("rg", nums(words.colour, 3) + " rg")
        self._put("Tf", f"/{font.hash} {num(words.size, 2)} Tf")
        turn = math.radians(words.angle)
        cos, sin = math.cos(turn), math.sin(turn)
        text = "".join(f"{glyphs[letter][0]:04x}" for letter in words.text)
        place = f"{nums((cos, sin, -sin, cos))} {nums((words.x, words.y), 2)} Tm"
        self._write(f"{place} <{text}> Tj")

    def _font(self, face: Face) -> Font:
        """The face among the page's fonts, so that drawing and text share one subset."""
        if face not in self.page_fonts:
            font = self.stream.add_font(_pango_font(face, self.fonts))[0]
            if font.file_content != face.path.read_bytes():
                raise StrangeFontError(f"another font than {face.path.name} is called {FAMILY}")
            self.page_fonts[face] = font
        return self.page_fonts[face]


def _pango_font(face: Face, fonts: FontConfiguration) -> ffi.CData:
    context = pango.pango_font_map_create_context(fonts.font_map)
    context = ffi.gc(context, gobject.g_object_unref)
    wanted = ffi.gc(pango.pango_font_description_new(), pango.pango_font_description_free)
    name = ffi.new("char[]", FAMILY.encode())
    pango.pango_font_description_set_family(wanted, name)
    pango.pango_font_description_set_weight(wanted, face.weight)
    pango.pango_font_description_set_style(wanted, 2 if face.italic else 0)
    pango.pango_font_description_set_absolute_size(wanted, int(10 * TO_UNITS))
    return pango.pango_font_map_load_font(fonts.font_map, context, wanted)
