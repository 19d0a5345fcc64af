"""The sewing methods that can be worked out so far, by the name that `method` gives them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from patternbook.methods.layout_work import LayoutWork
from patternbook.methods.strip_set_work import StripSetWork
from patternbook.methods.world import Work

WORKS: Final[Mapping[str, Work]] = {"layout": LayoutWork(), "strip set": StripSetWork()}
