"""Strip race: strips sewn end to end, then folded and sewn until they are a quilt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from typing import ClassVar, Final

from patternbook.exact import ROOT2, Exact
from patternbook.inch import CENTIMETRES, INCHES, plain
from patternbook.linear import Sum
from patternbook.methods import pieced, strip_race_told
from patternbook.methods.fields import Cells, Count, More
from patternbook.methods.form import MethodForm
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.race_rows import Joined, folded, rows_of, seams
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Rule, StripNeed, Tally, Term, World, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Place
from patternbook.value import LengthValue, every

# A thousand rows, or a thousand strips: no quilt comes near it.
MOST_FOLDS: Final = 10
MOST_STRIPS: Final = 1000
WIDTHS: Final = Rule("race-widths", "R1", "All strips of a race are cut to one width.")


class WrittenStripRace(WrittenMade):
    """The strips, how often they are folded, and what is cut off the end first."""

    called: ClassVar = "a strip race"
    from_: EachSize[Cells]
    folds: EachSize[Count]
    shorten: EachSize[More] = every(LengthValue(Fraction(0), "0"))


class StripRaceWork(PiecedWork[WrittenStripRace]):
    """The long strip halved as often as it is folded: so wide; twice as many rows each time."""

    written = WrittenStripRace

    def equations(self, name: str, unit: WrittenStripRace, world: World) -> tuple[Tally, Tally]:
        """All strips less their joins and what is cut off, shared out on the rows."""
        parts, folds = _strips(name, unit, world), _folds(name, unit, world)
        if not parts or folds is None:
            world.hopeless(name)
            return _open(name, world)
        width = world.strip_width(parts[0], unit.place)
        for other in dict.fromkeys(parts[1:]):
            if other != parts[0]:
                one = pieced.alone(
                    f"width of {other}", world.strip_width(other, unit.place), unit.place
                )
                first = pieced.alone(f"width of {parts[0]}", width, unit.place)
                world.equal(one, first, WIDTHS)
        rows = 2**folds
        _only_by_doubling(name, width, folds, world)
        long = _long(parts, unit, world)
        if _nothing_left(name, unit, parts, long, folds, world):
            world.hopeless(name)
        share = [term._replace(each=term.each * Fraction(1, rows)) for term in long.terms]
        words = [term._replace(label=f"{term.label} ÷ {rows}") for term in share]
        across = Tally(name, (*words, Term("less two seams", 1, world.seam * -2)), unit.place)
        return across, Tally(name, (Term(f"row of {parts[0]}", rows, width),), unit.place)

    def sewn(self, name: str, unit: WrittenStripRace, world: World) -> Sewn:
        """Joined, shortened, then folded, sewn and cut open again and again."""
        parts, folds = _strips(name, unit, world), _folds(name, unit, world) or 1
        seam = world.length(world.seam)
        high = world.length(world.strip_width(parts[0], unit.place))
        off = Exact(_shorten(unit, world).number)
        total = world.length(_long(parts, unit, world).sum())
        joined = _joined(parts, off, total, high, seam, world)
        system = CENTIMETRES if world.unit == "cm" else INCHES
        lines = rows_of(folded(total, folds), joined, high, seam)
        placed = tuple(part for line in lines for part in line)
        wide = high + seam * 2
        runs = Counter(parts)
        return Sewn(
            word="strip race",
            takes=pieced.taking(parts),
            placed=placed,
            seams=tuple(seams(lines, high)),
            actions=strip_race_told.actions(
                strip_race_told.Race(
                    tuple(runs.items()), len(parts), total, off, high, folds, system
                ),
                seam,
                strip_race_told.join_words({world.join(part) == "diagonal" for part in parts[:-1]}),
            ),
            stitched=len(parts) - 1 + folds,
            length=_stitched(parts, wide, total, folds, world),
            runs=tuple(
                StripNeed(part, name, Exact(world.strip_length(part)), number, whole=True)
                for part, number in runs.items()
            ),
        )


# ---- what is written


def _strips(name: str, unit: WrittenStripRace, world: World) -> tuple[str, ...]:
    """The strips in order; none where one of them is no strip, or may not be joined (told)."""
    parts = pieced.letters(unit.from_, world)
    if len(parts) > MOST_STRIPS:
        message = f"'{name}' joins {len(parts)} strips; {MOST_STRIPS} is the most."
        hint = "Look for a count that is far too large."
        world.error("race-many", "R8", message, unit.key_places.get("from", unit.place), hint)
        return ()
    for part in dict.fromkeys(parts):
        if not world.is_strip(part):
            message = f"'{name}' is a strip race, but {part} is not cut as a strip."
            hint = f"Write {part}'s cut as its width × WOF, for example `2 1/2 x WOF`."
            world.error("not-a-strip", "R11", message, unit.place, hint)
            return ()
        if world.join(part) == "none":
            message = f"'{name}' sews its strips end to end, but {part} has `join: none`."
            hint = "Write `join: diagonal` or `join: straight`."
            world.error("race-join", "R5", message, unit.place, hint)
            return ()
    return parts


def _folds(name: str, unit: WrittenStripRace, world: World) -> int | None:
    folds = world.number(unit.folds, f"{name}: folds")
    if folds is not None and 1 <= folds <= MOST_FOLDS:
        return folds
    if folds is not None or here(unit.folds, world.size) is None:
        told = "no folds are stated" if folds is None else f"{folds} folds are stated"
        message = f"'{name}': {told}; each doubles the rows."
        hint = "Write `folds: 4` for 16 rows, `folds: 5` for 32, or from 1 to 10."
        world.error("race-folds", "R8", message, unit.key_places.get("folds", unit.place), hint)
    return None


def _shorten(unit: WrittenStripRace, world: World) -> LengthValue:
    return here(unit.shorten, world.size) or LengthValue(Fraction(0), "0")


def _open(name: str, world: World) -> tuple[Tally, Tally]:
    across, down = (world.unknown(("parts", name, side)) for side in ("across", "down"))
    return pieced.alone(name, across, None), pieced.alone(name, down, None)


# ---- how long the joined strip is


def _loss(part: str, world: World, place: Place) -> Sum:
    """What a join behind this strip takes: its cut width on the diagonal, else two seams."""
    if world.join(part) == "diagonal":
        return world.strip_width(part, place) + world.seam * 2
    return world.seam * 2


def _long(parts: Sequence[str], unit: WrittenStripRace, world: World) -> Tally:
    """The strips, less the joins, less what is cut off."""
    terms = [
        Term(part, number, Sum.of(world.strip_length(part)))
        for part, number in Counter(parts).items()
    ]
    terms += [
        Term(f"less a join behind {part}", number, _loss(part, world, unit.place) * -1)
        for part, number in Counter(parts[:-1]).items()
    ]
    off = _shorten(unit, world)
    if off.number:
        cut_off = world.given(("race", "shorten"), off.number, off.place)
        terms.append(Term("less cut off", 1, cut_off * -1))
    return Tally("the joined strip", tuple(terms), unit.place)


def _joined(
    parts: Sequence[str], off: Exact, total: Exact, high: Exact, seam: Exact, world: World
) -> tuple[Joined, ...]:
    """Where each strip begins and ends in the long one, at the middle of its joins."""
    found, end = [], -off
    start, lean = NOUGHT, NOUGHT
    for at, part in enumerate(parts):
        end = end + Exact(world.strip_length(part))
        diagonal = world.join(part) == "diagonal"
        loss = high + seam * 2 if diagonal else seam * 2
        last = at == len(parts) - 1
        stop = total if last else end - loss / 2
        next_lean = high / 2 if diagonal and not last else NOUGHT
        found.append(Joined(part, start, stop, lean, next_lean))
        start, lean, end = stop, next_lean, end - loss
    return tuple(found)


def _stitched(parts: Sequence[str], wide: Exact, total: Exact, folds: int, world: World) -> Exact:
    """Every join across its strip, then each long seam: half of the strip, a quarter, …"""
    joins = sum(
        (wide * ROOT2 if world.join(part) == "diagonal" else wide for part in parts[:-1]), NOUGHT
    )
    return joins + sum((total / 2 ** (fold + 1) for fold in range(folds)), NOUGHT)


# ---- what is told


def _only_by_doubling(name: str, width: Sum, folds: int, world: World) -> None:
    """A stated length that so many rows do not come to: the nearest that folding gives."""
    stated, each = world.wanted(name), world.known(width)
    if stated is None or each is None or each.sign() <= 0:
        return
    near = Fraction(1, 8) if stated.about else Fraction(0)
    if -near <= each * 2**folds - stated.down <= near:
        return
    cm = world.unit == "cm"
    counts = range(1, MOST_FOLDS + 1)
    below = max((fold for fold in counts if each * 2**fold <= stated.down), default=1)
    nearest = sorted({below, min(below + 1, MOST_FOLDS)})
    fits = [
        f"folds: {fold} gives {2**fold} rows, {plain(each * 2**fold, cm)} long" for fold in nearest
    ]
    rows = Exact(stated.down) / each
    message = (
        f"'{name}' should finish {plain(stated.down, cm)} long, {plain(rows)} rows of "
        f"{plain(each, cm)}; {folds} folds give {2**folds} rows, {plain(each * 2**folds, cm)}. "
        "A race grows by doubling only."
    )
    world.error("race-rows", "R8", message, stated.place, f"{fits[0]}; {fits[-1]}.")


def _nothing_left(
    name: str,
    unit: WrittenStripRace,
    parts: Sequence[str],
    long: Tally,
    folds: int,
    world: World,
) -> bool:
    """More is cut off than the first strip has; or rows are narrower than their own seams."""
    cm, off = world.unit == "cm", _shorten(unit, world)
    first, total = world.strip_length(parts[0]), world.known(long.sum())
    join = world.known(_loss(parts[0], world, unit.place)) or Exact(0)
    if len(parts) > 1 and off.number >= first - join:
        message = (
            f"'{name}': {plain(off.number, cm)} are cut off the first strip, which is "
            f"{plain(first, cm)} long and needs {plain(join, cm)} of that for its join."
        )
        hint = f"Cut off less than half a strip: {plain(first / 2, cm)} at the most."
        world.error("race-shorten", "R8", message, off.place, hint)
        return True
    seams = world.known(world.seam * (2 * 2**folds))
    if total is None or seams is None or total > seams:
        return False
    message = (
        f"'{name}': the joined strip is {plain(total, cm)} long; in {2**folds} rows nothing is "
        "left of it but seams."
    )
    hint = "Take more strips, cut less off, or fold it less often."
    world.error("race-short", "R8", message, unit.place, hint)
    return True


METHOD: Final = MethodForm("strip race", WrittenStripRace, StripRaceWork())
