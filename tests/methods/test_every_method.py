"""What holds for every sewing method, tried on invented quilts over all of them: what is cut is
what is sewn, the patches tile the top, twice the blocks take twice the pieces, and mirroring twice
changes nothing. Invented data."""

from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import HealthCheck, given, settings

from patternbook.edition.pipeline import Examined, examine
from tests.methods.every_method import Sketch, quilts

FEW = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def examined(source: str) -> Examined:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "pattern.yaml"
        path.write_text(source, "utf-8")
        return examine(path, "pattern.yaml")


def counts(made: Examined) -> dict[str, int]:
    return {letter: piece.count for letter, piece in made.quilts["one"].pieces.items()}


def errors(made: Examined) -> list[str]:
    return [f"{one.code}: {one.message}" for one in made.notices if one.severity == "error"]


@FEW
@given(quilts())
def test_it_is_proven(sketch: Sketch) -> None:
    """Cut against sewn, tiling, measures: all recounts of `check` are silent."""
    made = examined(sketch.source())
    assert errors(made) == []
    assert made.sizes


@FEW
@given(quilts())
def test_twice_the_blocks_take_twice_the_pieces(sketch: Sketch) -> None:
    once, twice = examined(sketch.source(times=8)), examined(sketch.source(times=16))
    one = counts(once)
    strips = {letter for letter, piece in once.quilts["one"].pieces.items() if piece.is_strip}
    exact = {letter: number * 2 for letter, number in one.items() if letter not in strips}
    assert exact == {n: number for n, number in counts(twice).items() if n not in strips}
    for letter in strips:  # whole strips: a set that was not full is filled first
        assert one[letter] <= counts(twice)[letter] <= 2 * one[letter]


@FEW
@given(quilts())
def test_mirrored_twice_is_the_same(sketch: Sketch) -> None:
    rows = tuple(tuple(f"{cell}/mirror/mirror" for cell in row) for row in sketch.rows)
    plain, twice = examined(sketch.source()), examined(replace(sketch, rows=rows).source())
    assert counts(plain) == counts(twice)
    assert plain.sizes["one"].patches == twice.sizes["one"].patches
