"""The slips that stop a YAML parser, told from the line where it stopped, in plain words."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Final

from patternbook.notice import Notice, Place
from patternbook.source.slips import (
    AFTER_BAR,
    KEY,
    ON_ITS_OWN,
    double_braces,
    no_space_after_colon,
    spot,
)
from patternbook.source.tell import notice
from patternbook.value import quoted

# A line that shows none of the known slips.
UNTOLD: Final = "yaml"
_LINE: Final = re.compile(rf"^(?P<lead> *(?:- +)*)(?P<key>{KEY}) *:(?: +(?P<value>.*))?$")
_ITEM: Final = re.compile(r"^(?P<lead> *(?:- +)+)(?P<value>.*)$")
_FIRST: Final = {
    '"': "a quotation mark",
    "'": "a quotation mark",
    "[": "a bracket",
    "*": "a star",
    "&": "&",
    "@": "@",
    "`": "a backtick",
    "-": "a dash",
    "!": "an exclamation mark",
    "%": "%",
    ">": ">",
    "|": "|",
    "?": "a question mark",
    ",": "a comma",
    "]": "a bracket",
    "}": "a brace",
}


def told(lines: Sequence[str], spots: Sequence[tuple[int, int]], shown: str) -> Notice:
    """The slip that the parser stopped at, from the lines that it names.

    `spots` are lines and columns from 0, where it stopped first, then where it had begun.
    """
    numbers = list(dict.fromkeys(_candidates(lines, spots)))
    for look in (_slip, _brackets, _shape):
        for number in numbers:
            found = look(lines, number, shown)
            if found:
                return found
    line, column = spots[0] if spots else (0, 0)
    line = min(line, len(lines) - 1)
    message = "this line cannot be read. A line is a key, a colon, a space, and its value."
    return notice(UNTOLD, spot(shown, line, column, 1), message)


def _candidates(lines: Sequence[str], spots: Sequence[tuple[int, int]]) -> Iterable[int]:
    """The lines named, each with the written line before it, where the slip often is."""
    for line, _ in spots:
        number = min(line, len(lines) - 1)
        yield number
        while number > 0:
            number -= 1
            if lines[number].strip() and not lines[number].lstrip().startswith("#"):
                yield number
                break
    if len(spots) == 2:
        yield from range(min(spots[1][0], len(lines) - 1), min(spots[0][0], len(lines) - 1))


def _slip(lines: Sequence[str], number: int, shown: str) -> Notice | None:
    """A slip that this line shows by itself."""
    line = lines[number]
    found = _LINE.match(line) or _ITEM.match(line)
    if not found:
        slip = no_space_after_colon(line.lstrip(" -"))
        column = len(line) - len(line.lstrip(" -"))
        return notice("yaml-space", spot(shown, number, column, 1), slip) if slip else None
    value = found["value"] or ""
    at = spot(shown, number, found.start("value"), max(1, len(value)))
    if value.startswith("{{"):
        return double_braces(line, at)
    if re.match(r'"[^"]*\\', value):
        message = "a backslash between quotation marks makes YAML look for a sign of its own."
        return notice("yaml-backslash", at, message, AFTER_BAR)
    return _first_sign(value, at) or _colon(value, number, found.start("value"), shown)


def _first_sign(value: str, at: Place) -> Notice | None:
    sign = value[:1]
    if sign not in _FIRST or _is_whole(value, sign):
        return None
    message = f"a sentence cannot begin with {_FIRST[sign]} here: it means something else to YAML."
    return notice("yaml-first-sign", at, message, AFTER_BAR)


def _is_whole(value: str, sign: str) -> bool:
    """Whether the sign is used as YAML has it: quotes that close, brackets with their end."""
    bare = re.sub(r"\s+#.*$", "", value).rstrip()
    if sign in "\"'":
        return re.fullmatch(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'", bare) is not None
    if sign == "[":
        return re.fullmatch(r"\[[^\]]*", bare) is not None or bare.endswith("]")
    if sign in "|>":
        return re.fullmatch(r"[|>][-+0-9]*", bare) is not None
    return sign == "-" and not re.match(r"-(\s|$)", bare)


def _colon(value: str, number: int, start: int, shown: str) -> Notice | None:
    """A second colon on the line, which YAML takes for another key."""
    if value[:1] in "\"'|>":
        return None
    braces = value.startswith(("{", "["))
    for part in re.finditer(r"[^,{}\[\]]+" if braces else r".+", value):
        colons = [colon.start() for colon in re.finditer(r":(?= |$)", part[0])]
        own = 1 if braces else 0
        if len(colons) > own:
            column = start + part.start() + colons[own]
            message = "a colon inside a sentence: YAML takes the word before it for a key."
            hint = ON_ITS_OWN if braces else AFTER_BAR
            return notice("yaml-colon", spot(shown, number, column, 1), message, hint)
    return None


def _brackets(lines: Sequence[str], number: int, shown: str) -> Notice | None:
    """Brackets that are left open, or closed by a comment."""
    line = lines[number]
    opened = _opened(line)
    if opened is None:
        return _behind(line, number, shown)
    comment = line.find(" #", opened)
    if comment >= 0:
        message = "everything behind # is a comment, so the brackets before it are never closed."
        hint = "Put what begins with # in quotation marks."
        return notice("yaml-comment", spot(shown, number, comment + 1, 1), message, hint)
    if "{{" in line:
        return double_braces(line, spot(shown, number, line.index("{{"), 2))
    message = f"{line[opened]} is opened here, and not closed as it was opened."
    return notice("yaml-open", spot(shown, number, opened, 1), message)


def _behind(line: str, number: int, shown: str) -> Notice | None:
    """Words behind brackets that are closed: `{cut: 3 square} count: 4`."""
    found = re.match(rf" *(?:- +)*{KEY}: +(?=[{{\[])", line)
    if not found:
        return None
    deep = 0
    for at in range(found.end(), len(line)):
        deep += (line[at] in "{[") - (line[at] in "}]")
        if deep == 0:
            rest = line[at + 1 :].strip()
            if not rest or rest.startswith("#"):
                return None
            place = spot(shown, number, line.index(rest, at + 1), len(rest))
            message = f"{quoted(rest)} stands behind the bracket that closes this value."
            return notice("yaml-behind", place, message)
    return None


def _shape(lines: Sequence[str], number: int, shown: str) -> Notice | None:
    """A slip that shows only beside other lines: no key, or set in unlike them."""
    line = lines[number]
    if "{{" in line:
        return double_braces(line, spot(shown, number, line.index("{{"), 2))
    if "\t" in line:
        at = spot(shown, number, line.index("\t"), 1)
        return notice("yaml-tab", at, "a tab stands here.", "Type spaces.")
    return _no_colon(line, number, shown) or _set_in(lines, number, shown)


def _no_colon(line: str, number: int, shown: str) -> Notice | None:
    """A line without a key, or a key without its colon."""
    if found := re.match(rf"^ *({KEY}) ?[{{\[]", line):
        message = f"a colon is missing behind `{found[1]}`."
        return notice("yaml-no-colon", spot(shown, number, found.end(1) - 1, 1), message)
    if not line.strip() or _LINE.match(line) or _ITEM.match(line) or ":" in line:
        return None
    start = len(line) - len(line.lstrip())
    message = "this line has no key. A sentence of several lines stands below its key, after |."
    hint = f"If `{line.split(maxsplit=1)[0]}` is a key, put a colon behind it."
    return notice("yaml-no-key", spot(shown, number, start, len(line.strip())), message, hint)


def _opened(line: str) -> int | None:
    """Where a bracket of this line is opened that the line does not close, or closes otherwise."""
    stack: list[int] = []
    quote = ""
    for at, sign in enumerate(re.sub(r"(^|\s)#.*$", "", line)):
        if quote:
            quote = "" if sign == quote else quote
        elif sign in "\"'" and line[at - 1 : at] in {" ", "[", "{", ","}:
            quote = sign
        elif sign in "[{":
            stack.append(at)
        elif sign in "]}" and stack:
            if {"]": "[", "}": "{"}[sign] != line[stack[-1]]:
                return stack[-1]
            stack.pop()
    return stack[0] if stack else None


def _set_in(lines: Sequence[str], number: int, shown: str) -> Notice | None:
    """A line that is set in unlike all lines before it."""
    line = lines[number]
    spaces = len(line) - len(line.lstrip(" "))
    before = [
        len(one) - len(one.lstrip(" "))
        for one in lines[:number]
        if one.strip() and not one.lstrip().startswith("#")
    ]
    if not line.strip() or not before or spaces == before[-1]:
        return None
    message = (
        f"this line is set in by {spaces}, the line before it by {before[-1]}; "
        "keys that belong together are set in alike."
    )
    return notice("yaml-indent", spot(shown, number, spaces, 1), message)
