"""A patch cut straight through: what of it lies inside an upright rectangle, exactly."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from patternbook.exact import Exact
from patternbook.methods.made import Outline, Placed, Spot


class Window(NamedTuple):
    """An upright rectangle."""

    left: Exact
    top: Exact
    right: Exact
    low: Exact


def clipped(part: Placed, window: Window) -> Placed | None:
    """The part of a patch inside the window; None where it lies outside."""
    left, top = max(part.x, window.left), max(part.y, window.top)
    right = min(part.x + part.across, window.right)
    low = min(part.y + part.down, window.low)
    if left >= right or top >= low:
        return None
    if part.outline is None:
        return part._replace(x=left, y=top, across=right - left, down=low - top)
    if inside(part, window):
        return part
    return shape(part, _cut(part.outline.corners, window))


def beside(part: Placed, within: Callable[[Spot], Exact]) -> Placed | None:
    """The part of a patch on that side of a straight line where `within` is above nought; None
    where it lies on the other."""
    corners = corners_of(part)
    if all(within(spot).sign() >= 0 for spot in corners):
        return part
    return shape(part, _half(corners, within))


def corners_of(part: Placed) -> tuple[Spot, ...]:
    """The corners of a patch, clockwise."""
    if part.outline is not None:
        return part.outline.corners
    right, low = part.x + part.across, part.y + part.down
    return Spot(part.x, part.y), Spot(right, part.y), Spot(right, low), Spot(part.x, low)


def straight(part: Placed) -> bool:
    """Whether a line can be cut through it: straight edges, no corner turned in."""
    return part.outline is None or not (part.outline.arcs or _hollow(part.outline.corners))


def inside(part: Placed, window: Window) -> bool:
    """Whether all of the patch lies in the window."""
    return (
        part.x >= window.left
        and part.y >= window.top
        and part.x + part.across <= window.right
        and part.y + part.down <= window.low
    )


def cuts_cleanly(part: Placed, window: Window) -> bool:
    """Whether the window's edges can be cut through it: straight edges, no corner turned in."""
    if part.outline is None or inside(part, window):
        return True
    return not part.outline.arcs and not _hollow(part.outline.corners)


def shape(part: Placed, corners: Sequence[Spot]) -> Placed | None:
    """The patch with these corners, none kept that lies on a straight edge; None where nothing
    is left of it."""
    kept = [
        corner
        for at, corner in enumerate(corners)
        if _turns(corners[at - 1], corner, corners[(at + 1) % len(corners)])
    ]
    if len(kept) < 3:
        return None
    xs, ys = [corner.x for corner in kept], [corner.y for corner in kept]
    left, top, right, low = min(xs), min(ys), max(xs), max(ys)
    oblong = len(kept) == 4 and all(x in (left, right) and y in (top, low) for x, y in kept)
    outline = None if oblong else Outline(tuple(kept))
    return Placed(part.part, part.turn, left, top, right - left, low - top, outline, part.laid_on)


def _cut(corners: Sequence[Spot], window: Window) -> Sequence[Spot]:
    """The corners cut by one edge of the window after the other."""
    edges: tuple[Callable[[Spot], Exact], ...] = (
        lambda spot: spot.x - window.left,
        lambda spot: window.right - spot.x,
        lambda spot: spot.y - window.top,
        lambda spot: window.low - spot.y,
    )
    for edge in edges:
        corners = _half(corners, edge)
    return corners


def _half(corners: Sequence[Spot], edge: Callable[[Spot], Exact]) -> list[Spot]:
    """What lies on the inner side of one edge."""
    kept: list[Spot] = []
    for at, spot in enumerate(corners):
        before = corners[at - 1]
        one, other = edge(before), edge(spot)
        if (one.sign() > 0 > other.sign()) or (one.sign() < 0 < other.sign()):
            share = one / (one - other)
            kept.append(
                Spot(
                    before.x + (spot.x - before.x) * share,
                    before.y + (spot.y - before.y) * share,
                )
            )
        if other.sign() >= 0:
            kept.append(spot)
    return [spot for at, spot in enumerate(kept) if spot != kept[at - 1]]


def _turns(before: Spot, corner: Spot, after: Spot) -> bool:
    return _cross(before, corner, after).sign() != 0


def _hollow(corners: Sequence[Spot]) -> bool:
    return any(
        _cross(corners[at - 1], corner, corners[(at + 1) % len(corners)]).sign() < 0
        for at, corner in enumerate(corners)
    )


def _cross(before: Spot, corner: Spot, after: Spot) -> Exact:
    """Above nought where the way turns to the right, as it does at each corner clockwise."""
    return (corner.x - before.x) * (after.y - corner.y) - (corner.y - before.y) * (
        after.x - corner.x
    )
