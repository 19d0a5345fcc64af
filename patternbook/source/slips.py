"""The slips that YAML takes silently, though nobody means them, told in plain words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from patternbook.notice import Notice, Place
from patternbook.source.decode import NO_BREAK
from patternbook.source.tell import notice
from patternbook.value import Text
from patternbook.value.text import quoted

AFTER_BAR: Final = "Put the sentence on the next line, after |."
ON_ITS_OWN: Final = "Put this key on a line of its own with its sentence below it, after |."
KEY: Final = r"[A-Za-z][A-Za-z0-9-]*"


def tabs(lines: Sequence[str], shown: str) -> tuple[Notice, ...]:
    """Lines that are set in with a tab: YAML counts spaces."""
    hint = "Use spaces to set a line in; most editors can be told to."
    return tuple(
        notice(
            "yaml-tab",
            spot(shown, number, found.end() - 1, 1),
            "a tab sets this line in, and the reader counts spaces.",
            hint,
        )
        for number, line in enumerate(lines)
        if (found := re.match(r" *\t(?=[ \t]*\S)", line))
    )


def odd_spaces(text: str, shown: str) -> tuple[Notice, ...]:
    """Lines set in with spaces out of a word processor: read as plain ones, and told once."""
    found = NO_BREAK.search(text)
    if not found:
        return ()
    number = text.count("\n", 0, found.end() - 1)
    column = len(found[0]) - 1
    message = "a no-break space, as word processors make them, sets this line in."
    hint = "It was read as a plain space; type plain ones."
    return (notice("no-break-space", spot(shown, number, column, 1), message, hint, "advice"),)


def no_space_after_colon(key: str) -> str | None:
    """What to say of `seam:1/4`, which YAML takes as one word."""
    found = re.match(rf"({KEY}):(?!//)(?:\S|$)", key)
    return f"a space is missing behind the colon of `{found[1]}:`." if found else None


def alone_in_braces(lines: Sequence[str], key: Text, before: Sequence[Text]) -> Notice | None:
    """`{note: press, then turn}`: YAML takes `then turn` for a key without a value."""
    behind = lines[key.place.end_line - 1][key.place.end_column - 1 :].lstrip()
    if behind.startswith(":"):
        return None
    message = f"{quoted(key)} stands alone between the braces: a comma there ends the value"
    if not before:
        return notice("yaml-comma", key.place, f"{message}.", "A key has a colon and a value.")
    hint = f"Put `{before[-1]}` on a line of its own, or its words in quotation marks."
    return notice("yaml-comma", key.place, f"{message} of `{before[-1]}`.", hint)


def swallowed(lines: Sequence[str], text: Text, key: Text | None) -> Notice | None:
    """`pattern: Block # 7`: YAML keeps `Block`, and takes the rest for a comment."""
    if not text:
        return _all_swallowed(lines[key.place.end_line - 1], key) if key is not None else None
    place = text.place
    if not lines[place.end_line - 1].startswith(" #", place.end_column - 1):
        return None
    message = f"everything behind # is a comment, so only {quoted(text)} was read."
    hint = "A comment stands on its own line, or behind two spaces; else put quotation marks."
    at = spot(place.file, place.end_line - 1, place.end_column, 1)
    return notice("yaml-comment", at, message, hint)


def _all_swallowed(line: str, key: Text) -> Notice | None:
    """`colour: #a0522d`: nothing is left of the value."""
    place = key.place
    found = re.match(r" *: +#", line[place.end_column - 1 :])
    if not found:
        return None
    column = place.end_column + found.end() - 2
    rest = line[column:].rstrip(" ,}]")
    message = f"everything behind # is a comment, so `{key}` has no value."
    hint = f'Put it in quotation marks: "{rest}".' if len(rest) < 30 else AFTER_BAR
    at = spot(place.file, place.end_line - 1, column, 1)
    return notice("yaml-comment", at, message, hint)


def anchor(lines: Sequence[str], place: Place) -> Notice:
    """`*name` and `&name`, which repeat a part of a file in YAML."""
    sign = lines[place.line - 1][place.column - 1 : place.column]
    message = f"{sign} makes YAML repeat a part of the file; a pattern has no such thing."
    hint = f"If a sentence begins with {sign}: put it on the next line, after |."
    return notice("anchor", place, message, hint)


def tag(lines: Sequence[str], place: Place) -> Notice:
    """`!word`, which names a program's own type in YAML."""
    sign = lines[place.line - 1][place.column - 1 : place.column]
    hint = AFTER_BAR if sign == "!" else None
    return notice("tag", place, "a word with ! in front is for programs, not for patterns.", hint)


def brackets_for_key(lines: Sequence[str], place: Place) -> Notice:
    """Braces where a key belongs: nearly always `{{ … }}` at the beginning of a sentence."""
    line = lines[place.line - 1]
    if "{{" in line:
        return double_braces(line, spot(place.file, place.line - 1, line.index("{{"), 2))
    message = "brackets or a list stand here, where a key belongs."
    return notice("yaml-key", place, message, "A key is a word, and a colon behind it.")


def double_braces(line: str, place: Place) -> Notice:
    """`{{ … }}` where YAML looks for braces of its own."""
    inside = re.search(r"(?<!\{)\{(?!\{)", line[: place.column - 1]) is not None
    message = (
        "{{ … }} cannot stand inside braces: they end where it ends."
        if inside
        else "{{ … }} cannot begin a value: the reader takes it for brackets of its own."
    )
    return notice("yaml-braces", place, message, ON_ITS_OWN if inside else AFTER_BAR)


def spot(shown: str, line: int, column: int, length: int) -> Place:
    """A place on one line, from a line and column that count from 0."""
    return Place(shown, line + 1, column + 1, line + 1, column + 1 + length)
