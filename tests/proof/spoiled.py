"""Cutting plans of all patterns in every style, and ways to spoil one of them."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from patternbook.cutting.as_laid import as_laid
from patternbook.cutting.plan import plan
from patternbook.cutting.records import BINDING, Cut, FabricPlan, Ruler, Strip, Style
from patternbook.edition.pipeline import examine
from patternbook.proof.evidence import Evidence
from patternbook.proof.fits import fits
from patternbook.proof.least import least
from patternbook.proof.replay import replay
from patternbook.quilt.records import Quilt
from patternbook.sewing.plan import plan as plan_sewing
from tests.support import ROOT

EIGHTH = Fraction(1, 8)
# Shared and thrifty cutting take some 30 ms a size: these have every kind of strip.
PLANNED = ("late-returns", "tea-at-four", "learned-by-spring", "wash-house-tiles", "pear-thief")


class Case(NamedTuple):
    """One fabric of one size, to be spoiled."""

    name: str
    evidence: Evidence
    plan: FabricPlan

    def with_plan(self, plan: FabricPlan) -> Evidence:
        """The size with this fabric cut otherwise."""
        fabrics = {**self.evidence.cutting.fabrics, plan.fabric: plan}
        return replace(self.evidence, cutting=replace(self.evidence.cutting, fabrics=fabrics))


def evidence_of(quilt: Quilt, style: Style = "plain") -> Evidence:
    """A size cut in this style; nothing of it is placed."""
    asked = replace(quilt, settings=replace(quilt.settings, cutting=style))
    cutting, _ = plan(asked, full=style != "plain")
    asked = as_laid(asked, cutting)
    sewing, _ = plan_sewing(asked)
    return Evidence(asked, (), cutting, sewing)


@cache
def sizes(path: Path) -> Mapping[str, Evidence]:
    """All sizes of a pattern as it stands."""
    return examine(path, "pattern.yaml").sizes


@cache
def cases(style: Style) -> tuple[Case, ...]:
    """Every fabric that something is cut from."""
    found = []
    for path in sorted((ROOT / "patterns").glob("*/pattern.yaml")):
        if style != "plain" and path.parent.name not in PLANNED:
            continue
        for size, sound in sizes(path).items():
            evidence = sound if style == "plain" else evidence_of(sound.quilt, style)
            for name, made in evidence.cutting.fabrics.items():
                if made.strips:
                    found.append(Case(f"{path.parent.name}-{size}-{name}", evidence, made))
    return tuple(found)


def codes(evidence: Evidence) -> set[str]:
    """What the recounts of the cutting tell."""
    return {one.code for check in (fits, replay, least) for one in check(evidence)}


# ---- spoilers: each gives the plan with one fault, or None where it has no place for it


def of_strip(plan: FabricPlan, change: Callable[[Strip], Strip | None]) -> FabricPlan | None:
    """The first strip that the change has a place for, changed."""
    for at, strip in enumerate(plan.strips):
        changed = change(strip)
        if changed is not None:
            return replace(plan, strips=(*plan.strips[:at], changed, *plan.strips[at + 1 :]))
    return None


def of_cut(plan: FabricPlan, change: Callable[[Strip, Cut], Cut | None]) -> FabricPlan | None:
    """The first cut that the change has a place for, changed."""

    def of_one(strip: Strip) -> Strip | None:
        for at, cut in enumerate(strip.cuts):
            changed = change(strip, cut)
            if changed is not None:
                return replace(strip, cuts=(*strip.cuts[:at], changed, *strip.cuts[at + 1 :]))
        return None

    return of_strip(plan, of_one)


def one_strip_fewer(case: Case) -> FabricPlan | None:
    return of_strip(case.plan, lambda one: replace(one, times=one.times - 1))


def one_strip_more(case: Case) -> FabricPlan | None:
    return of_strip(case.plan, lambda one: replace(one, times=one.times + 1))


def strip_wider(case: Case) -> FabricPlan | None:
    return of_strip(case.plan, lambda one: replace(one, width=one.width + EIGHTH))


def strip_longer(case: Case) -> FabricPlan | None:
    return of_strip(case.plan, lambda one: replace(one, length=case.plan.width + EIGHTH))


def piece_longer(case: Case) -> FabricPlan | None:
    def longer(_: Strip, cut: Cut) -> Cut | None:
        patch = cut.letter != BINDING and not cut.whole
        return replace(cut, along=cut.along + EIGHTH) if patch else None

    return of_cut(case.plan, longer)


def piece_wider(case: Case) -> FabricPlan | None:
    return of_cut(case.plan, lambda one, cut: replace(cut, across=one.width + EIGHTH))


def piece_more(case: Case) -> FabricPlan | None:
    def more(_: Strip, cut: Cut) -> Cut | None:
        return replace(cut, number=cut.number + 1) if cut.letter != BINDING else None

    return of_cut(case.plan, more)


def piece_past_the_end(case: Case) -> FabricPlan | None:
    """The last cut of a strip has one column more than there is room for."""

    def more(strip: Strip) -> Strip | None:
        if not strip.cuts:
            return None
        *before, last = strip.cuts
        room = int(strip.left // last.along) + 1
        longer = replace(last, number=(last.columns + room) * last.lanes, above=())
        return replace(strip, cuts=(*before, longer))

    return of_strip(case.plan, more)


def piece_over_the_edge(case: Case) -> FabricPlan | None:
    """A cut is stacked once higher than the strip is wide."""

    def higher(strip: Strip, cut: Cut) -> Cut | None:
        lanes = int(strip.width // cut.across) + 1
        return replace(cut, lanes=lanes, number=cut.columns * lanes)

    return of_cut(case.plan, higher)


def letter_swapped(case: Case) -> FabricPlan | None:
    pieces = case.evidence.quilt.pieces.values()

    def swapped(_: Strip, cut: Cut) -> Cut | None:
        mine = case.evidence.quilt.pieces.get(cut.letter)
        others = [one for one in pieces if mine and one.cut != mine.cut]
        return replace(cut, letter=others[0].letter) if others else None

    return of_cut(case.plan, swapped)


def without_step(kind: str) -> Callable[[Case], FabricPlan | None]:
    """The last step of a kind is left out and the others are numbered anew."""

    def dropped(case: Case) -> FabricPlan | None:
        steps = list(case.plan.steps)
        at = next((n for n in range(len(steps) - 1, -1, -1) if steps[n].kind == kind), None)
        if at is None or _as_it_is(case, steps.pop(at).letters):
            return None
        numbered = (replace(step, order=n) for n, step in enumerate(steps, start=1))
        return replace(case.plan, steps=tuple(numbered))

    return dropped


def _as_it_is(case: Case, letters: tuple[str, ...]) -> bool:
    """Pieces as long as their strip may come about with no cut of their own, and bias binding."""
    cuts = [(s, c) for s in case.plan.strips for c in s.cuts if c.letter in letters]
    full = all(cut.along == strip.length and not strip.join for strip, cut in cuts)
    return BINDING in letters or (full and bool(cuts))


def of_step(case: Case, kind: str, **changes: Any) -> FabricPlan | None:
    """The first step of a kind, changed."""
    steps = case.plan.steps
    at = next((n for n, step in enumerate(steps) if step.kind == kind), None)
    if at is None:
        return None
    changed = replace(steps[at], **changes)
    return replace(case.plan, steps=(*steps[:at], changed, *steps[at + 1 :]))


def step_counted_short(case: Case) -> FabricPlan | None:
    first = next((step for step in case.plan.steps if step.kind == "strip"), None)
    return of_step(case, "strip", times=first.times - 1) if first else None


def sub_cut_counted_over(case: Case) -> FabricPlan | None:
    first = next((step for step in case.plan.steps if step.kind == "subcut"), None)
    wound = first is None or first.letters == (BINDING,)
    return of_step(case, "subcut", total=first.total + 1) if first and not wound else None


def short_ruler(kind: str) -> Callable[[Case], FabricPlan | None]:
    return lambda case: of_step(case, kind, rulers=(Ruler(Fraction(1), Fraction(1)),))


def small_mat(case: Case) -> FabricPlan | None:
    return of_step(case, "strip", mat=Ruler(Fraction(1), Fraction(2)))


def wrong_measure(case: Case) -> FabricPlan | None:
    first = next((step for step in case.plan.steps if step.kind == "strip"), None)
    measure = first.measure if first else None
    return of_step(case, "strip", measure=measure - EIGHTH) if measure else None


def folded_in_vain(case: Case) -> FabricPlan | None:
    """Laid to half the width, where nobody folded the cloth for it."""
    first = next((step for step in case.plan.steps if step.kind == "strip"), None)
    measure = first.measure if first else None
    return of_step(case, "strip", measure=measure / 2) if measure else None


def steps_turned_round(case: Case) -> FabricPlan | None:
    """Sub-cuts before the strips that they are cut from."""
    kinds = {step.kind for step in case.plan.steps}
    if not {"strip", "trim"} <= kinds:
        return None
    steps = tuple(
        replace(step, order=n) for n, step in enumerate(reversed(case.plan.steps), start=1)
    )
    return replace(case.plan, steps=steps)


def told_shorter(case: Case) -> FabricPlan | None:
    on_bolt = case.plan.form in ("yardage", "wide backing")
    length = case.plan.length - EIGHTH
    return replace(case.plan, length=length, bound=length) if on_bolt else None


class Spoiler(NamedTuple):
    """A fault, and the codes of which one at least must be told."""

    spoil: Callable[[Case], FabricPlan | None]
    told: set[str]


SPOILERS: Mapping[str, Spoiler] = {
    "one strip fewer": Spoiler(one_strip_fewer, {"cut-count", "cut-outside"}),
    "one strip more": Spoiler(one_strip_more, {"cut-count", "cut-outside", "cuts-fit"}),
    "a strip wider": Spoiler(strip_wider, {"cut-outside"}),
    "a strip longer than the cloth": Spoiler(strip_longer, {"cut-outside"}),
    "a piece longer": Spoiler(piece_longer, {"cut-steps"}),
    "a piece wider than its strip": Spoiler(piece_wider, {"cut-outside"}),
    "one piece more": Spoiler(piece_more, {"cut-count"}),
    "a piece past the end": Spoiler(piece_past_the_end, {"cut-outside"}),
    "a piece over the edge": Spoiler(piece_over_the_edge, {"cut-outside"}),
    "a letter swapped": Spoiler(letter_swapped, {"cut-count"}),
    "the strips never cut": Spoiler(without_step("strip"), {"cut-steps"}),
    "a sub-cut never made": Spoiler(without_step("subcut"), {"cut-steps"}),
    "squares left whole": Spoiler(without_step("diagonal"), {"cut-steps"}),
    "a strip fewer in the steps": Spoiler(step_counted_short, {"cut-steps"}),
    "a piece more in the steps": Spoiler(sub_cut_counted_over, {"cut-steps"}),
    "steps turned round": Spoiler(steps_turned_round, {"cut-steps"}),
    "a short ruler for the strips": Spoiler(short_ruler("strip"), {"cut-ruler"}),
    "a short ruler for the edge": Spoiler(short_ruler("straighten"), {"cut-ruler"}),
    "a short ruler for a sub-cut": Spoiler(short_ruler("subcut"), {"cut-ruler"}),
    "a small mat": Spoiler(small_mat, {"cut-ruler"}),
    "another measure": Spoiler(wrong_measure, {"cut-ruler"}),
    "a fold that is not there": Spoiler(folded_in_vain, {"cut-ruler"}),
    "less cloth told than is cut": Spoiler(told_shorter, {"cut-outside"}),
}


def spoiled(name: str, style: Style) -> Iterator[tuple[str, Evidence]]:
    """Every fabric that has a place for the fault, with the fault."""
    for case in cases(style):
        plan = SPOILERS[name].spoil(case)
        if plan is not None:
            yield case.name, case.with_plan(plan)
