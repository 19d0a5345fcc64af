"""What every quilting page is made from: the booklet's own contents and the plan of each size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternbook.booklet.book import Book
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilting.designs.form import Design
from patternbook.quilting.records import QuiltingPlan


@dataclass(frozen=True)
class QuiltBook:
    """The sizes that have a plan, in order; `designs` are the designs by name."""

    book: Book
    plans: Mapping[str, QuiltingPlan]
    designs: Mapping[str, Design]

    @property
    def system(self) -> System:
        """Inches or centimetres."""
        return self.book.system

    @property
    def first(self) -> QuiltingPlan:
        """The plan of the first size."""
        return next(iter(self.plans.values()))

    def known(self, size: str) -> Evidence:
        """Everything else that is known of a size."""
        return self.book.sizes[size]
