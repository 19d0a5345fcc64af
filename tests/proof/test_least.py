"""Bounds are proven anew from their prices alone; prices, bounds and words that prove nothing are
refused."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import product
from typing import Any

import pytest

from patternbook.cutting.records import FabricPlan, Least, Style
from patternbook.proof.least import least
from patternbook.proof.proven import proven
from patternbook.proof.worth import (
    MILLION,
    Cloth,
    Manner,
    Priced,
    next_length,
    sheet_worth,
    sums,
    worth,
)
from tests.proof.spoiled import Case, cases

PLANNED: tuple[Style, ...] = ("shared", "thrifty")


def priced(style: Style) -> list[Case]:
    """The fabrics that were planned anew."""
    return [case for case in cases(style) if case.plan.least is not None]


def told(case: Case, **changes: Any) -> set[str]:
    return {one.code for one in least(case.with_plan(replace(case.plan, **changes)))}


def of_proof(case: Case, change: Callable[[Least], dict[str, Any]]) -> set[str]:
    proof = case.plan.least
    assert proof is not None
    return told(case, least=replace(proof, **change(proof)))


@pytest.mark.parametrize("style", PLANNED)
def test_bounds_are_proven_anew(style: Style) -> None:
    assert len(priced(style)) > 20
    assert [case.name for case in priced(style) if told(case)] == []


@pytest.mark.parametrize("style", PLANNED)
def test_prices_one_per_cent_too_high_prove_nothing(style: Style) -> None:
    """In at least nine of ten; in the others no strip was worth all of its width."""

    def dearer(proof: Least) -> dict[str, Any]:
        prices = [tuple((k, price * 101 // 100) for k, price in one) for one in proof.prices]
        return {"prices": tuple(prices)}

    refused = ["bound-prices" in of_proof(case, dearer) for case in priced(style)]
    assert sum(refused) >= 0.9 * len(refused)


@pytest.mark.parametrize("style", PLANNED)
def test_a_bound_above_what_is_proven_is_refused(style: Style) -> None:
    """By as much as the narrowest strip, so that some plan could be between the two."""

    def higher(proof: Least) -> dict[str, Any]:
        return {"bound": proof.bound + min(min(kind[1:3]) for kind in proof.kinds)}

    assert [c.name for c in priced(style) if "bound-high" not in of_proof(c, higher)] == []


@pytest.mark.parametrize("style", PLANNED)
def test_a_bound_raised_by_one_unit_is_refused(style: Style) -> None:
    """The printed bound, where the prices alone prove it: above the plan, or above the proof."""
    for case in priced(style):
        plan = case.plan
        assert plan.least is not None
        if not plan.least.tried:
            raised = {"bound": plan.bound + plan.least.unit}
            if plan.number_bound is not None:
                raised = {"number_bound": Fraction(plan.number_bound + 1)}
            assert told(case, **raised) & {"bound-high", "bound-told"}, case.name


@pytest.mark.parametrize("style", PLANNED)
def test_what_was_tried_out_must_be_said(style: Style) -> None:
    tried = [case for case in priced(style) if case.plan.least and case.plan.least.tried]
    assert tried
    for case in tried:
        assert "bound-high" in of_proof(case, lambda _: {"tried": False}), case.name


@pytest.mark.parametrize("style", PLANNED)
def test_other_pieces_priced_than_are_cut_are_refused(style: Style) -> None:
    def one_more(proof: Least) -> dict[str, Any]:
        name, along, across, number, *rest = proof.kinds[0]
        return {"kinds": ((name, along, across, number + 1, *rest), *proof.kinds[1:])}

    def wider(proof: Least) -> dict[str, Any]:
        return {"width": proof.width + 1}

    for case, change in product(priced(style), (one_more, wider)):
        assert "bound-prices" in of_proof(case, change), case.name


def test_a_kind_that_may_be_turned_is_priced_as_such() -> None:
    def upright(proof: Least) -> dict[str, Any]:
        return {"kinds": tuple((*kind[:4], False, kind[5]) for kind in proof.kinds)}

    loose = [
        case
        for case in priced("shared")
        if case.plan.least and any(not kind[5] for kind in case.plan.least.kinds)
    ]
    assert loose
    for case in loose:
        assert "bound-prices" in of_proof(case, upright), case.name


@pytest.mark.parametrize("style", PLANNED)
def test_least_is_what_is_called_least(style: Style) -> None:
    for case in priced(style):
        assert "bound-told" in told(case, proven=not case.plan.proven), case.name
        assert "bound-told" in told(case, bound=case.plan.length + Fraction(1, 8)), case.name


def test_a_bound_without_a_proof_is_refused() -> None:
    def bare(plan: FabricPlan) -> dict[str, Any]:
        return {"least": None, "bound": plan.length - Fraction(1, 8)}

    for case in priced("shared"):
        assert "bound-told" in told(case, **bare(case.plan)), case.name


# ---- what a strip is worth, against laying all that can be laid


def by_trying(pieces: list[Priced], width: int, wide: int) -> int:
    """The most that a strip of shared cutting holds: every number of sub-cuts of every kind, either
    way round, that fits."""
    ways = [
        (piece, along, wide // across)
        for piece in pieces
        for along, across in piece.lays(width)
        if across <= wide
    ]
    most = 0
    for columns in product(*(range(width // along + 1) for _, along, _ in ways)):
        laid = list(zip(ways, columns, strict=True))
        if sum(along * number for (_, along, _), number in laid) <= width:
            held = dict.fromkeys(pieces, 0)
            for (piece, _, stack), number in laid:
                held[piece] += stack * number
            value = sum(min(number, piece.number) * piece.price for piece, number in held.items())
            most = max(most, value)
    return most


LISTS = [
    [Priced(5, 3, 4, True, False, 7), Priced(4, 4, 9, True, False, 8)],
    [Priced(7, 2, 3, True, False, 6), Priced(5, 5, 2, False, False, 11)],
    [Priced(9, 4, 2, False, False, 20), Priced(3, 2, 30, True, False, 3)],
]


@pytest.mark.parametrize("pieces", LISTS)
def test_the_worth_of_shared_strips(pieces: list[Priced]) -> None:
    found = dict(worth(pieces, Cloth(17), "shared"))
    assert found == {wide: by_trying(pieces, 17, wide) for wide in found}
    assert set(found) == {side for p in pieces for _, side in p.lays(17)}


@pytest.mark.parametrize("pieces", LISTS)
def test_thrifty_strips_are_worth_at_least_as_much(pieces: list[Priced]) -> None:
    """Whatever shared cutting lays, thrifty cutting can."""
    thrifty = dict(worth(pieces, Cloth(17, 12), "thrifty"))
    for wide, value in worth(pieces, Cloth(17), "shared"):
        assert thrifty[wide] >= value


def test_the_worth_of_a_thrifty_strip() -> None:
    """3 wide: 5 × 2 with 4 × 1 over it, twice in 10; 2 of each are worth 2 × (9 + 2) = 22."""
    pieces = [Priced(5, 2, 2, False, False, 9), Priced(4, 1, 2, False, False, 2)]
    assert dict(worth(pieces, Cloth(10, 3), "thrifty")) == {1: 4, 2: 18, 3: 22}


@pytest.mark.parametrize("manner", ["shared", "thrifty"])
def test_a_piece_with_strips_of_its_own(manner: Manner) -> None:
    """It stands in no wider strip, and no more of it than are wanted."""
    pieces = [Priced(6, 2, 1, False, True, 5 * MILLION), Priced(6, 5, 9, False, False, MILLION)]
    assert dict(worth(pieces, Cloth(20, 5), manner)) == {2: 5 * MILLION, 5: 3 * MILLION}


def test_the_worth_of_a_pre_cut_piece() -> None:
    """10 × 8: two strips 3 wide of two pieces 5 × 3 each, and 2 over; or one strip 5 wide of three
    lying down, and 3 over for two more: 5 × 7 = 35."""
    assert sheet_worth([Priced(5, 3, 9, True, False, 7)], 10, 8) == 35
    assert sheet_worth([Priced(5, 3, 9, False, False, 7)], 10, 8) == 28


@pytest.mark.parametrize(("number", "bound"), [(4, 1), (5, 2), (9, 3)])
def test_pre_cuts_are_priced_by_the_piece(number: int, bound: int) -> None:
    """Four squares of 5 from one of 10: each costs a quarter of it."""
    kinds = (("A", 5, 5, number, True, False),)
    proof = Least(Fraction(1), 10, kinds, ((("A", MILLION // 4),),), ((0, 0),), bound, down=10)
    assert proven(proof, "shared") == (bound, None)
    dearer = replace(proof, prices=((("A", MILLION // 4 + 1),),))
    assert proven(dearer, "shared").fault


def test_lengths_that_strips_add_up_to() -> None:
    assert sums([4, 6], 15) == [4, 6, 8, 10, 12, 14]
    assert next_length([4, 6], 0, 9, 20) == 10
    assert next_length([4, 6], 5, 6, 20) == 9
    assert next_length([7], 0, 8, 10) == 10  # none up to 10: at least that
    assert next_length([7], 0, 12, 10) == 12
