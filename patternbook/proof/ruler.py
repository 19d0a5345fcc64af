"""Every size that is to be cut stands on the ruler: eighths of an inch, or quarters of a
centimetre."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import on_the_ruler
from patternbook.notice import Notice, Place, Severity
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import place_of, recounted, typed
from patternbook.quilt.records import Piece, Quilt


def ruler(evidence: Evidence) -> Iterator[Notice]:
    """An error for a size that no ruler shows, a warning for sixteenths of an inch."""
    quilt = evidence.quilt
    for piece in quilt.pieces.values():
        yield from _cut(quilt, piece)
        if piece.strip_width is not None:
            at = piece.key_places.get("strip-width")
            yield from _on_it(quilt, f"the strips of {piece.letter}", piece.strip_width, at)
    for unit, made in evidence.strip_sets():
        at = place_of(quilt, "units", unit.name, "segment")
        yield from _on_it(quilt, f"a slice of '{unit.name}'", made.segment, at, unit.place)
    if quilt.binding is not None:
        at = quilt.binding.places.get("cut")
        yield from _on_it(quilt, "the binding's strips", quilt.binding.cut, at)


def _cut(quilt: Quilt, piece: Piece) -> Iterator[Notice]:
    """Both sides, a square's once. A template's own shape is not asked, but the cloth that is cut
    for it is: it is cut along the ruler first."""
    across, down = piece.cut
    sides = [("across", "square", across)] if across == down else [("across", "wide", across)]
    if down is not None and across != down:
        sides.append(("down", "long", down))
    for side, word, cut in sides:
        at = place_of(quilt, "pieces", piece.letter, "cut", side)
        places = (at or piece.key_places.get("cut"), piece.place)
        yield from _on_it(quilt, f"{piece.letter}, cut {word}", cut, *places)


def _on_it(quilt: Quilt, what: str, cut: Fraction, *places: Place | None) -> Iterator[Notice]:
    system = quilt.system
    if on_the_ruler(cut, system):
        return
    down, up = (
        typed(edge, quilt) for edge in (Exact(cut).down(system.step), Exact(cut).up(system.step))
    )
    sixteenth = system.unit == "in" and cut % Fraction(1, 16) == 0
    severity: Severity = "warning" if sixteenth else "error"
    why = "few rulers show sixteenths" if sixteenth else "no ruler shows it"
    message = f"{what} {typed(cut, quilt)}: {why}. Nearest are {down} and {up}."
    yield recounted(
        quilt,
        "off-ruler",
        "R23",
        message,
        *places,
        figures=(typed(cut, quilt), up),  # a cut may be trimmed, never grown (trade facts 1.5)
        hint=f"Cut it {up}, and trim.",
        severity=severity,
    )
