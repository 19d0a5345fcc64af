"""Sums as they stand in a sentence: numbers, what is done with them, and the equals sign."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Final, Literal

from patternbook.proof.prose.numbers import Figure, singles
from patternbook.proof.prose.speech import Speech

Kind = Literal["number", "sign", "word", "equals"]
# What may stand beside a number of a sum: "232 in needed / 42", "16 across x 8 down".
_BESIDE: Final = re.compile(
    r"needed|across|down|wide|long|strips?|squares?|pieces?|rows?|blocks?|columns?|usable|finished"
    r"|in all|inches|in|per strip|a strip|units?",
    re.IGNORECASE,
)
_SIGN: Final = re.compile(r"[-+*/()]|x(?![a-z])")


@dataclass(frozen=True)
class Token:
    """One sign, number or word of a sum."""

    kind: Kind
    start: int
    end: int
    text: str
    figure: Figure | None = None


@dataclass(frozen=True)
class Side:
    """What stands on one side of the equals sign."""

    tokens: tuple[Token, ...]

    @property
    def start(self) -> int:
        """Where it begins."""
        return self.tokens[0].start

    @property
    def end(self) -> int:
        """Where it ends."""
        return self.tokens[-1].end

    @property
    def figures(self) -> tuple[Figure, ...]:
        """Its numbers."""
        return tuple(token.figure for token in self.tokens if token.figure)

    @property
    def _signs(self) -> str:
        return "".join(token.text for token in self.tokens if token.kind == "sign")

    @property
    def divides(self) -> bool:
        """Whether something is divided: the result may have to be whole."""
        return "/" in self._signs

    @property
    def product(self) -> bool:
        """Whether it is nothing but two numbers multiplied."""
        return self._signs in ("x", "*") and len(self.figures) == 2

    @property
    def decimal(self) -> bool:
        """Whether a number of it is rounded already."""
        return any("." in figure.text for figure in self.figures)

    @property
    def first(self) -> Fraction | None:
        """Its first number."""
        return self.figures[0].value if self.figures else None

    @property
    def pair(self) -> tuple[Fraction, Fraction] | None:
        """The two numbers of a plain addition."""
        if self._signs != "+" or len(self.figures) != 2:
            return None
        return self.figures[0].value, self.figures[1].value

    @cached_property
    def value(self) -> Fraction | None:
        """What it comes to: pieces to a strip rounded down, and strips for them up, where one
        division stands inside another."""
        nested = re.search(r"/\([^)]*/", self._signs) is not None
        tokens = [token for token in self.tokens if token.kind != "word"]
        try:
            value, rest = _sum(tokens, nested=nested, inside=False)
        except (IndexError, ZeroDivisionError, ValueError):
            return None
        return value if not rest else None


Value = tuple[Fraction, Sequence[Token]]


def _sum(tokens: Sequence[Token], *, nested: bool, inside: bool) -> Value:
    value, rest = _product(tokens, nested=nested, inside=inside)
    while rest and rest[0].text in ("+", "-"):
        sign = rest[0].text
        more, rest = _product(rest[1:], nested=nested, inside=inside)
        value = value + more if sign == "+" else value - more
    return value, rest


def _product(tokens: Sequence[Token], *, nested: bool, inside: bool) -> Value:
    value, rest = _one(tokens, nested=nested)
    while rest and rest[0].text in ("x", "*", "/"):
        sign = rest[0].text
        more, rest = _one(rest[1:], nested=nested)
        value = value / more if sign == "/" else value * more
        if sign == "/" and nested:
            value = Fraction(value // 1 if inside else -(-value // 1))
    return value, rest


def _one(tokens: Sequence[Token], *, nested: bool) -> Value:
    if tokens[0].text == "(":
        value, rest = _sum(tokens[1:], nested=nested, inside=True)
        if rest[0].text != ")":
            raise ValueError("a bracket stays open")
        return value, rest[1:]
    figure = tokens[0].figure
    if figure is None:
        raise ValueError("a number is missing")
    return figure.value, tokens[1:]


@dataclass(frozen=True)
class Equation:
    """Two sides said to be equal."""

    left: Side
    right: Side

    @property
    def start(self) -> int:
        """Where the first begins."""
        return self.left.start

    @property
    def end(self) -> int:
        """Where the last number ends."""
        return self.right.end

    @property
    def reckoned(self) -> Side:
        """The side that is a sum."""
        return self.left if len(self.left.figures) > 1 else self.right

    @property
    def result(self) -> Figure | None:
        """The number that it is said to come to; none where both sides are sums, or neither."""
        left, right = self.left.figures, self.right.figures
        if len(left) > 1 and len(right) == 1:
            return right[0]
        return left[0] if len(left) == 1 and len(right) > 1 else None


def equations(speech: Speech) -> Iterator[Equation]:
    """Every equals sign with a number on both sides."""
    if "=" not in speech.text:
        return
    tokens = tuple(_tokens(speech))
    last: Figure | None = None
    for at, token in enumerate(tokens):
        if token.kind != "equals":
            continue
        left, right = _side(tokens[:at][::-1], last, at_left=True), _side(tokens[at + 1 :], None)
        if left and right:
            equation = Equation(left, right)
            yield equation
            last = right.figures[-1]


def _side(tokens: Sequence[Token], last: Figure | None, *, at_left: bool = False) -> Side | None:
    held: list[Token] = []
    for token in tokens:
        if token.kind == "equals" or (token.kind == "word" and not _BESIDE.fullmatch(token.text)):
            break
        if held and token.kind == "number" and held[-1].kind == "number":
            break
        if token.kind == "number" and _breaks(held, at_left=at_left):
            break
        held.append(token)
    if at_left:
        held.reverse()
        if held and held[0].text == "/" and last is not None:
            held.insert(0, Token("number", last.start, last.end, last.text, last))
    while held and (held[0].kind == "word" or held[0].text in tuple(")+x*/-")):
        held.pop(0)
    while held and (held[-1].kind == "word" or held[-1].text in tuple("(+x*/-")):
        held.pop()
    return Side(tuple(held)) if held and any(token.figure for token in held) else None


def _breaks(held: Sequence[Token], *, at_left: bool) -> bool:
    """Whether a number follows another with nothing but words between."""
    behind = next((token for token in reversed(held) if token.kind != "word"), None)
    return behind is not None and behind.kind == "number" and len(held) > 0 and at_left is not None


def _tokens(speech: Speech) -> Iterator[Token]:
    figures = {figure.start: figure for figure in singles(speech.text)}
    at = 0
    while at < len(speech.text):
        sign = speech.text[at]
        if figure := figures.get(at):
            yield Token("number", at, figure.end, figure.text, figure)
            at = figure.close
        elif sign == "=":
            yield Token("equals", at, at + 1, sign)
            at += 1
        elif sign == " ":
            at += 1
        elif found := _SIGN.match(speech.text, at):
            yield Token("sign", at, found.end(), found[0])
            at = found.end()
        else:
            word = re.compile(r"[A-Za-z]+|.").match(speech.text, at)
            end = word.end() if word else at + 1
            yield Token("word", at, end, speech.text[at:end])
            at = end
