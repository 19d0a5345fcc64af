"""Borders are as long as the edge that they are sewn to, borders already on counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted, shown
from patternbook.quilt.records import Border, LayoutMade, Quilt, Sides, Unit


def borders(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a border's length differs from its edge, or no such length is cut."""
    for unit, made in evidence.layouts():
        edge = made.before_borders
        for border in made.borders:
            yield from _lengths(evidence.quilt, border, edge)
            yield from _placed(evidence.quilt, border)
            edge = border.after
        yield from _cut(evidence, unit, made)


def edges(border: Border, inside: Sides) -> tuple[Exact, Exact]:
    """The raw edges that sides and ends are sewn to; `inside` is raw too. A mitred strip reaches
    along the outer edge."""
    side, end = inside.down, inside.across
    if border.corners == "mitred":
        return border.after.down, border.after.across
    if border.stones is not None:
        return side, end
    if border.first == "ends":
        return border.after.down, end
    return side, border.after.across


def _lengths(quilt: Quilt, border: Border, inside: Sides) -> Iterator[Notice]:
    pairs = zip(
        ("sides", "ends"),
        (border.side_length, border.end_length),
        edges(border, inside),
        strict=True,
    )
    for word, length, edge in pairs:
        enough = length >= edge if border.corners == "mitred" else length == edge
        if not enough:
            message = (
                f"the {word} of border {border.number} are {shown(length, quilt)} long, the edge "
                f"that they are sewn to {shown(edge, quilt)}."
            )
            yield recounted(quilt, "border-edge", "R7", message, border.place)


def _placed(quilt: Quilt, border: Border) -> Iterator[Notice]:
    """As it lies, each strip is its cut length without seams; a mitred one at most that."""
    if len(border.parts) < 4:
        return
    for word, part, lies, cut in (
        ("side", border.parts[0], border.parts[0].down, border.side_length),
        ("end", border.parts[2], border.parts[2].across, border.end_length),
    ):
        raw = lies + 2 * quilt.seam
        if raw > cut or (raw != cut and border.corners == "butted"):
            message = (
                f"a {word} of border {border.number} ({part.part}) lies {shown(lies, quilt)} "
                f"long; cut {shown(cut, quilt)}, it finishes "
                f"{shown(cut - 2 * quilt.seam, quilt)}."
            )
            yield recounted(quilt, "border-edge", "R7", message, border.place)


def _cut(evidence: Evidence, unit: Unit, made: LayoutMade) -> Iterator[Notice]:
    """Every length of strip that the borders take is cut, two of each, and no other."""
    quilt = evidence.quilt
    for border in made.borders:
        use = f"border {border.number}"
        wanted: Counter[tuple[str, Exact]] = Counter()
        for part, length in ((border.side, border.side_length), (border.end, border.end_length)):
            piece = quilt.pieces.get(part)
            if piece is not None and piece.is_strip and part in evidence.cutting.letters:
                wanted[part, Exact(length.up(quilt.system.step))] += 2 * unit.make
        for letter in dict.fromkeys(letter for letter, _ in wanted):
            asked = {length: n for (one, length), n in wanted.items() if one == letter}
            found = _lengths_cut(evidence, letter, use)
            if not _covers(found, asked):
                message = (
                    f"{use} takes {_list(asked, quilt)} of {letter}; "
                    f"{_list(found, quilt) or 'none'} are cut for it."
                )
                yield recounted(quilt, "border-cut", "R7", message, border.place)


def _lengths_cut(evidence: Evidence, letter: str, use: str) -> dict[Exact, int]:
    """The lengths that come off the strips for one border, from the strips themselves."""
    found: Counter[Exact] = Counter()
    for plan in evidence.cutting.fabrics.values():
        for strip in plan.strips:
            for cut in (one for column in strip.cuts for one in column.stacked):
                if cut.letter == letter and cut.use == use:
                    long = cut.across if strip.along == "length" else cut.along
                    found[Exact(long)] += cut.number * (1 if strip.join else strip.times)
    return dict(found)


def _covers(found: dict[Exact, int], asked: dict[Exact, int]) -> bool:
    """Several units may have a border of the same number: theirs are cut together."""
    return all(found.get(length, 0) >= number for length, number in asked.items())


def _list(lengths: dict[Exact, int], quilt: Quilt) -> str:
    return " + ".join(f"{number} × {shown(length, quilt)}" for length, number in lengths.items())
