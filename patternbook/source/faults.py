"""From pydantic's errors to notices: our own words, chosen by the kind of error and the key."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Any, Final

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from patternbook.methods.reading import (
    EACH_SIZE,
    NOT_A_WORD,
    UNKNOWN_SIZE,
    VALUE_FAULT,
    WRONG_WORD,
    Reading,
)
from patternbook.notice import Mark, Notice, Place
from patternbook.source.tell import ended, notice
from patternbook.source.tree import Listing, Tree
from patternbook.source.written import UNKNOWN_METHOD
from patternbook.value import NOWHERE, OTHERS, Text, ValueFault, quoted

# A pattern that names no sizes is a pattern in one size.
ONE_SIZE: Final = "one"
# Pydantic marks an error of a key, rather than of its value, by this last step.
_KEY_STEP: Final = "[key]"
_NO_MAPPING: Final = frozenset(("model_type", "model_attributes_type", "dict_type"))
# So many keys can still be taken in at a glance.
_MOST_KEYS: Final = 24
_NO_LIST: Final = frozenset(("tuple_type", "list_type"))


@dataclass(frozen=True)
class Spot:
    """Where an error is: the mapping that holds it, its key, its value, and the size it is in."""

    holder: Tree | None
    key: Text | None
    value: object
    size: str | None

    @property
    def place(self) -> Place:
        """The value's own place; its key's where there is no value."""
        if self.value == "" and self.key is not None:
            return self.key.place
        return self.value.place if isinstance(self.value, Text | Tree | Listing) else NOWHERE

    @property
    def called(self) -> str:
        """The key before a fault's words."""
        return f"{self.key}: " if self.key is not None else ""


def told(fault: ValidationError, root: Tree, by: Reading, shown: str) -> tuple[Notice, ...]:
    """Every error of a source as a notice."""
    start = Mark(Place(shown, 1, 1, 1, 1), "here")
    told: dict[object, Notice] = {}
    for error in fault.errors(include_url=False):
        spot = found(error["loc"], root)
        if spot.size is not None and spot.size not in (*by.sizes, OTHERS):
            continue
        if error["type"] == "too_short" and isinstance(spot.value, Tree | Listing) and spot.value:
            continue  # nothing is left of it, since what stands in it is told to be at fault
        one = _told(error, spot, by.read_as)
        one = one if one.marks else replace(one, marks=(start,))
        # A size that does not exist is told once, with every place that names it.
        same = (one.code, one.message) if one.code == UNKNOWN_SIZE else len(told)
        before = told.get(same)
        told[same] = replace(before, marks=before.marks + one.marks) if before else one
    return tuple(told.values())


def _told(error: ErrorDetails, spot: Spot, read_as: Mapping[int, type]) -> Notice:
    kind = error["type"]
    context: Mapping[str, Any] = error.get("ctx", {})
    if kind == "extra_forbidden":
        one = _unknown_key(spot, read_as)
    elif kind == "missing":
        one = _missing_key(str(error["loc"][-1]), spot, read_as)
    elif isinstance(spot.value, Text) and not spot.value.strip() and kind != UNKNOWN_SIZE:
        one = _empty(spot)
    elif kind == VALUE_FAULT:
        one = _not_such_value(context["fault"], spot, read_as)
    else:
        one = _by_kind(kind, context, spot)
    return replace(one, sizes=(spot.size,)) if spot.size else one


def _by_kind(kind: str, context: Mapping[str, Any], spot: Spot) -> Notice:
    teller = _TELLERS.get(kind)
    if teller:
        return teller(context, spot)
    if kind in _NO_MAPPING:
        return notice(
            "not-a-mapping",
            spot.place,
            f"{spot.called}{_shape(spot.value)} stands here, where keys and values belong.",
            "Write them below it, or in braces: {key: value, key: value}.",
        )
    if kind in _NO_LIST:
        return notice(
            "not-a-list",
            spot.place,
            f"{spot.called}{_shape(spot.value)} stands here, where a list belongs.",
            _as_list(spot.value),
        )
    return notice("not-understood", spot.place, f"{spot.called}this cannot be understood here.")


def _as_list(value: object) -> str:
    if isinstance(value, Text) and len(value) < 40 and "\n" not in value:
        return f"Write it in brackets: [{value}]."
    return "A list stands in brackets, commas between: [A B, B A]."


def _shape(value: object) -> str:
    if isinstance(value, Tree):
        return "a mapping"
    if isinstance(value, Listing):
        return "a list"
    return quoted(" ".join(str(value).split()))


def _empty(spot: Spot) -> Notice:
    message = f"{spot.called}nothing is written here."
    return notice("empty-value", spot.place, message, "Give it a value, or take the key out.")


def _wrong_word(context: Mapping[str, Any], spot: Spot) -> Notice:
    words: Sequence[str] = context["words"]
    message = f"{spot.called}{_shape(spot.value)} is none of the words for it: {', '.join(words)}."
    return notice("wrong-word", spot.place, message, _is_it(str(spot.value), words))


