"""Reads one pattern source, whole: every fault of its form is told, and none is raised."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from pydantic import BaseModel, ValidationError

from patternbook.methods.reading import Reading
from patternbook.notice import Notice, Place, failed, gathered
from patternbook.source import faults, form, house
from patternbook.source.decode import FILE, file_text
from patternbook.source.drawings import Pictures, pictures
from patternbook.source.reader import read
from patternbook.source.tell import Refused, notice
from patternbook.source.tree import Tree
from patternbook.source.written import WrittenHouse, WrittenPattern
from patternbook.value import Text

if TYPE_CHECKING:
    from collections.abc import Sequence

Model = TypeVar("Model", bound=BaseModel)


@dataclass(frozen=True)
class Source:
    """A pattern as it was written, where it lies, and its text."""

    written: WrittenPattern
    path: Path
    shown: str
    text: str
    pictures: Pictures = field(default_factory=dict)


def load(path: Path, shown: str) -> tuple[Source | None, tuple[Notice, ...]]:
    """The source in this file or folder, and all that is wrong with its form.

    `shown` is what stands in front of line and column in every notice.
    """
    try:
        path, shown = _file(path, shown)
        text = file_text(path, shown)
    except Refused as refused:
        return None, (refused.notice,)
    tree, told = read(text, shown)
    if tree is None:
        return None, gathered(told)
    rules, house_shown, house_told = house.house_of(path, shown)
    written, more = _written(tree, rules, shown, house_shown)
    notices = gathered((*told, *house_told, *more))
    if written is None or failed(notices):
        return None, notices
    drawn, more = pictures(written, path)
    if more:
        return None, gathered((*notices, *more))
    return Source(written, path, shown, text, drawn), notices


def _file(path: Path, shown: str) -> tuple[Path, str]:
    """The file itself, where a folder was named."""
    try:
        if not path.is_dir():
            return path, shown
        if (path / FILE).exists():
            return path / FILE, f"{shown.rstrip('/')}/{FILE}"
    except OSError:
        return path, shown
    message = f"this folder holds no {FILE}."
    raise Refused(notice("no-source", Place(shown, 1, 1, 1, 1), message))


def _written(
    tree: Tree, rules: Tree | None, shown: str, house_shown: str
) -> tuple[WrittenPattern | None, tuple[Notice, ...]]:
    told: list[Notice] = []
    if rules is not None:
        sound, house_told = _valid(WrittenHouse, rules, house_shown, ())
        told += house_told
        tree = house.under_house(tree, rules) if sound else tree
    tree, noted = form.section_notes(tree)
    told += noted
    tree, sizes = _sized(tree)
    told += form.clashes(tree)
    written, more = _valid(WrittenPattern, tree, shown, sizes)
    told += more
    if written is not None:
        told += [*form.newer(written), *form.not_used_yet(written)]
    return written, tuple(told)


def _sized(tree: Tree) -> tuple[Tree, tuple[str, ...]]:
    """The source with its sizes; one without any is one of a single size."""
    sizes = tree.get(Text("sizes"))
    if isinstance(sizes, Tree):
        return tree, tuple(map(str, sizes))
    if sizes is not None:
        return tree, ()
    whole = Tree(tree)
    whole.place = tree.place
    whole[Text("sizes")] = Tree({Text(faults.ONE_SIZE): Tree()})
    return whole, (faults.ONE_SIZE,)


def _valid(
    model: type[Model], tree: Tree, shown: str, sizes: Sequence[str]
) -> tuple[Model | None, tuple[Notice, ...]]:
    by = Reading(tree.get(Text("written-in")) == "cm", tuple(sizes))
    try:
        return model.model_validate(tree, context=by), ()
    except ValidationError as fault:
        return None, faults.told(fault, tree, by, shown)
