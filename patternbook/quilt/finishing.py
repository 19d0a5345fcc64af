"""What the author says of backing, batting, binding and quilting, and her house rules."""

from __future__ import annotations

from fractions import Fraction

from patternbook.methods.world import here
from patternbook.quilt.records import Backing, Batting, Binding, CutSize, Quilting
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.value_places import value_places
from patternbook.value import SizeValue

OVER = {"in": Fraction(4), "cm": Fraction(10)}
BINDING_CUT = {"in": Fraction(5, 2), "cm": Fraction(13, 2)}


def _size(value: SizeValue | None) -> CutSize | None:
    return CutSize(value.across, value.down) if value is not None else None


def backing(resolver: Resolver) -> Backing | None:
    """The backing as stated in this size; worked out with defaults where only the top is."""
    written, size = resolver.written.backing, resolver.size
    if written is None:
        return Backing(over=OVER[resolver.system.unit]) if "top" in resolver.units else None
    fabric, over, seams = (
        here(written.fabric, size),
        here(written.over, size),
        here(written.seams, size),
    )
    return Backing(
        str(fabric) if fabric else None,
        over.number if over else OVER[resolver.system.unit],
        _size(here(written.size, size)),
        resolver.number(written.panels, "backing: panels", least=1),
        str(seams) if seams else None,  # type: ignore[arg-type]
        str(written.note) if written.note else None,
        value_places(written, size),
    )


def batting(resolver: Resolver) -> Batting | None:
    """The batting as stated in this size."""
    written, size = resolver.written.batting, resolver.size
    if written is None:
        return Batting(over=OVER[resolver.system.unit]) if "top" in resolver.units else None
    over, limit = here(written.over, size), here(written.limit, size)
    return Batting(
        over.number if over else OVER[resolver.system.unit],
        _size(here(written.size, size)),
        limit.number if limit else None,
        str(written.note) if written.note else None,
        value_places(written, size),
    )


def binding(resolver: Resolver) -> Binding | None:
    """The binding as stated in this size, of no named cloth where none is; None where nothing
    is said of it."""
    written, size = resolver.written.binding, resolver.size
    fabric = here(written.fabric, size) if written is not None else None
    if written is None:
        return None
    cut, length = here(written.cut, size), here(written.length, size)
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
    )


def quilting(resolver: Resolver) -> tuple[Quilting, ...]:
    """The author's suggestions."""
    made = []
    for written in resolver.written.quilting:
        spacing = here(written.spacing, resolver.size)
        note = str(written.note) if written.note else None
        number = spacing.number if spacing else None
        made.append(Quilting(str(written.area), str(written.design), number, note, written.place))
    return tuple(made)
