"""`kits`: the cloth, the cutting, the bags and the class list for so many kits of one size."""

from __future__ import annotations

from argparse import ArgumentParser, ArgumentTypeError, Namespace
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.commands.examine import add_quiet, examined, notices_of, tell_notices
from patternbook.commands.outputs import write_all
from patternbook.commands.progress import Progress
from patternbook.commands.say import put, put_json, shortened, tell
from patternbook.commands.sources import Source, one
from patternbook.commands.stop import Stopped, WrongCall
from patternbook.notice import failed

if TYPE_CHECKING:  # loaded when the work begins
    from patternbook.edition.kits import Kits
    from patternbook.edition.pipeline import Examined
    from patternbook.proof.evidence import Evidence

NAME: Final = "kits"
HELP: Final = "plan so many kits of one size: cloth, cutting, bags and class list"
PAPERS: Final = ("a4", "letter")
STYLES: Final = ("plain", "shared", "thrifty")
MOST: Final = 10_000  # more than any shop packs; counts stay readable


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument("source", type=Path, metavar="SOURCE", help="a source or its folder")
    parser.add_argument("--size", metavar="S", help="which size (needed where there are several)")
    parser.add_argument(
        "--kits", type=_number, default=1, metavar="N", help=f"how many, 1 to {MOST} (default: 1)"
    )
    parser.add_argument(
        "--cutting", choices=STYLES, help="another way of cutting than the pattern's own"
    )
    parser.add_argument("--paper", choices=(*PAPERS, "both"), default="both")
    parser.add_argument(
        "--json", action="store_true", help="for programs: one record, on stdout, and no sheets"
    )
    parser.add_argument(
        "--out", type=Path, metavar="DIR", help="where the sheets go (default: build)"
    )
    add_quiet(parser)


def _number(text: str) -> int:
    """A whole number of kits."""
    plain = text.isascii() and text.isdigit() and len(text) <= len(str(MOST))
    if not plain or not 1 <= int(text) <= MOST:
        raise ArgumentTypeError(f"{shortened(text)!r} is no number of kits from 1 to {MOST}")
    return int(text)


def run(options: Namespace) -> int:
    """Prints the tables, and writes the sheets whole or not at all; 1 where there is a fault."""
    source = one(options.source)
    (found,) = examined([source], quiet=options.quiet, full=None)
    notices = notices_of([found])
    if failed(notices):
        tell_notices([n for n in notices if n.severity == "error"], [source], quiet=True)
        return 1
    known = _of_size(found, source, options.size)
    kits = _planned(found, known, source, options)
    if kits is None:
        return 1
    paths = _sheets(kits, source, options) if options.out or not options.json else ()
    if paths is None:
        return 1
    _put(kits, options, paths)
    return 0


def _of_size(found: Examined, source: Source, size: str | None) -> Evidence:
    """The size asked for, of those that make a quilt; the only one where none is named."""
    whole = {name: known for name, known in found.sizes.items() if known.quilt.finished}
    if not whole:
        raise Stopped(
            f"{source.shown} has no quilt top in any size, so there is nothing to make a kit of. "
            "Write what the top is made of: `top: {rows: [...]}`."
        )
    names = ", ".join(whole)
    if size is None and len(whole) > 1:
        raise WrongCall(f"{source.shown} comes in several sizes: {names}. Name one with --size.")
    wanted = next(iter(whole)) if size is None else size
    if wanted not in whole:
        raise WrongCall(f"{source.shown} has no size {shortened(wanted)}. It has: {names}.")
    return whole[wanted]


def _planned(found: Examined, known: Evidence, source: Source, options: Namespace) -> Kits | None:
    """The kits; None where the plan does not stand up to its recount, which is told."""
    from patternbook.edition.kits import kits_of

    if found.heading is None:
        return None
    with Progress(quiet=options.quiet) as progress:
        progress.step(f"planning {options.kits} kits")
        kits, notices = kits_of(found.heading, known, options.kits, options.cutting)
    tell_notices(notices, [source], quiet=True)
    return None if failed(notices) else kits


def _sheets(kits: Kits, source: Source, options: Namespace) -> tuple[Path, ...] | None:
    """Where the sheets were written; None where they could not be made, which is told."""
    from patternbook.booklet.pango import missing
    from patternbook.edition.kits import kit_sheets

    told = missing()
    if told:
        tell_notices(told, (), quiet=True)
        return None
    papers = PAPERS if options.paper == "both" else (options.paper,)
    with Progress(quiet=options.quiet) as progress:
        files, notices = kit_sheets(kits, papers, progress.step)
    tell_notices(notices, [source], quiet=True)
    if failed(notices):
        return None
    return write_all((options.out or Path("build")) / source.slug, files)


def _put(kits: Kits, options: Namespace, paths: tuple[Path, ...]) -> None:
    from patternbook.commands.kits_tables import tables
    from patternbook.edition.kits_figures import kits_figures

    record = kits_figures(kits)
    shown = [path.as_posix() for path in paths]
    if options.json:
        put_json(record)
        for path in shown:
            tell(path)
        return
    put("\n".join([tables(record), *(["", *shown] if shown else [])]))
