"""Every strip and every piece of the plan comes about in the steps, as often, and in an order in
which a strip is there before it is cut up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from patternbook.cutting.records import BINDING, CutStep
from patternbook.notice import Notice
from patternbook.proof.double_entry import EACH
from patternbook.proof.recounted import part_place, recounted, shown
from patternbook.proof.replay.lay import Replayed

Widths = Counter[tuple[Fraction, Fraction]]
Pieces = Counter[tuple[str, Fraction]]


def in_steps(cloth: Replayed) -> Iterator[Notice]:
    """Errors where the steps leave out, add or count otherwise what the plan lays."""
    yield from _strips(cloth)
    yield from _pieces(cloth)
    yield from _order(cloth)
    yield from _diagonals(cloth)


def _strips(cloth: Replayed) -> Iterator[Notice]:
    """Strips of each width and length; those that come so wide ready cut need no step."""
    done: Widths = Counter()
    for step in cloth.plan.steps:
        if step.kind == "strip" and step.width is not None and step.length is not None:
            done[step.width, step.length] += step.times
    laid: Widths = Counter()
    for strip in cloth.plan.strips:
        laid[strip.width, strip.length] += strip.times
    ready = _ready(cloth)
    for size in (*laid, *(size for size in done if size not in laid)):
        if not laid[size] - ready[size] <= done[size] <= laid[size]:
            wide, long = (shown(side, cloth.quilt) for side in size)
            message = (
                f"{cloth.plan.fabric}: {laid[size]} strips {wide} wide and {long} long are laid "
                f"out, the steps cut {done[size]}."
            )
            yield recounted(cloth.quilt, "cut-steps", "R20", message)


def _ready(cloth: Replayed) -> Widths:
    """Strips of a roll, and pre-cut pieces that are one strip each."""
    ready: Widths = Counter()
    if cloth.plan.form == "strip roll":
        for strip in cloth.plan.strips:
            ready[strip.width, strip.length] += strip.times
    for sheet in cloth.plan.sheets:
        deep = sheet.across if sheet.turned else sheet.down
        for row in sheet.rows:
            strip = cloth.plan.strips[row.strip]
            if strip.width == deep:
                ready[strip.width, strip.length] += row.times * sheet.times
    return ready


def _pieces(cloth: Replayed) -> Iterator[Notice]:
    """Pieces of each letter and length. What is as long as its strip may need no cut, what is
    sewn whole has none, and the binding is sewn on as long as it is."""
    done: Pieces = Counter()
    for step in cloth.plan.steps:
        if step.kind == "subcut" and step.length is not None and step.letters != (BINDING,):
            for letter in step.letters:
                done[letter, step.length] += step.total
    laid: Pieces = Counter()
    as_long: Pieces = Counter()
    for strip in cloth.plan.strips:
        copies = 1 if strip.join else strip.times
        for one in (one for cut in strip.cuts for one in cut.stacked):
            if one.letter != BINDING and not one.whole:
                laid[one.letter, one.along] += one.number * copies
                if one.along == strip.length and not strip.join:
                    as_long[one.letter, one.along] += one.number * copies
    for key in (*laid, *(key for key in done if key not in laid)):
        letter, long = key
        if not laid[key] - as_long[key] <= done[key] <= laid[key]:
            message = (
                f"{letter}: {laid[key]} pieces {shown(long, cloth.quilt)} along their strips are "
                f"laid out, the steps cut {done[key]}."
            )
            place = part_place(cloth.quilt, letter)
            yield recounted(cloth.quilt, "cut-steps", "R20", message, place)


def _order(cloth: Replayed) -> Iterator[Notice]:
    """Numbered one after the other; no strip is trimmed, joined or cut up before it is cut."""
    steps = cloth.plan.steps
    strips_cut = {step.width for step in steps if step.kind == "strip"}
    seen: set[Fraction | None] = set()
    for number, step in enumerate(steps, start=1):
        early = step.kind in ("trim", "join", "subcut") and step.width in strips_cut - seen
        if step.order != number or early:
            message = (
                f"{cloth.plan.fabric}: the step numbered {step.order} is the {number}. of its cuts"
                f"{', and its strips are not cut yet' if early else ''}."
            )
            yield recounted(cloth.quilt, "cut-steps", "R20", message)
            return
        if step.kind == "strip":
            seen.add(step.width)


def _diagonals(cloth: Replayed) -> Iterator[Notice]:
    """Every square that is cut on the diagonal, once: none is left whole."""
    done = {
        letter: step
        for step in cloth.plan.steps
        if step.kind == "diagonal"
        for letter in step.letters
    }
    off: Counter[str] = Counter()
    for lain in cloth.strips:
        for one in lain.pieces:
            off[one.letter] += lain.copies
    for letter, squares in off.items():
        piece = cloth.quilt.pieces.get(letter)
        each = EACH[piece.diagonal] if piece else 1
        step = done.pop(letter, None)
        right = step is None if each == 1 else step is not None and _all(step, squares, each)
        if not right:
            message = (
                f"{letter}: {squares} come off the cloth, each to be cut into {each}; the steps "
                f"cut {step.times if step else 0} on the diagonal."
            )
            yield recounted(
                cloth.quilt, "cut-steps", "R20", message, part_place(cloth.quilt, letter)
            )


def _all(step: CutStep, squares: int, each: int) -> bool:
    return (step.times, step.per_strip, step.total) == (squares, each, squares * each)
