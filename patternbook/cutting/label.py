"""The label: how large it is cut, whose spare cloth holds it, and whether its words go on to it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final, Literal

from patternbook.cutting.backing import sides_for
from patternbook.cutting.finishing import LabelPlan
from patternbook.cutting.let_in import spares
from patternbook.cutting.records import BackingPlan, FabricPlan
from patternbook.cutting.told import Told, anywhere, long, sized, times
from patternbook.inch import ruler_up
from patternbook.notice import Notice
from patternbook.quilt.records import CutSize, Label, Quilt

# What a line of handwriting takes (common practice, no source).
LINE: Final = {"in": Fraction(1, 2), "cm": Fraction(5, 4)}
# What a label says: sources beside the test of the page that prints it.
USUAL: Final = (
    "the quilt's name",
    "who made it",
    "who quilted it",
    "for whom",
    "the date",
    "the place",
    "the fibre",
    "how to wash it",
)
Tone = Literal["light", "medium", "dark"] | None
# What writing shows on best; on dark cloth it does not.
TONES: Final[dict[Tone, int]] = {"light": 0, None: 1, "medium": 2, "dark": 3}


def label_plan(
    quilt: Quilt, backing: BackingPlan | None, fabrics: Mapping[str, FabricPlan]
) -> LabelPlan | None:
    """The label of this size; None where the quilt has none or no size."""
    label = quilt.label
    if label is None or quilt.finished is None:
        return None
    finished = CutSize(label.size.across, label.size.down or label.size.across)
    cut = CutSize(*(ruler_up(side + 2 * quilt.seam, quilt.system) for side in finished if side))
    trimmed = backing is not None and _trimmed_off(backing, cut)
    trim = backing.fabric if backing and trimmed else None
    holds = _holding(quilt, cut, backing, fabrics)
    if label.fabric is not None:
        source = label.fabric if label.fabric in (*holds, trim) else None
    else:
        shows = (name for name in (*holds, trim) if name and _tone(quilt, name) != "dark")
        source = next(shows, None)
    return LabelPlan(
        finished,
        cut,
        source,
        holds,
        label.lines or USUAL,
        int((finished.down or 0) // LINE[quilt.system.unit]),
        trimmed and source == trim and source not in holds,
    )


def _holding(
    quilt: Quilt, cut: CutSize, backing: BackingPlan | None, fabrics: Mapping[str, FabricPlan]
) -> tuple[str, ...]:
    """The fabrics whose spare cloth holds it, the lightest first; not those whose spare cloth
    goes into the backing."""
    insert = backing.best.insert if backing else None
    used = {one.fabric for one in insert.patches} if insert else set()
    holds = [
        spare.fabric
        for spare in spares(quilt, fabrics, None)
        if spare.fabric not in used and spare.fabric in quilt.fabrics
        if _fits(cut, CutSize(spare.width, spare.deep))
    ]
    return tuple(sorted(holds, key=lambda name: TONES[_tone(quilt, name)]))


def _tone(quilt: Quilt, name: str) -> Tone:
    return quilt.fabrics[name].tone if name in quilt.fabrics else None


def _trimmed_off(backing: BackingPlan, cut: CutSize) -> bool:
    """Whether the strip that is trimmed off the seamed backing holds it."""
    covered, each = sides_for(backing.size, backing.best.seams)
    return _fits(cut, CutSize(backing.best.made - covered, each))


def _fits(cut: CutSize, piece: CutSize) -> bool:
    """Either way round."""
    need, have = (sorted((side.across, side.down or side.across)) for side in (cut, piece))
    return need[0] <= have[0] and need[1] <= have[1]


def label_notices(quilt: Quilt, plan: LabelPlan) -> Iterator[Notice]:
    """The stated fabric and lines against the spare cloth and the label's height."""
    label = quilt.label
    if label is None:
        return
    yield from _cloth(quilt, label, plan)
    line = LINE[quilt.system.unit]
    if label.lines and len(plan.lines) > plan.room:
        message = (
            f"label: {times(len(plan.lines), 'line')} of {long(line, quilt.system)} do not go on "
            f"to {sized(plan.finished, quilt.system)}, which has room for {plan.room}."
        )
        at = label.places.get("size", label.places.get("lines"))
        yield Told("label-crowded", None, at, anywhere(quilt, label.places)).notice(
            quilt, "warning", message, str(len(plan.lines)), str(plan.room)
        )


def _cloth(quilt: Quilt, label: Label, plan: LabelPlan) -> Iterator[Notice]:
    if label.fabric is None or label.fabric not in quilt.fabrics or plan.source is not None:
        return
    message = (
        f"label: cut {sized(plan.cut, quilt.system)} it is larger than any piece that is over of "
        f"{label.fabric}."
    )
    others = f"{' or '.join(plan.fabrics)} has one: name it" if plan.fabrics else "Make it smaller"
    hint = f"{others}, or leave `fabric` out."
    yield Told("label-short", None, label.places.get("fabric"), None, hint).notice(
        quilt, "error", message
    )
