"""Ten thousand accidents at the keyboard, each worked out to the end: told, and no traceback.

The slips keep to what a source is made of (numbers, words, lines), so that many of them are read
without a fault and meet the resolver, the planners and the proof. The seeds are fixed.
"""

import re
from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest

from patternbook.commands.build import DEMOS
from patternbook.edition.figures import figures
from patternbook.edition.pipeline import examine
from patternbook.notice import failed
from tests.support import ROOT

SHOWN = [ROOT / "patterns" / slug / "pattern.yaml" for slug in DEMOS]
OTHERS = sorted((ROOT / "tests" / "data").glob("*/*.yaml"))
LOTS, EACH, SELDOM = 20, 500, 100
NUMBER = re.compile(r"\d+(?:[ .]\d+)?(?:/\d+)?")
WORD = re.compile(r"[\w-]+")
SIGNS = "{}[](),:;|>-*/&!%@#'\"\\`?=<~^_ \t\n\r\0\x1b½×é\u00a0\u2028\ufeff0aAZ"
NUMBERS = [
    *("0", "00", "1", "2", "-1", "-3", "1/8", "1/0", "0/8", "0.5", "1e9", "007", "13", "49"),
    *("50001", "999", "1000000000", "99999999", str(10**30), "²", "2 1/2 1/2", "1 9/8", "nan"),
]
WORDS = [
    *("fit", "WOF", "square", "about", "x", "one", "others", "top", "A", "B", "AA", "pair", "."),
    *("true", "null", "~", "yes", "no", "none", "{}", "[]", "''", "A*1000", "(A B)*99", "A/half"),
    *("rows", "columns", "cut", "fabric", "make", "across", "down", "from", "borders", "sashing"),
    *("width", "count", "with", "only", "sizes", "strip set", "half-square triangles", "on point"),
]


def mutilated(text: str, luck: Random) -> str:
    """The text after one to four slips."""
    for _ in range(luck.choice((1, 1, 1, 1, 2, 2, 3, 4))):
        text = luck.choice(SLIPS)(text, luck)
    return text


def sign_lost(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + text[at + luck.choice((1, 1, 1, 2, 9)) :]


def sign_typed(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + luck.choice(SIGNS) + text[at + luck.choice((0, 0, 1)) :]


def signs_swapped(text: str, luck: Random) -> str:
    at = luck.randrange(len(text) + 1)
    return text[:at] + text[at : at + 2][::-1] + text[at + 2 :]


def number_changed(text: str, luck: Random) -> str:
    return one_replaced(NUMBER, text, luck, [*NUMBERS, str(luck.randrange(120))])


def word_changed(text: str, luck: Random) -> str:
    return one_replaced(WORD, text, luck, [*WORDS, *WORD.findall(text)])


def one_replaced(what: re.Pattern[str], text: str, luck: Random, by: list[str]) -> str:
    found = list(what.finditer(text))
    if not found:
        return text
    one = luck.choice(found)
    return text[: one.start()] + luck.choice(by) + text[one.end() :]


def numbers_swapped(text: str, luck: Random) -> str:
    return two_swapped(NUMBER, text, luck)


def words_swapped(text: str, luck: Random) -> str:
    return two_swapped(WORD, text, luck)


def two_swapped(what: re.Pattern[str], text: str, luck: Random) -> str:
    found = list(what.finditer(text))
    if len(found) < 2:
        return text
    one, other = sorted(luck.sample(found, 2), key=re.Match.start)
    between = text[one.end() : other.start()]
    return text[: one.start()] + other[0] + between + one[0] + text[other.end() :]


def line_lost(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    lines.pop(luck.randrange(len(lines)))
    return "".join(lines)


def line_doubled(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    lines.insert(luck.randrange(len(lines)), luck.choice(lines))
    return "".join(lines)


def line_moved(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    moved = lines.pop(luck.randrange(len(lines)))
    lines.insert(luck.randrange(len(lines) + 1), moved)
    return "".join(lines)


def line_set_in(text: str, luck: Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    at = luck.randrange(len(lines))
    lines[at] = luck.choice(("", " ", "  ", "    ", "\t")) + lines[at].lstrip(" ")
    return "".join(lines)


def end_lost(text: str, luck: Random) -> str:
    return text[: luck.randrange(len(text) + 1)]


SLIPS: list[Callable[[str, Random], str]] = [
    *(sign_lost, sign_typed, signs_swapped),
    *(number_changed, number_changed, number_changed, numbers_swapped),
    *(word_changed, word_changed, word_changed, words_swapped),
    *(line_lost, line_doubled, line_moved, line_set_in, end_lost),
]


@pytest.mark.parametrize("lot", range(LOTS))
def test_every_accident_is_told(tmp_path: Path, lot: int) -> None:
    path = tmp_path / "patterns" / "trial" / "pattern.yaml"
    path.parent.mkdir(parents=True)
    read = 0
    for number in range(EACH):
        luck = Random(f"accident {lot * EACH + number}")  # noqa: S311 - the same ones every time
        source = luck.choice(SHOWN) if luck.random() < 0.4 else luck.choice(OTHERS)
        text = mutilated(source.read_text("utf-8"), luck)
        path.write_text(text, "utf-8", newline="")
        # What only a full run plans takes long: one in so many is enough.
        found = examine(path, "p.yaml", full=number % SELDOM == 0)
        assert found.failed == failed(found.notices)
        assert all(str(notice) for notice in found.notices)
        figures(found)
        read += found.source is not None
    # Else the accidents have become so heavy that nothing but the reader is tested.
    assert read > EACH // 10
