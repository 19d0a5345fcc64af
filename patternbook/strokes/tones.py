"""Tones of fabrics: no two are told apart by hue alone, and letters read on all of them.

A rule of ours: two fills are at least 20 steps of lightness apart (CIE L*, nought to a hundred),
or else hatched differently; so a grey print, and a reader who sees colours otherwise, lose
nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product
from typing import Final, Literal

from patternbook.strokes.stroke import INK, Fill, Hatch

Tone = Literal["light", "medium", "dark"]
APART: Final = 20.0
# Web Content Accessibility Guidelines 2.2, success criterion 1.4.3: contrast of text.
LEGIBLE: Final = 4.5
_WHITE, _BLACK = "#ffffff", "#000000"
# Within a tone the hues differ too, but that is for pleasure: hatching is what tells them apart.
_COLOURS: Final[dict[Tone | None, tuple[str, ...]]] = {
    "light": ("#f6ecd9", "#dfeaf1", "#f5dfe0"),
    "medium": ("#d79a62", "#7fa8c9", "#a9ad6e"),
    "dark": ("#2c4a6e", "#6d2a3c", "#24513f"),
    None: ("#26436a", "#f6ecd9", "#dca46f", "#ad6568", "#160f1c"),
}
_ANGLES: Final = ((45.0,), (135.0,), (0.0,), (90.0,), (45.0, 135.0), (0.0, 90.0))
_GAPS: Final = (4.5, 8.0)


@dataclass(frozen=True)
class Cloth:
    """A fabric as far as drawings go: its name, and its tone or colour where the author says."""

    name: str
    tone: Tone | None = None
    colour: str | None = None


def fills(cloths: Sequence[Cloth]) -> dict[str, Fill]:
    """A fill for every fabric, by name; after some sixty alike only the letters differ."""
    chosen: dict[str, Fill] = {}
    for turn, cloth in enumerate(cloths):
        choices = list(_choices(cloth, turn))
        free = (fill for fill in choices if all(differ(fill, old) for old in chosen.values()))
        chosen[cloth.name] = next(free, choices[turn % len(choices)])
    return chosen


def _choices(cloth: Cloth, turn: int) -> Iterator[Fill]:
    """Plain fills first, then hatched; the hue goes round with the fabric's turn."""
    colours = (cloth.colour.lower(),) if cloth.colour else _COLOURS[cloth.tone]
    first = turn % len(colours)
    colours = colours[first:] + colours[:first]
    yield from (Fill(colour) for colour in colours)
    for gap, angles, colour in product(_GAPS, _ANGLES, colours):
        yield Fill(colour, Hatch(angles, gap, 0.6, _hatching_on(colour)))


def _hatching_on(colour: str) -> str:
    """An ink for hatching: a darker or lighter shade, plain to see but quieter than an outline."""
    return _mixed(colour, _BLACK if lightness(colour) > 50 else _WHITE, 0.55)


def differ(one: Fill, other: Fill) -> bool:
    """Whether two fabrics can be told apart in a grey print."""
    apart = abs(lightness(one.colour) - lightness(other.colour)) >= APART
    return apart or _ruling(one) != _ruling(other)


def _ruling(fill: Fill) -> tuple[tuple[float, ...], float] | None:
    return (fill.hatch.angles, fill.hatch.gap) if fill.hatch else None


def _parts(colour: str) -> tuple[int, int, int]:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red, green, blue


@cache
def luminance(colour: str) -> float:
    """Relative luminance, nought to one (IEC 61966-2-1, sRGB)."""
    shares = (part / 255 for part in _parts(colour))
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def lightness(colour: str) -> float:
    """CIE L*, from 0 (black) to 100 (white)."""
    y = luminance(colour)
    return 116 * y ** (1 / 3) - 16 if y > 216 / 24389 else y * 24389 / 27


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21 (Web Content Accessibility Guidelines 2.2)."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def ink_on(colour: str) -> str:
    """The ink for words on that colour: the usual one, or white, or else full black."""
    inks = (ink for ink in (INK, _WHITE) if contrast(ink, colour) >= LEGIBLE)
    return next(inks, _BLACK)


def _mixed(colour: str, other: str, share: float) -> str:
    pairs = zip(_parts(colour), _parts(other), strict=True)
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in pairs)


def tint(colour: str, share: float) -> str:
    """The colour with that share of white."""
    return _mixed(colour, _WHITE, share)


def wrong_side(fill: Fill) -> Fill:
    """The back of a fabric: paler, with a fine hatching that no right side has."""
    return Fill(tint(fill.colour, 0.55), Hatch((60.0,), 2.6, 0.35, "#555555"))


@cache
def ghost(fill: Fill) -> Fill:
    """A quarter of the tone, to lie under quilting lines."""
    return Fill(tint(fill.colour, 0.75))


PAPER: Final = Fill(_WHITE)
WASTE: Final = Fill("#f4f4f4", Hatch((30.0,), 5.0, 0.35, "#8a8a8a"))
