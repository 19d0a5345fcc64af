"""The cutting plan carried out once more, piece by piece, with no sum of the planner's: what comes
off the cloth is what the quilt takes, nothing lies on anything else, and a cutter can do it."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.cutting.records import FabricPlan
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.replay.apart import apart
from patternbook.proof.replay.bolt import on_cloth
from patternbook.proof.replay.in_steps import in_steps
from patternbook.proof.replay.lay import Replayed, replayed
from patternbook.proof.replay.needed import as_it_lies, needed, upright
from patternbook.proof.replay.tools import tools
from patternbook.quilt.records import Quilt


def replay(evidence: Evidence) -> Iterator[Notice]:
    """Errors where a fabric's plan cannot be cut as it stands, or gives other pieces than the
    quilt takes."""
    quilt, cutting = evidence.quilt, evidence.cutting
    for plan in cutting.fabrics.values():
        cloth = replayed(quilt, plan)
        yield from _carried_out(cloth)
        yield from needed(cloth, cutting.binding)
        yield from as_it_lies(cloth)


def cut_as_planned(quilt: Quilt, plan: FabricPlan) -> Iterator[Notice]:
    """Errors where the plan cannot be cut as it stands, however many quilts it is for."""
    return _carried_out(replayed(quilt, plan))


def _carried_out(cloth: Replayed) -> Iterator[Notice]:
    for lain in cloth.strips:
        yield from apart(cloth, lain)
    yield from on_cloth(cloth)
    yield from upright(cloth)
    yield from in_steps(cloth)
    yield from tools(cloth)
