"""Borders sewn round a layout, from the inside out: butted, with cornerstones, or mitred."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from patternbook.exact import Exact
from patternbook.linear import Sum
from patternbook.methods import mitred
from patternbook.methods import pieced_borders as pieced
from patternbook.methods.layout_written import WrittenBorder, WrittenLayout
from patternbook.methods.made import Border, Placed, Sides, Turn
from patternbook.methods.world import Rule, StripNeed, Tally, Term, World, here
from patternbook.notice import Mark, Notice, Place

FITS = Rule("border-length", "R7", "A border is cut to the edge that it is sewn to.")
STATED = Rule("border-length", "R7", None)
AFTER = Rule("border-measure", "R12", None)
STONE = Rule("cornerstone", "R7", "A cornerstone is as wide as the borders that meet there.")
UPRIGHT, LYING = Turn(), Turn(1)


class Round(NamedTuple):
    """One border with its sums: widths of sides and ends, and the finished lengths of both."""

    number: int
    written: WrittenBorder
    side: str
    end: str
    stones: str | None
    wide: Sum
    high: Sum
    side_length: Tally
    end_length: Tally
    mitred: bool = False

    @property
    def place(self) -> Place:
        """Where it is written."""
        return self.written.place


def borders_of(unit: WrittenLayout, world: World) -> tuple[WrittenBorder, ...]:
    """The borders of this size, from the inside out."""
    written = unit.borders.at(world.size) or ()
    return tuple(border for border in written if not border.only or world.size in border.only)


def rounds(
    name: str, unit: WrittenLayout, world: World, inside: tuple[Tally, Tally]
) -> Iterator[Round]:
    """Each border, given what lies inside the first; every one grows the next one's inside."""
    across, down = inside
    for number, border in enumerate(borders_of(unit, world), 1):
        strip = here(border.strip, world.size)
        side, end = (
            here(border.sides, world.size) or strip,
            here(border.ends, world.size) or strip,
        )
        if side is None or end is None:
            message = (
                f"border {number} of '{name}' names no strip for its {'ends' if side else 'sides'}."
            )
            world.error(
                "border-parts",
                "R10",
                message,
                border.place,
                "Write `strip: F`, or `sides:` and `ends:`.",
            )
            continue
        if border.corners.at(world.size) == "mitred":
            mitred.allowed(name, number, border, (str(side), str(end)), world)
        made = _round(number, border, str(side), str(end), world, (across, down))
        yield made
        across = _wider(across, made.side, made.wide)
        down = _wider(down, made.end, made.high)


def _wider(inside: Tally, label: str, width: Sum) -> Tally:
    return Tally(inside.what, (*inside.terms, Term(label, 2, width)), inside.place)


def _round(
    number: int,
    border: WrittenBorder,
    side: str,
    end: str,
    world: World,
    inside: tuple[Tally, Tally],
) -> Round:
    across, down = inside
    stone = here(border.stones, world.size)
    wide = world.span(side, UPRIGHT, border.place).across
    high = _high(end, border, world)
    meets = border.corners.at(world.size) == "mitred"
    ends_first = border.first.at(world.size) == "ends" and stone is None
    side_length, end_length = down, across
    if ends_first or meets:
        side_length = _wider(down, end, high)
    if meets or (stone is None and not ends_first):
        end_length = _wider(across, side, wide)
    return Round(
        number,
        border,
        side,
        end,
        str(stone) if stone and not meets else None,
        wide,
        high,
        side_length,
        end_length,
        meets,
    )


def _high(end: str, border: WrittenBorder, world: World) -> Sum:
    """How wide the border is at top and bottom: a strip lies there on its side."""
    span = world.span(end, UPRIGHT, border.place)
    return span.across if world.is_strip(end) else span.down


def equations(name: str, round_: Round, world: World) -> None:
    """Hold the border's parts to the edges that they are sewn to."""
    pairs = (("side", round_.side, round_.side_length), ("end", round_.end, round_.end_length))
    for word, part, length in pairs:
        if not world.is_strip(part):
            span = world.span(part, UPRIGHT, round_.place)
            form = span.down if word == "side" else span.across
            what = f"{word} border {part}"
            needed = mitred.as_cut(length, world) if round_.mitred else length
            world.equal(Tally(what, (Term(part, 1, form),), round_.place), needed, FITS)
        if not round_.mitred:
            _stated(name, word, round_, length, world)
    if round_.mitred:
        labels, widths = (round_.side, round_.end), (round_.wide, round_.high)
        mitred.one_width(round_.number, round_.written, labels, widths, world)
    if round_.stones is not None:
        _stone_equations(round_, world)


def _stated(name: str, word: str, round_: Round, length: Tally, world: World) -> None:
    stated = here(
        round_.written.side_length if word == "side" else round_.written.end_length, world.size
    )
    if stated is not None:
        key = ("units", name, f"border {round_.number}", f"{word}-length")
        what = f"{word} border {round_.number}"
        world.state(
            key, _raw(what, length, world, round_.place), stated.number, STATED, stated.place
        )


def _raw(what: str, tally: Tally, world: World, place: Place) -> Tally:
    return Tally(what, (*tally.terms, Term("seam", 2, world.seam)), place)


