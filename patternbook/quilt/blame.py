"""Which number a contradiction is blamed on, by which rule, and what else would do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from patternbook.exact import Exact
from patternbook.inch import INCHES
from patternbook.methods.world import here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Edit, Mark, Notice
from patternbook.quilt.alternatives import Change, near_enough
from patternbook.quilt.checks import Check, Stated
from patternbook.quilt.parts import TOP
from patternbook.quilt.read_out import typed
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.written_at import SIDES, edit

# The whole of a block made of logs is what its rounds come to.
LOGS: Final = frozenset({"log cabin", "courthouse steps"})
# What printed patterns round a quilt's size to.
ROUND: Final = ((Fraction(1, 2), Fraction(1, 4)), (Fraction(1, 8),))
# The lines of so many other numbers are shown; the hint names them all.
NAMED: Final = 2
# With fewer pieces than this a sum without its seams is a slip of the sum, not of the label.
MANY: Final = 4


def mend_named(
    notice: Notice, changes: Sequence[Change], checks: Sequence[Check], resolver: Resolver
) -> Notice:
    """The notice with every change that would mend it. The likeliest is blamed: it is the first
    mark, and its number is what is needed."""
    if not changes:
        return notice
    check = checks[0]
    best, *others = changes
    sure = _surely(best, others, check)
    edits = (
        best.edit(resolver, sure=sure),
        *(one.edit(resolver, sure=False) for one in others),
        *_rounder(best, checks, resolver),
    )
    told = replace(notice, edits=edits, hint=_hint(changes, check, resolver))
    or_these = [Mark(one.place, "or this number") for one in others[:NAMED]]
    if check.stated is not None and best.key == check.stated.key:
        return replace(told, marks=_each_once([*notice.marks, *or_these]))
    if not sure and not best.odd:
        return replace(told, marks=_each_once([*notice.marks, Mark(best.place, "or this number")]))
    blamed = Mark(best.place, "the number to blame" if sure else "this number, or another")
    return replace(
        told,
        marks=_each_once([blamed, *or_these, *notice.marks]),
        rule=_sum_rule(check, resolver),
        stated=typed(best.old, resolver),
        needed=typed(best.new, resolver),
    )


def _rounder(best: Change, checks: Sequence[Check], resolver: Resolver) -> Iterator[Edit]:
    """Where no ruler shows the sum, as printed patterns have it: to a half, or to a quarter; and
    to the nearest eighth."""
    if best.key[-1] not in SIDES or resolver.system is not INCHES:
        return
    found = (_rounded(best, checks, resolver, steps) for steps in ROUND)
    for numbers in [one for one in found if one != best.numbers]:
        yield edit(best.value, numbers, resolver.system, sure=False)


def _rounded(
    best: Change, checks: Sequence[Check], resolver: Resolver, steps: Sequence[Fraction]
) -> Mapping[str, Exact]:
    """Its numbers, each to the first of these steps that is less than an eighth off."""
    numbers = dict(best.numbers)
    for check in checks:
        stated, value = check.stated, resolver.known(check.one.sum())
        if stated is None or stated.key[:-1] != best.key[:-1] or value is None:
            return best.numbers
        nearest = [Exact((value + step / 2).down(step)) for step in steps]
        close = [one for one in nearest if abs(one - value) < resolver.system.step]
        if near_enough(check) and close:
            numbers[stated.key[-1]] = close[0]
    return numbers


def one_cause(notices: Sequence[Notice]) -> Iterator[Notice]:
    """The notices, but of one kind that one number mends only the first, which says so."""
    groups: dict[object, list[Notice]] = {}
    for number, notice in enumerate(notices):
        mend = notice.mend
        blamed = mend is not None and mend.place == notice.marks[0].place
        key = (notice.code, notice.rule, mend) if blamed else number
        groups.setdefault(key, []).append(notice)
    for first, *rest in groups.values():
        if rest:
            sums = "1 more sum" if len(rest) == 1 else f"{len(rest)} more sums"
            message = f"{first.message} The same number mends {sums} of this kind."
            yield replace(first, message=message)
        else:
            yield first


def _each_once(marks: Sequence[Mark]) -> tuple[Mark, ...]:
    return tuple({mark.place: mark for mark in reversed(marks)}.values())[::-1]


def _surely(best: Change, others: Sequence[Change], check: Check) -> bool:
    """Whether there is one number to blame: the stated figure, or one that is the only one or
    mends more than any other would, and lies in the odd sum or in several."""
    if (best.odd or best.facts > 1) and (
        not others or best.facts > max(one.facts for one in others)
    ):
        return True
    return check.stated is not None and best.key == check.stated.key


def _hint(changes: Sequence[Change], check: Check, resolver: Resolver) -> str:
    """`Write 14 1/2 x 15, or cut B 7 1/2 x 15, or A 8 1/2 x 15.`"""
    told, before = [], ""
    for change in changes:
        word, what = change.told(resolver)
        if check.stated is not None and change.key[:-1] == check.stated.key[:-1]:
            what = change.edit(resolver, sure=False).new
        told.append(what if word == before else f"{word} {what}")
        before = word
    if len(told) == 1 and check.stated is not None:
        told.append("leave it out and it is worked out")
    hint = ", or ".join(told)
    return f"{hint[0].upper()}{hint[1:]}."


# ---- the rule


def rule_of(check: Check, resolver: Resolver) -> str:
    """What a unit is said to measure or finish is held by R12 where the one was taken for the
    other or cut sizes for finished ones; else by the sum of pieces (R1) or of blocks (R8)."""
    stated = check.stated
    if stated is None:
        return _between_parts(check, resolver)
    if stated.rule.code not in ("unit-measure", "unit-finished", "finished-size"):
        return check.rule.rule
    unit = resolver.units[TOP if stated.rule.code == "finished-size" else stated.key[1]]
    return "R12" if _labels_mixed(check, stated, unit, resolver) else _sum_rule(check, resolver)


def _sum_rule(check: Check, resolver: Resolver) -> str:
    """The rule where a piece is to blame, or a figure that is no other figure's label."""
    stated = check.stated
    if stated is None:
        return _between_parts(check, resolver)
    if stated.rule.code != "unit-measure":
        return check.rule.rule
    blocks = any(term.label in resolver.units for term in check.one.terms)
    return "R8" if blocks or resolver.units[stated.key[1]].method in LOGS else "R1"


