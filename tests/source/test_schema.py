"""The JSON Schema that editors use agrees with the reader, and is the one that was committed."""

import datetime as dt
import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from ruamel.yaml import YAML

from patternbook.source.schema import json_schema
from tests.support import Golden

DATA = Path(__file__).resolve().parent.parent / "data"
SCHEMA = json_schema()
SOURCES = [path for path in sorted(DATA.glob("*/*.yaml")) if path.stem != "a69-vane-cut"]


def plain(node: object) -> object:
    """A source as an editor sees it: with numbers, and days as they were typed."""
    if isinstance(node, dict):
        return {str(key): plain(value) for key, value in node.items()}
    if isinstance(node, list):
        return [plain(one) for one in node]
    return node.isoformat() if isinstance(node, dt.date) else node


def faults(text: str) -> list[str]:
    node = plain(YAML(typ="safe", pure=True).load(text))
    return [error.message for error in Draft202012Validator(SCHEMA).iter_errors(node)]


def test_it_is_the_one_that_was_committed(golden: Golden) -> None:
    golden(json.dumps(SCHEMA, indent=1, ensure_ascii=False) + "\n", "pattern.schema.json")


def test_it_is_a_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.stem)
def test_every_source_keeps_to_it(path: Path) -> None:
    assert faults(path.read_text("utf-8")) == []


@pytest.mark.parametrize(
    "typed",
    [
        "piecs: {A: {cut: 3 square}}",
        "pieces: {A: {cut: 2-4 inch x 10}}",
        "pieces: {I: {cut: 3 square}}",
        "fabrics: {red: {tone: drak}}",
        "units: {a: {method: log cabin, goose: A}}",
        "units: {a: {rows: A B}}",
        "units: {a: {method: strip race, from: A}}",
    ],
)
def test_it_marks_what_the_reader_refuses(typed: str) -> None:
    assert faults(f"pattern: Trial\n{typed}\n") != []
