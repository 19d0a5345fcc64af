"""`new`: begins a pattern from a commented source that checks clean."""

from __future__ import annotations

import re
import unicodedata
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Final

from patternbook.commands.outputs import write_all
from patternbook.commands.say import put, shortened, tell
from patternbook.commands.sources import FILE, FOLDER
from patternbook.commands.stop import WrongCall
from patternbook.shipped import shipped

NAME: Final = "new"
HELP: Final = f"begin a pattern: writes {FOLDER}/NAME/{FILE}"
PLAIN: Final = "plain"
# A title begins with a letter or number and holds nothing that YAML or a folder's name minds.
TITLE: Final = re.compile(r"[^\W_](?:[^\W_]|[ '’-])*")
LONGEST: Final = 80
TITLE_LINE: Final = re.compile(r"^pattern:.*$", re.MULTILINE)
SLUG_LINE: Final = re.compile(r"^(?:slug|formerly):.*\n", re.MULTILINE)


def add_options(parser: ArgumentParser) -> None:
    """Says what the command may be told."""
    parser.add_argument("name", metavar="NAME", help='the pattern\'s name, as "Winter Window"')
    parser.add_argument(
        "--kind",
        metavar="KIND",
        default=PLAIN,
        help=f"what to begin from: {PLAIN} (the default) or one of the demonstration patterns",
    )


def run(options: Namespace) -> int:
    """Writes the source; one that is there already is never touched."""
    title, slug = named(options.name)
    target = Path(FOLDER, slug, FILE)
    if target.parent.exists():
        raise WrongCall(f"{target.parent.as_posix()} is there already; nothing was written.")
    write_all(target.parent, {FILE: begun(title, options.kind).encode()})
    put(target.as_posix())
    tell(f"Now open it in an editor, and check it with: patternbook check {target.parent}")
    return 0


def named(asked: str) -> tuple[str, str]:
    """The title for the cover and the name of the folder: Winter Window, winter-window."""
    if len(asked) > LONGEST:
        raise WrongCall(
            f"{shortened(asked)!r} is too long for a name: {LONGEST} signs is the most."
        )
    if not TITLE.fullmatch(asked):
        raise WrongCall(f"{asked!r} cannot be a name: use letters, numbers, spaces and hyphens.")
    title = asked if asked != asked.lower() or " " in asked else asked.replace("-", " ").title()
    bare = unicodedata.normalize("NFKD", asked.lower()).encode("ascii", "ignore").decode()
    slug = "-".join(re.findall(r"[a-z0-9]+", bare.replace("'", "")))
    if not slug:
        raise WrongCall(f"{asked!r} cannot name a folder: use at least one letter from a to z.")
    return title, slug


def begun(title: str, kind: str) -> str:
    """The starter's text under its new title."""
    kinds = _kinds()
    if kind not in kinds:
        raise WrongCall(f"there is no kind {kind!r}. There are: {', '.join(kinds)}.")
    text = SLUG_LINE.sub("", kinds[kind].read_text("utf-8"))
    return TITLE_LINE.sub(lambda _: f"pattern: {title}", text, count=1)


def _kinds() -> dict[str, Path]:
    """What a pattern may be begun from, by name."""
    demos = sorted(shipped("patterns").glob(f"*/{FILE}"))
    starter = shipped("templates") / "new" / FILE
    return {PLAIN: starter} | {demo.parent.name: demo for demo in demos}
