"""What is said of a step: its heading, its sentences, and the figures that may differ by size."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from patternbook.booklet import wording
from patternbook.booklet.order import Together
from patternbook.proof.evidence import Evidence
from patternbook.sewing.records import Step

TOP: Final = "Quilt top"
MEASURE: Final = "Should measure, with seam allowances"


class Fact(NamedTuple):
    """A figure of a step: the head of its row where sizes differ, and the sentence ({} stands
    for the figure) where they do not."""

    head: str
    line: str
    tell: Callable[[Step, Evidence], str]


@dataclass(frozen=True)
class Words:
    """One step: its heading, what is done, and its figures. `orders`: how the parts lie, size by
    size, where no one sentence says it for all, and `start` from where. `numbered`: what is done
    is drawn in numbers."""

    title: str
    does: tuple[str, ...]
    facts: tuple[Fact, ...]
    orders: Mapping[str, str] = field(default_factory=dict)
    numbered: bool = False
    start: str = "From the left"


@dataclass(frozen=True)
class Context:
    """Where a step stands: its sizes, and how its unit is called."""

    step: Together
    sizes: tuple[Evidence, ...]

    @property
    def known(self) -> Evidence:
        """The first size that has the step."""
        return next(known for known in self.sizes if known.quilt.size in self.step.found)

    @property
    def is_top(self) -> bool:
        """Whether it is a step of the quilt top."""
        return self.step.unit == self.known.quilt.top

    @property
    def name(self) -> str:
        """The unit as a heading shows it."""
        return TOP if self.is_top else wording.title(self.step.unit)

    def found(self) -> Iterator[tuple[Evidence, Step]]:
        """The sizes that have the step, and the step there."""
        for known in self.sizes:
            if known.quilt.size in self.step.found:
                yield known, self.step.found[known.quilt.size]


def measured(step: Step, known: Evidence) -> str:
    """What the step leaves, from raw edge to raw edge."""
    return wording.sides(step.measure, known.quilt.system)


CHECK: Final = Fact(MEASURE, "Should measure {} with seam allowances.", measured)
MAKE: Final = Fact("Make", "Make {}.", lambda step, _: str(step.make))
MATCHES: Final = Fact(
    "Places in each where seams meet",
    "Places in each where seams meet: {}.",
    lambda step, _: str(step.matches),
)


def makes(found: Iterable[tuple[Evidence, Step]]) -> tuple[Fact, ...]:
    """How many to make; of the top there is but one, which goes without saying."""
    several = any(made.unit != known.quilt.top or made.make > 1 for known, made in found)
    return (MAKE,) if several else ()


def joined(steps: Iterable[Step], whole: str) -> tuple[str, ...]:
    """How parts are joined: in pairs, then pairs of pairs. The size with most parts says it."""
    step = max(steps, key=lambda one: (len(one.rounds), one.make))
    if len(step.rounds) > 1:
        waits = any(turn.odd for turn in step.rounds[:-1])
        rest = " A part left over waits for its turn." if waits else ""
        chain = (
            "Sew neighbours in pairs, one pair behind the other without cutting the thread (chain "
            "piecing). Snip apart and press."
        )
        return chain, f"Join pairs to pairs likewise until the {whole} is whole.{rest}"
    if step.make > 1:
        one = (
            "Sew them right sides together, one behind the other without cutting the thread "
            "(chain piecing). Snip them apart."
        )
        return (one,)
    return ("Sew them right sides together.",)
