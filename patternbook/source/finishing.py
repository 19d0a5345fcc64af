"""What is written of the finishing: backing, batting, binding, label, and the quilting."""

from __future__ import annotations

from typing import Annotated, ClassVar

from patternbook.methods.fields import (
    Count,
    Cut,
    Length,
    Line,
    More,
    Name,
    Shift,
    Size,
    Whole,
    YesNo,
)
from patternbook.methods.reading import EachSize, Several, choice
from patternbook.methods.written import WrittenNode
from patternbook.value import Text, every

Seams = Annotated[Text, choice("crosswise", "lengthwise")]
Fold = Annotated[Text, choice("double", "single")]
BindingJoin = Annotated[Text, choice("diagonal", "straight")]
QuiltedBy = Annotated[Text, choice("home", "frame")]
BiasFrom = Annotated[Text, choice("square", "strips")]
Corners = Annotated[Text, choice("square", "rounded")]
Skill = Annotated[Text, choice("walking foot", "ruler", "free motion")]


class WrittenBacking(WrittenNode):
    """The back of the quilt: `over` is how far it stands out on each side, `quilted-by` says how
    far it usually does. `pieced`: a strip of the top's spare cloth is let in, `insert` wide."""

    called: ClassVar = "the backing"
    quilted_by: EachSize[QuiltedBy] | None = None
    pieced: EachSize[YesNo] = every(Text("no"))
    insert: EachSize[Length] | None = None
    fabric: EachSize[Name] | None = None
    over: EachSize[More] | None = None
    size: EachSize[Size] | None = None
    panels: EachSize[Count] | None = None
    seams: EachSize[Seams] | None = None


class WrittenBatting(WrittenNode):
    """The filling: `limit` is how far apart it may be quilted at most. Off a roll `width` wide, of
    which `length` is bought."""

    called: ClassVar = "the batting"
    over: EachSize[More] | None = None
    size: EachSize[Size] | None = None
    limit: EachSize[Length] | None = None
    width: EachSize[Length] | None = None
    length: EachSize[Length] | None = None


class WrittenBinding(WrittenNode):
    """The edge: strips folded over it, single or double. `corners` of the quilt may be rounded,
    to a `radius`; `bias-from` is what bias is cut from, a `square` so large or strips."""

    called: ClassVar = "the binding"
    fabric: EachSize[Name] | None = None
    cut: EachSize[Cut] | None = None
    fold: EachSize[Fold] = every(Text("double"))
    bias: EachSize[YesNo] = every(Text("no"))
    join: EachSize[BindingJoin] = every(Text("diagonal"))
    strips: EachSize[Count] | None = None
    length: EachSize[Length] | None = None
    bias_from: EachSize[BiasFrom] = every(Text("square"))
    square: EachSize[Length] | None = None
    corners: EachSize[Corners] = every(Text("square"))
    radius: EachSize[Length] | None = None


class WrittenLabel(WrittenNode):
    """What is sewn to the back, and what it says."""

    called: ClassVar = "the label"
    size: EachSize[Size] | None = None
    fabric: EachSize[Name] | None = None
    lines: Several[Line] = ()


class WrittenQuilting(WrittenNode):
    """What is quilted where: a part's name, `border 1`, `ground`, `piecing`, or `all over`.

    Left out, the design and the spacing are chosen. `skill` is how it is sewn, `seed` another
    draw of the same designs; `name` names the area, `merge` joins others to it, `move` shifts a
    line that divides it (`cut 2 by 1 1/2`), `exclude` leaves it without quilting.
    """

    called: ClassVar = "an item of the quilting"
    area: Line
    design: Line | None = None
    spacing: EachSize[Length] | None = None
    skill: Skill | None = None
    seed: Whole | None = None
    name: Line | None = None
    merge: Several[Line] = ()
    move: Several[Shift] = ()
    exclude: YesNo = Text("no")
