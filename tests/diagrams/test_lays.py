"""Cutting lays: what is drawn adds up to what is cut, and to the cloth."""

from collections import Counter

import pytest

from patternbook.cutting.records import BINDING
from patternbook.diagrams.lay_groups import groups
from patternbook.strokes.tones import WASTE
from tests.diagrams.drawn import ALL, DEMOS, area, drawn, examined, patches, words

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
