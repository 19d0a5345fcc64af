"""Flying geese: a large triangle, tip up, between two small ones."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.inch import plain
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.fields import GeeseGive, Part
from patternbook.methods.flying_geese_told import CHECK, TRIM, flips, four, one
from patternbook.methods.form import MethodForm
from patternbook.methods.geese_sizes import Geese, misfits
from patternbook.methods.made import Action, Placed, SewnSeam, Sides, Spot, Taking
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Diagonal, Rule, Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Edit, Mark, Notice
from patternbook.value import WholeValue, every

TWO_TO_ONE: Final = Rule(
    "geese-two-to-one", "R2", "A goose is twice as wide as it is high: cut it 6 1/2 x 3 1/2."
)


class WrittenGeese(WrittenMade):
    """The goose, its wings, and how many are sewn at once."""

    called: ClassVar = "a unit of flying geese"
    goose: EachSize[Part]
    wings: EachSize[Part]
    gives: EachSize[GeeseGive] = every(WholeValue(4))


class GeeseWork(PiecedWork[WrittenGeese]):
    """One large square and four small ones give four; a rectangle and two squares, or three
    triangles, give one."""

    written = WrittenGeese

    def equations(self, name: str, unit: WrittenGeese, world: World) -> tuple[Tally, Tally]:
        """Twice as wide as high, whatever it is sewn from."""
        goose, wings = (pieced.one(part, world) for part in (unit.goose, unit.wings))
        height = pieced.open_size(name, world)
        tallies = (
            Tally(name, (Term("as wide as high", 2, height),), unit.place),
            pieced.alone(name, height, unit.place),
        )
        if not _can_be_made(name, unit, goose, wings, world):
            pieced.give_up(name, (goose, wings), world)
        elif _flipped(unit, goose, world):
            _rectangle(name, goose, wings, height, unit, world)
        else:
            _squares(name, goose, wings, height, unit, world)
        return tallies

    def sewn(self, name: str, unit: WrittenGeese, world: World) -> Sewn:
        """The wings flipped on, or sewn on both sides of a line and cut apart."""
        goose, wings = (pieced.one(part, world) for part in (unit.goose, unit.wings))
        seam, height = world.length(world.seam), world.length(pieced.open_size(name, world))
        measure = Sides(height * 2 + seam * 2, height + seam * 2)
        raw = world.length(world.raw(wings, None).across)
        if _flipped(unit, goose, world):
            actions, gives = flips(goose, wings, measure, raw, seam), 1
            before, stitched, length = measure, 2, raw * ROOT2 * 2
        else:
            large = world.length(world.raw(goose, None).across)
            gives = _gives(unit, world)
            before = Sides(
                large - world.triangle("twice") + seam * 2, raw - world.triangle("once") + seam * 2
            )
            if gives == 4:
                actions = four(goose, wings, large, raw, seam)
                stitched, length = 6, (large * 2 + raw * 4) * ROOT2
            else:
                actions = one(goose, wings, large, raw, seam)
                stitched, length = 2, raw * ROOT2 * 2
        trims = before.across > measure.across or before.down > measure.down
        if trims:
            actions = (*actions, Action("trim", TRIM, (measure, seam)))
        else:
            actions = (*actions, Action("press", CHECK, (seam,)))
        return Sewn(
            word="flying goose",
            takes=(Taking(goose, 1), Taking(wings, 4 if gives == 4 else 2)),
            placed=_placed(goose, wings, height),
            seams=_seams(height),
            actions=actions,
            stitched=stitched,
            length=length,
            gives=gives,
            before=before if trims else None,
        )


def _gives(unit: WrittenGeese, world: World) -> int:
    return int(unit.gives.at(world.size) or 4)


def _flipped(unit: WrittenGeese, goose: str, world: World) -> bool:
    """Sewn one at a time from whole pieces: the wings are flipped onto a rectangle."""
    return _gives(unit, world) == 1 and world.diagonal(goose) is None


def _can_be_made(name: str, unit: WrittenGeese, goose: str, wings: str, world: World) -> bool:
    """Of pieces cut to size: all whole, or for one goose the large square cut twice, the small
    ones once."""
    if not pieced.from_cloth(name, (goose, wings), world, unit.place):
        return False
    if goose == wings:
        message = f"'{name}' has {goose} for the goose and for its wings."
        world.error("geese-pieces", "R2", message, unit.place, "Give the wings their own letter.")
        return False
    ways: tuple[tuple[str, Diagonal | None], ...] = ((goose, None), (wings, None))
    if _gives(unit, world) == 4:
        hint = "Leave `diagonal` out: four geese are sewn from whole squares. Or write `gives: 1`."
    elif _flipped(unit, goose, world):
        hint = f"Leave `diagonal` out with {wings}, or cut {goose}'s square too: `diagonal: twice`."
    else:
        hint = f"Write `diagonal: twice` with {goose}, `diagonal: once` with {wings}; or neither."
        ways = ((goose, "twice"), (wings, "once"))
    return all(
        pieced.cut_diagonal(name, (part,), wanted, world, unit.place, hint) for part, wanted in ways
    )


# ---- sizes


def _rectangle(
    name: str, goose: str, wings: str, height: Sum, unit: WrittenGeese, world: World
) -> None:
    """The goose is the unit's whole size; the squares of the wings are as high."""
    place = unit.place
    across, down = world.raw(goose, place)
    if _swapped(goose, wings, unit, world):
        message = (
            f"'{name}' has the square {goose} for its goose and the rectangle {wings} for its "
            "wings; the wings are the squares."
        )
        world.tell(_exchanged(goose, wings, message, unit, world))
        world.hopeless(name)
        return
    if misfits(Geese(name, unit, goose, wings), world):
        world.hopeless(name)
        return
    small = pieced.square(wings, world, place)
    high = Tally(name, (Term(f"{name} in height", 1, height), Term("seam", 2, world.seam)), place)
    world.equal(pieced.alone(f"{goose} in height", down, place), high, pieced.CUT)
    wide = Tally(
        f"twice the height of {name}",
        (Term(f"{name} in height", 2, height), Term("seam", 2, world.seam)),
        place,
    )
    world.equal(pieced.alone(f"{goose} in width", across, place), wide, _ratio(across, down, world))
    as_high = Tally(f"{goose} in height", (Term(goose, 1, down),), place)
    known = world.known(down)
    side = plain(known, world.unit == "cm") if known is not None else "as large"
    rule = Rule("geese-wings", "R2", f"Cut {wings} {side} square, as high as the goose.")
    world.equal(pieced.alone(f"{wings} for the wings", small, place), as_high, rule)


