"""What is right in every part and yet not together: names that clash, keys not used so far."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from patternbook.methods import METHODS
from patternbook.methods.written import OWN_KEY, WrittenNode
from patternbook.notice import Notice
from patternbook.source.cloth import WrittenFabric, WrittenPiece
from patternbook.source.cover import WrittenRevision
from patternbook.source.faults import keys_of
from patternbook.source.tell import notice
from patternbook.source.tree import Tree
from patternbook.source.written import WrittenPattern
from patternbook.value import OTHERS, Text, quoted

LANGUAGE: Final = 1
# Kept, and used by chapters that are not written yet.
LATER: Final = (
    "formerly",
    "photos",
    "publish-source",
    "in",
    "colourways",
    "class",
)
LATER_REVISION: Final = ("was",)
LATER_ISSUE: Final = ("papers", "appendices")
TOP: Final = "top"
# Sections whose keys are names: a note there is a note on all of them.
SECTIONS: Final = ("sizes", "fabrics", "pieces", "units")
NOTE: Final = "note"


def reserved_names() -> frozenset[str]:
    """Names that no size may have: a mapping of sizes would look like a cloth, piece or unit."""
    models: list[type[WrittenNode]] = [WrittenFabric, WrittenPiece]
    models += [method.written for method in METHODS]
    return frozenset({OTHERS, *(key for model in models for key in keys_of(model))})


def clashes(tree: Tree) -> Iterator[Notice]:
    """Sizes and units that are called like something else."""
    reserved = reserved_names()
    sizes, units = tree.get(Text("sizes")), tree.get(Text("units"))
    for size in sizes if isinstance(sizes, Tree) else ():
        if size in reserved:
            message = f"a size cannot be called `{size}`: that is a key of its own."
            yield notice("reserved-name", size.place, message)
        yield from _own_numbers(sizes[size] if isinstance(sizes, Tree) else None)
    for unit in units if isinstance(units, Tree) else ():
        if unit == TOP:
            message = "the quilt top stands by itself, under `top:`, not among the units."
            yield notice("reserved-name", unit.place, message)


def _own_numbers(size: object) -> Iterator[Notice]:
    """A size's own numbers are used in counts, where a hyphen takes away."""
    for name in size if isinstance(size, Tree) else ():
        if "-" in name and not name.startswith(OWN_KEY):
            message = f"{quoted(name)}: a size's own number has a name of one word."
            yield notice("not-a-word-name", name.place, message)


def newer(written: WrittenPattern) -> Iterator[Notice]:
    """A source in a language that this program does not know yet."""
    if written.language != LANGUAGE:
        message = f"this source is in version {written.language} of the language; "
        message += f"this program reads version {LANGUAGE}."
        yield notice("language-version", written.language.place, message)


def section_notes(tree: Tree) -> tuple[Tree, tuple[Notice, ...]]:
    """The source without the notes on whole sections, each told: they are not printed so far."""
    whole, told = Tree(tree), []
    whole.place = tree.place
    for name in SECTIONS:
        section = tree.get(Text(name))
        note = section.key(NOTE) if isinstance(section, Tree) else None
        if isinstance(section, Tree) and note is not None and isinstance(section[note], Text):
            rest = Tree({key: section[key] for key in section if key != NOTE})
            rest.place = section.place
            whole[Text(name)] = rest
            message = f"the note on all `{name}` is kept, and not used yet."
            told.append(notice("not-used-yet", note.place, message, None, "advice"))
    return whole, tuple(told)


def not_used_yet(written: WrittenPattern) -> Iterator[Notice]:
    """Keys that are kept, and change nothing so far."""
    revisions: tuple[WrittenRevision, ...] = written.revisions
    groups = (
        (LATER, (written,)),
        (LATER_REVISION, revisions),
        (LATER_ISSUE, (written.issue_as,) if written.issue_as else ()),
    )
    for keys, nodes in groups:
        for node in nodes:
            for key in keys:
                if key in node.key_places:
                    message = f"`{key}` is kept, and not used yet."
                    yield notice("not-used-yet", node.key_places[key], message, None, "advice")
