"""Cutting lays for the left hand: the right way round mirrored, the words still upright."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from patternbook.diagrams.at_need import Changed
from patternbook.strokes.placing import Placing
from patternbook.strokes.stroke import Anchor, Drawing, Label, Stroke

MIRRORED: Final = ("lay-",)  # drawings whose names begin so show which side to cut from
FROM: Final = ("from the left", "from the right")
OTHER_END: Final[Mapping[Anchor, Anchor]] = {"start": "end", "middle": "middle", "end": "start"}


def left_handed(drawings: Mapping[str, Drawing]) -> Mapping[str, Drawing]:
    """The same drawings, the cutting lays mirrored."""
    return Changed(drawings, _turned)


def _turned(drawing: Drawing) -> Drawing:
    return mirrored(drawing) if drawing.name.startswith(MIRRORED) else drawing


def mirrored(drawing: Drawing) -> Drawing:
    """Left for right; words that stood behind a place now stand before it. Words that lie or
    stand go on lying and standing."""
    placing = Placing.still.mirrored().moved(drawing.width, 0)
    strokes = tuple(_other_way(placing.stroke(stroke)) for stroke in drawing.strokes)
    return replace(drawing, strokes=strokes, alt=drawing.alt.replace(*FROM))


def _other_way(stroke: Stroke) -> Stroke:
    if isinstance(stroke, Label):
        return replace(stroke, anchor=OTHER_END[stroke.anchor])
    return stroke
