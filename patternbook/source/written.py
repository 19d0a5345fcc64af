"""A whole pattern as it is written, section by section."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated, ClassVar, Final

from pydantic import Field
from pydantic_core import PydanticCustomError, core_schema

from patternbook.methods import METHODS, by_name
from patternbook.methods.fields import Day, Length, Letter, Line, Name, Sentences, Whole, YesNo
from patternbook.methods.form import MethodForm
from patternbook.methods.reading import Several, choice
from patternbook.methods.written import LAYOUT, WrittenMade, WrittenNode
from patternbook.source.cloth import WrittenFabric, WrittenPiece
from patternbook.source.cover import (
    WrittenIssue,
    WrittenPhoto,
    WrittenRevision,
    WrittenSettings,
    WrittenSize,
    WrittenWords,
)
from patternbook.source.finishing import (
    WrittenBacking,
    WrittenBatting,
    WrittenBinding,
    WrittenLabel,
    WrittenQuilting,
)
from patternbook.source.printed import Charts, Elsewhere
from patternbook.value import Text, WholeValue

if TYPE_CHECKING:
    from pydantic import GetCoreSchemaHandler

UNKNOWN_METHOD: Final = "unknown-method"
# Steps of an error's path that stand for a method, not for a key.
NO_METHOD: Final = "<no method>"
WrittenIn = Annotated[Text, choice("inches", "cm")]


@dataclass(frozen=True)
class UnitForm:
    """A unit: what may be written of it is chosen by its method, before anything is checked."""

    def __get_pydantic_core_schema__(
        self, _source: object, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        forms = {step(form): handler.generate_schema(form.written) for form in METHODS}
        unknown = core_schema.no_info_plain_validator_function(_refuse_method)
        return core_schema.tagged_union_schema(
            forms | {NO_METHOD: unknown}, discriminator=_method_of
        )


def step(form: MethodForm) -> str:
    """What stands for this method in an error's path."""
    return f"<{form.name}>"


def _method_of(raw: object) -> str:
    method = raw.get("method", LAYOUT) if isinstance(raw, dict) else LAYOUT
    form = by_name.get(" ".join(method.split())) if isinstance(method, str) else None
    return step(form) if form else NO_METHOD


def _refuse_method(_raw: object) -> None:
    words = tuple(method.name for method in METHODS)
    raise PydanticCustomError(UNKNOWN_METHOD, "no such method", {"words": words})


WrittenUnit = Annotated[WrittenMade, UnitForm()]


class WrittenPattern(WrittenNode):
    """The whole file."""

    called: ClassVar = "a pattern"
    pattern: Line
    language: Whole = WholeValue(1)
    slug: Name | None = None
    formerly: Several[Name] = ()
    summary: Sentences | None = None
    by: Line | None = None
    date: Day | None = None
    licence: Line | None = None
    level: Line | None = None
    contact: Line | None = None
    site: Line | None = None
    report: Line | None = None
    lesson: Line | None = None
    revision: Whole = WholeValue(1)
    revisions: tuple[WrittenRevision, ...] = ()
    written_in: WrittenIn = Text("inches")
    seam: Length | None = None
    width: Length | None = None
    settings: WrittenSettings = WrittenSettings()
    tools: Several[Line] = ()
    sizes: dict[Name, WrittenSize] = Field(default_factory=dict, min_length=1)
    fabrics: dict[Name, WrittenFabric] = Field(default_factory=dict)
    pieces: dict[Letter, WrittenPiece] = Field(default_factory=dict)
    units: dict[Name, WrittenUnit] = Field(default_factory=dict)
    top: WrittenUnit | None = None
    backing: WrittenBacking | None = None
    batting: WrittenBatting | None = None
    binding: WrittenBinding | None = None
    label: WrittenLabel | None = None
    quilting: tuple[WrittenQuilting, ...] = ()
    words: WrittenWords = WrittenWords()
    printed: YesNo = Text("no")
    elsewhere: Elsewhere = Field(default_factory=dict)
    charts: Charts = Field(default_factory=dict)
    photos: tuple[WrittenPhoto, ...] = ()
    issue_as: WrittenIssue | None = None
    publish_source: YesNo = Text("no")
    in_: object = None
    colourways: object = None
    class_: object = None

    @property
    def cm(self) -> bool:
        """Whether every number of the file is in centimetres."""
        return self.written_in == "cm"


class WrittenHouse(WrittenNode):
    """What stands once for all patterns of a house."""

    called: ClassVar = "the house rules"
    by: Line | None = None
    licence: Line | None = None
    written_in: WrittenIn = Text("inches")
    seam: Length | None = None
    width: Length | None = None
    settings: WrittenSettings = WrittenSettings()
