"""A figure that stands in two places of a printed pattern is the same in both."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from functools import partial
from typing import Final

from patternbook.inch import plain
from patternbook.notice import Notice, Place
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import mended_by_figure, place_of, recounted
from patternbook.quilt.records import Again, CutSize, Quilt, Sides, StripSetMade

Value = CutSize | Fraction | int | str
# Several, where a part has several figures of one kind, as a border its two lengths.
Found = Value | tuple[Fraction, ...]
Reading = Callable[[str, Evidence], Found | None]


def again(evidence: Evidence) -> Iterator[Notice]:
    """An error where another place names what there is not, or says another figure."""
    for said in evidence.quilt.again:
        read = READ[said.figure](said.part, evidence)
        found = _one(read, said.value)
        if found is None:
            yield _no_figure(said, evidence.quilt)
        elif not _agrees(said, found, evidence.quilt):
            yield _differs(said, found, evidence.quilt)


def _one(found: Found | None, value: Value) -> Value | None:
    """Of several figures of one kind the nearest."""
    if not isinstance(found, tuple) or isinstance(found, CutSize):
        return found
    if not found or not isinstance(value, Fraction):
        return None
    return min(found, key=lambda length: abs(length - value))


def _agrees(said: Again, found: Value, quilt: Quilt) -> bool:
    """Amounts that the part itself does not state may be more than is needed."""
    held = quilt.pieces.get(said.part) or quilt.fabrics.get(said.part)
    alone = held is not None and said.figure not in held.key_places
    if alone and said.figure in AT_LEAST and isinstance(said.value, int | Fraction):
        return isinstance(found, int | Fraction) and said.value >= found
    return found == said.value


def _no_figure(said: Again, quilt: Quilt) -> Notice:
    known = said.part in (*quilt.pieces, *quilt.units, *quilt.fabrics, *FINISHING)
    message = f"{said.where} says the {said.figure} of {said.part}, which has none."
    hint = f"Leave it out, or state it at {said.part}."
    if not known:
        message = f"{said.where} speaks of {said.part}, and nothing in the pattern is called that."
        hint = f"Parts: {', '.join((*quilt.pieces, *quilt.units, *quilt.fabrics))}."
    return recounted(quilt, "elsewhere-part", "R19", message, said.place, hint=hint)


def _differs(said: Again, found: Value, quilt: Quilt) -> Notice:
    stated, needed = typed(said.value, quilt), typed(found, quilt)
    word = WORDS.get(said.figure, said.figure.replace("-", " "))
    message = f"{said.where} says {stated} for the {word} of {said.part}; the pattern has {needed}."
    rule = "R11" if said.figure == "fabric" else "R20"
    places = (said.place, *_beside(said, quilt))
    hint = f"Write {needed} at {said.where}, or mend it where the part stands."
    figures = (stated, needed)
    return mended_by_figure(
        recounted(quilt, "elsewhere", rule, message, *places, figures=figures, hint=hint)
    )


def _beside(said: Again, quilt: Quilt) -> Iterator[Place | None]:
    """Where the pattern itself gives the figure, or at least the part."""
    held = quilt.pieces.get(said.part) or quilt.fabrics.get(said.part)
    if held is not None:
        yield held.key_places.get(said.figure, held.place)
    elif said.part in quilt.units:
        yield place_of(quilt, "units", said.part, said.figure) or quilt.units[said.part].place


def typed(value: Value, quilt: Quilt) -> str:
    """A figure as the author types it."""
    if isinstance(value, CutSize):
        cm = quilt.system.unit == "cm"
        if value.down is None:
            return f"{plain(value.across, cm)} x WOF"
        if value.across == value.down:
            return f"{plain(value.across, cm)} square"
        return f"{plain(value.across, cm)} x {plain(value.down, cm)}"
    return plain(value, quilt.system.unit == "cm") if isinstance(value, Fraction) else str(value)


def _sides(sides: Sides, quilt: Quilt) -> CutSize:
    """On the ruler's marks, where a diagonal has none."""
    step = quilt.system.step
    across, down = (
        side.fraction if side.rational else (side + step / 2).down(step) for side in sides
    )
    return CutSize(across, down)


def _cut(part: str, known: Evidence) -> Value | None:
    if part == "binding" and known.quilt.binding:
        return CutSize(known.quilt.binding.cut, None)
    piece = known.quilt.pieces.get(part)
    return piece.cut if piece else None


def _finished(part: str, known: Evidence) -> Value | None:
    held = known.quilt.pieces.get(part) or known.quilt.units.get(part)
    return _sides(held.finished, known.quilt) if held else None


def _measure(part: str, known: Evidence) -> Value | None:
    unit = known.quilt.units.get(part)
    return _sides(unit.measure, known.quilt) if unit else None


