"""The steps in words beside their pictures: start where, go where, stop where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import Final, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.book import Figure
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.measures import in_shop, told, way, where
from patternbook.diagrams.quilts.legs import Panel, Piece, Run, panels, window
from patternbook.diagrams.quilts.steps import called
from patternbook.inch import System
from patternbook.quilting.records import Foot, LegKind, QuiltingPlan, Stage, measured

PURPOSE: Final = {
    "anchor": "hold the layers together",
    "lines": "the designs",
    "free motion": "the designs sewn freely",
    "border": "the border",
}
SEWN: Final[dict[Foot, str]] = {
    "walking foot": "walking foot",
    "ruler": "ruler foot and ruler",
    "free motion": "free-motion foot, feed dogs down",
}
FEW: Final = 2  # threads of a panel that are told line by line
FEW_LETTERS: Final = 6  # letters that are told one by one
MANY_WAYS: Final = 8
MANY_RUNS: Final = 6  # threads of a panel, above which they are told together
SHORT: Final = 3  # sentences of a thread that is told in one line
PLACES: Final[dict[LegKind, str]] = {
    "ditch": "in the ditch",
    "beside": "beside the seam",
    "marked": "on the marked line",
    "edge": "along the edge",
    "step": "across",
    "fill": "",
}


@dataclass(frozen=True)
class Shown:
    """One picture of a step, and the words that go with it."""

    title: str
    figure: Figure | None
    words: tuple[str, ...]


class Step(NamedTuple):
    """One stage: what it is for, what to know of it, its pictures."""

    title: str
    intro: tuple[str, ...]
    shown: tuple[Shown, ...]


def steps(quilts: QuiltBook, size: str) -> tuple[Step, ...]:
    """All stages of one size, in the order of work."""
    plan = quilts.plans[size]
    return tuple(
        Step(
            f"Step {number}: {PURPOSE[stage.name]} ({SEWN[stage.foot]})",
            tuple(_intro(quilts, plan, number - 1, found)),
            tuple(_shown(quilts, size, panel) for panel in found),
        )
        for number, (stage, found) in enumerate(
            zip(plan.stages, panels(plan), strict=True), start=1
        )
    )


def _intro(
    quilts: QuiltBook, plan: QuiltingPlan, number: int, found: Sequence[Panel]
) -> Iterator[str]:
    stage = plan.stages[number]
    yield _about(stage, found)
    changes = sum(1 for change in plan.sums.changes if change.stage == number)
    long = sum(measured(leg.path) for walk in stage.walks for leg in walk.legs)
    planned = wording.counted(len(stage.walks), "planned start")
    on_the_way = wording.counted(changes, "bobbin change") if changes else "no bobbin change"
    least = (
        " (no way straight on over the crossings takes less)"
        if stage.proven and stage.extra > 0
        else ""
    )
    extra = f", of it {in_shop(stage.extra, quilts.system)} to come from one line to the next"
    yield (
        f"{wording.capital(planned)}, {on_the_way} on the way. About "
        f"{in_shop(long, quilts.system)} of stitching{extra if stage.extra else ''}{least}."
    )


def _about(stage: Stage, found: Sequence[Panel]) -> str:
    if stage.name == "anchor":
        return (
            "The long lines come first, so that nothing can shift later. Follow the numbers; go "
            "row by row and turn the quilt as seldom as you can."
        )
    if any(piece.line for panel in found for piece in panel.pieces):
        some = any(len(panel.shown) < len(panel.numbers) for panel in found)
        return (
            "Sew line by line, to and fro, as the arrows show. At the end of a line turn, and sew "
            "along the edge to the next one; the binding will cover that."
            + (" Not every line has its number written." if some else "")
        )
    return (
        "The numbers stand where the needle begins each area. Finish an area before you go on. "
        "A hollow line leads to the next one over stitches that are there already, or in a ditch."
    )


def _shown(quilts: QuiltBook, size: str, panel: Panel) -> Shown:
    figure = quilts.book.figure(called(size, panel))
    bare = Figure(figure.name, figure.alt, "", figure.inches) if figure else None
    title = f"Picture {panel.number} of {panel.panels}" if panel.panels > 1 else ""
    title += _part(quilts, size, panel) if title else ""
    return Shown(title, bare, tuple(_told(quilts, size, panel)))


def _part(quilts: QuiltBook, size: str, panel: Panel) -> str:
    """Which part of the top the picture shows, where it does not show it all."""
    plan, system = quilts.plans[size], quilts.system
    left, top, right, low = plan.top.edge.bounds
    x0, y0, x1, y1 = window(plan, panel)
    parts = (
        _between(y0 - top, y1 - top, low - top, ("upper", "lower", "top"), system),
        _between(x0 - left, x1 - left, right - left, ("left", "right", "left"), system),
    )
    shown = wording.listed(part for part in parts if part)
    return f": {shown}" if shown else ""


def _between(
    start: float, end: float, side: float, names: tuple[str, str, str], system: System
) -> str:
    """`the upper 20″`, `12 to 30″ from the left edge`; nothing where it is the whole side."""
    if not start:
        return "" if end == side else f"the {names[0]} {told(end, system)}"
    if end == side:
        return f"the {names[1]} {told(side - start, system)}"
    return f"{told(start, system)} to {told(end, system)} from the {names[2]} edge"


def _told(quilts: QuiltBook, size: str, panel: Panel) -> Iterator[str]:
    plan, system = quilts.plans[size], quilts.system
    alone = [run for run in panel.runs if run.starts and run.stops]
    if len(alone) > MANY_RUNS:
        yield from _each_alone(plan, alone)
    for run in panel.runs:
        if len(alone) > MANY_RUNS and run in alone:
            continue
        which = str(run.walk + 1) if panel.walks > 1 else ""
        ways = list(_ways(plan, run))
        if run.starts:
            ways.insert(0, f"S{which}: start {where(run.start, plan.top, system)}")
        if run.stops:
            ways.append(f"E{which}: stop {where(run.end, plan.top, system)}; cut the thread")
        if len(panel.runs) > FEW and run.starts and run.stops and len(ways) == SHORT:
            yield ". ".join((*ways[:-1], ways[-1].partition(";")[0])) + "."
            continue
        if not run.starts:
            yield "Go on from the dot."
        yield from (f"{way}." for way in ways)
    for spot in panel.changes:
        yield f"B: fill in a new bobbin {where(spot, plan.top, system)}."
    if not panel.runs[-1].stops:
        yield "Leave the needle down and go on in the next picture."


def _each_alone(plan: QuiltingPlan, runs: Sequence[Run]) -> Iterator[str]:
    """Many short threads, told together."""
    areas = [piece for run in runs for piece in run.pieces if piece.number]
    first, last = runs[0].walk + 1, runs[-1].walk + 1
    yield (
        f"{_areas(plan, areas) if areas[0].area else _numbers(areas)}. Each of S{first} to "
        f"S{last} is a start of its own; stop at the E of the same number and cut the thread."
    )


def _ways(plan: QuiltingPlan, run: Run) -> Iterator[str]:
    """Numbers that are alike together: of lines the way, of areas the letter."""
    numbered = [piece for piece in run.pieces if piece.number]
    areas = [piece for piece in numbered if piece.area]
    if areas:
        yield _areas(plan, areas)
        return
    for place, group in groupby(numbered, key=lambda piece: PLACES[piece.legs[0].kind]):
        pieces = list(group)
        yield f"{_numbers(pieces)} {place}".strip() + f": {_directions(pieces)}"


def _numbers(pieces: Sequence[Piece]) -> str:
    first, last = pieces[0].number, pieces[-1].number
    joint = "and" if last == first + 1 else "to"
    return str(first) if first == last else f"{first} {joint} {last}"


def _areas(plan: QuiltingPlan, pieces: Sequence[Piece]) -> str:
    """The letters in the order of their numbers: `1 to 4 Q, 5 R`; one alone with its design."""
    letters = [(letter, list(same)) for letter, same in groupby(pieces, key=_letter)]
    if len(letters) > FEW_LETTERS:
        several = wording.listed(dict.fromkeys(sorted(letter for letter, _ in letters)))
        return f"{_numbers(pieces)}: areas {several}, in the order of the numbers"
    if len(letters) == 1:
        return f"{_numbers(pieces)}: {letters[0][0]}, {_design(plan, letters[0][0])}"
    return ", ".join(f"{_numbers(same)} {letter}" for letter, same in letters)


def _letter(piece: Piece) -> str:
    return piece.area.partition(" ")[0]


def _design(plan: QuiltingPlan, letter: str) -> str:
    return next((one.design for one in plan.fills if one.area.letter == letter), "")


def _directions(pieces: Sequence[Piece]) -> str:
    """`right`, `right and left in turn`, `down, right, up`."""
    ways = [way(piece.path) or "round" for piece in pieces]
    if len(ways) > 2 and len(set(ways)) == 2 and all(one != other for one, other in pairwise(ways)):
        return f"{ways[0]} and {ways[1]} in turn"
    counted = [(word, len(list(same))) for word, same in groupby(ways)]
    if len(counted) > MANY_WAYS:
        return "as the arrows show"
    return ", ".join(word if number == 1 else f"{number} × {word}" for word, number in counted)
