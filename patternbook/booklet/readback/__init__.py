"""A finished booklet is read back, and every figure in it set against the pattern itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from patternbook.booklet.readback.beside import beside
from patternbook.booklet.readback.chart import chart
from patternbook.booklet.readback.cloth import cloth
from patternbook.booklet.readback.counted import counted
from patternbook.booklet.readback.cut_told import cut_told
from patternbook.booklet.readback.glance import glance
from patternbook.booklet.readback.kits import kits
from patternbook.booklet.readback.labels import labels
from patternbook.booklet.readback.pictures import lengths, pictures
from patternbook.booklet.readback.quilting import quilting
from patternbook.booklet.readback.reading import Differs, tables
from patternbook.booklet.readback.said import said
from patternbook.booklet.readback.sentences import sentences, typed_by_author
from patternbook.booklet.readback.shared import shared
from patternbook.booklet.readback.steps import steps
from patternbook.booklet.readback.tagged import lines
from patternbook.cutting.kits_plan import KitsPlan
from patternbook.notice import Notice, gathered
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import OURS


def read_back(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    """An error for every figure that is printed otherwise than it is; none, and the booklet may
    be written."""
    return gathered(_told(one, f"{paper} booklet") for one in _differences(pdf, sizes))


def read_labels(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    """The same for the sheets of labels."""
    return gathered(_told(one, f"{paper} labels") for one in labels(lines(pdf), sizes))


def read_quilting(pdf: bytes, sizes: Mapping[str, Evidence], paper: str) -> tuple[Notice, ...]:
    """The same for the quilting pages."""
    plans = {size: plan for size, known in sizes.items() if (plan := known.quilting) is not None}
    system = next(iter(sizes.values())).quilt.system
    found = quilting(lines(pdf), plans, system)
    return gathered(_told(one, f"{paper} quilting pages") for one in found)


def read_kits(pdf: bytes, known: Evidence, plan: KitsPlan, paper: str) -> tuple[Notice, ...]:
    """The same for a kit sheet; `known` is one kit."""
    return gathered(_told(one, f"{paper} kit sheet") for one in kits(lines(pdf), known, plan))


def _differences(pdf: bytes, sizes: Mapping[str, Evidence]) -> Iterator[Differs]:
    read = lines(pdf)
    found = tuple(tables(read))
    yield from glance(found, sizes)
    yield from cloth(found, sizes)
    yield from beside(found, sizes)
    yield from chart(found, sizes)
    yield from shared(found, sizes)
    yield from cut_told(read, sizes)
    yield from steps(read, sizes)
    yield from counted(found, sizes)
    yield from said(read, sizes)
    right = frozenset[Fraction]().union(*(lengths(known) for known in sizes.values()))
    letters = frozenset(letter for known in sizes.values() for letter in known.quilt.pieces)
    typed = (typed_by_author(known) for known in sizes.values())
    yield from pictures(read, letters, right)
    yield from sentences(read, right.union(*typed))


def _told(found: Differs, what: str) -> Notice:
    where = f"page {found.page} of the {what}" if found.page else f"the {what}"
    message = f"{found.what}: {where} says {found.printed}; {found.right} is right."
    sizes = (found.size,) if found.size else ()
    return Notice(
        "read-back",
        "error",
        "booklet",
        message,
        (),
        "R20",
        sizes,
        found.printed,
        found.right,
        OURS,
    )
