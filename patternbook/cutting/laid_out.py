"""From the planner's whole numbers to strips of cloth, and to a fabric's plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from patternbook.cutting.fabric import FabricCut, Laid, Wanted, assembled
from patternbook.cutting.planner.records import Block, Column, Kind, StripLaid
from patternbook.cutting.records import Cut, LetterPlan, Strip, Style
from patternbook.cutting.wishes import Wishes
from patternbook.quilt.records import Quilt

# What is told of strips that only plain cutting has.
OF_PLAIN_STRIPS: Final = ("exact-fit", "exact-count", "scant-strips", "per-strip", "turned-strip")


@dataclass(frozen=True)
class ToPlan:
    """A fabric that is planned: how it is cut plainly, what of it is free, and the style."""

    quilt: Quilt
    wanted: Wanted
    plain: FabricCut
    wished: Wishes
    style: Style

    def spread(self, strips: Sequence[tuple[str, Strip]]) -> Laid:
        """Strips in the order of cutting: lengths of the cloth, what lies beside them, then the
        widest."""
        owned = sorted(
            (*strips, *self.wished.fixed),
            key=lambda pair: (pair[1].along == "width", not pair[1].beside, -pair[1].width),
        )
        owners = {place: letter for place, (letter, _) in enumerate(owned)}
        return replace(self.plain.laid, strips=tuple(strip for _, strip in owned), owners=owners)

    def assembled(self, laid: Laid) -> FabricCut:
        """The fabric once it is laid out so, with what is told of its letters."""
        letters = tuple(_letter(letter, laid.strips) for letter in self.plain.letters)
        told = [one for one in self.plain.of_letters if one.code not in OF_PLAIN_STRIPS]
        return assembled(self.quilt, self.wanted, laid, letters, told)


def _letter(plan: LetterPlan, strips: Sequence[Strip]) -> LetterPlan:
    """How one letter is cut, now that strips are shared."""
    mine = [strip for strip in strips if plan.letter in strip.letters]
    return replace(
        plan,
        host=None,
        strips=sum(strip.times for strip in mine),
        exact_fit=False,
        exact_count=False,
        other=None,
    )


def owned(strips: Sequence[Strip]) -> list[tuple[str, Strip]]:
    """Each strip with the letters whose it is."""
    return [(", ".join(strip.letters), strip) for strip in strips]


def strip_of(wished: Wishes, laid: StripLaid, run: Fraction, block: Block | None) -> Strip:
    """One strip, across the cloth or in the width that a block leaves of it."""
    taken = block.width * wished.unit if block and laid.beside else Fraction(0)
    return Strip(
        laid.height * wished.unit,
        run - taken,
        laid.times,
        tuple(_cut(wished, column) for column in laid.columns),
        beside=laid.beside,
    )


def _cut(wished: Wishes, column: Column) -> Cut:
    wish = wished.free[int(column.kind)]
    return Cut(
        wish.letter,
        column.along * wished.unit,
        column.across * wished.unit,
        column.pieces,
        column.stack,
        wish.use,
        above=tuple(_cut(wished, over) for over in column.above),
    )


def block_of(wished: Wishes, block: Block, run: Fraction) -> Strip:
    """The pieces along the selvedge: columns side by side."""
    cuts = []
    for column in block.columns:
        piled = [_pile(wished, column, kind) for kind in dict.fromkeys(kind for kind, *_ in column)]
        base = max(piled, key=lambda cut: cut.along)
        cuts.append(replace(base, above=tuple(cut for cut in piled if cut is not base)))
    return Strip(block.length * wished.unit, run, 1, tuple(cuts), "length")


def _pile(wished: Wishes, column: Sequence[tuple[str, int, int]], kind: str) -> Cut:
    """Like pieces one after the other in a column."""
    like = [piece for piece in column if piece[0] == kind]
    _, length, width = like[0]
    wish = wished.free[int(kind)]
    sides = width * wished.unit, length * wished.unit
    return Cut(wish.letter, *sides, len(like), len(like), wish.use)


def priced(kind: Kind) -> tuple[str, int, int, int, bool, bool]:
    """A kind as its price is told."""
    return kind.name, kind.along, kind.across, kind.number, kind.turns, kind.own_width
