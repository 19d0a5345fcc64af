"""Square in a square: a centre, and round after round of four triangles."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.linear import Sum
from patternbook.methods import pieced
from patternbook.methods.fields import Cells, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.made import Action, Outline, Placed, SewnSeam, Spot, Turn
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.square_in_a_square_told import sewn_on, square_so_far
from patternbook.methods.world import Rule, Tally, Term, World
from patternbook.methods.written import WrittenMade

# More than this off a unit, and the seams no longer come to its points (trade facts 5.14).
POINTS: Final = {"in": Fraction(1, 8), "cm": Fraction(3, 10)}
TRIANGLE: Final = Rule("pieces-small", "R2", "Cut the triangles larger.")


class WrittenSquareInSquare(WrittenMade):
    """The rounds go from the inside out."""

    called: ClassVar = "a square in a square"
    centre: EachSize[Part]
    rounds: EachSize[Cells]


class SquareInSquareWork(PiecedWork[WrittenSquareInSquare]):
    """Every round makes the square √2 times as large, and turns it by an eighth."""

    written = WrittenSquareInSquare

    def equations(
        self, name: str, unit: WrittenSquareInSquare, world: World
    ) -> tuple[Tally, Tally]:
        """As large as the centre makes it; its triangles may be larger and are trimmed."""
        centre, rounds = pieced.one(unit.centre, world), pieced.letters(unit.rounds, world)
        size = pieced.open_size(name, world)
        tally = pieced.alone(name, size, unit.place)
        if not _can_be_made(name, unit, rounds, world):
            pieced.give_up(name, (centre, *rounds), world)
            return tally, tally
        raw = pieced.square(centre, world, unit.place)
        inside = _centre(name, centre, raw, len(rounds), unit, world)
        for number, part in enumerate(rounds):
            if world.sized(part):
                _reach(name, rounds, number, inside, unit, world)
            else:
                _cut_for(name, part, inside * _root(number), unit, world)
        return tally, tally

    def sewn(self, name: str, unit: WrittenSquareInSquare, world: World) -> Sewn:
        """Two triangles on opposite sides, then the other two; trimmed after every round."""
        centre, rounds = pieced.one(unit.centre, world), pieced.letters(unit.rounds, world)
        size, seam = world.length(pieced.open_size(name, world)), world.length(world.seam)
        sides = [size / _root(len(rounds) - number) for number in range(len(rounds) + 1)]
        actions: list[Action] = []
        for number, part in enumerate(rounds):
            raw = world.length(world.raw(part, None).across)
            inside = centre if number == 0 else "the square"
            lying = (_middle(centre, sides[0], sides[number], number, world),)
            so_far = square_so_far(
                (*lying, *_shown(rounds[:number], sides[number])), sides[number], seam
            )
            actions += sewn_on(part, inside, so_far, sides[number + 1], raw, seam)
        shown = _shown(rounds, size)
        return Sewn(
            word="square-in-a-square block",
            takes=pieced.taking((centre, *(part for part in rounds for _ in range(4)))),
            placed=(_middle(centre, sides[0], size, len(rounds), world), *shown),
            seams=_seams(len(rounds), size),
            actions=tuple(actions),
            stitched=4 * len(rounds),
            length=sum(((side + seam * 2) * 4 for side in sides[:-1]), Exact(0)),
        )


def _root(times: int) -> Exact:
    """√2 so many times multiplied with itself."""
    return Exact(2 ** (times // 2)) * (ROOT2 if times % 2 else 1)


def _can_be_made(
    name: str, unit: WrittenSquareInSquare, rounds: tuple[str, ...], world: World
) -> bool:
    """Rounds of triangles, of pieces whose squares are cut once on the diagonal."""
    if not rounds:
        message = f"'{name}' has no round of triangles around its centre."
        world.error("no-rounds", "R2", message, unit.place, "Write `rounds: B`, or `rounds: B D`.")
        return False
    if not pieced.from_cloth(name, rounds, world, unit.place):
        return False
    hint = (
        "Write `diagonal: once` with every round; squares that are flipped onto the corners are "
        "`method: snowball corners`."
    )
    return pieced.cut_diagonal(name, rounds, "once", world, unit.place, hint)


# ---- sizes


def _centre(
    name: str, centre: str, raw: Sum, rounds: int, unit: WrittenSquareInSquare, world: World
) -> Sum:
    """Hold the unit to its centre; returns the centre's finished side."""
    size, grown = pieced.open_size(name, world), _root(rounds)
    inside = raw - world.seam * 2
    by_centre = Tally(
        f"{centre} with {rounds} round{'s' if rounds > 1 else ''}",
        (
            Term(
                f"{centre} finished × {'√2' if rounds == 1 else _words(rounds)}", 1, inside * grown
            ),
        ),
        unit.place,
    )
    if world.is_unit(centre):
        # a unit is never cut into: what is sewn around it ends where it ends
        world.equal(pieced.alone(name, size, unit.place), by_centre, WHOLE)
    else:
        most = POINTS[world.unit]
        world.at_most(name, size, by_centre, most, unit.place, points=True)
    if not world.sized(centre):
        inside = size * grown.inverse()
        terms = (Term(f"{name} ÷ {_words(rounds)}", 1, inside), Term("seam", 2, world.seam))
        pieced.cut_for(centre, raw, Tally(f"for {name}", terms, unit.place), world)
    return inside


