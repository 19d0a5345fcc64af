"""The tone of every fabric, the same from the first page to the last, and of its prints."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from patternbook.quilt.records import Fabric, Quilt
from patternbook.strokes.stroke import Fill
from patternbook.strokes.tones import APART, PAPER, Cloth, Tone, fills, lightness, tint

# Hues for a mixture of prints, neighbours far apart; their lightness is fitted to the fabric.
_HUES: Final = (
    "#b9623c",
    "#4f8a8b",
    "#cf9b3d",
    "#8b6a94",
    "#84964f",
    "#bf6b7a",
    "#5c82ad",
    "#c48a68",
    "#6f9a83",
    "#a8564a",
    "#77889b",
    "#b8923a",
    "#a987a6",
    "#4c94a4",
    "#9a8f45",
    "#cf7f66",
)
_HALF: Final = 11.0  # how far prints go up and down from their fabric's lightness
_SHADES: Final = 5  # steps of lightness that the prints go through, one hue each


@dataclass(frozen=True)
class Cloths:
    """Fills by fabric, and by print where a fabric is a mixture."""

    by_fabric: Mapping[str, Fill]
    prints: Mapping[str, Sequence[Fill]]

    def fabric(self, name: str | None, print_: int | None = None) -> Fill:
        """The fill of a fabric, or of one of its prints (from 1)."""
        several = self.prints.get(name or "")
        if several and print_ is not None:
            return several[(print_ - 1) % len(several)]
        return self.by_fabric.get(name or "", PAPER)

    def piece(self, quilt: Quilt, letter: str, print_: int | None = None) -> Fill:
        """The fill of a piece; white where its fabric is not named."""
        piece = quilt.pieces.get(letter)
        return self.fabric(piece.fabric, print_) if piece else PAPER


def cloths(quilts: Iterable[Quilt]) -> Cloths:
    """The tones of all fabrics of all sizes, in the order they are listed."""
    fabrics: dict[str, Fabric] = {}
    for quilt in quilts:
        for name, fabric in quilt.fabrics.items():
            kept = fabrics.setdefault(name, fabric)
            if fabric.prints > kept.prints:
                fabrics[name] = fabric
    chosen = fills([Cloth(one.name, _tone(one), one.colour) for one in fabrics.values()])
    mixtures = {
        name: _prints(fabric, chosen) for name, fabric in fabrics.items() if fabric.prints > 1
    }
    return Cloths(chosen, mixtures)


def _tone(fabric: Fabric) -> Tone | None:
    """A mixture that nobody calls light or dark is of middle tone."""
    return fabric.tone or ("medium" if fabric.prints > 1 else None)


def _prints(fabric: Fabric, chosen: Mapping[str, Fill]) -> tuple[Fill, ...]:
    """Prints of many hues and some shades, all as far from the other fabrics as their own."""
    own = chosen[fabric.name]
    low, high = _room(own, [fill for name, fill in chosen.items() if name != fabric.name])
    hues = (own.colour,) if fabric.colour else _HUES
    made = []
    for number in range(fabric.prints):
        share = number * 2 % _SHADES / (_SHADES - 1)
        level = low + (high - low) * share
        made.append(Fill(_at_lightness(hues[number % len(hues)], level), own.hatch))
    return tuple(made)


def _room(own: Fill, others: Sequence[Fill]) -> tuple[float, float]:
    """The lightness that prints may have and still differ from fabrics hatched like them."""
    here = lightness(own.colour)
    low, high = max(0.0, here - _HALF), min(100.0, here + _HALF)
    for other in others:
        there = lightness(other.colour)
        if other.hatch != own.hatch or abs(there - here) < APART:
            continue
        if there > here:
            high = min(high, there - APART)
        else:
            low = max(low, there + APART)
    return low, high


def _at_lightness(colour: str, level: float) -> str:
    """The hue with so much white or black in it that it is as light as asked."""
    white = lightness(colour) < level
    low, high = 0.0, 1.0
    for _ in range(20):
        share = (low + high) / 2
        mixed = tint(colour, share) if white else _shade(colour, share)
        short = lightness(mixed) < level if white else lightness(mixed) > level
        low, high = (share, high) if short else (low, share)
    return mixed


def _shade(colour: str, share: float) -> str:
    """The colour with that share of black."""
    parts = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return "#" + "".join(f"{round(part * (1 - share)):02x}" for part in parts)
