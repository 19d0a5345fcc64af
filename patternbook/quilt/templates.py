"""Templates as they are written: the finished size of each shape, its seam lines once all lengths
are known, the cloth it is cut from, and what of it cannot be."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.exact import ROOT3, Exact
from patternbook.inch import TOLERANCE, System, ruler_up
from patternbook.linear import Sum
from patternbook.methods.made import Sides
from patternbook.methods.world import Rule, Span, Tally, Term, World, here
from patternbook.notice import Place
from patternbook.quilt import template as shapes
from patternbook.quilt.cut_line import box, cut_line
from patternbook.quilt.records import CutSize
from patternbook.quilt.template import HEXAGONS, KINDS, Kind, Template
from patternbook.source.bends import simpler
from patternbook.source.cloth import WrittenPiece
from patternbook.source.svg import Picture
from patternbook.value import CutValue, LengthValue

FINISHED: Final = Rule(
    "cut-finished", "R13", "Leave `finished` out: the template's own figures say it.", TOLERANCE
)
# A square that is folded round the paper of a hexagon: both points and three allowances (source
# beside the tests); two still hold, with less to fold.
WRAP: Final = 3
LEAST_WRAP: Final = 2
# Lengths that come from a curve in floats are taken for the mark this close below them.
NEAR: Final = Fraction(1, 10_000)
WANTED: Final[Mapping[Kind, str]] = {
    "quarter circle": "radius",
    "quarter hollow": "radius",
    "hexagon": "side",
    "half hexagon": "side",
    "outline": "outline",
    "drawing": "drawing",
}
EXAMPLES: Final = {
    "radius": "radius: 4",
    "side": "side: 1 1/2",
    "outline": "outline: [0 x 0, 6 x 0, 0 x 4]",
    "drawing": "drawing: shapes/pear.svg",
}


def kind_of(piece: WrittenPiece | None) -> Kind | None:
    """The shape that a piece is cut by; None for squares, rectangles and strips."""
    if piece is None or piece.template is None:
        return None
    return next(kind for kind in KINDS if kind == piece.template)


def fixed(piece: WrittenPiece) -> bool:
    """Whether the template's own figures say how large it is finished."""
    kind = kind_of(piece)
    return kind not in (None, "quarter hollow") and (
        kind != "quarter circle" or piece.radius is not None
    )


def template_span(letter: str, piece: WrittenPiece, world: World) -> Span | None:
    """The finished width and length that the template says; None where cut or place says it."""
    kind = kind_of(piece)
    if kind is None:
        return None
    fault = _unwritten(letter, piece, kind, world.size)
    if fault is not None:
        world.error("template-figure", "R13", *fault)
        world.hopeless(letter)
        return Span(Sum.of(0), Sum.of(0))
    span = _SPANS[kind](letter, piece, world)
    stated = here(piece.finished, world.size)
    if span is not None and stated is not None:
        for side, form in zip(("across", "down"), span, strict=True):
            number = world.given(
                ("pieces", letter, "stated finished", side), getattr(stated, side), stated.place
            )
            one = Tally(f"{letter} finishes", (Term(kind, 1, form),), piece.place)
            world.equal(Tally("stated", (Term("", 1, number),), stated.place), one, FINISHED)
    return span


def _unwritten(
    letter: str, piece: WrittenPiece, kind: Kind, size: str
) -> tuple[str, Place | None, str] | None:
    """What keeps the template from being drawn: the words, the place, the hint."""
    wanted = WANTED[kind]
    held = getattr(piece, wanted)
    stated = held if wanted == "drawing" else here(held, size)
    cut = here(piece.cut, size)
    if kind == "quarter circle" and stated is None:
        stated = cut or here(piece.finished, size)
    if stated is None:
        hint = f"Write `{EXAMPLES[wanted]}`."
        return f"{letter} is cut by a template ({kind}) and has no {wanted}.", piece.place, hint
    if here(piece.diagonal, size) is not None:
        hint = "Leave `diagonal` or `template` out."
        return f"{letter} has a template and is cut on the diagonal.", piece.place, hint
    if cut is not None and cut.down == "WOF":
        hint = "Write the size of the cloth that one is cut from, or leave `cut` out."
        return f"{letter} has a template and is a whole strip.", cut.place, hint
    if wanted == "outline":
        fault = _no_shape([(point.across, point.down) for point in here(piece.outline, size) or ()])
        if fault:
            hint = "Write the corners one after the other, all the way round."
            return f"the outline of {letter} {fault}.", piece.place, hint
    return None


Corners = Sequence[tuple[Fraction, Fraction]]


def _no_shape(corners: Corners) -> str | None:
    """Why these corners are no shape."""
    if len(corners) < 3:
        return f"has {len(corners)} corners; three are the fewest"
    sides = list(zip(corners, (*corners[1:], corners[0]), strict=True))
    if any(start == end for start, end in sides):
        return "has one corner twice in a row"
    if len(shapes.polygon(corners).corners) < 3:
        return "encloses nothing"
    for one, (a, b) in enumerate(sides):
        for other, (c, d) in enumerate(sides):
            apart = (other - one) % len(sides) not in (0, 1, len(sides) - 1)
            if apart and _cross(a, b, c, d):
                return "crosses itself"
    return None


def _cross(*points: tuple[Fraction, Fraction]) -> bool:
    """Whether the line from the first to the second meets that from the third to the fourth."""
    a, b, c, d = points
    return _side(a, b, c) * _side(a, b, d) <= 0 and _side(c, d, a) * _side(c, d, b) <= 0


