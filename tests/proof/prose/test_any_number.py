"""Any number of the model may stand in a sentence; an eighth more or less of it is told."""

from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.edition.pipeline import Examined, examine
from patternbook.inch import plain
from patternbook.notice import Notice, Place
from patternbook.proof.prose.check import checked
from patternbook.proof.prose.sayings import Saying
from patternbook.value import Text
from tests.proof.prose.sources import CUPS

VERBS = {"cut": "is cut", "finished": "finishes", "measure": "measures"}


@cache
def cups() -> Examined:
    source = CUPS.replace("NOTE-S", "").replace("NOTE-CUP", "")
    with TemporaryDirectory() as folder:
        path = Path(folder) / "pattern.yaml"
        path.write_text(source.lstrip(), "utf-8")
        return examine(path, "p.yaml")


def notices(sentence: str) -> list[Notice]:
    lines = [sentence]
    said = Saying(Text(sentence, Place("p.yaml", 1, 1, 1, len(sentence) + 1)))
    return list(checked((said,), lines, (cups().sizes["lap"],)))


def facts() -> list[tuple[str, str, Fraction]]:
    """Each part, verb and length of the lap size."""
    quilt = cups().sizes["lap"].quilt
    found = [
        (letter, "cut", side)
        for letter, piece in quilt.pieces.items()
        for side in piece.cut
        if side is not None
    ]
    for unit in quilt.units.values():
        if unit.name != "top":
            found += [(f"the {unit.name}", "finished", s.fraction) for s in unit.finished]
            found += [(f"the {unit.name}", "measure", s.fraction) for s in unit.measure]
    return found


@given(st.data())
def test_what_the_model_has_is_silent_and_an_eighth_off_is_told(data: st.DataObject) -> None:
    part, kind, length = data.draw(st.sampled_from(facts()))
    assert notices(f"Here {part} {VERBS[kind]} {plain(length)}.") == []
    off = length + data.draw(st.sampled_from((Fraction(1, 8), Fraction(-1, 8))))
    (notice,) = notices(f"Here {part} {VERBS[kind]} {plain(off)}.")
    assert (notice.stated, notice.severity) == (plain(off), "error")
    assert notice.needed is not None


@given(st.sampled_from(("T", "S", "cups")), st.integers(1, 400))
def test_a_count_is_silent_only_where_it_is_right(part: str, number: int) -> None:
    right = {"T": 42, "S": 71, "cups": 30}[part]
    verb = "make" if part == "cups" else "cut"
    found = [one.needed for one in notices(f"Now {verb} {number} {part}.")]
    assert found == ([] if number == right else [str(right)])


@pytest.mark.parametrize("glyph", ["6 1/2", "6½", "6-1/2", "6 1⁄2"])
def test_fractions_are_read_as_they_are_printed(glyph: str) -> None:
    assert notices(f"The cup measures {glyph} inches.") == []
