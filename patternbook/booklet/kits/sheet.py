"""The kit sheet in the order of work: buy, cut, bag, teach."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.booklet import wording
from patternbook.booklet.book import finished
from patternbook.booklet.kits.bag import Bag, in_the_bag
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.cloth import Cloth, cloth
from patternbook.booklet.kits.cuts import Cuts, cuts
from patternbook.booklet.kits.lesson import Lesson, lesson
from patternbook.booklet.parts.cover import revision


@dataclass(frozen=True)
class Sheet:
    """All pages, as finished words."""

    title: str
    facts: str
    cloth: Cloth
    cuts: Cuts
    bag: Bag
    lesson: Lesson


def sheet(kits: KitBook) -> Sheet:
    """The sheet for so many kits."""
    heading = kits.book.heading
    by = f"By {heading.by}. " if heading.by else ""
    size = wording.sides(finished(kits.known), kits.system)
    return Sheet(
        f"{heading.pattern}: {kits.kits}",
        f"{by}Size {kits.size}, {size} finished. {revision(kits.book)}. To be used with the "
        "booklet of the same revision.",
        cloth(kits),
        cuts(kits),
        in_the_bag(kits),
        lesson(kits),
    )
