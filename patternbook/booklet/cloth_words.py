"""How a cloth is called in the booklet, and what is cut from it."""

from __future__ import annotations

from collections.abc import Iterable

from patternbook.booklet import wording
from patternbook.cutting.records import FabricPlan
from patternbook.forms import by_name
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import Fabric


def label(fabric: Fabric) -> str:
    """`Floor (ground)`: its name, and its use where that says more."""
    name = wording.title(fabric.name)
    return name if fabric.use in (fabric.name, "") else f"{name} ({fabric.use})"


def letters(fabric: str, sizes: Iterable[Evidence]) -> str:
    """The letters cut from it in any size: `D, E, F`."""
    found = dict.fromkeys(
        letter
        for known in sizes
        for letter, piece in known.quilt.pieces.items()
        if piece.fabric == fabric
    )
    return ", ".join(found)


def precut(fabric: Fabric, number: int, known: Evidence) -> str:
    """`18 strips, 2½ × 40″`, for cloth that comes cut."""
    word = by_name[fabric.form].one
    size = f", {wording.cut_size(fabric.size, known.quilt.system)}" if fabric.size else ""
    return f"{wording.counted(number, word)}{size}"


def bought(plan: FabricPlan) -> bool:
    """Whether anything of it is bought."""
    return plan.buy.amount is not None or plan.buy.number is not None
