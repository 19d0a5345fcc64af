"""Quarter-square triangles: published sizes in, the same sizes out; how they lie."""

from pathlib import Path

import pytest

from patternbook.quilt.place import patches
from tests.methods.making import cut, faults, source
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

QUARTERS = "method: quarter-square triangles"


# (5.8) fin + 1 1/4: http://quiltville.blogspot.com/2005/06/cutting-quarter-square-triangles.html?m=1,
# https://shop.perkinsdrygoods.com/blogs/perkins-dry-goods-71/easy-quarter-square-triangles and
# https://madridheritagequilters.blogspot.com/2009
# (5.9) fin + 1 1/2: http://www.opengatequilts.com/howtovideo.html and
# http://north-hampshire-quilters.org.uk/hblk402b.htm
@pytest.mark.parametrize(
    ("side", "trimming", "square"),
    [
        ("4", "0", "5 1/4"),
        ("3", "0", "4 1/4"),
        ("6", "0", "7 1/4"),
        ("3 1/2", "1/4", "5"),
        ("3", "1/4", "4 1/2"),
        ("6", "1/4", "7 1/2"),
    ],
)
@pytest.mark.parametrize("gives", [1, 2])
def test_squares_for_a_finished_size(
    run: Run, pattern: WritePattern, side: str, trimming: str, square: str, gives: int
) -> None:
    pieces = "<A>: {}; <B>: {}"
    if gives == 1:
        pieces = "<A>: {diagonal: twice}; <B>: {diagonal: twice}"
    unit = f"{QUARTERS}, from: <A> <B>, gives: {gives}, finished: {side} square"
    assert cut(run, pattern(source([(pieces, unit)], trimming))) == {"A0": square, "B0": square}


def test_four_clockwise_from_the_top(tmp_path: Path) -> None:
    pieces = "; ".join(f"<{letter}>: {{diagonal: twice}}" for letter in "ABCD")
    unit = f"{QUARTERS}, from: <A> <B> <C> <D>, gives: 1, finished: 4 square"
    text = source([(pieces, unit)])
    quilt = worked_out(tmp_path, text).sizes["one"]
    boxes = [
        (patch.letter, *(float(one) for one in (patch.x, patch.y, patch.across, patch.down)))
        for patch in patches(quilt, "unit-0")
    ]
    assert boxes == [
        ("A0", 0, 0, 4, 2),
        ("B0", 2, 0, 2, 4),
        ("C0", 0, 2, 4, 2),
        ("D0", 0, 0, 2, 4),
    ]


# A-08 of the printed errors: units that finish 5 drawn from a 5 7/8 square; + 1 1/4 is needed.
@pytest.mark.parametrize(
    ("pieces", "unit", "code", "hint"),
    [
        ("{cut: 5 7/8 square}", "from: <A> <B>", "pieces-small", "Cut A0 at least 6 1/4 square."),
        ("{cut: 6 1/4 square}", "from: <A> <B> <A>", "quarter-pieces", "`from: A B`"),
        ("{cut: 6 1/4 square}", "from: <A> <A>", "quarter-pieces", "`from: A B`"),
        ("{cut: 6 1/4 square}", "from: <A> <B>, gives: 4", "quarter-gives", "`gives: 2`"),
        ("{cut: 6 1/4 square}", "from: <A> <B>, gives: 8", "quarter-gives", "`gives: 1`"),
        ("{cut: 6 1/4 square}", "from: <A> <B>, gives: 1", "diagonal", "`diagonal: twice`"),
        ("{cut: 6 1/4 square, diagonal: once}", "from: <A> <B>", "diagonal", "`gives: 1`"),
        ("{cut: 6 x 7}", "from: <A> <B>", "not-square", "6 x 6"),
    ],
)
def test_what_cannot_be_made_is_told_with_what_can(
    run: Run, pattern: WritePattern, pieces: str, unit: str, code: str, hint: str
) -> None:
    text = source([(f"<A>: {pieces}; <B>: {pieces}", f"{QUARTERS}, {unit}, finished: 5 square")])
    found = faults(run, pattern(text))
    assert code in {one[0] for one in found}
    assert any(hint in one[1] for one in found if one[0] == code), found
