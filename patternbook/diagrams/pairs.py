"""Long rows and columns joined in pairs, then pairs of pairs: one column of the drawing a round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import Final

from patternbook.diagrams import labels, words
from patternbook.diagrams.laid import Lying, draw, parts
from patternbook.diagrams.naming import name
from patternbook.diagrams.pattern import Pattern, Size
from patternbook.diagrams.sheet import cropped, fitted
from patternbook.diagrams.shown import Shown
from patternbook.quilt.records import LayoutMade, Unit
from patternbook.sewing.records import LineStep, Round, Step
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing

MOST: Final = (4.8, 3.5)
LEAST: Final = 5  # a shorter line needs no rounds
LARGEST: Final = 0.09
NAMES: Final = {1: "apart", 2: "pairs", 4: "fours", 8: "eights", 16: "sixteens", 32: "thirty-twos"}

GAP: Final = 4.5  # points between what is not joined yet

Groups = tuple[tuple[int, ...], ...]


def pairs(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing for every unit that has a long line; the top's rows are drawn elsewhere."""
    for size, unit in pattern.units():
        step = next((step for step in size.plans.sewing.of(unit.name) if _long(step)), None)
        if isinstance(step, LineStep) and isinstance(unit.made, LayoutMade):
            yield _pairs(pattern, size, unit, unit.made, step)


def _long(step: Step) -> bool:
    """Whether a row is joined in rounds; rows on the slant and hexagons are joined in order."""
    if not isinstance(step, LineStep) or not step.rounds:
        return False
    return sum(laid.times for laid in step.sequence) >= LEAST


def stages(names: Sequence[str], rounds: Sequence[Round]) -> tuple[Groups, ...]:
    """What lies together at first and after each round of the plan: neighbours are joined two
    and two, an odd one waits. Once a long run is one piece, the rest is joined to it in one go."""
    groups: Groups = tuple((at,) for at in range(len(names)))
    made = [groups]
    for one in rounds:
        if one.part is None and made[-1] is not made[0] and rounds[0].part is not None:
            return (*made, (tuple(range(len(names))),))
        inside = range(len(names)) if one.part is None else _run(names, one.part)
        before = tuple(group for group in groups if group[0] < inside.start)
        within = [group for group in groups if group[0] in inside]
        behind = tuple(group for group in groups if group[0] >= inside.stop)
        groups = (*before, *_joined(within), *behind)
        made.append(groups)
    return tuple(made)


def _joined(groups: Sequence[tuple[int, ...]]) -> Groups:
    return tuple(sum(groups[at : at + 2], ()) for at in range(0, len(groups), 2))


def _run(names: Sequence[str], part: str) -> range:
    """The places of the longest run of a part."""
    best, at = range(0), 0
    for name_, like in groupby(names):
        run = range(at, at + len(list(like)))
        at = run.stop
        if name_ == part and len(run) > len(best):
            best = run
    return best


def _pairs(pattern: Pattern, size: Size, unit: Unit, made: LayoutMade, step: LineStep) -> Drawing:
    lying = parts(size, unit)
    line = Stack(size, [lying[part] for part in made.lines[step.lines[0]].parts], made.by)
    rounds = stages([part.part for part in line.parts], step.rounds)

    def drawn(pen: Pen) -> None:
        at, room = 0.0, line.heading_room(pen, rounds)
        for number, groups in enumerate(rounds):
            end = line.stage(pen, groups, at, rounds[number - 1] if number else None)
            behind = max(end + pen.pt(24), at + room)
            if number + 1 < len(rounds):
                line.onward(pen, (end + behind) / 2)
            at = behind

    scale = LARGEST / (2.54 if size.system.unit == "cm" else 1)
    title = f"{words.title(unit.name)}: join in pairs, then pairs of pairs"
    return cropped(
        fitted(drawn, MOST, scale),
        name("pairs", unit.name),
        title + pattern.drawn_for(size, unit),
        _described(unit, line, rounds),
    )