WHOLE: Final = Rule("square-in-square", "R2", "A unit in the middle decides how large it becomes.")


def _words(rounds: int) -> str:
    whole = 2 ** (rounds // 2)
    if rounds % 2 == 0:
        return str(whole)
    return "√2" if whole == 1 else f"{whole}√2"


def _reach(
    name: str,
    rounds: tuple[str, ...],
    number: int,
    inside: Sum,
    unit: WrittenSquareInSquare,
    world: World,
) -> None:
    """The triangles reach from the square within, which was trimmed, to the corners that theirs
    is trimmed to."""
    size, part, left = pieced.open_size(name, world), rounds[number], len(rounds) - number
    around = size * _root(left - 1).inverse()
    within = inside if number == 0 else size * _root(left).inverse()
    terms = (
        Term("the side around", 1, around),
        Term("less the side within ÷ √2", 1, within * (ROOT2 / -2)),
        Term("for the diagonal", 1, Sum.of(world.triangle("once"))),
    )
    raw = pieced.square(part, world, unit.place)
    room = pieced.alone(f"{part} cut", raw, unit.place)
    world.within(Tally(f"the triangles {part} of '{name}'", terms, unit.place), room, TRIANGLE)


def _cut_for(name: str, part: str, side: Sum, unit: WrittenSquareInSquare, world: World) -> None:
    """The long edge of a triangle is a side of the square within."""
    terms = (
        Term("the side within ÷ √2", 1, side * (ROOT2 / 2)),
        Term("for the diagonal", 1, Sum.of(world.triangle("once"))),
        Term("to trim", 1, Sum.of(world.trimming(unit))),
    )
    raw = pieced.square(part, world, unit.place)
    pieced.cut_for(part, raw, Tally(f"for {name}", terms, unit.place), world)


# ---- how it lies


def _squares(rounds: int, size: Exact) -> list[tuple[Spot, ...]]:
    """The corners of the squares from the outside in, each clockwise: the middles of the sides of
    the one before."""
    outer = tuple(
        Spot(x, y) for x, y in ((NOUGHT, NOUGHT), (size, NOUGHT), (size, size), (NOUGHT, size))
    )
    squares = [outer]
    for _ in range(rounds):
        outer = squares[-1]
        squares.append(tuple(_between(outer[at], outer[(at + 1) % 4]) for at in range(4)))
    return squares


def _between(one: Spot, other: Spot) -> Spot:
    return Spot((one.x + other.x) / 2, (one.y + other.y) / 2)


def _middle(centre: str, side: Exact, size: Exact, rounds: int, world: World) -> Placed:
    """The centre, on point after an odd number of rounds; a unit has no outline of its own."""
    if rounds % 2 == 0:
        start = (size - side) / 2
        return pieced.boxed(centre, start, start, side, side)
    if world.is_unit(centre):
        return pieced.boxed(centre, NOUGHT, NOUGHT, size, size, Turn(on_point=True))
    return pieced.shaped(centre, Outline(_squares(rounds, size)[-1]), Turn(on_point=True))


def _shown(rounds: tuple[str, ...], size: Exact) -> list[Placed]:
    """The triangles from the inside out, each round clockwise."""
    squares = _squares(len(rounds), size)
    placed = []
    for number, part in enumerate(rounds):
        outer, inner = squares[-number - 2], squares[-number - 1]
        for at in range(4):
            corners = (outer[at], inner[at], inner[at - 1])
            placed.append(pieced.shaped(part, Outline(corners)))
    return placed


def _seams(rounds: int, size: Exact) -> tuple[SewnSeam, ...]:
    """The long edge of every triangle; from the second round on beside two of the round within."""
    squares = _squares(rounds, size)
    seams = []
    for number in range(rounds):
        inner = squares[-number - 1]
        first = 1 + 4 * number
        for at in range(4):
            start, end = inner[at - 1], inner[at]
            if number == 0:
                seams.append(SewnSeam(start, end, (0, first + at), first + at, settled=True))
                continue
            half, within = _between(start, end), first - 4
            for one, other, beside in ((start, half, at - 1), (half, end, at)):
                pair = (within + beside % 4, first + at)
                seams.append(SewnSeam(one, other, pair, first + at, settled=True))
    return tuple(seams)


METHOD: Final = MethodForm("square in a square", WrittenSquareInSquare, SquareInSquareWork())
