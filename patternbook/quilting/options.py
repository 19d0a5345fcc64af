"""What an area could be filled with: each design at each spacing that the batting allows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.quilting.density import density
from patternbook.quilting.designs.form import Design, Room
from patternbook.quilting.gap import quick
from patternbook.quilting.records import Drawn, Foot, Wishes, measured
from patternbook.quilting.taste import foot_for

# A design that leaves more than this share of the limit open in its own area is not taken: where
# two areas meet the gap may be wider.
ROOMY: Final = 0.98
TRIES: Final = 6  # spacings tried of one design


@dataclass(frozen=True)
class Option:
    """One design at one spacing, as it comes out in the largest area of a letter."""

    rank: int
    design: Design
    foot: Foot
    asked: float
    seed: int
    drawn: Drawn
    gap: float
    density: float
    again: float  # the share of the path that lies on the rim, or on itself


def options(
    room: Room, designs: Sequence[Design], skill: Foot, wishes: Wishes, wanted: float, seed: int
) -> Iterator[Option]:
    """All that come out in one path (a body in two), the best design first, each at the spacings
    that come nearest to the density wanted (lines that are 1 / `wanted` apart)."""
    for rank, design in enumerate(designs):
        if room.kind in design.kinds and design.suits(room):
            yield from _spacings(room, rank, design, skill, wishes, wanted, seed)


def _spacings(
    room: Room, rank: int, design: Design, skill: Foot, wishes: Wishes, wanted: float, seed: int
) -> Iterator[Option]:
    """First what comes nearest, then a mark closer and wider, and two closer."""
    step = room.rules.step
    asked, seen = round(1 / wanted / step) * step, set[float]()
    for _ in range(TRIES):
        if asked in seen or not step <= asked <= wishes.limit + step / 2:
            break
        seen.add(asked)
        made = option(room, rank, design, skill, asked, seed)
        if made is not None and made.gap <= wishes.limit * ROOMY:
            yield made
            asked = _nearer(made, wanted, step)
        else:
            asked -= step
    for marks in (-1, 1, -2):
        beside = min(seen) + marks * step
        if seen and step <= beside <= wishes.limit and beside not in seen:
            seen.add(beside)
            made = option(room, rank, design, skill, beside, seed)
            if made is not None and made.gap <= wishes.limit * ROOMY:
                yield made


def _nearer(made: Option, wanted: float, step: float) -> float:
    """The next spacing to try: as much closer as the density asks for."""
    aimed = round(made.asked * made.density / wanted / step) * step
    if aimed == made.asked:
        return made.asked - step if made.density < wanted else made.asked + step
    return aimed


def option(
    room: Room, rank: int, design: Design, skill: Foot, asked: float, seed: int
) -> Option | None:
    """One design at one spacing; nothing where it does not come out."""
    drawn = design.draw(room, asked, seed)
    if drawn is None or not drawn.paths:
        return None
    if len(drawn.paths) > (2 if room.kind == "body" else 1):
        return None
    foot = foot_for(room.kind, design, skill)
    gap = quick(drawn.paths, room.shape)
    dense = density(drawn, room.shape)
    again = 1 - dense * float(room.shape.area) / sum(map(measured, drawn.paths))
    return Option(rank, design, foot, asked, seed, drawn, gap, dense, again)
