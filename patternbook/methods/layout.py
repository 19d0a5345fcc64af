"""How a layout is worked out: rows and columns first, then borders from the inside out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.methods import borders
from patternbook.methods.borders import Round, rounds
from patternbook.methods.form import MethodForm
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import LayoutMade, Line, Sides
from patternbook.methods.rows import Grid
from patternbook.methods.world import MadeUnit, Need, Rule, StripNeed, Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.value import SizeValue


class LayoutWork:
    """Rows or columns of parts, repeated to fill, with sashing and borders."""

    def span(self, name: str, unit: WrittenMade, world: World) -> tuple[Tally, Tally]:
        """The finished width and length, borders included."""
        layout = _layout(unit)
        if layout.setting.at(world.size) not in (None, "straight"):
            words = (
                f"'{name}' is set {layout.setting.at(world.size)}, which cannot be worked out yet."
            )
            world.later(name, words, unit.place, "So far: straight rows and columns.")
            return _open(name, world)
        grid = world.kept(name, lambda: Grid(name, layout, world))
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
        grid = world.kept(name, lambda: Grid(name, layout, world))
        parts = Counter({part: number * units for part, number in grid.need().items()})
        runs: list[StripNeed] = []
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
        grid = world.kept(name, lambda: Grid(name, layout, world))
        del units  # every one is alike
        all_rounds = tuple(rounds(name, layout, world, grid.tallies))
        x = sum((world.length(round_.wide) for round_ in all_rounds), Exact(0))
        y = sum((world.length(round_.high) for round_ in all_rounds), Exact(0))
        lines = grid.placed(x, y)
        core = _core(lines)
        seams = world.length(world.seam) * 2
        made, inside = [], core
        for round_ in all_rounds:
            border = borders.made(round_, world, x, y, inside)
            made.append(border)
            x, y = x - world.length(round_.wide), y - world.length(round_.high)
            inside = Sides(border.after.across - seams, border.after.down - seams)
        parts = [part for line in lines for part in line.parts]
        parts += [part for border in made for part in border.parts]
        frame = grid.frame
        record = LayoutMade(
            "columns" if grid.columns else "rows",
            lines,
            Sides(core.across + seams, core.down + seams),
            frame.sash.part if frame else None,
            frame.stones if frame else None,
            tuple(made),
        )
        return MadeUnit(tuple(parts), record)


def _layout(unit: WrittenMade) -> WrittenLayout:
    if not isinstance(unit, WrittenLayout):
        raise TypeError(f"{type(unit).__name__} is no layout")
    return unit


def _open(name: str, world: World) -> tuple[Tally, Tally]:
    """A unit of which nothing is known."""
    across, down = (world.unknown(("parts", name, side)) for side in ("across", "down"))
    return Tally(name, (Term(name, 1, across),)), Tally(name, (Term(name, 1, down),))


def _core(lines: tuple[Line, ...]) -> Sides:
    if not lines:
        return Sides(Exact(0), Exact(0))
    if lines[0].role == "column":
        return Sides(sum((line.across for line in lines), Exact(0)), lines[0].down)
    return Sides(lines[0].across, sum((line.down for line in lines), Exact(0)))


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


def _row_measures(name: str, layout: WrittenLayout, grid: Grid, world: World) -> None:
    stated = here(layout.row_measure, world.size) or ()
    for number, line in enumerate(grid.lines, 1):
        if not stated or (len(stated) == 1 and number > 1) or number > len(stated):
            break
        key = ("units", name, "row-measure", str(number))
        across, down = grid.line_tallies(number, line)
        what = f"{grid.word} {number} of {name}"
        _state_size(key, (across, down), stated[number - 1], "row-measure", what, world)


METHOD: Final = MethodForm("layout", WrittenLayout, LayoutWork())
