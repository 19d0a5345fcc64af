"""What must be told of templates once all lengths are known: figures that disagree with the
shape, cloth that is too small for it, drawings pulled out of shape."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.inch import TOLERANCE, length, plain, ruler_up
from patternbook.methods.made import Sides
from patternbook.methods.world import here
from patternbook.notice import Edit, Mark, Notice, Place, Severity
from patternbook.quilt.cut_line import Edge, edges
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.templates import kind_of, least_cut
from patternbook.source.bends import area
from patternbook.value import AmountValue, LengthValue

# Degrees; a protractor shows no less.
HALF: Final = Fraction(1, 2)
# How far the two sides of a drawing may be stretched differently before it is told.
STRETCH: Final = 1.02


def templates_told(resolver: Resolver) -> Iterator[Notice]:
    """All of it, piece by piece."""
    for letter in resolver.pieces:
        if kind_of(resolver.pieces[letter]) is not None and letter not in resolver.broken:
            yield from _radius(letter, resolver)
            yield from _edges(letter, resolver)
            yield from _angle(letter, resolver)
            yield from _cloth(letter, resolver)
            yield from _stretched(letter, resolver)


def _radius(letter: str, resolver: Resolver) -> Iterator[Notice]:
    """The quarter that is taken out must leave something of the ground, and the curve must be
    wider than the allowance inside it."""
    piece = resolver.pieces[letter]
    radius = here(piece.radius, resolver.size)
    if radius is None or kind_of(piece) != "quarter hollow":
        return
    span = resolver.sum_of(letter)
    sides = [side for form in span if (side := resolver.known(form)) is not None]
    seam = resolver.length(resolver.seam)
    system = resolver.system
    if sides and min(sides) <= radius.number:
        resolver.broken.add(letter)
        message = (
            f"{letter} finishes {length(min(sides), system)}, and a quarter of radius "
            f"{length(radius.number, system)} is to be taken out of it: nothing is left beside it."
        )
        hint = "Write a smaller radius, or a larger cut."
        yield _told("template-radius", resolver, message, radius.place, hint)
    elif seam >= radius.number:
        resolver.broken.add(letter)
        message = (
            f"{letter}: inside a curve of radius {length(radius.number, system)} there is no room "
            f"for a seam allowance of {length(seam, system)}."
        )
        hint = "Write a larger radius."
        yield _told("template-radius", resolver, message, radius.place, hint)


def _edges(letter: str, resolver: Resolver) -> Iterator[Notice]:
    """Stated edges against the outline's own, in the order in which the corners are written."""
    stated = here(resolver.pieces[letter].edges, resolver.size)
    if not stated:
        return
    found = _as_written(letter, resolver)
    if len(stated) != len(found):
        message = f"{letter} has {len(found)} edges, and {len(stated)} are stated."
        hint = "Write one length for each edge, from the first corner on."
        yield _told("template-edge", resolver, message, stated[0].place, hint)
        return
    for number, (figure, own) in enumerate(zip(stated, found, strict=True), 1):
        if abs(own - float(figure.number)) > TOLERANCE:
            shown, system = Fraction(round(own * 64), 64), resolver.system
            message = (
                f"edge {number} of {letter} is {length(shown, system)} long; "
                f"{length(figure.number, system)} is stated."
            )
            needed = plain(shown, system.unit == "cm")
            yield _unlike("template-edge", resolver, message, figure, needed)


def _as_written(letter: str, resolver: Resolver) -> list[float]:
    """How long each edge is, from the first corner on as the author wrote them."""
    corners = here(resolver.pieces[letter].outline, resolver.size)
    if kind_of(resolver.pieces[letter]) == "outline" and corners:
        points = [(float(point.across), float(point.down)) for point in corners]
        return [math.dist(*ends) for ends in zip(points, (*points[1:], points[0]), strict=True)]
    found = resolver.drawn(letter)
    return [_long(edge) for edge in edges(found.sew)] if found and not found.laid_on else []


def _long(edge: Edge) -> float:
    if edge.centre is None:
        return math.dist(edge.start, edge.end)
    return edge.radius * math.pi / 2


