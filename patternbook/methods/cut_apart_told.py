"""How a block is cut apart, in words and sketches: measured from its seams, never its edge."""

from __future__ import annotations

from collections.abc import Sequence

from patternbook.exact import Exact
from patternbook.methods import pieced
from patternbook.methods.made import Action, Drawn, Placed, Sides

COUNTED = ("no", "one", "two", "three", "four", "five", "six")


def beside(patches: Sequence[Placed], length: Exact, *, upright: bool) -> tuple[Exact, ...]:
    """The seams that run through the whole block, from edge to edge, in order: where each lies.

    `length` is how long the block is along them.
    """
    ends: dict[Exact, list[tuple[Exact, Exact]]] = {}
    for patch in patches:
        if patch.laid_on:
            continue
        for at, start, end in _edges(patch, upright=upright):
            ends.setdefault(at, []).append((start, end))
    lines = (at for at, spans in ends.items() if at > 0 and _covers(spans, length))
    found = sorted(lines)
    return tuple(found[:-1])  # the last is the block's own edge


def _edges(patch: Placed, *, upright: bool) -> list[tuple[Exact, Exact, Exact]]:
    """Straight edges that lie with the cut: where, from, to."""
    corners = patch.outline.corners if patch.outline else None
    if corners is None:
        right, low = patch.x + patch.across, patch.y + patch.down
        if upright:
            return [(patch.x, patch.y, low), (right, patch.y, low)]
        return [(patch.y, patch.x, right), (low, patch.x, right)]
    found = []
    for at, spot in enumerate(corners):
        before = corners[at - 1]
        one, other = (before, spot) if upright else (before[::-1], spot[::-1])
        if one[0] == other[0]:
            found.append((one[0], min(one[1], other[1]), max(one[1], other[1])))
    return found


def _covers(spans: Sequence[tuple[Exact, Exact]], length: Exact) -> bool:
    """Whether the stretches reach from nought to the length without a gap."""
    reached = Exact(0)
    for start, end in sorted(spans):
        if start > reached:
            return False
        reached = max(reached, end)
    return reached >= length


def actions(
    source: str,
    raw: tuple[Exact, Exact],
    parts: tuple[int, int],
    seams: tuple[tuple[Exact, ...], tuple[Exact, ...]],
    seam: Exact,
) -> tuple[Action, ...]:
    """Down first, then across, nothing moved between; `raw` are the sides of one part."""
    size = (raw[0] * parts[0], raw[1] * parts[1])
    words = (
        f"Lay one {source} flat on the mat, right side up. Every cut is measured from the seams "
        "beside it and not from the edge: seams that are a little off would make the parts differ."
    )
    made = [Action("lay", words, (), (_block(source, size),))]
    cuts: tuple[Drawn, ...] = ()
    for way, upright in (("down", True), ("across", False)):
        number = parts[0] if upright else parts[1]
        for at in range(1, number):
            side = raw[0] if upright else raw[1]
            line = _line(side * at, size, upright=upright)
            words, figures = _measured(side * at, seams[0 if upright else 1], seam, upright=upright)
            first = not cuts
            still = "" if first else "Do not move the parts. "
            cuts = (*cuts, line)
            sketch = (_block(source, size), *cuts)
            made.append(Action("cut", f"{still}Cut {way}: {words}", figures, sketch))
    number = parts[0] * parts[1]
    made.append(Action("cut", f"That makes {number} parts; each measures {{0}}.", (Sides(*raw),)))
    return tuple(made)


def _measured(
    cut: Exact, seams: tuple[Exact, ...], seam: Exact, *, upright: bool
) -> tuple[str, tuple[Exact, ...]]:
    """From the seams on both sides of the cut; from one; or from the edge where there is none."""
    one, other = ("left", "right") if upright else ("upper side", "lower side")
    at = cut - seam
    before = [line for line in seams if line < at]
    after = [line for line in seams if line > at]
    if before and after:
        near, far = at - before[-1], after[0] - at
        if near == far:
            return "lay the ruler {0} from the seams on both sides of the cut.", (near,)
        words = f"lay the ruler {{0}} from the seam on the {one}, {{1}} from that on the {other}."
        return words, (near, far)
    if before:
        return f"lay the ruler {{0}} from the seam on the {one}.", (at - before[-1],)
    if after:
        return f"lay the ruler {{0}} from the seam on the {other}.", (after[0] - at,)
    return f"{{0}} from the edge on the {one}; no seam runs through beside it.", (cut,)


def _block(source: str, size: tuple[Exact, Exact]) -> Drawn:
    return pieced.cloth(source, pieced.rectangle(0.0, 0.0, float(size[0]), float(size[1])))


def _line(at: Exact, size: tuple[Exact, Exact], *, upright: bool) -> Drawn:
    if upright:
        return pieced.cut((float(at), 0.0), (float(at), float(size[1])))
    return pieced.cut((0.0, float(at)), (float(size[0]), float(at)))
