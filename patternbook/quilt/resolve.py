"""The sizes of one size of a quilt: every side of every part as a sum, and what makes them equal.

The order of belief: pieces with a stated size are known; the structure (rows, sashes, borders)
adds equations; what is still unknown takes the nearest stated figure, from the unit itself
outward to the finished size; only then is every other stated figure compared. So where
structure gives a value, a stated figure is never a source, and it is the figure that is blamed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from typing import Any, Final, Literal, TypeVar

from patternbook.exact import Exact
from patternbook.inch import CENTIMETRES, INCHES, System, triangle_allowance
from patternbook.linear import Equations, Key, Sum, Symbol
from patternbook.methods import work_of
from patternbook.methods.made import Outline, Placed, Sides, Turn
from patternbook.methods.world import Diagonal, Rule, Span, Tally, Term, Work, World, here, sides
from patternbook.methods.written import WrittenMade
from patternbook.notice import Place
from patternbook.quilt.house_rules import settings
from patternbook.quilt.numbers import Numbers
from patternbook.quilt.sizing import allowance, piece_span
from patternbook.quilt.template import Template
from patternbook.quilt.templates import fixed, template
from patternbook.quilt.unit_patches import Laid, unit_patches
from patternbook.source.cloth import WrittenFabric, WrittenPiece
from patternbook.source.cover import WrittenSize
from patternbook.source.drawings import Pictures
from patternbook.source.svg import Picture
from patternbook.source.written import WrittenPattern
from patternbook.value import SizeValue

TOP: Final = "top"
# Units within units; no quilt comes near it.
DEEPEST: Final = 50
T = TypeVar("T")


@dataclass(frozen=True)
class Stated:
    """A figure of the author's beside the sum it should equal."""

    key: Key
    worked_out: Tally
    symbol: Symbol
    rule: Rule
    place: Place


@dataclass(frozen=True)
class Check:
    """An equation that no unknown was left to satisfy: `rest` is nought if its sides agree."""

    one: Tally
    other: Tally
    rest: Sum
    rule: Rule
    stated: Stated | None = None
    always: bool = False

    def off(self) -> Exact:
        """How much longer the first side is, where that is more than the rule allows."""
        rest = self.rest.value()
        if rest is None or abs_of(rest) <= self.rule.tolerance:
            return Exact(0)
        return rest


@dataclass(frozen=True)
class Bound:
    """A unit that may be trimmed: its size, and the most that its pieces give."""

    name: str
    size: Sum
    most: Tally
    trimmed: Fraction
    place: Place | None
    points: bool = False


@dataclass(frozen=True)
class Room:
    """A sum that must keep within another."""

    one: Tally
    room: Tally
    rule: Rule


def abs_of(value: Exact) -> Exact:
    """The value without its sign."""
    return -value if value < 0 else value


