"""The command line: which command was called, and what its end is told to the shell as.

0: done, no error. 1: at least one error in a pattern, or an output that could not be written.
2: a wrong call. 3: a fault of ours, with a log file. 130: interrupted.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Sequence
from typing import Final, Protocol, cast

from patternbook import __version__
from patternbook.commands import build, check, explain, figures, kits, new, schema
from patternbook.commands.say import flush, printable, settle, tell
from patternbook.commands.stop import Stopped

FAULT_OF_OURS: Final = 3
INTERRUPTED: Final = 130


class Command(Protocol):
    """What each file of commands/ offers; its `run` loads what it needs and no other does."""

    NAME: str
    HELP: str

    def add_options(self, parser: ArgumentParser) -> None:
        """Says what the command may be told."""

    def run(self, options: Namespace) -> int:
        """Does it, and gives the exit code."""


COMMANDS: Final = cast("tuple[Command, ...]", (new, check, figures, build, kits, explain, schema))


def main(words: Sequence[str] | None = None) -> int:
    """Runs one command; every end is an exit code, and no traceback reaches the screen."""
    settle()
    try:
        options = _parser().parse_args(words)
        return cast("Callable[[Namespace], int]", options.run)(options)
    except SystemExit as end:  # argparse has already said why
        return end.code if isinstance(end.code, int) else Stopped.code
    except Stopped as stop:
        tell(f"patternbook: {printable(str(stop))}")
        return stop.code
    except KeyboardInterrupt:
        tell("patternbook: interrupted. No file was left half written.")
        return INTERRUPTED
    except Exception as fault:  # noqa: BLE001 - the last net: our own mistakes, told calmly
        from patternbook.commands.crash import log_of

        tell(log_of(fault, sys.argv[1:] if words is None else words))
        return FAULT_OF_OURS
    finally:
        flush()


def _parser() -> ArgumentParser:
    parser = ArgumentParser(
        prog="patternbook",
        description="Checks a quilt pattern in every size and makes its booklet.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"patternbook {__version__}")
    commands = parser.add_subparsers(metavar="COMMAND", required=True)
    for command in COMMANDS:
        one = commands.add_parser(
            command.NAME, help=command.HELP, description=command.HELP, allow_abbrev=False
        )
        command.add_options(one)
        one.set_defaults(run=command.run)
    return parser
