"""Two cuts of one fabric that are nearly the same size (rule R6)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations
from typing import Final

from patternbook.forms import by_length
from patternbook.inch import length, printed, size
from patternbook.notice import Notice, Place
from patternbook.proof.advice.told import advised
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Piece, Quilt

# Common practice, no source: what the eye does not tell apart at the cutting table.
NEAR: Final = {"in": Fraction(1, 4), "cm": Fraction(6, 10)}


def near_cuts(sizes: Sequence[Evidence]) -> Iterator[Notice]:
    """Each pair of letters whose cuts differ by a hair on one side, and not on the other."""
    found: dict[str, dict[str, str]] = {}
    places: dict[str, Place | None] = {}
    for one in sizes:
        for first, second in combinations(one.quilt.pieces.values(), 2):
            words = _near(one, first, second)
            if words:
                pair = f"{first.letter} and {second.letter}"
                found.setdefault(pair, {})[one.quilt.size] = words
                places.setdefault(pair, second.key_places.get("cut", second.place))
    hint = "Give both one size where the unit is trimmed anyway, or label the piles."
    for pair, words_of in found.items():
        yield from advised("near-cuts", "R6", words_of, places[pair], f"{pair}:", hint=hint)


def _near(one: Evidence, first: Piece, second: Piece) -> str | None:
    quilt, sides = one.quilt, [_sides(piece) for piece in (first, second)]
    if None in sides or first.fabric is None or first.fabric != second.fabric:
        return None
    this, that = (side for side in sides if side)
    differ = [pair for pair in zip(this, that, strict=True) if pair[0] != pair[1]]
    if len(differ) != 1 or abs(differ[0][0] - differ[0][1]) > NEAR[quilt.system.unit]:
        return None
    system, decimals = quilt.system, quilt.system.unit == "cm"
    small, large = sorted((this, that))
    short, long = sorted(differ[0])
    off = length(long - short, system)
    smaller = first if this == small else second
    return (
        f"{size(*this, system)} and {size(*that, system)} are easily mixed up, "
        f"{printed(long, decimals)} − {printed(short, decimals)} = {off}. "
        f"Both cut {size(*large, system)}{_cloth(one, first, second)}, and each "
        f"{smaller.letter} is {off} too large for its place until it is trimmed"
    )


def _sides(piece: Piece) -> tuple[Fraction, Fraction] | None:
    """The two sides, the shorter first; None where no ruler cuts it, or it is a strip."""
    if piece.cut.down is None or piece.template or piece.diagonal:
        return None
    return min(piece.cut.across, piece.cut.down), max(piece.cut.across, piece.cut.down)


def _cloth(one: Evidence, first: Piece, second: Piece) -> str:
    """What one size for both takes, where each has strips of its own and no other is cut there."""
    plans = [one.cutting.letters.get(piece.letter) for piece in (first, second)]
    run = _run(one.quilt, first)
    hosts = {plan.host for plan in one.cutting.letters.values()}
    known = [plan for plan in plans if plan and plan.along and not plan.host and not plan.joined]
    if len(known) < len(plans) or run is None or hosts & {first.letter, second.letter}:
        return ""
    wide = max(plan.strip_width for plan in known)
    along = max(plan.along for plan in known if plan.along)
    if along > run:
        return ""
    strips = -(-sum(plan.cuts for plan in known) // (run // along))
    apart = sum((plan.own * plan.strip_width for plan in known), Fraction(0))
    system = one.quilt.system
    more = strips * wide - apart
    cloth = length(abs(more), system)
    comes_to = f"{cloth} of cloth {'more' if more > 0 else 'less'}" if more else "no cloth more"
    times = f"{strips} strip{'' if strips == 1 else 's'}"
    return f" take {times} {length(wide, system)} wide, {comes_to}"


def _run(quilt: Quilt, piece: Piece) -> Fraction | None:
    """How long its strips are: across the width of cloth from the bolt."""
    cloth = quilt.fabrics.get(piece.fabric or "")
    whole = cloth and by_length(cloth.form) and piece.along == "width"
    return cloth.width if cloth and whole else None
