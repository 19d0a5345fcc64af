"""What all methods share that sew a unit in a way of their own: the triangles' allowances, sizes
that may be trimmed, and one record of what a go takes, does and gives."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Final, Generic, NamedTuple, TypeVar

from patternbook.exact import ROOT2, Exact
from patternbook.linear import Sum
from patternbook.methods.made import (
    Action,
    Drawn,
    Fusing,
    Outline,
    PiecedMade,
    Placed,
    SewnSeam,
    Sides,
    Spot,
    Taking,
    Turn,
)
from patternbook.methods.world import (
    Diagonal,
    MadeUnit,
    Need,
    Rule,
    StripNeed,
    Tally,
    Term,
    World,
    here,
)
from patternbook.methods.written import WrittenMade
from patternbook.methods.wrong_figure import other_diagonal
from patternbook.notice import Place
from patternbook.value import Cell, CellsValue, PerSize

T = TypeVar("T")
W = TypeVar("W", bound=WrittenMade)
NOUGHT: Final = Exact(0)
UPRIGHT: Final = Turn()
SQUARE: Final = Rule("not-square", "R2", "Cut it square: the diagonal must halve it evenly.")
CUT_WORDS: Final[Mapping[Diagonal | None, str]] = {
    None: "cut whole",
    "once": "cut once on the diagonal",
    "twice": "cut twice on the diagonal",
}
CUT: Final = Rule("cut-for-unit", "R2", "One letter has one size: use another letter here.")
# More than this is too much to trim away: the pieces can be cut smaller.
MOST_TRIMMED: Final = {"in": Fraction(1, 2), "cm": Fraction(3, 2)}
# What a cut may be larger because it is rounded up to the ruler's marks.
ROUNDED_UP: Final = {"in": Fraction(1, 8), "cm": Fraction(1, 4)}


class Sewn(NamedTuple):
    """How a unit is sewn, once all lengths are solved.

    `word` is what one is called. One go takes `takes` (strips among them, their lengths in
    `runs`) and gives `gives` units. `placed` and `seams` are of one unit as made, `actions` what
    is done in one go. `before` is its measure before trimming (None: it is not trimmed).
    `stitched` seams are sewn in one go, `length` long in all. `fused`: what its shapes are fused
    with.
    """

    word: str
    takes: tuple[Taking, ...]
    placed: tuple[Placed, ...]
    seams: tuple[SewnSeam, ...]
    actions: tuple[Action, ...]
    stitched: int
    length: Exact
    gives: int = 1
    before: Sides | None = None
    runs: tuple[StripNeed, ...] = ()
    fused: Fusing | None = None


class PiecedWork(ABC, Generic[W]):
    """How units of one method are worked out: the method adds its `equations`, and says how a
    unit is `sewn`; whole goes are counted here."""

    written: type[W]

    @abstractmethod
    def equations(self, name: str, unit: W, world: World) -> tuple[Tally, Tally]:
        """Add the unit's equations; return its finished width and length as written-out sums.
        A unit that cannot be made is told, and left out by `world.hopeless(name)`."""

    @abstractmethod
    def sewn(self, name: str, unit: W, world: World) -> Sewn:
        """How it is sewn. Lengths are solved, and the unit is not hopeless."""

    def span(self, name: str, unit: WrittenMade, world: World) -> tuple[Tally, Tally]:
        """The unit's finished width and length."""
        return self.equations(name, self._own(unit), world)

    def need(self, name: str, unit: WrittenMade, world: World, units: int) -> Need:
        """Whole goes, rounded up."""
        sewn = self._sewn(name, unit, world)
        goes = -(-units // sewn.gives)
        parts = {part: number * goes for part, number in sewn.takes}
        runs = [run._replace(number=run.number * goes) for run in sewn.runs]
        return Need(parts, runs)

    def patches(self, name: str, unit: WrittenMade, world: World) -> Mapping[str, int]:
        """How many of each part lie in one unit."""
        return Counter(part.part for part in self._sewn(name, unit, world).placed)

    def make(self, name: str, unit: WrittenMade, world: World, units: int) -> MadeUnit:
        """One unit with its parts in place, and how all of them are sewn."""
        sewn = self._sewn(name, unit, world)
        made = PiecedMade(
            word=sewn.word,
            gives=sewn.gives,
            goes=-(-units // sewn.gives),
            takes=sewn.takes,
            actions=sewn.actions,
            before=sewn.before,
            seams=sewn.seams,
            stitched=sewn.stitched,
            sewn=sewn.length,
            fused=sewn.fused,
        )
        return MadeUnit(sewn.placed, made)

    def _sewn(self, name: str, unit: WrittenMade, world: World) -> Sewn:
        return world.kept(f"sewn {name}", lambda: self.sewn(name, self._own(unit), world))

    def _own(self, unit: WrittenMade) -> W:
        if not isinstance(unit, self.written):
            raise TypeError(f"{type(unit).__name__} is no {self.written.__name__}")
        return unit


def taking(parts: Iterable[str], times: int = 1) -> tuple[Taking, ...]:
    """So many of each part, like ones counted together."""
    return tuple(Taking(part, number * times) for part, number in Counter(parts).items())


def cells_of(value: PerSize[CellsValue] | None, world: World) -> tuple[Cell, ...]:
    """The cells of this size that name a part."""
    text = here(value, world.size)
    laid = world.laid(text) if text is not None else ()
    return tuple(cell for cell in laid if cell.part is not None)


def letters(value: PerSize[CellsValue] | None, world: World) -> tuple[str, ...]:
    """The parts of this size in order, by name."""
    return tuple(str(cell.part) for cell in cells_of(value, world))


def one(value: PerSize[T], world: World) -> str:
    """The part that one key names in this size; nothing where it names none, which is told."""
    part = here(value, world.size)
    if part is None:
        world.error(
            "no-value",
            "R9",
            "a part is stated for other sizes, and not for this one.",
            value.place,
            "State it for every size, or for the rest together as `others:`.",
        )
    return str(part or "")


def give_up(name: str, parts: Iterable[str], world: World) -> None:
    """Leave out a unit that cannot be made, and those of its pieces that only it could size."""
    world.hopeless(name)
    for part in parts:
        if not world.sized(part):
            world.hopeless(part)


def from_cloth(name: str, parts: Iterable[str], world: World, place: Place | None) -> bool:
    """Whether all parts are pieces cut to size: what is cut through is no unit and no strip."""
    for part in dict.fromkeys(parts):
        if world.is_unit(part):
            why, hint = "a unit, and would be cut through", "Name a piece in its place."
        elif world.is_strip(part):
            why, hint = "cut as a strip", f"Write how large {part} is cut, as `cut: 4 square`."
        else:
            continue
        message = f"'{name}' takes pieces that are cut to size; '{part}' is {why}."
        world.error("cut-through", "R2", message, place, hint)
        return False
    return True


def cut_diagonal(
    name: str,
    parts: Iterable[str],
    wanted: Diagonal | None,
    world: World,
    place: Place | None,
    hint: str,
) -> bool:
    """Whether each piece is cut on the diagonal as often as its unit wants it; told if not."""
    for part in dict.fromkeys(parts):
        found = world.diagonal(part)
        if found != wanted:
            message = f"'{name}' takes {part} {CUT_WORDS[wanted]}; it is {CUT_WORDS[found]}."
            other_diagonal(part, message, wanted, world, place, hint)
            return False
    return True


def open_size(name: str, world: World) -> Sum:
    """The finished size of a unit that may be trimmed: for the equations to find."""
    return world.unknown(("units", name, "size"))


def alone(what: str, form: Sum, place: Place | None) -> Tally:
    """A sum of one term."""
    return Tally(what, (Term(what, 1, form),), place)


def square(part: str, world: World, place: Place | None) -> Sum:
    """The raw side of a part that must be square, raw edge to raw edge."""
    across, down = world.raw(part, place)
    place = world.place_of(part, "cut") or place
    sides = (alone(f"{part} across", across, place), alone(f"{part} down", down, place))
    world.equal(sides[1], sides[0], SQUARE)
    return across


def trimmed(
    name: str, size: Sum, largest: Sequence[Tally], world: World, unit: WrittenMade
) -> None:
    """Say that a unit is at most as large as each of these lets it be. Where the author says how
    much is trimmed, no more is lost than that and the rounding of a cut."""
    most, stated = MOST_TRIMMED[world.unit], here(unit.trimming, world.size)
    if stated is not None:
        most = min(most, stated.number + ROUNDED_UP[world.unit])
    for bound in largest:
        world.at_most(name, size, bound, most, unit.place)


def cut_for(part: str, raw: Sum, wanted: Tally, world: World) -> None:
    """A piece whose size is not stated is cut as this unit wants it."""
    world.rounds_up(part)
    world.equal(alone(f"{part} as cut", raw, wanted.place), wanted, CUT)


def corners(*points: tuple[Exact, Exact]) -> Outline:
    """Straight edges between points, clockwise as seen."""
    return Outline(tuple(Spot(x, y) for x, y in points))


def shaped(part: str, outline: Outline, turn: Turn = UPRIGHT, *, laid_on: bool = False) -> Placed:
    """A part in its place by its seam lines."""
    xs, ys = [spot.x for spot in outline.corners], [spot.y for spot in outline.corners]
    left, top = min(xs), min(ys)
    return Placed(part, turn, left, top, max(xs) - left, max(ys) - top, outline, laid_on)


def boxed(
    part: str, x: Exact, y: Exact, across: Exact, down: Exact, turn: Turn = UPRIGHT
) -> Placed:
    """A part that lies as an upright rectangle."""
    return Placed(part, turn, x, y, across, down)


def solved(world: World, tallies: tuple[Tally, Tally]) -> Sides:
    """The finished width and length once all is solved."""
    return Sides(world.length(tallies[0].sum()), world.length(tallies[1].sum()))


# `{way}` is filled in from the pressing plan: toward A, open.
PRESS: Final = Action("press", "Press the seam {way}.")


# ---- sketches: plain shapes in raw measures


Point = tuple[float, float]


def cloth(letter: str, points: Iterable[Point]) -> Drawn:
    """The right side of a piece."""
    return Drawn("patch", tuple(points), letter)


def wrong_side(letter: str, points: Iterable[Point]) -> Drawn:
    """The wrong side of a piece."""
    return Drawn("back", tuple(points), letter)


def mark(*points: Point) -> Drawn:
    """A pencil line."""
    return Drawn("mark", points)


def sew(*points: Point) -> Drawn:
    """A line of stitches."""
    return Drawn("sew", points)


def cut(*points: Point) -> Drawn:
    """Where to cut."""
    return Drawn("cut", points)


def press(*points: Point) -> Drawn:
    """An arrow, the way a seam is pressed."""
    return Drawn("press", points)


def rectangle(x: float, y: float, across: float, down: float) -> tuple[Point, ...]:
    """The corners of an upright rectangle."""
    return (x, y), (x + across, y), (x + across, y + down), (x, y + down)


def marked(letter: str, side: float, *, falling: bool = False) -> Action:
    """A square's diagonal drawn on its wrong side: rising to the right, or `falling`."""
    line = mark((0.0, 0.0), (side, side)) if falling else mark((side, 0.0), (0.0, side))
    words = f"Draw a line from corner to corner on the wrong side of each {letter}."
    return Action("mark", words, (), (wrong_side(letter, rectangle(0, 0, side, side)), line))


def beside_diagonal(side: float, off: float) -> tuple[Drawn, Drawn]:
    """The seams on both sides of the diagonal that rises to the right; they meet the edges `off`
    away from its ends."""
    return sew((side - off, 0.0), (0.0, side - off)), sew((side, off), (off, side))


def pair_sewn(first: str, second: str, raw: Exact, seam: Exact) -> tuple[Action, Action]:
    """A pair of squares marked, and sewn on both sides of the line."""
    side = float(raw)
    drawn = marked(second, side)
    words = (
        f"Lay {second} on {first}, right sides together. Sew on both sides of the line, "
        "{0} away from it."
    )
    both = beside_diagonal(side, float(seam * ROOT2))
    return drawn, Action("sew", words, (seam,), (*drawn.sketch, *both))
