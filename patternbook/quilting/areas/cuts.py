"""Plain cuts: seams carried on through the open ground until no part of it is too large."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import Final, NamedTuple

import shapely
from shapely import LineString, Polygon
from shapely.affinity import translate

from patternbook.quilting.areas.roots import NEAR
from patternbook.quilting.areas.seam_lines import SeamLines
from patternbook.quilting.areas.splitting import Key, Rim, chords_of, line_key, main_slope, split
from patternbook.quilting.areas.weighing import (
    TARGET,
    WEIGHTS,
    Side,
    closely,
    roughly,
    shares,
    slants,
    thin,
    too_large,
)
from patternbook.quilting.records import Spot, Top

CLOSELY: Final = 6  # options that are looked at closely
POOR: Final = 3.0  # an option that is worse is not taken


class Cut(NamedTuple):
    """A straight cut through one part: its chords, and what they leave of it. `number` is that of
    a cut that is marked, `bare` what of it lies on no seam."""

    chords: tuple[LineString, ...]
    parts: tuple[Polygon, ...]
    number: int = 0
    bare: tuple[LineString, ...] = ()


class Cuts:
    """The cutting up of the open ground of one top. `moves` says how far the author wants which
    marked cut to lie from where it would; `refused` the numbers of those that did not come out.
    Cuts along one line have one number."""

    def __init__(self, top: Top, grounds: Sequence[Polygon], moves: Mapping[int, float]) -> None:
        self._rules = top.rules
        self._seams = SeamLines(top, grounds)
        self._slopes: set[float] = set()  # of the lines through holes
        self._used: set[Key] = set()
        self._numbers: dict[Key, int] = {}
        self._moves = moves
        self.cuts: list[Cut] = []
        self.refused: set[int] = set()

    @property
    def numbered(self) -> int:
        """How many cuts there are that have to be marked."""
        return len(self._numbers)

    def parts(self, shape: Polygon) -> tuple[Polygon, ...]:
        """The parts that one ground is cut up into."""
        slope = main_slope(shape)
        waiting, done = [shape], []
        most = 8 + 8 * shape.area / (TARGET * self._rules.inch**2) + 4 * len(shape.interiors)
        while waiting:
            part = waiting.pop()
            cut = self._best(part, slope) if too_large(part, self._rules) and most > 0 else None
            if cut is None:
                done.append(part)
            else:
                most -= 1
                waiting += self._taken(cut, part).parts
        return tuple(done)

    def _taken(self, cut: Cut, part: Polygon) -> Cut:
        """The cut with its number, moved where the author wants that."""
        key = line_key(cut.chords[0])
        number, taken = 0, cut
        if self._bare(cut):
            number = self._numbers.setdefault(key, len(self._numbers) + 1)
            shift = self._moves.get(number, 0.0)
            moved = self._moved(cut, part, shift) if shift else cut
            if moved is None:
                self.refused.add(number)
            taken = moved or cut
        self._used.add(key)
        self.cuts.append(taken._replace(number=number, bare=self._bare(taken)))
        return taken

    def _bare(self, cut: Cut) -> tuple[LineString, ...]:
        """What of a cut has to be marked."""
        return tuple(piece for chord in cut.chords for piece in self._seams.bare(chord))

    def _moved(self, cut: Cut, part: Polygon, shift: float) -> Cut | None:
        """The cut so far to the right of where it was, or farther down."""
        (ax, ay), (bx, by) = cut.chords[0].coords[0], cut.chords[0].coords[-1]
        length = math.hypot(bx - ax, by - ay)
        across, down = (by - ay) / length, (ax - bx) / length
        if across < -NEAR or (abs(across) < NEAR and down < 0):
            across, down = -across, -down
        wanted = [translate(one, shift * across, shift * down) for one in cut.chords]
        found: dict[str, LineString] = {}
        for one in wanted:
            for chord in chords_of(one, part):
                found.setdefault(chord.wkt, chord)
        chords = tuple(found.values())
        parts = split(part, chords)
        return Cut(chords, parts) if len(parts) > 1 else None

    def _best(self, part: Polygon, slope: float) -> Cut | None:
        """Holes first, by a line through as many as can be; then the best seam carried on, else
        a line that parts it evenly."""
        lines = self._seams.at(part)
        if part.interiors:
            return self._through(part, [*lines, *self._middles(part)], slope)
        return self._chosen(part, lines, slope) or self._chosen(part, self._evenly(part), slope)

    def _middles(self, part: Polygon) -> list[LineString]:
        """Lines through the middles of the holes of a part; through the very middle of one that
        is smaller than the marks of the ruler."""
        boxes = [hole.bounds for hole in part.interiors]
        least = 4 * self._rules.step
        middles = [((x0 + x1) / 2, (y0 + y1) / 2) for x0, y0, x1, y1 in boxes]
        small = [
            place
            for place, (x0, y0, x1, y1) in zip(middles, boxes, strict=True)
            if min(x1 - x0, y1 - y0) < least
        ]
        marked = [(self._mark(x), self._mark(y)) for x, y in middles]
        return self._upright(part, marked + small)

    def _evenly(self, part: Polygon) -> list[LineString]:
        """Lines into equal parts."""
        x0, y0, x1, y1 = part.bounds
        number = shares(part, self._rules)
        steps = [k / number for k in range(1, number)]
        places = [(x0 + (x1 - x0) * k, y0 + (y1 - y0) * k) for k in steps]
        return self._upright(part, [(self._mark(x), self._mark(y)) for x, y in places])

    def _mark(self, place: float) -> float:
        """The nearest mark of the ruler."""
        return round(place / self._rules.step) * self._rules.step

    def _upright(self, part: Polygon, places: Sequence[Spot]) -> list[LineString]:
        """The lines down and across through some points."""
        x0, y0, x1, y1 = part.bounds
        across, down = sorted({x for x, _ in places}), sorted({y for _, y in places})
        lines = [LineString([(x, y0 - 1), (x, y1 + 1)]) for x in across]
        return lines + [LineString([(x0 - 1, y), (x1 + 1, y)]) for y in down]

    def _through(self, part: Polygon, lines: Sequence[LineString], slope: float) -> Cut | None:
        """One of the lines that meet the most holes, whole."""
        holes = [Polygon(hole) for hole in part.interiors]
        met = [int(shapely.intersects(line, holes).sum()) for line in lines]
        order = sorted(range(len(lines)), key=lambda n: (-met[n], n))
        options = list(islice(self._whole(part, [lines[n] for n in order]), CLOSELY))
        weighed = [
            (round(self._holed(cut, len(holes)) + self._rough(part, cut, slope), 6), n)
            for n, cut in enumerate(options)
        ]
        if not weighed:
            return None
        best = options[min(weighed)[1]]
        self._slopes.add(line_key(best.chords[0])[0])
        return best

    def _whole(self, part: Polygon, lines: Sequence[LineString]) -> Iterator[Cut]:
        for line in lines:
            chords = chords_of(line, part)
            parts = split(part, chords)
            if sum(len(one.interiors) for one in parts) < len(part.interiors):
                yield Cut(chords, parts)

    def _holed(self, cut: Cut, before: int) -> float:
        left = sum(len(one.interiors) for one in cut.parts) / before
        turned = bool(self._slopes) and line_key(cut.chords[0])[0] not in self._slopes
        return WEIGHTS.holed * left + WEIGHTS.turned * turned

    def _rough(self, part: Polygon, cut: Cut, slope: float) -> float:
        sides = [(float(one.area), float(one.length)) for one in cut.parts]
        return self._weighed(part, cut.chords, sides, slope)

    def _chosen(self, part: Polygon, lines: Sequence[LineString], slope: float) -> Cut | None:
        """The best of the chords of some lines; nothing where none is good enough."""
        rim, lost = Rim(part), thin(part, self._rules)
        chords = [chord for line in lines for chord in chords_of(line, part)]
        weighed = sorted(
            (self._weighed(part, (chord,), rim.sides(chord), slope), n)
            for n, chord in enumerate(chords)
        )
        least, best = POOR, None
        for weight, n in weighed[:CLOSELY]:
            parts = split(part, (chords[n],))
            whole = round(weight + closely(lost, parts, self._rules), 6)
            if len(parts) == 2 and whole < least:
                least, best = whole, Cut((chords[n],), parts)
        return best

    def _weighed(
        self, part: Polygon, chords: Sequence[LineString], sides: Sequence[Side], slope: float
    ) -> float:
        length = sum(float(chord.length) for chord in chords)
        sewn = sum(self._seams.sewn(chord) for chord in chords)
        again = line_key(chords[0]) in self._used
        weight = roughly(part, length, sewn, sides, self._rules)
        weight += WEIGHTS.slanted * slants(chords[0], slope) - WEIGHTS.again * again
        return round(weight, 6)
