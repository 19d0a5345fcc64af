"""How many: a whole number, or a small sum over whole numbers and a size's own numbers."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Final

from patternbook.notice import Place
from patternbook.value.text import LARGEST, NOWHERE, WORD, Text, ValueFault, one_line, quoted

# Step by step: a whole number, a name, or one of + - * / applied to the two before it.
Step = int | str
NO_NAMES: Final[Mapping[str, int]] = MappingProxyType({})
_TOKEN: Final = re.compile(rf"\s*([0-9]+|{WORD}|[-+*/()])")
_BINDS: Final = {"+": 1, "-": 1, "*": 2, "/": 2}
_MOST_STEPS: Final = 200
# Twice the patches of the largest quilt that is worked out: what is above was mistyped.
MOST: Final = 100_000
_SIGNS: Final = str.maketrans({"×": "*", "−": "-", "–": "-", "÷": "/"})


@dataclass(frozen=True)
class CountValue:
    """A sum, kept as steps in the order in which they are done."""

    steps: tuple[Step, ...]
    text: str
    place: Place = NOWHERE

    @property
    def names(self) -> frozenset[str]:
        """The numbers that a size must give."""
        return frozenset(
            step for step in self.steps if isinstance(step, str) and step not in _BINDS
        )

    def at(self, names: Mapping[str, int] = NO_NAMES) -> Fraction:
        """What it comes to; KeyError where a name has no number, ValueFault where it has no end."""
        stack: list[Fraction] = []
        for step in self.steps:
            if isinstance(step, int):
                stack.append(Fraction(step))
            elif step in _BINDS:
                right, left = stack.pop(), stack.pop()
                stack.append(self._done(step, left, right))
            else:
                stack.append(Fraction(names[step]))
        value = stack.pop()
        if value > MOST:
            raise ValueFault("too-many", f"{quoted(self.text)} comes to {value}, far too many")
        return value

    def _done(self, sign: str, left: Fraction, right: Fraction) -> Fraction:
        if sign == "/" and not right:
            raise ValueFault("divided-by-nothing", f"{quoted(self.text)} divides by 0")
        match sign:
            case "+":
                value = left + right
            case "-":
                value = left - right
            case "*":
                value = left * right
            case _:
                value = left / right
        if abs(value) > LARGEST or value.denominator > LARGEST:
            raise ValueFault("too-many", f"{quoted(self.text)} is more than can be counted")
        return value


def whole(number: int) -> CountValue:
    """A plain number as a count, for defaults."""
    return CountValue((number,), str(number))


def parse_count(text: Text) -> CountValue:
    """`12`, `across * down`, `2*(stacks + 1)`."""
    line = one_line(text.translate(_SIGNS))
    if re.fullmatch(r"-[0-9]+", line):
        raise ValueFault("negative", f"{quoted(line)} is below nothing")
    steps = tuple(_ordered(_tokens(line), line))
    if len(steps) == 1 and isinstance(steps[0], int) and steps[0] > MOST:
        raise ValueFault("too-many", f"{quoted(line)} is more than can be counted")
    return CountValue(steps, line, text.place)


def _tokens(line: str) -> list[str]:
    tokens, at = [], 0
    while at < len(line):
        found = _TOKEN.match(line, at)
        if not found:
            raise _not_a_count(line)
        tokens.append(found[1])
        at = found.end()
    if len(tokens) > _MOST_STEPS:
        raise ValueFault("too-long", f"{quoted(line)} is too long a sum")
    return tokens


def _ordered(tokens: list[str], line: str) -> list[Step]:
    """The steps of a sum, a sign behind its two numbers: `*` and `/` bind before `+` and `-`."""
    steps: list[Step] = []
    waiting: list[str] = []
    number_next = True
    for word in tokens:
        is_sign = word in _BINDS
        if (is_sign or word == ")") == number_next:
            raise _not_a_count(line)
        if word == "(":
            waiting.append(word)
        elif word == ")":
            _close(steps, waiting, line)
        elif is_sign:
            while waiting and _BINDS.get(waiting[-1], 0) >= _BINDS[word]:
                steps.append(waiting.pop())
            waiting.append(word)
        else:
            steps.append(_number_or_name(word, line))
        number_next = is_sign or word == "("
    if number_next or "(" in waiting:
        raise _not_a_count(line)
    return [*steps, *reversed(waiting)]


def _close(steps: list[Step], waiting: list[str], line: str) -> None:
    while waiting and waiting[-1] != "(":
        steps.append(waiting.pop())
    if not waiting:
        raise _not_a_count(line)
    waiting.pop()


def _number_or_name(token: str, line: str) -> Step:
    if not token.isdigit():
        return token
    if len(token) > 10:
        raise ValueFault("too-many", f"{quoted(line)} is more than can be counted")
    return int(token)


def _not_a_count(line: str) -> ValueFault:
    fault = ValueFault("not-a-count", f"{quoted(line)} is not a count (such as 12 or across * 2)")
    if re.search(r"[0-9] x [0-9a-z]", line):
        fault.hint = "Times is written *."
    elif re.fullmatch(r"[0-9]+\.[0-9]+|[0-9]+ [0-9]+/[0-9]+", line):
        fault.hint = "A count is a whole number."
    elif re.search(r"[a-z]-[a-z]", line):
        fault.hint = "A size's own numbers have names of one word."
    return fault
