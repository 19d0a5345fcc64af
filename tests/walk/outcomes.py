"""What a source comes to, and what becomes of a change to it."""

import re
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from patternbook.edition.figures import figures
from patternbook.edition.pipeline import Examined, examine
from patternbook.notice import Notice
from patternbook.quilt.prints import mixed
from tests.walk.changes import Change
from tests.walk.text import Number, numbers, value_of

# How far a figure is believed is no figure; the seed is told by the prints it deals.
STANDING = frozenset(("at", "status", "ways", "class", "seed"))
BOUGHT = frozenset(("buy", "packs", "pieces_of_a_pack", "spare"))
# Figures that are stated to be at least so much.
AT_LEAST = frozenset(("strips", "squares", "sets", "packs", "yards", "metres"))
# Figures that are compared wherever they are stated, and have no place of their own in the record.
EXACT = frozenset(
    (
        "count", "mirrored", "make", "lengths", "side-length", "end-length", "row-measure",
        "set-measure", "before-borders", "cut-cm", "length",
    )
)  # fmt: skip
A_NUMBER = re.compile(r"\d+")


@dataclass(frozen=True)
class Outcome:
    """A text, and all that is known of it."""

    text: str
    examined: Examined

    @property
    def notices(self) -> tuple[Notice, ...]:
        """All that is told."""
        return self.examined.notices

    @cached_property
    def figures(self) -> Any:
        """All figures, as `figures --json` gives them."""
        return figures(self.examined)

    @property
    def errors(self) -> tuple[Notice, ...]:
        """What keeps it from being issued."""
        return tuple(notice for notice in self.notices if notice.severity == "error")

    @property
    def faults(self) -> list[str]:
        """Errors and warnings, as they are told."""
        return [str(notice) for notice in self.notices if notice.severity != "advice"]

    def told(self) -> set[tuple[str, str, tuple[str, ...]]]:
        """All that is told, whatever the line."""
        return {(one.code, one.message, one.sizes) for one in self.notices}

    def values(self) -> Any:
        """All figures, without their places."""
        return _without(STANDING, self.figures)

    def sizes_and_counts(self) -> Any:
        """All figures but what is bought, which may be stated to be more than is needed."""
        return _without(BOUGHT, self.values())

    def drawn(self, *, prints: bool) -> list[Any]:
        """Where each patch lies, size by size, and of which print it is where that is asked."""
        sizes = self.examined.sizes.values()
        patches = [evidence.patches for evidence in sizes]
        mixes = [mixed(one.quilt, one.patches)[0] for one in sizes] if prints else []
        return [patches, mixes]

    @cached_property
    def by_place(self) -> Mapping[tuple[str, str], list[Any]]:
        """The figures that stand at each place (`line:column`), by side."""
        found: dict[tuple[str, str], list[Any]] = {}
        for side, figure in _figures(self.figures, ""):
            if figure["at"]:
                place = ":".join(figure["at"].rsplit(":", 2)[1:])
                for key in {(place, side), (place, "")}:
                    found.setdefault(key, []).append(figure)
        return found

    def figures_of(self, number: Number) -> list[Any]:
        """The figures of the record that a number of the text is."""
        places = ((place, number.side) for place in number.at)
        return next((self.by_place[place] for place in places if place in self.by_place), [])


def _without(keys: frozenset[str], record: Any) -> Any:
    if isinstance(record, dict):
        return {key: _without(keys, value) for key, value in record.items() if key not in keys}
    return [_without(keys, item) for item in record] if isinstance(record, list) else record


def _figures(record: Any, name: str) -> Iterator[tuple[str, Any]]:
    if isinstance(record, dict):
        if "class" in record:
            yield name, record
        for key, value in record.items():
            yield from _figures(value, key)
    elif isinstance(record, list):
        for item in record:
            yield from _figures(item, name)


class Bench:
    """A copy of one pattern with all that lies beside it, and with the house rules over it, to
    try texts on."""

    def __init__(self, pattern: Path, folder: Path) -> None:
        shutil.copytree(pattern, folder / pattern.name)
        shutil.copy(pattern.parent / "house.yaml", folder)
        self.path = folder / pattern.name / "pattern.yaml"
        self.text = self.path.read_text("utf-8")

    def outcome(self, text: str) -> Outcome:
        """Examine a text in the place of the source."""
        self.path.write_text(text, "utf-8")
        return Outcome(text, examine(self.path, "pattern.yaml"))


def is_clear(base: Outcome, changed: Outcome) -> bool:
    """Whether an error is told as it should be: place, size, both sums, and a hint. A fault of
    form has no sums; it names the place and says what is expected, and so does a hint in words
    (a square that should be cut on the diagonal)."""
    old = base.told()
    new = [one for one in changed.errors if (one.code, one.message, one.sizes) not in old]
    return any(
        one.marks
        and (
            one.stage == "source"
            or (one.sizes and one.hint and (_sums(one.message) or "`" in one.hint))
        )
        for one in new
    )


def _sums(message: str) -> bool:
    return len(A_NUMBER.findall(message)) > 1


def verdict(base: Outcome, changed: Outcome, change: Change) -> str:
    """What becomes of a change."""
    if changed.errors:
        return "refused" if is_clear(base, changed) else "refused without saying why"
    if changed.told() != base.told():
        return "told"
    if changed.values() != base.values():
        return "shown"
    seed = any(number.keys[-1] == "seed" for number in change.news)
    return "nothing" if changed.drawn(prints=seed) == base.drawn(prints=seed) else "shown"


def classed(base: Outcome, number: Number) -> str:
    """The class of a number: of the figures that stand there, or of its key."""
    found = {figure["class"] for figure in base.figures_of(number)}
    if "exact" in found or (not found and not EXACT.isdisjoint(number.keys)):
        return "exact"
    if number.keys[0] == "sizes" and number.keys[-1] == "pieces":
        return "exact"
    asked = number.keys[0] in {"backing", "batting"} and "size" in number.keys
    if asked or not AT_LEAST.isdisjoint(number.keys[len(number.part) :] or number.keys):
        return "at least"
    return "free"


def wanted(base: Outcome, change: Change) -> set[str]:
    """What may become of it, by the classes of its numbers."""
    found = {number: classed(base, number) for number in change.news}
    # About so much bears either eighth beside what it is: in a pair the other number is asked.
    together = len(change.news) > 1
    if any(kind == "exact" and not (number.about and together) for number, kind in found.items()):
        return {"refused"}
    less = {n for n, new in change.news.items() if value_of(new) < value_of(n.text)}
    if any(kind == "at least" and number in less for number, kind in found.items()):
        return {"refused"}
    if "at least" in found.values():
        return {"refused", "told"}
    return {"refused", "told", "shown"}


def is_another_quilt(base: Outcome, changed: Outcome, change: Change) -> bool:
    """Whether two changes agree so well that the source is that of another sound quilt: nothing
    contradicts it, and each changed figure is printed as it was changed."""
    after = numbers(changed.text)
    for index, number in enumerate(numbers(base.text)):
        if number in change.news and classed(base, number) == "exact":
            own = changed.figures_of(after[index])
            new = value_of(change.news[number])
            if not any(value_of(figure["value"]) == new for figure in own):
                return False
    return len(change.news) > 1 and not changed.errors
