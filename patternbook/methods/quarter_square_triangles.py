"""Quarter-square triangles: four triangles that meet in the middle of a square."""

from __future__ import annotations

from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.form import MethodForm
from patternbook.methods.made import Action, Placed, SewnSeam, Sides, Spot
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.quarter_square_told import TRIM, one, two
from patternbook.methods.triangles_written import WrittenTriangles
from patternbook.methods.world import Tally, Term, World

# The letters around the middle, clockwise from the top, by how many are written.
AROUND: Final = {2: (0, 1, 0, 1), 4: (0, 1, 2, 3)}


class WrittenQuarterSquare(WrittenTriangles):
    """The first piece lies at the top and the bottom; four go clockwise from the top."""

    called: ClassVar = "a unit of quarter-square triangles"


class QuarterSquareWork(PiecedWork[WrittenQuarterSquare]):
    """Two squares give two units; four triangles give one."""

    written = WrittenQuarterSquare

    def equations(self, name: str, unit: WrittenQuarterSquare, world: World) -> tuple[Tally, Tally]:
        """At most the square less what both diagonals take; trimmed to what its place wants."""
        size, parts = pieced.open_size(name, world), pieced.letters(unit.from_, world)
        tally = pieced.alone(name, size, unit.place)
        if not _can_be_made(name, unit, parts, world):
            pieced.give_up(name, parts, world)
            return tally, tally
        loss = Sum.of(world.triangle("twice"))
        for part in dict.fromkeys(parts):
            raw = pieced.square(part, world, unit.place)
            if world.sized(part):
                less = (Term(f"{part} cut", 1, raw), Term("less", 1, loss * -1))
                largest = Tally(f"{part} in quarters", less, unit.place)
                pieced.trimmed(name, size, [largest], world, unit)
            else:
                more = (
                    Term(name, 1, size),
                    Term("for both diagonals", 1, loss),
                    Term("to trim", 1, Sum.of(world.trimming(unit))),
                )
                pieced.cut_for(part, raw, Tally(f"for {name}", more, unit.place), world)
        return tally, tally

    def sewn(self, name: str, unit: WrittenQuarterSquare, world: World) -> Sewn:
        """Two seams cross in the middle; the first two are nested under the last."""
        parts, gives = pieced.letters(unit.from_, world), _gives(unit, world)
        around = tuple(parts[at] for at in AROUND[len(parts)])
        raw, seam = world.length(world.raw(parts[0], None).across), world.length(world.seam)
        side = world.length(pieced.open_size(name, world))
        before, measure = raw - world.triangle("twice") + seam * 2, side + seam * 2
        if gives == 1:
            actions, stitched, length = one(around, raw, seam), 3, raw * ROOT2 * 2
        else:
            actions, stitched, length = two(parts, raw, seam), 4, raw * ROOT2 * 4 - seam * 4
        if before > measure:
            actions = (*actions, Action("trim", TRIM, (Sides(measure, measure),)))
        return Sewn(
            word="quarter-square triangle",
            takes=pieced.taking(around if gives == 1 else parts),
            placed=_placed(around, side),
            seams=_seams(side),
            actions=actions,
            stitched=stitched,
            length=length,
            gives=gives,
            before=Sides(before, before) if before > measure else None,
        )


def _gives(unit: WrittenQuarterSquare, world: World) -> int:
    return int(unit.gives.at(world.size) or 2)


def _can_be_made(
    name: str, unit: WrittenQuarterSquare, parts: tuple[str, ...], world: World
) -> bool:
    """Two pieces in two units, or two or four pieces in one; all others are told."""
    gives, place = _gives(unit, world), unit.place
    if not pieced.from_cloth(name, parts, world, place):
        return False
    if len(parts) not in AROUND:
        message = f"'{name}' has four triangles of two or four pieces, and {len(parts)} are named."
        hint = "Write `from: A B`, or four clockwise from the top: `from: A B C D`."
        world.error("quarter-pieces", "R2", message, place, hint)
        return False
    if gives > 2:
        message = f"quarter-square triangles are sewn one or two at a time, not {gives}."
        hint = "Write `gives: 2` (from two squares), or `gives: 1` (from squares cut twice)."
        world.error("quarter-gives", "R2", message, place, hint)
        return False
    if gives == 2 and len(set(parts)) != 2:
        message = f"two of '{name}' come from a pair of squares, but {len(parts)} are named."
        hint = "Write `from: A B`; or `gives: 1`, and `diagonal: twice` with each piece."
        world.error("quarter-pieces", "R2", message, place, hint)
        return False
    hint = (
        "Write `diagonal: twice` with each of its pieces, or give 2 from whole squares."
        if gives == 1
        else "Leave `diagonal` out, or write `gives: 1` and `diagonal: twice`."
    )
    return pieced.cut_diagonal(name, parts, "twice" if gives == 1 else None, world, place, hint)


def _placed(around: tuple[str, ...], side: Exact) -> tuple[Placed, ...]:
    """Top, right, bottom and left, their tips in the middle."""
    middle, square = (side / 2, side / 2), _square(side)
    return tuple(
        pieced.shaped(part, pieced.corners(square[at], square[(at + 1) % 4], middle))
        for at, part in enumerate(around)
    )


def _square(side: Exact) -> tuple[tuple[Exact, Exact], ...]:
    return (NOUGHT, NOUGHT), (side, NOUGHT), (side, side), (NOUGHT, side)


def _seams(side: Exact) -> tuple[SewnSeam, ...]:
    """The two short seams, and the long one in two stretches, pressed to one side."""
    middle = Spot(side / 2, side / 2)
    top_left, top_right, low_right, low_left = (Spot(x, y) for x, y in _square(side))
    return (
        SewnSeam(middle, top_right, (0, 1), 0),
        SewnSeam(middle, low_left, (2, 3), 2),
        SewnSeam(top_left, middle, (3, 0), 3, settled=True),
        SewnSeam(middle, low_right, (2, 1), 2, settled=True),
    )


METHOD: Final = MethodForm("quarter-square triangles", WrittenQuarterSquare, QuarterSquareWork())