def _stone_equations(round_: Round, world: World) -> None:
    stone = world.span(round_.stones or "", UPRIGHT, round_.place)
    for form, part, width in (
        (stone.across, round_.side, round_.wide),
        (stone.down, round_.end, round_.high),
    ):
        one = Tally(
            f"cornerstone {round_.stones}", (Term(str(round_.stones), 1, form),), round_.place
        )
        other = Tally(f"border {part}", (Term(part, 1, width),), round_.place)
        world.equal(one, other, STONE)


def measures(name: str, round_: Round, inside: tuple[Tally, Tally], world: World) -> None:
    """The stated measure once this border is on."""
    stated = here(round_.written.measure, world.size)
    if stated is None:
        return
    rule = AFTER if not stated.about else Rule("border-measure", "R12", None, Fraction(1, 8))
    for side, tally, number in (
        ("across", inside[0], stated.across),
        ("down", inside[1], stated.down),
    ):
        key = ("units", name, f"border {round_.number}", "measure", side)
        what = f"{name} with border {round_.number}"
        world.state(key, _raw(what, tally, world, round_.place), number, rule, stated.place)


def needs(round_: Round, world: World, units: int) -> tuple[dict[str, int], list[StripNeed]]:
    """Parts and lengths of strip that one border takes."""
    parts: dict[str, int] = {}
    runs: list[StripNeed] = []
    for part, cut in zip((round_.side, round_.end), cut_lengths(round_, world), strict=True):
        parts[part] = parts.get(part, 0) + 2 * units
        if world.is_strip(part):
            runs.append(StripNeed(part, f"border {round_.number}", cut, 2 * units, whole=False))
    if round_.stones is not None:
        parts[round_.stones] = parts.get(round_.stones, 0) + 4 * units
    return parts, runs


def cut_lengths(round_: Round, world: World) -> tuple[Exact, Exact]:
    """How long sides and ends are cut."""
    seams = world.length(world.seam) * 2
    side, end = world.length(round_.side_length.sum()), world.length(round_.end_length.sum())
    if not round_.mitred:
        return side + seams, end + seams
    number, border = round_.number, round_.written
    return (
        mitred.cut_length("side", number, border, side, world),
        mitred.cut_length("end", number, border, end, world),
    )


def made(round_: Round, world: World, x: Exact, y: Exact, inside: Sides) -> Border:
    """The border in place round what lies inside, whose top left corner is at (x, y)."""
    _blocks_told(round_, world)
    seams = world.length(world.seam) * 2
    wide, high = world.length(round_.wide), world.length(round_.high)
    side_cut, end_cut = cut_lengths(round_, world)
    if round_.mitred:
        lying = _lying(round_, world)
        parts = mitred.placed((round_.side, round_.end), lying, x, y, inside, wide)
        ends_first = round_.written.first.at(world.size) == "ends"
    else:
        parts = _butted(round_, world, x, y, inside)
        ends_first = round_.stones is None and side_cut != inside.down + seams
    note = round_.written.note
    return Border(
        round_.number,
        round_.side,
        round_.end,
        "ends" if ends_first else "sides",
        "mitred" if round_.mitred else "butted",
        round_.stones,
        side_cut,
        end_cut,
        tuple(parts),
        Sides(inside.across + wide * 2 + seams, inside.down + high * 2 + seams),
        str(note) if note else None,
        round_.place,
    )


def _blocks_told(round_: Round, world: World) -> None:
    """Where a border sewn from like parts does not come to its edge: the edges that it would."""
    if round_.mitred:
        return
    pairs = (("sides", round_.side, round_.side_length), ("ends", round_.end, round_.end_length))
    for word, unit, length in pairs:
        part = pieced.repeat(unit, "down" if word == "sides" else "across", world)
        edge = world.length(length.sum())
        if part is not None and part.each > 0 and part.each * part.times != edge:
            message = pieced.told(round_.number, word, unit, part, edge)
            mark = (Mark(round_.place, "the border"),)
            world.tell(
                Notice("border-blocks", "advice", "quilt", message, mark, "R7", (world.size,))
            )


def _butted(round_: Round, world: World, x: Exact, y: Exact, inside: Sides) -> list[Placed]:
    """Sides, ends and cornerstones in their places."""
    wide, high = world.length(round_.wide), world.length(round_.high)
    long, broad = world.length(round_.side_length.sum()), world.length(round_.end_length.sum())
    top = y - (long - inside.down) / 2
    left = x - (broad - inside.across) / 2
    lying = _lying(round_, world)
    parts = [
        Placed(round_.side, UPRIGHT, x - wide, top, wide, long),
        Placed(round_.side, UPRIGHT, x + inside.across, top, wide, long),
        Placed(round_.end, lying, left, y - high, broad, high),
        Placed(round_.end, lying, left, y + inside.down, broad, high),
    ]
    if round_.stones is not None:
        corners = [
            (a, b) for b in (y - high, y + inside.down) for a in (x - wide, x + inside.across)
        ]
        parts += [Placed(round_.stones, UPRIGHT, a, b, wide, high) for a, b in corners]
    return parts


def _lying(round_: Round, world: World) -> Turn:
    """How the ends lie: a strip on its side, all else as it is made."""
    return LYING if world.is_strip(round_.end) else UPRIGHT
