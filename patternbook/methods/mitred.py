"""Borders whose corners are mitred: how much longer they are cut, and how they lie."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import plain, printed
from patternbook.linear import Sum
from patternbook.methods.layout_written import WrittenBorder
from patternbook.methods.made import Outline, Placed, Sides, Spot, Turn
from patternbook.methods.world import Rule, Tally, Term, World, here
from patternbook.notice import Edit, Mark, Notice

WIDTH: Final = Rule("mitre-width", "R7", "Cut both strips equally wide, or sew the corners butted.")
# X + 2Y + 1: so much longer than the finished outer edge (trade facts 5.32).
EXTRA: Final = {"in": Fraction(1), "cm": Fraction(5, 2)}


def allowed(
    name: str, number: int, border: WrittenBorder, parts: tuple[str, str], world: World
) -> None:
    """Tell of what no mitre can be sewn from: units, and a cornerstone in its place."""
    unit = next((part for part in parts if world.is_unit(part)), None)
    if unit is not None:
        message = (
            f"border {number} of '{name}' is mitred, and {unit} is a unit: its seams would end "
            "in the mitre."
        )
        hint = "Mitre strips of cloth; sew a pieced border butted, or with `stones`."
        world.error("mitre-parts", "R7", message, border.place, hint)
    if here(border.stones, world.size) is not None:
        message = f"border {number} of '{name}' is mitred and has cornerstones as well."
        hint = "Leave out `corners: mitred`, or the stones."
        world.error("mitre-parts", "R7", message, border.place, hint)


def one_width(
    number: int,
    border: WrittenBorder,
    labels: tuple[str, str],
    widths: tuple[Sum, Sum],
    world: World,
) -> None:
    """At 45° the strips that meet must be equally wide."""
    side, end = (
        Tally(f"{word} border {number}", (Term(label, 1, width),), border.place)
        for word, label, width in zip(("side", "end"), labels, widths, strict=True)
    )
    world.equal(end, side, WIDTH)


def as_cut(outside: Tally, world: World) -> Tally:
    """A mitred strip's cut length less its two seams: the finished outer edge, and something
    more to sew the mitre with."""
    more = Sum.of(EXTRA[world.unit]) - world.seam * 2
    return Tally(outside.what, (*outside.terms, Term("to mitre", 1, more)), outside.place)


def cut_length(
    word: str, number: int, border: WrittenBorder, outside: Exact, world: World
) -> Exact:
    """How long a strip is cut: as she states, where that is enough."""
    stated = here(border.side_length if word == "side" else border.end_length, world.size)
    if stated is None:
        return outside + EXTRA[world.unit]
    seams = world.length(world.seam) * 2
    least = outside + seams
    if least > stated.number:
        message = (
            f"{word} border {number} is mitred: its outer edge finishes {printed(outside)}, and "
            f"with two seams {printed(seams)} it takes {printed(least)} at least; "
            f"{printed(stated.number)} is stated, short by {printed(least - stated.number)}."
        )
        usual, just = (
            plain(one.up(Fraction(1, 8)), world.unit == "cm")
            for one in (outside + EXTRA[world.unit], least)
        )
        world.tell(
            Notice(
                "mitre-short",
                "error",
                "quilt",
                message,
                (Mark(stated.place, "stated here"), Mark(border.place, "the border")),
                "R7",
                (world.size,),
                plain(stated.number),
                usual,
                f"Write {usual}, which leaves something to sew with, or leave it out.",
                tuple(Edit(stated.place, stated.text, one) for one in (usual, just)),
            )
        )
    return Exact(stated.number)


def placed(
    parts: tuple[str, str], lying: Turn, x: Exact, y: Exact, inside: Sides, width: Exact
) -> list[Placed]:
    """Left, right, top and bottom round what lies inside, whose top left corner is at (x, y):
    each runs to a point at the outer corners."""
    left, top, right, low = x - width, y - width, x + inside.across, y + inside.down
    far, deep = right + width, low + width
    (a, b), (c, d) = (Spot(left, top), Spot(far, top)), (Spot(far, deep), Spot(left, deep))
    e, f, g, h = Spot(x, y), Spot(right, y), Spot(right, low), Spot(x, low)
    side, end = parts
    long, broad = inside.down + width * 2, inside.across + width * 2
    return [
        Placed(side, Turn(), left, top, width, long, Outline((a, e, h, d))),
        Placed(side, Turn(), right, top, width, long, Outline((b, c, g, f))),
        Placed(end, lying, left, top, broad, width, Outline((a, b, f, e))),
        Placed(end, lying, left, low, broad, width, Outline((h, g, c, d))),
    ]
