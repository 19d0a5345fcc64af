"""The sizes of one size of a quilt: every side of every part as a sum, and what makes them equal.

The order of belief: pieces with a stated size are known; the structure (rows, sashes, borders)
adds equations; what is still unknown takes the nearest stated figure, from the unit itself
outward to the finished size; only then is every other stated figure compared. So where
structure gives a value, a stated figure is never a source, and it is the figure that is blamed.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Final

from patternbook.linear import Sum
from patternbook.methods import work_of
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Outline, Placed, Sides, Turn
from patternbook.methods.world import Rule, Span, Tally, Work, World, here, sides
from patternbook.methods.written import WrittenMade
from patternbook.notice import Place
from patternbook.quilt.lengths import Lengths, with_seams
from patternbook.quilt.parts import TOP
from patternbook.quilt.sizing import allowance, piece_span
from patternbook.quilt.template import Template
from patternbook.quilt.templates import template
from patternbook.quilt.unit_patches import Laid, unit_patches
from patternbook.source.drawings import Pictures
from patternbook.source.written import WrittenPattern

# Units within units; no quilt comes near it.
DEEPEST: Final = 50


class Resolver(Lengths):
    """One size while it is being worked out: the world that the sewing methods see."""

    def __init__(
        self, written: WrittenPattern, size: str, pictures: Pictures | None = None
    ) -> None:
        super().__init__(written, size, pictures)
        # The same pattern in every size, this one among them, once all are solved.
        self.peers: Mapping[str, Resolver] = {size: self}
        # What the top is made of, down to the last piece; all that is written where there is none.
        self.reached: frozenset[str] | None = None
        self.spans: dict[str, Span | None] = {}
        self.tallies: dict[str, tuple[Tally, Tally]] = {}
        self._within = 0

    def solve(self) -> None:
        """Work through the order of belief."""
        if TOP in self.units:
            self.span(TOP, Turn(), self.units[TOP].place)
            self.reached = frozenset(self.spans)
        for name, unit in self.units.items():
            self.span(name, Turn(), unit.place)
        for letter, piece in self.pieces.items():
            self.span(letter, Turn(), piece.place)
        self._goal()
        open_figures = [stated for stated in self.stated if not self._source(stated)]
        self._as_large_as_allowed()
        for stated in open_figures:
            self._compare(stated)

    def work(self, name: str) -> Work:
        """How a unit is worked out."""
        return work_of(self.units[name].method)

    def span(self, part: str, turn: Turn, place: Place | None) -> Span:
        """A part's finished width and length as it lies; unknown where there is no such part."""
        if part not in self.spans:
            self.spans[part] = None
            self._within += 1
            self.spans[part] = self._span(part, place)
            self._within -= 1
        span = self.spans[part]
        if span is None:
            self._made_from_itself(part, place)
            span = self.spans[part] = self._open_span(part)
        return Span(span.down, span.across) if turn.sideways else span

    def sum_of(self, part: str) -> Span:
        """The unsolved span of a part that has been asked for."""
        return self.spans.get(part) or self._open_span(part)

    def raw(self, part: str, place: Place | None) -> Span:
        """A part from raw edge to raw edge."""
        span = self.span(part, Turn(), place)
        piece = self.pieces.get(part)
        loss = allowance(piece, self) if piece is not None else self.seam * 2
        return Span(span.across + loss, span.down + loss)

    def strip_width(self, part: str, place: Place | None) -> Sum:
        """The finished width of a strip, or of a part laid as one."""
        return self.span(part, Turn(), place).across

    def shape(self, part: str) -> Outline | None:
        """The seam lines of a piece that is cut by a template, in its box as made."""
        found = self.drawn(part)
        return found.sew if found else None

    def drawn(self, part: str) -> Template | None:
        """A piece's template, once its size is known."""
        piece, span = self.pieces.get(part), self.spans.get(part)
        if piece is None or piece.template is None or span is None or part in self.broken:
            return None
        across, down = self.known(span.across), self.known(span.down)
        if across is None or down is None:
            return None
        picture = self.picture(str(piece.drawing))
        return template(piece, Sides(across, down), self.size, picture)

    def patches_of(self, part: str) -> tuple[Placed, ...]:
        """Every patch of a unit in its place."""
        return unit_patches(part, self._as_laid)

    def _as_laid(self, name: str) -> Laid | None:
        if name not in self.units:
            return None
        placed, _ = self.work(name).make(name, self.units[name], self, 1)
        return Laid(placed, sides(self.sum_of(name), self))

    def _span(self, part: str, place: Place | None) -> Span:
        if part in self.pieces:
            return piece_span(part, self.pieces[part], self)
        if self._within > DEEPEST:
            self._too_deep(part)
            return self._open_span(part)
        if part in self.units:
            return self._unit_span(part, self.units[part])
        self._no_part(part, place)
        return self._open_span(part)

    def _unit_span(self, name: str, unit: WrittenMade) -> Span:
        work = work_of(unit.method)
        across, down = work.span(name, unit, self)
        self.tallies[name] = (across, down)
        self._unit_figures(name, unit, across, down)
        return Span(across.sum(), down.sum())

    def _unit_figures(self, name: str, unit: WrittenMade, across: Tally, down: Tally) -> None:
        for word, sizes, seams in (("measure", unit.measure, 2), ("finished", unit.finished, 0)):
            size = here(sizes, self.size)
            if size is None:
                continue
            tolerance = Fraction(1, 8) if size.about else Fraction(0)
            sum_rule = "R12" if seams else "R8" if _grid(unit, self.size) else "R1"
            rule = Rule(f"unit-{word}", sum_rule, None, tolerance)
            for side, tally, number in (("across", across, size.across), ("down", down, size.down)):
                key = ("units", name, word, side)
                self.state(key, with_seams(tally, self.seam, seams), number, rule, size.place)

    def _goal(self) -> None:
        """The size's finished width and length, the last and outermost stated figure."""
        size = self.goal.finished
        if size is None or TOP not in self.tallies:
            return
        rule = Rule("finished-size", "R8", None, Fraction(1, 8) if size.about else Fraction(0))
        pairs = zip(("across", "down"), self.tallies[TOP], (size.across, size.down), strict=True)
        for side, tally, number in pairs:
            self.state(("sizes", "finished", side), tally, number, rule, size.place)

    def _open_span(self, part: str) -> Span:
        return Span(self.unknown(("parts", part, "across")), self.unknown(("parts", part, "down")))

    def _too_deep(self, part: str) -> None:
        if not self.broken:
            message = f"'{part}' lies in a unit in a unit and so on, more than {DEEPEST} deep."
            hint = "Lay the same parts in fewer units."
            self.error("too-nested", "R10", message, self.units[part].place, hint)
        self.broken.add(part)

    def _made_from_itself(self, part: str, place: Place | None) -> None:
        self.broken.add(part)
        hint = "A unit may use only parts that can be made before it."
        self.error("made-from-itself", "R10", f"'{part}' is made from itself.", place, hint)


def _grid(unit: WrittenMade, size: str) -> bool:
    """Whether its size is that of several rows (R8), and not of parts in one row (R1)."""
    if not isinstance(unit, WrittenLayout):
        return False
    lines = here(unit.rows, size) or here(unit.columns, size) or ()
    return len(lines) > 1 or unit.down is not None


def _is_world(resolver: Resolver) -> World:
    """Only for the type checker: the resolver is a world."""
    return resolver
