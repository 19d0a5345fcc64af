"""What there is to cut out by templates: a shape for each letter and hand, and its words."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.diagrams import words
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.exact import Exact
from patternbook.inch import INCHES_A_CENTIMETRE, System, ruler_near
from patternbook.quilt.cut_line import Edge, box, cut_line, edges, seam_line
from patternbook.quilt.records import Piece, Sides
from patternbook.quilt.template import HEXAGONS, Curve, Template

ALIKE: Final = 4  # decimals to which two corners are compared
HANDED: Final = frozenset(("outline", "drawing", "quarter hollow"))


@dataclass(frozen=True)
class Cutout:
    """One shape as it is drawn at true scale: its lines from the top left corner of the box around
    all of it. `counts` are those of each size that it is for. `other` is the other hand."""

    letter: str
    template: Template
    piece: Piece
    system: System
    seam: Fraction
    counts: tuple[tuple[str, int], ...]
    of_sizes: int
    other: bool = False

    @property
    def scale(self) -> float:
        """Inches on paper to one of the pattern's own measure."""
        return 1.0 if self.system.unit == "in" else float(INCHES_A_CENTIMETRE)

    @property
    def flipped(self) -> bool:
        """Whether it is drawn the other way round than the patch lies as made: shapes that are
        traced on the back are, and templates of the other hand."""
        return self.template.laid_on != self.other

    @property
    def cut(self) -> Curve:
        """Along which the cloth is cut."""
        if self.template.laid_on:
            return self.placed(self.template.curves[0][:-1])
        return self.placed(cut_line(self.template.sew, float(self.seam)))

    @property
    def sew(self) -> Curve:
        """Along which it is sewn."""
        return self.placed(seam_line(self.template.sew))

    @property
    def inner(self) -> tuple[Curve, ...]:
        """The other lines of a drawing."""
        return tuple(self.placed(curve) for curve in self.template.curves[1:])

    @property
    def seams(self) -> tuple[Edge, ...]:
        """The edges of the seam line as made, not yet placed."""
        return () if self.template.laid_on else tuple(edges(self.template.sew))

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the box around the cut line."""
        left, top, right, low = box(self.cut)
        return right - left, low - top

    def placed(self, curve: Sequence[tuple[float, float]]) -> Curve:
        """Points of the shape as made, where they are drawn."""
        margin = 0.0 if self.template.laid_on else float(self.seam)
        if self.flipped:
            width = float(self.piece.finished.across)
            return tuple((width - x + margin, y + margin) for x, y in curve)
        return tuple((x + margin, y + margin) for x, y in curve)

    @property
    def name(self) -> str:
        """What its drawing is called."""
        sizes = () if len(self.counts) == self.of_sizes else tuple(size for size, _ in self.counts)
        return name("template", self.letter, *sizes, *(("mirrored",) if self.other else ()))

    @property
    def called(self) -> str:
        """`K`, `K mirrored`."""
        return f"{self.letter} mirrored" if self.other else self.letter

    @property
    def figures(self) -> str:
        """Its own measures, finished."""
        template, system = self.template, self.system
        sides = words.sides(self.piece.finished, system)
        if template.kind in HEXAGONS:
            return f"side {words.length(template.side or Exact(0), system)} finished"
        if template.kind == "quarter circle":
            return f"radius {words.length(template.radius or Exact(0), system)} finished"
        if template.kind == "quarter hollow":
            radius = words.length(template.radius or Exact(0), system)
            return f"radius {radius}, finishes {sides}"
        if template.laid_on:
            near = Sides(*(Exact(ruler_near(side, system)) for side in self.piece.finished))
            about = "" if near == self.piece.finished else "about "
            return f"{about}{words.sides(near, system)}"
        return f"finishes {sides}"

    @property
    def counted(self) -> tuple[str, ...]:
        """`cut 48`, or a line for each size."""
        numbers = {number for _, number in self.counts}
        if self.of_sizes == 1 or (len(numbers) == 1 and len(self.counts) == self.of_sizes):
            return (f"cut {self.counts[0][1]}",)
        return tuple(f"{size}: cut {number}" for size, number in self.counts)

    @property
    def notes(self) -> tuple[str, ...]:
        """What else must stand on it."""
        if not self.template.laid_on:
            return ()
        first = "mirrored" if self.other else "reversed"
        return (f"{first} for tracing", "no seam allowance")

    @property
    def title(self) -> str:
        """All of it in one line."""
        kind = {"outline": "shape", "drawing": "appliqué shape"}.get(
            self.template.kind, self.template.kind
        )
        told = [f"{kind}, {self.figures}", *self.notes, *self.counted]
        return f"{self.called}: {'; '.join(told)}."


def cutouts(pattern: Pattern) -> Iterator[Cutout]:
    """Every template of every letter; sizes that share one are counted together."""
    for letter in dict.fromkeys(letter for size in pattern.sizes for letter in size.quilt.pieces):
        shapes: dict[tuple[Template, Fraction], list[Size]] = {}
        for size in pattern.sizes:
            piece = size.quilt.pieces.get(letter)
            if piece is not None and piece.template is not None:
                shapes.setdefault((piece.template, size.quilt.seam), []).append(size)
        for (template, seam), sizes in shapes.items():
            yield from _hands(letter, template, seam, sizes, len(pattern.sizes))


def _hands(
    letter: str, template: Template, seam: Fraction, sizes: Sequence[Size], of_sizes: int
) -> Iterator[Cutout]:
    first = sizes[0].quilt
    others = {size.name: _mirrored(letter, size) if handed(template) else 0 for size in sizes}
    for other in (False, True):
        counts = tuple(
            (
                size.name,
                others[size.name]
                if other
                else size.quilt.pieces[letter].count
                + size.quilt.pieces[letter].spare
                - others[size.name],
            )
            for size in sizes
        )
        if any(number for _, number in counts):
            yield Cutout(
                letter, template, first.pieces[letter], first.system, seam, counts, of_sizes, other
            )


def _mirrored(letter: str, size: Size) -> int:
    """How many of a letter lie the other hand in the top; in a fragment as was counted."""
    lying = [patch for patch in size.plans.patches if patch.letter == letter]
    if not lying:
        return size.quilt.pieces[letter].mirrored
    return sum(patch.turn.mirrored for patch in lying)


def handed(template: Template) -> bool:
    """Whether the shape turned over is another shape."""
    if template.kind not in HANDED:
        return False
    ways = _walked(template)
    back = [(before, length, at) for at, length, before in reversed(ways)]
    return not any(ways[turn:] + ways[:turn] == back for turn in range(len(ways)))


Walked = list[tuple[float, float, float]]


def _walked(template: Template) -> Walked:
    """Round the shape: at each edge the bend before it, how long it is, the bend behind it."""
    corners = [(float(x), float(y)) for x, y in template.sew.corners]
    sides = [
        (b[0] - a[0], b[1] - a[1]) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]
    bends = [
        round(math.atan2(x * v - y * u, x * u + y * v), ALIKE)
        for (x, y), (u, v) in zip((sides[-1], *sides[:-1]), sides, strict=True)
    ]
    lengths = [round(x * x + y * y, ALIKE) for x, y in sides]
    behind = (*bends[1:], bends[0])
    return list(zip(bends, lengths, behind, strict=True))
