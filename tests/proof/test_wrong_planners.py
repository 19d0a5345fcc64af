"""A planner that reckons wrongly is found out by the recounts, whatever it tells itself."""

import importlib
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from patternbook.cutting import planned
from patternbook.cutting.planner.records import Answer
from patternbook.cutting.planner.solve import solve
from patternbook.cutting.records import Style
from patternbook.edition.pipeline import examine
from tests.proof.spoiled import codes, evidence_of, sizes
from tests.support import ROOT

Wrong = Callable[[Any], Any]
DEMOS = [ROOT / "patterns" / name / "pattern.yaml" for name in ("late-returns", "tea-at-four")]


def fewer(right: Any) -> Any:
    """Gives one less than is right."""
    return lambda *given, **named: right(*given, **named) - 1


def without_last(right: Any) -> Any:
    """Leaves the last of several out."""
    return lambda *given, **named: right(*given, **named)[:-1]


def rounded_down(_: Any) -> Any:
    """Rounds down where it should round up."""
    return lambda amount, step: amount // step * step


PLANNERS: list[tuple[str, str, Wrong, str]] = [
    ("cutting.binding", "strips_end_to_end", fewer, "binding-sum"),
    ("cutting.groups", "strips_end_to_end", fewer, "cuts-fit"),
    ("cutting.groups", "join_loss", lambda f: lambda *a: (f(*a)[0], f(*a)[1] / 2), "cuts-fit"),
    ("cutting.groups", "first_fit", lambda f: lambda i, run, b=(): f(i, run + 1, b), "cuts-fit"),
    ("cutting.asked", "_least_cuts", fewer, "cut-count"),
    ("cutting.buying", "step_up", rounded_down, "cloth-short"),
    ("cutting.backing", "step_up", rounded_down, "backing-sum"),
    ("cutting.backing", "sides_over", lambda f: lambda q, over: f(q, over - 1), "backing-sum"),
    ("cutting.fabric", "cut_steps", without_last, "one-source"),
    ("cutting.fabric", "strip_lines", without_last, "cloth-sum"),
    ("quilt.assemble", "ruler_up", lambda f: lambda one, by: f(one, by) - by.step, "raw-size"),
    ("edition.pipeline", "patches", without_last, "tiling-uncovered"),
]  # fmt: skip


@pytest.mark.parametrize(("module", "name", "wrong", "code"), PLANNERS)
def test_a_wrong_planner_is_found_out(
    monkeypatch: pytest.MonkeyPatch, *, module: str, name: str, wrong: Wrong, code: str
) -> None:
    home = importlib.import_module(f"patternbook.{module}")
    monkeypatch.setattr(home, name, wrong(getattr(home, name)))
    told = [one for path in DEMOS for one in examine(path, "pattern.yaml").notices]
    assert code in {one.code for one in told if one.stage == "proof" and one.severity == "error"}


METHODS: list[tuple[str, str, str, Wrong, str]] = [
    # a sash too few is counted, the rows lie elsewhere, a set too few is sewn
    ("methods.rows", "Grid", "need", lambda f: lambda own: f(own) - Counter("S"), "sewn-count"),
    ("methods.rows", "Grid", "placed", lambda f: lambda own, x, y: f(own, x + 1, y), "unit-filled"),
    ("methods.strip_set", "StripSetWork", "_sets", fewer, "slices"),
]  # fmt: skip


@pytest.mark.parametrize(("module", "kind", "name", "wrong", "code"), METHODS)
def test_a_wrong_sewing_method_is_found_out(
    monkeypatch: pytest.MonkeyPatch, *, module: str, kind: str, name: str, wrong: Wrong, code: str
) -> None:
    home = getattr(importlib.import_module(f"patternbook.{module}"), kind)
    monkeypatch.setattr(home, name, wrong(getattr(home, name)))
    told = examine(DEMOS[1], "pattern.yaml").notices
    assert code in {one.code for one in told if one.stage == "proof" and one.severity == "error"}


def one_strip_less(answer: Answer) -> Answer:
    first, *others = answer.strips
    return replace(answer, strips=(*others, first._replace(times=first.times - 1)))


def one_piece_more(answer: Answer) -> Answer:
    first, *others = answer.strips
    column = first.columns[0]
    more = column._replace(pieces=column.pieces + 1, columns=column.columns + 1)
    return replace(answer, strips=(first._replace(columns=(more, *first.columns[1:])), *others))


def in_too_long_strips(answer: Answer) -> Answer:
    """As if the cloth were half as wide again."""
    first, *others = answer.strips
    columns = tuple(
        column._replace(columns=column.columns * 2, pieces=column.pieces * 2)
        for column in first.columns
    )
    return replace(answer, strips=(first._replace(columns=columns), *others))


def bound_as_the_plan(answer: Answer) -> Answer:
    more = answer.length + min(strip.height for strip in answer.strips)
    return replace(answer, by_prices=more)


def dear(answer: Answer) -> Answer:
    dearer = [
        one._replace(kinds=tuple((kind, 2 * price) for kind, price in one.kinds))
        for one in answer.prices
    ]
    return replace(answer, prices=tuple(dearer))


ANSWERS: list[tuple[Callable[[Answer], Answer], str]] = [
    (one_strip_less, "cut-count"),
    (one_piece_more, "cut-count"),
    (in_too_long_strips, "cut-outside"),
    (bound_as_the_plan, "bound-high"),
    (dear, "bound-prices"),
]


@pytest.mark.parametrize(("wrong", "code"), ANSWERS)
@pytest.mark.parametrize("style", ["shared", "thrifty"])
def test_a_wrong_plan_of_shared_strips_is_found_out(
    monkeypatch: pytest.MonkeyPatch, *, style: Style, wrong: Callable[[Answer], Answer], code: str
) -> None:
    monkeypatch.setattr(planned, "solve", lambda task: wrong(solve(task)))
    quilt = sizes(DEMOS[0])["throw"].quilt
    assert code in codes(evidence_of(quilt, style))
