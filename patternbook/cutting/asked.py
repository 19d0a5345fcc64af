"""What one letter asks of the cloth: how its pieces lie in a strip, and how many are cut."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.cutting.cloth import Cloth
from patternbook.cutting.packing import Item, columns_of
from patternbook.quilt.records import Piece, Quilt, Run, StripSetMade

PATCHES_A_CUT: Final = {None: 1, "once": 2, "twice": 4}


class Laid(NamedTuple):
    """How pieces lie in a strip `wide`: each takes `along` of its length and `across` of its
    width, in `lanes` side by side."""

    wide: Fraction
    along: Fraction
    across: Fraction
    lanes: int = 1

    def fits(self, run: Fraction) -> int:
        """How many pieces a strip of this length holds."""
        return int(run // self.along) * self.lanes if self.along else 0


@dataclass(frozen=True)
class Asked:
    """One letter's pieces as they are to be cut.

    `needed` patches come from `cuts` cut pieces of `each` patches. `items` are cut from strips,
    `whole` are strips that are sewn whole, each a cut of one.
    """

    piece: Piece
    laid: Laid
    needed: int
    cuts: int
    each: int
    items: tuple[Item, ...]
    whole: tuple[Item, ...] = ()

    def longer_than(self, run: Fraction) -> tuple[Item, ...]:
        """The cuts that no strip is long enough for, with all others of the same use."""
        uses = {item.use for item in self.items if item.along > run}
        return tuple(item for item in self.items if item.use in uses)


def laid(piece: Piece, cloth: Cloth, host_wide: Fraction | None = None) -> Laid | None:
    """How the piece lies in its strips (in its host's, where it has one); None: it cannot."""
    across, down = piece.cut
    if down is None:
        wide = host_wide or cloth.roll or across
        return Laid(wide, Fraction(0), across) if across <= wide else None
    if piece.sideways:  # the print runs along its width, which so lies along the cloth
        across, down = down, across
    if piece.along == "length":
        wide = piece.strip_width or (across if cloth.fabric.one_way else min(across, down))
        return Laid(wide, wide, across + down - wide) if wide in (across, down) else None
    wide = host_wide or piece.strip_width or cloth.roll or _usual_width(across, down, cloth)
    ways = [(down, across)] if across != down and not cloth.fabric.one_way else []
    lies = [
        Laid(wide, along, high, int(wide // high))
        for along, high in [*ways, (across, down)]
        if high <= wide and min(along, high) <= cloth.run
    ]
    return max(lies, key=lambda way: (way.fits(cloth.run), way.across), default=None)


def _usual_width(across: Fraction, down: Fraction, cloth: Cloth) -> Fraction:
    """A one-way print stands upright in its strip; else the shorter side is its width."""
    if cloth.fabric.one_way:
        return down
    return max(across, down) if cloth.long_side else min(across, down)


def asked(quilt: Quilt, piece: Piece, lies: Laid, cloth: Cloth) -> Asked:
    """What the letter asks for, its squares as many as she states where they are enough."""
    if piece.is_strip:
        return _asked_in_lengths(quilt, piece, lies, cloth)
    each = PATCHES_A_CUT[piece.diagonal]
    needed = piece.count + piece.spare
    cuts = max(_least_cuts(piece, each), piece.stated_squares or 0)
    most = None
    if piece.stated_per_strip:
        lies = lies._replace(lanes=min(lies.lanes, piece.stated_per_strip))
        most = max(1, min(piece.stated_per_strip, lies.fits(cloth.run)) // lies.lanes)
    item = Item(piece.letter, lies.along, lies.across, 0, lies.lanes, None, most)
    return Asked(piece, lies, needed, cuts, each, tuple(columns_of(item, cuts)))


def _least_cuts(piece: Piece, each: int) -> int:
    """Squares have no hands; of oblongs cut on the diagonal each hand is cut apart."""
    needed = piece.count + piece.spare
    if each == 1 or piece.cut.across == piece.cut.down:
        return -(-needed // each)
    return -(-(needed - piece.mirrored) // each) - (-piece.mirrored // each)


def least_cuts(piece: Piece) -> int:
    """The squares or pieces that must be cut for the patches that are needed."""
    return _least_cuts(piece, PATCHES_A_CUT[piece.diagonal])


def _asked_in_lengths(quilt: Quilt, piece: Piece, lies: Laid, cloth: Cloth) -> Asked:
    lengths: list[Item] = []
    whole: list[Item] = []
    for run in piece.runs:
        if run.number > 0 and run.length > 0:
            used = used_of_whole(quilt, run, cloth.run) if run.whole else run.length
            cut = Item(piece.letter, used, lies.across, run.number, use=run.use)
            (whole if run.whole else lengths).append(cut)
    number = sum(run.number for run in piece.runs)
    return Asked(piece, lies, number, number, 1, tuple(lengths), tuple(whole))


def used_of_whole(quilt: Quilt, run: Run, strip: Fraction) -> Fraction:
    """How much of a whole strip is used: a strip set's slices, or all of the strip."""
    unit = quilt.units.get(run.use)
    if unit and isinstance(unit.made, StripSetMade):
        return min(unit.made.per_set * unit.made.segment, strip)
    return min(run.length, strip)
