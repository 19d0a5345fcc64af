"""`figures`: every number of one pattern, as tables or for programs."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.commands.examine import add_quiet, examined, notices_of, tell_notices
from patternbook.commands.say import put, put_json
from patternbook.commands.sources import Source, one
from patternbook.commands.stop import WrongCall
from patternbook.notice import failed

if TYPE_CHECKING:
    from patternbook.edition.figures_record import SizeFigures

NAME: Final = "figures"
HELP: Final = "print every number of a pattern, and where each comes from"


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument("source", type=Path, metavar="SOURCE", help="a source or its folder")
    parser.add_argument("--size", metavar="S", help="one size only")
    parser.add_argument(
        "--full", action="store_true", help="add what other cutting and other cloth would come to"
    )
    parser.add_argument("--json", action="store_true", help="for programs: one record, on stdout")
    add_quiet(parser)


def run(options: Namespace) -> int:
    """Prints the figures; faults are told beside them, and make the exit code 1."""
    from patternbook.commands.tables import tables
    from patternbook.edition.figures import figures

    source = one(options.source)
    found = examined([source], quiet=True, full=options.full or None)
    notices = notices_of(found)
    record = figures(found[0], full=options.full)
    if record is not None:
        if options.size is not None:
            record["sizes"] = _only(options.size, record["sizes"], source)
        if options.json:
            put_json(record)
        else:
            put(tables(record))
    tell_notices([n for n in notices if n.severity == "error"], [source], quiet=True)
    return int(failed(notices))


def _only(size: str, sizes: Mapping[str, SizeFigures], source: Source) -> dict[str, SizeFigures]:
    if size not in sizes:
        known = ", ".join(sizes) or "none that holds"
        raise WrongCall(f"{source.shown} has no size {size}. It has: {known}.")
    return {size: sizes[size]}
