"""Curved seam: a quarter circle set into its ground."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, sin
from typing import ClassVar, Final

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, ruler_near
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.fields import Letter
from patternbook.methods.form import MethodForm
from patternbook.methods.made import (
    Action,
    Arc,
    Drawn,
    Outline,
    Placed,
    SewnSeam,
    Sides,
    Spot,
)
from patternbook.methods.pieced import NOUGHT, PiecedWork, Point, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Rule, Tally, Term, World, here
from patternbook.methods.written import WrittenMade

# Only for what is said to be "about" so long, and for the thread.
PI: Final = Fraction(355, 113)
STEPS: Final = 24
RADIUS: Final = Rule(
    "curve-radius", "R13", "Both are sewn along one line: state the same `radius` at both."
)
ROOM: Final = Rule(
    "curve-room",
    "R13",
    "Make the unit larger, or the radius smaller: its ground must go all round.",
)
PIE: Final = Rule("pie-size", "R13", "A pie is cut as large as its radius and two seams.")
TEMPLATES: Final = ("quarter circle", "quarter hollow")


class WrittenCurved(WrittenMade):
    """The pie lies at the top left."""

    called: ClassVar = "a unit with a curved seam"
    pie: EachSize[Letter]
    ground: EachSize[Letter]


class CurvedWork(PiecedWork[WrittenCurved]):
    """One pie and one ground give one unit; the ground may be cut larger and trimmed."""

    written = WrittenCurved

    def equations(self, name: str, unit: WrittenCurved, world: World) -> tuple[Tally, Tally]:
        """As large as the ground at most; the pie as large as the radius has it."""
        pie, ground = pieced.one(unit.pie, world), pieced.one(unit.ground, world)
        size = pieced.open_size(name, world)
        tally = pieced.alone(name, size, unit.place)
        if not pie or not ground or not _shaped((pie, ground), unit, world):
            world.hopeless(name)
            return tally, tally
        radius = _radius(pie, ground, unit, world)
        _pie(pie, radius, unit, world)
        beside = (Term("radius", 1, radius), Term("seam", 1, world.seam))
        world.within(Tally(f"the curve of '{name}' and a seam", beside, unit.place), tally, ROOM)
        raw = pieced.square(ground, world, unit.place)
        terms = (Term(f"{ground} cut", 1, raw), Term("less two seams", 1, world.seam * -2))
        most = Tally(ground, terms, unit.place)
        if world.sized(ground):
            pieced.trimmed(name, size, [most], world, unit.place)
        else:
            pieced.cut_for(ground, raw, _wanted(name, size, unit, world), world)
        return tally, tally

    def sewn(self, name: str, unit: WrittenCurved, world: World) -> Sewn:
        """Marked, pinned at the middle and the ends, sewn, pressed and trimmed."""
        pie, ground = pieced.one(unit.pie, world), pieced.one(unit.ground, world)
        radius = world.length(_radius(pie, ground, unit, world))
        side, seam = world.length(pieced.open_size(name, world)), world.length(world.seam)
        raw = world.length(world.raw(ground, None).across)
        curve = Curve(pie, ground, float(radius), float(seam), float(raw))
        measure = side + seam * 2
        actions = [*_actions(curve, radius, seam, world), curve.pressed()]
        if raw > measure:
            actions.append(curve.trimmed(measure, radius + seam))
        return Sewn(
            word="curved unit",
            takes=pieced.taking((pie, ground)),
            placed=placed(pie, ground, radius, side),
            seams=(_seam(radius),),
            actions=tuple(actions),
            stitched=1,
            length=radius * (PI / 2),
            before=Sides(raw, raw) if raw > measure else None,
        )


def placed(pie: str, ground: str, radius: Exact, side: Exact) -> tuple[Placed, Placed]:
    """The pie at the top left, and the ground around it."""
    corner, right, low = Spot(NOUGHT, NOUGHT), Spot(radius, NOUGHT), Spot(NOUGHT, radius)
    far = (Spot(side, NOUGHT), Spot(side, side), Spot(NOUGHT, side))
    quarter = Outline((corner, right, low), (Arc(1, corner, radius, hollow=False),))
    hollow = Outline((right, *far, low), (Arc(4, corner, radius, hollow=True),))
    return pieced.shaped(pie, quarter), pieced.shaped(ground, hollow)


def _seam(radius: Exact) -> SewnSeam:
    """Pressed to the ground, whatever the tones: the longer edge of the pie then lies flat, which
    it could not do on the narrower curve inside."""
    return SewnSeam(Spot(radius, NOUGHT), Spot(NOUGHT, radius), (0, 1), 1, settled=True)


def _shaped(letters: tuple[str, str], unit: WrittenCurved, world: World) -> bool:
    """Whether both are cut by their templates; told where not."""
    for letter, shape in zip(letters, TEMPLATES, strict=True):
        found = world.template(letter)
        if found != shape:
            is_cut = f"by the template '{found}'" if found else "without a template"
            message = f"{letter} is sewn along a curve, and is cut {is_cut}."
            hint = f"Write `template: {shape}` and its `radius` at {letter}."
            world.error("curve-template", "R13", message, unit.place, hint)
            return False
    return True


def _radius(pie: str, ground: str, unit: WrittenCurved, world: World) -> Sum:
    """The one radius of both; where neither states it, that of the pie as it is cut."""
    pies, grounds = world.radius(pie), world.radius(ground)
    if pies is not None and grounds is not None:
        of_both = (
            pieced.alone(f"the radius of {ground}", grounds, unit.place),
            pieced.alone(f"the radius of {pie}", pies, unit.place),
        )
        world.kept(f"radius {pie} {ground}", lambda: world.equal(*of_both, RADIUS))
    if pies is not None:
        return pies
    return grounds if grounds is not None else world.raw(pie, unit.place).across - world.seam * 2


def _pie(pie: str, radius: Sum, unit: WrittenCurved, world: World) -> None:
    """The pie is cut square around its quarter circle."""
    raw = pieced.square(pie, world, unit.place)
    terms = (Term("radius", 1, radius), Term("seam", 2, world.seam))
    world.equal(
        pieced.alone(f"{pie} as cut", raw, unit.place), Tally("its radius", terms, unit.place), PIE
    )


def _wanted(name: str, size: Sum, unit: WrittenCurved, world: World) -> Tally:
    """A ground of no stated size is cut exactly, for its template is exact; larger where the
    author says how much to trim."""
    stated = here(unit.trimming, world.size)
    extra = Sum.of(stated.number if stated is not None else Fraction(0))
    terms = (Term(name, 1, size), Term("seam", 2, world.seam), Term("to trim", 1, extra))
    return Tally(f"for {name}", terms, unit.place)


# ---- what is done


def _actions(curve: Curve, radius: Exact, seam: Exact, world: World) -> tuple[Action, ...]:
    system = CENTIMETRES if world.unit == "cm" else INCHES
    longer = Exact(ruler_near(seam * PI, system))
    line = Exact(ruler_near(radius * (PI / 2), system))
    pie, ground = curve.pie, curve.ground
    return (
        Action(
            "mark",
            f"Fold {pie} and {ground} in half from corner to corner and mark the middle of both "
            f"curves. The curved edge of {pie} is about {{0}} longer than that of {ground} once "
            "both are cut; the seam lines are equally long, about {1}: do not trim it.",
            (longer, line),
            curve.apart(),
        ),
        Action(
            "lay",
            f"Lay {ground} on {pie}, right sides together. Pin the middle marks, then both ends, "
            "straight edges level, then in between.",
            (),
            curve.pinned(),
        ),
        Action(
            "sew",
            f"Sew with {ground} on top, where you see it, and a seam of {{0}}. Sew slowly and "
            "smooth the fold away before it reaches the needle; do not pull.",
            (seam,),
            curve.stitched(),
        ),
    )


class Curve:
    """The two pieces as they are cut, in raw measures, for the sketches."""

    def __init__(self, pie: str, ground: str, radius: float, seam: float, raw: float) -> None:
        self.pie, self.ground = pie, ground
        self.radius, self.seam, self.raw = radius, seam, raw

    def quarter(self, reach: float) -> tuple[Point, ...]:
        """A quarter circle about the seams' corner, from the right end to the low one, run on
        straight to the raw edges."""
        seam, angles = self.seam, [pi / 2 * step / STEPS for step in range(STEPS + 1)]
        bow = [(seam + reach * cos(angle), seam + reach * sin(angle)) for angle in angles]
        return ((seam + reach, 0.0), *bow, (0.0, seam + reach))

    def pie_cut(self) -> tuple[Point, ...]:
        """The pie with its allowance."""
        return ((0.0, 0.0), *self.quarter(self.radius + self.seam))

    def ground_cut(self, out: float = 0.0) -> tuple[Point, ...]:
        """The ground with its allowance; `out`: with so much of it pressed away."""
        bow = self.quarter(self.radius - self.seam + out)
        far = ((self.raw, 0.0), (self.raw, self.raw), (0.0, self.raw))
        return (*far, *bow[::-1])

    def apart(self) -> tuple[Drawn, ...]:
        """The two side by side, the middles marked."""
        beside = self.raw + 2 * self.seam
        pie = tuple((x + beside, y) for x, y in self.pie_cut())
        return (
            pieced.cloth(self.ground, self.ground_cut()),
            self._pin(self.radius - self.seam, pi / 4),
            pieced.cloth(self.pie, pie),
            self._pin(self.radius + self.seam, pi / 4, beside),
        )

    def _pin(self, reach: float, angle: float, beside: float = 0.0) -> Drawn:
        """A mark, or a pin, straight across the edge of a curve."""
        ends = (reach - 2 * self.seam, reach + 2 * self.seam)
        points = [
            (self.seam + end * cos(angle) + beside, self.seam + end * sin(angle)) for end in ends
        ]
        return pieced.mark(*points)

    def pinned(self) -> tuple[Drawn, ...]:
        """The ground wrong side up; the pie under it, turned over along the middle of the curve."""
        fold = 2 * self.seam + self.radius * 2**0.5
        under = tuple((fold - y, fold - x) for x, y in self.pie_cut())
        reach = self.radius - self.seam
        return (
            pieced.cloth(self.pie, under),
            pieced.wrong_side(self.ground, self.ground_cut()),
            *(self._pin(reach, angle) for angle in (0.0, pi / 4, pi / 2)),
        )

    def stitched(self) -> tuple[Drawn, ...]:
        """The ground wrong side up, its edge eased onto the pie's, and the seam."""
        return (
            pieced.wrong_side(self.ground, self.ground_cut()),
            pieced.sew(*self.quarter(self.radius)),
        )

    def open(self) -> tuple[Drawn, ...]:
        """The unit once it is pressed."""
        pie = ((0.0, 0.0), *self.quarter(self.radius))
        return pieced.cloth(self.pie, pie), pieced.cloth(self.ground, self.ground_cut(self.seam))

    def pressed(self) -> Action:
        """Pressed open, the seam whichever way the plan says."""
        return Action("press", "Press the seam {way}.", (), self.open())

    def trimmed(self, measure: Exact, ends: Exact) -> Action:
        """Trimmed on the two sides that are only ground."""
        words = (
            f"Trim to {{0}}. Level the two sides that meet at the corner of {self.pie}, taking off "
            "as little as you can; both ends of the curve lie {1} from that corner. Measure from "
            "these sides and cut the two others, so that the ends keep their seam."
        )
        at = float(measure)
        cuts = (
            pieced.cut((at, 0.0), (at, self.raw)),
            pieced.cut((0.0, at), (self.raw, at)),
        )
        return Action("trim", words, (Sides(measure, measure), ends), (*self.open(), *cuts))


METHOD: Final = MethodForm("curved seam", WrittenCurved, CurvedWork())
