"""The quilting designs, one file each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from patternbook.quilting.designs import (
    along,
    crosshatch,
    diagonal,
    echo,
    frames,
    meander,
    pebbles,
    slanted,
    starbursts,
    straight,
    swirls,
    wavy,
    zigzag,
)
from patternbook.quilting.designs.form import Design

DESIGNS: Final[tuple[Design, ...]] = (
    straight.DESIGN,
    wavy.DESIGN,
    diagonal.DESIGN,
    slanted.DESIGN,
    along.DESIGN,
    frames.DESIGN,
    crosshatch.DESIGN,
    zigzag.DESIGN,
    echo.DESIGN,
    meander.DESIGN,
    swirls.DESIGN,
    starbursts.DESIGN,
    pebbles.DESIGN,
)
by_name: Final[Mapping[str, Design]] = {design.name: design for design in DESIGNS}
