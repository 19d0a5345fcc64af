"""What a sewing method may ask of the quilt around it, and the sums it hands back to be held
equal: the face between the methods and the resolver."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Literal, NamedTuple, Protocol, TypeVar

from patternbook.exact import Exact
from patternbook.linear import Key, Sum, total
from patternbook.methods.made import Made, Outline, Placed, Sides, Turn
from patternbook.methods.written import WrittenMade
from patternbook.notice import Notice, Place
from patternbook.value import Cell, CellsValue, CountValue, PerSize, SizeValue

T = TypeVar("T")
Diagonal = Literal["once", "twice"]


class Span(NamedTuple):
    """Finished width and length as sums, not yet solved."""

    across: Sum
    down: Sum


class Term(NamedTuple):
    """So many of one part in a row: `12 A`, each so long."""

    label: str
    times: int
    each: Sum


@dataclass(frozen=True)
class Tally:
    """A sum that can be written out: what it adds up to, and its terms in order."""

    what: str
    terms: tuple[Term, ...]
    place: Place | None = None

    def sum(self) -> Sum:
        """All terms added."""
        return self._sum

    @cached_property
    def _sum(self) -> Sum:
        return total((term.times, term.each) for term in self.terms)


def tally(what: str, parts: Iterable[tuple[str, Sum]], place: Place | None = None) -> Tally:
    """A tally of parts one after the other, neighbours of one name counted together."""
    terms: list[Term] = []
    for label, each in parts:
        if terms and terms[-1].label == label and terms[-1].each == each:
            terms[-1] = terms[-1]._replace(times=terms[-1].times + 1)
        else:
            terms.append(Term(label, 1, each))
    return Tally(what, tuple(terms), place)


@dataclass(frozen=True)
class Rule:
    """What a failing equation is called: its notice's code, its rule, and what to try."""

    code: str
    rule: str
    hint: str | None = None
    tolerance: Fraction = field(default=Fraction(0))


def here(value: PerSize[T] | None, size: str) -> T | None:
    """What is stated for one size; None where nothing is."""
    return value.at(size) if value is not None else None


class Picture(Protocol):
    """A drawing beside the source, in inches."""

    @property
    def across(self) -> float: ...
    @property
    def down(self) -> float: ...


