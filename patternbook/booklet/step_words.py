"""The sentences of a step, by what is done in it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from typing import Final, NamedTuple

from patternbook.booklet import laying, wording
from patternbook.booklet.order import Together
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Sides
from patternbook.sewing.records import (
    BorderStep,
    LinesStep,
    LineStep,
    SegmentStep,
    Step,
    StripStep,
)

TOP: Final = "Quilt top"
MEASURE: Final = "Should measure, with seam allowances"


class Fact(NamedTuple):
    """A figure of a step: the head of its row where sizes differ, and the sentence ({} stands
    for the figure) where they do not."""

    head: str
    line: str
    tell: Callable[[Step, Evidence], str]


class Words(NamedTuple):
    """What is said of one step: its heading, what is done, and its figures. `orders`: how the
    parts lie, size by size, where no one sentence says it for all."""

    title: str
    does: tuple[str, ...]
    facts: tuple[Fact, ...]
    orders: Mapping[str, str]


def words(step: Together, sizes: Sequence[Evidence], top: str | None) -> Words:
    """All that is said of it, but for pressing and the author's note."""
    kind = step.any.kind
    name = TOP if step.unit == top else wording.title(step.unit)
    return KINDS[kind](step, sizes, name)


def _measure(step: Step, known: Evidence) -> str:
    return wording.sides(step.measure, known.quilt.system)


def _sizes(step: Together, sizes: Sequence[Evidence]) -> Iterator[tuple[Evidence, Step]]:
    for known in sizes:
        if known.quilt.size in step.found:
            yield known, step.found[known.quilt.size]


CHECK: Final = Fact(MEASURE, "Should measure {} with seam allowances.", _measure)
MAKE: Final = Fact("Make", "Make {}.", lambda step, _: str(step.make))
MATCHES: Final = Fact(
    "Places in each where seams meet",
    "Places in each where seams meet: {}.",
    lambda step, _: str(step.matches),
)


def _makes(found: Iterable[tuple[Evidence, Step]]) -> tuple[Fact, ...]:
    """How many to make; of the top there is but one, which goes without saying."""
    several = any(made.unit != known.quilt.top or made.make > 1 for known, made in found)
    return (MAKE,) if several else ()


def _strips(step: Together, sizes: Sequence[Evidence], name: str) -> Words:
    """Strips joined into sets."""
    first, known = step.any, sizes[0]
    assert isinstance(first, StripStep)
    seam = wording.length(known.quilt.seam, known.quilt.system)
    strips = wording.listed(first.strips)
    does = (
        f"Lay the strips {strips} side by side in this order.",
        f"Join them right sides together along their long edges with a {seam} seam.",
    )
    sets = Fact("Make this many sets", "Make {} sets.", lambda made, _: str(made.make))
    wide = Fact(
        "Each set should measure across, with seam allowances",
        "Each set should measure {} across with seam allowances.",
        lambda made, size: wording.length(made.measure.across, size.quilt.system),
    )
    return Words(f"{name}: join the strips", does, (wide, sets), {})


def _segments(step: Together, sizes: Sequence[Evidence], name: str) -> Words:
    """Sets cut across."""
    first, system = step.any, sizes[0].quilt.system
    assert isinstance(first, SegmentStep)
    width = wording.length(first.segment, system)
    does = (
        "Straighten one end of each set.",
        f"Cut slices {width} wide across the seams, {wording.spelled(first.per_set)} from each set.",
    )
    facts = (
        Fact("Sets", "There are {} sets.", _of_segments("sets")),
        Fact("Slices to cut", "Cut {} slices.", _of_segments("cut")),
        Fact("Slices to spare", "Slices to spare: {}.", _of_segments("spare")),
        CHECK,
        Fact("Slices that are sewn on", "{} are sewn on.", lambda made, _: str(made.make)),
    )
    return Words(f"{name}: cut the sets across", does, facts, {})


def _of_segments(figure: str) -> Callable[[Step, Evidence], str]:
    return lambda step, _: str(getattr(step, figure))


def _line(step: Together, sizes: Sequence[Evidence], name: str) -> Words:
    """One row or column, and those like it."""
    first = step.any
    assert isinstance(first, LineStep)
    found = [(known, made) for known, made in _sizes(step, sizes) if isinstance(made, LineStep)]
    orders = {known.quilt.size: laying.full(made.sequence) for known, made in found}
    order, counts, listed = _order(first, [made for _, made in found], orders)
    whole = "top" if name == TOP and _alone(found) else _noun(first)
    does = (*order, *joined(first, whole))
    facts = (*counts, CHECK, *_makes(found))
    return Words(f"{name}: {_title(first, found)}", does, facts, listed)


def _noun(step: LineStep) -> str:
    return "sash row" if step.role == "sash" else step.role


def _title(step: LineStep, found: Sequence[tuple[Evidence, LineStep]]) -> str:
    noun = _noun(step)
    if _alone(found) and step.unit == found[0][0].quilt.top:
        return "join all its parts"
    if step.role == "sash":
        return "join the sash rows"
    same = {made.numbers for _, made in found}
    alike = all(len(_others(known, made)) == 1 for known, made in found)
    if alike or len(same) > 1:
        many = any(made.make > 1 for _, made in found)
        return f"join the {wording.plural(noun) if many else noun}"
    numbers = wording.listed(str(number) for number in step.numbers)
    return f"join {wording.plural(noun) if len(step.numbers) > 1 else noun} {numbers}"


