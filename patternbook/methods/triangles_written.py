"""What is written of all units sewn from two pieces and cut apart along a diagonal."""

from __future__ import annotations

from patternbook.methods import pieced
from patternbook.methods.fields import Cells, PairsGive
from patternbook.methods.reading import EachSize
from patternbook.methods.world import World
from patternbook.methods.written import WrittenMade
from patternbook.value import WholeValue, every


class WrittenTriangles(WrittenMade):
    """Two pieces, and how many units a pair of them gives."""

    from_: EachSize[Cells]
    gives: EachSize[PairsGive] = every(WholeValue(2))


def two_parts(name: str, unit: WrittenTriangles, world: World) -> tuple[str, ...]:
    """The two pieces; none where not two are written, which is told."""
    parts = pieced.letters(unit.from_, world)
    if len(parts) == 2:
        return parts
    message = f"'{name}' is sewn from two pieces, and {len(parts)} are named."
    world.error("two-pieces", "R2", message, unit.place, "Write `from: A B`.")
    world.hopeless(name)
    return ()
