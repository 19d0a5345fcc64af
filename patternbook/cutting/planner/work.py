"""How much work a search has done, and how much it still may do."""

from __future__ import annotations

from dataclasses import dataclass

from patternbook.cutting.planner.records import Limits


@dataclass
class Work:
    """Counted, never timed."""

    limits: Limits
    rounds: int = 0
    columns: int = 0
    dives: int = 0
    nodes: int = 0
    programmes: int = 0
    patterns: int = 0

    def round(self) -> bool:
        """Whether one more round of pricing may be done; it is counted."""
        if self.rounds >= self.limits.rounds:
            return False
        self.rounds += 1
        return True

    def told(self) -> tuple[tuple[str, int], ...]:
        return (
            ("rounds", self.rounds),
            ("columns", self.columns),
            ("dives", self.dives),
            ("nodes", self.nodes),
            ("programmes", self.programmes),
            ("patterns", self.patterns),
        )
