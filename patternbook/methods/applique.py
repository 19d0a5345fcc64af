"""Appliqué: shapes laid on a ground and stitched down."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise
from math import dist
from typing import ClassVar, Final, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, length, printed
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.applique_told import Block, actions
from patternbook.methods.cells import turn_of
from patternbook.methods.fields import Cells, Name, Part, Point
from patternbook.methods.form import MethodForm
from patternbook.methods.lying_over import lies
from patternbook.methods.made import Fusing, Outline, Placed, Sides, Spot, Turn
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Mark, Notice, Place

# Common practice, no source: how far a shape goes under its neighbour, and how much more web than
# shape is cut all round; what a ground is cut larger, as stitching draws it in.
UNDER: Final = {"in": Fraction(1, 4), "cm": Fraction(1, 2)}
LARGER: Final = {"in": Fraction(1, 2), "cm": Fraction(1)}
DRAWING: Final = "drawing"


class WrittenApplique(WrittenMade):
    """The shapes in the order in which they are stitched; `web` is what fuses them. `at` is the
    place of each: its left and top side from the block's top left corner, seams not counted."""

    called: ClassVar = "an appliqué block"
    ground: EachSize[Part]
    shapes: EachSize[Cells]
    at: EachSize[tuple[Point, ...]] | None = None
    web: EachSize[Name] | None = None


class Shape(NamedTuple):
    """One shape as it lies, before it has its place."""

    letter: str
    turn: Turn
    outline: Outline

    @property
    def across(self) -> Exact:
        """How wide it is."""
        return max(x for x, _ in self.outline.corners)

    @property
    def down(self) -> Exact:
        """How long it is."""
        return max(y for _, y in self.outline.corners)


class AppliqueWork(PiecedWork[WrittenApplique]):
    """One ground and its shapes give one block; the ground is cut larger and trimmed."""

    written = WrittenApplique

    def equations(self, name: str, unit: WrittenApplique, world: World) -> tuple[Tally, Tally]:
        """As large as the ground at most."""
        ground = pieced.one(unit.ground, world)
        open_ = [world.unknown(("units", name, side)) for side in ("across", "down")]
        across, down = (pieced.alone(name, side, unit.place) for side in open_)
        if not ground or not _drawn(name, unit, world):
            world.hopeless(name)
            return across, down
        for size, raw in zip(open_, world.raw(ground, unit.place), strict=True):
            if world.sized(ground):
                terms = (Term(f"{ground} cut", 1, raw), Term("less two seams", 1, world.seam * -2))
                most = Tally(ground, terms, unit.place)
                pieced.trimmed(name, size, [most], world, unit)
            else:
                pieced.cut_for(ground, raw, _wanted(name, size, unit, world), world)
        return across, down

    def sewn(self, name: str, unit: WrittenApplique, world: World) -> Sewn:
        """Traced, fused, cut out, laid, fused again, stitched and trimmed."""
        ground = pieced.one(unit.ground, world)
        across, down = (
            world.length(world.unknown(("units", name, side))) for side in ("across", "down")
        )
        laid = tuple(_placed(unit, Sides(across, down), world))
        for one, other in combinations(laid, 2):
            _meeting(name, one, other, unit, world)
        seam = world.length(world.seam)
        raw = Sides(*(world.length(side) for side in world.raw(ground, unit.place)))
        web = here(unit.web, world.size) if unit.web is not None else None
        fusing = Fusing(str(web), UNDER[world.unit]) if web else None
        under = Exact(UNDER[world.unit])
        block = Block(ground, laid, Sides(across, down), raw, seam, under, fusing)
        return Sewn(
            word="appliqué block",
            takes=pieced.taking((ground, *(shape.part for shape in laid))),
            placed=(pieced.boxed(ground, NOUGHT, NOUGHT, across, down), *laid),
            seams=(),
            actions=actions(block),
            stitched=len(laid),
            length=Exact(sum((_around(shape) for shape in laid), Fraction(0))),
            before=raw if block.trimmed else None,
            fused=fusing,
        )


def _drawn(name: str, unit: WrittenApplique, world: World) -> bool:
    """Whether there are shapes, all of them drawn and each with a place; told where not."""
    shapes = pieced.letters(unit.shapes, world)
    fault = _fault(name, shapes, unit, world)
    if fault is not None:
        code, message, hint = fault
        world.error(code, "R13", message, unit.place, hint)
    for letter in shapes:
        world.span(letter, Turn(), unit.place)
    return fault is None


class Fault(NamedTuple):
    """What keeps a block from being worked out."""

    code: str
    message: str
    hint: str