def _between_parts(check: Check, resolver: Resolver) -> str:
    """Rows of pieces are seam sums; rows of blocks, and like parts side by side, are a grid."""
    labels = [term.label for tally in (check.one, check.other) for term in tally.terms]
    blocks = any(label in resolver.units for label in labels)
    if check.rule.code == "row-height" and blocks:
        return "R8"
    if check.rule.code == "row-length" and not blocks and len(check.one.terms) > 1:
        return "R1"
    return check.rule.rule


def _labels_mixed(check: Check, stated: Stated, unit: WrittenMade, resolver: Resolver) -> bool:
    """Whether the figure is what it finishes instead of what it measures, or the other way, or
    its many pieces as they are cut, end to end; or the unit's two figures are at odds."""
    seams = resolver.length(resolver.seam) * 2
    more = Exact(0) - check.off()
    measured = stated.rule.code == "unit-measure"
    pieces = sum(term.times for term in check.one.terms if term.label != "seam")
    # A short row said to finish too much is as likely a piece cut too small.
    if more == -seams if measured else (more == seams and pieces >= MANY):
        return True
    if pieces >= MANY and more == seams * (pieces - 1 if measured else pieces):
        return True
    measure, finished = here(unit.measure, resolver.size), here(unit.finished, resolver.size)
    if measure is None or finished is None:
        return False
    sides = ((measure.across, finished.across), (measure.down, finished.down))
    return any(raw - sewn != seams for raw, sewn in sides)
