"""Small quilts by hand: just the letters, fabrics and sizes that one test needs."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

from patternbook.cutting.plan import plan
from patternbook.cutting.records import CuttingPlan
from patternbook.exact import Exact
from patternbook.inch import INCHES
from patternbook.notice import Notice
from patternbook.quilt.records import (
    Backing,
    Batting,
    Binding,
    CutSize,
    Fabric,
    Piece,
    Quilt,
    Run,
    Settings,
    Sides,
)


def inches(text: str | float) -> Fraction:
    """`9 1/2` as it stands in a source."""
    return sum((Fraction(part) for part in str(text).split()), Fraction(0))


def cut(text: str) -> CutSize:
    """`6 1/2 x 3 1/2`, `5 square` or `2 1/2 x WOF`."""
    if text.endswith(" square"):
        side = inches(text.removesuffix(" square"))
        return CutSize(side, side)
    across, down = text.split(" x ")
    return CutSize(inches(across), None if down == "WOF" else inches(down))


def piece(letter: str, size: str, count: int = 0, **more: Any) -> Piece:
    """A letter of the fabric `cloth`."""
    across, down = cut(size)
    finished = Sides(Exact(across) - Fraction(1, 2), Exact(down or 40) - Fraction(1, 2))
    made = Piece(letter, "cloth", CutSize(across, down), finished, count)
    if "strip_width" in more:
        more["strip_width"] = inches(more["strip_width"])
    return replace(made, **more)


def strip(
    letter: str, width: str, *runs: tuple[str, int], use: str = "border 1", **more: Any
) -> Piece:
    """A strip that gives so many lengths of each kind."""
    lengths = tuple(Run(use, inches(length), number, whole=False) for length, number in runs)
    return piece(letter, f"{width} x WOF", runs=lengths, **more)


def fabric(**more: Any) -> Fabric:
    """The fabric `cloth`, of the bolt and 40 wide unless said otherwise."""
    return replace(Fabric("cloth", "all of it", "yardage", Fraction(40)), **more)


def quilt(
    *pieces: Piece,
    finished: str | None = None,
    cloth: Fabric | None = None,
    settings: Settings | None = None,
    backing: Backing | None = None,
    batting: Batting | None = None,
    binding: Binding | None = None,
    **more: Any,
) -> Quilt:
    """One size with these letters."""
    used = cloth or fabric()
    sides = None
    if finished:
        across, down = cut(finished)
        sides = Sides(Exact(across), Exact(down or 0))
    made = Quilt(
        size="crib",
        system=INCHES,
        seam=Fraction(1, 4),
        width=used.width,
        finished=sides,
        fabrics={used.name: used},
        pieces={one.letter: one for one in pieces},
        units={},
        top=None,
        backing=backing,
        batting=batting,
        binding=binding,
        quilting=(),
        settings=settings or Settings(),
        standings={},
    )
    return replace(made, **more)


def planned(*pieces: Piece, **more: Any) -> CuttingPlan:
    """The plan of a small quilt."""
    return plan(quilt(*pieces, **more))[0]


def codes(notices: Iterable[Notice], *severities: str) -> list[str]:
    """The codes of all notices, or of those of some severities."""
    return [one.code for one in notices if not severities or one.severity in severities]


def told(*pieces: Piece, **more: Any) -> tuple[Notice, ...]:
    """The notices of a small quilt."""
    return plan(quilt(*pieces, **more))[1]


def the(notices: Iterable[Notice], code: str) -> Notice:
    """The one notice with this code."""
    found = [one for one in notices if one.code == code]
    assert len(found) == 1, [str(one) for one in found]
    return found[0]
