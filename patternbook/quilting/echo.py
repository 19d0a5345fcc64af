"""Straight lines that echo the long seams of the top, at their real spacing, in order.

A line beside a seam is easier to keep than one in the ditch, so no line lies on a long seam:
each band between two of them is shared out evenly, half a step free at either side.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final, Literal

from patternbook import inch
from patternbook.exact import Exact
from patternbook.notice import Mark, Notice
from patternbook.quilt.joins import seams
from patternbook.quilt.place import Patch
from patternbook.quilt.records import LayoutMade, Quilt, Sides
from patternbook.quilting.echo_records import Band, QuiltingMap, Spot, StitchLine, Way

# How far apart where the packet says nothing (trade facts 8.2: the tightest limits are 1½ to 3
# in; 3 in where nothing is stated, printed as assumed); in centimetres the next half below.
LIMIT: Final[Mapping[str, Fraction]] = {"in": Fraction(3), "cm": Fraction(15, 2)}
# Kept free at the edge for the binding (booklet conventions: ½ in).
MARGIN: Final[Mapping[str, Fraction]] = {"in": Fraction(1, 2), "cm": Fraction(5, 4)}
NOUGHT: Final = Exact(0)


def plan(quilt: Quilt, patches: Sequence[Patch]) -> tuple[QuiltingMap | None, tuple[Notice, ...]]:
    """The lines of one size, and what is wrong with their spacing; None without a top, and where
    it is too small for any line."""
    if quilt.finished is None or not patches:
        return None, ()
    stated = next((one for one in quilt.quilting if one.spacing is not None), None)
    limit = quilt.batting.limit if quilt.batting else None
    most = LIMIT[quilt.system.unit] if limit is None else limit
    spacing = stated.spacing if stated and stated.spacing else min(most, LIMIT[quilt.system.unit])
    way = _way(quilt)
    margin = MARGIN[quilt.system.unit]
    bands = tuple(_bands(quilt.finished, patches, way, spacing))
    side = _side(quilt.finished, way)
    places = _thinned(list(_candidates(bands, margin, side)), spacing)
    if not places or _other(quilt.finished, way) <= margin * 2:
        return None, ()
    lines = _ordered(places, quilt.finished, way, margin)
    made = QuiltingMap(
        way=way,
        spacing=spacing,
        stated=stated is not None,
        limit=most,
        limit_stated=limit is not None,
        margin=margin,
        bands=bands,
        lines=lines,
        gap=max(after - before for before, after in pairwise([NOUGHT, *places, side])),
        length=(_other(quilt.finished, way) - 2 * margin) * len(lines),
    )
    return made, tuple(_told(made, quilt))


def _side(top: Sides, way: Way) -> Exact:
    """The side that the lines are counted along."""
    return top.across if way == "down" else top.down


def _other(top: Sides, way: Way) -> Exact:
    """The side that the lines run along."""
    return top.down if way == "down" else top.across


def _way(quilt: Quilt) -> Way:
    """Along the longest seams: down where the top is made of columns, else across."""
    made = quilt.units[quilt.top or ""].made
    if not isinstance(made, LayoutMade):
        return "down"
    blocks = [line for line in made.lines if line.role != "sash"]
    columns = made.by == "columns" if len(blocks) > 1 else made.by == "rows"
    return "down" if columns else "across"


def _bands(top: Sides, patches: Sequence[Patch], way: Way, spacing: Fraction) -> Iterator[Band]:
    """From long seam to long seam; a seam is long that runs half the way over the top."""
    half = _other(top, way) / 2
    runs: dict[Exact, Exact] = {}
    for seam in seams(patches):
        if seam.lies == way:
            runs[seam.at] = runs.get(seam.at, NOUGHT) + seam.end - seam.start
    long = sorted(at for at, run in runs.items() if run >= half)
    for start, end in pairwise([NOUGHT, *long, _side(top, way)]):
        width = end - start
        number = int(max(Fraction(1), (width / spacing).up(Fraction(1))))
        yield Band(start, width, number, width / number)


def _candidates(bands: Sequence[Band], margin: Fraction, side: Exact) -> Iterator[Exact]:
    for band in bands:
        for number in range(band.lines):
            at = band.start + band.step * number + band.step / 2
            if margin <= at <= side - margin:
                yield at


def _thinned(places: Sequence[Exact], spacing: Fraction) -> list[Exact]:
    """As few of the places as leave no neighbours farther apart than `spacing`."""
    kept: list[Exact] = []
    for number, place in enumerate(places):
        following = places[number + 1] if number + 1 < len(places) else None
        if kept and following is not None and following - kept[-1] <= spacing:
            continue
        kept.append(place)
    return kept


def _ordered(
    places: Sequence[Exact], top: Sides, way: Way, margin: Fraction
) -> tuple[StitchLine, ...]:
    """From the middle out to one side; then the quilt is turned round, and the other half."""
    far = _other(top, way) - margin
    near = Exact(margin)
    middle = len(places) // 2
    first = [(at, near, far) for at in places[middle:]]
    second = [(at, far, near) for at in reversed(places[:middle])]
    return tuple(
        StitchLine(order, at, _spot(at, start, way), _spot(at, end, way))
        for order, (at, start, end) in enumerate([*first, *second], start=1)
    )


def _spot(at: Exact, along: Exact, way: Way) -> Spot:
    return Spot(at, along) if way == "down" else Spot(along, at)


def _told(made: QuiltingMap, quilt: Quilt) -> Iterator[Notice]:
    """Lines farther apart than the batting allows."""
    if made.gap <= made.limit:
        return
    source = "the batting's limit" if made.limit_stated else "assumed, for no limit is stated"
    severity: Literal["error", "warning"] = "error" if made.limit_stated else "warning"
    places = [one.place for one in quilt.quilting if one.spacing is not None and one.place]
    gap, limit = (inch.length(one, quilt.system) for one in (made.gap, made.limit))
    yield Notice(
        "quilting-wide",
        severity,
        "quilting",
        f"quilting lines leave {gap} open; {limit} is the most ({source}).",
        tuple(Mark(place, "spacing stated here") for place in places[:1]),
        None,
        (quilt.size,),
        gap,
        limit,
        f"Write a spacing of {limit} or less, or state the limit on the batting's packet.",
    )
