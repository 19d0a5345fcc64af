"""Shapes drawn in an SVG file beside the source, as closed lines: no file and no address that it
names is ever opened, and nothing in it is expanded or run."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from io import StringIO
from typing import TYPE_CHECKING, Any, Final
from xml.parsers import expat

from patternbook.source.bends import Curve, Point, area, bent, simpler

if TYPE_CHECKING:
    from svgelements import Path as SvgPath

PIXELS: Final = 96.0  # an inch of SVG
MOST_ELEMENTS: Final = 2_000
DEEPEST: Final = 30
MOST_BENDS: Final = 2_000
# How far a line may lie beside what was drawn, as a share of the whole drawing: 1/64 inch at a
# size of five feet; and how near one another, in pixels, two points are the same.
FINE: Final = 1 / 4096
SAME: Final = 1e-6
_HREF: Final = ("href", "http://www.w3.org/1999/xlink href")


class DrawingFault(Exception):
    """Why a drawing cannot be used: the code of its notice, what is wrong, what to do."""

    def __init__(self, code: str, message: str, hint: str) -> None:
        super().__init__(message)
        self.code, self.message, self.hint = code, message, hint


@dataclass(frozen=True)
class Picture:
    """What was drawn, in inches, the box around it at nought. The first curve is the shape, the
    largest that is closed; a closed curve ends where it starts."""

    across: float
    down: float
    curves: tuple[Curve, ...]


def picture(text: str) -> Picture:
    """The lines of an SVG file; DrawingFault where it has none, or is not safe to read."""
    look_through(text)
    curves = _lines(text)
    closed = [curve for curve in curves if curve[0] == curve[-1] and abs(area(curve)) > 1]
    if not closed:
        hint = "Draw the outline of the shape as one closed line."
        raise DrawingFault("drawing-shape", "holds no closed shape", hint)
    shape = max(closed, key=lambda curve: abs(area(curve)))
    xs, ys = zip(*(point for curve in curves for point in curve), strict=True)
    left, top = min(xs), min(ys)
    across, down = max(xs) - left, max(ys) - top
    ordered = (shape, *(curve for curve in curves if curve is not shape))
    lines = (
        simpler([((x - left) / PIXELS, (y - top) / PIXELS) for x, y in curve], _fine(across, down))
        for curve in ordered
    )
    return Picture(across / PIXELS, down / PIXELS, tuple(lines))


def _fine(across: float, down: float) -> float:
    return max(across, down) / PIXELS * FINE


def look_through(text: str) -> None:
    """Refuse what a drawing has no need of, before anything else reads it."""
    parser = expat.ParserCreate(namespace_separator=" ")
    watch = _Watch()
    parser.StartDoctypeDeclHandler = watch.doctype
    parser.EntityDeclHandler = watch.entity
    parser.StartElementHandler = watch.start
    parser.EndElementHandler = watch.end
    try:
        parser.Parse(text, True)
    except expat.ExpatError as fault:
        why = expat.ErrorString(fault.code)
        message = f"is no SVG that can be read: line {fault.lineno}, {why}"
        raise DrawingFault("drawing-unreadable", message, "Save it as SVG once more.") from None
    if not watch.svg:
        message = "is no SVG: its outermost element is not <svg>"
        raise DrawingFault("drawing-unreadable", message, "Save it as SVG.")


class _Watch:
    """Looks at every element as it passes."""

    def __init__(self) -> None:
        self.svg, self.elements, self.deep = False, 0, 0

    def doctype(self, _name: str, _system: str | None, _public: str | None, subset: int) -> None:
        if subset:
            _unsafe("declares entities of its own", "Save it as plain SVG.")

    def entity(self, *_declared: object) -> None:
        _unsafe("declares entities of its own", "Save it as plain SVG.")

    def start(self, name: str, attributes: dict[str, str]) -> None:
        tag = name.rpartition(" ")[2]
        self.elements, self.deep = self.elements + 1, self.deep + 1
        if self.elements == 1:
            self.svg = tag == "svg"
        if self.elements > MOST_ELEMENTS or self.deep > DEEPEST:
            _unsafe("has far more parts than an outline needs", "Keep only the shape's outline.")
        if tag == "use":
            _unsafe("shows copies of its parts (<use>)", "Turn the copies into paths.")
        leads = next((attributes[key] for key in _HREF if key in attributes), "#")
        if not leads.startswith("#") and tag != "a":
            shown = leads if len(leads) <= 60 else f"{leads[:60]}…"
            _unsafe(f"takes in something else ({shown})", "Draw the outline itself as a path.")

    def end(self, _name: str) -> None:
        self.deep -= 1


def _unsafe(message: str, hint: str) -> None:
    raise DrawingFault("drawing-unsafe", message, hint)


def _lines(text: str) -> list[Curve]:
    """Every line of every shape that can be seen, all transforms worked in."""
    from svgelements import SVG, Path, Shape

    try:
        elements = SVG.parse(StringIO(text), reify=True, ppi=PIXELS).elements()
        paths = [Path(one) for one in elements if isinstance(one, Shape) and _seen(one)]
        return [curve for path in paths for curve in _curves(path)]
    # What the library makes of odd numbers and paths is not of one kind.
    except (ArithmeticError, AttributeError, LookupError, TypeError, ValueError) as fault:
        message = f"has a part that cannot be read as a shape ({type(fault).__name__})"
        hint = "Draw it as plain paths."
        raise DrawingFault("drawing-unreadable", message, hint) from None


def _seen(shape: Any) -> bool:  # noqa: ANN401 # the library's shapes share no typed face
    hidden = shape.values.get("visibility") == "hidden" or shape.values.get("display") == "none"
    return not hidden and (shape.fill.value is not None or shape.stroke.value is not None)


def _curves(path: SvgPath) -> Iterator[Curve]:
    """The lines of one path, closed where they are filled or come back to where they start."""
    if len(path) > MOST_BENDS:
        _unsafe("has far more bends than an outline needs", "Simplify the line.")
    filled = path.fill.value is not None
    for part in path.as_subpaths():
        points = [point for bend in part for point in _along(bend)]
        if not all(math.isfinite(number) for point in points for number in point):
            raise DrawingFault("drawing-unreadable", "has a point nowhere", "Draw it anew.")
        if len(points) < 2:
            continue
        if math.dist(points[0], points[-1]) < SAME:
            points[-1] = points[0]
        elif filled:
            points.append(points[0])
        yield tuple(points)


def _along(bend: Any) -> Iterator[Point]:  # noqa: ANN401 # the library's bends share no typed face
    """The points of one bend behind its start."""
    from svgelements import Arc, CubicBezier, QuadraticBezier

    if isinstance(bend, Arc):
        for curve in bend.as_cubic_curves():
            yield from bent(curve)
    elif isinstance(bend, (CubicBezier, QuadraticBezier)):
        yield from bent(bend)
    elif bend.end is not None:
        yield float(bend.end.x), float(bend.end.y)
