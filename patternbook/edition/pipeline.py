"""The run of `check`: source, quilt, plans and proof of every size, each stage after the last."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from patternbook.booklet.letters import unprintable
from patternbook.booklet.sentences import told as unfilled
from patternbook.cutting.as_laid import as_laid
from patternbook.cutting.plan import plan as plan_cutting
from patternbook.edition.editions import asked_for
from patternbook.edition.editions import unknown as unknown_editions
from patternbook.inch import CENTIMETRES, INCHES
from patternbook.notice import Notice, failed, gathered
from patternbook.proof import EVERY_SIZE, prove
from patternbook.proof.advice import advice
from patternbook.proof.advice.chosen import chosen
from patternbook.proof.advice.grouped import grouped
from patternbook.proof.charts import charts
from patternbook.proof.evidence import Evidence, Quilted
from patternbook.proof.prose import proofread
from patternbook.proof.recounted import OURS
from patternbook.quilt.build import quilts
from patternbook.quilt.heading import Heading
from patternbook.quilt.place import Patch, patches
from patternbook.quilt.records import Quilt
from patternbook.sewing.plan import plan as plan_sewing
from patternbook.source.load import Source, load
from patternbook.source.words import words
from patternbook.value import Text


@dataclass(frozen=True)
class Examined:
    """All that is known of one pattern: its source, the sizes that hold, and the notices."""

    source: Source | None
    heading: Heading | None
    sizes: Mapping[str, Evidence]
    notices: tuple[Notice, ...] = field(default=())

    @property
    def quilts(self) -> Mapping[str, Quilt]:
        """The exact quilt of each size that holds."""
        return {size: evidence.quilt for size, evidence in self.sizes.items()}

    @property
    def editions(self) -> tuple[str, ...]:
        """The names of the editions to be made where nobody asks for one alone."""
        return asked_for(editions_of(self.source)) if self.source else asked_for(())

    @property
    def failed(self) -> bool:
        """Whether an error keeps the pattern from being printed."""
        return failed(self.notices)


def examine(path: Path, shown: str, *, full: bool | None = False) -> Examined:
    """Read, work out, plan and prove one pattern; faults come back as notices. `full` adds what
    takes longer: the planned cutting and what other cutting and cloth would come to, the mixing
    of prints, and the quilting. None: as far as the settings ask for it."""
    source, notices = load(path, shown)
    if source is None:
        return Examined(None, None, {}, gathered(notices))
    if full is None:
        full = str(source.written.settings.cutting) != "plain"
    made = quilts(source.written, source.pictures)
    told = [*notices, *unprintable(words(source.written)), *made.notices]
    sizes: dict[str, Evidence] = {}
    unsound = {size for notice in made.notices if failed([notice]) for size in notice.sizes}
    level = made.heading.level
    for size, quilt in made.sizes.items():
        evidence, more = plan(quilt, sound=size not in unsound, full=full, level=level)
        sizes[size] = evidence
        told.extend(more)
        if full and evidence.sound:
            told.extend(drawn(evidence))
    for check in EVERY_SIZE:
        told.extend(check(tuple(sizes.values())))
    told.extend(advice(tuple(sizes.values())))
    told.extend(unknown_editions(editions_of(source)))
    told.extend(charts(made.heading, CENTIMETRES if source.written.cm else INCHES))
    told.extend(unfilled(made.heading, sizes, words(source.written)))
    told.extend(proofread(source, sizes))
    told = chosen(told, source.written.settings.advice)
    return Examined(source, made.heading, sizes, grouped(told, tuple(made.sizes)))


def editions_of(source: Source) -> tuple[Text, ...]:
    """The editions that the source asks for, beside the whole booklet."""
    issue = source.written.issue_as
    return issue.editions if issue else ()


def plan(
    quilt: Quilt, *, sound: bool, full: bool = False, level: str | None = None
) -> tuple[Evidence, list[Notice]]:
    """Plan one size and prove the plans against each other; `sound`: its lengths hold. `level` is
    for whom the pattern is."""
    cutting, notices = plan_cutting(quilt, full=full)
    quilt = as_laid(quilt, cutting)
    sewing, more = plan_sewing(quilt)
    placed = patches(quilt, quilt.top) if quilt.top else ()
    quilter = partial(_quilted, quilt, placed, level)
    evidence = Evidence(quilt, placed, cutting, sewing, sound, quilter)
    told = [*notices, *more]
    # The plan of a faulty source may well disagree with itself: only a sound one is our fault.
    ours = sound and not failed(told)
    return evidence, [*told, *(one for one in prove(evidence) if ours or one.hint != OURS)]


def drawn(evidence: Evidence) -> tuple[Notice, ...]:
    """What must be told of prints that touch, and of the quilting and its proof."""
    from patternbook.proof.quilting import prove_quilting
    from patternbook.quilt.prints import mixed

    _, touching = mixed(evidence.quilt, evidence.patches)
    made, told = evidence.quilted
    proven = prove_quilting(made, evidence.quilt) if made is not None else ()
    return (*touching, *told, *proven)


def _quilted(quilt: Quilt, patches: Sequence[Patch], level: str | None) -> Quilted:
    """The plan of the quilting: its libraries are loaded only when it is asked for."""
    from patternbook.quilting.plan import plan as plan_quilting

    return plan_quilting(quilt, patches, level)