def _angle(letter: str, resolver: Resolver) -> Iterator[Notice]:
    """The stated angle is that of the first corner of the outline, or of a hexagon's points."""
    stated = here(resolver.pieces[letter].angle, resolver.size)
    own = _first_angle(letter, resolver)
    if stated is None or own is None or abs(own - float(stated.number)) <= HALF:
        return
    message = (
        f"the first corner of {letter} has {own:.4g} degrees; {plain(stated.number)} are stated."
    )
    yield _unlike("template-angle", resolver, message, stated, f"{own:.4g}")


def _first_angle(letter: str, resolver: Resolver) -> float | None:
    piece, found = resolver.pieces[letter], resolver.drawn(letter)
    written = here(piece.outline, resolver.size) if kind_of(piece) == "outline" else None
    if found is None or found.laid_on:
        return None
    points = [(float(x), float(y)) for x, y in found.sew.corners]
    if written:
        points = [(float(point.across), float(point.down)) for point in written]
        if area(points) < 0:  # written the other way round
            points[1:] = points[:0:-1]
    (px, py), (x, y), (nx, ny) = points[-1], points[0], points[1]
    turn = math.atan2(py - y, px - x) - math.atan2(ny - y, nx - x)
    return math.degrees(turn) % 360


def _cloth(letter: str, resolver: Resolver) -> Iterator[Notice]:
    """A stated cut that is smaller than the cut line."""
    stated = here(resolver.pieces[letter].cut, resolver.size)
    found, system = resolver.drawn(letter), resolver.system
    if stated is None or found is None:
        return
    span = resolver.sum_of(letter)
    box = Sides(resolver.length(span.across), resolver.length(span.down))
    least = least_cut(found, box, resolver.length(resolver.seam).fraction)
    asked = (stated.across, stated.down)
    sides = [s if isinstance(s, str) else plain(s, system.unit == "cm") for s in asked]
    for at, (number, side, word) in enumerate(zip(asked, least, ("wide", "long"), strict=True)):
        if isinstance(number, Fraction) and side > number + TOLERANCE:
            needed = length(ruler_up(side, system), system)
            message = (
                f"{letter} does not come out of the cloth it is cut from: its cut line is "
                f"{needed} {word}, {length(number, system)} is stated."
            )
            sides[at] = plain(ruler_up(side, system), system.unit == "cm")
            hint = f"Write {' x '.join(sides)}, or leave it out and it is worked out."
            notice = _told("template-box", resolver, message, stated.place, hint)
            was = plain(number, system.unit == "cm")
            yield replace(notice, stated=was, needed=sides[at])


def _stretched(letter: str, resolver: Resolver) -> Iterator[Notice]:
    piece = resolver.pieces[letter]
    picture, cut = resolver.picture(str(piece.drawing)), here(piece.cut, resolver.size)
    if kind_of(piece) != "drawing" or picture is None or cut is None:
        return
    span = resolver.sum_of(letter)
    wide = float(resolver.length(span.across)) / picture.across
    high = float(resolver.length(span.down)) / picture.down
    pulled = max(wide, high) / min(wide, high)
    if pulled > STRETCH:
        way = "wider" if wide > high else "longer"
        message = (
            f"{letter} is cut {cut.text}: so it comes out {pulled - 1:.0%} {way} than it is drawn."
        )
        hint = "Write `fit` for one of the sides to keep its shape."
        yield _told("template-stretched", resolver, message, cut.place, hint, "advice")


def _unlike(
    code: str,
    resolver: Resolver,
    message: str,
    stated: LengthValue | AmountValue,
    needed: str,
) -> Notice:
    """A figure beside the shape that is not the shape's own."""
    hint = f"Write {needed}, or mend the outline."
    notice = _told(code, resolver, message, stated.place, hint)
    edit = Edit(stated.place, stated.text, needed)
    return replace(notice, stated=stated.text, needed=needed, edits=(edit,))


def _told(
    code: str,
    resolver: Resolver,
    message: str,
    place: Place | None,
    hint: str,
    severity: Severity = "error",
) -> Notice:
    marks = (Mark(place, "stated here"),) if place else ()
    return Notice(code, severity, "quilt", message, marks, "R13", (resolver.size,), hint=hint)
