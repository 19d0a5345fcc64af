"""`schema`: JSON Schemas, so that editors complete a source and programs know what they read."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from typing import Final

from patternbook.commands.say import put_json

NAME: Final = "schema"
HELP: Final = "print the JSON Schema of a pattern source, or of what a command says with --json"
DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
OF: Final = ("source", "check", "figures", "kits")


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument(
        "of", nargs="?", choices=OF, default="source", help="which one (default: source)"
    )


def run(options: Namespace) -> int:
    """Prints it."""
    put_json(schema_of(options.of))
    return 0


def schema_of(what: str) -> dict[str, object]:
    """The schema, made from the records themselves."""
    if what == "source":
        from patternbook.source.schema import json_schema

        return json_schema()
    from pydantic import TypeAdapter

    return {"$schema": DIALECT, **TypeAdapter(_record(what)).json_schema()}


def _record(what: str) -> type:
    if what == "check":
        from patternbook.commands.check_record import CheckRecord

        return CheckRecord
    if what == "kits":
        from patternbook.edition.kits_record import KitsRecord

        return KitsRecord
    from patternbook.edition.figures_record import FiguresRecord

    return FiguresRecord
