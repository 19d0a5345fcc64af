"""Slanted lines through the corners of squares, all one way. Their distance comes from the
squares: no open spot is wider than 1.1 times the spacing told."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from patternbook.quilting.designs import diagonal
from patternbook.quilting.designs.frame import as_path
from patternbook.quilting.designs.grid import slants
from patternbook.quilting.records import Path


def element() -> tuple[Path, ...]:
    """Three lines from corner to corner."""
    spots = [(0.0, 2.0), (2.0, 0.0), (4.0, 0.0), (0.0, 4.0), (2.0, 4.0), (4.0, 2.0)]
    return (as_path(np.array(spots)),)


DESIGN: Final = replace(
    diagonal.DESIGN,
    name="slanted lines",
    draw=lambda room, spacing, _seed: diagonal.drawn(room, spacing, slants(room)[:1]),
    element=element,
)
