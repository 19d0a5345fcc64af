"""`check`: reads the sources, reckons every size, and tells all faults at once."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from typing import Final

from patternbook.commands.examine import add_quiet, examined, notices_of, tell_notices
from patternbook.commands.mend import mend
from patternbook.commands.report import for_programs
from patternbook.commands.say import put_json, tell
from patternbook.commands.sources import add_sources, chosen
from patternbook.notice import failed

NAME: Final = "check"
HELP: Final = "check patterns in every size; the exit code is 1 where there is an error"


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    add_sources(parser)
    parser.add_argument(
        "--full", action="store_true", help="also the mixing of prints and the quilting's gap"
    )
    parser.add_argument("--strict", action="store_true", help="a warning counts as an error")
    parser.add_argument(
        "--fix", action="store_true", help="mend the source where one number alone would do it"
    )
    parser.add_argument("--json", action="store_true", help="for programs: one record, on stdout")
    parser.add_argument(
        "--advice", choices=("all", "none"), default="all", help="`none`: faults alone are told"
    )
    add_quiet(parser)


def run(options: Namespace) -> int:
    """Checks, tells, and gives 1 where anything keeps a pattern from being issued."""
    sources = chosen(options.sources)
    quiet = options.quiet or options.json
    found = examined(sources, quiet=quiet, full=options.full)
    if options.fix:
        mends = [mend(*pair, full=options.full) for pair in zip(sources, found, strict=True)]
        found = tuple(left for left, _ in mends)
        for line in (line for _, told in mends for line in told):
            tell(line)
    notices = notices_of(found)
    if options.advice == "none":
        notices = tuple(notice for notice in notices if notice.severity != "advice")
    if options.json:
        put_json(for_programs(notices, sources))
    else:
        tell_notices(notices, sources, quiet=options.quiet)
    return int(failed(notices, strict=options.strict))
