"""Which designs suit which kind of area, the best first: the house's taste (booklets and classes
agree on the outline of it: plain lines over busy piecing, figures on open ground; common practice,
no source)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from patternbook.quilting.designs import by_name
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.records import AreaKind, Foot

WALKING: Final[Mapping[AreaKind, tuple[str, ...]]] = {
    "body": ("diagonal lines", "slanted lines", "wavy lines", "straight lines", "cross-hatch"),
    "piecing": ("diagonal lines", "slanted lines", "straight lines", "wavy lines", "cross-hatch"),
    "figure": ("echoes",),
    "ground": ("straight lines", "wavy lines", "cross-hatch", "frames going inward", "echoes"),
    "square": ("frames going inward", "cross-hatch", "straight lines", "echoes", "diagonal lines"),
    "band": ("wavy lines", "echoed zigzag", "straight lines", "cross-hatch"),
    "corner": ("frames going inward", "straight lines", "cross-hatch"),
    "channel": ("straight lines", "border lines", "wavy lines"),
    "border": ("border lines", "straight lines", "echoed zigzag", "wavy lines"),
}
RULER: Final[Mapping[AreaKind, tuple[str, ...]]] = {
    "body": ("diagonal lines", "straight lines", "cross-hatch"),
    "piecing": ("diagonal lines", "slanted lines", "straight lines", "cross-hatch"),
    "figure": ("echoes",),
    "ground": ("cross-hatch", "frames going inward", "straight lines", "echoes"),
    "square": ("frames going inward", "cross-hatch", "straight lines"),
    "band": ("echoed zigzag", "cross-hatch", "straight lines"),
    "corner": ("frames going inward", "cross-hatch", "straight lines"),
    "channel": ("border lines", "straight lines"),
    "border": ("echoed zigzag", "border lines", "straight lines"),
}
FREE: Final[Mapping[AreaKind, tuple[str, ...]]] = {
    "body": ("meander", "echoed swirls"),
    "piecing": ("meander",),
    "figure": ("echoes",),
    "ground": ("meander", "echoed swirls", "echoes", "pebbles"),
    "square": ("echoed swirls", "meander", "echoes", "pebbles"),
    "band": ("echoed swirls", "meander"),
    "corner": ("echoed swirls", "meander", "echoes"),
    "channel": ("starbursts", "meander"),
    "border": ("starbursts", "meander", "echoed swirls"),
}
BY_FOOT: Final[Mapping[Foot, Mapping[AreaKind, tuple[str, ...]]]] = {
    "walking foot": WALKING,
    "ruler": RULER,
    "free motion": FREE,
}
# Busy piecing is quilted plainly whatever the skill: a figure would be lost among the seams.
ROUND_A_SHAPE: Final = "echoes"  # the design of ground that lies round a shape
BUSY: Final = frozenset[AreaKind]({"body", "piecing"})


def suited(kind: AreaKind, foot: Foot, *, sampler: bool = False) -> Sequence[Design]:
    """The designs for a kind of area in one way of sewing, the best first; what the walking foot
    does follows where that way has nothing that comes out."""
    names = list(WALKING[kind] if kind in BUSY else BY_FOOT[foot][kind])
    if sampler and kind not in BUSY:
        names += [*WALKING[kind], *RULER[kind], *FREE[kind]]
    names += WALKING[kind]
    return [by_name[name] for name in dict.fromkeys(names) if name in by_name]


def foot_for(kind: AreaKind, design: Design, skill: Foot) -> Foot:
    """How a design is sewn in such an area by one who sews that way."""
    if kind not in BUSY and skill in design.sewn and design.name in BY_FOOT[skill][kind]:
        return skill
    return design.foot


def best(room: Room, foot: Foot) -> Design | None:
    """The first design that suits a room and can be sewn in one way."""
    names = BY_FOOT[foot][room.kind]
    if room.shape.interiors:
        names = (ROUND_A_SHAPE, *names)
    found = [by_name[name] for name in names if name in by_name]
    fit = (design for design in found if foot in design.sewn and design.suits(room))
    return next(fit, None)
