"""What `check`, `figures` and `build` share: every source examined, and its notices told."""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Sequence
from typing import TYPE_CHECKING

from patternbook.commands.progress import Progress
from patternbook.commands.report import for_people, summary
from patternbook.commands.say import tell
from patternbook.commands.sources import Source
from patternbook.notice import Notice, gathered
from patternbook.unswept import unswept

if TYPE_CHECKING:  # loaded when the work begins, so that `--help` and `explain` are there at once
    from patternbook.edition.pipeline import Examined


def add_quiet(parser: ArgumentParser) -> None:
    """Lets a command be told to say no more than what is wrong."""
    parser.add_argument(
        "--quiet", action="store_true", help="no progress, no advice, no closing line"
    )


def examined(
    sources: Sequence[Source], *, quiet: bool, full: bool | None = False
) -> tuple[Examined, ...]:
    """Every source, read and reckoned in all its sizes."""
    done = []
    with unswept(), Progress(quiet=quiet) as progress:
        from patternbook.edition.pipeline import examine

        for number, source in enumerate(sources, 1):
            progress.step(f"checking {source.shown}", number, len(sources))
            done.append(examine(source.path, source.shown, full=full))
    return tuple(done)


def notices_of(found: Sequence[Examined]) -> tuple[Notice, ...]:
    """The notices of all sources, in order."""
    return gathered(notice for one in found for notice in one.notices)


def tell_notices(notices: Sequence[Notice], sources: Sequence[Source], *, quiet: bool) -> None:
    """The notices for a person, and what they come to."""
    told = [notice for notice in notices if notice.severity != "advice" or not quiet]
    if told:
        tell(for_people(told, sources))
    if not quiet:
        tell(summary(notices, sources))
