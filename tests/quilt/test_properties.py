"""What must hold of every layout, tried on many invented ones."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given
from hypothesis import strategies as st

from patternbook.edition.pipeline import plan
from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.quilt.place import patches
from patternbook.quilt.records import Quilt
from tests.quilt.support_quilt import told, worked_out

EIGHTHS = st.integers(8, 80).map(lambda eighths: Fraction(eighths, 8))
TURNS = st.sampled_from(["", "/right", "/half", "/left", "/mirror", "/right/mirror"])


@st.composite
def blocks(draw: st.DrawFn) -> str:
    """A square block of three rails, laid with random turns, now and then sashed and bordered."""
    rail = draw(EIGHTHS)
    cells = [[f"rail{draw(TURNS)}" for _ in range(2)] for _ in range(2)]
    rows = ", ".join(" ".join(row) for row in cells)
    side = plain(rail * 3 + Fraction(1, 2))
    sash = draw(st.booleans())
    frame = "sashing: {sash: S, stones: T, round: yes}, " if sash else ""
    border = "borders: [{strip: F}], " if draw(st.booleans()) else ""
    pieces = [f"A: {{cut: {plain(rail + Fraction(1, 2))} x {side}}}"]
    if sash:
        pieces += [f"S: {{cut: 2 x {side}}}", "T: {cut: 2 square}"]
    if border:
        pieces += ["F: {cut: 3 x WOF}"]
    return (
        f"pattern: Rails\nsizes: {{one: {{}}}}\npieces: {{{', '.join(pieces)}}}\n"
        f"units: {{rail: {{rows: [A A A]}}}}\n"
        f"top: {{rows: [{rows}], {frame}{border}across: ACROSS, down: DOWN}}\n"
    )


def made(text: str, across: int, down: int) -> Quilt:
    """The one size of a text with its counts filled in."""
    with TemporaryDirectory() as folder:
        filled = text.replace("ACROSS", str(across)).replace("DOWN", str(down))
        done = worked_out(Path(folder), filled)
    assert not told(done), [str(notice) for notice in told(done)]
    return done.sizes["one"]


@given(blocks(), st.integers(1, 5), st.integers(1, 5))
def test_the_patches_of_the_top_tile_it_exactly(text: str, across: int, down: int) -> None:
    quilt = made(text, across, down)
    evidence, notices = plan(quilt, sound=True)
    assert not [str(notice) for notice in notices if notice.severity == "error"]
    assert quilt.finished is not None
    whole = quilt.finished.across * quilt.finished.down
    assert sum((patch.across * patch.down for patch in evidence.patches), Exact(0)) == whole


@given(blocks(), st.integers(1, 4))
def test_twice_the_blocks_take_twice_the_bars(text: str, across: int) -> None:
    once, twice = made(text, across, 2), made(text, across, 4)
    assert twice.pieces["A"].count == 2 * once.pieces["A"].count


@given(blocks(), st.integers(1, 4), st.integers(1, 4))
def test_what_is_placed_is_what_is_cut(text: str, across: int, down: int) -> None:
    quilt = made(text, across, down)
    letters = [patch.letter for patch in patches(quilt, "top")]
    for letter, piece in quilt.pieces.items():
        assert letters.count(letter) == piece.count


@given(st.permutations(["/mirror", "/right", "/mirror", "/left"]))
def test_mirrored_twice_and_turned_back_is_as_before(turns: list[str]) -> None:
    """Only the order decides how it lies; its size never changes with an even number of turns."""
    text = (
        "pattern: Turns\npieces: {A: {cut: 2 1/2 x 4 1/2}, B: {cut: 2 1/2 square}}\n"
        f"units: {{pair: {{rows: [B, A]}}}}\nsizes: {{one: {{}}}}\n"
        f"top: {{rows: [pair{''.join(turns)}]}}\n"
    )
    quilt = made(text, 1, 1)
    assert quilt.finished == (Exact(2), Exact(6))
