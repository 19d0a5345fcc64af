"""Borders in words: measure the quilt first, cut to that, then sew."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.booklet import laying, wording
from patternbook.booklet.step_facts import CHECK, Context, Fact, Words
from patternbook.sewing.records import BorderStep


def border(first: BorderStep, where: Context) -> Words:
    """One pair of a border's strips."""
    about = Fact(
        "Your length should be about",
        "Your length should be about {}; your own measure counts.",
        lambda made, known: (
            wording.length(made.length, known.quilt.system)
            if isinstance(made, BorderStep)
            else wording.NONE
        ),
    )
    title = f"{where.name}: border {first.border}, {first.pair}"
    return Words(title, tuple(_does(first, where)), (about, CHECK))


def _does(first: BorderStep, where: Context) -> Iterator[str]:
    sides = first.pair == "sides"
    way = "from top to bottom" if sides else "from side to side"
    yield (
        f"Measure the {where.name.lower()} through the middle, {way}; better still, take the mean "
        "of three places. That is your length."
    )
    if first.part in where.known.quilt.units:
        yield (
            f"Compare it with the two borders named {first.part}. If they differ, take in or let "
            "out a few of the border's seams a little."
        )
    elif first.corners == "mitred":
        extra = wording.length(first.width, where.known.quilt.system)
        yield (
            f"Cut two {first.part} longer by {extra} at each end, and leave the last "
            f"{wording.length(where.known.quilt.seam, where.known.quilt.system)} of the seam open."
        )
    elif first.joined:
        yield f"Join {first.part} strips end to end. Cut two to your length."
    else:
        yield f"Cut two {first.part} to your length."
    if first.stones:
        yield f"Sew {laying.part(first.stones)} to both ends of each."
    edges = "side edges" if sides else "top and bottom edges"
    yield f"Pin the middles and the ends, then between. Sew them to the {edges}, easing to fit."
