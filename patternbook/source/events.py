"""What stands in a YAML text, one after the other; what no pattern needs is refused on the way.

YAML can do much that has no place in a pattern: anchors, tags, several documents, lines that
speak to a program. All of that ends the reading here, before anything is built from it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

from patternbook.notice import Notice, Place
from patternbook.source import slips, stops
from patternbook.source.tell import Refused, notice

if TYPE_CHECKING:
    from ruamel.yaml import events as yaml

Kind = Literal["mapping", "list", "end", "word"]
DEEPEST: Final = 8


class Event(NamedTuple):
    """A mapping or list begins, one of them ends, or a word stands there."""

    kind: Kind
    place: Place
    text: str = ""
    # A word without quotation marks, on the line of its key.
    bare: bool = False
    # A mapping in braces.
    braces: bool = False


def events(lines: Sequence[str], shown: str) -> Iterator[Event]:
    """The events of a text; Refused where it cannot go on."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError

    parsed = YAML(typ="safe", pure=True).parse("\n".join(lines))
    try:
        yield from _allowed(parsed, lines, shown)
    except MarkedYAMLError as fault:
        marks = [mark for mark in (fault.problem_mark, fault.context_mark) if mark is not None]
        spots = [(mark.line, mark.column) for mark in marks]
        raise Refused(stops.told(lines, spots, shown)) from None
    except (ValueError, LookupError, ArithmeticError, AttributeError, TypeError):
        # The parser's own slips: an escape that names no character, a directive without a number.
        raise Refused(stops.told(lines, [], shown)) from None


def _allowed(parsed: Iterator[yaml.Event], lines: Sequence[str], shown: str) -> Iterator[Event]:
    from ruamel.yaml import events as yaml

    deep, documents = 0, 0
    for event in parsed:
        place = _place(event, shown)
        if isinstance(event, yaml.ScalarEvent):
            _refuse_marks(event, lines, place)
            yield Event("word", place, event.value, bare=not event.style)
        elif isinstance(event, yaml.CollectionStartEvent):
            _refuse_marks(event, lines, place)
            deep += 1
            if deep > DEEPEST:
                raise Refused(_too_deep(place))
            mapping = isinstance(event, yaml.MappingStartEvent)
            kind: Kind = "mapping" if mapping else "list"
            yield Event(kind, place, braces=mapping and bool(event.flow_style))
        elif isinstance(event, yaml.CollectionEndEvent):
            deep -= 1
            yield Event("end", place)
        elif isinstance(event, yaml.AliasEvent):
            raise Refused(slips.anchor(lines, place))
        elif isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            _refuse_document(event, place, documents)


def _refuse_marks(
    event: yaml.ScalarEvent | yaml.CollectionStartEvent, lines: Sequence[str], place: Place
) -> None:
    if event.anchor is not None:
        raise Refused(slips.anchor(lines, place))
    if event.ctag is not None:
        raise Refused(slips.tag(lines, place))


def _refuse_document(event: yaml.DocumentStartEvent, place: Place, documents: int) -> None:
    if documents > 1:
        message = "a second document begins here; a file holds one pattern."
        hint = "Take the line of three dashes out, or put the rest in a file of its own."
        raise Refused(notice("second-document", place, message, hint))
    if event.version or event.tags:
        message = "lines that begin with % speak to a YAML program; a pattern has none."
        raise Refused(notice("directive", place, message))


def _too_deep(place: Place) -> Notice:
    message = f"more than {DEEPEST} brackets, lists and mappings within one another."
    return notice("too-deep", place, message)


def _place(event: yaml.Event, shown: str) -> Place:
    start, end = event.start_mark, event.end_mark
    return Place(shown, start.line + 1, start.column + 1, end.line + 1, end.column + 1)