def _fault(name: str, shapes: tuple[str, ...], unit: WrittenApplique, world: World) -> Fault | None:
    if not shapes:
        message = f"'{name}' has no shapes to lay on it."
        return Fault("applique-shape", message, "Write `shapes: L P`.")
    for letter in shapes:
        found = world.template(letter)
        if found != DRAWING:
            what = f"a template ({found})" if found else "no template"
            message = f"{letter} is laid on '{name}' as a shape, and has {what}."
            hint = f"Write `template: drawing` and `drawing: shapes/NAME.svg` at {letter}."
            return Fault("applique-shape", message, hint)
    places = here(unit.at, world.size)
    if places is not None and len(places) != len(shapes):
        message = f"'{name}' has {len(shapes)} shapes, and {len(places)} places are written."
        hint = "Write one place for each shape, across x down: `at: [4 x 1/2, 1 1/2 x 2]`."
        return Fault("applique-places", message, hint)
    return None


def _wanted(name: str, size: Sum, unit: WrittenApplique, world: World) -> Tally:
    """The ground of no stated size is cut larger than it is trimmed to."""
    stated = here(unit.trimming, world.size)
    extra = stated.number if stated is not None else LARGER[world.unit]
    terms = (
        Term(name, 1, size),
        Term("seam", 2, world.seam),
        Term("to trim", 1, Sum.of(extra)),
    )
    return Tally(f"for {name}", terms, unit.place)


def _placed(unit: WrittenApplique, block: Sides, world: World) -> Iterator[Placed]:
    """Each shape in its place; in the middle where no place is written."""
    shapes = list(_shapes(unit, world))
    places = here(unit.at, world.size)
    for number, shape in enumerate(shapes):
        if places is not None:
            left, top = Exact(places[number].across), Exact(places[number].down)
        else:
            left, top = (block.across - shape.across) / 2, (block.down - shape.down) / 2
        corners = tuple(Spot(x + left, y + top) for x, y in shape.outline.corners)
        yield pieced.shaped(shape.letter, Outline(corners), shape.turn, laid_on=True)


def _shapes(unit: WrittenApplique, world: World) -> Iterator[Shape]:
    for cell in pieced.cells_of(unit.shapes, world):
        letter, turn = str(cell.part), turn_of(cell.turns)
        outline = world.shape(letter)
        if outline is not None:
            yield Shape(letter, turn, _turned(outline, turn))


def _turned(outline: Outline, turn: Turn) -> Outline:
    """The outline as it lies, in its box; still clockwise."""
    corners = outline.corners
    if turn.mirrored:
        wide = max(x for x, _ in corners)
        corners = tuple(Spot(wide - x, y) for x, y in reversed(corners))
    for _ in range(turn.quarters):
        high = max(y for _, y in corners)
        corners = tuple(Spot(high - y, x) for x, y in corners)
    return Outline(corners)


def _around(shape: Placed) -> Fraction:
    """About how long the edge of a shape is, for the thread."""
    corners = shape.outline.corners if shape.outline else ()
    points = [(float(x), float(y)) for x, y in corners]
    return Fraction(round(sum(dist(*ends) for ends in pairwise((*points, *points[:1]))) * 64), 64)


def _meeting(name: str, one: Placed, other: Placed, unit: WrittenApplique, world: World) -> None:
    """A warning where a shape is hidden, or reaches too little under the next."""
    if one.outline is None or other.outline is None:
        return
    found, least = lies(one.outline, other.outline), UNDER[world.unit]
    if found.how == "hidden":
        message = f"'{name}': {one.part} lies wholly under {other.part}, which is laid on later."
        hint = "Give them other places with `at`, or another order in `shapes`."
        world.tell(_warning("shape-hidden", message, hint, unit.place, world))
    elif found.how == "meet" and found.deep < least:
        system = CENTIMETRES if world.unit == "cm" else INCHES
        deep = printed(Fraction(f"{found.deep:.2f}"), decimals=True)
        message = (
            f"'{name}': {one.part} reaches about {deep}{system.mark} under {other.part}; less than "
            f"{length(least, system)}, and a gap may show once they are fused."
        )
        hint = f"Draw {one.part} longer where {other.part} covers it, or lay them closer with `at`."
        world.tell(_warning("shape-overlap", message, hint, unit.place, world))


def _warning(code: str, message: str, hint: str, place: Place | None, world: World) -> Notice:
    marks = (Mark(place, "here"),) if place else ()
    return Notice(code, "warning", "quilt", message, marks, "R13", (world.size,), hint=hint)


METHOD: Final = MethodForm("applique", WrittenApplique, AppliqueWork())
