"""The parts of a booklet, in the order in which they are read; one file a part."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, NamedTuple

from patternbook.booklet.book import Book
from patternbook.booklet.parts.back import back
from patternbook.booklet.parts.colouring import colouring
from patternbook.booklet.parts.cover import cover
from patternbook.booklet.parts.cutting import cutting
from patternbook.booklet.parts.finishing import finishing
from patternbook.booklet.parts.glance import glance
from patternbook.booklet.parts.glossary import glossary
from patternbook.booklet.parts.notes import notes
from patternbook.booklet.parts.requirements import requirements
from patternbook.booklet.parts.steps import steps
from patternbook.booklet.parts.templates import templates
from patternbook.booklet.parts.tools import tools
from patternbook.booklet.quilting.part import quilting


class Part(NamedTuple):
    """A part by name (its template is parts/NAME.html), and what makes its page record: None
    where this pattern has no such part."""

    name: str
    make: Callable[[Book], object | None]


PARTS: Final = (
    Part("cover", cover),
    Part("glance", glance),
    Part("requirements", requirements),
    Part("tools", tools),
    Part("notes", notes),
    Part("cutting", cutting),
    Part("steps", steps),
    Part("finishing", finishing),
    Part("quilting", quilting),
    Part("back", back),
    Part("colouring", colouring),
    Part("templates", templates),
)
# Made from the words of all the others; it stands behind the part named here.
GLOSSARY: Final = ("glossary", glossary, "back")