def _side(
    a: tuple[Fraction, Fraction], b: tuple[Fraction, Fraction], point: tuple[Fraction, Fraction]
) -> Fraction:
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _quarter(letter: str, piece: WrittenPiece, world: World) -> Span | None:
    """As large as its radius; where none is stated, as its cut says."""
    if here(piece.radius, world.size) is None:
        return None
    radius = _given("radius", letter, piece, world)
    return Span(radius, radius)


def _hexagon(letter: str, piece: WrittenPiece, world: World) -> Span:
    side = _given("side", letter, piece, world)
    width = ROOT3 / (2 if kind_of(piece) == "half hexagon" else 1)
    return Span(side * width, side * 2)


def _outline(letter: str, piece: WrittenPiece, world: World) -> Span:
    corners = here(piece.outline, world.size) or ()
    outline = shapes.polygon([(point.across, point.down) for point in corners])
    sides = (max(corner[axis] for corner in outline.corners) for axis in (0, 1))
    place = corners[0].place
    return Span(
        *(
            world.given(("pieces", letter, "outline", word), side.fraction, place)
            for word, side in zip(("across", "down"), sides, strict=True)
        )
    )


def _drawing(letter: str, piece: WrittenPiece, world: World) -> Span:
    """As large as the cut says; the side that it leaves open in proportion; else as drawn."""
    picture = world.picture(str(piece.drawing))
    if picture is None:  # which has been told where it was read
        world.hopeless(letter)
        return Span(Sum.of(0), Sum.of(0))
    scale = 1.0 if world.unit == "in" else 2.54
    own = picture.across * scale, picture.down * scale
    cut = here(piece.cut, world.size)
    asked = (cut.across, cut.down) if cut is not None else ("fit", "fit")
    shares = [side / drawn for side, drawn in zip(asked, own, strict=True) if side != "fit"]  # type: ignore[operator] # the strip was refused
    larger = float(shares[0]) if shares else 1.0
    sides = []
    for word, side, drawn in zip(("across", "down"), asked, own, strict=True):
        number = side if isinstance(side, Fraction) else _sixty_fourth(drawn * larger)
        place = cut.place if cut is not None else piece.place
        sides.append(world.given(("pieces", letter, "cut", word), number, place))
    return Span(*sides)


def _sixty_fourth(number: float) -> Fraction:
    return Fraction(max(1, round(number * 64)), 64)


_SPANS: Final[Mapping[Kind, Callable[[str, WrittenPiece, World], Span | None]]] = {
    "quarter circle": _quarter,
    "quarter hollow": lambda *_: None,
    "hexagon": _hexagon,
    "half hexagon": _hexagon,
    "outline": _outline,
    "drawing": _drawing,
}


def _given(word: str, letter: str, piece: WrittenPiece, world: World) -> Sum:
    stated: LengthValue | None = here(getattr(piece, word), world.size)
    if stated is None:  # which has been told
        return Sum.of(0)
    return world.given(("pieces", letter, word), stated.number, stated.place)


def template(
    piece: WrittenPiece, box: Sides, size: str, picture: Picture | None
) -> Template | None:
    """The template of a piece whose finished width and length are known; None where it has none
    or cannot have one, which is told."""
    kind = kind_of(piece)
    if kind is None or min(box) <= 0:
        return None
    radius, side = here(piece.radius, size), here(piece.side, size)
    if kind == "drawing":
        return _drawn(box, picture) if picture else None
    if kind == "outline":
        corners = here(piece.outline, size) or ()
        sew = shapes.polygon([(point.across, point.down) for point in corners])
        return Template(kind, sew)
    if kind in HEXAGONS and side is not None:
        make = shapes.hexagon if kind == "hexagon" else shapes.half_hexagon
        return Template(kind, make(Exact(side.number)), side=Exact(side.number))
    round_ = Exact(radius.number) if radius is not None else box.across
    if kind == "quarter hollow" and (radius is None or min(box) <= round_):
        return None
    hollow = kind == "quarter hollow"
    sew = shapes.quarter_hollow(box, round_) if hollow else shapes.quarter_circle(round_)
    return Template(kind, sew, radius=round_)


def _drawn(box: Sides, picture: Picture) -> Template:
    """The drawing stretched to its box; its seam line with no more corners than 1/64 asks for."""
    wide, high = float(box.across) / picture.across, float(box.down) / picture.down
    curves = tuple(tuple((x * wide, y * high) for x, y in curve) for curve in picture.curves)
    near = simpler(curves[0], float(TOLERANCE))
    corners = list(dict.fromkeys((_fine(x), _fine(y)) for x, y in near[:-1]))
    return Template("drawing", shapes.polygon(corners), curves=curves)


def _fine(number: float) -> Fraction:
    return Fraction(round(number * 1024), 1024)


def least_cut(found: Template, box_: Sides, seam: Fraction) -> Sides:
    """Width and length of the smallest piece of cloth that it can be cut from."""
    if found.laid_on:
        return box_
    if found.kind == "outline":
        left, top, right, low = box(cut_line(found.sew, float(seam)))
        return Sides(*(Exact(Fraction(side) - NEAR) for side in (right - left, low - top)))
    return Sides(*(side + seam * LEAST_WRAP for side in box_))


def cut_from(
    stated: CutValue | None, found: Template, box_: Sides, seam: Fraction, system: System
) -> CutSize:
    """The cloth it is cut from: as stated, else the least on the ruler; for a hexagon a square
    that can be folded round its paper."""
    least = least_cut(found, box_, seam)
    if found.kind in HEXAGONS:
        high = box_.down + seam * WRAP
        least = Sides(high if found.kind == "hexagon" else box_.across + seam * WRAP, high)
    asked = (stated.across, stated.down) if stated else ("fit", "fit")
    sides = [
        own if isinstance(own, Fraction) else ruler_up(side, system)
        for own, side in zip(asked, least, strict=True)
    ]
    return CutSize(sides[0], sides[1])
