"""Cutting lays: what is drawn adds up to what is cut, and to the cloth."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

import pytest

from patternbook.cutting.records import BINDING, Cut, Strip
from patternbook.diagrams.lay import lay
from patternbook.diagrams.lay_groups import groups
from patternbook.diagrams.left_handed import left_handed
from patternbook.strokes.stroke import Drawing, Label, Line, Patch
from patternbook.strokes.tones import WASTE
from tests.diagrams.drawn import (
    ALL,
    DEMOS,
    area,
    clashes,
    covered,
    drawn,
    examined,
    labels,
    patches,
    pattern_of,
    words,
)

LATE, TEA = DEMOS


@pytest.mark.parametrize("source", ALL)
def test_the_groups_are_all_strips(source: str) -> None:
    for known in examined(source).sizes.values():
        for plan in known.cutting.fabrics.values():
            made = groups(plan.strips)
            assert sum(one.times for one in made) == sum(strip.times for strip in plan.strips)
            cut: Counter[str] = Counter()
            for one in made:
                full = one.times - (one.last is not None)
                for letter in one.strip.letters:
                    each = sum(c.number for c in one.strip.cuts if c.letter == letter)
                    cut[letter] += each if one.strip.join else each * full
                for c in one.last.cuts if one.last else ():
                    cut[c.letter] += c.number
            wanted: Counter[str] = Counter()
            for strip in plan.strips:
                for letter in strip.letters:
                    wanted[letter] += strip.pieces(letter)
            assert cut == wanted


def test_a_strip_of_books_is_drawn_piece_by_piece() -> None:
    """Crib, first strip: four A of 8½ and a C of 4½ leave 1½ of 40."""
    drawing = drawn(LATE)["lay-books-crib"]
    said = words(drawing)
    assert said[:6] == ["usable width 40″", "A", "A", "A", "A", "C"]
    assert "4 A, 8½ × 2½″" in said
    pieces = [patch for patch in patches(drawing) if patch.fill not in (None, WASTE)]
    assert [round(area(one) / 2.5, 2) for one in pieces[:5]] == [8.5, 8.5, 8.5, 8.5, 4.5]


def test_what_is_left_is_hatched() -> None:
    whole = next(one for one in patches(drawn(LATE)["lay-floor-crib"]) if one.fill == WASTE)
    assert area(whole) == pytest.approx(40 * 8.5)


@pytest.mark.parametrize("source", DEMOS)
def test_every_letter_that_is_cut_stands_in_its_lay(source: str) -> None:
    for known in examined(source).sizes.values():
        for fabric, plan in known.cutting.fabrics.items():
            if not plan.strips:
                continue
            said = " ".join(words(drawn(source)[f"lay-{fabric}-{known.quilt.size}"]))
            for strip in plan.strips:
                for letter in strip.letters:
                    assert letter in said.replace(",", " ").split(), (fabric, letter)


def test_equal_strips_are_drawn_once_with_their_number() -> None:
    said = words(drawn(TEA)["lay-tea-lap"])
    assert "× 6" in said
    assert "× 3" in said
    assert BINDING in words(drawn(TEA)["lay-saucer-lap"])


def test_a_backing_shows_its_lengths_and_seams() -> None:
    """Queen: 107 × 112 of cloth 40 wide: three lengths of 107, two seams across."""
    drawing = drawn(LATE)["backing-queen"]
    assert "3 × 107″ of cloth" in words(drawing)
    assert "2 seams running across" in drawing.alt


def test_borders_say_measure_first_and_their_order() -> None:
    said = words(drawn(TEA)["borders"])
    assert "measure" in said
    assert Counter(word for word in said if word.isdigit()) == {"1": 2, "2": 2}
    assert said.count("F") == 4


def test_the_seam_test_leaves_an_inch_of_an_inch_and_a_half() -> None:
    """Three 1½ in strips joined with ¼ in seams: the middle one measures exactly 1 in
    ("Mastering the elusive 1/4 seam", nancysnotions.com/mastering-the-elusive-1-4-seam/)."""
    assert [word for word in words(drawn(TEA)["seam-test"]) if "″" in word] == ["1½″", "1″"]


# ---- shared and thrifty strips, by hand: the throw's floor of Late Returns


def strip(width: str, length: str, times: int, *cuts: Cut, **more: object) -> Strip:
    sizes = Fraction(width), Fraction(length)
    return replace(Strip(*sizes, times, cuts), **more)  # type: ignore[arg-type]


def cut(letter: str, along: str, across: str, number: int, lanes: int = 1, *above: Cut) -> Cut:
    return Cut(letter, Fraction(along), Fraction(across), number, lanes, above=above)


def laid(*strips: Strip) -> Drawing:
    size = pattern_of(LATE).sizes[1]
    plan = replace(size.plans.cutting.fabrics["floor"], strips=strips, style="thrifty")
    drawing = lay(size, "floor", plan)
    assert list(clashes(drawing)) == []
    assert list(covered(drawing)) == []
    return drawing


def boxes(drawing: Drawing) -> list[tuple[float, float, float, float]]:
    """Left, top, width and height of all pieces, from the first strip's corner."""
    left, top = min((x, y) for one in patches(drawing) if one.fill == WASTE for x, y in one.points)
    return [
        (x - left, y - top, one.points[2][0] - x, one.points[2][1] - y)
        for one in patches(drawing)
        if one.fill not in {None, WASTE} and one.outline == "outline" and len(one.points) == 4
        for x, y in one.points[:1]
        if one.points[2][0] - x > 2
    ]


