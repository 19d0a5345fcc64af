"""How wide words are in the booklet's own fonts, and which signs those fonts lack."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from patternbook.shipped import shipped
from patternbook.strokes.stroke import Weight

FAMILY: Final = "Work Sans"
CAP_HEIGHT: Final = 0.66
_FILES: Final[dict[tuple[Weight, bool], str]] = {
    (400, False): "WorkSans_400Regular.ttf",
    (400, True): "WorkSans_400Regular_Italic.ttf",
    (600, False): "WorkSans_600SemiBold.ttf",
    (700, False): "WorkSans_700Bold.ttf",
}


@dataclass(frozen=True, eq=False)
class Face:
    """One font file: number and width (as a share of the size) of every glyph."""

    path: Path
    weight: Weight
    italic: bool
    glyphs: dict[str, tuple[int, float]]

    def width(self, text: str) -> float:
        """Width as a share of the size; letters set one after another, without kerning."""
        return sum(self.glyphs[letter][1] for letter in text)


@cache
def face(weight: Weight = 400, italic: bool = False) -> Face:
    """The face for labels of that weight; only the regular weight has an italic."""
    from fontTools.ttLib import TTFont

    path = shipped("templates") / "fonts" / _FILES[weight, italic]
    with TTFont(path, lazy=True) as font:
        em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        glyphs = {
            chr(code): (font.getGlyphID(name), widths[name][0] / em)
            for code, name in font.getBestCmap().items()
        }
    return Face(path, weight, italic, glyphs)


def text_width(text: str, size: float, weight: Weight = 400, *, italic: bool = False) -> float:
    """Width in points; a sign that the font lacks is a ValueError."""
    if lacking := missing(text, weight, italic=italic):
        raise ValueError(f"{FAMILY} has no glyph for {lacking!r} in {text!r}")
    return face(weight, italic).width(text) * size


def missing(text: str, weight: Weight = 400, *, italic: bool = False) -> str:
    """The signs of the text that the font lacks, each once."""
    glyphs = face(weight, italic).glyphs
    return "".join(dict.fromkeys(letter for letter in text if letter not in glyphs))
