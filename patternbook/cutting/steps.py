"""The actions at the cutting table, in order: edge, strips (widest first), ends, sub-cuts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from typing import Literal

from patternbook.cutting.cloth import Cloth, form_of
from patternbook.cutting.records import BINDING, Cut, CutStep, LetterPlan, Strip
from patternbook.cutting.tools import (
    LAYERS,
    MOST_FOLDS,
    TABLES,
    Handling,
    edge_folds,
    folds_for,
    for_strip,
    for_subcut,
    mat_for,
)
from patternbook.forms.form import ClothForm
from patternbook.inch import System
from patternbook.quilt.records import Quilt


@dataclass(frozen=True)
class Alike:
    """Strips of one size, in one direction, and the cloth that they come from."""

    cloth: Cloth
    system: System
    strips: tuple[Strip, ...]

    @property
    def form(self) -> ClothForm:
        """What the cloth is bought as."""
        return form_of(self.cloth.fabric)

    @property
    def width(self) -> Fraction:
        """How wide they are."""
        return self.strips[0].width

    @property
    def run(self) -> Fraction:
        """How long each of them is: less than the cloth is wide beside lengthwise pieces."""
        return self.strips[0].length

    @property
    def lengthwise(self) -> bool:
        """Whether they are lengths of the cloth."""
        return self.strips[0].along == "length"

    @property
    def used(self) -> tuple[Strip, ...]:
        """Those that something is cut from."""
        return tuple(strip for strip in self.strips if strip.cuts)

    @property
    def letters(self) -> tuple[str, ...]:
        """All letters that are cut from them."""
        return tuple(dict.fromkeys(letter for strip in self.strips for letter in strip.letters))


def cut_steps(
    quilt: Quilt, cloth: Cloth, strips: Sequence[Strip], letters: Sequence[LetterPlan]
) -> tuple[CutStep, ...]:
    """What is done with one fabric, computed from its strips and pieces."""
    steps: list[CutStep] = []
    if strips and form_of(cloth.fabric).sold == "by length":
        steps.append(_straighten(quilt, cloth))
    for _, alike in groupby(strips, key=lambda strip: (strip.along, strip.width, strip.length)):
        steps += _of_strips(Alike(cloth, quilt.system, tuple(alike)))
    steps += (_diagonal(plan) for plan in letters if plan.each > 1)
    return tuple(replace(step, order=order) for order, step in enumerate(steps, start=1))


def _straighten(quilt: Quilt, cloth: Cloth) -> CutStep:
    folds = folds_for(cloth.run, quilt.system)
    return CutStep(
        0,
        "straighten",
        (),
        width=quilt.settings.straightening,
        layers=2**folds,
        folds=folds,
        rulers=(TABLES[quilt.system.unit].long_ruler,),
        mat=mat_for(cloth.run / 2**folds, Fraction(0), quilt.system),
        reason="edge",
    )


def _of_strips(alike: Alike) -> Iterator[CutStep]:
    """The strips themselves, their selvedge ends, their joins, then the sub-cuts."""
    ready = alike.form.strips or alike.width == alike.cloth.deep
    if not ready:
        yield _strip(alike)
    if not alike.used:
        return
    if not alike.lengthwise and alike.form.selvedges:
        yield _trim(alike)
    for strip in alike.used:
        if strip.join:
            yield CutStep(
                0, "join", strip.letters, width=strip.width, length=strip.run, times=strip.times
            )
    yield from _subcuts(alike)


def _strip(alike: Alike) -> CutStep:
    ready = alike.form.pieces and not edge_folds(alike.run, alike.system)
    folds = 0 if ready else folds_for(alike.run, alike.system)
    handled = for_strip(alike.width, alike.system)
    taped = folds + handled.folds > MOST_FOLDS  # too thick to be folded so often
    if alike.lengthwise or taped:  # measured once, off the bolt
        handled = Handling(alike.width, 0, (TABLES[alike.system.unit].long_ruler,))
    return CutStep(
        0,
        "strip",
        alike.letters,
        width=alike.width,
        length=alike.run,
        times=sum(strip.times for strip in alike.strips),
        layers=2 ** (folds + handled.folds),
        folds=folds + handled.folds,
        measure=handled.measure,
        on_fold=handled.folds > 0,
        rulers=handled.rulers,
        mat=mat_for(alike.run / 2**folds, handled.measure, alike.system),
        reason="long" if alike.lengthwise else "taped" if taped else _reason(handled),
    )


def _reason(handled: Handling) -> Literal["wide", "usual"]:
    return "wide" if len(handled.rulers) > 1 else "usual"


def _trim(alike: Alike) -> CutStep:
    number = sum(strip.times for strip in alike.used)
    layers, folds = stacked(number, in_half=all(folded(alike.form, one) for one in alike.used))
    edges = edge_folds(alike.width, alike.system)
    if edges:
        layers, folds = 2**edges, edges
    wide = alike.width / 2**edges
    return CutStep(
        0,
        "trim",
        alike.letters,
        width=alike.width,
        times=number,
        layers=layers,
        folds=folds,
        rulers=for_subcut(Fraction(0), wide, alike.system).rulers,
        mat=mat_for(Fraction(0), wide, alike.system),
        reason="stack" if number > 1 else "usual",
    )


def stacked(strips: int, *, in_half: bool) -> tuple[int, int]:
    """Layers and folds for a sub-cut: strips lie in up to four layers, folded or open."""
    folds = 1 if in_half else 0
    return min(LAYERS, strips * 2**folds), folds


def folded(form: ClothForm, strip: Strip) -> bool:
    """Whether a strip may stay folded in half while it is cut: two pieces come off at a time,
    and half of every kind has room between an end and the fold, so that none lies over it."""
    if strip.along == "length" or strip.join or strip.beside or form.pieces:
        return False
    halves = (-(-cut.columns // 2) * cut.along for cut in strip.cuts)
    in_pairs = bool(strip.cuts) and all(cut.columns > 1 for cut in strip.cuts)
    return in_pairs and 2 * sum(halves, Fraction(0)) <= strip.length


def _subcuts(alike: Alike) -> Iterator[CutStep]:
    """One step a letter and length, the longest first; strips sewn whole are not cut."""
    found: dict[tuple[str, Fraction, Fraction], list[tuple[Strip, Cut]]] = {}
    for strip in alike.used:
        for cut in (one for column in strip.cuts for one in column.stacked):
            ready = cut.whole or (alike.cloth.deep and cut.along == strip.run)
            wound = cut.letter == BINDING and cut.along != alike.width
            if not ready and not wound:
                key = (cut.letter, cut.along, cut.across)
                found.setdefault(key, []).append((strip, cut))
    for same in sorted(found.values(), key=lambda pairs: -pairs[0][1].along):
        yield _subcut(alike, same)


def _subcut(alike: Alike, same: Sequence[tuple[Strip, Cut]]) -> CutStep:
    (first, cut), system = same[0], alike.system
    times = sum(1 if strip.join else strip.times for strip, _ in same)
    in_half = all(folded(alike.form, strip) for strip, _ in same)
    handled, layers, folds = _lies(alike, first, cut, times, in_half=in_half)
    return CutStep(
        0,
        "subcut",
        (cut.letter,),
        width=alike.width,
        length=cut.along,
        times=times,
        per_strip=max(one.number for _, one in same),
        total=sum(one.number * (1 if strip.join else strip.times) for strip, one in same),
        across=cut.across if cut.across != alike.width else None,
        layers=layers,
        folds=folds,
        measure=handled.measure,
        on_fold=handled.folds > 0 and not alike.lengthwise,
        rulers=handled.rulers,
        mat=mat_for(_crossed(alike, folds), handled.measure, system),
        reason=_reason_of(alike, handled, layers),
    )


def _reason_of(
    alike: Alike, handled: Handling, layers: int
) -> Literal["long", "taped", "stack", "one by one"]:
    if alike.lengthwise:
        return "long"
    if handled.measure > sum(max(ruler) for ruler in handled.rulers):
        return "taped"  # farther from the edge than the rulers reach
    return "stack" if layers > 1 else "one by one"


def _lies(
    alike: Alike, strip: Strip, cut: Cut, times: int, *, in_half: bool
) -> tuple[Handling, int, int]:
    """How strips lie for a sub-cut: lengths of cloth folded with parallel edges till the ruler
    crosses them (what is wider than the rulers is measured with a tape), long pieces folded under
    it, all others stacked."""
    if alike.lengthwise:
        folds, handled = folds_for(alike.width, alike.system), for_strip(cut.along, alike.system)
        if handled.folds:
            handled = Handling(cut.along, 0, (TABLES[alike.system.unit].long_ruler,))
        return handled, 2**folds, folds
    edges = edge_folds(alike.width, alike.system)
    handled = for_subcut(cut.along, alike.width / 2**edges, alike.system)
    if edges + handled.folds > MOST_FOLDS:
        handled = Handling(cut.along, 0, (TABLES[alike.system.unit].long_ruler,))
    if edges:
        return handled, 2 ** (edges + handled.folds), edges + handled.folds
    if strip.join or handled.folds:
        return handled, 2**handled.folds, handled.folds
    return handled, *stacked(times, in_half=in_half)


def _crossed(alike: Alike, folds: int) -> Fraction:
    """How much cloth lies along the ruler."""
    edges = folds if alike.lengthwise else edge_folds(alike.width, alike.system)
    return Fraction(alike.width, 2**edges)


def _diagonal(plan: LetterPlan) -> CutStep:
    return CutStep(
        0,
        "diagonal",
        (plan.letter,),
        width=plan.strip_width,
        length=plan.along,
        times=plan.cuts,
        per_strip=plan.each,
        total=plan.yields,
    )
