"""What an author may ask of the quilting, and what is said where her words are not clear."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from patternbook.edition.pipeline import examine
from patternbook.notice import Notice
from patternbook.quilt.records import Quilting
from tests.support import ROOT

Pattern = Callable[[str], Path]
TEA = (ROOT / "patterns/tea-at-four/pattern.yaml").read_text("utf-8").partition("\nquilting:")[0]


def asked(pattern: Pattern, lines: str) -> tuple[tuple[Quilting, ...], list[Notice]]:
    made = examine(pattern(f"{TEA}\n{lines}"), "tea.yaml")
    wishes = next(iter(made.quilts.values())).quilting if made.quilts else ()
    return wishes, [one for one in made.notices if one.severity == "error"]


def test_every_wish_is_read(pattern: Pattern) -> None:
    wishes, faults = asked(
        pattern,
        "quilting:\n"
        "  - {area: all over, skill: free motion, seed: 3}\n"
        "  - {area: ground, design: meander, spacing: 1 1/2, name: the lawn}\n"
        "  - {area: P, merge: [Q, R], move: [cut 2 by 1 1/2 left, cut 3 by 2 down]}\n"
        "  - {area: border 1, exclude: yes}\n",
    )
    assert faults == []
    everywhere, ground, joined, border = wishes
    assert (everywhere.design, everywhere.skill, everywhere.seed) == (None, "free motion", 3)
    assert (ground.design, ground.spacing, ground.name) == ("meander", Fraction(3, 2), "the lawn")
    assert joined.merge == ("Q", "R")
    assert joined.move == (("cut 2", Fraction(-3, 2)), ("cut 3", Fraction(2)))
    assert (border.area, border.exclude) == ("border 1", True)


@pytest.mark.parametrize(
    ("wish", "code", "hint"),
    [
        ("move: [cut 2]", "wrong-shift", "Write cut 2 by 1 1/2 left (or right, up, down)."),
        ("move: [cut 2 by two left]", "not-a-number", None),
        ("move: [cut 2 by 0 left]", "zero-size", None),
        ("skill: by hand", "wrong-word", None),
        ("exclude: perhaps", "wrong-word", None),
        ("seed: a few", "not-whole", None),
    ],
)
def test_what_is_not_clear_is_told(
    pattern: Pattern, wish: str, code: str, hint: str | None
) -> None:
    _, (fault,) = asked(pattern, f"quilting: [{{area: P, {wish}}}]\n")
    assert fault.code == code
    assert hint is None or fault.hint == hint
