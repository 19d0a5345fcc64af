"""Lengths of pieces, units and the top: cut, finished and measured from raw edge to raw edge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import triangle_allowance
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import (
    Border,
    LayoutMade,
    Piece,
    PiecedMade,
    Sides,
    StripSetMade,
    Unit,
)

Kind = Literal["cut", "finished", "measure", "strip", "length", "other", "bought", "metres"]


class Length(NamedTuple):
    """A length, or a size of two sides: whose, and what of it."""

    part: str
    kind: Kind
    sides: tuple[Exact, ...]

    @property
    def across(self) -> Exact:
        """The first side."""
        return self.sides[0]


def length(part: str, kind: Kind, *sides: Exact | Fraction | int | None) -> Length:
    """A fact of these sides; what is the whole width of the cloth, and what is nought, is left
    out."""
    return Length(part, kind, tuple(Exact.of(side) for side in sides if side))


def of_pieces(known: Evidence) -> Iterator[Length]:
    """What is cut, and from strips how wide."""
    for letter, piece in known.quilt.pieces.items():
        yield length(letter, "cut", *piece.cut)
        yield length(letter, "finished", *piece.finished)
        plan = known.cutting.letters.get(letter)
        if plan is not None:
            yield length(letter, "strip", plan.strip_width)
            yield length(letter, "other", plan.own * plan.strip_width)
        for run in piece.runs:
            yield length(letter, "length", run.length)
        yield from _in_all(piece)
        if piece.template is not None:
            yield from _template(letter, piece.template)
    for name, cloth in known.cutting.fabrics.items():
        for strip in cloth.strips:
            yield length(name, "strip", strip.width)
            yield length(name, "other", strip.length, strip.run, strip.left, strip.cloth)


def _in_all(piece: Piece) -> Iterator[Length]:
    """All of a letter in one line, as long and as wide as they are."""
    for side in piece.cut:
        if side is not None:
            yield length(piece.letter, "other", side * piece.count)


def _template(letter: str, template: object) -> Iterator[Length]:
    """The measures that a template has: radius, side, edges."""
    if isinstance(template, Exact | Fraction):
        yield length(letter, "other", template)
    elif is_dataclass(template) and not isinstance(template, type):
        for field in fields(template):
            yield from _template(letter, getattr(template, field.name))
    elif isinstance(template, tuple):
        for one in template:
            yield from _template(letter, one)


def of_units(known: Evidence) -> Iterator[Length]:
    """What is sewn, at every step of it."""
    for unit in known.quilt.units.values():
        yield Length(unit.name, "finished", tuple(unit.finished))
        yield Length(unit.name, "measure", tuple(unit.measure))
        yield from _made(known, unit)
    for step in known.sewing.steps:
        yield Length(step.unit, "other", tuple(step.measure))
        for round_ in step.rounds:
            for group in round_.groups:
                if group.measure:
                    yield Length(step.unit, "other", tuple(group.measure))


def _made(known: Evidence, unit: Unit) -> Iterator[Length]:
    made, seams = unit.made, 2 * known.quilt.seam
    if isinstance(made, StripSetMade):
        yield length(unit.name, "cut", made.segment)
        yield length(unit.name, "other", made.set_width, made.strip_length)
    elif isinstance(made, PiecedMade):
        if made.before:
            yield Length(unit.name, "other", tuple(made.before))
        for action in made.actions:
            for figure in action.figures:
                sides = tuple(figure) if isinstance(figure, Sides) else (figure,)
                yield Length(unit.name, "other", sides)
    elif isinstance(made, LayoutMade):
        before = made.before_borders
        yield Length(f"{unit.name} before borders", "measure", tuple(before))
        yield length(f"{unit.name} before borders", "finished", *(s - seams for s in before))
        for line in made.lines:
            yield length(f"{unit.name} row", "finished", line.across, line.down)
            yield length(f"{unit.name} row", "measure", line.across + seams, line.down + seams)
        for border in made.borders:
            yield from _border(f"border {border.number}", border)


def _border(name: str, border: Border) -> Iterator[Length]:
    yield length(name, "length", border.side_length)
    yield length(name, "length", border.end_length)
    yield Length(name, "measure", tuple(border.after))
    around = 2 * border.side_length + 2 * border.end_length
    yield length(name, "other", around)
    for part in border.parts:
        yield length(name, "finished", part.across, part.down)


def of_quilt(known: Evidence) -> Iterator[Length]:
    """Seam, widths, allowances of triangles, and how far apart it is quilted."""
    quilt = known.quilt
    if quilt.finished:
        yield Length("top", "finished", tuple(quilt.finished))
        yield length("top", "measure", *(side + 2 * quilt.seam for side in quilt.finished))
    yield length("seam", "other", quilt.seam, 2 * quilt.seam)
    yield length("width", "other", quilt.width)
    for diagonals in (1, 2):
        yield length("allowance", "other", triangle_allowance(quilt.seam, diagonals, quilt.system))
    for fabric in quilt.fabrics.values():
        yield length(fabric.name, "other", fabric.width, *(fabric.size or ()))
    for design in quilt.quilting:
        if design.spacing:
            yield length("quilting", "other", design.spacing)
    rules = quilt.settings
    yield length("settings", "other", rules.trimming, rules.binding_over, rules.drift)
    yield length("settings", "other", rules.spare, rules.straightening, rules.backing_seam)
