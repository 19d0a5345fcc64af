"""Sentences that are alike but for their figures, in one: what they share is said once."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile
from typing import Final, NamedTuple

from patternbook.notice import Place

SUBJECT: Final = 4  # a letter or two, or a quilt's part, stands before the colon
PLAIN: Final = 3  # fewer words than these do not read on behind a row of figures


class Said(NamedTuple):
    """What is told of some sizes, and of which place of the source."""

    words: str
    sizes: tuple[str, ...]
    at: Place | None


def in_one(said: Sequence[Said]) -> str:
    """`A: 6 strips give 30 (twin); 2 give 12 (crib); B: 9 give 45.` The words that all end with
    stand once, at the end; letters that have the same figures stand together."""
    parted = [_parted(one.words) for one in said]
    tail = _tail([rest for _, rest in parted])
    every = {size for one in said for size in one.sizes}
    of: dict[str, list[str]] = {}
    for one, (subject, rest) in zip(said, parted, strict=True):
        sizes = "" if every == set(one.sizes) else f" ({', '.join(one.sizes)})"
        figures = " ".join(rest[: len(rest) - len(tail)]).removesuffix(".")
        of.setdefault(subject, []).append(figures + sizes)
    alike: dict[str, list[str]] = {}
    for subject, figures_of in of.items():
        alike.setdefault("; ".join(figures_of), []).append(subject)
    parts = (_with_subject(subjects, figures) for figures, subjects in alike.items())
    stop = "" if tail and tail[0][:1].islower() else "."
    return " ".join(("; ".join(parts) + stop, *tail))


def _parted(words: str) -> tuple[str, list[str]]:
    """Whom it is about, before a colon among the first words, and what is said."""
    split = words.split(" ")
    before = list(takewhile(lambda word: not word.endswith(":"), split))
    if len(before) >= min(SUBJECT, len(split)):
        return "", split
    return " ".join((*before, split[len(before)][:-1])), split[len(before) + 1 :]


def _with_subject(subjects: Sequence[str], figures: str) -> str:
    if subjects == [""]:
        return figures
    last = " and ".join(subjects[-2:])
    return f"{', '.join((*subjects[:-2], last))}: {figures}"


def _tail(rests: Sequence[Sequence[str]]) -> Sequence[str]:
    """The words at the end that all share: whole sentences, or where each is one sentence the
    plain words behind its figures."""
    if len({tuple(rest) for rest in rests}) == 1:
        return ()
    backward = zip(*(reversed(rest) for rest in rests), strict=False)
    shared = len(list(takewhile(lambda words: len(set(words)) == 1, backward)))
    for number in range(min(shared, min(map(len, rests)) - 1), 0, -1):
        figures, tail = [rest[:-number] for rest in rests], rests[0][-number:]
        if all(part[-1].endswith(".") for part in figures) or _reads_on(figures, tail):
            return tail
    return ()


def _reads_on(figures: Sequence[Sequence[str]], tail: Sequence[str]) -> bool:
    """Whether a sentence goes on in plain words behind its figures."""
    plain = [word.isalpha() and word.islower() for word in tail[:PLAIN]]
    ended = any(word.endswith(".") for part in figures for word in part)
    return len(plain) == PLAIN and all(plain) and not ended
