"""What must hold of every unit of triangles, whatever it finishes, tried on many."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import ROOT2, Exact
from patternbook.inch import plain
from patternbook.quilt.place import patches
from patternbook.quilt.records import PiecedMade, Quilt
from tests.methods.making import source
from tests.quilt.support_quilt import told, worked_out

EIGHTHS = st.integers(8, 96).map(lambda eighths: Fraction(eighths, 8))
ONCE, TWICE = "{diagonal: once}", "{diagonal: twice}"
# pieces, the unit, and how wide and how high it finishes for one length
UNITS = [
    ("<A>: {}; <B>: {}", "method: half-square triangles, from: <A> <B>", 1, 1),
    ("<A>: {}; <B>: {}", "method: half-square triangles, from: <A> <B>, gives: 4", 1, 1),
    ("<A>: {}; <B>: {}", "method: half-square triangles, from: <A> <B>, gives: 8", 1, 1),
    (
        f"<A>: {ONCE}; <B>: {ONCE}",
        "method: half-square triangles, from: <A> <B>, gives: 1",
        1,
        1,
    ),
    ("<A>: {}; <B>: {}", "method: quarter-square triangles, from: <A> <B>", 1, 1),
    (
        f"<A>: {TWICE}; <B>: {TWICE}",
        "method: quarter-square triangles, from: <A> <B>, gives: 1",
        1,
        1,
    ),
    ("<A>: {}; <B>: {}", "method: half-rectangle triangles, from: <A> <B>", 1, 1),
    ("<A>: {}; <B>: {}", "method: half-rectangle triangles, from: <A> <B>", 1, 3),
    ("<A>: {}; <B>: {}", "method: flying geese, goose: <A>, wings: <B>", 2, 1),
    (
        f"<A>: {TWICE}; <B>: {ONCE}",
        "method: flying geese, goose: <A>, wings: <B>, gives: 1",
        2,
        1,
    ),
    ("<A>: {}; <B>: {}", "method: flying geese, goose: <A>, wings: <B>, gives: 1", 2, 1),
    (f"<A>: {{}}; <B>: {ONCE}", "method: square in a square, centre: <A>, rounds: <B>", 1, 1),
    (
        f"<A>: {{}}; <B>: {ONCE}; <C>: {ONCE}; <D>: {ONCE}",
        "method: square in a square, centre: <A>, rounds: <B> <C> <D>",
        1,
        1,
    ),
    (
        "<A>: {}; <B>: {cut: 1 square}",
        "method: snowball corners, base: <A>, corners: <B> . <B> <B>",
        1,
        1,
    ),
]
TRIMMINGS = st.sampled_from(["0", "1/8", "1/4"])


def quilt_of(text: str) -> Quilt:
    with TemporaryDirectory() as folder:
        made = worked_out(Path(folder), text)
    assert not told(made), [str(notice) for notice in told(made)]
    return made.sizes["one"]


def fitting(unit: str, side: Fraction) -> Fraction:
    """The length itself; for a square in a square what a centre of this length makes of it, for
    its centre is cut on the ruler, and no more than an eighth is trimmed away."""
    if "rounds" not in unit:
        return side
    grown = Exact(side)
    for _ in range(unit.partition("rounds: ")[2].count("<")):
        grown = grown * ROOT2
    return grown.down(Fraction(1, 8))


def finishing(unit: str, across: Fraction, down: Fraction) -> str:
    return f"{unit}, finished: {plain(across)} x {plain(down)}"


@given(st.sampled_from(UNITS), EIGHTHS, TRIMMINGS)
def test_the_cut_that_is_worked_out_gives_the_unit_back(
    unit: tuple[str, str, int, int], side: Fraction, trimming: str
) -> None:
    """What is cut for a size gives that size, and a unit without a size stated takes no less."""
    pieces, words, wide, high = unit
    side = fitting(words, side)
    text = source([(pieces, finishing(words, side * wide, side * high))], trimming)
    first = quilt_of(text)
    stated = text
    for letter, piece in first.pieces.items():
        size = f"cut: {plain(piece.cut.across)} x {plain(piece.cut.down or 0)}"
        more = f", diagonal: {piece.diagonal}" if piece.diagonal else ""
        lines = [
            f"  {letter}: {{{size}{more}}}" if line.startswith(f"  {letter}: {{") else line
            for line in stated.splitlines()
        ]
        stated = "\n".join(lines) + "\n"
    again = quilt_of(stated)
    assert again.units["unit-0"].finished == first.units["unit-0"].finished
    open_ = stated.partition(", finished:")[0] + "}\n"
    if "half-rectangle" not in words:
        largest = quilt_of(open_).units["unit-0"].finished
        assert largest.across >= side * wide
        assert largest.down >= side * high


@given(st.sampled_from(UNITS), EIGHTHS)
def test_the_patches_fill_the_unit(unit: tuple[str, str, int, int], side: Fraction) -> None:
    pieces, words, wide, high = unit
    side = fitting(words, side)
    quilt = quilt_of(source([(pieces, finishing(words, side * wide, side * high))]))
    made = quilt.units["unit-0"]
    areas = [area(patch.outline.corners) for patch in patches(quilt, "unit-0") if patch.outline]
    whole = [
        patch.across * patch.down for patch in patches(quilt, "unit-0") if patch.outline is None
    ]
    assert sum([*areas, *whole], Exact(0)) == made.finished.across * made.finished.down
    assert all(one > 0 for one in areas)  # walked round clockwise


def area(corners: tuple[tuple[Exact, Exact], ...]) -> Exact:
    """Half the sum of the cross products: above nought where the corners run clockwise."""
    twice = Exact(0)
    for at, (x, y) in enumerate(corners):
        before = corners[at - 1]
        twice = twice + before[0] * y - x * before[1]
    return twice / 2


@given(st.sampled_from(UNITS), EIGHTHS)
def test_every_inner_seam_lies_between_its_two_parts(
    unit: tuple[str, str, int, int], side: Fraction
) -> None:
    """Its middle is on an edge of both, and both lie on either side of it."""
    pieces, words, wide, high = unit
    side = fitting(words, side)
    quilt = quilt_of(source([(pieces, finishing(words, side * wide, side * high))]))
    made, placed = quilt.units["unit-0"].made, quilt.units["unit-0"].placed
    assert isinstance(made, PiecedMade)
    assert made.seams
    for seam in made.seams:
        x, y = (seam.start.x + seam.end.x) / 2, (seam.start.y + seam.end.y) / 2
        for at in seam.between:
            part = placed[at]
            assert part.x <= x <= part.x + part.across
            assert part.y <= y <= part.y + part.down
            assert part.outline is None or _on_an_edge(part.outline.corners, x, y)
        assert seam.toward in seam.between


def _on_an_edge(corners: tuple[tuple[Exact, Exact], ...], x: Exact, y: Exact) -> bool:
    for at, (u, v) in enumerate(corners):
        a, b = corners[at - 1]
        if (u - a) * (y - b) == (v - b) * (x - a) and (x - a) * (x - u) + (y - b) * (y - v) <= 0:
            return True
    return False


@given(st.sampled_from(UNITS), EIGHTHS, st.sampled_from(["/mirror/mirror", "/right/left"]))
def test_turned_and_turned_back_is_the_same(
    unit: tuple[str, str, int, int], side: Fraction, turns: str
) -> None:
    pieces, words, wide, high = unit
    side = fitting(words, side)
    text = source([(pieces, finishing(words, side * wide, side * high))])
    lain = [
        [
            (patch.letter, patch.x, patch.y, patch.outline and frozenset(patch.outline.corners))
            for patch in patches(quilt_of(f"{text}top: {{rows: [unit-0{turn}]}}\n"), "top")
        ]
        for turn in ("", turns)
    ]
    assert lain[0] == lain[1]


@given(st.sampled_from(UNITS), EIGHTHS, st.integers(1, 9))
def test_twice_the_goes_take_twice_the_pieces(
    unit: tuple[str, str, int, int], side: Fraction, goes: int
) -> None:
    pieces, words, wide, high = unit
    side = fitting(words, side)
    one = source([(pieces, finishing(words, side * wide, side * high))])
    made = quilt_of(one).units["unit-0"].made
    assert isinstance(made, PiecedMade)
    counts = [
        {
            letter: piece.count
            for letter, piece in quilt_of(
                one.replace(", finished:", f", make: {number * made.gives}, finished:")
            ).pieces.items()
        }
        for number in (goes, 2 * goes)
    ]
    assert counts[1] == {letter: 2 * number for letter, number in counts[0].items()}
    assert counts[0] == {letter: goes * number for letter, number in made.takes}
