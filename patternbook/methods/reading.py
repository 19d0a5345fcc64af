"""How a field of a written part is read: one word, a value per size, a list or not.

Which of these it is shows in its brackets alone, so it is chosen before anything is checked: an
error then speaks of the one thing that was meant.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Annotated, Any, Final, TypeVar, get_args

from pydantic_core import PydanticCustomError, core_schema

from patternbook.value import (
    NOWHERE,
    OTHERS,
    NameValue,
    PerSize,
    Text,
    ValueFault,
)
from patternbook.value.text import NAME

if TYPE_CHECKING:
    from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
    from pydantic.json_schema import JsonSchemaValue

# The pydantic error types that are ours; the source's `faults` turns them into words.
VALUE_FAULT: Final = "value"
NOT_A_WORD: Final = "not-a-word"
WRONG_WORD: Final = "wrong-word"
UNKNOWN_SIZE: Final = "unknown-size"

# Steps of an error's path that stand for a choice made here, not for a key.
BARE: Final = "<bare>"
EACH_SIZE: Final = "<each size>"
ONE: Final = "<one>"
SEVERAL: Final = "<several>"

# Where a JSON Schema names the kind of value: those of one kind are written once.
KIND: Final = "kind"
T = TypeVar("T")


@dataclass(frozen=True)
class Reading:
    """What the values of one source are read by: its measure, and the names of its sizes.

    `read_as` is filled on the way: what each mapping was taken for, by its identity.
    """

    cm: bool = False
    sizes: tuple[str, ...] = ()
    read_as: dict[int, type] = field(default_factory=dict)


def read_by(info: core_schema.ValidationInfo) -> Reading:
    """What this source is read by."""
    return info.context if isinstance(info.context, Reading) else Reading()


def as_written(raw: object, expected: str) -> Text:
    """The scalar; a fault where a list or a mapping stands instead."""
    if isinstance(raw, Text):
        return raw
    if isinstance(raw, str):
        return Text(raw)
    raise PydanticCustomError(NOT_A_WORD, "not a scalar", {"expected": expected})


@dataclass(frozen=True)
class Kind:
    """One kind of value: its name, how it is described and read, the pattern an editor checks."""

    name: str
    described: str
    parse: Callable[[Text, Reading], object]
    pattern: str | None = None
    numeric: bool = False

    def __get_pydantic_core_schema__(
        self, _source: object, _handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(
        self, _schema: core_schema.CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        schema: JsonSchemaValue = {KIND: self.name, "description": self.described}
        schema["type"] = ["string", "number"] if self.numeric else "string"
        if self.pattern:
            schema["pattern"] = f"^(?:{self.pattern})$"
        return schema

    def _read(self, raw: object, info: core_schema.ValidationInfo) -> object:
        try:
            return self.parse(as_written(raw, self.described), read_by(info))
        except ValueFault as fault:
            raise PydanticCustomError(VALUE_FAULT, "not such a value", {"fault": fault}) from None


@dataclass(frozen=True)
class Choice:
    """One word out of a few."""

    words: tuple[str, ...]

    def __get_pydantic_core_schema__(
        self, _source: object, _handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(
        self, _schema: core_schema.CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"enum": list(self.words)}

    def _read(self, raw: object) -> Text:
        written = as_written(raw, "one of " + ", ".join(self.words))
        word = Text(" ".join(written.split()), written.place)
        if word not in self.words:
            raise PydanticCustomError(WRONG_WORD, "none of them", {"words": self.words})
        return word


def choice(*words: str) -> Choice:
    """One of these words."""
    return Choice(words)


@dataclass(frozen=True)
class SizeNameForm:
    """The name of one of the pattern's sizes."""

    others: bool = False

    def __get_pydantic_core_schema__(
        self, _source: object, _handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read)

    def __get_pydantic_json_schema__(
        self, _schema: core_schema.CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": "string", "pattern": f"^{NAME}$"}

    def _read(self, raw: object, info: core_schema.ValidationInfo) -> Text:
        name = as_written(raw, "a size's name")
        sizes = read_by(info).sizes
        if name not in sizes and not (self.others and name == OTHERS):
            raise PydanticCustomError(UNKNOWN_SIZE, "no such size", {"sizes": sizes})
        return NameValue(name, name.place)


@dataclass(frozen=True)
class PerSizeForm:
    """One value for all sizes, or a mapping of size names."""

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        (one,) = get_args(source)
        each = handler.generate_schema(one)
        name = handler.generate_schema(Annotated[Text, SizeNameForm(others=True)])
        branch = core_schema.tagged_union_schema(
            {BARE: each, EACH_SIZE: core_schema.dict_schema(name, each, min_length=1)},
            discriminator=_mapping_or_not,
        )
        return core_schema.no_info_wrap_validator_function(_per_size, branch)


def _mapping_or_not(raw: object) -> str:
    return EACH_SIZE if isinstance(raw, dict) else BARE


def _per_size(raw: object, handler: core_schema.ValidatorFunctionWrapHandler) -> PerSize[Any]:
    made = handler(raw)
    place = getattr(raw, "place", NOWHERE)
    if not isinstance(raw, dict):
        return PerSize(bare=made, place=place)
    others = made.pop(OTHERS, None)
    return PerSize(by_size=made, others=others, place=place)


@dataclass(frozen=True)
class SeveralForm:
    """A list, or one value that stands for a list of one."""

    def __get_pydantic_core_schema__(
        self, source: object, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        each = handler.generate_schema(get_args(source)[0])
        branch = core_schema.tagged_union_schema(
            {ONE: each, SEVERAL: core_schema.tuple_variable_schema(each, min_length=1)},
            discriminator=_list_or_not,
        )
        return core_schema.no_info_wrap_validator_function(_several, branch)


def _list_or_not(raw: object) -> str:
    return SEVERAL if isinstance(raw, list) else ONE


def _several(raw: object, handler: core_schema.ValidatorFunctionWrapHandler) -> tuple[object, ...]:
    made = handler(raw)
    return made if isinstance(raw, list) else (made,)


EachSize = Annotated[PerSize[T], PerSizeForm()]
Several = Annotated[tuple[T, ...], SeveralForm()]
