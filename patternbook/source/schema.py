"""The JSON Schema of a pattern source, by which an editor completes keys and marks mistakes."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Final

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from patternbook.methods import METHODS
from patternbook.methods.reading import BARE, KIND, ONE
from patternbook.methods.written import LAYOUT, OWN_KEY
from patternbook.source.written import NO_METHOD, WrittenPattern, step

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_DEFS: Final = "$defs"


class _Schema(GenerateJsonSchema):
    """As pydantic makes it, but a key that may be left out may not be empty."""

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        """The schema without an empty value: there is none in a source."""
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        """The schema without its default, which is a value of ours and no text."""
        return self.generate_inner(schema["schema"])

    def dict_schema(self, schema: core_schema.DictSchema) -> JsonSchemaValue:
        """Names of one kind, and what stands beside each."""
        names, values = schema.get("keys_schema"), schema.get("values_schema")
        made: JsonSchemaValue = {"type": "object"}
        if names and values:
            made["propertyNames"] = self.generate_inner(names)
            made["additionalProperties"] = self.generate_inner(values)
        return made | ({"minProperties": schema["min_length"]} if "min_length" in schema else {})

    def tagged_union_schema(self, schema: core_schema.TaggedUnionSchema) -> JsonSchemaValue:
        """A choice by shape is one of them; a unit's method says which keys it has."""
        choices = schema["choices"]
        made = {name: self.generate_inner(choices[name]) for name in choices if name != NO_METHOD}
        if NO_METHOD in choices:
            return _by_method(made)
        either: JsonSchemaValue = {"anyOf": list(made.values())}
        one = made.get(BARE) or made.get(ONE) or {}
        more = "-each-size" if BARE in made else "-list"
        return either | ({KIND: one[KIND] + more} if KIND in one else {})


def _by_method(units: dict[Hashable, JsonSchemaValue]) -> JsonSchemaValue:
    forms = {form.name: units[step(form)] for form in METHODS}
    stated: JsonSchemaValue = {"required": ["method"]}
    rules: list[JsonSchemaValue] = [{"if": {"not": stated}, "then": forms[LAYOUT]}]
    for name, form in forms.items():
        rules.append({"if": {"properties": {"method": {"const": name}}} | stated, "then": form})
    method: JsonSchemaValue = {"properties": {"method": {"enum": list(forms)}}}
    return {"type": "object"} | method | {"allOf": rules}


def json_schema() -> dict[str, object]:
    """The schema, with each kind of value and each part written once."""
    made = WrittenPattern.model_json_schema(schema_generator=_Schema)
    kinds: dict[str, object] = {}
    whole = _named(made, kinds)
    if not isinstance(whole, dict):
        raise TypeError("a schema of a model is an object")
    parts = whole.pop(_DEFS, {})
    return {"$schema": DIALECT, **whole, _DEFS: dict(sorted({**parts, **kinds}.items()))}


def _named(node: object, kinds: dict[str, object]) -> object:
    """The same schema, each kind of value moved among the definitions."""
    if isinstance(node, list):
        return [_named(one, kinds) for one in node]
    if not isinstance(node, dict):
        return node
    if KIND in node and isinstance(node[KIND], str):
        name = node[KIND]
        kinds[name] = {key: _named(value, kinds) for key, value in node.items() if key != KIND}
        return {"$ref": f"#/{_DEFS}/{name}"}
    tidy = {key: _named(value, kinds) for key, value in node.items() if key != "title"}
    if tidy.get("additionalProperties") is False:
        tidy["patternProperties"] = {f"^{OWN_KEY}": True}
    return tidy
