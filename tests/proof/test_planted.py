"""Every recount finds the fault that is planted for it, and none in the demos."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from patternbook import proof
from patternbook.cutting.records import LabelPlan, Strip
from patternbook.exact import Exact
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import CutSize, LayoutMade, PiecedMade, Sides, Unit
from tests.proof.planting import (
    books,
    demo,
    in_cut,
    in_cutting,
    in_fabric,
    in_made,
    in_piece,
    in_quilt,
    in_step,
    in_strip,
    in_unit,
    moved,
    tea,
    wider,
)

EIGHTH = Fraction(1, 8)
LABEL = CutSize(Fraction(5), Fraction(3))  # cut with no hems
# The author's faults, which are tested with sources.
OF_THE_AUTHOR = {"one_way", "ruler", "again", "not_stated", "one_square", "round_point"}


@pytest.mark.parametrize("name", ["late-returns", "tea-at-four"])
def test_the_demos_pass_every_recount(name: str) -> None:
    sizes = tuple(demo(name).values())
    assert len(sizes) > 2
    assert [str(notice) for size in sizes for notice in proof.prove(size)] == []
    assert [str(notice) for check in proof.EVERY_SIZE for notice in check(sizes)] == []


def test_recounts_of_lengths_wait_until_these_hold() -> None:
    """A row that is too short has been told already; that it leaves a gap only follows."""
    gap = replace(tea(), patches=tea().patches[1:])
    assert "tiling-uncovered" in found(gap)
    assert "tiling-uncovered" not in found(replace(gap, sound=False))


def found(evidence: Evidence) -> set[str]:
    """The codes of all that the recounts tell."""
    return {notice.code for notice in proof.prove(evidence)}


def row_shifted() -> Evidence:
    """The first row of the top lies an eighth lower than the next begins."""

    def change(made: LayoutMade) -> LayoutMade:
        first = made.lines[0]
        parts = tuple(moved(part, down=EIGHTH) for part in first.parts)
        return replace(made, lines=(replace(first, parts=parts), *made.lines[1:]))

    return in_unit(tea(), "top", lambda unit: replace(unit, made=change(unit.made)))  # type: ignore[arg-type]


def part_higher() -> Evidence:
    """One sash stands an eighth over its neighbours in the row."""

    def change(made: LayoutMade) -> LayoutMade:
        line = made.lines[1]
        sash = line.parts[0]._replace(down=wider(line.parts[0].down))
        changed = replace(line, parts=(sash, *line.parts[1:]))
        return replace(made, lines=(made.lines[0], changed, *made.lines[2:]))

    return in_unit(tea(), "top", lambda unit: replace(unit, made=change(unit.made)))  # type: ignore[arg-type]


def border_longer(word: str) -> Evidence:
    made = tea().quilt.units["top"].made
    assert isinstance(made, LayoutMade)
    changes: dict[str, Any] = {word: wider(getattr(made.borders[0], word))}
    border = replace(made.borders[0], **changes)
    return in_made(tea(), "top", borders=(border,))


def part_missing() -> Evidence:
    return in_unit(tea(), "top", lambda unit: replace(unit, placed=unit.placed[1:]))


def part_of_another_size() -> Evidence:
    return in_unit(
        tea(),
        "cup",
        lambda unit: replace(unit, finished=Sides(unit.finished[0], unit.finished[1] + 1)),
    )


def measure_as_finished() -> Evidence:
    return in_unit(tea(), "cup", lambda unit: replace(unit, measure=unit.finished))


def patch_twice() -> Evidence:
    return replace(tea(), patches=(*tea().patches, tea().patches[0]))


def sewn_in_no_go(unit: Unit) -> Unit:
    """More of units with a method of their own is tested in test_pieced.py."""
    return replace(unit, made=PiecedMade("cup", 1, 0, (), (), None, (), 0, Exact(0)))


LENGTHS: dict[str, Callable[[], Evidence]] = {
    "seam-rows": row_shifted,
    "seam-edges": part_higher,
    "unit-filled": part_missing,
    "part-size": part_of_another_size,
    "quilt-size": lambda: in_quilt(
        tea(), finished=Sides(*map(wider, tea().quilt.units["top"].finished))
    ),
    "raw-size": measure_as_finished,
    "border-edge": lambda: border_longer("end_length"),
    "border-cut": lambda: in_cut(tea(), "F", lambda cut: replace(cut, along=cut.along - EIGHTH)),
    "tiling-overlap": patch_twice,
    "goes-count": lambda: in_unit(tea(), "cup", sewn_in_no_go),
    "part-missing": lambda: in_unit(
        tea(), "cup", lambda u: replace(u, placed=(u.placed[0]._replace(part="Z"), *u.placed[1:]))
    ),
}

COUNTS: dict[str, Callable[[], Evidence]] = {
    "sewn-count": lambda: in_piece(tea(), "S", count=tea().quilt.pieces["S"].count + 1),
    "cut-count": lambda: in_cut(tea(), "S", lambda cut: replace(cut, number=cut.number - 1)),
    "cut-fabric": lambda: in_piece(tea(), "S", fabric="milk"),
    "slices": lambda: in_made(tea(), "pair", sets=3),
    "slices-fit": lambda: in_made(tea(), "pair", per_set=12),
    "steps-count": lambda: replace(
        tea(), sewing=replace(tea().sewing, sewn={**tea().sewing.sewn, "S": 1})
    ),
    "steps-unit": lambda: in_step(tea(), "cup", {"unit": "jug"}),
    "steps-measure": lambda: in_step(tea(), "cup", {"measure": tea().quilt.units["cup"].finished}),
}

CLOTH: dict[str, Callable[[], Evidence]] = {
    "cuts-fit": lambda: in_cut(tea(), "T", lambda cut: replace(cut, number=3 * cut.number)),
    "cut-size": lambda: in_cut(tea(), "S", lambda cut: replace(cut, along=cut.along - EIGHTH)),
    "strip-count": lambda: in_strip(
        tea(), "S", lambda strip: replace(strip, times=strip.times + 1)
    ),
    "cloth-sum": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, buy=replace(plan.buy, lines=()))
    ),
    "cloth-short": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, buy=replace(plan.buy, amount=Fraction(1)))
    ),
    "cloth-over": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, buy=replace(plan.buy, amount=Fraction(9)))
    ),
    "pack-count": lambda: in_strip(
        books(), "A", lambda strip: replace(strip, times=strip.times + 40)
    ),
    "cut-outside": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, length=plan.length - EIGHTH)
    ),
    "cut-steps": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, steps=plan.steps[:-1])
    ),
    "cut-ruler": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, steps=(replace(plan.steps[0], rulers=()),))
    ),
    "bound-told": lambda: in_fabric(
        tea(), "linen", lambda plan: replace(plan, bound=plan.length + EIGHTH)
    ),
    "one-source": lambda: in_cutting(tea(), yields={**tea().cutting.yields, "S": 1}),
}

LAYERS: dict[str, Callable[[], Evidence]] = {
    "binding-sum": lambda: with_binding(strips=tea().cutting.binding.strips - 1),  # type: ignore[union-attr]
    "backing-sum": lambda: with_backing_panels(panels=1),
    "batting-sum": lambda: with_batting(CutSize(Fraction(45), Fraction(60))),
    "label-sum": lambda: in_cutting(tea(), label=LabelPlan(LABEL, LABEL, None, (), (), 0)),
}


def with_binding(**changes: Any) -> Evidence:
    binding = tea().cutting.binding
    assert binding is not None
    return in_cutting(tea(), binding=replace(binding, **changes))


def with_backing_panels(**changes: Any) -> Evidence:
    backing = tea().cutting.backing
    assert backing is not None
    best = replace(backing.best, **changes)
    return in_cutting(tea(), backing=replace(backing, best=best))


def with_batting(pack: CutSize) -> Evidence:
    batting = tea().cutting.batting
    assert batting is not None
    return in_cutting(tea(), batting=replace(batting, pack=pack))


def with_web(box: int) -> Evidence:
    """Appliqué whose first boxes are left out, or the first one laid upon the second."""
    pears = demo("pear-thief")["throw"]
    plan = pears.cutting.webs["web"]
    first, second, *others = plan.boxes
    upon = (first._replace(x=second.x), second, *others)
    return in_cutting(pears, webs={"web": replace(plan, boxes=plan.boxes[box:] if box else upon)})


WEB: dict[str, Callable[[], Evidence]] = {
    "web-count": lambda: with_web(1),
    "web-fit": lambda: with_web(0),
}

PLANTED = {**LENGTHS, **COUNTS, **CLOTH, **LAYERS, **WEB}


@pytest.mark.parametrize("code", PLANTED)
def test_a_planted_fault_is_found(code: str) -> None:
    told = [notice for notice in proof.prove(PLANTED[code]()) if notice.code == code]
    assert told
    assert all(notice.severity == "error" and notice.sizes == ("throw",) for notice in told)
    assert all(notice.rule and notice.hint for notice in told)


def test_the_binding_counts_its_joins() -> None:
    """274 in ÷ 40 are 7 strips; what diagonal joins take makes it 8, and 7 are refused."""
    sound = tea().cutting.binding
    assert sound is not None
    assert sound.strips == 8
    told = [str(one) for one in proof.prove(with_binding(strips=7, least=7))]
    assert any("274 takes 8 strips of 40, 2½ lost at each join" in one for one in told)


def test_a_join_takes_its_part_of_the_strip() -> None:
    def longer(strip: Strip) -> Strip:
        assert strip.join is not None
        return replace(strip, join=replace(strip.join, length=strip.join.length + 1))

    assert "cuts-fit" in found(in_strip(tea(), "F", longer))


def test_every_recount_has_a_fault_planted_for_it() -> None:
    """A new check brings its own."""
    checks = {check.__name__ for check in (*proof.LENGTHS, *proof.CHECKS)}
    told = {
        check.__name__
        for plant in PLANTED.values()
        for evidence in [plant()]
        for check in (*proof.LENGTHS, *proof.CHECKS)
        if next(check(evidence), None) is not None
    }
    assert checks - told <= OF_THE_AUTHOR
