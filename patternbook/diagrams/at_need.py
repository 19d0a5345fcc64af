"""Drawings made when they are asked for: a booklet shows fewer than half of all there are."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from patternbook.diagrams.pattern import Pattern
from patternbook.strokes.stroke import Drawing

Diagram = Callable[[Pattern], Iterable[Drawing]]


class AtNeed(Mapping[str, Drawing]):
    """All drawings of a pattern by name. Each diagram is drawn from its beginning until the one
    that is wanted has been met; going through them all draws them all."""

    def __init__(self, pattern: Pattern, kinds: Sequence[tuple[tuple[str, ...], Diagram]]) -> None:
        self._kinds = [(names, iter(diagram(pattern))) for names, diagram in kinds]
        self._made: dict[str, Drawing] = {}

    def __getitem__(self, name: str) -> Drawing:
        for names, rest in self._kinds:
            if name not in self._made and name.startswith(names):
                self._draw(rest, name)
        return self._made[name]

    def __iter__(self) -> Iterator[str]:
        for _, rest in self._kinds:
            self._draw(rest, None)
        return iter(self._made)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def beginning(self, start: str) -> Iterator[Drawing]:
        """The drawings whose names begin so, in the order in which they are made."""
        for names, rest in self._kinds:
            if start.startswith(names):
                self._draw(rest, None)
        return (drawing for name, drawing in self._made.items() if name.startswith(start))

    def _draw(self, rest: Iterator[Drawing], until: str | None) -> None:
        for drawing in rest:
            self._made[drawing.name] = drawing
            if drawing.name == until:
                return


class Changed(Mapping[str, Drawing]):
    """Drawings that are changed when they are asked for."""

    def __init__(
        self, drawings: Mapping[str, Drawing], change: Callable[[Drawing], Drawing]
    ) -> None:
        self._drawings, self._change = drawings, change

    def __getitem__(self, name: str) -> Drawing:
        return self._change(self._drawings[name])

    def __iter__(self) -> Iterator[str]:
        return iter(self._drawings)

    def __len__(self) -> int:
        return len(self._drawings)

    def beginning(self, start: str) -> Iterator[Drawing]:
        """The drawings whose names begin so, changed."""
        return map(self._change, beginning(self._drawings, start))


def beginning(drawings: Mapping[str, Drawing], start: str) -> tuple[Drawing, ...]:
    """Those whose names begin so; of drawings made at need no others are made."""
    if isinstance(drawings, AtNeed | Changed):
        return tuple(drawings.beginning(start))
    return tuple(drawing for name, drawing in drawings.items() if name.startswith(start))
