"""Wrong sums of backing, batting, bias and label are found out by the recounts."""

import importlib
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from patternbook.edition.pipeline import examine
from tests.support import WritePattern

CHOICES = """
pattern: Choices
sizes: {one: {finished: 36 x 42}}
fabrics:
  front: {use: squares, tone: light, yards: 2}
  edge: {use: binding, tone: dark}
  back: {use: backing}
pieces: {A: {fabric: front, cut: 6 1/2 square}}
top: {rows: [A], across: 6, down: 7}
backing: {fabric: back, quilted-by: home, pieced: yes}
batting: {width: 36}
binding: {fabric: edge, cut: 2 1/2 x WOF, bias: yes, corners: rounded}
label: {size: 6 x 4}
"""
STRIPS = ("corners: rounded", "bias-from: strips")
Wrong = Callable[[Any], Any]


def more(by: Fraction | int) -> Wrong:
    """Gives so much more than is right."""
    return lambda right: lambda *given, **named: right(*given, **named) + by


def narrow(_: Any) -> Any:
    """As if a label needed no hems."""
    return lambda *_given: Fraction(4)


def wide(right: Any) -> Any:
    """One more patch than goes on to the spare cloth."""

    def patches(*given: Any) -> Any:
        found = right(*given)
        return found and found._replace(along=found.along + 30)

    return patches


def test_the_source_itself_is_sound(pattern: WritePattern) -> None:
    for text in (CHOICES, CHOICES.replace(*STRIPS)):
        told = examine(pattern(text), "pattern.yaml").notices
        assert [one.code for one in told if one.severity == "error"] == []


@pytest.mark.parametrize(
    ("module", "name", "wrong", "code"),
    [
        ("cutting.let_in", "made_of", more(9), "backing-sum"),
        ("cutting.let_in", "patches", wide, "backing-sum"),
        ("cutting.let_in", "ruler_up", more(-2), "backing-sum"),
        ("cutting.binding", "rounded_off", more(5), "binding-sum"),
        ("cutting.bias", "continuous", more(20), "binding-sum"),
        ("cutting.label", "ruler_up", narrow, "label-sum"),
        ("cutting.batting", "sides_for", lambda f: lambda *g: (f(*g)[0] - 20, f(*g)[1]),
         "batting-sum"),
    ],
)  # fmt: skip
def test_a_wrong_sum_is_found_out(
    monkeypatch: pytest.MonkeyPatch, pattern: WritePattern,
    *, module: str, name: str, wrong: Wrong, code: str,
) -> None:  # fmt: skip
    home = importlib.import_module(f"patternbook.{module}")
    monkeypatch.setattr(home, name, wrong(getattr(home, name)))
    told = examine(pattern(CHOICES), "pattern.yaml").notices
    assert code in {one.code for one in told if one.stage == "proof" and one.severity == "error"}


@pytest.mark.parametrize("join", ["diagonal", "straight"])
def test_strips_of_bias_are_counted_anew(
    monkeypatch: pytest.MonkeyPatch, pattern: WritePattern, join: str
) -> None:
    bias = importlib.import_module("patternbook.cutting.bias")
    name = "in_strips" if join == "diagonal" else "squared_strips"
    right = getattr(bias, name)
    monkeypatch.setattr(bias, name, lambda *given: right(*given) + 25)
    text = CHOICES.replace(*STRIPS).replace("bias: yes", f"bias: yes, join: {join}")
    told = examine(pattern(text), "pattern.yaml").notices
    assert "binding-sum" in {one.code for one in told if one.stage == "proof"}
