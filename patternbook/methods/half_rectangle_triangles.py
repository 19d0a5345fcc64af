"""Half-rectangle triangles: two rectangles sewn along the diagonal, each hand by itself."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import ClassVar, Final, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import TOLERANCE
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.form import MethodForm
from patternbook.methods.half_rectangle_told import STEPS, TRIM, actions
from patternbook.methods.made import Action, Placed, SewnSeam, Sides, Spot
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.triangles_written import WrittenTriangles, two_parts
from patternbook.methods.world import Span, Tally, Term, World, here

# The hypotenuse is rational only now and then: it is rounded up to one part in so many.
FINE: Final = 1 << 24


class WrittenHalfRectangle(WrittenTriangles):
    """The first piece lies in the top-left half."""

    called: ClassVar = "a unit of half-rectangle triangles"


class Loss(NamedTuple):
    """What a rectangle's width and length lose to the seams of its triangles."""

    across: Fraction
    down: Fraction


class HalfRectangleWork(PiecedWork[WrittenHalfRectangle]):
    """Two rectangles give two units of one hand; two triangles give one."""

    written = WrittenHalfRectangle

    def equations(self, name: str, unit: WrittenHalfRectangle, world: World) -> tuple[Tally, Tally]:
        """At most the rectangle less what the slanting seam takes of each side."""
        span = _open(name, world)
        tallies = tuple(pieced.alone(name, form, unit.place) for form in span)
        parts = two_parts(name, unit, world)
        if parts and _can_be_made(name, unit, parts, world):
            for part in dict.fromkeys(parts):
                self._bound(name, part, unit, world)
        else:
            pieced.give_up(name, parts, world)
        return tallies[0], tallies[1]

    def _bound(self, name: str, part: str, unit: WrittenHalfRectangle, world: World) -> None:
        raw, span = world.raw(part, unit.place), _open(name, world)
        loss = _loss(part, unit, world)
        if loss is None:
            message = f"neither '{name}' nor {part} says how wide and how long it is."
            hint = f"Write what it finishes, as `finished: 2 x 4`, or {part}'s cut."
            world.error("half-rectangle", "R2", message, unit.place, hint)
            pieced.give_up(name, (part,), world)
            return
        words = zip(span, raw, loss, ("across", "down"), strict=True)
        for size, cut, lost, side in words:
            if world.sized(part):
                less = (Term(f"{part} {side}", 1, cut), Term("less", 1, Sum.of(-lost)))
                largest = Tally(f"{part} {side}", less, unit.place)
                pieced.trimmed(name, size, [largest], world, unit)
            else:
                more = (
                    Term(name, 1, size),
                    Term("for the slanting seam", 1, Sum.of(lost)),
                    Term("to trim", 1, Sum.of(world.trimming(unit))),
                )
                pieced.cut_for(part, cut, Tally(f"for {name} {side}", more, unit.place), world)

    def sewn(self, name: str, unit: WrittenHalfRectangle, world: World) -> Sewn:
        """Cut apart on the diagonal, sewn along it with the tips standing over, and trimmed."""
        gives = _gives(unit, world)
        first, second = pieced.letters(unit.from_, world)
        seam = world.length(world.seam)
        raw = _sides(world.raw(second, None), world)
        side = _sides(_open(name, world), world)
        measure = Sides(side.across + seam * 2, side.down + seam * 2)
        loss = losses(side, seam)
        before = Sides(*(cut - lost + seam * 2 for cut, lost in zip(raw, loss, strict=True)))
        done = [*actions(first, second, raw, seam, gives, STEPS[world.unit])]
        trims = before.across > measure.across or before.down > measure.down
        if trims:
            done.append(Action("trim", TRIM, (measure, seam)))
        return Sewn(
            word="half-rectangle triangle",
            takes=pieced.taking((first, second)),
            placed=_placed(first, second, side),
            seams=(SewnSeam(Spot(side.across, NOUGHT), Spot(NOUGHT, side.down), (0, 1), 0),),
            actions=tuple(done),
            stitched=gives,
            length=Exact(hypotenuse(raw) * gives),
            gives=gives,
            before=before if trims else None,
        )


def hypotenuse(sides: Sides) -> Fraction:
    """The diagonal of a rectangle, rounded up; its sides may be rounded up too, by as little."""
    across, down = (side.up(Fraction(1, FINE)) for side in sides)
    square = across * across + down * down
    scaled = -(-square.numerator * FINE * FINE // square.denominator)
    root = isqrt(scaled)
    return Fraction(root + (root * root < scaled), FINE)


def losses(sides: Sides, seam: Exact) -> Loss:
    """What each side loses, by the proportion of the sides alone: one seam, and as much more as
    the seam that is sewn slanting takes at both its ends. Exactly s(1 + (a + c) ÷ b) of a side a,
    c being the diagonal: the triangle grows by the share that a seam is of its inner circle's
    radius. Rounded up to a sixty-fourth."""
    c, (a, b) = hypotenuse(sides), sides
    return Loss((seam * (1 + (a + c) / b)).up(TOLERANCE), (seam * (1 + (b + c) / a)).up(TOLERANCE))


def _gives(unit: WrittenHalfRectangle, world: World) -> int:
    return int(unit.gives.at(world.size) or 2)


def _open(name: str, world: World) -> Span:
    return Span(*(world.unknown(("units", name, "size", side)) for side in ("across", "down")))


def _sides(span: Span, world: World) -> Sides:
    return Sides(world.length(span.across), world.length(span.down))


def _loss(part: str, unit: WrittenHalfRectangle, world: World) -> Loss | None:
    """By the proportion of what is finished, where that is stated, else of what is cut."""
    finished, measure = here(unit.finished, world.size), here(unit.measure, world.size)
    seam = world.known(world.seam)
    raw = tuple(world.known(side) for side in world.raw(part, unit.place))
    if seam is None:
        return None
    if finished is not None:
        sides = Sides(Exact(finished.across), Exact(finished.down))
    elif measure is not None:
        sides = Sides(*(Exact(side) - seam * 2 for side in (measure.across, measure.down)))
    elif raw[0] is not None and raw[1] is not None:
        sides = Sides(raw[0], raw[1])
    else:
        return None
    return losses(sides, seam) if min(sides) > 0 else None


def _can_be_made(
    name: str, unit: WrittenHalfRectangle, parts: tuple[str, ...], world: World
) -> bool:
    gives, place = _gives(unit, world), unit.place
    if not pieced.from_cloth(name, parts, world, place):
        return False
    if gives > 2:
        message = f"half-rectangle triangles are sewn one or two at a time, not {gives}."
        hint = "Write `gives: 2` (from two rectangles), or `gives: 1` (from triangles)."
        world.error("half-rectangle", "R2", message, place, hint)
        return False
    hint = "Write `diagonal: once` with both, or `gives: 2` without it."
    return pieced.cut_diagonal(name, parts, "once" if gives == 1 else None, world, place, hint)


def _placed(first: str, second: str, side: Sides) -> tuple[Placed, ...]:
    """The first in the top-left half, the second in the bottom-right half."""
    right, low = side
    upper = pieced.corners((NOUGHT, NOUGHT), (right, NOUGHT), (NOUGHT, low))
    lower = pieced.corners((right, NOUGHT), (right, low), (NOUGHT, low))
    return pieced.shaped(first, upper), pieced.shaped(second, lower)


METHOD: Final = MethodForm("half-rectangle triangles", WrittenHalfRectangle, HalfRectangleWork())
