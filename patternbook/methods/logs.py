"""What all blocks share that grow by logs sewn round a centre: each log is as long as the side that
it is sewn to, and lies where the sides have grown to."""

from __future__ import annotations

from abc import abstractmethod
from collections import Counter
from collections.abc import Iterator
from typing import ClassVar, Final, NamedTuple, TypeVar

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.linear import Sum
from patternbook.methods import logs_told, pieced
from patternbook.methods.cells import turn_of
from patternbook.methods.logs_written import WrittenLogs
from patternbook.methods.made import Placed, SewnSeam, Spot, Turn
from patternbook.methods.pieced import NOUGHT, UPRIGHT, PiecedWork, Sewn
from patternbook.methods.sums import gathered
from patternbook.methods.world import Rule, StripNeed, Tally, Term, World, here
from patternbook.value import Cell, LengthValue

# Clockwise, as the sides follow one another.
SIDES: Final = ("right", "bottom", "left", "top")
# No block comes near it: fifty rounds.
MOST_LOGS: Final = 200
LONG: Final = Rule("log-length", "R1", "A log is cut as long as the side that it is sewn to.")
STATED: Final = Rule("log-lengths", "R1", None)
W = TypeVar("W", bound=WrittenLogs)


class Log(NamedTuple):
    """One log: where it is sewn on, how wide it finishes, how long the side is that it meets."""

    number: int
    part: str
    turn: Turn
    side: str
    wide: Sum
    running: Tally

    @property
    def upright(self) -> bool:
        """Whether it is sewn to the left or to the right."""
        return self.side in ("left", "right")


class Grown(NamedTuple):
    """The centre, its logs in the order of sewing, and the whole block's width and length."""

    centre: str
    logs: tuple[Log, ...]
    across: Tally
    down: Tally


class LogsWork(PiecedWork[W]):
    """Logs sewn on one by one. The method says which side is next."""

    word: ClassVar[str]

    @abstractmethod
    def side(self, number: int, start: int, step: int) -> str:
        """The side that a log (counted from 0) is sewn to: `start` is the first one's place in
        SIDES, `step` is 1 clockwise, -1 the other way."""

    def fits(self, name: str, unit: W, number: int, world: World) -> None:
        """Tell of a number of logs that the method cannot sew."""

    def equations(self, name: str, unit: W, world: World) -> tuple[Tally, Tally]:
        """The centre and the logs, each held as long as the side that it is sewn to."""
        grown = self._grown(name, unit, world)
        self.fits(name, unit, len(grown.logs), world)
        if not grown.centre or not grown.logs:
            world.hopeless(name)
        for log in grown.logs:
            if not world.is_strip(log.part):
                _as_long_as_its_side(log, world)
        _stated(name, unit, grown.logs, world)
        return grown.across, grown.down

    def sewn(self, name: str, unit: W, world: World) -> Sewn:
        """One by one, each pressed away from the centre before the next."""
        grown = self._grown(name, unit, world)
        seam = world.length(world.seam)
        placed = _placed(grown, unit, world)
        lengths = [world.length(log.running.sum()) + seam * 2 for log in grown.logs]
        for log, length in zip(grown.logs, lengths, strict=True):
            _fits_the_strip(name, log, length, unit, world)
        told = [
            logs_told.Told(log.part, log.side, length)
            for log, length in zip(grown.logs, lengths, strict=True)
        ]
        press = here(unit.press, world.size)
        runs = Counter(
            (log.part, length)
            for log, length in zip(grown.logs, lengths, strict=True)
            if world.is_strip(log.part)
        )
        return Sewn(
            word=self.word,
            takes=pieced.taking((grown.centre, *(log.part for log in grown.logs))),
            placed=_from_the_corner(placed),
            seams=tuple(_seams(_from_the_corner(placed), grown.logs)),
            actions=logs_told.actions(placed, told, seam, str(press[0]) if press else None),
            stitched=len(lengths),
            length=sum(lengths, NOUGHT),
            runs=tuple(
                StripNeed(part, name, length, number, whole=False)
                for (part, length), number in runs.items()
            ),
        )

    def _grown(self, name: str, unit: W, world: World) -> Grown:
        return world.kept(f"logs of {name}", lambda: self._grow(name, unit, world))

    def _grow(self, name: str, unit: W, world: World) -> Grown:
        centre = pieced.one(unit.centre, world)
        span = world.span(centre, UPRIGHT, unit.place)
        across, down = [(centre, span.across)], [(centre, span.down)]
        start = SIDES.index(str(unit.start.at(world.size) or "right"))
        step = 1 if unit.turning.at(world.size) != "anticlockwise" else -1
        logs = []
        for number, cell in enumerate(_cells(name, unit, world)):
            part, side = str(cell.part), self.side(number, start, step)
            turn = turn_of(cell.turns)
            wide = world.span(part, turn, unit.place).across
            upright = side in ("left", "right")
            running = gathered(
                f"log {number + 1} ({part})", down if upright else across, unit.place
            )
            (across if upright else down).append((part, wide))
            logs.append(Log(number + 1, part, turn, side, wide, running))
        return Grown(
            centre,
            tuple(logs),
            gathered(name, across, unit.place),
            gathered(name, down, unit.place),
        )