def near(found: Sequence[tuple[float, ...]]) -> object:
    return [pytest.approx(one) for one in found]


def test_a_stack_lies_in_the_columns_of_what_it_stands_on() -> None:
    """Two D of 18½ × 8½, and above each a J, shorter and lower, from a strip 12 in wide."""
    stack = cut("D", "37/2", "17/2", 2, 1, cut("J", "33/2", "7/2", 2))
    drawing = laid(strip("12", "40", 1, stack))
    assert boxes(drawing) == near(
        [
            (0, 0, 18.5, 8.5),
            (0, 8.5, 16.5, 3.5),
            (21.5, 0, 18.5, 8.5),  # folded: the second pair is cut from the other end
            (21.5, 8.5, 16.5, 3.5),
        ]
    )
    assert "2 J, 4½ × 16½″" in words(drawing)


def test_lanes_lie_side_by_side_and_an_odd_last_one_alone() -> None:
    drawing = laid(strip("9", "40", 1, cut("H", "12", "9/2", 5, 2)))
    assert boxes(drawing) == near(
        [(12.0 * column, 4.5 * lane, 12, 4.5) for column, lane in (
            (0, 0), (0, 1), (1, 0), (1, 1), (2, 0),
        )]
    )  # fmt: skip


def test_strips_beside_a_length_of_cloth_begin_where_its_pieces_end() -> None:
    """Six S of 5 in take 30 of the 40; both strips beside them are 10 in long."""
    length = strip("141/2", "40", 1, cut("S", "5", "141/2", 6), along="length")
    others = strip("37/2", "10", 2, cut("D", "17/2", "37/2", 1), beside=True)
    drawing = laid(length, others, strip("9/2", "40", 1, cut("H", "61/2", "9/2", 1)))
    *lengths, first, second, below = boxes(drawing)
    assert lengths == near([(5.0 * column, 0, 5, 70.5) for column in range(6)])
    assert [first, second] == near([(30, 0, 8.5, 18.5), (30, 18.5, 8.5, 18.5)])
    assert below[1] > 70.5
    assert [word for word in words(drawing) if word in {"1", "2", "3"}] == ["2", "1", "3"]
    assert "6 S, 5 × 70½″" in words(drawing)
    assert "2: 18½″ wide beside it × 2: 1 D, 8½ × 18½″" in drawing.alt


def test_each_cut_shows_its_rulers() -> None:
    """One strip of 8½ takes two rulers; the key says which sign is which."""
    lay_of_floor = drawn(LATE)["lay-floor-throw"]
    glass = [one for one in patches(lay_of_floor) if one.outline == "dimension"]
    wide_strips = 4  # of 8½ and 6½ in: the long ruler and the square beside it
    steps = examined(LATE).sizes["throw"].cutting.fabrics["floor"].steps
    for_strips = sum(len(step.rulers) for step in steps if step.kind == "strip" if step.letters)
    assert for_strips >= 2 * 2
    assert len(glass) >= 2 * wide_strips
    key = words(drawn(LATE)["cuts-key"])
    assert [word for word in key if word.startswith("ruler")] == [
        "ruler, 6½ × 6½″", "ruler, 6 × 24″", "ruler, 12½ × 12½″",
    ]  # fmt: skip


def folds(drawing: Drawing) -> Iterator[Line]:
    return (one for one in drawing.strokes if isinstance(one, Line) and one.role == "fold")


def test_a_strip_that_is_cut_folded_shows_its_fold() -> None:
    """Six B of 6½ come off a folded strip of a roll, three from each end; A and C do not."""
    assert len(list(folds(drawn(LATE)["lay-books-throw"]))) == 1


def test_for_the_left_hand_the_pieces_lie_from_the_right() -> None:
    right = drawn(LATE)["lay-books-throw"]
    left = left_handed(drawn(LATE))["lay-books-throw"]
    assert (left.width, left.height) == (right.width, right.height)
    assert words(left) == words(right)
    for one, other in zip(labels(right), labels(left), strict=True):
        assert other.x == pytest.approx(right.width - one.x)
        assert other.angle == one.angle == 0
    row = [label.x for label in labels(left) if label.text in {"A", "C"} and label.weight == 600]
    assert row[:5] == sorted(row[:5], reverse=True)
    assert "pieces from the left" in right.alt
    assert "pieces from the right" in left.alt
    assert isinstance(left.strokes[0], Label | Line | Patch)
    assert left_handed(drawn(LATE))["cover"] == drawn(LATE)["cover"]
