"""What every page of a kit sheet is made from: the booklet of one size, and the plan for all."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from patternbook.booklet import wording
from patternbook.booklet.book import Book
from patternbook.cutting.kits_bag import Bagged, bag
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.cutting.records import BINDING, CuttingPlan
from patternbook.inch import System
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Quilt


@dataclass(frozen=True)
class KitBook:
    """So many kits of the one size in `book`."""

    book: Book
    plan: KitsPlan

    @property
    def known(self) -> Evidence:
        """One kit."""
        return self.book.first

    @property
    def quilt(self) -> Quilt:
        """The quilt that one kit makes."""
        return self.known.quilt

    @property
    def system(self) -> System:
        """Inches or centimetres."""
        return self.book.system

    @property
    def number(self) -> int:
        """How many kits."""
        return self.plan.number

    @property
    def all(self) -> CuttingPlan:
        """What is cut and bought for all of them."""
        return self.plan.all

    @cached_property
    def bag(self) -> tuple[Bagged, ...]:
        """What is in one bag."""
        return bag(self.quilt, self.plan.one)

    @property
    def kits(self) -> str:
        """`12 kits`."""
        return wording.counted(self.number, "kit")

    @property
    def size(self) -> str:
        """The name of the size."""
        return wording.title(self.quilt.size)


def called(letter: str) -> str:
    """The letter, or the binding by its name."""
    return "Binding" if letter == BINDING else letter


def cloth_of(name: str | None) -> str:
    """The name of a fabric as a table shows it."""
    return wording.title(name) if name else wording.NONE
