"""Snowball corners: small squares sewn across the corners of a larger piece."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.methods import pieced
from patternbook.methods.clipping import beside, corners_of, straight
from patternbook.methods.fields import Cells, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.made import Outline, Placed, SewnSeam, Sides, Spot
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.snowball_told import actions
from patternbook.methods.world import Rule, Tally, Term, World, here
from patternbook.methods.written import WrittenMade

SIDES: Final = ("top", "right side", "bottom", "left side")
OVERLAP: Final = Rule(
    "corners-overlap", "R2", "Cut the corner squares smaller, or the piece that they lie on larger."
)


class WrittenSnowball(WrittenMade):
    """The corners go clockwise from the top left; `.` leaves one plain."""

    called: ClassVar = "a block with snowball corners"
    base: EachSize[Part]
    corners: EachSize[Cells]


class SnowballWork(PiecedWork[WrittenSnowball]):
    """The base keeps its size; each corner is covered as far as its square reaches."""

    written = WrittenSnowball

    def equations(self, name: str, unit: WrittenSnowball, world: World) -> tuple[Tally, Tally]:
        """As large as the base; two corners at one side have room beside each other."""
        base, corners = pieced.one(unit.base, world), _corners(unit, world)
        parts = (base, *(corner for corner in corners if corner))
        if not _can_be_made(name, unit, corners, parts, world):
            pieced.give_up(name, parts, world)
            open_ = pieced.open_size(name, world)
            tally = pieced.alone(name, open_, unit.place)
            return tally, tally
        raw = world.raw(base, unit.place)
        for corner in dict.fromkeys(parts[1:]):
            pieced.square(corner, world, unit.place)
        for at, side in enumerate(SIDES):
            _room(name, base, (corners[at], corners[(at + 1) % 4]), side, unit, world)
        across, down = raw.across - world.seam * 2, raw.down - world.seam * 2
        return pieced.alone(base, across, unit.place), pieced.alone(base, down, unit.place)

    def sewn(self, name: str, unit: WrittenSnowball, world: World) -> Sewn:
        """Each square is laid in its corner, sewn along its diagonal and folded over."""
        base, corners = pieced.one(unit.base, world), _corners(unit, world)
        seam = world.length(world.seam)
        raw = world.raw(base, None)
        measure = Sides(world.length(raw.across), world.length(raw.down))
        size = Sides(measure.across - seam * 2, measure.down - seam * 2)
        cut = [world.length(world.raw(part, None).across) if part else NOUGHT for part in corners]
        legs = [side - seam * 2 if side > 0 else NOUGHT for side in cut]
        covered = [at for at, part in enumerate(corners) if part]
        under = [pieced.shaped(base, _base(size, legs))]
        if world.is_unit(base):
            under = _clipped(name, base, legs, size, unit, world)
        return Sewn(
            word="snowball block",
            takes=pieced.taking((base, *(corners[at] for at in covered))),
            placed=(*under, *(_corner(corners[at], at, legs[at], size) for at in covered)),
            seams=tuple(_seams(under, covered, legs, size)),
            actions=actions(base, corners, measure, cut, seam),
            stitched=len(covered),
            length=sum((side * ROOT2 for side in cut), Exact(0)),
        )


def _corners(unit: WrittenSnowball, world: World) -> tuple[str, ...]:
    """The four corners clockwise from the top left; no name where one is left plain."""
    text = here(unit.corners, world.size)
    laid = world.laid(text) if text is not None else ()
    return tuple(str(cell.part or "") for cell in laid)


def _can_be_made(
    name: str,
    unit: WrittenSnowball,
    corners: tuple[str, ...],
    parts: tuple[str, ...],
    world: World,
) -> bool:
    """Four places, one covered at least, with whole squares; the base may be a unit."""
    if len(corners) != 4 or len(parts) < 2:
        message = f"'{name}' has four corners, and {len(corners)} are written, {len(parts) - 1} of "
        message += "them with a square."
        hint = "Write them clockwise from the top left, `.` for a plain one: `corners: K . K .`."
        world.error("four-corners", "R2", message, unit.place, hint)
        return False
    base = () if world.is_unit(parts[0]) else parts[:1]
    if not pieced.from_cloth(name, (*base, *parts[1:]), world, unit.place):
        return False
    hint = "Leave `diagonal` out: the corner is a whole square, sewn across and folded over."
    return pieced.cut_diagonal(name, (*base, *parts[1:]), None, world, unit.place, hint)


def _room(
    name: str,
    base: str,
    pair: tuple[str, str],
    side: str,
    unit: WrittenSnowball,
    world: World,
) -> None:
    """What two corners take of the side between them is no longer than it."""
    raw = world.raw(base, unit.place)
    long = (raw.down if side in SIDES[1::2] else raw.across) - world.seam * 2
    terms = tuple(
        Term(f"{part} finished", 1, world.raw(part, unit.place).across - world.seam * 2)
        for part in pair
        if part
    )
    if terms:
        one = Tally(f"the corners at the {side} of '{name}'", terms, unit.place)
        world.within(one, pieced.alone(f"the {side} of {base}", long, unit.place), OVERLAP)


# ---- how it lies


def _ends(at: int, leg: Exact, size: Sides) -> tuple[Spot, Spot]:
    """The ends of the seam across a corner, so that the corner lies to its left, walked from one
    to the other clockwise around the base."""
    right, low = size
    return (
        (Spot(NOUGHT, leg), Spot(leg, NOUGHT)),
        (Spot(right - leg, NOUGHT), Spot(right, leg)),
        (Spot(right, low - leg), Spot(right - leg, low)),
        (Spot(leg, low), Spot(NOUGHT, low - leg)),
    )[at]


def _tips(size: Sides) -> tuple[Spot, ...]:
    right, low = size
    return Spot(NOUGHT, NOUGHT), Spot(right, NOUGHT), Spot(right, low), Spot(NOUGHT, low)


def _base(size: Sides, legs: list[Exact]) -> Outline:
    """What is left of the base: corners that meet in the middle of a side are one point."""
    tips = _tips(size)
    found: list[Spot] = []
    for at, leg in enumerate(legs):
        for spot in _ends(at, leg, size) if leg > 0 else (tips[at],):
            if not found or found[-1] != spot:
                found.append(spot)
    if found[0] == found[-1]:
        found.pop()
    return Outline(tuple(found))


def _clipped(
    name: str,
    base: str,
    legs: list[Exact],
    size: Sides,
    unit: WrittenSnowball,
    world: World,
) -> list[Placed]:
    """What is left of the patches of a unit under its corners."""
    left: list[Placed] = []
    for patch in world.patches_of(base):
        if not straight(patch):
            message = f"'{name}' covers corners of '{base}', of which {patch.part} is curved."
            hint = "Only patches with straight edges and no inner corner may lie under a corner."
            world.error("cut-through", "R2", message, unit.place, hint)
            return left
        kept: Placed | None = patch
        for at, leg in enumerate(legs):
            if kept is not None and leg > 0:
                kept = beside(kept, _beyond(at, leg, size))
        if kept is not None:
            left.append(kept)
    return left


def _beyond(at: int, leg: Exact, size: Sides) -> Callable[[Spot], Exact]:
    """How far beyond the seam of a corner a point lies, along an edge."""
    tip = _tips(size)[at]

    def far(spot: Spot) -> Exact:
        return _length(spot.x - tip.x) + _length(spot.y - tip.y) - leg

    return far


def _length(value: Exact) -> Exact:
    """The value without its sign."""
    return -value if value < 0 else value


def _seams(
    under: list[Placed], covered: list[int], legs: list[Exact], size: Sides
) -> Iterator[SewnSeam]:
    """Each corner's seam, in one stretch for every patch that it is sewn to."""
    for number, at in enumerate(covered, len(under)):
        far = _beyond(at, legs[at], size)
        for below, part in enumerate(under):
            ends = [spot for spot in corners_of(part) if far(spot) == 0]
            if len(ends) == 2:
                yield SewnSeam(ends[0], ends[1], (below, number), number, settled=True)


def _corner(part: str, at: int, leg: Exact, size: Sides) -> Placed:
    start, end = _ends(at, leg, size)
    return pieced.shaped(part, Outline((_tips(size)[at], end, start)))


METHOD: Final = MethodForm("snowball corners", WrittenSnowball, SnowballWork())
