"""The bag of a kit, read back: the list of its letters, all of them counted, and their labels."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from patternbook.booklet.readback.labels import labels_read
from patternbook.booklet.readback.reading import Differs, Table, compared, near, numbers
from patternbook.booklet.readback.tagged import Line
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.cutting.records import BINDING, CuttingPlan, Strip
from patternbook.inch import System, printed
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece

TOTALS: Final = ("Letter", "In all", "In each bag", "Fabric", "Cut size")
BAG: Final = ("Letter", "How many", "Fabric", "Cut size")
LABELS: Final = "Labels for one kit"
Told = tuple[tuple[Fraction, ...], int]  # the size, and how many


def bag(
    lines: Sequence[Line], found: Sequence[Table], known: Evidence, plan: KitsPlan
) -> Iterator[Differs]:
    """The three lists of the letters agree, and each says what is cut."""
    totals = next((one for one in found if one.head == TOTALS), None)
    listed = next((one for one in found if one.head[:4] == BAG), None)
    if totals is None or listed is None:
        yield Differs("the list of the bag", "", 0, "nothing", "a table of it")
        return
    read = [one for under, one in labels_read(lines) if under == LABELS]
    letters = [_called(letter) for letter in _letters(plan.one, known)]
    rows = [
        *((row.cells[0], row, row.cells[2], row.cells[4], "the count of") for row in totals.rows),
        *((row.cells[0], row, row.cells[1], row.cells[3], "the bag's") for row in listed.rows),
    ]
    right = {_called(letter): told for letter, told in _right(known, plan.one)}
    for label, row, number, size, what in rows:
        if label in right:
            shown = _told(number, size)
            yield from _among(f"{what} {label}", row.page, shown, right[label])
    for one in read:
        shown = _told(one.lines[2], one.lines[1]) if len(one.lines) > 2 else None
        bare = [(size[: len(shown[0])], number) for size, number in right.get(one.letter, ())] if (
            shown
        ) else []  # fmt: skip
        yield from _among(f"the label of {one.letter}", one.page, shown, bare)
    lists = (
        ("counted", [row.cells[0] for row in totals.rows]),
        ("in the bag", [row.cells[0] for row in listed.rows if " if " not in row.cells[0]]),
        ("labelled", [one.letter for one in read]),
    )
    for what, given in lists:
        own = [one for one in dict.fromkeys(given) if one != "Fusible web"]
        if own != letters:
            yield Differs(f"the letters {what}", "", 0, ", ".join(own), ", ".join(letters))
    yield from _in_all(totals, plan.number)
    yield from _layers(listed, known, plan.one)


def _letters(one: CuttingPlan, known: Evidence) -> Iterator[str]:
    yield from (letter for letter in known.quilt.pieces if letter in one.letters)
    if one.binding is not None:
        yield BINDING


def _called(letter: str) -> str:
    return "Binding" if letter == BINDING else letter


def _told(number: str, size: str) -> Told | None:
    found = numbers(number)
    return (numbers(size), int(found[0])) if found else None


def _among(what: str, page: int, shown: Told | None, right: Sequence[Told]) -> Iterator[Differs]:
    if shown not in right:
        best = "; ".join(map(_worded, right)) or "nothing"
        yield Differs(what, "", page, _worded(shown) if shown else "nothing", best)


def _worded(told: Told) -> str:
    return f"{' × '.join(map(printed, told[0]))}, {told[1]}"


def _right(known: Evidence, one: CuttingPlan) -> Iterator[tuple[str, tuple[Told, ...]]]:
    """What may stand of each letter: a patch with its size, strips, or lengths of them."""
    system = known.quilt.system
    for letter, plan in one.letters.items():
        piece, strips = known.quilt.pieces[letter], _of(one, letter)
        told = [*_strips(piece, plan.strips, strips, system), *_lengths(piece, strips, system)]
        if not piece.is_strip and not any(strip.join for strip in strips):
            sides = tuple(near(side, system) for side in piece.cut if side is not None)
            told = [(sides, piece.count + piece.spare)]
        yield letter, tuple(told)
    bound = one.binding
    if bound is not None and bound.square is not None:
        yield BINDING, (((bound.square, bound.square), bound.squares),)
    elif bound is not None:
        yield BINDING, (((bound.cut,), bound.strips),)


def _of(one: CuttingPlan, letter: str) -> list[Strip]:
    strips = (strip for plan in one.fabrics.values() for strip in plan.strips)
    return [strip for strip in strips if letter in strip.letters]


def _strips(piece: Piece, asked: int, strips: list[Strip], system: System) -> Iterator[Told]:
    """Strips as they are cut, all of them or those that are not cut to length; spare ones too."""
    wide = near(strips[0].width if strips else piece.cut.across, system)
    every = sum(strip.times for strip in strips)
    whole = sum(strip.times for strip in strips if strip.join or strip.cuts[0].whole)
    spare = max(asked - every, piece.spare if piece.is_strip else 0, 0)
    for number in dict.fromkeys((every, whole)):
        yield (wide,), number + spare
        for strip in strips:
            if strip.join and len(strip.letters) > 1:
                own = sum(cut.taken for cut in strip.cuts if cut.letter == piece.letter)
                last = own - (strip.times - 1) * (strip.length - strip.join.loss)
                yield (wide, near(Fraction(last), system)), number + spare


def _lengths(piece: Piece, strips: list[Strip], system: System) -> Iterator[Told]:
    """Lengths that strips are cut into, so many of each."""
    found: dict[Fraction, int] = {}
    for strip in strips if piece.is_strip else ():
        for one in (one for cut in strip.cuts for one in cut.stacked):
            if one.letter == piece.letter:
                long = one.across if strip.along == "length" else one.along
                times = 1 if strip.join else strip.times
                found[long] = found.get(long, 0) + one.number * times
    for long, number in found.items():
        yield (near(piece.cut.across, system), near(long, system)), number


def _in_all(totals: Table, number: int) -> Iterator[Differs]:
    """So many kits take so many times what is in one bag."""
    for row in totals.rows:
        each = numbers(row.cells[2])[:1]
        if numbers(row.cells[1])[:1] != tuple(number * one for one in each):
            best = printed(number * each[0]) if each else "nothing"
            yield Differs(f"all {row.cells[0]} of the kits", "", row.page, row.cells[1], best)


def _layers(listed: Table, known: Evidence, one: CuttingPlan) -> Iterator[Differs]:
    """Backing, batting and web."""
    system, size = known.quilt.system, known.quilt.size
    if one.backing:
        row = listed.row("Backing, if it is in the kit")
        yield from compared(
            "lengths of backing", size, row, 1, (Fraction(one.backing.best.panels),)
        )
        each = (near(one.backing.best.each, system),)
        yield from compared("a length of backing", size, row, 3, each)
    if one.batting:
        row = listed.row("Batting, if it is in the kit")
        sides = one.batting.size.across, one.batting.size.down
        yield from compared("batting in the bag", size, row, 3, sides)
    webs = [row for row in listed.rows if row.cells[0] == "Fusible web"]
    for row, web in zip(webs, one.webs.values(), strict=False):
        yield from compared("web in the bag", size, row, 3, (near(web.length, system),))
