"""Fusible web: as many boxes as shapes, in rows across it, bought as it is sold."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook import proof
from patternbook.cutting.records import WebBox, WebPlan
from patternbook.cutting.web import Shelf, Traced, shelved
from patternbook.edition.pipeline import examine
from patternbook.proof.evidence import Evidence
from tests.methods.drawn_shapes import with_shapes
from tests.methods.making import faults
from tests.support import Run, WritePattern

F = Fraction


def source(web: str = "width: 17", blocks: str = "4 x 5", motif: str = "fit x 7") -> str:
    across, down = blocks.split(" x ")
    return f"""\
pattern: Motifs
sizes: {{one: {{across: {across}, down: {down}}}}}
fabrics: {{table: {{}}, pear: {{}}, leaf: {{}}, web: {{{web}}}}}
pieces:
  G: {{fabric: table, cut: 10 square}}
  P: {{fabric: pear, template: drawing, drawing: shapes/tall.svg, cut: {motif}}}
  L: {{fabric: leaf, template: drawing, drawing: shapes/box.svg}}
units:
  plate: {{method: applique, ground: G, shapes: L P, at: [0 x 0, 2 1/2 x 1 1/2], web: web,
    measure: 9 1/2 square}}
top: {{rows: [plate], across: across, down: down}}
"""


def web(run: Run, path: Path) -> Any:
    ran = run("check", path)
    assert ran.code == 0, ran.err
    return run("figures", path, "--json").json()["sizes"]["one"]["webs"]["web"]


# Kind 25 of our reference document, by hand: motifs 6 × 7 with ½ between them, two across 17: 20
# take 10 rows × 7½ = 75″ → 2⅛ yd; 42 take 157½″ → 4⅜ yd. (Width from memory, not read.) The
# leaf, 2 × 1, finds room beside the motifs: it takes no row of its own.
@pytest.mark.parametrize(
    ("blocks", "rows", "length", "yards", "spare"),
    [("4 x 5", 10, "75", "2 1/8", "1 1/2"), ("6 x 7", 21, "157 1/2", "4 3/8", "0")],
)
def test_both_sizes_worked_by_hand(
    run: Run, pattern: WritePattern, blocks: str, rows: int, length: str, yards: str, spare: str
) -> None:
    found = web(run, with_shapes(pattern, source(f"width: 17, yards: {yards}", blocks)))
    number = int(blocks[0]) * int(blocks[-1])
    assert sum(row["times"] for row in found["rows"]) == rows
    assert {row["down"] for row in found["rows"]} == {"7 1/2"}
    assert found["shapes"] == {"P": number, "L": number}
    assert (found["length"], found["spare"]) == (length, spare)
    assert found["buy"]["amount"] == yards


def test_web_is_listed_in_figures_for_people(run: Run, pattern: WritePattern) -> None:
    out = run("figures", with_shapes(pattern, source())).out
    assert "web  17     2 1/8 yd  2          75           1 1/2  20 P, 20 L" in out


def test_a_shape_wider_than_the_web_is_traced_on_its_side(pattern: WritePattern) -> None:
    """7½ and ½ are more than 6¾; lying on its side it takes 5½ across and 8 of the length."""
    made = examine(with_shapes(pattern, source("width: 6 3/4", motif="7 1/2 x 5")), "pattern.yaml")
    plan = made.sizes["one"].cutting.webs["web"]
    tall = next(box for box in plan.boxes if box.letter == "P")
    assert (tall.turned, tall.across, tall.down) == (True, F(11, 2), F(8))


WRONG = [
    ("too little", "width: 17, yards: 2", "yards-short", "Buy 2 1/8 yd."),
    ("of no stated width", "use: fuses", "web-width", None),
    ("too narrow", "width: 6", "web-narrow", None),
]


@pytest.mark.parametrize(("what", "fabric", "code", "hint"), WRONG, ids=[one[0] for one in WRONG])
def test_told(
    run: Run, pattern: WritePattern, what: str, fabric: str, code: str, hint: str | None
) -> None:
    found = {one[0]: one[1] for one in faults(run, with_shapes(pattern, source(fabric)))}
    assert code in found, what
    if hint:
        assert found[code] == hint


def test_a_web_is_no_cloth(run: Run, pattern: WritePattern) -> None:
    text = source().replace("fabric: leaf", "fabric: web").replace(", leaf: {}", "")
    assert "web-cloth" in {one[0] for one in faults(run, with_shapes(pattern, text))}


# ---- the rows

SIDES = st.fractions(F(1, 2), 8, max_denominator=8)
BOXES = st.lists(st.tuples(SIDES, SIDES, st.integers(1, 30)), min_size=1, max_size=6)


@given(BOXES, st.fractions(8, 20, max_denominator=4))
def test_every_box_lies_on_the_web_and_over_no_other(
    kinds: list[tuple[Fraction, Fraction, int]], width: Fraction
) -> None:
    wanted = [
        (Traced(f"A{number}", across, down), times)
        for number, (across, down, times) in enumerate(kinds)
    ]
    shelves = shelved(wanted, width)
    found = [box for shelf in shelves for box in shelf.boxes()]
    assert Counter(box.letter for box in found) == {box.letter: times for box, times in wanted}
    assert all(box.x >= 0 and box.x + box.across <= width for box in found)
    for shelf in shelves:
        assert inside(shelf)
        lie = list(shelf.boxes())
        assert not any(over(one, other) for n, one in enumerate(lie) for other in lie[:n])
    assert [shelf.y for shelf in shelves] == [
        sum((one.down for one in shelves[:number]), F(0)) for number in range(len(shelves))
    ]


def inside(shelf: Shelf) -> bool:
    return all(
        shelf.y <= box.y and box.y + box.down <= shelf.y + shelf.down for box in shelf.boxes()
    )


def over(one: WebBox, other: WebBox) -> bool:
    across = one.x < other.x + other.across and other.x < one.x + one.across
    return across and one.y < other.y + other.down and other.y < one.y + one.down


# ---- the recount


@pytest.fixture
def sound(pattern: WritePattern) -> Evidence:
    evidence = examine(with_shapes(pattern, source()), "pattern.yaml").sizes["one"]
    assert list(proof.prove(evidence)) == []
    return evidence


def planted(evidence: Evidence, **changes: Any) -> set[str]:
    """What the recount tells of a web plan that is changed so."""
    plan: WebPlan = replace(evidence.cutting.webs["web"], **changes)
    cutting = replace(evidence.cutting, webs={"web": plan})
    return {one.code for one in proof.prove(replace(evidence, cutting=cutting))}


def test_the_recount_finds_a_box_too_few(sound: Evidence) -> None:
    boxes = sound.cutting.webs["web"].boxes
    assert "web-count" in planted(sound, boxes=boxes[1:])


def test_the_recount_finds_boxes_over_one_another(sound: Evidence) -> None:
    first, *others = sound.cutting.webs["web"].boxes
    assert "web-fit" in planted(sound, boxes=(first._replace(x=first.x + 1), *others))


def test_the_recount_finds_a_box_beside_the_web(sound: Evidence) -> None:
    assert "web-fit" in planted(sound, width=F(12))


def test_the_recount_finds_a_box_that_is_too_small(sound: Evidence) -> None:
    first, *others = sound.cutting.webs["web"].boxes
    smaller = first._replace(across=first.across - F(1, 8))
    assert "web-fit" in planted(sound, boxes=(smaller, *others))


def test_the_recount_finds_web_that_is_too_short(sound: Evidence) -> None:
    buy = sound.cutting.webs["web"].buy
    assert "cloth-short" in planted(sound, buy=replace(buy, amount=F(2)))
    assert "cloth-over" in planted(sound, buy=replace(buy, amount=F(9, 4)))
