"""A source as it looks after an accident at the keyboard: a few random slips, the same each run."""

import re
from collections.abc import Callable
from random import Random

NUMBER = re.compile(r"\d+(?:[ .]\d+)?(?:/\d+)?")
WORD = re.compile(r"[\w-]+")
# What a hand strikes by mistake, and numbers that no quilt has use for.
SIGNS = "{}[](),:;|>-*/&!%@#'\"\\`?=<~^_ \t\n\r\0\x1b½×é\u00a0\u2028\ufeff\U0001f9f50aAZ"
NUMBERS = (
    *(
        "0",
        "00",
        "1",
        "2",
        "-1",
        "-3",
        "1/8",
        "1/0",
        "0/8",
        "0.5",
        "1e9",
        "007",
        "13",
        "49",
        "50001",
    ),
    *("999", "1000000000", "99999999", str(10**30), "²", "2 1/2 1/2", "1 9/8", "nan", "inf"),
)
WORDS = (
    *(
        "fit",
        "WOF",
        "square",
        "about",
        "x",
        "one",
        "others",
        "top",
        "A",
        "B",
        "AA",
        "a",
        "pair",
        ".",
    ),
    *("true", "null", "~", "yes", "no", "none", "{}", "[]", "''", "A*1000", "(A B)*99", "A/half"),
    *("rows", "columns", "cut", "fabric", "make", "across", "down", "from", "borders", "sashing"),
    *("width", "count", "with", "only", "sizes", "strip set", "half-square triangles", "on point"),
)
Slip = Callable[[str, Random], str]


def mutilated(text: str, luck: Random) -> str:
    """The text after one to four slips."""
    for _ in range(luck.choice((1, 1, 1, 1, 2, 2, 3, 4))):
        text = luck.choice(SLIPS)(text, luck)
    return text


def _sign_lost(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + text[at + luck.choice((1, 1, 1, 2, 9)) :]


def _sign_typed(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + luck.choice(SIGNS) + text[at + luck.choice((0, 0, 1)) :]


def _signs_swapped(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + text[at : at + 2][::-1] + text[at + 2 :]


def _number_changed(text: str, luck: Random) -> str:
    return _one_replaced(NUMBER, text, luck, (*NUMBERS, str(luck.randrange(120))))


def _numbers_swapped(text: str, luck: Random) -> str:
    return _two_swapped(NUMBER, text, luck)


def _word_changed(text: str, luck: Random) -> str:
    return _one_replaced(WORD, text, luck, (*WORDS, *WORD.findall(text)))


def _one_replaced(what: re.Pattern[str], text: str, luck: Random, by: tuple[str, ...]) -> str:
    found = list(what.finditer(text))
    if not found:
        return text
    one = luck.choice(found)
    return text[: one.start()] + luck.choice(by) + text[one.end() :]


def _words_swapped(text: str, luck: Random) -> str:
    return _two_swapped(WORD, text, luck)


def _two_swapped(what: re.Pattern[str], text: str, luck: Random) -> str:
    found = list(what.finditer(text))
    if len(found) < 2:
        return text
    one, other = sorted(luck.sample(found, 2), key=re.Match.start)
    between = text[one.end() : other.start()]
    return text[: one.start()] + other[0] + between + one[0] + text[other.end() :]


def _line_lost(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True)
    if lines:
        del lines[luck.randrange(len(lines))]
    return "".join(lines)


def _line_doubled(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True)
    if lines:
        lines.insert(luck.randrange(len(lines)), luck.choice(lines))
    return "".join(lines)


def _line_moved(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True)
    if lines:
        moved = lines.pop(luck.randrange(len(lines)))
        lines.insert(luck.randrange(len(lines) + 1), moved)
    return "".join(lines)


def _line_set_in(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True)
    if lines:
        at = luck.randrange(len(lines))
        lines[at] = luck.choice(("", " ", "  ", "    ", "\t")) + lines[at].lstrip(" ")
    return "".join(lines)


def _end_lost(text: str, luck: Random) -> str:
    return text[: luck.randrange(len(text) + 1)]


SLIPS: tuple[Slip, ...] = (
    _sign_lost,
    _sign_typed,
    _signs_swapped,
    _number_changed,
    _number_changed,
    _number_changed,
    _numbers_swapped,
    _word_changed,
    _word_changed,
    _word_changed,
    _words_swapped,
    _line_lost,
    _line_doubled,
    _line_moved,
    _line_set_in,
    _end_lost,
)