def _exchanged(goose: str, wings: str, message: str, unit: WrittenGeese, world: World) -> Notice:
    """The goose and its wings have changed places: at each of the two keys, the other letter."""
    keys = [
        (part.place, str(part), new)
        for value, new in ((unit.goose, wings), (unit.wings, goose))
        if (part := here(value, world.size)) is not None
    ]
    marks = tuple(Mark(place, "the other letter belongs here") for place, _, _ in keys)
    edits = tuple(Edit(*key, sure=False) for key in keys)
    hint = f"Write `goose: {wings}` and `wings: {goose}`."
    size = (world.size,)
    return Notice(
        "geese-swapped", "error", "quilt", message, marks, "R11", size, goose, wings, hint, edits
    )


def _swapped(goose: str, wings: str, unit: WrittenGeese, world: World) -> bool:
    """Whether the goose is cut as a square and the wings as a rectangle."""
    spans = (world.raw(part, unit.place) for part in (goose, wings))
    sides = [world.known(side) for span in spans for side in span]
    return None not in sides and sides[0] == sides[1] and sides[2] != sides[3]


def _ratio(across: Sum, down: Sum, world: World) -> Rule:
    """The rule, with the nearest sizes that work: by the goose's height, and by its width."""
    wide, high = world.known(across), world.known(down)
    seam = world.known(world.seam)
    if wide is None or high is None or seam is None:
        return TWO_TO_ONE
    by_height, by_width = (high - seam * 2) * 2 + seam * 2, (wide - seam * 2) / 2 + seam * 2
    sizes = [_typed(by_height, high, world), _typed(wide, by_width, world)]
    hint = f"A goose finishes twice as wide as it is high: cut it {sizes[0]} or {sizes[1]}."
    return Rule(TWO_TO_ONE.code, TWO_TO_ONE.rule, hint)


def _typed(across: Exact, down: Exact, world: World) -> str:
    decimals = world.unit == "cm"
    return f"{plain(across, decimals)} x {plain(down, decimals)}"


def _squares(
    name: str, goose: str, wings: str, height: Sum, unit: WrittenGeese, world: World
) -> None:
    """The large square less both diagonals is the width, a small one less one the height."""
    ways: tuple[tuple[str, int, Diagonal], ...] = ((goose, 2, "twice"), (wings, 1, "once"))
    for part, heights, diagonal in ways:
        raw = pieced.square(part, world, unit.place)
        if world.sized(part):
            share = Fraction(1, heights)
            loss = Sum.of(-world.triangle(diagonal) * share)
            terms = [Term(f"{part} cut" if heights == 1 else f"half of {part}", 1, raw * share)]
            terms.append(Term("less", 1, loss))
            bound = Tally(part, tuple(terms), unit.place)
            pieced.trimmed(name, height, [bound], world, unit)
        else:
            terms = [
                Term(f"{name} in height", heights, height),
                Term("for the seams", 1, Sum.of(world.triangle(diagonal))),
                Term("to trim", heights, Sum.of(world.trimming(unit))),
            ]
            pieced.cut_for(part, raw, Tally(f"for {name}", tuple(terms), unit.place), world)


# ---- how it lies


def _placed(goose: str, wings: str, height: Exact) -> tuple[Placed, ...]:
    """The goose with its tip at the middle of the top, the left wing, the right one."""
    width, tip = height * 2, (height, NOUGHT)
    left, right = (NOUGHT, height), (width, height)
    return (
        pieced.shaped(goose, pieced.corners(tip, right, left)),
        pieced.shaped(wings, pieced.corners((NOUGHT, NOUGHT), tip, left)),
        pieced.shaped(wings, pieced.corners(tip, (width, NOUGHT), right)),
    )


def _seams(height: Exact) -> tuple[SewnSeam, ...]:
    """From the lower corners to the tip; pressed to the wings."""
    tip = Spot(height, NOUGHT)
    return (
        SewnSeam(Spot(NOUGHT, height), tip, (0, 1), 1, settled=True),
        SewnSeam(tip, Spot(height * 2, height), (0, 2), 2, settled=True),
    )


METHOD: Final = MethodForm("flying geese", WrittenGeese, GeeseWork())
