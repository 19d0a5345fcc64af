"""`build`: the booklets, on both papers, whole or not at all."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.commands.examine import add_quiet, examined, notices_of, tell_notices
from patternbook.commands.outputs import write_all
from patternbook.commands.progress import Progress
from patternbook.commands.say import put, tell
from patternbook.commands.sources import FILE, Source, add_sources, chosen
from patternbook.commands.stop import WrongCall
from patternbook.edition.editions import EDITIONS, by_name
from patternbook.notice import failed
from patternbook.shipped import shipped

if TYPE_CHECKING:  # loaded when the work begins
    from patternbook.edition.pipeline import Examined

NAME: Final = "build"
HELP: Final = "check patterns and make their booklets"
PAPERS: Final = ("a4", "letter")
# Of the patterns that come with patternbook, those that show what a booklet is.
DEMOS: Final = ("late-returns", "tea-at-four")


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    add_sources(parser)
    parser.add_argument("--demo", action="store_true", help="build the demonstration patterns")
    parser.add_argument("--size", metavar="S", help="one size's own copy (default: all sizes)")
    parser.add_argument("--paper", choices=(*PAPERS, "both"), default="both")
    told = "; ".join(f"{edition.name}: {edition.tells}" for edition in EDITIONS)
    parser.add_argument(
        "--edition",
        choices=tuple(by_name),
        help=f"one edition alone ({told}; default: full, and those the source asks for)",
    )
    parser.add_argument(
        "--out", type=Path, metavar="DIR", default=Path("build"), help="where to (default: build)"
    )
    parser.add_argument(
        "--force", action="store_true", help="make anew what would come out the same"
    )
    add_quiet(parser)


def run(options: Namespace) -> int:
    """Builds every pattern that has no error, and gives 1 where one has."""
    if options.demo and options.sources:
        raise WrongCall("--demo builds the demonstration patterns: name no source beside it.")
    sources = demos() if options.demo else chosen(options.sources)
    found = examined(sources, quiet=options.quiet, full=True)
    tell_notices(notices_of(found), sources, quiet=options.quiet)
    sound = [
        (source, one) for source, one in zip(sources, found, strict=True) if not failed(one.notices)
    ]
    wanted = _of_size(sound, options.size)
    if not _libraries():
        return 1
    good = [_built(source, one, options) for source, one in wanted]
    return int(len(sound) < len(sources) or not all(good))


def demos() -> tuple[Source, ...]:
    """The demonstration patterns, as they came with patternbook."""
    home = shipped("patterns")
    return tuple(Source(home / slug / FILE, f"patterns/{slug}/{FILE}") for slug in DEMOS)


def _libraries() -> bool:
    """Whether pages can be laid out on this machine; told before long work begins."""
    from patternbook.booklet.pango import missing

    told = missing()
    tell_notices(told, (), quiet=True)
    return not told


def _of_size(
    sound: Sequence[tuple[Source, Examined]], size: str | None
) -> Sequence[tuple[Source, Examined]]:
    """Those that come in the size asked for."""
    if size is None or not sound:
        return sound
    wanted = [pair for pair in sound if size in pair[1].quilts]
    if not wanted:
        known = dict.fromkeys(name for _, one in sound for name in one.quilts)
        raise WrongCall(f"no pattern here has a size {size}. Sizes: {', '.join(known)}.")
    return wanted


def _built(source: Source, one: Examined, options: Namespace) -> bool:
    """Makes one pattern's files, or finds them made; says where they lie."""
    from patternbook.commands.made_from import fresh, key

    papers = PAPERS if options.paper == "both" else (options.paper,)
    folder: Path = options.out / source.slug
    editions = (options.edition,) if options.edition else one.editions
    made_from = key(source, [*papers, options.size or "", *editions])
    paths = () if options.force else fresh(folder, made_from)
    if not paths:
        with Progress(quiet=options.quiet) as progress:
            from patternbook.edition.printing import printed

            files, notices = printed(one, papers, options.size, editions, progress.step)
        tell_notices(notices, [source], quiet=True)
        if failed(notices):
            return False
        paths = _written(folder, files, made_from)
    elif not options.quiet:
        tell(f"{source.shown} has not changed since its files were made.")
    for path in paths:
        put(path.as_posix())
    return True


def _written(folder: Path, files: Mapping[str, bytes], made_from: str) -> tuple[Path, ...]:
    from patternbook.commands.made_from import RECORD, record_of

    *paths, _ = write_all(folder, {**files, RECORD: record_of(made_from, files)})
    return tuple(paths)