def _alone(found: Sequence[tuple[Evidence, LineStep]]) -> bool:
    """Whether this one line is the whole unit, in every size."""
    return all(len(known.sewing.of(step.unit)) == 1 for known, step in found)


def _others(known: Evidence, step: LineStep) -> list[Step]:
    """The steps that join lines of the same role in the same unit."""
    return [
        other
        for other in known.sewing.of(step.unit)
        if isinstance(other, LineStep) and other.role == step.role
    ]


def _order(
    step: LineStep, found: Sequence[LineStep], orders: Mapping[str, str]
) -> tuple[tuple[str, ...], tuple[Fact, ...], Mapping[str, str]]:
    """How the parts lie: one sentence with counts by size, or an order for each size."""
    start = "From the top" if step.role == "column" else "From the left"
    if len(set(orders.values())) == 1:
        return (f"{start}: {laying.full(step.sequence)}.",), (), {}
    said = {laying.words(made.sequence) for made in found}
    if len(said) > 1:
        return (), (), orders
    several = [
        part
        for part in laying.counts(step.sequence)
        if any(laying.counts(made.sequence).get(part, 0) > 1 for made in found)
    ]
    facts = tuple(
        Fact(f"{part} in each", f"Each takes {{}} {part}.", partial(_in_each, part))
        for part in several
    )
    return (f"{start}: {said.pop()}.",), facts, {}


def _in_each(part: str, step: Step, _: Evidence) -> str:
    return str(next((taken.one for taken in step.parts if taken.part == part), 0))


def joined(step: Step, whole: str) -> tuple[str, ...]:
    """How parts are joined: in pairs, then pairs of pairs."""
    if len(step.rounds) > 1:
        waits = any(turn.odd for turn in step.rounds[:-1])
        rest = " A part left over waits for the next round." if waits else ""
        return (
            "Sew neighbours together in pairs, one pair behind the other without cutting the "
            "thread (chain piecing). Snip the pairs apart and press.",
            f"Join pairs to pairs in the same way until the {whole} is whole.{rest}",
        )
    if step.make > 1:
        return (
            "Sew them right sides together, one behind the other without cutting the thread (chain piecing). Snip apart.",
        )
    return ("Sew them right sides together.",)


def _lines(step: Together, sizes: Sequence[Evidence], name: str) -> Words:
    """Rows or columns joined."""
    first = step.any
    assert isinstance(first, LinesStep)
    found = [made for _, made in _sizes(step, sizes)]
    seams_meet = any(made.matches for made in found)
    noun = first.by.removesuffix("s")
    order = _lines_order(first)
    pins = (
        "Pin where seams meet: pressed opposite ways, they nest."
        if seams_meet
        else "No seams have to meet here.",
    )
    does = (
        *order,
        *pins,
        *joined(first, "top" if name == TOP else wording.title(step.unit).lower()),
    )
    count = Fact(
        f"{wording.capital(noun)}s to join", "", lambda made, _: str(getattr(made, "count", ""))
    )
    counts = (count,) if len({getattr(made, "count", 0) for made in found}) > 1 else ()
    facts = (*counts, *((MATCHES,) if seams_meet else ()), CHECK, *_makes(_sizes(step, sizes)))
    return Words(f"{name}: join the {first.by}", does, facts, {})


def _lines_order(step: LinesStep) -> tuple[str, ...]:
    start = "From the top" if step.by == "rows" else "From the left"
    if step.sequence:
        return (f"{start}: {laying.full(step.sequence)}.",)
    return (f"Lay the {step.by} in order as pictured.",)


def _border(step: Together, sizes: Sequence[Evidence], name: str) -> Words:
    """One pair of a border's strips."""
    first = step.any
    assert isinstance(first, BorderStep)
    system = sizes[0].quilt.system
    way = "from top to bottom" if first.pair == "sides" else "from side to side"
    does = [
        f"Measure the {name.lower()} through the middle, {way}, or take the mean of three places: "
        "that is your length."
    ]
    if first.joined:
        does.append(f"Join {first.part} strips end to end. Cut two to your length.")
    else:
        does.append(f"Cut two {first.part} to your length.")
    if first.stones:
        does.append(f"Sew {laying.part(first.stones)} to both ends of each.")
    edges = "side edges" if first.pair == "sides" else "top and bottom edges"
    does.append(
        f"Pin the middles and the ends, then between. Sew them to the {edges}, easing to fit."
    )
    about = Fact(
        "Your length should be about",
        "Your length should be about {}; cut to your own measure.",
        lambda made, _: wording.length(made.length, system) if isinstance(made, BorderStep) else "",
    )
    title = f"{name}: border {first.border}, {first.pair}"
    return Words(title, tuple(does), (about, CHECK), {})


KINDS: Final[Mapping[str, Callable[[Together, Sequence[Evidence], str], Words]]] = {
    "strips": _strips,
    "segments": _segments,
    "line": _line,
    "lines": _lines,
    "border": _border,
}

__all__ = ["CHECK", "KINDS", "MAKE", "MEASURE", "Fact", "Sides", "System", "Words", "words"]
