"""The quilting pages in the order of work: before, then each size, practice, handing over."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import Figure, Table, finished
from patternbook.booklet.parts.back import Caution
from patternbook.booklet.parts.cover import revision
from patternbook.booklet.quilting.areas import areas_table, why
from patternbook.booklet.quilting.before import LAST, before, cautions, sign_key
from patternbook.booklet.quilting.book import QuiltBook
from patternbook.booklet.quilting.choices import ONE, choices
from patternbook.booklet.quilting.close import Close, closes, seen_before
from patternbook.booklet.quilting.figures import figures_table
from patternbook.booklet.quilting.hand_over import HandOver, hand_over
from patternbook.booklet.quilting.marking import Marking, marking
from patternbook.booklet.quilting.measures import at_most, percent, told, where
from patternbook.booklet.quilting.practice import Practice, practice
from patternbook.booklet.quilting.steps import Step, steps
from patternbook.diagrams.naming import name as drawn
from patternbook.quilting.sums import WASTE


@dataclass(frozen=True)
class SizePages:
    """All that is said of one size."""

    anchor: str
    title: str
    overview: Figure | None
    areas: Table
    why: tuple[str, ...]
    marking: Marking | None
    steps: tuple[Step, ...]
    closes: tuple[Close, ...]
    seen_before: str
    choices: Table
    send: str
    gap: Figure | None
    gap_words: tuple[str, ...]


@dataclass(frozen=True)
class Pages:
    """The whole edition, as finished words."""

    title: str
    facts: str
    before: tuple[tuple[str, str], ...]
    signs: Figure | None
    figures: Table
    notes: tuple[str, ...]
    cautions: tuple[Caution, ...]
    cautions_last: str
    sizes: tuple[SizePages, ...]
    practice: Practice
    hand_over: HandOver


def pages(quilts: QuiltBook) -> Pages:
    """Every page."""
    heading = quilts.book.heading
    by = f"By {heading.by}. " if heading.by else ""
    return Pages(
        f"{heading.pattern}: the quilting pages",
        f"{by}{revision(quilts.book)}. To be used with the booklet of the same revision.",
        before(quilts),
        sign_key(quilts),
        figures_table(quilts),
        tuple(_notes(quilts)),
        tuple(cautions()),
        LAST,
        tuple(_size(quilts, size) for size in quilts.plans),
        practice(quilts),
        hand_over(quilts),
    )


def _notes(quilts: QuiltBook) -> Iterator[str]:
    """What the figures mean."""
    far = told(quilts.first.wishes.limit, quilts.system)
    stated = quilts.first.wishes.limit_stated
    source = "as the pattern states" if stated else "assumed; read your packet"
    yield (
        f"The batting allows {far} from line to line ({source}). The widest place is the largest "
        "circle that no stitch goes through; the binding counts as a line there, since it is sewn "
        "through all layers."
    )
    yield (
        f"Thread has {percent(WASTE)} for waste and the ends at every start in it; hours are a "
        "range. Speed, stitch length and batting change both. The spread says how even the "
        "quilting is from area to area."
    )


def _size(quilts: QuiltBook, size: str) -> SizePages:
    plan = quilts.plans[size]
    known = quilts.known(size)
    sides = wording.sides(finished(known), quilts.system)
    return SizePages(
        f"quilting-{drawn(size)}",
        f"{wording.title(size)}, {sides} finished",
        _bare(quilts, drawn("quilts", size, "overview")),
        areas_table(plan, quilts.system),
        tuple(why(plan, quilts.system)),
        marking(quilts, size),
        steps(quilts, size),
        closes(quilts, size),
        seen_before(quilts, size),
        choices(plan),
        ONE,
        _bare(quilts, drawn("quilts", size, "gap")),
        tuple(_gap(quilts, size)),
    )


def _gap(quilts: QuiltBook, size: str) -> Iterator[str]:
    plan, system = quilts.plans[size], quilts.system
    yield f"{at_most(plan.gap.high, system)} across, {where(plan.gap.at, plan.top, system)}."
    bare = at_most(plan.gap_bare.high, system)
    if bare not in {wording.NONE, at_most(plan.gap.high, system)}:
        yield f"Were the binding no line: {bare}, at the edge."


def _bare(quilts: QuiltBook, name: str) -> Figure | None:
    figure = quilts.book.figure(name)
    return Figure(figure.name, figure.alt, "", figure.inches) if figure else None
