"""What lies under the stitches: the pale top, whole or in a window, and its edge."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.paths import Box, fine, windowed
from patternbook.diagrams.shape import Points, around, clipped
from patternbook.diagrams.shown import Shown
from patternbook.quilting.records import Path
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Role
from patternbook.strokes.tones import ghost

MANY: Final = 900  # patches; of more the seams are not drawn, which nobody could count anyway


def ground(pen: Pen, size: Size, rim: Role = "edge") -> None:
    """The whole top in a quarter of its tones, and its edge."""
    role: Role | None = "ground" if len(size.shown) <= MANY else None
    for patch in size.shown:
        patch.put(pen, ghost(patch.fill), role)
    pen.patch(size.edge, None, rim)


def ground_in(pen: Pen, size: Size, box: Box) -> None:
    """What of the top lies in a window."""
    inside = [patch for patch in size.shown if _meets(patch, box)]
    role: Role | None = "ground" if len(inside) <= MANY else None
    for patch in inside:
        right, low = patch.x + patch.across, patch.y + patch.down
        if box[0] <= patch.x and box[1] <= patch.y and right <= box[2] and low <= box[3]:
            patch.put(pen, ghost(patch.fill), role)
            continue
        corners: Points = patch.points or (
            (patch.x, patch.y),
            (right, patch.y),
            (right, low),
            (patch.x, low),
        )
        part = clipped(corners, *box)
        if part and min(around(part)[2:]) > 0:
            pen.patch(part, ghost(patch.fill), role)


def _meets(patch: Shown, box: Box) -> bool:
    right, low = patch.x + patch.across, patch.y + patch.down
    return patch.x < box[2] and right > box[0] and patch.y < box[3] and low > box[1]


def rim_in(pen: Pen, size: Size, role: Role, box: Box) -> None:
    """The finished edge, where the window shows it."""
    lines_in(pen, [(*size.edge, size.edge[0])], role, box)


def lines_in(pen: Pen, paths: Iterable[Path], role: Role, box: Box) -> None:
    """Lines as far as the window shows them."""
    for path in paths:
        drawn = fine(pen, path)
        parts = (drawn,) if _within(drawn, box) else windowed(drawn, box)
        for part in parts:
            pen.line(part, role)


def _within(path: Path, box: Box) -> bool:
    xs, ys = zip(*path, strict=True)
    inside = box[0] <= min(xs) and max(xs) <= box[2]
    return bool(inside and box[1] <= min(ys) and max(ys) <= box[3])
