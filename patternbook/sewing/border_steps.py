"""The steps of borders: one pair of strips, then the other, each with its measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.exact import ROOT2, Exact
from patternbook.forms import by_name
from patternbook.quilt.edges import Joining
from patternbook.quilt.meeting import Meetings, around
from patternbook.quilt.press_words import Way
from patternbook.quilt.records import Border, LayoutMade, Placed, Quilt, Sides, Unit
from patternbook.sewing.counting import taken
from patternbook.sewing.records import BorderStep

Pair = Literal["sides", "ends"]
OUT: dict[Pair, tuple[Way, Way]] = {"sides": ("left", "right"), "ends": ("up", "down")}


MITRES = 4  # corners, sewn when both pairs are on


class _Sewing(NamedTuple):
    """One pair about to be sewn on: what it is sewn to and what that leaves."""

    border: Border
    pair: Pair
    strips: tuple[tuple[Placed, ...], tuple[Placed, ...]]
    inside: Sides
    after: Sides
    joining: Joining


def border_steps(
    unit: Unit, made: LayoutMade, centre: Sequence[str], make: int, quilt: Quilt, meetings: Meetings
) -> Iterator[BorderStep]:
    """Both pairs of every border, from the inside out; the first is sewn to `centre` too where
    no step before took that."""
    inside = made.before_borders
    for number, border in enumerate(made.borders):
        for sewing in _pairs(unit.name, number, border, inside, meetings):
            yield _step(sewing, unit, centre, make, quilt)
            centre = ()
        inside = border.after


def _pairs(
    unit: str, number: int, border: Border, inside: Sides, meetings: Meetings
) -> Iterator[_Sewing]:
    parts, joinings = around(border), meetings.border(unit, number)
    between = (
        Sides(border.after.across, inside.down)
        if border.first == "sides"
        else Sides(inside.across, border.after.down)
    )
    # Mitred strips are sewn to the quilt alone, never over the ends of the other pair.
    second = inside if border.corners == "mitred" else between
    pairs: tuple[Pair, Pair] = ("sides", "ends") if border.first == "sides" else ("ends", "sides")
    sizes = ((inside, between), (second, border.after))
    for step, pair in enumerate(pairs):
        strips = parts["across" if pair == "sides" else "down"]
        if all(strips):
            yield _Sewing(border, pair, strips, *sizes[step], joinings[step])


def _step(
    sewing: _Sewing, unit: Unit, centre: Sequence[str], make: int, quilt: Quilt
) -> BorderStep:
    border, pair, strips, inside, after, joining = sewing
    sides = pair == "sides"
    seams = Exact(quilt.seam * 2)
    part = border.side if sides else border.end
    strip = next(one for one in strips[0] if one.part == part)
    width = strip.across if sides else strip.down
    stones = [joint for one in strips for joint in one[1:]]
    length = border.side_length if sides else border.end_length
    first = pair == border.first
    mitres = MITRES if border.corners == "mitred" and not first else 0
    sewn = (inside.down if sides else inside.across) * 2 + (width + seams) * len(stones)
    return BorderStep(
        unit=unit.name,
        kind="border",
        one=1,
        make=make,
        parts=taken([*centre, *(placed.part for one in strips for placed in one)], make),
        measure=after,
        seams=2 + len(stones) + mitres,
        seam_length=(sewn + width * ROOT2 * mitres) * make,
        matches=len(joining.meets),
        same_way=sum(meet.same_way for meet in joining.meets),
        press=OUT[pair],
        note=border.note if first else None,
        border=border.number,
        pair=pair,
        first=first,
        part=part,
        length=length,
        width=width,
        corners=border.corners,
        stones=border.stones if stones else None,
        joined=_joined(part, length, quilt),
    )


def _joined(part: str, length: Exact, quilt: Quilt) -> bool:
    """Whether one strip of the cloth is too short for it."""
    piece = quilt.pieces.get(part)
    if piece is None or not piece.is_strip or piece.along == "length":
        return False
    fabric = quilt.fabrics.get(piece.fabric or "")
    if fabric is None:
        return length > quilt.width
    long: Fraction = fabric.width
    if by_name[fabric.form].strips and fabric.size:
        long = max(side for side in fabric.size if side is not None)
    return length > long
