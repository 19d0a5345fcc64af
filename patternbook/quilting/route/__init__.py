"""The way of the needle through the fills: in which order, and how from one to the next."""

from __future__ import annotations

from patternbook.quilting.route.stages import fill_stages

__all__ = ["fill_stages"]
