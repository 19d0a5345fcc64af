"""Borders in words: measure the quilt first, cut to that, then sew."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.booklet import laying, wording
from patternbook.booklet.step_facts import CHECK, Context, Fact, Words
from patternbook.inch import ruler_near
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import LayoutMade
from patternbook.sewing.records import BorderStep, Step


def border(first: BorderStep, where: Context) -> Words:
    """One pair of a border's strips."""
    mitred = first.corners == "mitred"
    about = Fact(
        "Cut length, about" if mitred else "Your length should be about",
        "So cut about {}; your own measure counts."
        if mitred
        else "Your length should be about {}; your own measure counts.",
        lambda made, known: (
            wording.length(ruler_near(made.length, known.quilt.system), known.quilt.system)
            if isinstance(made, BorderStep)
            else wording.NONE
        ),
    )
    title = f"{where.name}: border {first.border}, {first.pair}"
    longer = (LONGER,) if mitred else ()
    return Words(title, tuple(_does(first, where)), (*longer, about, CHECK))


def _longer(step: Step, known: Evidence) -> str:
    """How much longer a mitred strip is cut than the edge that it is sewn to."""
    made = known.quilt.units[step.unit].made
    if not isinstance(step, BorderStep) or not isinstance(made, LayoutMade):
        return wording.NONE
    after = made.borders[step.border - 1].after
    edge = (after.down if step.pair == "sides" else after.across) - step.width * 2
    return wording.length(step.length - edge, known.quilt.system)


LONGER: Final = Fact("Longer than your measure by", "Longer than your measure by {}.", _longer)


def _does(first: BorderStep, where: Context) -> Iterator[str]:
    sides = first.pair == "sides"
    way = "from top to bottom" if sides else "from side to side"
    yield _measured(first, where, way)
    if first.part in where.known.quilt.units:
        yield (
            f"Compare it with the two borders named {first.part}. If they differ, take in or let "
            "out a few of the border's seams a little."
        )
    elif first.corners == "mitred":
        yield (
            f"{_joined(first, where)}Cut two {first.part} longer than your measure, as told below: "
            "the rest goes into the two corners."
        )
    else:
        joined = _joined(first, where)
        yield (
            f"{joined}Cut two to your length."
            if joined
            else f"Cut two {first.part} to your length."
        )
    if first.stones:
        yield f"Sew {laying.part(first.stones)} to both ends of each."
    edges = "side edges" if sides else "top and bottom edges"
    if first.corners == "mitred":
        yield from _mitred_sewn(first, where, edges)
        return
    yield f"Pin the middles and the ends, then between. Sew them to the {edges}, easing to fit."


def _joined(first: BorderStep, where: Context) -> str:
    """`Join F strips end to end. `, with the sizes where only some need it."""
    steps = [(known.quilt.size, made) for known, made in where.found()]
    named = [size for size, made in steps if isinstance(made, BorderStep) and made.joined]
    if not named:
        return ""
    if len(named) == len(steps):
        return f"Join {first.part} strips end to end. "
    sizes = wording.title(wording.listed([wording.glued(name) for name in named]))
    return f"{sizes}: join {first.part} strips end to end. "


def _measured(first: BorderStep, where: Context, way: str) -> str:
    """Which measure counts; mitred strips are measured for before the first is on."""
    whole = where.name.lower()
    if first.corners == "butted":
        return (
            f"Measure the {whole} through the middle, {way}; better still, take the mean of three "
            "places. That is your length."
        )
    if not first.first:
        return f"Your measure is that of the {whole} {way} before any of these strips was on."
    return (
        f"Measure the {whole} through the middle, from top to bottom and from side to side; "
        f"better still, take the mean of three places. Your measure for these strips is that {way}."
    )


def _mitred_sewn(first: BorderStep, where: Context, edges: str) -> Iterator[str]:
    """All four on, each seam open at its ends; then the corners."""
    seam = wording.length(where.known.quilt.seam, where.known.quilt.system)
    yield (
        f"Pin the middle of each strip to the middle of its edge, the ends standing out equally. "
        f"Sew them to the {edges}, beginning and ending {seam} from the corners of the quilt."
    )
    if not first.first:
        yield (
            "At each corner fold the quilt at 45°, right sides together, so that the two strips "
            "lie on each other. Draw a line from the end of the seam to the outer edge, along the "
            "fold's slant, and sew on it from the seam outward."
        )
        yield f"See that the corner lies flat, then trim it to {seam} and press it open."
