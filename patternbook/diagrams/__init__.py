"""The craft's drawings, made from the same plans as the words: one function a diagram."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from patternbook.diagrams.at_need import AtNeed, Diagram
from patternbook.diagrams.back import backs
from patternbook.diagrams.backing import backings
from patternbook.diagrams.borders import borders
from patternbook.diagrams.cloths import cloths
from patternbook.diagrams.colouring import colouring
from patternbook.diagrams.key import key
from patternbook.diagrams.lay import lays
from patternbook.diagrams.lay_words import cuts_key
from patternbook.diagrams.pairs import pairs
from patternbook.diagrams.pattern import Pattern, Plans, Size
from patternbook.diagrams.quilted import quilted
from patternbook.diagrams.rows import rows
from patternbook.diagrams.seam_test import seam_test
from patternbook.diagrams.strip_set import strip_sets
from patternbook.diagrams.swatches import swatches
from patternbook.diagrams.templates import templates
from patternbook.diagrams.tops import cover, tops
from patternbook.diagrams.unit import units
from patternbook.diagrams.webs import webs
from patternbook.quilt.heading import Heading
from patternbook.quilt.prints import mixed
from patternbook.strokes.stroke import Drawing

# In the order of the booklet; each gives the drawings of one kind, whose names begin so.
DIAGRAMS: Final[tuple[tuple[tuple[str, ...], Diagram], ...]] = (
    (("cover",), cover),
    (("top",), tops),
    (("key",), key),
    (("seam-test",), seam_test),
    (("swatch-",), swatches),
    (("cuts-key",), cuts_key),
    (("lay-",), lays),
    (("web-",), webs),
    (("set-",), strip_sets),
    (("unit-",), units),
    (("pairs-",), pairs),
    (("rows-",), rows),
    (("borders",), borders),
    (("backing",), backings),
    (("back-",), backs),
    (("quilts-",), quilted),
    (("colouring-",), colouring),
    (("template",), templates),
)


def drawings(
    heading: Heading, sizes: Mapping[str, Plans], cover: str | None = None
) -> Mapping[str, Drawing]:
    """All drawings of a pattern by name; `cover` is the size on the cover."""
    if not sizes:
        return {}
    return AtNeed(drawn_from(heading, sizes, cover), DIAGRAMS)


def drawn_from(heading: Heading, sizes: Mapping[str, Plans], cover: str | None = None) -> Pattern:
    """What the diagrams are drawn from: tones and prints of every size."""
    tones = cloths(plans.quilt for plans in sizes.values())
    drawn = {
        name: Size(
            name,
            plans,
            tones,
            mixed(plans.quilt, plans.patches)[0],
        )
        for name, plans in sizes.items()
    }
    ordered = tuple(drawn.values())
    middle = ordered[(len(ordered) - 1) // 2]
    return Pattern(heading, ordered, drawn.get(cover or "", middle))
