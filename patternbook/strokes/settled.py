"""matplotlib with our settings alone, whatever the author's machine has in its own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import matplotlib as mpl


@contextmanager
def settled() -> Iterator[None]:
    """Draw with the same settings everywhere."""
    with mpl.rc_context(
        {
            "lines.scale_dashes": False,  # dashes are in points, whatever the line's width
            "path.effects": [],
            "path.simplify": False,
            "path.sketch": None,
        }
    ):
        yield