class World(Protocol):
    """One size of the quilt, as a method sees it while it is being worked out."""

    @property
    def size(self) -> str:
        """The size's name."""

    @property
    def seam(self) -> Sum:
        """One seam allowance."""

    def span(self, part: str, turn: Turn, place: Place | None) -> Span:
        """A part's finished width and length as it lies."""

    @property
    def unit(self) -> Literal["in", "cm"]:
        """What the author's numbers count."""

    def raw(self, part: str, place: Place | None) -> Span:
        """A part from raw edge to raw edge: a piece as it is cut, a unit with its seams."""

    def sized(self, part: str) -> bool:
        """Whether the size of a part is fixed by itself: stated, or a unit's own."""

    def diagonal(self, part: str) -> Diagonal | None:
        """How often a piece's square is cut on the diagonal."""

    def template(self, part: str) -> str | None:
        """The shape of a piece that no ruler cuts, in a word; None for all others."""

    def radius(self, part: str) -> Sum | None:
        """The finished radius that is stated of a piece's curve; None where none is."""

    def triangle(self, diagonal: Diagonal) -> Fraction:
        """What a square loses between its cut side and the finished side of its triangles."""

    def trimming(self, unit: WrittenMade) -> Fraction:
        """How much larger than needed a unit is sewn, to be trimmed."""

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
        """A unit that may be trimmed: at most as large as its pieces let it be. What nothing
        else fixes is as large as that; more than `trimmed` to cut away is told, and is an error
        where that would cut off its `points`."""

    def within(self, one: Tally, room: Tally, rule: Rule) -> None:
        """Tell where one sum is longer than another that it must keep within."""

    def rounds_up(self, part: str) -> None:
        """A piece that is trimmed once it is sewn: where its size comes between two marks of the
        ruler, it is cut at the next one up."""

    def shape(self, part: str) -> Outline | None:
        """The seam lines of a piece that is cut by a template, in the box around it as made (for
        a drawing within 1/64 inch); None where there is none, or its size is not known yet."""

    def picture(self, name: str) -> Picture | None:
        """A drawing beside the source; None where it could not be read, which has been told."""

    def strip_width(self, part: str, place: Place | None) -> Sum:
        """The finished width of a strip; also of a patch or unit laid as one."""

    def is_strip(self, part: str) -> bool:
        """Whether the part is cut the whole width of the cloth."""

    def text_of(self, part: str, key: str) -> str | None:
        """The value of a key of a piece or unit as it is typed; None where it is not stated."""

    def exists(self, part: str) -> bool:
        """Whether a piece or a unit is called that."""

    def is_unit(self, part: str) -> bool:
        """Whether the part is sewn rather than cut."""

    def patches_of(self, part: str) -> tuple[Placed, ...]:
        """Every patch of a unit in its place, in the unit's own measures. Lengths are solved."""

    def join(self, part: str) -> str:
        """How strips of a piece are joined end to end: diagonal, straight or none."""

    def wanted(self, name: str) -> SizeValue | None:
        """The finished size that is stated of a unit; of the top also that of the quilt."""

    def strip_length(self, part: str) -> Fraction:
        """How long a strip of this piece's cloth is."""

    def number(self, value: PerSize[CountValue] | None, what: str, least: int = 0) -> int | None:
        """A stated whole number in this size, None where not stated or at fault (told)."""

    def laid(self, cells: CellsValue) -> tuple[Cell, ...]:
        """The cells written out one by one; none where they are at fault, which is told."""

    def lays(self, number: int, place: Place | None) -> bool:
        """Count so many cells as laid in this size; False (told once) where they are too many."""

    def place_of(self, part: str, key: str) -> Place | None:
        """Where a key of a piece or unit has its value; None where it is not stated."""

    def given(self, key: Key, number: Fraction, place: Place | None = None) -> Sum:
        """A number of the author's as a symbol, so that what checks it can be told."""

    def unknown(self, key: Key) -> Sum:
        """A length that the equations are to find."""

    def equal(self, one: Tally, other: Tally, rule: Rule) -> None:
        """Hold two sums equal; `one` is blamed where they are not."""

    def state(
        self, key: Key, worked_out: Tally, number: Fraction, rule: Rule, place: Place
    ) -> None:
        """A stated figure beside the sum it should equal: a source only where nothing else is."""

    def known(self, form: Sum) -> Exact | None:
        """What the sum comes to as far as the equations go by now."""

    def error(
        self, code: str, rule: str | None, message: str, place: Place | None, hint: str | None
    ) -> None:
        """Tell the author of a fault in this size."""

    def hopeless(self, name: str) -> None:
        """Leave a unit out: why it cannot be worked out has been told, nothing follows it."""

    def tell(self, notice: Notice) -> None:
        """Tell the author something."""

    def kept(self, name: str, make: Callable[[], T]) -> T:
        """What a method has made for a unit before, or makes now."""

    def length(self, form: Sum) -> Exact:
        """A sum once all is solved (nought where nothing fixes it, which has been told)."""


class Need(NamedTuple):
    """What `need` units take: parts of each name, and lengths of strip (use, letter, length,
    number, whether each takes a whole strip)."""

    parts: Mapping[str, int]
    runs: Sequence[StripNeed]


class StripNeed(NamedTuple):
    """Lengths of one strip piece that a unit takes."""

    letter: str
    use: str
    length: Exact
    number: int
    whole: bool


class MadeUnit(NamedTuple):
    """A unit whose lengths are known."""

    placed: tuple[Placed, ...]
    made: Made


class Work(Protocol):
    """How one sewing method is worked out. `unit` is always of the method's own Written model."""

    def span(self, name: str, unit: WrittenMade, world: World) -> tuple[Tally, Tally]:
        """Add the unit's equations; return its finished width and length as written-out sums."""

    def need(self, name: str, unit: WrittenMade, world: World, units: int) -> Need:
        """What so many units take. Lengths are solved."""

    def patches(self, name: str, unit: WrittenMade, world: World) -> Mapping[str, int]:
        """How many of each part lie in one unit."""

    def make(self, name: str, unit: WrittenMade, world: World, units: int) -> MadeUnit:
        """The unit with its parts in place. Lengths are solved."""


def sides(span: Span, world: World) -> Sides:
    """The solved width and length."""
    return Sides(world.length(span.across), world.length(span.down))
