"""Quilts laid by hand for the tests of sewing: finished sizes in inches, rows as text."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any, Literal

from patternbook.exact import Exact
from patternbook.inch import INCHES
from patternbook.notice import Place
from patternbook.quilt.records import (
    Backing,
    Batting,
    Binding,
    Border,
    CutSize,
    Fabric,
    LayoutMade,
    Line,
    Piece,
    Placed,
    Quilt,
    Settings,
    Sides,
    StripSetMade,
    Turn,
    Unit,
)

QUARTERS = {"right": 1, "half": 2, "left": 3}
HERE = Place("pattern.yaml", 1, 1, 1, 2)
HALF = Fraction(1, 2)


class Hand:
    """A quilt that grows unit by unit: Hand(A=(2, 2)).rows("top", "A A", "A A").quilt()."""

    def __init__(self, **pieces: tuple[float, float | None]) -> None:
        self.fabrics = {"cloth": Fabric("cloth", "all of it", "yardage", Fraction(40), place=HERE)}
        self.units: dict[str, Unit] = {}
        self.sides: dict[str, Sides] = {}
        self.pieces: dict[str, Piece] = {}
        for letter, (across, down) in pieces.items():
            self._piece(letter, Fraction(across), None if down is None else Fraction(down))

    def _piece(self, letter: str, across: Fraction, down: Fraction | None) -> None:
        sides = Sides(Exact(across), Exact(40 if down is None else down))
        cut = CutSize(across + HALF, None if down is None else down + HALF)
        self.sides[letter] = sides
        self.pieces[letter] = Piece(letter, "cloth", cut, sides, 0)

    def fabric(self, name: str, letters: str, **more: Any) -> Hand:
        """A cloth of its own for some letters."""
        made = Fabric(name, name, "yardage", Fraction(40), place=HERE)
        self.fabrics[name] = replace(made, **more)
        for letter in letters.split():
            self.pieces[letter] = replace(self.pieces[letter], fabric=name)
        return self

    def strips(
        self, name: str, strips: str, segment: float, per_set: int = 10, sets: int = 1, **more: Any
    ) -> Hand:
        """A strip set cut into slices that finish `segment` wide."""
        letters = strips.split()
        line = self._line("row", [(letter, Turn()) for letter in letters], Exact(0), Exact(0))
        down = Exact(Fraction(segment))
        placed = tuple(part._replace(down=down) for part in line.parts)
        raw = (down + HALF).fraction
        made = StripSetMade(
            tuple(letters), raw, line.across + HALF, Fraction(40), per_set, per_set, sets
        )
        return self._unit(name, "strip set", Sides(line.across, down), placed, made, more)

    def rows(self, name: str, *rows: str, **more: Any) -> Hand:
        """A layout of rows; one that starts with `sash:` stands between rows of blocks."""
        return self._layout(name, "rows", rows, more)

    def columns(self, name: str, *columns: str, **more: Any) -> Hand:
        """A layout of columns, each read downward."""
        return self._layout(name, "columns", columns, more)

    def border(self, name: str, letter: str, stones: str | None = None) -> Hand:
        """A border round a unit: sides first, butted, or with cornerstones."""
        unit = self.units[name]
        assert isinstance(unit.made, LayoutMade)
        wide, (across, down) = self.sides[letter].across, unit.finished
        shifted = tuple(part._replace(x=part.x + wide, y=part.y + wide) for part in unit.placed)
        broad = across if stones else across + wide * 2
        left = wide if stones else Exact(0)
        parts = [
            Placed(letter, Turn(), Exact(0), wide, wide, down),
            Placed(letter, Turn(), across + wide, wide, wide, down),
            Placed(letter, Turn(1), left, Exact(0), broad, wide),
            Placed(letter, Turn(1), left, down + wide, broad, wide),
        ]
        if stones:
            xs, ys = (Exact(0), across + wide), (Exact(0), down + wide)
            parts += [Placed(stones, Turn(), x, y, wide, wide) for y in ys for x in xs]
        outside = Sides(across + wide * 2, down + wide * 2)
        number = len(unit.made.borders) + 1
        made = Border(
            number,
            letter,
            letter,
            "sides",
            "butted",
            stones,
            down + HALF,
            broad + HALF,
            tuple(parts),
            raw(outside),
        )
        lines = tuple(_moved(line, wide) for line in unit.made.lines)
        layout = replace(unit.made, lines=lines, borders=(*unit.made.borders, made))
        self.sides[name] = outside
        self.units[name] = replace(
            unit,
            finished=outside,
            measure=raw(outside),
            placed=(*shifted, *parts),
            made=layout,
        )
        return self

    def border_of(self, strip: tuple[float, None], fabric: str = "cloth") -> Hand:
        """A border of strips F round the top."""
        self._piece("F", Fraction(strip[0]), strip[1])
        self.pieces["F"] = replace(self.pieces["F"], fabric=fabric)
        return self.border("top", "F")

    def quilt(self, top: str | None = "top", **more: Any) -> Quilt:
        """The frozen record. `make` is 1 where a test does not say: sewing counts for itself."""
        made = Quilt(
            size="crib",
            system=INCHES,
            seam=Fraction(1, 4),
            width=Fraction(40),
            finished=self.sides[top] if top else None,
            fabrics=self.fabrics,
            pieces=self.pieces,
            units=self.units,
            top=top,
            backing=Backing(),
            batting=Batting(),
            binding=Binding("cloth", Fraction(5, 2)),
            quilting=(),
            settings=Settings(),
            standings={},
        )
        return replace(made, **more)

    # ---- inside

    def _layout(
        self, name: str, by: Literal["rows", "columns"], texts: Sequence[str], more: dict[str, Any]
    ) -> Hand:
        lines: list[Line] = []
        x = y = Exact(0)
        for text in texts:
            sash = text.startswith("sash: ")
            role = "column" if by == "columns" else "sash" if sash else "row"
            cells = [_cell(word) for word in text.removeprefix("sash: ").split()]
            line = self._line(role, cells, x, y)
            lines.append(line)
            x, y = (x + line.across, y) if by == "columns" else (x, y + line.down)
        last = lines[-1]
        sides = Sides(x, last.down) if by == "columns" else Sides(last.across, y)
        sash, stones = more.pop("sashing", (None, None))
        made = LayoutMade(by, tuple(lines), raw(sides), sash, stones, ())
        placed = tuple(part for line in lines for part in line.parts)
        return self._unit(name, "layout", sides, placed, made, more)

    def _line(self, role: Any, cells: Iterable[tuple[str, Turn]], x: Exact, y: Exact) -> Line:
        parts: list[Placed] = []
        at_x, at_y = x, y
        for part, turn in cells:
            across, down = self.sides[part]
            if turn.sideways:
                across, down = down, across
            parts.append(Placed(part, turn, at_x, at_y, across, down))
            at_x, at_y = (at_x, at_y + down) if role == "column" else (at_x + across, at_y)
        if role == "column":
            return Line(role, tuple(parts), parts[0].across, at_y - y)
        return Line(role, tuple(parts), at_x - x, parts[0].down)

    def _unit(
        self,
        name: str,
        method: str,
        sides: Sides,
        placed: tuple[Placed, ...],
        made: LayoutMade | StripSetMade,
        more: dict[str, Any],
    ) -> Hand:
        self.sides[name] = sides
        uses = Counter(part.part for part in placed)
        press = more.pop("press", ())
        words = (press,) if isinstance(press, str) else tuple(press)
        make = more.pop("make", 1)
        unit = Unit(name, method, sides, raw(sides), make, placed, uses, made, words, place=HERE)
        self.units[name] = replace(unit, **more)
        return self


def raw(sides: Sides) -> Sides:
    """From raw edge to raw edge."""
    return Sides(sides.across + HALF, sides.down + HALF)


def _cell(word: str) -> tuple[str, Turn]:
    part, *turns = word.split("/")
    turn = Turn()
    for one in turns:
        if one == "mirror":
            turn = Turn(-turn.quarters % 4, not turn.mirrored)
        else:
            turn = Turn((turn.quarters + QUARTERS[one]) % 4, turn.mirrored)
    return part, turn


def _moved(line: Line, by: Exact) -> Line:
    return replace(
        line, parts=tuple(part._replace(x=part.x + by, y=part.y + by) for part in line.parts)
    )


def grid(across: int, down: int, size: float = 2, **more: Any) -> Hand:
    """Squares in straight rows, as the top."""
    return Hand(A=(size, size)).rows("top", *[" ".join("A" * across)] * down, **more)


def bricks(across: int, down: int, **more: Any) -> Hand:
    """Bricks; every other row begins and ends with half a one."""
    whole, halved = " ".join("A" * across), " ".join(["H", *"A" * (across - 1), "H"])
    hand = Hand(A=(6, 3), H=(3, 3))
    return hand.rows("top", *[halved if row % 2 else whole for row in range(down)], **more)
