"""The lengths of one size as sums of symbols, and the equations that hold sums equal."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any, TypeVar

from patternbook.exact import Exact
from patternbook.linear import Equations, Key, Sum, Symbol
from patternbook.methods.world import Rule, Tally, Term, here
from patternbook.notice import Place
from patternbook.quilt.checks import Bound, Check, Room, Stated
from patternbook.quilt.parts import Parts
from patternbook.source.drawings import Pictures
from patternbook.source.written import WrittenPattern

T = TypeVar("T")


class Lengths(Parts):
    """What is given, stated and held equal in one size, and what it comes to so far."""

    def __init__(
        self, written: WrittenPattern, size: str, pictures: Pictures | None = None
    ) -> None:
        super().__init__(written, size, pictures)
        self.equations = Equations()
        self.checks: list[Check] = []
        self.stated: list[Stated] = []
        self.bounds: list[Bound] = []
        self.rooms: list[Room] = []
        self.on_trust: dict[Key, Stated] = {}
        self.places: dict[Key, Place] = {}
        self.symbols: dict[Key, Symbol] = {}
        self._lengths: dict[int, tuple[Sum, Exact]] = {}
        self._kept: dict[str, Any] = {}

    @property
    def seam(self) -> Sum:
        """One seam allowance, as a symbol."""
        stated = self.written.seam
        number = stated.number if stated else self.system.seam
        return self._symbol(("seam",), number, stated.place if stated else None)

    def radius(self, part: str) -> Sum | None:
        """The finished radius that is stated of a piece's curve."""
        piece = self.pieces.get(part)
        stated = here(piece.radius, self.size) if piece is not None else None
        if stated is None:
            return None
        return self.given(("pieces", part, "radius"), stated.number, stated.place)

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
        self.stated.append(Stated(key, worked_out, symbol, rule, place, self.system.step))

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

    def _symbol(self, key: Key, number: Fraction, place: Place | None) -> Sum:
        if place is not None:
            self.places[key] = place
        symbol = self.symbols.setdefault(key, Symbol(key, Exact(number)))
        return Sum.symbol(symbol)

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


def with_seams(tally: Tally, seam: Sum, seams: int) -> Tally:
    """The tally with so many seam allowances: raw edge to raw edge has two."""
    if not seams:
        return tally
    return Tally(tally.what, (*tally.terms, Term("seam", seams, seam)), tally.place)
