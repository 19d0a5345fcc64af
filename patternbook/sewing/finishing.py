"""What is done once the top is sewn: layer, baste, quilt, trim, bind, label."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from patternbook.quilt.records import Quilt
from patternbook.sewing.records import Finish

# Pins every 4 to 6 inches (a trade source, named beside the test); redrafted in centimetres.
PINS: Final = {
    "in": (Fraction(4), Fraction(6)),
    "cm": (Fraction(10), Fraction(15)),
}


def finishing(quilt: Quilt) -> Iterator[Finish]:
    """The kinds and numbers, in order; a fragment has none."""
    if quilt.top is None or quilt.finished is None:
        return
    raw = quilt.units[quilt.top].measure
    backing, batting, binding = quilt.backing, quilt.batting, quilt.binding
    yield Finish(
        "layer",
        raw,
        over=backing.over if backing else None,
        batting_over=batting.over if batting else None,
    )
    yield Finish("baste", raw, spacing=PINS[quilt.system.unit])
    yield Finish("quilt", raw)
    yield Finish("trim", raw)
    if binding:
        perimeter = (quilt.finished.across + quilt.finished.down) * 2
        yield Finish(
            "bind", quilt.finished, perimeter=perimeter, width=binding.cut, fold=binding.fold
        )
    yield Finish("label", quilt.finished)
