"""The parts of a booklet as one HTML page, from templates that only lay out finished words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from html import unescape
from typing import TYPE_CHECKING, Final, NamedTuple

from patternbook.booklet.book import Book
from patternbook.booklet.parts import GLOSSARY, PARTS
from patternbook.booklet.parts.cover import revision
from patternbook.shipped import shipped

if TYPE_CHECKING:  # `check` gets as far as this module, and must not load the templates' engine
    from jinja2 import BytecodeCache, Environment

_TAG: Final = re.compile(r"<[^>]*>")
_ANCHOR: Final = re.compile(r'id="([^"]+)"[^>]*data-title="([^"]+)"')
PAPERS: Final[Mapping[str, str]] = {"a4": "A4", "letter": "letter"}


class Whole(NamedTuple):
    """A page, and the words for the anchors that its links go to."""

    html: str
    titles: Mapping[str, str]


def html(book: Book) -> Whole:
    """The whole booklet as one page."""
    made = parts(book)
    contents = tuple(
        (name, found.group(2))
        for name, part in made.items()
        if (found := _ANCHOR.search(part)) and name != "cover"
    )
    body = "\n".join(made.values())
    return Whole(sheets("booklet", book, contents=contents, parts=made), titles(body))


def sheets(template: str, book: Book, **words: object) -> str:
    """A whole printed page, or many, from the template of that name: its words, and what every
    one has of the booklet's own: its name, its foot, its paper."""
    hand = " · left-handed" if book.hand == "left" else ""
    return (
        engine("booklet")
        .get_template(f"{template}.html")
        .render(
            name=book.heading.pattern,
            by=book.heading.by or "",
            foot=f"{book.heading.pattern}{hand} · {revision(book)}",
            paper=PAPERS[book.paper],
            kind=f"{book.paper} {'one' if len(book.sizes) == 1 else 'several'}",
            **words,
        )
    )


def one_page(kind: str, page: object, book: Book, about: str) -> Whole:
    """Pages beside the booklet, in its style, from the template of their kind, which lies in a
    folder of the same name; `about` tells in the foot what they are."""
    markup = (
        engine(kind, "booklet")
        .get_template(f"{kind}.html")
        .render(
            page=page,
            by=book.heading.by or "",
            foot=f"{book.heading.pattern} · {about} · {revision(book)}",
            paper=PAPERS[book.paper],
            kind=book.paper,
        )
    )
    return Whole(markup, titles(markup))


def parts(book: Book) -> Mapping[str, str]:
    """Each part's own HTML by name, in the order of reading."""
    made: dict[str, str] = {}
    for part in PARTS:
        page = part.make(book)
        if page is not None:
            made[part.name] = rendered(part.name, page)
    name, make, behind = GLOSSARY
    words = rendered(name, make(text(" ".join(made.values()))))
    ordered: dict[str, str] = {}
    for part_name, part_html in made.items():
        ordered[part_name] = part_html
        if part_name == behind:
            ordered[name] = words
    return ordered


def rendered(name: str, page: object) -> str:
    """One part's HTML."""
    return engine("booklet").get_template(f"parts/{name}.html").render(page=page)


def text(markup: str) -> str:
    """The words alone."""
    return unescape(_TAG.sub(" ", markup))


def titles(markup: str) -> Mapping[str, str]:
    """What each anchor is called, for the links that go there."""
    return {anchor: unescape(words) for anchor, words in _ANCHOR.findall(markup)}


@cache
def engine(*folders: str) -> Environment:
    """What fills the templates of these folders."""
    from jinja2 import FileSystemLoader, StrictUndefined
    from jinja2.sandbox import ImmutableSandboxedEnvironment

    home = shipped("templates")
    return ImmutableSandboxedEnvironment(
        loader=FileSystemLoader([home / folder for folder in folders]),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        bytecode_cache=_compiled(),
    )


def _compiled() -> BytecodeCache | None:
    """The templates as compiled before, kept in the machine's folder for such things; compiling
    them takes longer than filling them. None where there is no such folder."""
    from jinja2 import FileSystemBytecodeCache

    try:
        return FileSystemBytecodeCache()
    except (OSError, RuntimeError):
        return None
