"""`house.yaml`: what stands once for all patterns of a house; a pattern's own word wins."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path, PurePosixPath
from typing import Final

from patternbook.notice import Notice
from patternbook.source.decode import file_text
from patternbook.source.reader import read
from patternbook.source.tell import Refused
from patternbook.source.tree import Tree
from patternbook.value import Text

FILE: Final = "house.yaml"
# Words hold in both measures; lengths only where the pattern is in the measure of the house.
_WORDS: Final = ("by", "licence")
_LENGTHS: Final = ("seam", "width", "settings")


def beside(path: Path, shown: str) -> tuple[Path, str] | None:
    """The house rules that hold for this source, and their name as it is shown."""
    house = path.resolve().parent.parent / FILE
    if not house.is_file():
        return None
    folder = PurePosixPath(shown).parent
    above = folder.parent if folder.name not in {"", ".."} else folder / ".."
    return house, (above / FILE).as_posix()


def house_of(path: Path, shown: str) -> tuple[Tree | None, str, tuple[Notice, ...]]:
    """The house rules as a tree; none where there are none."""
    found = beside(path, shown)
    if found is None:
        return None, "", ()
    house, name = found
    try:
        tree, told = _read(file_text(house, name), name)
    except Refused as refused:
        return None, name, (refused.notice,)
    return tree, name, told


@lru_cache(maxsize=8)
def _read(text: str, name: str) -> tuple[Tree | None, tuple[Notice, ...]]:
    """One reading of the house rules serves all patterns of a run; nobody writes to a tree."""
    return read(text, name)


def under_house(pattern: Tree, house: Tree) -> Tree:
    """The pattern, with the house's word wherever it has none of its own."""
    alike = _measure(pattern) == _measure(house)
    whole = Tree(pattern)
    whole.place = pattern.place
    for key in (*_WORDS, *(_LENGTHS if alike else ())):
        own, theirs = pattern.get(Text(key)), house.get(Text(key))
        if own is None and theirs is not None:
            whole[house.key(key) or Text(key)] = theirs
        elif isinstance(own, Tree) and isinstance(theirs, Tree):
            settings = Tree({**theirs, **own})
            settings.place = own.place
            whole[pattern.key(key) or Text(key)] = settings
    return whole


def _measure(tree: Tree) -> object:
    return tree.get(Text("written-in"), "inches")
