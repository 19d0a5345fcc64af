"""The net of all ways that the needle may go over a top: seams, the finished edge, anchor lines,
and what was stitched before."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Self

from patternbook.quilting.noding import Way, numbered, ways
from patternbook.quilting.records import AnchorLine, LegKind, Path, Spot, Top, measured

Step = tuple[int, bool]  # an edge, and whether it is gone from tail to head


@dataclass
class Net:
    """Nodes (`spots`) and edges between them, each with its path from tail to head. `needed`: an
    anchor line. `passes`: how often it has been stitched."""

    spots: list[Spot]
    tails: list[int]
    heads: list[int]
    paths: list[Path]
    kinds: list[LegKind]
    needed: list[bool]
    passes: list[int] = field(default_factory=list)
    lengths: list[float] = field(default_factory=list)
    at: list[list[int]] = field(default_factory=list)  # the edges at each node

    def __post_init__(self) -> None:
        self.lengths = [measured(path) for path in self.paths]
        self.passes = self.passes or [0] * len(self.paths)
        self.at = [[] for _ in self.spots]
        for edge, ends in enumerate(zip(self.tails, self.heads, strict=True)):
            for node in ends:
                self.at[node].append(edge)

    @classmethod
    def of(cls, top: Top, lines: Sequence[AnchorLine], more: Sequence[Way] = ()) -> Self:
        """The net of a top with its anchor lines and other lines (`more`: given as needed or not,
        cut where they cross anything)."""
        return cls.joined(ways(top, lines, more))

    @classmethod
    def joined(cls, found: Sequence[Way]) -> Self:
        """The net of ways that meet at their ends only."""
        ends = [spot for way in found for spot in (way.path[0], way.path[-1])]
        nodes, spots = numbered(ends)
        return cls(
            spots,
            nodes[0::2].tolist(),
            nodes[1::2].tolist(),
            [way.path for way in found],
            [way.kind for way in found],
            [way.needed for way in found],
        )

    def other(self, edge: int, node: int) -> int:
        """The node at the other end."""
        return self.heads[edge] if self.tails[edge] == node else self.tails[edge]

    def path(self, step: Step) -> Path:
        """The path of an edge as it is gone."""
        edge, ahead = step
        return self.paths[edge] if ahead else self.paths[edge][::-1]
