"""The sheet that artists are put on when no picture in pixels is wanted: no Figure, no Axes."""

from __future__ import annotations

from typing import Protocol

from matplotlib.artist import Artist
from matplotlib.backend_bases import RendererBase
from matplotlib.transforms import Affine2D, Transform


class Sheet(Protocol):
    """What a drawing asks of the thing it is drawn on, be it a Paper or a matplotlib Figure."""

    @property
    def dpi_scale_trans(self) -> Transform: ...

    def add_artist(self, artist: Artist) -> Artist: ...


class Paper:
    """A sheet measured in inches; its renderers work in points."""

    dpi = 72

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.artists: list[Artist] = []
        self.dpi_scale_trans: Transform = Affine2D().scale(72)

    def get_figure(self, root: bool | None = None) -> Paper:  # noqa: ARG002 - matplotlib passes it
        return self

    def add_artist(self, artist: Artist) -> Artist:
        artist.set_figure(self)  # type: ignore[arg-type] # it only needs what a Paper has
        self.artists.append(artist)
        return artist

    def draw(self, renderer: RendererBase) -> None:
        """Everything, lowest first."""
        for artist in self.artists:
            artist.draw(renderer)
