"""Curved seam: a quarter circle set into its ground."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.curved_seam_told import PI, Curve, actions
from patternbook.methods.fields import Letter
from patternbook.methods.form import MethodForm
from patternbook.methods.made import (
    Arc,
    Outline,
    Placed,
    SewnSeam,
    Sides,
    Spot,
)
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Rule, Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Edit, Mark, Notice

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
            pieced.trimmed(name, size, [most], world, unit)
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
        done = [*actions(curve, radius, seam, world), curve.pressed()]
        if raw > measure:
            done.append(curve.trimmed(measure, radius + seam))
        return Sewn(
            word="curved unit",
            takes=pieced.taking((pie, ground)),
            placed=placed(pie, ground, radius, side),
            seams=(_seam(radius),),
            actions=tuple(done),
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
        both = (pie, pies), (ground, grounds)
        world.kept(f"radius {pie} {ground}", lambda: _one_radius(*both, unit, world))
    if pies is not None:
        return pies
    return grounds if grounds is not None else world.raw(pie, unit.place).across - world.seam * 2


def _one_radius(
    pie: tuple[str, Sum], ground: tuple[str, Sum], unit: WrittenCurved, world: World
) -> None:
    """Both stated radii must be one. Where they differ, the pie's is blamed, unless it is
    cut by its own size; either figure would do at the other place."""
    lengths = [world.known(form) for _, form in (pie, ground)]
    if None in lengths or lengths[0] == lengths[1]:
        one, other = (
            pieced.alone(f"the radius of {name}", form, unit.place) for name, form in (pie, ground)
        )
        world.equal(one, other, RADIUS)
        return
    cm = world.unit == "cm"
    short, long = (plain(length or 0, cm) for length in lengths)
    figures = [(pie[0], short, long), (ground[0], long, short)]
    if world.place_of(pie[0], "cut") is not None:
        figures.reverse()
    spots = [(world.place_of(name, "radius"), old, new) for name, old, new in figures]
    marks = tuple(Mark(place, "stated here") for place, _, _ in spots if place)
    edits = tuple(Edit(place, old, new, sure=False) for place, old, new in spots if place)
    (name, stated, needed), (of, _, _) = figures
    message = (
        f"the radius of {name} is {stated}, that of {of} {needed}: both are sewn along one line, "
        "a quarter of one circle."
    )
    hint = f"Write `radius: {needed}` at {name}, or {stated} at {of}."
    size = (world.size,)
    world.tell(
        Notice(
            RADIUS.code,
            "error",
            "quilt",
            message,
            marks,
            RADIUS.rule,
            size,
            stated,
            needed,
            hint,
            edits,
        )
    )


def _pie(pie: str, radius: Sum, unit: WrittenCurved, world: World) -> None:
    """The pie is cut square around its quarter circle."""
    raw = pieced.square(pie, world, unit.place)
    terms = (Term("radius", 1, radius), Term("seam", 2, world.seam))
    world.equal(
        pieced.alone(f"{pie} as cut", raw, world.place_of(pie, "cut") or unit.place),
        Tally("its radius", terms, unit.place),
        PIE,
    )


def _wanted(name: str, size: Sum, unit: WrittenCurved, world: World) -> Tally:
    """A ground of no stated size is cut exactly, for its template is exact; larger where the
    author says how much to trim."""
    stated = here(unit.trimming, world.size)
    extra = Sum.of(stated.number if stated is not None else Fraction(0))
    terms = (Term(name, 1, size), Term("seam", 2, world.seam), Term("to trim", 1, extra))
    return Tally(f"for {name}", terms, unit.place)


METHOD: Final = MethodForm("curved seam", WrittenCurved, CurvedWork())
