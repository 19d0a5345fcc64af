"""Measurements in sentences: each is one that the size has, and that of the part it is said of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.notice import Notice
from patternbook.proof.prose.fact_lengths import Kind, Length
from patternbook.proof.prose.numbers import Figure
from patternbook.proof.prose.size_facts import QUILT, Facts
from patternbook.proof.prose.speech import Mention, Speech, part_at
from patternbook.proof.prose.told import as_written, told

_VERBS: Final = re.compile(
    r"(?P<finished>\bfinish(?:es|ing)?\b|(?<!un)finished\b)"
    r"|(?P<measure>\bmeasur(?:es?|ing)\b|\btrim(?:med)?\b|\bsquared? up\b|\bunfinished\b|\braw\b"
    r"|\bis now\b|\bmakes? an? )"
    r"|(?P<cut>\b(?:sub-?)?cut\b)",
    re.IGNORECASE,
)
_BEHIND: Final = re.compile(
    r" ?\(?(?:when |once )?(?:(?P<measure>unfinished|raw)|(?P<finished>finished))"
)
# What may be true of a part besides what its verb says: strips that are cut, lengths of them.
_BESIDE: Final[dict[Kind, frozenset[Kind]]] = {
    "cut": frozenset(("cut", "strip", "length", "other")),
    "measure": frozenset(("measure", "other")),
    "finished": frozenset(("finished",)),
}
# The same where no part is named.
_OF_ANY: Final[dict[Kind, frozenset[Kind]]] = _BESIDE | {
    "cut": frozenset(("cut", "strip", "length"))
}
_OF_ALL: Final = frozenset(("seam", "width", "allowance", "binding", "backing", "batting"))
BEFORE: Final = f"{QUILT} before borders"
_OF_BINDING: Final = re.compile(r" of binding\b")
_HOUSE: Final = frozenset(("settings", "allowance", "seam", "width"))
_WORD: Final[dict[Kind, str]] = {
    "cut": "is cut",
    "finished": "finishes",
    "measure": "measures",
    "strip": "comes from strips of",
    "length": "is",
    "bought": "is bought by",
    "metres": "is bought by",
    "other": "has",
}


# "squares 3 1/2", with no verb: as they are cut.
_SHAPED: Final = re.compile(r"\b(?:squares|rectangles|strips)(?: of| at|, each)? $", re.IGNORECASE)
_CLOTH: Final = re.compile(r" (?:pieces?|rectangles?|strips?|triangles?|patch)\b")


class Said(NamedTuple):
    """What is said of a number: the part, how near it is named, and what of it."""

    part: str | None
    how: str | None
    kind: Kind | None


def length_fault(
    speech: Speech, figure: Figure, facts: Facts, named: Sequence[Mention]
) -> Notice | None:
    """What is wrong with one measurement in one size."""
    part, how = part_at(speech, figure, named)
    if part == QUILT and _before_borders(speech, figure, named):
        part = BEFORE
    kind, near = kind_at(speech, figure)
    letter = part if part in facts.known.quilt.pieces else None
    if kind is None and letter and _stands_before(letter, figure, speech):
        kind, near = "cut", True
    said = Said(part, how, kind)
    clear = tuple(_clear(said, facts))
    if _OF_BINDING.match(speech.text, figure.close):
        clear = tuple(f for f in facts.lengths if (f.part, f.kind) == ("binding", "length"))
    if clear:
        if _among(figure, clear, facts):
            return None
        if _beside(figure, said, facts):
            return None
        return _wrong(speech, figure, facts, said, (*clear, *_or_else(said, figure, facts)))
    if _known(figure, facts, kind if near else None):
        return None
    if kind is None and _CLOTH.match(speech.text, figure.close):
        said = said._replace(kind="cut")
    return _wrong(speech, figure, facts, said, _near_parts(said, facts))


def kind_at(speech: Speech, figure: Figure) -> tuple[Kind | None, bool]:
    """Whether it is said to be cut, finished or measured: by a word right behind it, else by the
    last verb before it in the clause, else in the sentence; and whether that is near."""
    if behind := _BEHIND.match(speech.text, figure.close):
        return ("measure" if behind["measure"] else "finished"), True
    clause, sentence = speech.clause(figure.start), speech.sentence(figure.start)
    for start, _ in (clause, sentence):
        verbs = list(_VERBS.finditer(speech.text, start, figure.start))
        if verbs:
            name = verbs[-1].lastgroup
            kind: Kind = (
                "finished" if name == "finished" else "measure" if name == "measure" else "cut"
            )
            return kind, start == clause[0]
    shaped = _SHAPED.search(speech.text[: figure.start])
    return ("cut", True) if shaped else (None, False)


def _or_else(said: Said, figure: Figure, facts: Facts) -> Iterator[Length]:
    """What else may be meant: of strips that are cut their lengths; of an oblong that is measured
    where the words stand, a row of what is sewn there."""
    rows = said.how == "standing" and figure.down not in (None, figure.value)
    for fact in facts.lengths:
        own = fact.part == said.part and fact.kind == "length" and said.kind == "cut"
        if own or (rows and fact.part == f"{said.part} row" and fact.kind == said.kind):
            yield fact


def _before_borders(speech: Speech, figure: Figure, named: Sequence[Mention]) -> bool:
    """`Before the borders are on, the quilt measures`."""
    start, _ = speech.sentence(figure.start)
    return any(one.part == BEFORE and start <= one.start < figure.start for one in named)


def _stands_before(letter: str, figure: Figure, speech: Speech) -> bool:
    """`a 3 inch square S`: a size without a label, right before the letter, is how it is cut."""
    found = re.match(rf"(?: squares?| rectangles?)? {letter}\b", speech.text[figure.close :])
    return found is not None


def _clear(said: Said, facts: Facts) -> Iterator[Length]:
    """The facts that a number with this part and verb can only be."""
    kind, quilt = said.kind, facts.known.quilt
    if said.part is None or kind is None:
        return
    if kind == "measure" and said.part in quilt.pieces:
        kind = "cut"
    # Where words stand at a part and do not name it, a cut may be that of any part in it.
    if said.how == "standing" and (kind == "cut" and said.part not in quilt.pieces):
        return
    for fact in facts.lengths:
        if fact.part == said.part and fact.kind == kind:
            yield fact


def _beside(figure: Figure, said: Said, facts: Facts) -> bool:
    """Whether another fact of the part, or of what is in it, is meant as well as not."""
    if said.kind is None:
        return False
    kinds = _BESIDE[said.kind]
    own = [fact for fact in facts.lengths if fact.part == said.part and fact.kind in kinds]
    if said.how != "clause":
        kin = facts.kin(said.part) | {f"{said.part} row", f"{said.part} before borders", "seam"}
        own += [fact for fact in facts.lengths if fact.part in kin and fact.kind in kinds]
    return _among(figure, own, facts)


def _among(figure: Figure, held: Iterable[Length], facts: Facts) -> bool:
    return any(_is(figure, fact, facts) for fact in held)


def _is(figure: Figure, fact: Length, facts: Facts) -> bool:
    if figure.down is None:
        return any(figure.value in facts.ways(side) for side in fact.sides)
    if len(fact.sides) != 2:
        return False
    one, other = (frozenset(facts.ways(side)) for side in fact.sides)
    straight = figure.value in one and figure.down in other
    return straight or (figure.value in other and figure.down in one)


def _known(figure: Figure, facts: Facts, kind: Kind | None) -> bool:
    """Whether the size has it anywhere, among what its verb says."""
    if kind is not None:
        said_so = [
            fact for fact in facts.lengths if fact.kind in _OF_ANY[kind] or fact.part in _OF_ALL
        ]
        if figure.down is None or kind != "cut":
            return _among(figure, said_so, facts)
    if figure.down is None:
        return figure.value in facts.values
    if _among(figure, facts.lengths, facts):
        return True
    cloth = facts.known.quilt.width
    along = cloth in figure.values and all(value in facts.values for value in figure.values)
    laid = not figure.marks and all(value in facts.counted for value in figure.values)
    return along or laid


def _near_parts(said: Said, facts: Facts) -> Sequence[Length]:
    """Where the right value is looked for first: the part and what it is made of, and what is
    said of it."""
    kin = facts.kin(said.part)
    for kinds in (
        frozenset((said.kind, "length" if said.kind == "cut" else said.kind)),
        frozenset(("cut", "measure", "finished", "length")),
    ):
        pool = [fact for fact in facts.lengths if fact.part in kin and fact.kind in kinds]
        if pool:
            return pool
    return facts.lengths


def _wrong(
    speech: Speech, figure: Figure, facts: Facts, said: Said, pool: Sequence[Length]
) -> Notice | None:
    found = nearest(figure, _likely(pool, said)) or nearest(figure, _likely(facts.lengths, said))
    if found is None:
        return None
    fact, sides = found
    quilt = facts.known.quilt
    needed = as_written(figure, sides, quilt)
    swapped = said.kind not in ("cut", "strip") and _exchanged(figure, sides, facts)
    who = fact.part if fact.part != "top" else "the quilt"
    is_so = " x ".join(as_written(figure, (side,), quilt) for side in fact.sides)
    stated = speech.written(figure.start, figure.end)
    why = " Two seams lie between finished and raw." if swapped else ""
    return told(
        "said-unlabelled" if swapped else "said-length",
        "R12" if swapped else "R20",
        speech,
        (figure.start, figure.close if figure.square and " x " in needed else figure.end),
        f"the sentence says {stated}; {who} {_WORD[fact.kind]} {is_so}.{why}",
        needed=needed,
        sizes=(quilt.size,),
    )


def _likely(pool: Sequence[Length], said: Said) -> Sequence[Length]:
    """Those that the number can have been meant for: not a rule of the house, an allowance, or,
    unless it is named, the seam or the width of the cloth."""
    return [fact for fact in pool if fact.part == said.part or fact.part not in _HOUSE]


def _exchanged(figure: Figure, sides: Sequence[Exact], facts: Facts) -> bool:
    """Whether finished and raw were taken for one another on some side."""
    seams = 2 * facts.known.quilt.seam
    gaps = [_size(Exact.of(v) - s) for v, s in zip(figure.values, sides, strict=False)]
    return any(gap == seams for gap in gaps) and all(gap in (0, seams) for gap in gaps)


def _size(value: Exact) -> Exact:
    """How large it is, whichever way."""
    return -value if value.sign() < 0 else value


def nearest(figure: Figure, pool: Sequence[Length]) -> tuple[Length, tuple[Exact, ...]] | None:
    """The fact that lies nearest, with the sides that the number should have."""
    best: tuple[Exact, Length, tuple[Exact, ...]] | None = None
    for fact in pool:
        for sides in _sides(figure, fact):
            gap = Exact(0)
            for value, side in zip(figure.values, sides, strict=True):
                gap = gap + _size(Exact.of(value) - side)
            if best is None or gap < best[0]:
                best = (gap, fact, sides)
    return (best[1], best[2]) if best else None


def _sides(figure: Figure, fact: Length) -> Iterator[tuple[Exact, ...]]:
    if figure.down is None:
        yield from ((side,) for side in fact.sides)
    elif len(fact.sides) == 2:
        across, down = fact.sides
        yield (across, down)
        if figure.value != figure.down:
            yield (down, across)
    elif len(fact.sides) == 1 and figure.square:
        yield (fact.sides[0], fact.sides[0])
