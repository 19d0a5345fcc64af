"""What is written of all blocks that grow by logs sewn round a centre."""

from __future__ import annotations

from typing import Annotated

from patternbook.methods.fields import Cells, Length, Part
from patternbook.methods.reading import EachSize, choice
from patternbook.methods.written import WrittenMade
from patternbook.value import Text, every

Side = Annotated[Text, choice("left", "top", "right", "bottom")]
Turning = Annotated[Text, choice("clockwise", "anticlockwise")]


class WrittenLogs(WrittenMade):
    """The centre, and the logs in the order in which they are sewn."""

    centre: EachSize[Part]
    logs: EachSize[Cells]
    start: EachSize[Side] = every(Text("right"))
    turning: EachSize[Turning] = every(Text("clockwise"))
    lengths: EachSize[tuple[Length, ...]] | None = None
