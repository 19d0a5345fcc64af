"""The numbers of which each alone, written otherwise, would make all sums hold again.

Every equation that failed is a sum over the author's own numbers. Each of them is solved for,
put into all equations of all sizes that read the same words, and kept where every one holds: on
the ruler, above nought, and within what its pieces give.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import on_the_ruler, ruler_up
from patternbook.linear import Key, Sum, Symbol
from patternbook.notice import Edit, Place
from patternbook.quilt.checks import Check
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.written_at import SIDES, Measure, edit, is_square, measures, rewritten
from patternbook.value import NOWHERE, LengthValue

# So many are told; the rest would only be more of the same.
MOST: Final = 6
# Where it ranks that a piece would be cut like another.
RESEMBLES: Final = 5
# Numbers that stand for shapes, whose corners are not one number.
NO_NUMBER: Final = frozenset({"outline", "edges", "angle"})


@dataclass(frozen=True)
class Change:
    """One value of the source with another length, or another number for some of its sides."""

    value: Measure
    numbers: Mapping[str, Exact]
    keys: tuple[Key, ...]
    old: Exact
    facts: int
    # Whether it lies in the odd one of two sums.
    odd: bool
    rank: tuple[object, ...]

    @property
    def new(self) -> Exact:
        """The number that would be right."""
        return next(iter(self.numbers.values()))

    @property
    def place(self) -> Place:
        """Where it stands."""
        return self.value.place

    @property
    def key(self) -> Key:
        """What the number is."""
        return self.keys[0]

    def edit(self, resolver: Resolver, *, sure: bool) -> Edit:
        """The change as it is made."""
        return edit(self.value, self.numbers, resolver.system, sure=sure)

    def told(self, resolver: Resolver) -> tuple[str, str]:
        """What to do, and with what: `cut`, `B 7 1/2 x 15`; `write`, `row finished 5 x 15`."""
        text = self.edit(resolver, sure=False).new
        if self.key[0] == "pieces" and self.key[2] == "cut":
            return "cut", f"{self.key[1]} {text}"
        if self.key[0] == "pieces":
            return "write", f"{self.key[1]} {self.key[2].removeprefix('stated ')} {text}"
        words = [word for word in self.key[1:] if word not in SIDES] or [self.key[0]]
        return "write", f"{' '.join(words)} {text}"

    def with_sides_of(self, others: Iterable[Change]) -> Change:
        """This change and others of the same value, as one."""
        sides = {side: number for one in others for side, number in one.numbers.items()}
        return replace(self, numbers={**self.numbers, **sides})


class Alternatives:
    """What each number of one size may be, with the other sizes beside it."""

    def __init__(self, resolver: Resolver, peers: Iterable[Resolver] = ()) -> None:
        self.resolver = resolver
        self.peers = [Alternatives(peer) for peer in peers if peer is not resolver]
        self.uses: dict[Symbol, list[Check]] = defaultdict(list)
        for check in resolver.checks:
            for symbol in check.rest.terms:
                self.uses[symbol].append(check)

    @cached_property
    def written(self) -> Mapping[Place, Measure]:
        """What the author wrote, by its place."""
        return measures(self.resolver.written)

    def mend_all(self, checks: Sequence[Check]) -> list[Change]:
        """The changes that would mend all of these equations, the likeliest first; of one stated
        size whose sides are both wrong, both are written anew."""
        first, *others = (self.of(check) for check in checks)
        kept = []
        for change in first:
            same = [_of_value(change, changes) for changes in others]
            if all(one is not None and one.numbers == change.numbers for one in same):
                kept.append(change)
            elif checks[0].stated is not None and change.place == checks[0].stated.place:
                kept.append(change.with_sides_of(one for one in same if one is not None))
        return kept[:MOST]

    @cached_property
    def _texts(self) -> frozenset[str]:
        """All that is written anywhere."""
        return frozenset(value.text for value in self.written.values())

    def of(self, check: Check) -> list[Change]:
        """All changes that would mend this equation, the likeliest first."""
        found: dict[tuple[Place, tuple[tuple[str, Exact], ...]], Change] = {}
        for symbol in check.rest.terms:
            change = self._change(symbol, check)
            if change is not None:
                found[change.place, tuple(change.numbers.items())] = change
        return sorted(found.values(), key=lambda change: change.rank)

    def _change(self, symbol: Symbol, check: Check) -> Change | None:
        value = self.written.get(self.resolver.places.get(symbol.key, NOWHERE))
        if value is None or symbol.value is None or set(symbol.key) & NO_NUMBER:
            return None
        both = self._both(symbol, value)
        for symbols in ([both] if both else []) + [(symbol,)]:
            change = self._solved(symbols, value, check)
            if change is not None:
                return change
        return None

    def _both(self, symbol: Symbol, value: Measure) -> tuple[Symbol, Symbol] | None:
        """Both sides of a square, where one number stands for both."""
        if isinstance(value, LengthValue) or not is_square(value):
            return None
        sides = tuple(Symbol((*symbol.key[:-1], side), symbol.value) for side in SIDES)
        return (sides[0], sides[1])

    def _solved(self, symbols: tuple[Symbol, ...], value: Measure, check: Check) -> Change | None:
        """The change that makes this equation hold, where all others then hold as well."""
        times = sum((check.rest.terms.get(one, Exact(0)) for one in symbols), Exact(0))
        rest, old = check.rest.value(), symbols[0].value
        if not times.sign() or rest is None or old is None:
            return None
        better = old - rest / times
        if check.stated is not None and symbols[0] == check.stated.symbol and near_enough(check):
            better = Exact(ruler_up(better, self.resolver.system))
        if not (better > 0 and on_the_ruler(better, self.resolver.system)):
            return None
        mended = self._holds(symbols, better)
        facts = [mended, *(peer.holds(symbols, better) for peer in self._readers(value))]
        if any(fact is None for fact in facts):
            return None
        known = {fact for one in facts if one for fact in one}
        seam = symbols[0].key[0] == "seam"
        if seam and len(known) < 2:
            return None
        if isinstance(value, LengthValue):
            numbers = {"": better}
        else:
            numbers = {one.key[-1]: better for one in symbols}
        keys = tuple(one.key for one in symbols)
        terms = self.resolver.equations.reduced(check.one.sum()).terms
        odd = any(one in terms for one in symbols)
        rank = self._rank(symbols[0], better, check, len(known), odd=odd)
        alone = rewritten(value, numbers, self.resolver.system) not in self._texts
        rank = (*rank[:RESEMBLES], alone, *rank[RESEMBLES:])
        return Change(value, numbers, keys, old, len(known), odd, rank)

    def allows(self, changed: Iterable[tuple[Symbol, Exact]], value: Measure) -> bool:
        """Whether all sums of all sizes that read this value hold with it written so."""
        everyone = [self, *self._readers(value)]
        return all(
            one.holds((symbol,), better) is not None
            for symbol, better in changed
            for one in everyone
        )

    def _readers(self, value: Measure) -> list[Alternatives]:
        """The other sizes that read the same words."""
        return [peer for peer in self.peers if value.place in peer.resolver.places.values()]

    def holds(self, symbols: tuple[Symbol, ...], better: Exact) -> set[object] | None:
        """As `_holds`, for those of the numbers that this size has."""
        figures = {one.key: one.symbol for one in self.resolver.stated}
        own = self.resolver.symbols | figures
        return self._holds(tuple(own[one.key] for one in symbols if one.key in own), better)

    def _holds(self, symbols: tuple[Symbol, ...], better: Exact) -> set[object] | None:
        """What is mended; None where an equation that the numbers stand in would not hold."""
        more = {one: better - (one.value or Exact(0)) for one in symbols}
        mended: set[object] = set()
        for check in {id(c): c for one in symbols for c in self.uses.get(one, ())}.values():
            rest = check.rest.value()
            if rest is None or not check.agrees(_moved(check.rest, rest, more)):
                return None
            if check.off() != 0:
                mended.add(fact(check))
        return mended if self._possible(more) else None

    def _possible(self, more: Mapping[Symbol, Exact]) -> bool:
        """Whether all parts still have room, and come out on the ruler where they did."""
        for form, least in self._limits:
            if not any(symbol in form.terms for symbol in more):
                continue
            value = form.value()
            if value is not None and _moved(form, value, more) < min(least, value):
                return False
        return True

    @cached_property
    def _limits(self) -> list[tuple[Sum, Exact]]:
        """Sums that must not fall below what stands beside them."""
        resolver, reduced = self.resolver, self.resolver.equations.reduced
        limits = []
        for bound in resolver.bounds:
            size, most = reduced(bound.size), reduced(bound.most.sum())
            limits += [(most - size, Exact(0)), (size - most, Exact(-bound.trimmed))]
        for room in resolver.rooms:
            limits.append((reduced(room.room.sum() - room.one.sum()), Exact(0)))
        step = Exact(resolver.system.step)
        for letter in resolver.pieces:
            limits += [(reduced(side), step) for side in resolver.sum_of(letter)]
        return limits

    def _rank(
        self, symbol: Symbol, better: Exact, check: Check, facts: int, *, odd: bool
    ) -> tuple[object, ...]:
        """The likeliest first: what mends most, then the stated figure, then what lies in the
        odd one (and then is cut like another piece), is met once, is a round number, and stands
        last."""
        stated = check.stated is not None and symbol == check.stated.symbol
        times = abs(check.rest.terms.get(symbol, Exact(1)))
        place = self.resolver.places[symbol.key]
        return (
            -facts,
            stated and self._other_side_agrees(check),
            not stated,
            symbol.key[0] not in ("pieces", "units"),
            not odd,
            times != 1,
            better.denominator,
            -place.line,
            -place.column,
        )

    def _other_side_agrees(self, check: Check) -> bool:
        """Whether a square is stated, and its other side is right: then it is meant so."""
        stated = check.stated
        if stated is None or stated.key[-1] not in SIDES:
            return False
        value = self.written.get(stated.place)
        if value is None or isinstance(value, LengthValue) or value.across != value.down:
            return False
        others = [c for c in self.resolver.checks if c.stated and c is not check]
        same = [c for c in others if c.stated and c.stated.key[:-1] == stated.key[:-1]]
        return bool(same) and all(c.off() == 0 for c in same)


def near_enough(check: Check) -> bool:
    """Whether the ruler's next mark will do for what is stated: it was said to be about so much,
    or there is a root in the sum, which no ruler shows."""
    rest = check.rest.value()
    return check.rule.tolerance > 0 or (rest is not None and not rest.rational)


def _of_value(change: Change, changes: Iterable[Change]) -> Change | None:
    """The change of the same value among others."""
    return next((one for one in changes if one.place == change.place), None)


def _moved(form: Sum, value: Exact, more: Mapping[Symbol, Exact]) -> Exact:
    """What the sum comes to once the numbers are so much more."""
    for symbol, change in more.items():
        if symbol in form.terms:
            value = value + form.terms[symbol] * change
    return value


def fact(check: Check) -> object:
    """What one equation tells of: both sides of a size are one fact, and so are what a unit
    measures and what it finishes."""
    if check.stated is None:
        return check.rule.code, check.one.what, check.other.what
    key = check.stated.key
    if key[0] == "units" and key[2] in ("measure", "finished"):
        return key[:2]
    return key[:-1] if key[-1] in SIDES else key
