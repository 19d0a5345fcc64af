"""The steps: what is stitched before in grey, this panel's way in black, numbered in order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Final

from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Size
from patternbook.diagrams.quilts.ground import ground_in, lines_in, rim_in
from patternbook.diagrams.quilts.legs import Panel, Piece, Run, panels, window
from patternbook.diagrams.quilts.marks import (
    Taken,
    begun,
    clear_heads,
    disc,
    numbered,
    radius_of,
    stop,
)
from patternbook.diagrams.quilts.overview import largest
from patternbook.diagrams.quilts.paths import fine
from patternbook.diagrams.sheet import Inches, cropped, fitted
from patternbook.quilting.records import Leg, QuiltingPlan, Stage, measured
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Role

# The fewer pictures a stage has, the larger they are: one stands beside its words, two fill a row.
MOST: Final[Mapping[int, Inches]] = {1: (4.4, 4.4), 2: (3.45, 4.0)}
MANY: Final[Inches] = (3.45, 3.0)
LETTER: Final = 7.0  # points of S and E
ARROW: Final = 4.5
HOLLOW: Final[tuple[Role, Role]] = ("travel", "hollow")
CORNERS: Final = 1.3  # a square reaches so much farther than a disc
SHORT: Final = 20.0  # points: a way to the next line that needs no arrow head
APART: Final = 70.0  # points between the arrow heads of a line


def steps(size: Size, plan: QuiltingPlan) -> Iterator[Drawing]:
    """A drawing for each panel of each stage."""
    for stage, found in zip(plan.stages, panels(plan), strict=True):
        for panel in found:
            pen = fitted(_drawn(size, plan, panel), room(panel.panels), largest(size))
            yield cropped(pen, called(size.name, panel), title(panel), told(stage, panel))


def room(pictures: int) -> Inches:
    """How large each of so many pictures of a stage may be."""
    return MOST.get(pictures, MANY)


def called(size: str, panel: Panel) -> str:
    """The name of a panel's drawing."""
    return name("quilts", size, "step", str(panel.stage + 1), str(panel.number))


def title(panel: Panel) -> str:
    """`Step 1, picture 2 of 4`."""
    step = f"Step {panel.stage + 1}"
    return f"{step}, picture {panel.number} of {panel.panels}" if panel.panels > 1 else step


def told(stage: Stage, panel: Panel) -> str:
    """What the picture shows."""
    numbers = panel.numbers
    what = "areas" if any(piece.area for piece in panel.pieces) else "lines"
    several = f", {what} {numbers[0]} to {numbers[-1]} in order" if len(numbers) > 1 else ""
    return f"{title(panel)}, with the {stage.foot}{several}. S: start. E: end."


def _drawn(size: Size, plan: QuiltingPlan, panel: Panel) -> Callable[[Pen], None]:
    def draw(pen: Pen) -> None:
        box = window(plan, panel)
        ground_in(pen, size, box)
        rim_in(pen, size, "outline", box)
        lines_in(pen, (leg.path for leg in _before(plan, panel)), "stitched", box)
        _lines(pen, panel.pieces)
        taken = Taken(pen)
        _signs(pen, taken, panel)

    return draw


def _before(plan: QuiltingPlan, panel: Panel) -> Iterator[Leg]:
    """All of earlier stages, and of earlier panels of this one, that shows on the quilt."""
    earlier = plan.stages[: panel.stage]
    legs = [leg for stage in earlier for walk in stage.walks for leg in walk.legs]
    legs += [leg for piece in panel.before for leg in piece.legs]
    return (leg for leg in legs if leg.kind != "edge" and not leg.again and len(leg.path) > 1)


def _lines(pen: Pen, pieces: Sequence[Piece]) -> None:
    """What leads on lies beneath: hollow on lines, dashed along the edge."""
    legs = [(piece, leg) for piece in pieces for leg in piece.legs]
    for role in HOLLOW:
        for piece, leg in legs:
            if _role(piece, leg) == HOLLOW[0]:
                pen.line(fine(pen, leg.path), role)
    for piece, leg in legs:
        role = _role(piece, leg)
        if role == "under-binding":
            pen.line(fine(pen, leg.path), "blank")
        if role != HOLLOW[0]:
            pen.line(fine(pen, leg.path), role)


def _role(piece: Piece, leg: Leg) -> Role:
    if leg.kind == "edge":
        return "under-binding"
    if leg.kind == "step":
        return "sewing-fine"
    if leg.again or not piece.number:
        return HOLLOW[0]
    return "sewing-fine" if piece.area or piece.line else "sewing"


def _signs(pen: Pen, taken: Taken, panel: Panel) -> None:
    """Starts and ends first, then numbers where there is room, then arrow heads."""
    for run in panel.runs:
        _ends(pen, taken, run, panel)
    for spot in panel.changes:
        near = [spot, *_round(pen, spot, 9.0)]
        disc(pen, taken.best(near, radius_of("B", LETTER)), "B", LETTER)
    for piece in panel.pieces:
        if piece.number in panel.shown:
            put = begun if piece.area else numbered
            put(pen, taken, piece.path, str(piece.number))
    for piece in panel.pieces:
        if not piece.line or {piece.number, piece.number - 1} & panel.shown:
            _ways(pen, taken, piece)


def _ends(pen: Pen, taken: Taken, run: Run, panel: Panel) -> None:
    """S where the needle goes down, E where the thread is cut; a dot where it goes on."""
    which = str(run.walk + 1) if panel.walks > 1 else ""
    radius = radius_of(f"S{which}", LETTER)
    if run.starts:
        at = taken.best([run.start, *_round(pen, run.start, radius * 2.4)], radius)
        disc(pen, at, f"S{which}", LETTER, dark=True)
    else:
        taken.take(run.start, 2.5)
        pen.dot(*run.start, 5.0)
    if run.stops:
        near = [run.end, *_round(pen, run.end, radius * 2.4)]
        at = taken.best(near, radius * CORNERS)
        stop(pen, at, f"E{which}", LETTER)


def _round(pen: Pen, at: tuple[float, float], far: float) -> list[tuple[float, float]]:
    by = pen.pt(far)
    return [(at[0] + by * x, at[1] + by * y) for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1))]


def _ways(pen: Pen, taken: Taken, piece: Piece) -> None:
    """Arrow heads along a piece."""
    path = piece.path
    if not piece.number and measured(path) < pen.pt(SHORT):
        return
    number = max(1, min(12, round(measured(path) / pen.pt(APART))))
    shares = [(at + 0.62) / number for at in range(number)]
    clear_heads(pen, taken, path, "sewing", ARROW, [share for share in shares if share < 0.97])
