"""Notices of the cutting table, and the rule for figures that are stated to be at least so much."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from patternbook.inch import System, length, plain, printed, size
from patternbook.notice import Edit, Mark, Notice, Place, Severity
from patternbook.quilt.records import CutSize, Quilt


@dataclass(frozen=True)
class Told:
    """What a notice is about, before it is known whether one is needed."""

    code: str
    rule: str | None = None
    stated_at: Place | None = None
    place: Place | None = None
    hint: str | None = None

    def notice(
        self,
        quilt: Quilt,
        severity: Severity,
        message: str,
        stated: str | None = None,
        needed: str | None = None,
        *,
        mend: bool = False,
    ) -> Notice:
        """The notice for one size; `mend`: writing `needed` for `stated` would mend it."""
        marks = [Mark(self.stated_at, "stated here")] if self.stated_at else []
        if self.place and self.place != self.stated_at:
            marks.append(Mark(self.place, "cut here"))
        edits: tuple[Edit, ...] = ()
        hint = self.hint
        if mend and self.stated_at and stated and needed:
            edits = (Edit(self.stated_at, stated, needed),)
            hint = hint or f"Write {needed}, or leave it out and it is worked out."
        return Notice(
            self.code,
            severity,
            "cutting",
            message,
            tuple(marks),
            self.rule,
            (quilt.size,),
            stated,
            needed,
            hint,
            edits,
        )


def anywhere(quilt: Quilt, places: Mapping[str, Place]) -> Place | None:
    """Where something stands of which no single figure is stated."""
    return next(iter(places.values()), quilt.place)


def spare_severity(stated: Fraction | int, needed: Fraction | int) -> Severity:
    """More than is needed is obeyed and told; beyond a third more it is a warning (R15)."""
    return "warning" if 3 * stated > 4 * needed else "advice"


def number(value: Fraction, system: System) -> str:
    """A bare number of a sum."""
    return printed(value, system.unit == "cm")


def typed(value: Fraction | int, system: System) -> str:
    """A number as the author types it."""
    return plain(value, system.unit == "cm")


def typed_size(cut: CutSize, system: System) -> str:
    """A size as the author types it."""
    sides = (side for side in cut if side is not None)
    return " x ".join(typed(side, system) for side in sides)


def resized(at: Place | None, old: CutSize, new: CutSize, system: System) -> tuple[Edit, ...]:
    """One of several changes that would do: another size, with the word `square` if the old one
    was typed with it."""
    if at is None:
        return ()
    square = f"{typed(old.across, system)} square"
    by_side = old.across == old.down and at.end_column - at.column == len(square)
    text = square if by_side else typed_size(old, system)
    if new.across == new.down and by_side:
        return (Edit(at, text, f"{typed(new.across, system)} square", sure=False),)
    return (Edit(at, text, typed_size(new, system), sure=False),)


def long(value: Fraction, system: System) -> str:
    """A length with its mark."""
    return length(value, system)


def sized(cut: CutSize, system: System) -> str:
    """A size with its mark; a strip's length is the width of the cloth."""
    if cut.down is None:
        return f"{number(cut.across, system)}{system.mark} × width of the cloth"
    return size(cut.across, cut.down, system)


def times(count: int, one: str, many: str | None = None) -> str:
    """`1 strip`, `7 strips`."""
    return f"{count} {one if count == 1 else many or one + 's'}"
