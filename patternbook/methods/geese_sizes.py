"""How high a goose is that is sewn from a rectangle and two squares: what most of its figures say
is believed, and the piece that says otherwise is told what it should be cut."""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from patternbook.exact import Exact
from patternbook.inch import plain, printed
from patternbook.methods.world import World, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Edit, Mark, Notice


class Geese(NamedTuple):
    """A unit of geese, and the letters of the goose and its wings."""

    name: str
    unit: WrittenMade
    goose: str
    wings: str


def misfits(geese: Geese, world: World) -> bool:
    """Tell of a goose or wings cut otherwise than the rest wants them; whether there was one."""
    seam = world.known(world.seam)
    cuts = [world.known(side) for part in geese[2:] for side in world.raw(part, geese.unit.place)]
    if seam is None:
        return False
    wide, high, square, other = cuts
    if wide is None or high is None or square is None or square != other:
        return False
    said = ((wide - seam * 2) / 2, high - seam * 2, square - seam * 2)
    votes = Counter((*said, *_stated(geese, seam, world)))
    height, number = max(votes.items(), key=lambda vote: (vote[1], vote[0] == said[1]))
    if number == votes.total() or height <= 0:
        return False
    raw = height + seam * 2
    found = False
    if said[:2] != (height, height):
        found = True
        right = (height * 2 + seam * 2, raw)
        _cut_otherwise("geese-two-to-one", geese, geese.goose, (wide, high), right, world)
    if said[2] != height:
        found = True
        _cut_otherwise("geese-wings", geese, geese.wings, (square, square), (raw, raw), world)
    return found


def _stated(geese: Geese, seam: Exact, world: World) -> list[Exact]:
    """The height that each stated figure of the unit comes to."""
    found = []
    for size, seams in ((geese.unit.finished, 0), (geese.unit.measure, 2)):
        stated = here(size, world.size)
        if stated is not None:
            wide, high = (Exact(side) - seam * seams for side in (stated.across, stated.down))
            found += [wide / 2, high]
    return found


def _cut_otherwise(
    code: str,
    geese: Geese,
    part: str,
    cut: tuple[Exact, Exact],
    right: tuple[Exact, Exact],
    world: World,
) -> None:
    cm = world.unit == "cm"
    is_, must = (_size(sides, cm) for sides in (cut, right))
    seams = printed((world.known(world.seam) or Exact(0)) * 2, cm)
    finished = printed(right[1] - (world.known(world.seam) or Exact(0)) * 2, cm)
    why = (
        f"twice {finished} wide, and two seams {seams}"
        if part == geese.goose
        else f"as high as {geese.goose}, {finished} and two seams {seams}"
    )
    message = f"{part} is cut {is_} for '{geese.name}'; it must be {must}: {why}."
    at = world.place_of(part, "cut") or world.place_of(part, "finished")
    marks = [Mark(at, "cut here")] if at else []
    marks.append(Mark(geese.unit.place, "sewn here"))
    text = world.text_of(part, "cut")
    edits = (Edit(at, text, must),) if at and text else ()
    hint = f"Cut {part} {must}."
    size, needed = (world.size,), must.removesuffix(" square")
    world.tell(
        Notice(code, "error", "quilt", message, tuple(marks), "R1", size, is_, needed, hint, edits)
    )


def _size(sides: tuple[Exact, Exact], cm: bool) -> str:
    across, down = (plain(side, cm) for side in sides)
    return f"{across} square" if across == down else f"{across} x {down}"
