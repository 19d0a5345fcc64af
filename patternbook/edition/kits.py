"""From an examined pattern to the kits of one size: the plan for all of them, recounted."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from patternbook.booklet.book import Book
from patternbook.booklet.kits.book import KitBook
from patternbook.cutting.as_laid import as_laid, as_said
from patternbook.cutting.kits_plan import KitsPlan, plan_kits
from patternbook.cutting.plan import plan as plan_cutting
from patternbook.cutting.records import Style
from patternbook.edition.printing import PAPER_NAMES
from patternbook.notice import Notice, failed
from patternbook.proof.evidence import Evidence
from patternbook.proof.kits import kits as recount
from patternbook.quilt.heading import Heading
from patternbook.shipped import shipped


@dataclass(frozen=True)
class Kits:
    """So many kits of one size of a pattern; `known` is one kit."""

    heading: Heading
    known: Evidence
    plan: KitsPlan

    @property
    def stem(self) -> str:
        """What its files are called: `late-returns-crib-12-kits`."""
        kits = f"{self.plan.number}-kits" if self.plan.number > 1 else "1-kit"
        return f"{self.heading.slug}-{self.known.quilt.size}-{kits}"


def kits_of(
    heading: Heading, known: Evidence, number: int, style: Style | None
) -> tuple[Kits, tuple[Notice, ...]]:
    """The kits, cut in that style (None: in the pattern's own), and what their recount tells."""
    if style is not None and style != known.quilt.settings.cutting:
        settings = replace(known.quilt.settings, cutting=style)
        quilt = replace(as_said(known.quilt), settings=settings)
        cutting, _ = plan_cutting(quilt, full=style != "plain")
        quilt = as_laid(quilt, cutting)
        known = replace(known, quilt=quilt, cutting=cutting)
    made = plan_kits(known.quilt, number, known.cutting)
    told = tuple(recount(known.quilt, number, made.one, made.all))
    return Kits(heading, known, made), told


def kit_sheets(
    kits: Kits, papers: tuple[str, ...], step: Callable[[str], None]
) -> tuple[Mapping[str, bytes], tuple[Notice, ...]]:
    """The kit sheet on each paper by its name; none where a page could not be made."""
    from patternbook.booklet.kits.html import html
    from patternbook.booklet.pdf import make_pdf
    from patternbook.booklet.readback import read_kits
    from patternbook.diagrams.kit_pieces import kit_pieces

    drawn = {drawing.name: drawing for drawing in kit_pieces(kits.known.quilt, kits.plan.one)}
    day = date.fromisoformat(kits.heading.date) if kits.heading.date else None
    files: dict[str, bytes] = {}
    told: tuple[Notice, ...] = ()
    for name in papers:
        paper, called = PAPER_NAMES[name]
        step(f"laying out {called}")
        book = Book(kits.heading, {kits.known.quilt.size: kits.known}, drawn, paper)
        page = html(KitBook(book, kits.plan))
        pdf, more = make_pdf(
            page.html, drawn, base=shipped("templates"), date=day, titles=page.titles
        )
        if not failed(more):
            step(f"reading {called} back")
            more = (*more, *read_kits(pdf, kits.known, kits.plan, called))
        told = (*told, *more)
        files[f"{kits.stem}-{name}.pdf"] = pdf
    return ({}, told) if failed(told) else (files, told)
