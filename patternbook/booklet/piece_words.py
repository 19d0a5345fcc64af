"""A unit that is sewn in a way of its own, in words: its actions in order, numbered as drawn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from patternbook.booklet import wording
from patternbook.booklet.step_facts import CHECK, Context, Fact, Words
from patternbook.exact import Exact
from patternbook.inch import System
from patternbook.methods.made import Sides
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import PieceStep, Step


def piece(where: Context) -> Words:
    """All actions of a go, how many goes, and what one measures."""
    steps = [(known, step) for known, step in where.found() if isinstance(step, PieceStep)]
    does = tuple(_sentences(steps))
    several = any(step.goes > 1 for _, step in steps)
    spare = any(step.spare for _, step in steps)
    facts = (
        *((GOES,) if several else ()),
        *(() if _single(steps) else (WANTED,)),
        *((SPARE,) if spare else ()),
        CHECK,
    )
    word = steps[0][1].word
    title = f"{where.name}: {word if _single(steps) else wording.plural(word)}"
    return Words(title, does, facts, numbered=len(does) > 1)


def _single(steps: Sequence[tuple[Evidence, PieceStep]]) -> bool:
    return all(step.make == 1 for _, step in steps)


def _sentences(steps: Sequence[tuple[Evidence, PieceStep]]) -> list[str]:
    """What all sizes do alike is said once, its figures size by size where they differ."""
    told = {known.quilt.size: _numbered(step, known.quilt.system) for known, step in steps}
    alike = wording.same(tuple("\n".join(lines) for lines in told.values()))
    if alike is not None:
        return alike.split("\n")
    most = max(len(step.actions) for _, step in steps)
    return [line for number in range(most) for line in _by_size(number, steps)]


def _by_size(number: int, steps: Sequence[tuple[Evidence, PieceStep]]) -> Iterator[str]:
    """One action in all sizes: each figure that differs is given size by size, and each sentence
    that is not for all sizes is told to be for its own."""
    alike: dict[str, list[tuple[Evidence, PieceStep]]] = {}
    for known, step in steps:
        if number < len(step.actions):
            alike.setdefault(step.actions[number].words, []).append((known, step))
    for those in alike.values():
        figures: list[str] = []
        for at in range(len(those[0][1].actions[number].figures)):
            values: Mapping[str, str] = {
                known.quilt.size: figure(step.actions[number].figures[at], known.quilt.system)
                for known, step in those
            }
            figures.append(wording.by_size(values))
        sizes = wording.listed(wording.title(known.quilt.size) for known, _ in those)
        only = "" if len(those) == len(steps) else f"{sizes}: "
        yield only + _line(number, those[0][1], figures)


def _numbered(step: PieceStep, system: System) -> list[str]:
    return [
        _line(number, step, [figure(one, system) for one in action.figures])
        for number, action in enumerate(step.actions)
    ]


def _line(number: int, step: PieceStep, figures: Sequence[str]) -> str:
    return step.actions[number].words.format(*figures, way=way(step))


def figure(value: Exact | Sides, system: System) -> str:
    """A length or a size; `about` where no ruler shows it exactly."""
    if isinstance(value, Sides):
        return wording.sides(value, system)
    return wording.length(value, system)


def way(step: PieceStep) -> str:
    """How its seams are pressed, as `toward A`."""
    if step.toward == (None,):
        return "open"
    if len(step.toward) == 1:
        return f"toward {step.toward[0]}"
    return "as the arrows show"


def _goes(step: Step, _: Evidence) -> str:
    return str(step.goes) if isinstance(step, PieceStep) else ""


def _wanted(step: Step, _: Evidence) -> str:
    return str(step.make)


def _spare(step: Step, _: Evidence) -> str:
    return str(step.spare) if isinstance(step, PieceStep) else ""


WANTED = Fact("Wanted", "{} are wanted.", _wanted)
GOES = Fact("Times to do this", "Do this {} times.", _goes)
SPARE = Fact("To spare", "To spare: {}.", _spare)
