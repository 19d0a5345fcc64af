"""Designs of the author's own: printed as she says, and not drawn."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.notice import Mark, Notice
from patternbook.quilt.records import Quilt
from patternbook.quilting.asked import SAMPLER
from patternbook.quilting.designs import by_name


def own_designs(quilt: Quilt) -> Iterator[Notice]:
    """Advice for each design that there is no drawing of."""
    for one in quilt.quilting:
        if one.design is None or one.design == SAMPLER or one.design in by_name:
            continue
        place = one.key_places.get("design") or one.place
        yield Notice(
            "quilting-design",
            "advice",
            "quilting",
            f"`{one.design}` is no design that is drawn here: the booklet prints it as your word "
            f"for {one.area}, and draws one of its own.",
            (Mark(place, "asked for here"),) if place else (),
            None,
            (quilt.size,),
            one.design,
            None,
            f"Designs: {', '.join(by_name)}; or `{SAMPLER}` for all over.",
        )