# ---- what is held equal, and told


def _cells(name: str, unit: WrittenLogs, world: World) -> tuple[Cell, ...]:
    """The logs as written; none where they are too many (told)."""
    cells = pieced.cells_of(unit.logs, world)
    if len(cells) <= MOST_LOGS:
        return cells
    message = f"'{name}' has {len(cells)} logs; {MOST_LOGS} is the most."
    hint = "Look for a count that is far too large."
    world.error("log-many", "R8", message, unit.key_places.get("logs", unit.place), hint)
    return ()


def _as_long_as_its_side(log: Log, world: World) -> None:
    """A log that has a length of its own."""
    down = world.span(log.part, log.turn, log.running.place).down
    one = Tally(log.running.what, (Term(log.part, 1, down),), log.running.place)
    side = Tally("the side", log.running.terms, log.running.place)
    world.equal(one, side, LONG)


def _stated(name: str, unit: WrittenLogs, logs: tuple[Log, ...], world: World) -> None:
    """Stated lengths are what to cut: the side and two seams."""
    stated: tuple[LengthValue, ...] = here(unit.lengths, world.size) or ()
    if stated and len(stated) != len(logs):
        message = f"'{name}' has {len(logs)} logs, and {len(stated)} lengths are stated."
        place = unit.key_places.get("lengths", unit.place)
        hint = "State one length a log, in the order of sewing."
        world.error("log-lengths", "R1", message, place, hint)
        return
    for log, length in zip(logs, stated, strict=False):
        key = ("units", name, f"log {log.number}", "length")
        what = f"{name}: {log.running.what}"
        raw = Tally(what, (*log.running.terms, Term("seam", 2, world.seam)), log.running.place)
        world.state(key, raw, length.number, STATED, length.place)


def _fits_the_strip(name: str, log: Log, length: Exact, unit: WrittenLogs, world: World) -> None:
    if not world.is_strip(log.part) or length <= world.strip_length(log.part):
        return
    cm = world.unit == "cm"
    shown, strip = plain(length, cm), plain(world.strip_length(log.part), cm)
    message = (
        f"'{name}': log {log.number} ({log.part}) is cut {shown} long, a strip is {strip} long."
    )
    hint = "Sew fewer logs, or narrower ones, or a smaller centre."
    world.error("log-too-long", "R7", message, unit.place, hint)


# ---- where all lie


def _placed(grown: Grown, unit: WrittenLogs, world: World) -> tuple[Placed, ...]:
    """The centre with its top left corner at nought, and each log on its side."""
    span = world.span(grown.centre, UPRIGHT, unit.place)
    left = top = NOUGHT
    right, low = world.length(span.across), world.length(span.down)
    placed = [Placed(grown.centre, UPRIGHT, left, top, right, low)]
    for log in grown.logs:
        wide = world.length(log.wide)
        turn = log.turn if log.upright else _lying(log.turn)
        if log.upright:
            x = right if log.side == "right" else left - wide
            placed.append(Placed(log.part, turn, x, top, wide, low - top))
            left, right = min(left, x), max(right, x + wide)
        else:
            y = low if log.side == "bottom" else top - wide
            placed.append(Placed(log.part, turn, left, y, right - left, wide))
            top, low = min(top, y), max(low, y + wide)
    return tuple(placed)


def _lying(turn: Turn) -> Turn:
    return turn._replace(quarters=(turn.quarters + 1) % 4)


def _from_the_corner(placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """The parts measured from the block's own top left corner."""
    left, top = min(part.x for part in placed), min(part.y for part in placed)
    return tuple(part._replace(x=part.x - left, y=part.y - top) for part in placed)


def _seams(placed: tuple[Placed, ...], logs: tuple[Log, ...]) -> Iterator[SewnSeam]:
    """Along the inner edge of each log, pressed to the log."""
    for at, log in enumerate(logs, 1):
        start, end = _inner_edge(placed[at], log.side)
        beside = max(range(at), key=lambda one: _shared(placed[one], placed[at], log.side))
        yield SewnSeam(start, end, (beside, at), at, settled=True)


def _inner_edge(log: Placed, side: str) -> tuple[Spot, Spot]:
    right, low = log.x + log.across, log.y + log.down
    if side in ("left", "right"):
        x = log.x if side == "right" else right
        return Spot(x, log.y), Spot(x, low)
    y = log.y if side == "bottom" else low
    return Spot(log.x, y), Spot(right, y)


def _shared(one: Placed, log: Placed, side: str) -> Exact:
    """How long the edge is that two parts share, where the log is sewn on."""
    (x, y), (right, low) = _inner_edge(log, side)
    if side in ("left", "right"):
        touches = x in (one.x, one.x + one.across)
        length = min(low, one.y + one.down) - max(y, one.y)
    else:
        touches = y in (one.y, one.y + one.down)
        length = min(right, one.x + one.across) - max(x, one.x)
    return length if touches and length > 0 else NOUGHT
