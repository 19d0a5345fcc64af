"""What a pen leaves behind: patches, lines, arrows and labels, and the drawing they make up.

Places are in the drawing's own units, x to the right and y down; widths of lines, sizes of
letters, dashes and hatching are in points on paper, whatever the scale.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]
Heads = Literal["end", "start", "both"]
Weight = Literal[400, 600, 700]
Role = Literal[
    "fine",
    "outline",
    "edge",
    "emphasis",
    "cut",
    "seam",
    "sewn",
    "mark",
    "fold",
    "trim",
    "dimension",
    "leader",
    "grain",
    "press",
    "bias",
    "selvage",
    "waste",
    "thread",
    "ground",
    "quilting",
    "quilting-fine",
    "quilting-2",
    "quilting-3",
    "stitched",
    "sewing",
    "sewing-fine",
    "travel",
    "hollow",
    "blank",
    "under-binding",
    "disc",
]
INK: Final = "#222222"
_COLOUR: Final = re.compile(r"#[0-9a-f]{6}", re.ASCII)
_NAME: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*", re.ASCII)


@dataclass(frozen=True)
class LineStyle:
    """How the lines of one role look; `dash` gives lengths drawn and left out, in turn."""

    width: float
    colour: str = INK
    dash: tuple[float, ...] = ()


# Round ends make a dot of a dash this short; one of no length is left out by some printers.
_DOT: Final = 0.05
# Weight, dash and colour differ together, so that none of them alone carries the meaning.
STYLES: Final[dict[Role, LineStyle]] = {
    "fine": LineStyle(0.25),
    "outline": LineStyle(0.6),
    "edge": LineStyle(1.2),
    "emphasis": LineStyle(2.0),
    "cut": LineStyle(1.6, "#111111"),
    "seam": LineStyle(0.8, INK, (3.0, 2.0)),
    "sewn": LineStyle(0.6),
    "mark": LineStyle(0.9, INK, (_DOT, 2.2)),
    "fold": LineStyle(0.8, INK, (5.0, 2.0, _DOT, 2.0)),
    "trim": LineStyle(0.8, INK, (7.0, 2.5)),
    "dimension": LineStyle(0.5),
    "leader": LineStyle(0.4, "#444444"),
    "grain": LineStyle(0.7),
    "press": LineStyle(1.0, "#8a1c1c"),
    "bias": LineStyle(0.7),
    "selvage": LineStyle(0.5),
    "waste": LineStyle(0.4, "#666666"),
    "thread": LineStyle(0.6, "#444444", (2.0, 1.2)),
    "ground": LineStyle(0.4, "#a8a8a8"),
    "quilting": LineStyle(0.9, "#14366b"),
    "quilting-fine": LineStyle(0.5, "#14366b"),
    "quilting-2": LineStyle(0.9, "#7a1f4f", (4.0, 2.0)),
    "quilting-3": LineStyle(1.0, "#1d5b2c", (_DOT, 2.2)),
    "stitched": LineStyle(0.6, "#9a9a9a"),
    "sewing": LineStyle(1.2),
    "sewing-fine": LineStyle(0.8),
    # A way that is gone again is hollow: the second line lies on the first.
    "travel": LineStyle(2.0),
    "hollow": LineStyle(1.1, "#ffffff"),
    "blank": LineStyle(2.0, "#ffffff"),
    "under-binding": LineStyle(1.1, INK, (2.6, 2.6)),
    "disc": LineStyle(0.5),
}


def _in_hex(colour: str) -> None:
    if not _COLOUR.fullmatch(colour):
        raise ValueError(f"{colour!r} is not a colour such as '#14366b'")


@dataclass(frozen=True)
class Hatch:
    """Parallel lines over a patch, one set an angle (degrees, anticlockwise as seen)."""

    angles: tuple[float, ...]
    gap: float = 4.0
    width: float = 0.5
    colour: str = INK

    def __post_init__(self) -> None:
        _in_hex(self.colour)


@dataclass(frozen=True)
class Fill:
    """The tone of a fabric, and the hatching that tells it from another of that tone."""

    colour: str
    hatch: Hatch | None = None

    def __post_init__(self) -> None:
        _in_hex(self.colour)


@dataclass(frozen=True)
class Patch:
    """A closed polygon; without a fill it is see-through, without an outline it has no edge."""

    points: tuple[Point, ...]
    fill: Fill | None
    outline: Role | None = "outline"


@dataclass(frozen=True)
class Line:
    """A line through points, in the style of its role."""

    points: tuple[Point, ...]
    role: Role
    closed: bool = False


@dataclass(frozen=True)
class Arrow:
    """A line with filled heads, `size` points long."""

    points: tuple[Point, ...]
    role: Role
    heads: Heads = "end"
    size: float = 5.0


@dataclass(frozen=True)
class Label:
    """One line of words; (x, y) lies half-way up its capitals, at the start, middle or end.

    `angle` is in degrees, anticlockwise as seen; `plate` is the colour of a slip under the
    words, for a label on hatching.
    """

    x: float
    y: float
    text: str
    size: float
    anchor: Anchor = "middle"
    weight: Weight = 400
    colour: str = INK
    angle: float = 0.0
    italic: bool = False
    plate: str | None = None

    def __post_init__(self) -> None:
        _in_hex(self.colour)
        _in_hex(self.plate or self.colour)
        if self.italic and self.weight != 400:
            raise ValueError("slanted letters come in the regular weight only")


Stroke = Patch | Line | Arrow | Label


@dataclass(frozen=True)
class Drawing:
    """A finished drawing: `scale` inches on paper a unit, `alt` in words for those who hear it."""

    name: str
    title: str
    alt: str
    width: float
    height: float
    scale: float
    strokes: tuple[Stroke, ...]

    def __post_init__(self) -> None:
        if not _NAME.fullmatch(self.name):
            raise ValueError(f"{self.name!r} is not a name in small letters, digits and hyphens")
        if not self.alt.strip():
            raise ValueError(f"the drawing {self.name} has no words for readers who hear it")
        if min(self.width, self.height, self.scale) <= 0:
            raise ValueError(f"the drawing {self.name} has no size")

    @property
    def inches(self) -> tuple[float, float]:
        """Width and height on paper."""
        return self.width * self.scale, self.height * self.scale