class Resolver(Numbers):
    """One size while it is being worked out: the world that the sewing methods see."""

    def __init__(
        self, written: WrittenPattern, size: str, pictures: Pictures | None = None
    ) -> None:
        sizes: dict[str, WrittenSize] = {str(name): node for name, node in written.sizes.items()}
        self.goal = sizes[size]
        super().__init__(size, self.goal.numbers)
        self.written = written
        self.pictures = pictures or {}
        self.system: System = CENTIMETRES if written.written_in == "cm" else INCHES
        self.equations = Equations()
        self.checks: list[Check] = []
        self.stated: list[Stated] = []
        self.bounds: list[Bound] = []
        self.rooms: list[Room] = []
        self.rounded_up: set[str] = set()
        self.on_trust: dict[Key, Stated] = {}
        self.broken: set[str] = set()
        # What the top is made of, down to the last piece; all that is written where there is none.
        self.reached: frozenset[str] | None = None
        self._lengths: dict[int, tuple[Sum, Exact]] = {}
        self._kept: dict[str, Any] = {}
        self._within = 0
        self.spans: dict[str, Span | None] = {}
        self.tallies: dict[str, tuple[Tally, Tally]] = {}
        self.places: dict[Key, Place] = {}
        self.symbols: dict[Key, Symbol] = {}
        self.pieces: dict[str, WrittenPiece] = {
            str(name): node for name, node in written.pieces.items()
        }
        self.fabrics: dict[str, WrittenFabric] = {
            str(name): node for name, node in written.fabrics.items()
        }
        self.units: dict[str, WrittenMade] = {
            str(name): node for name, node in written.units.items()
        }
        if written.top is not None:
            self.units[TOP] = written.top

    # ---- what the methods ask

    @property
    def seam(self) -> Sum:
        """One seam allowance, as a symbol."""
        stated = self.written.seam
        number = stated.number if stated else self.system.seam
        return self._symbol(("seam",), number, stated.place if stated else None)

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

    @property
    def unit(self) -> Literal["in", "cm"]:
        """What the author's numbers count."""
        return self.system.unit

    def raw(self, part: str, place: Place | None) -> Span:
        """A part from raw edge to raw edge."""
        span = self.span(part, Turn(), place)
        piece = self.pieces.get(part)
        loss = allowance(piece, self) if piece is not None else self.seam * 2
        return Span(span.across + loss, span.down + loss)

    def sized(self, part: str) -> bool:
        """Whether the size of a part is fixed by itself."""
        piece = self.pieces.get(part)
        if piece is None or fixed(piece):
            return True
        cut, finished = here(piece.cut, self.size), here(piece.finished, self.size)
        return finished is not None or (cut is not None and "fit" not in (cut.across, cut.down))

    def diagonal(self, part: str) -> Diagonal | None:
        """How often a piece's square is cut on the diagonal."""
        piece = self.pieces.get(part)
        word = here(piece.diagonal, self.size) if piece else None
        return "twice" if word == "twice" else "once" if word else None

    def template(self, part: str) -> str | None:
        """The shape of a piece that no ruler cuts, in a word."""
        piece = self.pieces.get(part)
        return str(piece.template) if piece is not None and piece.template else None

    def radius(self, part: str) -> Sum | None:
        """The finished radius that is stated of a piece's curve."""
        piece = self.pieces.get(part)
        stated = here(piece.radius, self.size) if piece is not None else None
        if stated is None:
            return None
        return self.given(("pieces", part, "radius"), stated.number, stated.place)

    def triangle(self, diagonal: Diagonal) -> Fraction:
        """What a square loses between its cut side and the finished side of its triangles."""
        stated = self.written.seam
        seam = stated.number if stated else self.system.seam
        return triangle_allowance(seam, 1 if diagonal == "once" else 2, self.system)

    def trimming(self, unit: WrittenMade) -> Fraction:
        """How much larger than needed a unit is sewn, to be trimmed."""
        stated = here(unit.trimming, self.size)
        if stated is not None:
            return stated.number
        return settings(self.written.settings, self.system).trimming

    def at_most(
        self,
        name: str,
        size: Sum,
        bound: Tally,
        trimmed: Fraction,
        place: Place | None,
        *,
        points: bool = False,
    ) -> None:
        """A unit that may be trimmed: at most as large as its pieces let it be."""
        self.bounds.append(Bound(name, size, bound, trimmed, place, points))

    def within(self, one: Tally, room: Tally, rule: Rule) -> None:
        """Tell where one sum is longer than another that it must keep within."""
        self.rooms.append(Room(one, room, rule))

    def rounds_up(self, part: str) -> None:
        """A piece that is trimmed once it is sewn may be cut at the ruler's next mark up."""
        self.rounded_up.add(part)

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

    def picture(self, name: str) -> Picture | None:
        """A drawing beside the source."""
        return self.pictures.get(name)

    def strip_width(self, part: str, place: Place | None) -> Sum:
        """The finished width of a strip, or of a part laid as one."""
        return self.span(part, Turn(), place).across

    def is_strip(self, part: str) -> bool:
        """Whether the part is cut the whole width of the cloth."""
        piece = self.pieces.get(part)
        cut = here(piece.cut, self.size) if piece else None
        return cut is not None and cut.down == "WOF"

    def is_unit(self, part: str) -> bool:
        """Whether the part is sewn rather than cut."""
        return part in self.units

    def patches_of(self, part: str) -> tuple[Placed, ...]:
        """Every patch of a unit in its place."""
        return unit_patches(part, self._as_laid)

    def join(self, part: str) -> str:
        """How strips of a piece are joined end to end."""
        piece = self.pieces.get(part)
        return str(piece.join.at(self.size)) if piece is not None else "diagonal"

    def wanted(self, name: str) -> SizeValue | None:
        """The finished size that is stated of a unit; of the top also that of the quilt."""
        own = here(self.units[name].finished, self.size)
        return self.goal.finished if own is None and name == TOP else own

    def strip_length(self, part: str) -> Fraction:
        """How long a strip of this piece's cloth is: the usable width, or the pre-cut's length."""
        piece = self.pieces.get(part)
        name = here(piece.fabric, self.size) if piece else None
        fabric = self.fabrics.get(name) if name else None
        if fabric and fabric.form == "strip roll" and fabric.size:
            return max(fabric.size.across, fabric.size.down)
        if fabric and fabric.width:
            return fabric.width.number
        return self.written.width.number if self.written.width else self.system.width

    def given(self, key: Key, number: Fraction, place: Place | None = None) -> Sum:
        """A number of the author's as a symbol."""
        return self._symbol(key, number, place)

    def unknown(self, key: Key) -> Sum:
        """A length that the equations are to find."""
        return Sum.symbol(Symbol(key))

    def equal(self, one: Tally, other: Tally, rule: Rule) -> None:
        """Hold two sums equal; `one` is blamed where they are not."""
        rest = self.equations.let_equal(one.sum(), other.sum())
        if rest is not None:
            always = self.known(one.sum()) is None
            self.checks.append(Check(one, other, rest, rule, always=always))

    def state(
        self, key: Key, worked_out: Tally, number: Fraction, rule: Rule, place: Place
    ) -> None:
        """A stated figure beside the sum it should equal."""
        self.places[key] = place
        symbol = Symbol(key, Exact(number))
        self.stated.append(Stated(key, worked_out, symbol, rule, place))

    def known(self, form: Sum) -> Exact | None:
        """What the sum comes to as far as the equations go by now."""
        return self.equations.value(form)

    def length(self, form: Sum) -> Exact:
        """A sum once all is solved; nought where nothing fixes it, which has been told."""
        kept = self._lengths.get(id(form))
        if kept is None:
            # the sum is kept beside its value, so that its id is not used again
            kept = self._lengths[id(form)] = (form, self.equations.value(form) or Exact(0))
        return kept[1]

    def kept(self, name: str, make: Callable[[], T]) -> T:
        """What a method has made for a unit before, or makes now: equations are not repeated."""
        if name not in self._kept:
            self._kept[name] = make()
        made: T = self._kept[name]
        return made

    def hopeless(self, name: str) -> None:
        """Leave a unit out, and all that would follow from it."""
        self.broken.add(name)

    # ---- what the stages below ask

    def work(self, name: str) -> Work:
        """How a unit is worked out."""
        return work_of(self.units[name].method)

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

    def sum_of(self, part: str) -> Span:
        """The unsolved span of a part that has been asked for."""
        return self.spans.get(part) or self._open_span(part)

    # ---- its own

    def _as_laid(self, name: str) -> Laid | None:
        if name not in self.units:
            return None
        placed, _ = self.work(name).make(name, self.units[name], self, 1)
        return Laid(placed, sides(self.sum_of(name), self))

    def _symbol(self, key: Key, number: Fraction, place: Place | None) -> Sum:
        if place is not None:
            self.places[key] = place
        symbol = self.symbols.setdefault(key, Symbol(key, Exact(number)))
        return Sum.symbol(symbol)

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
            rule = Rule(f"unit-{word}", "R12" if seams else "R1", None, tolerance)
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

    def _source(self, stated: Stated) -> bool:
        """Whether the figure was needed to fix a length; then it is believed, and on trust."""
        form = stated.worked_out.sum()
        if self.equations.value(form) is not None:
            return False
        self.equations.let_equal(form, Sum.symbol(stated.symbol))
        self.on_trust[stated.key] = stated
        return True

    def _as_large_as_allowed(self) -> None:
        """What may be trimmed and nothing else fixes is as large as its pieces let it be, on the
        ruler."""
        for bound in sorted(self.bounds, key=lambda bound: self._least(bound.most)):
            most = self.known(bound.most.sum())
            if most is not None and self.known(bound.size) is None:
                self.equations.let_equal(bound.size, Sum.of(most.down(self.system.step)))

    def _least(self, most: Tally) -> tuple[bool, Exact]:
        value = self.known(most.sum())
        return value is None, value or Exact(0)

    def _compare(self, stated: Stated) -> None:
        figure = Tally("stated", (Term("", 1, Sum.symbol(stated.symbol)),), stated.place)
        rest = self.equations.reduced(stated.worked_out.sum() - Sum.symbol(stated.symbol))
        self.checks.append(Check(stated.worked_out, figure, rest, stated.rule, stated))

    def _open_span(self, part: str) -> Span:
        return Span(self.unknown(("parts", part, "across")), self.unknown(("parts", part, "down")))

    def _no_part(self, part: str, place: Place | None) -> None:
        self.broken.add(part)
        known = [name for name in (*self.pieces, *self.units) if name != TOP]
        near = get_close_matches(part, known, 1)
        hint = f"Known parts: {', '.join(known)}." if known else "Add it to `pieces` or `units`."
        if near:
            hint = f"Did you mean '{near[0]}'?"
        if part in self.fabrics:
            hint = f"'{part}' is a fabric; a layout names pieces and units only."
        self.error("unknown-part", "R19", f"nothing is called '{part}'.", place, hint)

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


def with_seams(tally: Tally, seam: Sum, seams: int) -> Tally:
    """The tally with so many seam allowances: raw edge to raw edge has two."""
    if not seams:
        return tally
    return Tally(tally.what, (*tally.terms, Term("seam", seams, seam)), tally.place)


def _is_world(resolver: Resolver) -> World:
    """Only for the type checker: the resolver is a world."""
    return resolver
