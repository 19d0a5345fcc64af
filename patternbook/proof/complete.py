"""Nothing is missing, nothing is over: fabrics named are listed, and those listed are used."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from patternbook.notice import Notice, Place, Severity
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import OURS, recounted
from patternbook.quilt.records import PiecedMade, Quilt


def complete(evidence: Evidence) -> Iterator[Notice]:
    """Errors for a fabric that nobody lists, a patch of no fabric, a part that nobody makes."""
    quilt = evidence.quilt
    for what, fabric, *places in _named(quilt):
        if fabric not in quilt.fabrics and quilt.fabrics:
            yield _unknown(quilt, what, fabric, *places)
    for piece in quilt.pieces.values():
        if piece.fabric is None and quilt.fabrics and quilt.top:
            message = f"{piece.letter} has no fabric: a reader cannot buy it."
            hint = f"Write `fabric:` at {piece.letter}."
            severity: Severity = "error" if _whole(quilt) else "advice"
            yield recounted(
                quilt, "no-fabric", "R10", message, piece.place, hint=hint, severity=severity
            )
    yield from _unbought(quilt)
    yield from _parts(quilt)


def _unbought(quilt: Quilt) -> Iterator[Notice]:
    """An error for a binding that names no fabric, in a pattern that lists its fabrics."""
    binding = quilt.binding
    if binding is not None and not binding.fabric and quilt.fabrics and quilt.top:
        place = next(iter(binding.places.values()), None)
        severity: Severity = "error" if _whole(quilt) else "advice"
        message = "the binding has no fabric: a reader cannot buy it."
        hint = "Write `fabric:` at the binding."
        yield recounted(quilt, "no-fabric", "R10", message, place, hint=hint, severity=severity)


def _whole(quilt: Quilt) -> bool:
    """Whether this is a pattern with sizes, and not a fragment."""
    return quilt.size != "one" or ("sizes", "finished", "across") in quilt.standings


def _named(quilt: Quilt) -> Iterator[tuple[str, str, Place | None, Place | None]]:
    """Whatever names a fabric, the fabric, and where."""
    for piece in quilt.pieces.values():
        if piece.fabric is not None:
            yield piece.letter, piece.fabric, piece.key_places.get("fabric"), piece.place
    for unit in quilt.units.values():
        if isinstance(unit.made, PiecedMade) and unit.made.fused is not None:
            yield f"the web of '{unit.name}'", unit.made.fused.web, unit.place, None
    if quilt.binding is not None and quilt.binding.fabric:
        yield "the binding", quilt.binding.fabric, quilt.binding.places.get("fabric"), None
    if quilt.backing is not None and quilt.backing.fabric:
        yield "the backing", quilt.backing.fabric, quilt.backing.places.get("fabric"), None
    if quilt.label is not None and quilt.label.fabric:
        yield "the label", quilt.label.fabric, quilt.label.places.get("fabric"), None


def _unknown(quilt: Quilt, what: str, fabric: str, *places: Place | None) -> Notice:
    near = get_close_matches(fabric, quilt.fabrics, 1)
    hint = f"Did you mean '{near[0]}'?" if near else f"Fabrics: {', '.join(quilt.fabrics)}."
    message = f"{what} is of '{fabric}', and no fabric is called that."
    figures = (fabric, near[0]) if near else None
    return recounted(quilt, "unknown-fabric", "R11", message, *places, figures=figures, hint=hint)


def _parts(quilt: Quilt) -> Iterator[Notice]:
    """Every part that is laid is cut or sewn before the unit it is laid in."""
    ready = set(quilt.pieces)
    for unit in quilt.units.values():
        for part in dict.fromkeys(placed.part for placed in unit.placed):
            if part not in ready:
                word = "made only after it" if part in quilt.units else "neither cut nor sewn"
                message = f"'{unit.name}' takes {part}, which is {word}."
                yield recounted(quilt, "part-missing", "R10", message, unit.place, hint=OURS)
        ready.add(unit.name)


def unused_fabrics(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """A warning for every fabric that no size uses."""
    if not sizes or any(one.quilt.top is None for one in sizes):
        return
    used = {fabric for one in sizes for _, fabric, *_ in _named(one.quilt)}
    for name, fabric in sizes[0].quilt.fabrics.items():
        if name not in used:
            message = f"the fabric '{name}' is listed and used nowhere."
            hint = "Use it in a piece, the backing or the binding, or leave it out."
            for one in sizes:
                yield recounted(
                    one.quilt,
                    "unused-fabric",
                    "R10",
                    message,
                    fabric.place,
                    hint=hint,
                    severity="warning",
                )
