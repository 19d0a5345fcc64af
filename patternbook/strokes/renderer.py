"""What matplotlib asks of a renderer, handed on as the two things our drawings have."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass

from matplotlib.backend_bases import GraphicsContextBase, RendererBase
from matplotlib.colors import to_rgb
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.text import Text
from matplotlib.transforms import Transform
from matplotlib.typing import ColorType

from patternbook.strokes.lettering import FAMILY, Face
from patternbook.strokes.operators import Outline, outline

Colour = tuple[float, float, float]


@dataclass(frozen=True)
class Nib:
    """How a line looks, in points; colours are shares of red, green and blue."""

    colour: Colour
    width: float
    dash: tuple[float, ...]
    round_ends: bool


@dataclass(frozen=True)
class Words:
    """One line of words: where its base line starts, and what it looks like."""

    x: float
    y: float
    text: str
    face: Face
    size: float
    angle: float
    colour: Colour


class Lettering(FontProperties):
    """The font properties that matplotlib passes on, with the face they stand for."""

    def __init__(self, face: Face, size: float) -> None:
        super().__init__(
            family=FAMILY,
            style="italic" if face.italic else "normal",
            weight=face.weight,
            size=size,
            fname=str(face.path),
        )
        self.face = face


class StrokeRenderer(RendererBase, ABC):
    """Works in points, y up; joins of lines are always round."""

    @abstractmethod
    def shape(self, shape: Outline, fill: Colour | None, nib: Nib | None) -> None:
        """Draw closed shapes or open lines."""

    @abstractmethod
    def words(self, words: Words) -> None:
        """Draw one line of words."""

    def flipy(self) -> bool:
        return False

    def draw_path(
        self,
        gc: GraphicsContextBase,
        path: Path,
        transform: Transform,
        rgbFace: ColorType | None = None,  # noqa: N803 - matplotlib's name
    ) -> None:
        fill = None if rgbFace is None else to_rgb(rgbFace)
        self.shape(outline(path, transform), fill, _nib(gc) if gc.get_linewidth() else None)

    def draw_text(  # noqa: PLR0913, PLR0917 - matplotlib's arguments
        self,
        gc: GraphicsContextBase,
        x: float,
        y: float,
        s: str,
        prop: FontProperties,
        angle: float,
        ismath: object = False,  # noqa: ARG002
        mtext: Text | None = None,  # noqa: ARG002
    ) -> None:
        if not isinstance(prop, Lettering):
            raise TypeError("words are drawn by LabelArtist alone")
        size = prop.get_size_in_points()
        self.words(Words(x, y, s, prop.face, size, angle, to_rgb(gc.get_rgb())))


def _nib(gc: GraphicsContextBase) -> Nib:
    _, dash = gc.get_dashes()
    marks = () if dash is None else tuple(float(mark) for mark in dash)  # type: ignore[union-attr,arg-type] # a list of lengths
    return Nib(to_rgb(gc.get_rgb()), gc.get_linewidth(), marks, gc.get_capstyle() == "round")
