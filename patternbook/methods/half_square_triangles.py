"""Half-square triangles: two squares sewn along the diagonal and cut apart."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.form import MethodForm
from patternbook.methods.half_square_told import SEWN, TRIM
from patternbook.methods.made import Action, Placed, SewnSeam, Sides, Spot
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.triangles_written import WrittenTriangles, two_parts
from patternbook.methods.world import Diagonal, Tally, Term, World

# Half a square of the pair for two units, a quarter of it for eight.
PARTS: Final = {1: 1, 2: 1, 8: 2}


class WrittenHalfSquare(WrittenTriangles):
    """The first piece lies in the top-left half."""

    called: ClassVar = "a unit of half-square triangles"


class HalfSquareWork(PiecedWork[WrittenHalfSquare]):
    """Two squares give two, four or eight units; two triangles give one."""

    written = WrittenHalfSquare

    def equations(self, name: str, unit: WrittenHalfSquare, world: World) -> tuple[Tally, Tally]:
        """At most the square less what the diagonal takes; trimmed to what its place wants."""
        size, gives = pieced.open_size(name, world), _gives(unit, world)
        tally = pieced.alone(name, size, unit.place)
        parts = two_parts(name, unit, world)
        if not parts or not _can_be_made(name, unit, parts, world):
            pieced.give_up(name, parts, world)
            return tally, tally
        for part in dict.fromkeys(parts):
            raw = pieced.square(part, world, unit.place)
            if world.sized(part):
                largest = _largest(part, raw, gives, world, unit)
                pieced.trimmed(name, size, [largest], world, unit)
            else:
                pieced.cut_for(part, raw, _wanted(name, size, gives, world, unit), world)
        return tally, tally

    def sewn(self, name: str, unit: WrittenHalfSquare, world: World) -> Sewn:
        """Marked, sewn on both sides of the line, cut apart, pressed and trimmed."""
        gives = _gives(unit, world)
        first, second = pieced.letters(unit.from_, world)
        raw, seam = world.length(world.raw(second, None).across), world.length(world.seam)
        side = world.length(pieced.open_size(name, world))
        before, measure = _before(raw, gives, world), side + seam * 2
        actions = [*SEWN[gives](first, second, raw, seam), pieced.PRESS]
        if before > measure:
            actions.append(Action("trim", TRIM, (Sides(measure, measure),)))
        stitched, length = _stitched(raw, gives)
        return Sewn(
            word="half-square triangle",
            takes=pieced.taking((first, second)),
            placed=_placed(first, second, side),
            seams=(SewnSeam(Spot(side, NOUGHT), Spot(NOUGHT, side), (0, 1), 0),),
            actions=tuple(actions),
            stitched=stitched,
            length=length,
            gives=gives,
            before=Sides(before, before) if before > measure else None,
        )


def _gives(unit: WrittenHalfSquare, world: World) -> int:
    return int(unit.gives.at(world.size) or 2)


def _placed(first: str, second: str, side: Exact) -> tuple[Placed, ...]:
    """The first in the top-left half, the second in the bottom-right half."""
    upper = pieced.corners((NOUGHT, NOUGHT), (side, NOUGHT), (NOUGHT, side))
    lower = pieced.corners((side, NOUGHT), (side, side), (NOUGHT, side))
    return pieced.shaped(first, upper), pieced.shaped(second, lower)


def _largest(part: str, raw: Sum, gives: int, world: World, unit: WrittenHalfSquare) -> Tally:
    """The largest unit that a square gives (trade facts 5.1, 5.4 and 5.6)."""
    seams = world.seam * 2
    if gives == 4:
        half = ROOT2 / 2
        terms = (
            Term(f"{part} less two seams, ÷ √2,", 1, (raw - seams) * half),
            Term("less two seams", 1, seams * -1),
        )
        return Tally(f"4 from {part}", terms, unit.place)
    share = raw * Fraction(1, PARTS[gives])
    words = f"{part} cut" if gives < 8 else f"half of {part} cut"
    loss = Sum.of(-world.triangle("once"))
    return Tally(f"{gives} from {part}", (Term(words, 1, share), Term("less", 1, loss)), unit.place)


def _wanted(name: str, size: Sum, gives: int, world: World, unit: WrittenHalfSquare) -> Tally:
    """What to cut for units of this size, with something to trim."""
    extra = Sum.of(world.trimming(unit))
    if gives == 4:
        side = (size + world.seam * 2 + extra) * ROOT2
        terms = (Term(f"{name} × √2", 1, side), Term("seam", 2, world.seam))
        return Tally(f"for 4 {name}", terms, unit.place)
    share = PARTS[gives]
    sums = (
        Term(name, share, size),
        Term("for the diagonal", share, Sum.of(world.triangle("once"))),
        Term("to trim", share, extra),
    )
    return Tally(f"for {gives} {name}", sums, unit.place)


def _before(raw: Exact, gives: int, world: World) -> Exact:
    """What a unit measures once it is pressed, raw edge to raw edge."""
    seams = world.length(world.seam) * 2
    if gives == 4:
        return (raw - seams) / ROOT2
    return raw / PARTS[gives] - world.triangle("once") + seams


def _stitched(raw: Exact, gives: int) -> tuple[int, Exact]:
    """The seams of one go and their length: about the diagonal each, or all four sides."""
    if gives == 4:
        return 4, raw * 4
    number = {1: 1, 2: 2, 8: 4}[gives]
    return number, raw * ROOT2 * number


def _can_be_made(name: str, unit: WrittenHalfSquare, parts: tuple[str, ...], world: World) -> bool:
    """Two triangles are wanted for one at a time, and whole squares for all other ways."""
    single = _gives(unit, world) == 1
    hint = "Write `diagonal: once`." if single else "Leave `diagonal` out, or write gives: 1."
    wanted: Diagonal | None = "once" if single else None
    return pieced.from_cloth(name, parts, world, unit.place) and pieced.cut_diagonal(
        name, parts, wanted, world, unit.place, hint
    )


METHOD: Final = MethodForm("half-square triangles", WrittenHalfSquare, HalfSquareWork())
