"""Amounts of cloth in sentences: yards and metres of a fabric as it is bought."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from patternbook.notice import Notice
from patternbook.proof.prose.lengths import nearest
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import Facts
from patternbook.proof.prose.speech import Mention, Speech, part_at
from patternbook.proof.prose.told import as_written, told

_LEFT: Final = re.compile(r" (?:left|over|more|extra|spare)\b")


def bought_fault(
    speech: Speech, figure: Figure, facts: Facts, named: Sequence[Mention]
) -> Notice | None:
    """What is wrong with an amount of cloth, in yards or metres."""
    if _LEFT.match(speech.text, figure.close):
        return None
    part, _ = part_at(speech, figure, named)
    quilt = facts.known.quilt
    piece = quilt.pieces.get(part or "")
    cloth = (
        piece.fabric
        if piece
        else quilt.binding.fabric
        if part == "binding" and quilt.binding
        else part
    )
    # An amount in metres stands apart only where the pattern is in inches.
    other = figure.unit == "m" and quilt.system.unit == "in"
    bought = [f for f in facts.lengths if f.kind == ("metres" if other else "bought")]
    own = [fact for fact in bought if fact.part == cloth] or bought
    if any(figure.value in facts.ways(side) for fact in own for side in fact.sides):
        return None
    amounts = [
        f for f in own if facts.known.cutting.fabrics.get(f.part) or f.part == "backing"
    ] or own
    found = nearest(figure, amounts)
    if found is None:
        return None
    needed = as_written(figure, found[1], quilt)
    message = (
        f"the sentence says {speech.written(figure.start, figure.close)}; of {found[0].part} "
        f"{needed} {figure.unit} are bought."
    )
    span = (figure.start, figure.end)
    return told("said-yards", "R4", speech, span, message, needed=needed, sizes=(quilt.size,))


def is_bought(figure: Figure) -> bool:
    """Whether it is an amount of cloth."""
    return figure.unit in ("yd", "m")