@dataclass(frozen=True)
class Stack:
    """The parts of one line, and whether it is a row or a column."""

    size: Size
    parts: Sequence[Lying]
    by: str

    @property
    def upright(self) -> bool:
        return self.by == "columns"

    def long(self, number: int) -> float:
        """How much of the line a part takes."""
        part = self.parts[number]
        return part.down if self.upright else part.across

    @property
    def length(self) -> float:
        """All of the line."""
        return sum(self.long(number) for number in range(len(self.parts)))

    @property
    def wide(self) -> float:
        """How wide the line is."""
        return max(part.across if self.upright else part.down for part in self.parts)

    def stage(self, pen: Pen, groups: Groups, at: float, before: Groups | None) -> float:
        """Draw what lies together after a round, its place across the line; gives its end."""
        gap = pen.pt(GAP)
        along = (len(self.parts) - len(groups)) * gap / 2
        lone: list[Lying] = []
        for group in groups:
            start = along
            for number in group:
                part = self._placed(number, at, along)
                found = draw(pen, self.size, part)
                if before is None and not self._lettered(pen, part, found):
                    lone.append(part)
                along += self.long(number)
            if len(group) > 1:
                self._edge(pen, at, start, along)
            along += gap
        self._counted(pen, lone)
        self._headed(pen, groups, before, at)
        return at + self.wide + (self._aside(pen, lone) if lone else 0.0)

    def _placed(self, number: int, at: float, along: float) -> Lying:
        part = self.parts[number]
        x, y = (at, along) if self.upright else (along, at)
        return part.moved(x - part.x, y - part.y)

    def _lettered(self, pen: Pen, part: Lying, found: Sequence[Shown]) -> bool:
        if len(found) > 1:
            return labels.named(pen, part, found, part.part)
        return labels.inside(pen, found[0], part.part)

    def _edge(self, pen: Pen, at: float, start: float, end: float) -> None:
        if self.upright:
            pen.rectangle(at, start, self.wide, end - start, None, "edge")
        else:
            pen.rectangle(start, at, end - start, self.wide, None, "edge")

    def _counted(self, pen: Pen, lone: Sequence[Lying]) -> None:
        """Parts too thin for a letter, counted beside the line."""
        for name_, same in groupby(lone, key=lambda part: part.part):
            run = list(same)
            text = f"{len(run)} {name_}" if len(run) > 1 else name_
            if self.upright:
                x = run[0].x + self.wide + pen.pt(2)
                labels.brace(pen, x, run[0].y, run[-1].y + run[-1].down, text)
            else:
                middle = (run[0].x + run[-1].x + run[-1].across) / 2
                labels.under(pen, [labels.Tag(middle, run[0].y, text)], run[0].y + self.wide)

    def _aside(self, pen: Pen, lone: Sequence[Lying]) -> float:
        widest = max(len(f"{len(lone)} {part.part}") for part in lone)
        return pen.pt(12 + 5 * widest) if self.upright else pen.pt(11)

    def heading_room(self, pen: Pen, rounds: Sequence[Groups]) -> float:
        """How far apart two rounds stand at least, so that their headings do not touch."""
        if not self.upright:
            return 0.0
        heads = [
            max(pen.text_width(head, 9), pen.text_width(seams, 8))
            for before, groups in zip((None, *rounds), rounds, strict=False)
            for head, seams in [self._heading(groups, before)]
        ]
        return max(heads) + pen.pt(8)

    def _heading(self, groups: Groups, before: Groups | None) -> tuple[str, str]:
        """What lies there, and how many seams that took."""
        most = max(map(len, groups))
        lone = sum(len(group) > 1 for group in groups) == 1
        head = f"all {most}" if lone else NAMES.get(most, f"groups of {most}")
        head = head if len(groups) > 1 else "whole"
        seams = (
            words.counted(len(before) - len(groups), "seam") if before else f"{len(groups)} parts"
        )
        return head, seams

    def _headed(self, pen: Pen, groups: Groups, before: Groups | None, at: float) -> None:
        head, seams = self._heading(groups, before)
        if self.upright:
            x = at + self.wide / 2
            pen.label(x, -pen.pt(18), head, 9, weight=600)
            pen.label(x, -pen.pt(8), seams, 8)
        else:
            y = at + self.wide / 2
            pen.label(-pen.pt(6), y - pen.pt(5), head, 9, weight=600, anchor="end")
            pen.label(-pen.pt(6), y + pen.pt(5), seams, 8, anchor="end")

    def onward(self, pen: Pen, between: float) -> None:
        """An arrow to the next round, in the middle between the two."""
        middle = (self.length + (len(self.parts) - 1) * pen.pt(GAP)) / 2
        start, stop = between - pen.pt(6.5), between + pen.pt(6.5)
        if self.upright:
            pen.arrow(((start, middle), (stop, middle)), "edge", "end", 6)
        else:
            pen.arrow(((middle, start), (middle, stop)), "edge", "end", 6)


def _described(unit: Unit, line: Stack, rounds: Sequence[Groups]) -> str:
    start = "top" if line.upright else "left"
    told = [
        f"round {number}: {words.counted(len(before) - len(after), 'seam')}, {len(after)} left"
        for number, (before, after) in enumerate(pairwise(rounds), start=1)
    ]
    parts = words.run(line.parts)
    return (
        f"{words.title(unit.name)}, {len(line.parts)} parts from the {start}: {parts}. "
        f"Neighbours are joined two and two: {'; '.join(told)}."
    )
