"""What washing takes of cloth off the bolt, along its length.

The usable width is measured on the cloth as it is cut, so washed (the published sum that adds 6 in
the hundred keeps its width, trade facts 11.1); only wide backing, whose usual width is that of the
bolt, is reckoned narrower (`forms/wide_backing.py`).
"""

from __future__ import annotations

from fractions import Fraction

from patternbook.exact import Exact
from patternbook.inch import ruler_up
from patternbook.quilt.records import Quilt


def before_washing(length: Fraction, quilt: Quilt) -> Fraction:
    """The length to buy, that this much is left of it: divided by what washing leaves of one, up
    to the ruler's next mark."""
    if not quilt.settings.shrinkage:
        return length
    return ruler_up(length / quilt.settings.washed, quilt.system)


def after_washing(length: Fraction, quilt: Quilt) -> Fraction:
    """What is left of a bought length, down to the ruler's last mark."""
    if not quilt.settings.shrinkage:
        return length
    return Exact(length * quilt.settings.washed).down(quilt.system.step)
