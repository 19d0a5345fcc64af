"""The booklet itself: all parts, for the right hand."""

from __future__ import annotations

from typing import Final

from patternbook.edition.editions.form import Edition, as_it_is, booklet, every_figure

EDITION: Final = Edition("full", "the whole booklet", as_it_is, booklet, every_figure)