def _size(part: str, known: Evidence) -> Value | None:
    plan = {"backing": known.cutting.backing, "batting": known.cutting.batting}.get(part)
    if plan is not None:
        return plan.size
    cloth = known.quilt.fabrics.get(part)
    if cloth is not None:
        return cloth.size
    return _cut(part, known) or _measure(part, known)


def _length(part: str, known: Evidence) -> Found | None:
    if part == "binding":
        return known.cutting.binding.length if known.cutting.binding else None
    piece = known.quilt.pieces.get(part)
    if piece is None:
        return None
    if piece.cut.down is not None:
        return piece.cut.down
    return tuple(dict.fromkeys(run.length for run in piece.runs))


def _count(part: str, known: Evidence) -> Value | None:
    piece = known.quilt.pieces.get(part)
    if piece is None:
        return _make(part, known)
    return sum(run.number for run in piece.runs) if piece.is_strip else piece.count


def _make(part: str, known: Evidence) -> Value | None:
    unit = known.quilt.units.get(part)
    return unit.make if unit else None


def _squares(part: str, known: Evidence) -> Value | None:
    plan = known.cutting.letters.get(part)
    return plan.cuts if plan else None


def _strips(part: str, known: Evidence) -> Value | None:
    if part == "binding":
        return known.cutting.binding.strips if known.cutting.binding else None
    plan = known.cutting.letters.get(part)
    return plan.strips if plan else None


def _packs(part: str, known: Evidence) -> Value | None:
    cloth = known.cutting.fabrics.get(part)
    return cloth.buy.packs if cloth else None


def _yards(part: str, known: Evidence) -> Value | None:
    cloth = known.cutting.fabrics.get(part)
    return cloth.buy.amount if cloth and cloth.buy.unit == "yd" else None


def _metres(part: str, known: Evidence) -> Value | None:
    cloth = known.cutting.fabrics.get(part)
    if cloth is None:
        return None
    return cloth.buy.amount if cloth.buy.unit == "m" else cloth.buy.metres


def _set(part: str, known: Evidence, figure: str) -> Value | None:
    """A figure of a strip set."""
    made = known.quilt.units[part].made if part in known.quilt.units else None
    if not isinstance(made, StripSetMade):
        return None
    found: dict[str, Value] = {
        "segment": made.segment,
        "set-measure": made.set_width.fraction,
        "sets": made.sets,
        "per-set": made.per_set,
    }
    return found[figure]


def _borders(part: str, known: Evidence, figure: str) -> Found | None:
    """The lengths of the borders that are of this part, or lie in this unit; the quilt before
    them."""
    layouts = [(unit.name, made) for unit, made in known.layouts()]
    if figure == "before-borders":
        sides = [made.before_borders for name, made in layouts if name == part]
        return _sides(sides[0], known.quilt) if sides else None
    return tuple(
        (border.side_length if figure == "side-length" else border.end_length).up(
            known.quilt.system.step
        )
        for name, made in layouts
        for number, border in enumerate(made.borders, 1)
        if part in {name, border.side, border.end, f"border-{number}"}
    )


def _per_strip(part: str, known: Evidence) -> Value | None:
    plan = known.cutting.letters.get(part)
    return (plan.per_strip or None) if plan else None


def _strip_length(part: str, known: Evidence) -> Value | None:
    plan = known.cutting.letters.get(part)
    return Fraction(plan.cuts * plan.along) if plan and plan.along else None


def _panels(part: str, known: Evidence) -> Value | None:
    plan = known.cutting.backing
    return plan.best.panels if plan and part == "backing" else None


def _pieces(part: str, known: Evidence) -> Value | None:
    return sum(known.lies.values()) if part == known.quilt.top else None


def _fabric(part: str, known: Evidence) -> Value | None:
    if part == "binding" and known.quilt.binding:
        return known.quilt.binding.fabric
    if part == "backing" and known.quilt.backing:
        return known.quilt.backing.fabric
    piece = known.quilt.pieces.get(part)
    return piece.fabric if piece else None


AT_LEAST: Final = (
    "squares",
    "strips",
    "strip-length",
    "sets",
    "panels",
    "packs",
    "yards",
    "metres",
)
SETS: Final = ("segment", "set-measure", "sets", "per-set")
BORDERS: Final = ("before-borders", "side-length", "end-length")
WORDS: Final = {"finished": "finished size", "count": "number", "make": "number"}
FINISHING: Final = ("binding", "backing", "batting")
READ: Final[Mapping[str, Reading]] = {
    "fabric": _fabric,
    "cut": _cut,
    "finished": _finished,
    "measure": _measure,
    "size": _size,
    "length": _length,
    "count": _count,
    "make": _make,
    "squares": _squares,
    "strips": _strips,
    "packs": _packs,
    "per-strip": _per_strip,
    "strip-length": _strip_length,
    "panels": _panels,
    "pieces": _pieces,
    **{word: partial(_set, figure=word) for word in SETS},
    **{word: partial(_borders, figure=word) for word in BORDERS},
    "yards": _yards,
    "metres": _metres,
}
