"""Patterns that the tests draw, and readers of what was drawn."""

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from patternbook.diagrams import drawings, drawn_from
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.shape import holds
from patternbook.diagrams.sheet import Box, reach
from patternbook.edition.pipeline import Examined, examine
from patternbook.strokes.stroke import Arrow, Drawing, Fill, Label, Line, Patch, Stroke
from tests.support import ROOT

DEMOS = ("patterns/late-returns/pattern.yaml", "patterns/tea-at-four/pattern.yaml")
KINDS = tuple(
    f"tests/data/kinds/{kind}.yaml"
    for kind in (
        "01-strip",
        "03-rail-fence",
        "05-nine-patch",
        "06-coins",
        "08-log-cabin",
        "10-pinwheel",
        "11-flying-geese",
        "13-square-in-square",
        "14-irish-chain",
        "15-cut-apart-nine",
        "16-plus",
        "17-panel",
        "18-sampler",
        "19-on-point",
        "20-strip-race",
        "21-postage-stamp",
        "22-churn-dash",
        "23-curves",
        "24-hexagons",
    )
)
METRIC = "tests/data/more/metric.yaml"
ALL = (*DEMOS, *KINDS, METRIC)


@cache
def examined(source: str) -> Examined:
    """What is known of a source of the repository."""
    return examine(ROOT / source, source)


@cache
def drawn(source: str) -> dict[str, Drawing]:
    """All its drawings by name."""
    known = examined(source)
    assert known.heading is not None
    return dict(drawings(known.heading, known.sizes))


@cache
def pattern_of(source: str) -> Pattern:
    """What its drawings are made from."""
    known = examined(source)
    assert known.heading is not None
    return drawn_from(known.heading, known.sizes)


def labels(drawing: Drawing) -> list[Label]:
    return [stroke for stroke in drawing.strokes if isinstance(stroke, Label)]


def words(drawing: Drawing) -> list[str]:
    return [label.text for label in labels(drawing)]


def patches(drawing: Drawing) -> list[Patch]:
    return [stroke for stroke in drawing.strokes if isinstance(stroke, Patch)]


def box(stroke: Stroke, drawing: Drawing) -> Box:
    return reach(stroke, 1 / 72 / drawing.scale)


def area(patch: Patch) -> float:
    """By the shoelace sum."""
    corners = zip(patch.points, (*patch.points[1:], patch.points[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in corners)) / 2


def meet(one: Box, other: Box, slack: float) -> bool:
    """Whether two boxes share more than `slack` in both directions."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide > slack and high > slack


def clashes(drawing: Drawing) -> Iterator[tuple[str, str]]:
    """Words that run into one another."""
    boxes = [(label.text, box(label, drawing)) for label in labels(drawing)]
    for (one, here), (other, there) in combinations(boxes, 2):
        if meet(here, there, 0.5 / 72 / drawing.scale):
            yield one, other


def covered(drawing: Drawing) -> Iterator[str]:
    """Words that something is painted over."""
    for number, label in enumerate(drawing.strokes):
        if not isinstance(label, Label):
            continue
        here = box(label, drawing)
        for stroke in drawing.strokes[number + 1 :]:
            opaque = isinstance(stroke, Arrow) or (isinstance(stroke, Patch) and stroke.fill)
            if opaque and meet(here, box(stroke, drawing), 0.8 / 72 / drawing.scale):
                if isinstance(stroke, Patch) and not _over(stroke, here):
                    continue
                yield label.text


def _over(patch: Patch, words_: Box) -> bool:
    """Whether a patch lies over words, not its box alone."""
    left, top, right, low = words_
    corners = ((left, top), (right, top), (right, low), (left, low))
    inside = any(holds(patch.points, corner) for corner in corners)
    return inside or any(left < x < right and top < y < low for x, y in patch.points)


def told(drawing: Drawing) -> str:
    """A drawing as text, one stroke a line, to be read and compared."""
    wide, high = drawing.inches
    lines = [f"{drawing.name}: {drawing.title}", drawing.alt, f"{wide:.2f} × {high:.2f} in"]
    return "\n".join([*lines, *(_line(stroke) for stroke in drawing.strokes)]) + "\n"


def _line(stroke: Stroke) -> str:
    match stroke:
        case Label():
            look = f" {stroke.anchor} {stroke.weight} {stroke.angle:g}°"
            return f"label {stroke.x:.2f},{stroke.y:.2f} {stroke.text!r} {stroke.size:g}{look}"
        case Patch():
            return f"patch {_points(stroke.points)} {_fill(stroke.fill)} {stroke.outline}"
        case Line() | Arrow():
            kind = "line" if isinstance(stroke, Line) else f"arrow {stroke.heads}"
            return f"{kind} {_points(stroke.points)} {stroke.role}"


def _points(points: tuple[tuple[float, float], ...]) -> str:
    first = [f"{x:.2f},{y:.2f}" for x, y in points[:4]]
    more = [f"… {len(points)} corners"] if len(points) > 4 else []
    return " ".join([*first, *more])


def _fill(fill: Fill | None) -> str:
    if fill is None:
        return "open"
    return fill.colour + (f" hatched {fill.hatch.angles}" if fill.hatch else "")
