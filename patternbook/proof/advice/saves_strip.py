"""A piece a little smaller, of which a strip gives one more (rule R4)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook.forms import by_length
from patternbook.inch import length, printed
from patternbook.notice import Notice, Place
from patternbook.proof.advice.told import advised
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece

# Common practice, no source: what a designer may still take off a piece. A larger piece is not
# looked for: no strip ever holds more of it, so it can save no cloth.
SMALLER: Final = {"in": Fraction(1, 2), "cm": Fraction(1)}


def saves_strip(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Each letter of which it saves as much cloth as the shop cuts least."""
    found: dict[str, str] = {}
    beside: dict[str, str] = {}
    place: Place | None = None
    for one in sizes:
        words = []
        for piece in one.quilt.pieces.values():
            if saved := _saved(one, piece):
                words.append(f"{piece.letter} {saved}")
                beside[piece.letter] = _sewn_to(one, piece.letter)
                place = place or piece.key_places.get("cut", piece.place)
        if words:
            found[one.quilt.size] = ", and ".join(words)
    hint = "Take it where the design allows a smaller block; otherwise leave the size as it is."
    before, after = "A smaller piece would save cloth:", _changed(beside)
    yield from advised("saves-strips", "R4", found, place, before, after, hint=hint)


def _sewn_to(one: Evidence, letter: str) -> str:
    """What it is sewn to in any unit, which is then too large for it."""
    units = [unit.uses for unit in one.quilt.units.values() if letter in unit.uses]
    return ", ".join(dict.fromkeys(part for uses in units for part in uses if part != letter))


def _changed(beside: Mapping[str, str]) -> str:
    told = [f"{other} with {letter}" for letter, other in beside.items() if other]
    return f"What it is sewn to changes too: {'; '.join(told)}." if told else ""


def _saved(one: Evidence, piece: Piece) -> str | None:
    """How many strips fewer, where they hold this letter alone and are cut whole."""
    plan, quilt = one.cutting.letters.get(piece.letter), one.quilt
    cloth = quilt.fabrics.get(piece.fabric or "")
    if plan is None or cloth is None or not by_length(cloth.form) or plan.along is None:
        return None
    if plan.joined or plan.host or piece.is_strip or piece.template or piece.along == "length":
        return None
    fits = cloth.width // plan.along
    if not fits or -(-plan.cuts // fits) != plan.own:
        return None
    step, system = quilt.system.step, quilt.system
    along = cloth.width / (fits + 1) // step * step
    fewer = plan.own - -(-plan.cuts // (fits + 1))
    saved = fewer * plan.strip_width
    if plan.along - along > SMALLER[system.unit] or saved < _least(one):
        return None
    width = printed(plan.strip_width, system.unit == "cm")
    return (
        f"{length(along, system)} along the strip, not {length(plan.along, system)}: {plan.cuts} "
        f"at {fits + 1} a strip, not {fits}, take {plan.own - fewer} of them, not {plan.own} "
        f"({fewer} × {width} = {length(saved, system)} of cloth)"
    )


def _least(one: Evidence) -> Fraction:
    """The least amount that the shop cuts, in the pattern's unit."""
    rules, system = one.quilt.settings, one.quilt.system
    return (rules.metre_step if system.unit == "cm" else rules.yard_step) * system.bolt
