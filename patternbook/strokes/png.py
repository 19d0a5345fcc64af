"""Drawings as pictures in pixels, for sharing."""

from __future__ import annotations

from io import BytesIO

import matplotlib as mpl
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from patternbook.strokes.artists import draw
from patternbook.strokes.settled import settled
from patternbook.strokes.stroke import Drawing


def png(drawing: Drawing, dpi: int = 150) -> bytes:
    """The drawing on white; the same bytes everywhere, for it says neither when nor by what."""
    written = BytesIO()
    with mpl.rc_context(mpl.rcParamsDefault), settled():
        figure = Figure(figsize=drawing.inches, dpi=dpi, facecolor="white")
        FigureCanvasAgg(figure)
        draw(drawing, figure)
        figure.savefig(written, format="png", dpi=dpi, metadata={"Software": None})
    return written.getvalue()
