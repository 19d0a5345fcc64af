"""How a strip race is sewn, in words and sketches: joined, shortened, folded, sewn, cut, opened."""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from typing import Final, NamedTuple

from patternbook.exact import Exact
from patternbook.inch import System, ruler_near
from patternbook.methods import pieced
from patternbook.methods.made import Action, Sides, Sketch

# A race is far too long to be drawn to scale: its sketches are as long as the quilt is wide, and
# a row is so much of that.
SHARE: Final = 0.1
# The rounds after these look alike.
DRAWN: Final = 2


class Race(NamedTuple):
    """The strips by letter, how many in all, how long they are once joined and cut to length,
    what is cut off before, how high a row finishes, how often it is folded, and its ruler."""

    strips: tuple[tuple[str, int], ...]
    number: int
    total: Exact
    off: Exact
    high: Exact
    folds: int
    system: System


def join_words(ways: AbstractSet[bool]) -> str:
    """How two strips are joined: on the diagonal, straight, or by letter."""
    diagonal = (
        "lay one across the end of the other at a right angle, right sides together, sew from "
        "corner to corner and trim to {0}"
    )
    straight = "lay their short ends right sides together and sew with a seam of {0}"
    if ways == {True}:
        return f"{diagonal}. Press every join open."
    if ways == {False}:
        return f"{straight}. Press every join open."
    return f"on the diagonal {diagonal}; straight, {straight}. Press every join open."


def actions(race: Race, seam: Exact, join: str) -> tuple[Action, ...]:
    """Each round halves the length and doubles the rows."""
    rounds = (_fold(race, fold, seam) for fold in range(1, race.folds + 1))
    return (_join(race, seam, join), *_shorten(race), *rounds)


def _join(race: Race, seam: Exact, join: str) -> Action:
    letters = " and ".join(letter for letter, _ in race.strips)
    order = "any order that you like" if len(race.strips) == 1 else "the order of the pattern"
    words = f"Sew all strips {letters} end to end, in {order}: {join} "
    words += "The long strip is about {1} long."
    return Action("sew", words, (seam, _near(race.total + race.off, race)))


def _shorten(race: Race) -> list[Action]:
    if race.off == 0:
        return []
    words = (
        "Cut {0} off one end, so that the joins of neighbouring rows do not lie side by side. "
        "About {1} are left."
    )
    letter, (long, high) = race.strips[0][0], _drawn(race)
    sketch = (
        pieced.cloth(letter, pieced.rectangle(0.0, 0.0, long, high)),
        pieced.cut((high * 2, 0.0), (high * 2, high)),
    )
    return [Action("cut", words, (race.off, _near(race.total, race)), sketch)]


def _fold(race: Race, fold: int, seam: Exact) -> Action:
    """Ends together, sewn along, the fold cut, opened and pressed."""
    length = race.total / 2**fold
    rows = 2**fold
    after = Sides(_near(length, race), race.high * rows + seam * 2)
    figures = (seam, _near(length, race), after)
    if fold == 1:
        words = (
            "Round 1: bring the two ends together, right sides in, and see that the strip is not "
            "twisted between them. Sew along one long edge, {0} from it, up to the fold: a seam "
            "of about {1}. Cut the fold open, open it out and press the seam to the lower row. "
            "Now there are 2 rows, about {2} together."
        )
        return Action("sew", words, figures, _sketch(race, fold))
    words = (
        f"Round {fold}: the same again with the short sides. A seam of about {{0}}; cut, open, "
        f"press. Now there are {rows} rows, about {{1}} together."
    )
    return Action("sew", words, figures[1:], _sketch(race, fold))


def _near(length: Exact, race: Race) -> Exact:
    """What a ruler shows: the strip stretches more than the rest."""
    return Exact(ruler_near(length, race.system))


def _drawn(race: Race) -> tuple[float, float]:
    """How long the joined strip is drawn, and how high one of its rows."""
    long = float(race.total) / 2**race.folds
    return long, long * SHARE


def _sketch(race: Race, fold: int) -> Sketch:
    """The folded piece: the wrong side of the upper half, the lower one seen beside its end."""
    if fold > DRAWN:
        return ()
    letter, (wide, row) = race.strips[0][0], _drawn(race)
    high, slip = row * fold, row / 2
    lower = pieced.rectangle(0.0, -slip, wide, high + slip)
    upper = pieced.rectangle(slip, 0.0, wide - slip, high)
    line = high - row / 4
    return (
        pieced.cloth(letter, lower),
        pieced.wrong_side(letter, upper),
        pieced.sew((slip, line), (wide, line)),
        pieced.cut((wide, -slip), (wide, high)),
    )
