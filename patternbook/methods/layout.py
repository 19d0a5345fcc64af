"""How a layout is worked out: rows and columns first, then borders from the inside out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Final, Protocol

from patternbook.exact import Exact
from patternbook.methods import borders
from patternbook.methods.borders import Round, rounds
from patternbook.methods.cells import Laid, Lines
from patternbook.methods.form import MethodForm
from patternbook.methods.hexagons import Hexagons
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import LayoutMade, Line, Outline, Placed, Sides
from patternbook.methods.on_point import OnPoint
from patternbook.methods.rows import Grid
from patternbook.methods.sashing import Frame
from patternbook.methods.world import MadeUnit, Need, Rule, StripNeed, Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.value import SizeValue


class Setting(Protocol):
    """How the parts of a layout lie, borders apart: its equations, and its places once solved."""

    columns: bool
    word: str
    lines: Lines
    frame: Frame | None

    @property
    def tallies(self) -> tuple[Tally, Tally]:
        """Finished width and length, as written-out sums."""

    def span(self) -> tuple[Tally, Tally]:
        """Add the equations; the tallies."""

    def line_tallies(self, number: int, line: tuple[Laid, ...]) -> tuple[Tally, Tally]:
        """Finished width and length of one row or column."""

    def need(self) -> Counter[str]:
        """How many of each part one layout takes."""

    def strips(self, units: int) -> list[StripNeed]:
        """The lengths of strip that so many layouts take."""

    def placed(self, x: Exact, y: Exact) -> tuple[Line, ...]:
        """The lines in place, the top left corner of them all at (x, y)."""

    def corners(self, x: Exact, y: Exact) -> tuple[Placed, ...]:
        """What is sewn on at the corners when all lines are joined."""

    def edge(self, x: Exact, y: Exact) -> Outline | None:
        """The outline of the whole where it is no upright rectangle."""


class LayoutWork:
    """Rows or columns of parts, repeated to fill, with sashing and borders."""

    def span(self, name: str, unit: WrittenMade, world: World) -> tuple[Tally, Tally]:
        """The finished width and length, borders included."""
        layout = _layout(unit)
        grid = _setting(name, layout, world)
        if not grid.lines:
            world.hopeless(name)
            return _open(name, world)
        inside = grid.span()
        _row_measures(name, layout, grid, world)
        _before_borders(name, layout, inside, world)
        for round_ in rounds(name, layout, world, inside):
            borders.equations(name, round_, world)
            inside = _outside(inside, round_)
            borders.measures(name, round_, inside, world)
        return inside

    def need(self, name: str, unit: WrittenMade, world: World, units: int) -> Need:
        """All parts of rows, sashes and borders."""
        layout = _layout(unit)
        grid = _setting(name, layout, world)
        parts = Counter({part: number * units for part, number in grid.need().items()})
        runs = grid.strips(units)
        for round_ in rounds(name, layout, world, grid.tallies):
            more, lengths = borders.needs(round_, world, units)
            parts.update(more)
            runs.extend(lengths)
        return Need(parts, runs)

    def patches(self, name: str, unit: WrittenMade, world: World) -> Mapping[str, int]:
        """The parts of rows, sashes and borders."""
        return self.need(name, unit, world, 1).parts

    def make(self, name: str, unit: WrittenMade, world: World, units: int) -> MadeUnit:
        """The rows and borders in their places."""
        layout = _layout(unit)
        grid = _setting(name, layout, world)
        del units  # every one is alike
        all_rounds = tuple(rounds(name, layout, world, grid.tallies))
        x = sum((world.length(round_.wide) for round_ in all_rounds), Exact(0))
        y = sum((world.length(round_.high) for round_ in all_rounds), Exact(0))
        lines = grid.placed(x, y)
        core = Sides(*(world.length(side.sum()) for side in grid.tallies))
        corners = grid.corners(x, y)
        seams = world.length(world.seam) * 2
        edge = grid.edge(x, y)
        made, inside = [], core
        for round_ in all_rounds:
            border = borders.made(round_, world, x, y, inside)
            made.append(border)
            x, y = x - world.length(round_.wide), y - world.length(round_.high)
            inside = Sides(border.after.across - seams, border.after.down - seams)
        parts = [*(part for line in lines for part in line.parts), *corners]
        parts += [part for border in made for part in border.parts]
        frame = grid.frame
        record = LayoutMade(
            "columns" if grid.columns else "rows",
            lines,
            Sides(core.across + seams, core.down + seams),
            frame.sash.part if frame else None,
            frame.stones if frame else None,
            tuple(made),
            str(layout.setting.at(world.size) or "straight"),  # type: ignore[arg-type]
            corners,
            edge,
        )
        return MadeUnit(tuple(parts), record)


def _layout(unit: WrittenMade) -> WrittenLayout:
    if not isinstance(unit, WrittenLayout):
        raise TypeError(f"{type(unit).__name__} is no layout")
    return unit


SETTINGS: Final[Mapping[str, Callable[[str, WrittenLayout, World], Setting]]] = {
    "straight": Grid,
    "on point": OnPoint,
    "hexagons": Hexagons,
}


def _setting(name: str, layout: WrittenLayout, world: World) -> Setting:
    """The rows of a layout as they are set, read once."""
    make = SETTINGS[layout.setting.at(world.size) or "straight"]
    return world.kept(name, lambda: make(name, layout, world))


def _open(name: str, world: World) -> tuple[Tally, Tally]:
    """A unit of which nothing is known."""
    across, down = (world.unknown(("parts", name, side)) for side in ("across", "down"))
    return Tally(name, (Term(name, 1, across),)), Tally(name, (Term(name, 1, down),))


def _outside(inside: tuple[Tally, Tally], round_: Round) -> tuple[Tally, Tally]:
    across, down = inside
    sides, ends = Term(round_.side, 2, round_.wide), Term(round_.end, 2, round_.high)
    return (
        Tally(across.what, (*across.terms, sides), across.place),
        Tally(down.what, (*down.terms, ends), down.place),
    )


def _state_size(
    key: tuple[str, ...],
    tallies: tuple[Tally, Tally],
    stated: SizeValue,
    code: str,
    what: str,
    world: World,
) -> None:
    rule = Rule(code, "R12", None, Fraction(1, 8) if stated.about else Fraction(0))
    pairs = (("across", tallies[0], stated.across), ("down", tallies[1], stated.down))
    for side, tally, number in pairs:
        raw = Tally(what, (*tally.terms, Term("seam", 2, world.seam)), tally.place)
        world.state((*key, side), raw, number, rule, stated.place)


def _before_borders(
    name: str, layout: WrittenLayout, inside: tuple[Tally, Tally], world: World
) -> None:
    stated = here(layout.before_borders, world.size)
    if stated is not None:
        key = ("units", name, "before-borders")
        _state_size(key, inside, stated, "before-borders", f"{name} before borders", world)


def _row_measures(name: str, layout: WrittenLayout, grid: Setting, world: World) -> None:
    stated = here(layout.row_measure, world.size) or ()
    for number, line in enumerate(grid.lines, 1):
        if not stated or (len(stated) == 1 and number > 1) or number > len(stated):
            break
        key = ("units", name, "row-measure", str(number))
        across, down = grid.line_tallies(number, line)
        what = f"{grid.word} {number} of {name}"
        _state_size(key, (across, down), stated[number - 1], "row-measure", what, world)


METHOD: Final = MethodForm("layout", WrittenLayout, LayoutWork())
