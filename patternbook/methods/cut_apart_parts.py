"""What is told of a block that is cut apart: where a cut cannot run, and parts that differ."""

from __future__ import annotations

from typing import NamedTuple

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, on_the_ruler, plain
from patternbook.methods.clipping import Window, clipped, cuts_cleanly
from patternbook.methods.cut_apart_told import beside
from patternbook.methods.made import Placed
from patternbook.methods.world import World
from patternbook.notice import Mark, Notice, Place, Severity


class Cutting(NamedTuple):
    """The block as it is sewn, and how it is cut: finished sides, the raw sides of one part, how
    many parts lie side by side and one below the other, and the patches of the block."""

    source: str
    across: Exact
    down: Exact
    wide: Exact
    high: Exact
    columns: int
    rows: int
    patches: tuple[Placed, ...]


def window_of(cutting: Cutting, column: int, row: int, seam: Exact) -> Window:
    """What of the block's finished face is seen of one part once that is sewn in."""
    left, top = cutting.wide * column, cutting.high * row
    return Window(left, top, left + cutting.wide - seam * 2, top + cutting.high - seam * 2)


def part_of(cutting: Cutting, column: int, row: int, seam: Exact) -> tuple[Placed, ...]:
    """The patches of one part, from its own top left corner."""
    window = window_of(cutting, column, row, seam)
    found = []
    for patch in cutting.patches:
        piece = clipped(patch, window) if cuts_cleanly(patch, window) else None
        if piece is not None:
            found.append(_moved(piece, window.left, window.top))
    return tuple(found)


def _moved(part: Placed, left: Exact, top: Exact) -> Placed:
    outline = part.outline
    if outline is not None:
        spots = tuple(spot._replace(x=spot.x - left, y=spot.y - top) for spot in outline.corners)
        arcs = tuple(
            arc._replace(centre=arc.centre._replace(x=arc.centre.x - left, y=arc.centre.y - top))
            for arc in outline.arcs
        )
        outline = outline._replace(corners=spots, arcs=arcs)
    return part._replace(x=part.x - left, y=part.y - top, outline=outline)


def check(
    name: str,
    place: Place,
    cutting: Cutting,
    parts: list[tuple[Placed, ...]],
    world: World,
) -> None:
    """A cut through a curve, along a seam or off the ruler; parts that are not alike."""
    seam = world.length(world.seam)
    if _through_curves(name, place, cutting, seam, world):
        return
    for raw, number in {(cutting.wide, cutting.columns): 0, (cutting.high, cutting.rows): 0}:
        _off_the_ruler(name, place, cutting.source, raw, number, world)
    for upright in (True, False):
        _near_seams(name, place, cutting, seam, world, upright=upright)
    first = _faces(parts[0], cutting, seam)
    other = next((n for n, part in enumerate(parts) if not _one_of(part, first)), None)
    if other is not None:
        row, column = divmod(other, cutting.columns)
        message = (
            f"the parts of '{name}' differ: the one in row {row + 1}, column {column + 1} is not "
            "the first one turned. The drawings show the first one, at the top left, for all."
        )
        hint = "Cut a block that looks alike from every side, or count on some that differ."
        _tell("advice", "parts-differ", message, hint, place, world)


def _through_curves(name: str, place: Place, cutting: Cutting, seam: Exact, world: World) -> bool:
    for row in range(cutting.rows):
        for column in range(cutting.columns):
            window = window_of(cutting, column, row, seam)
            for patch in cutting.patches:
                if clipped(patch._replace(outline=None), window) is None:
                    continue
                if not cuts_cleanly(patch, window):
                    message = f"'{name}' is cut through the curve or the angle of {patch.part}."
                    hint = "Only patches with straight edges and no inner corner are cut apart."
                    world.error("cut-apart-shape", "R13", message, place, hint)
                    return True
    return False


def _off_the_ruler(
    name: str,
    place: Place,
    source: str,
    raw: Exact,
    number: int,
    world: World,
) -> None:
    """An equal share that no ruler shows: the nearest blocks that would do."""
    system, cm = (CENTIMETRES, True) if world.unit == "cm" else (INCHES, False)
    if number == 1 or on_the_ruler(raw, system):
        return
    step = system.step * number
    whole_ = raw * number
    below, above = whole_.down(step), whole_.up(step)
    message = (
        f"'{name}': {source} measures {plain(whole_, cm)}; ÷ {number} it is "
        f"{plain(raw, cm)}, which no ruler shows."
    )
    hint = f"A block that measures {plain(below, cm)} or {plain(above, cm)} would do."
    _tell("warning", "cut-off-ruler", message, hint, place, world)


def _near_seams(
    name: str,
    place: Place,
    cutting: Cutting,
    seam: Exact,
    world: World,
    *,
    upright: bool,
) -> None:
    """A cut closer to a seam than a seam allowance opens it, or leaves nothing to be seen."""
    raw, number = (cutting.wide, cutting.columns) if upright else (cutting.high, cutting.rows)
    across = cutting.down if upright else cutting.across
    seams = beside(cutting.patches, across, upright=upright)
    cm = world.unit == "cm"
    for at in range(1, number):
        cut = raw * at - seam
        near = [abs(cut - line) for line in seams if abs(cut - line) <= seam]
        if near:
            way = "down" if upright else "across"
            message = (
                f"'{name}': the cut {way} lies {plain(min(near), cm)} from a seam of "
                f"{cutting.source}, which a seam allowance of {plain(seam, cm)} would open or hide."
            )
            hint = "Cut it into another number of parts, so that the cuts run between the seams."
            world.error("cut-on-seam", "R2", message, place, hint)
            return


Face = frozenset[tuple[object, ...]]


def _faces(part: tuple[Placed, ...], cutting: Cutting, seam: Exact) -> list[Face]:
    """How the first part looks, laid each of the ways that keep its sides."""
    wide, high = cutting.wide - seam * 2, cutting.high - seam * 2
    corners = [_face(part)]
    shown = part
    for _ in range(3):
        shown = tuple(_turned(one, high) for one in shown)
        wide, high = high, wide
        corners.append(_face(shown))
    return corners


def _one_of(part: tuple[Placed, ...], faces: list[Face]) -> bool:
    return _face(part) in faces


def _face(part: tuple[Placed, ...]) -> Face:
    """What is seen: every patch's letter and corners, whatever its turn."""
    return frozenset((one.part, one.laid_on, frozenset(_corners(one))) for one in part)


def _corners(one: Placed) -> tuple[tuple[Exact, Exact], ...]:
    if one.outline is not None:
        return tuple((spot.x, spot.y) for spot in one.outline.corners)
    right, low = one.x + one.across, one.y + one.down
    return (one.x, one.y), (right, one.y), (right, low), (one.x, low)


def _turned(one: Placed, high: Exact) -> Placed:
    """A quarter turn clockwise inside a part that is so high."""
    outline = one.outline
    if outline is not None:
        outline = outline._replace(
            corners=tuple(spot._replace(x=high - spot.y, y=spot.x) for spot in outline.corners)
        )
    return one._replace(
        x=high - one.y - one.down, y=one.x, across=one.down, down=one.across, outline=outline
    )


def _tell(
    severity: Severity, code: str, message: str, hint: str, place: Place, world: World
) -> None:
    marks = (Mark(place, "here"),)
    world.tell(Notice(code, severity, "quilt", message, marks, "R8", (world.size,), hint=hint))
