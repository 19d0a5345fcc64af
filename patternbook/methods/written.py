"""What an author may write on every mapping, and on every unit whatever its method."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated, ClassVar, Final, Self, cast

from pydantic import (
    BaseModel,
    ConfigDict,
    PrivateAttr,
    ValidationInfo,
    ValidatorFunctionWrapHandler,
)
from pydantic import model_validator as check_whole

from patternbook.methods.fields import Count, Line, More, Sentences, Size
from patternbook.methods.reading import EachSize, Kind, Reading, Several, read_by
from patternbook.notice import Place
from patternbook.value import NOWHERE, Text, ValueFault, parse_part, quoted
from patternbook.value.text import one_line

OWN_KEY: Final = "x-"
# The unit that names no method.
LAYOUT: Final = "layout"


def hyphenated(name: str) -> str:
    """The key that a field is written as: `from_` is `from`, `row_measure` is `row-measure`."""
    return name.rstrip("_").replace("_", "-")


class WrittenNode(BaseModel):
    """A mapping of the source: unknown keys are refused, and every key keeps its place."""

    called: ClassVar = "this part"
    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        alias_generator=hyphenated,
        validate_by_alias=True,
        arbitrary_types_allowed=True,
    )
    note: Sentences | None = None

    _place: Place = PrivateAttr(default=NOWHERE)
    _keys: Mapping[str, Place] = PrivateAttr(default_factory=lambda: MappingProxyType({}))

    @property
    def place(self) -> Place:
        """Where it stands: its key, or itself where it is an item of a list."""
        return self._place

    @property
    def key_places(self) -> Mapping[str, Place]:
        """Where each of its keys stands."""
        return self._keys

    def stated(self, key: str) -> bool:
        """Whether the author wrote this key, rather than leaving it to its default."""
        return hyphenated(key) in self._keys

    @check_whole(mode="wrap")
    @classmethod
    def _keep_places(
        cls, raw: object, handler: ValidatorFunctionWrapHandler, info: ValidationInfo
    ) -> Self:
        """Puts the author's own keys aside, and remembers where all others stand."""
        read_by(info).read_as[id(raw)] = cls
        if not isinstance(raw, dict):
            return cast("Self", handler(raw))
        node: Self = handler({key: raw[key] for key in raw if not key.startswith(OWN_KEY)})
        node._place = getattr(raw, "place", NOWHERE)
        node._keys = {str(key): getattr(key, "place", NOWHERE) for key in raw}
        return node


def _pressing(text: Text, _by: Reading) -> Text:
    line = Text(one_line(text), text.place)
    if line in PRESSING:
        return line
    if line.startswith("toward "):
        return Text(f"toward {parse_part(Text(line.removeprefix('toward ')))}", text.place)
    raise ValueFault(
        "not-a-pressing",
        f"{quoted(line)} is no way to press",
        f"The words are {', '.join(PRESSING)}, and toward with a part (toward A).",
    )


PRESSING: Final = ("open", "out", "in", "left", "right", "all one way", "rows alternate")
_PRESSING_KIND: Final = Kind(
    "pressing",
    "the way to press (toward A, open)",
    _pressing,
    rf"{'|'.join(PRESSING)}|toward [A-Za-z0-9-]+",
)
Pressing = Annotated[Text, _PRESSING_KIND]


class WrittenMade(WrittenNode):
    """What every unit may say, whatever its method."""

    called: ClassVar = "a unit"
    method: Line = Text(LAYOUT)
    finished: EachSize[Size] | None = None
    measure: EachSize[Size] | None = None
    make: EachSize[Count] | None = None
    trimming: EachSize[More] | None = None
    press: EachSize[Several[Pressing]] | None = None
