"""Where the equations contradict one another once all is solved, both sums written out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternbook.inch import ruler_up
from patternbook.notice import Mark, Notice
from patternbook.quilt.alternatives import Alternatives, near_enough
from patternbook.quilt.blame import mend_named, one_cause, rule_of
from patternbook.quilt.checks import Check, Stated
from patternbook.quilt.parts import TOP
from patternbook.quilt.piece_lengths import fitted
from patternbook.quilt.read_out import SIDE_WORDS, needed, read, shown, typed, written_out
from patternbook.quilt.resolve import Resolver


def contradictions(resolver: Resolver) -> Iterator[Notice]:
    """An error for every equation whose sides differ; the two sides of one size are one."""
    failing = [
        check for check in resolver.checks if check.off() != 0 and not _follows(check, resolver)
    ]
    if not failing:
        return
    alternatives = Alternatives(resolver, resolver.peers.values())
    groups: dict[object, list[Check]] = {}
    for check in failing:
        groups.setdefault(_both_sides(check), []).append(check)
    told = []
    for checks in groups.values():
        changes = alternatives.mend_all(checks)
        tell = _stated_differs if checks[0].stated is not None else _differs
        told.append(mend_named(tell(checks, resolver), changes, checks, resolver))
    yield from one_cause(told)


def _both_sides(check: Check) -> object:
    """What the equations of width and length of one size have in common."""
    if check.stated is None:
        return check.rule.code, check.one.what, check.one.place, check.other.place, check.off()
    key = check.stated.key
    return key[:-1] if key[-1] in SIDE_WORDS else key


def _follows(check: Check, resolver: Resolver) -> bool:
    """Whether the fault only follows from a part that has been told to be broken."""
    labels = {term.label for tally in (check.one, check.other) for term in tally.terms}
    if check.stated is not None:
        labels.add(check.stated.key[1] if check.stated.key[0] == "units" else TOP)
    return bool(labels & resolver.broken)


def _differs(checks: Sequence[Check], resolver: Resolver) -> Notice:
    """Pieces against pieces."""
    check, off = checks[0], checks[0].off()
    one, other = (resolver.known(tally.sum()) for tally in (check.one, check.other))
    amount = read(abs(off), resolver)
    way = "short by" if off < 0 else "too long by"
    message = (
        f"{check.one.what} comes to {read(one, resolver)}: {written_out(check.one, resolver)}; "
        f"{check.other.what} to {read(other, resolver)}: {written_out(check.other, resolver)}; "
        f"{way} {amount}."
    )
    if one is None or other is None:
        message = (
            f"{check.one.what} is always {amount} {'shorter' if off < 0 else 'longer'} than "
            f"{check.other.what}, whatever is fitted: {written_out(check.one, resolver)} "
            f"against {written_out(check.other, resolver)}."
        )
    places = ((check.one.place, "the odd one"), (check.other.place, "what it must equal"))
    marks = tuple(Mark(place, role) for place, role in places if place is not None)
    hint = _fit_hint(check, resolver) or "Change the parts so that both come to the same."
    return Notice(
        check.rule.code,
        "error",
        "quilt",
        message,
        marks,
        rule_of(check, resolver),
        (resolver.size,),
        None if one is None else typed(one, resolver),
        None if other is None else needed(other, resolver),
        check.rule.hint or hint,
    )


def _stated_differs(checks: Sequence[Check], resolver: Resolver) -> Notice:
    """Pieces against a stated figure."""
    figures = [check.stated for check in checks if check.stated is not None]
    first = figures[0]
    sums = [_side_told(figure, resolver) for figure in figures]
    amounts = [_amount_told(check, resolver) for check in checks]
    numbers = [typed(figure.symbol.value, resolver) for figure in figures]
    values = [_right(check, resolver) for check in checks]
    shown_ = " × ".join(dict.fromkeys(shown(one.symbol.value, resolver) for one in figures))
    message = (
        f"{first.worked_out.what} is {', and '.join(sums)}; {shown_} is stated, "
        f"{' and '.join(dict.fromkeys(amounts))}."
    )
    right = " x ".join(dict.fromkeys(values))
    marks = [Mark(first.place, "stated here")]
    if first.worked_out.place is not None:
        marks.append(Mark(first.worked_out.place, "worked out from here"))
    return Notice(
        first.rule.code,
        "error",
        "quilt",
        message,
        tuple(marks),
        rule_of(checks[0], resolver),
        (resolver.size,),
        " x ".join(dict.fromkeys(numbers)),
        right,
        f"Write {right}, or leave it out and it is worked out.",
    )


def _right(check: Check, resolver: Resolver) -> str:
    """What should be stated, as the author types it."""
    value = resolver.known(check.one.sum())
    if value is not None and near_enough(check):
        return typed(ruler_up(value, resolver.system), resolver)
    return typed(value, resolver)


def _side_told(figure: Stated, resolver: Resolver) -> str:
    """`6½ wide: 2 A 6 + 2 seams ½`."""
    value = resolver.known(figure.worked_out.sum())
    word = SIDE_WORDS.get(figure.key[-1], "long")
    return f"{read(value, resolver)} {word}: {written_out(figure.worked_out, resolver)}"


def _amount_told(check: Check, resolver: Resolver) -> str:
    way = "too little" if check.off() > 0 else "too much"
    return f"{read(abs(check.off()), resolver)} {way}"


def _fit_hint(check: Check, resolver: Resolver) -> str | None:
    """One letter has one size: a fit letter in two places may be the cause."""
    for label in (term.label for tally in (check.one, check.other) for term in tally.terms):
        if label in resolver.pieces and any(fitted(label, side, resolver) for side in SIDE_WORDS):
            return f"{label} has one size everywhere: use another letter for one of its places."
    return None
