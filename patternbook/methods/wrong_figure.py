"""A figure of the author's that is wrong, told where it stands, with what belongs there."""

from __future__ import annotations

from typing import Protocol

from patternbook.methods.world import Diagonal, World
from patternbook.notice import Edit, Mark, Notice, Place


class Typed(Protocol):
    """A value as it was typed, and where."""

    @property
    def text(self) -> str: ...
    @property
    def place(self) -> Place: ...


def wrong_figure(
    world: World, code: str, rule: str, message: str, value: Typed, needed: str
) -> None:
    """Tell an error at the figure; writing `needed` there would mend it."""
    world.tell(
        Notice(
            code,
            "error",
            "quilt",
            message,
            (Mark(value.place, "stated here"),),
            rule,
            (world.size,),
            value.text,
            needed,
            f"Write {needed}, or leave it out and it is worked out.",
            (Edit(value.place, value.text, needed),),
        )
    )


def other_diagonal(
    part: str, message: str, wanted: Diagonal | None, world: World, place: Place | None, hint: str
) -> None:
    """Told where it is said how often the piece is cut on the diagonal, if it is said."""
    at, stated = world.place_of(part, "diagonal"), world.diagonal(part)
    edits = (Edit(at, stated, wanted),) if at and stated and wanted else ()
    spots = ((at, "cut so"), (place, "the unit"))
    marks = tuple(Mark(spot, role) for spot, role in spots if spot)
    figures = (stated, wanted, hint)
    size = (world.size,)
    world.tell(Notice("diagonal", "error", "quilt", message, marks, "R2", size, *figures, edits))
