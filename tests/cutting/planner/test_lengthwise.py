"""Blocks of lengthwise pieces, by hand."""

from patternbook.cutting.planner.lengthwise import STATES, blocks
from patternbook.cutting.planner.records import Kind
from tests.cutting.planner.small import kind


def sizes(width: int, *pieces: Kind) -> list[tuple[int, int]]:
    """(width, length)."""
    return [(block.width, block.length) for block in blocks(pieces, width)[0]]


def test_side_by_side_or_one_after_the_other() -> None:
    """Two of 300 and two of 280, 40 wide: four columns; three of 300, 300 and 560; two of 580 (a
    long and a short one each); or one of 1160."""
    pieces = kind("side", 300, 40, 2), kind("top", 280, 40, 2)
    assert sizes(336, *pieces) == [(160, 300), (120, 560), (80, 580), (40, 1160)]


def test_narrow_pieces_do_not_lie_in_a_wide_column() -> None:
    """A border 60 wide and six sashes of 12: three sashes in a column as long as the border."""
    pieces = kind("border", 300, 60, 1), kind("sash", 100, 12, 6)
    assert sizes(336, *pieces)[0] == (60 + 2 * 12, 300)


def test_no_block_is_wider_than_the_cloth() -> None:
    """Three of 150 do not lie side by side on 336."""
    assert sizes(336, kind("wide", 200, 150, 3)) == [(300, 400), (150, 600)]


def test_no_block_is_longer_than_can_be_cut() -> None:
    """Of the four blocks of the first test those of 300 and 560; none where a piece is longer."""
    pieces = kind("side", 300, 40, 2), kind("top", 280, 40, 2)
    found, every = blocks(pieces, 336, 560)
    assert ([block.length for block in found], every) == ([300, 560], True)
    assert blocks(pieces, 336, 290) == ([], True)


def test_every_block_is_tried_only_of_few_pieces() -> None:
    assert blocks((kind("side", 300, 40, 2),), 336)[1]
    many = tuple(kind(f"P{n}", 100 + n, 12, 40) for n in range(3))
    assert STATES < 41**3
    found, every = blocks(many, 336)
    assert not every
    lengths = [block.length for block in found]
    assert lengths == sorted(lengths)
    assert all(sum(map(len, block.columns)) == 120 for block in found)