def _not_a_word(context: Mapping[str, Any], spot: Spot) -> Notice:
    shape = _shape(spot.value)
    message = f"{spot.called}{shape} stands here, where one value belongs: {context['expected']}."
    return notice("not-a-value", spot.place, message)


def _unknown_size(context: Mapping[str, Any], spot: Spot) -> Notice:
    sizes: Sequence[str] = context["sizes"]
    known = f"The sizes are {', '.join(sizes)}."
    if sizes in {(), (ONE_SIZE,)}:
        known = "This pattern names no sizes of its own."
    name = str(spot.value)
    hint = _is_it(name, (*sizes, OTHERS)) or known
    return notice(
        "unknown-size", spot.place, f"{quoted(name)} is not a size of this pattern.", hint
    )


def _unknown_method(context: Mapping[str, Any], spot: Spot) -> Notice:
    words: Sequence[str] = context["words"]
    unit = spot.value
    if not isinstance(unit, Tree):
        return _by_kind("dict_type", {}, spot)
    method = unit.get(Text("method"))
    place = method.place if isinstance(method, Text) else spot.place
    message = f"{_shape(method)} is no sewing method: {', '.join(words)}."
    return notice("unknown-method", place, message, _is_it(str(method), words))


def _own_words(context: Mapping[str, Any], spot: Spot) -> Notice:
    return notice(context["code"], spot.place, context["words"], context.get("hint"))


def _too_short(_context: Mapping[str, Any], spot: Spot) -> Notice:
    return _empty(spot)


_TELLERS: Final[Mapping[str, Callable[[Mapping[str, Any], Spot], Notice]]] = {
    WRONG_WORD: _wrong_word,
    NOT_A_WORD: _not_a_word,
    UNKNOWN_SIZE: _unknown_size,
    UNKNOWN_METHOD: _unknown_method,
    "own": _own_words,
    "too_short": _too_short,
}


def _not_such_value(fault: ValueFault, spot: Spot, read_as: Mapping[int, type]) -> Notice:
    one = notice(fault.code, spot.place, ended(f"{spot.called}{fault.words}"), fault.hint)
    model = read_as.get(id(spot.holder))
    if spot.key is not None and model is not None and spot.key not in keys_of(model):
        # A size's own number: very likely one of the size's keys, mistyped.
        one = replace(one, hint=_is_it(spot.key, keys_of(model)) or one.hint)
    return replace(one, rule=fault.rule, needed=fault.needed)


def _unknown_key(spot: Spot, read_as: Mapping[int, type]) -> Notice:
    model = read_as.get(id(spot.holder))
    keys = keys_of(model) if model is not None else ()
    key = spot.key if spot.key is not None else Text("")
    message = f"{quoted(key) if key else 'an empty word'} is not a key of {called(model)}."
    hint = _is_it(key, keys) or _all_of(keys)
    return notice("unknown-key", key.place, message, hint)


def _all_of(keys: Sequence[str]) -> str | None:
    if len(keys) > _MOST_KEYS:
        return "All its keys are in the JSON Schema that `patternbook schema` prints."
    return f"Its keys are {', '.join(keys)}." if keys else None


def _missing_key(key: str, spot: Spot, read_as: Mapping[int, type]) -> Notice:
    holder = spot.holder if spot.value is None else spot.value
    model = read_as.get(id(holder))
    place = getattr(holder, "place", NOWHERE)
    return notice("missing-key", place, f"{called(model)} needs `{key}`.")


def found(loc: Iterable[str | int], root: Tree) -> Spot:
    """Follows an error's path through the source, over the steps that are not keys."""
    spot = Spot(None, None, root, None)
    size_next = False
    for step in loc:
        value = spot.value
        if isinstance(value, Listing) and isinstance(step, int) and step < len(value):
            spot = replace(spot, value=value[step])
        elif isinstance(value, Tree) and (key := value.key(str(step))) is not None:
            size = str(key) if size_next else spot.size
            name = spot.key if size_next else key
            spot = Spot(value if not size_next else spot.holder, name, value[key], size)
        elif step == _KEY_STEP and spot.holder is not None:
            spot = _of_key(spot)
        size_next = step == EACH_SIZE
    return spot


def _of_key(spot: Spot) -> Spot:
    """The error is about a key itself."""
    holder = spot.holder
    if spot.size is not None and holder is not None and spot.key is not None:
        sizes = holder.get(spot.key)
        own = sizes.key(spot.size) if isinstance(sizes, Tree) else None
        return Spot(holder, None, own, None)
    return Spot(holder, None, spot.key, None)


def keys_of(model: type) -> tuple[str, ...]:
    """The keys that an author may write there."""
    if not issubclass(model, BaseModel):
        return ()
    return tuple(field.alias or name for name, field in model.model_fields.items())


def called(model: type | None) -> str:
    """What a part of the source is called in a sentence."""
    return getattr(model, "called", "this part") if model is not None else "this part"


def _is_it(written: str, known: Sequence[str]) -> str | None:
    near = get_close_matches(written, known, 1, 0.6)
    return f"Is it `{near[0]}`?" if near else None
