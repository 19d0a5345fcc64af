"""What comes before the first stitch: layers, a test piece, needle and thread, and cautions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.booklet import wording
from patternbook.booklet.book import Figure
from patternbook.booklet.parts.back import CAUTIONS, Caution
from patternbook.booklet.quilting.book import QuiltBook

# The cautions of the booklet that hold at the machine; the table has no cutter on it.
AT_THE_MACHINE: Final = ("Iron", "Needle and pins", "Quilts and babies")
# Common practice, no source: pins a hand apart, a test piece a foot wide, breaks by the half hour.
LAYERS: Final = (
    "Press backing and top. Tape the backing flat, wrong side up; smooth the batting and then the "
    "top over it, from the middle out. Baste with pins or long stitches, about a hand apart, all "
    "over. Take each pin out before the needle gets to it."
)
TEST: Final = (
    "Make a test piece, about as large as this page, of the same cloth, batting and backing. Sew "
    "the elements of the practice sheet on it until the stitches look alike on both sides."
)
NEEDLE: Final = (
    "Put in a new needle: size 80/12 for 50 weight thread, 90/14 for 40 or 30 weight. Lengthen "
    "the stitch to 2.5 to 3 mm (8 to 10 to the inch)."
)
THREAD: Final = (
    "Take thread that matches the top, and the same colour in the bobbin: wobbles and dots of the "
    "other thread do not show then. Two colours only on purpose, tried on the test piece first."
)
ENDS: Final = (
    "At a start bring the bobbin thread up, hold both ends and sew a few tiny stitches. At a stop "
    "do the same, then draw both ends into the batting."
)
REST: Final = Caution(
    "Hands, back and eyes",
    "Rest every half hour. Let the quilt's weight lie on the table, not hang. Good light.",
)


def before(quilts: QuiltBook) -> tuple[tuple[str, str], ...]:
    """What to do, in order."""
    return (
        ("Layers", LAYERS),
        ("Test piece", TEST),
        ("Needle", NEEDLE),
        ("Thread", THREAD),
        ("Bobbins", _bobbins(quilts)),
        ("Starting and stopping", ENDS),
    )


def _bobbins(quilts: QuiltBook) -> str:
    number = wording.by_size(
        {size: wording.counted(plan.sums.bobbins, "bobbin") for size, plan in quilts.plans.items()}
    )
    return (
        f"Wind them first: {number}. B in the pictures is a good place for a new one. Yours may "
        "run out sooner: then stop at the next line end, and start again there."
    )


def cautions() -> Iterator[Caution]:
    """What hurts people here, and whose advice comes first."""
    yield from (one for one in CAUTIONS if one.head in AT_THE_MACHINE)
    yield Caution("Threads", "Bury or cut every loose end, above all on a quilt for a child.")
    yield REST


LAST: Final = "Local rules, the makers' instructions and the advice of qualified people come first."


def sign_key(quilts: QuiltBook) -> Figure | None:
    """The signs of the pictures."""
    figure = quilts.book.figure("quilts-signs")
    return Figure(figure.name, figure.alt, "", figure.inches) if figure else None
