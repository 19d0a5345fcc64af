"""What the author says of backing, batting, binding, label and quilting."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Final, get_args

from patternbook.methods.world import here
from patternbook.quilt.records import Backing, Batting, Binding, CutSize, Foot, Label, Quilting
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.value_places import value_places
from patternbook.source.finishing import WrittenBinding, WrittenQuilting
from patternbook.value import SizeValue

OVER = {"in": Fraction(4), "cm": Fraction(10)}
# Over on each side: at home 3 in (trade facts 7.2), on a frame 4 in (7.1); 7.5 and 10 cm.
OVER_BY: Final = {
    "home": {"in": Fraction(3), "cm": Fraction(15, 2)},
    "frame": {"in": Fraction(4), "cm": Fraction(10)},
}
# A corner is drawn round a dinner plate (common practice, no source).
RADIUS: Final = {"in": Fraction(5), "cm": Fraction(25, 2)}
# A label that eight lines of handwriting go on to (common practice, no source).
LABEL: Final = {
    "in": CutSize(Fraction(6), Fraction(4)),
    "cm": CutSize(Fraction(15), Fraction(10)),
}
FEET: Final[Mapping[str, Foot]] = {foot: foot for foot in get_args(Foot)}
BINDING_CUT = {"in": Fraction(5, 2), "cm": Fraction(13, 2)}


def _size(value: SizeValue | None) -> CutSize | None:
    return CutSize(value.across, value.down) if value is not None else None


def backing(resolver: Resolver) -> Backing | None:
    """The backing as stated in this size; worked out with defaults where only the top is."""
    written, size = resolver.written.backing, resolver.size
    if written is None:
        return Backing(over=usual_over(resolver)) if "top" in resolver.units else None
    fabric, over, seams = (
        here(written.fabric, size),
        here(written.over, size),
        here(written.seams, size),
    )
    by, insert = here(written.quilted_by, size), here(written.insert, size)
    return Backing(
        str(fabric) if fabric else None,
        over.number if over else usual_over(resolver),
        _size(here(written.size, size)),
        resolver.number(written.panels, "backing: panels", least=1),
        str(seams) if seams else None,  # type: ignore[arg-type]
        str(written.note) if written.note else None,
        value_places(written, size),
        str(by) if by else None,  # type: ignore[arg-type]
        written.pieced.at(size) == "yes" or insert is not None,
        insert.number if insert else None,
    )


def usual_over(resolver: Resolver) -> Fraction:
    """How far backing and batting stand out where she does not say: as the way of quilting asks."""
    backed, unit = resolver.written.backing, resolver.system.unit
    by = here(backed.quilted_by, resolver.size) if backed is not None else None
    return OVER_BY[str(by)][unit] if by else OVER[unit]


def batting(resolver: Resolver) -> Batting | None:
    """The batting as stated in this size."""
    written, size = resolver.written.batting, resolver.size
    if written is None:
        return Batting(over=usual_over(resolver)) if "top" in resolver.units else None
    over, limit = here(written.over, size), here(written.limit, size)
    width, length = here(written.width, size), here(written.length, size)
    return Batting(
        over.number if over else usual_over(resolver),
        _size(here(written.size, size)),
        limit.number if limit else None,
        str(written.note) if written.note else None,
        value_places(written, size),
        width.number if width else None,
        length.number if length else None,
    )


def binding(resolver: Resolver) -> Binding | None:
    """The binding as stated in this size, of no named cloth where none is; None where nothing
    is said of it."""
    written, size = resolver.written.binding, resolver.size
    fabric = here(written.fabric, size) if written is not None else None
    if written is None:
        return None
    cut, length = here(written.cut, size), here(written.length, size)
    square = here(written.square, size)
    width = cut.across if cut is not None and isinstance(cut.across, Fraction) else None
    if cut is not None and (width is None or cut.down != "WOF"):
        message = f"binding: {cut.text} is no strip of binding, which is cut across the cloth."
        hint = "Write its width: `cut: 2 1/2 x WOF`."
        resolver.error("binding-cut", "R14", message, cut.place, hint)
    return Binding(
        str(fabric or ""),
        width or BINDING_CUT[resolver.system.unit],
        str(written.fold.at(size)),  # type: ignore[arg-type]
        written.bias.at(size) == "yes",
        str(written.join.at(size)),  # type: ignore[arg-type]
        resolver.number(written.strips, "binding: strips"),
        length.number if length else None,
        str(written.note) if written.note else None,
        value_places(written, size),
        str(written.bias_from.at(size)),  # type: ignore[arg-type]
        _radius(written, resolver),
        square.number if square else None,
    )


def _radius(written: WrittenBinding, resolver: Resolver) -> Fraction | None:
    """Of rounded corners, as stated or round a plate; None where the corners are square."""
    radius = here(written.radius, resolver.size)
    if radius is not None:
        return radius.number
    rounded = written.corners.at(resolver.size) == "rounded"
    return RADIUS[resolver.system.unit] if rounded else None


def label(resolver: Resolver) -> Label | None:
    """The label as stated; the usual one where she only says the top."""
    written, size = resolver.written.label, resolver.size
    usual = LABEL[resolver.system.unit]
    if written is None:
        return Label(usual) if "top" in resolver.units else None
    stated, fabric = here(written.size, size), here(written.fabric, size)
    return Label(
        _size(stated) or usual,
        str(fabric) if fabric else None,
        tuple(str(line) for line in written.lines),
        str(written.note) if written.note else None,
        value_places(written, size),
    )


def quilting(resolver: Resolver) -> tuple[Quilting, ...]:
    """The author's wishes for the quilting, in this size."""
    return tuple(_wish(written, resolver.size) for written in resolver.written.quilting)


def _wish(written: WrittenQuilting, size: str) -> Quilting:
    spacing = here(written.spacing, size)
    return Quilting(
        str(written.area),
        str(written.design) if written.design else None,
        spacing.number if spacing else None,
        str(written.note) if written.note else None,
        written.place,
        FEET.get(str(written.skill)),
        int(written.seed) if written.seed is not None else None,
        str(written.name) if written.name else None,
        tuple(map(str, written.merge)),
        tuple((shift.line, shift.number) for shift in written.move),
        written.exclude == "yes",
        value_places(written, size),
    )
