"""Flying geese: published sizes in, the same sizes out; which way they fly."""

from pathlib import Path

import pytest

from patternbook.quilt.place import patches
from tests.methods.making import cut, faults, source
from tests.published.reading import one_size
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

GEESE = "method: flying geese, goose: <A>, wings: <B>"

# (5.10) four at once: the large square is the finished width + 1 1/4, the small ones the height +
# 7/8. Eleven sizes, height × width: http://members.shaw.ca/beverlysquiltingpage/ffg.htm and
# https://alinequilts.blogspot.com/2011/03/fast-easy-flying-geese-no-more-tears.html
FOUR_AT_ONCE = [
    ("1", "2", "3 1/4", "1 7/8"),
    ("1 1/2", "3", "4 1/4", "2 3/8"),
    ("2", "4", "5 1/4", "2 7/8"),
    ("2 1/2", "5", "6 1/4", "3 3/8"),
    ("3", "6", "7 1/4", "3 7/8"),
    ("3 1/2", "7", "8 1/4", "4 3/8"),
    ("4", "8", "9 1/4", "4 7/8"),
    ("1 1/4", "2 1/2", "3 3/4", "2 1/8"),
    ("1 3/4", "3 1/2", "4 3/4", "2 5/8"),
    ("2 1/4", "4 1/2", "5 3/4", "3 1/8"),
    ("2 3/4", "5 1/2", "6 3/4", "3 5/8"),
]


def test_eleven_sizes_four_at_once(run: Run, pattern: WritePattern) -> None:
    units = [
        ("<A>: {}; <B>: {}", f"{GEESE}, finished: {wide} x {high}")
        for high, wide, _, _ in FOUR_AT_ONCE
    ]
    squares = list(cut(run, pattern(source(units))).values())
    assert squares[::2] == [large for _, _, large, _ in FOUR_AT_ONCE]
    assert squares[1::2] == [small for _, _, _, small in FOUR_AT_ONCE]


# (5.11) a printed slip: 1 1/2 + 7/8 is not 2 1/4,
# https://marlysquilts.blogspot.com/2014/04/no-waste-flying-geese.html?showComment=1398036148254
@pytest.mark.parametrize(("small", "codes"), [("2 1/4", ["pieces-small"]), ("2 3/8", [])])
def test_a_printed_slip(run: Run, pattern: WritePattern, small: str, codes: list[str]) -> None:
    pieces = f"<A>: {{cut: 4 1/4 square}}; <B>: {{cut: {small} square}}"
    found = faults(run, pattern(source([(pieces, f"{GEESE}, finished: 3 x 1 1/2")])))
    assert [one[0] for one in found] == codes
    assert all(one[1] == "Cut B0 at least 2 3/8 square." for one in found)


# (5.12) one at a time: http://www.allpeoplequilt.com/print/325984 (1 1/2 × 3) and
# https://theashleytomlinson.com/flying-geese-stitch-and-flip/ (3 1/2 × 6 1/2 raw)
@pytest.mark.parametrize(
    ("stated", "wide", "high", "square"),
    [
        ("finished: 3 x 1 1/2", "3 1/2", "2", "2"),
        ("measure: 6 1/2 x 3 1/2", "6 1/2", "3 1/2", "3 1/2"),
    ],
)
def test_one_at_a_time(
    run: Run, pattern: WritePattern, stated: str, wide: str, high: str, square: str
) -> None:
    path = pattern(source([("<A>: {}; <B>: {}", f"{GEESE}, gives: 1, {stated}")]))
    pieces = one_size(run, path)["pieces"]
    assert (pieces["A0"]["cut"]["across"]["value"], pieces["A0"]["cut"]["down"]["value"]) == (
        wide,
        high,
    )
    assert pieces["B0"]["cut"]["across"]["value"] == square
    assert (pieces["A0"]["count"]["value"], pieces["B0"]["count"]["value"]) == ("1", "2")


# (5.45) a printed book's error: a goose that finishes 20 wide from a 19 1/2 square cut twice,
# https://nancynearphiladelphia.blogspot.com/2013/07/moo-to-you-sarah.html
def test_a_goose_of_triangles_in_a_printed_book(run: Run, pattern: WritePattern) -> None:
    pieces = "<A>: {cut: SIZE square, diagonal: twice}; <B>: {diagonal: once}"
    text = source([(pieces, f"{GEESE}, gives: 1, finished: 20 x 10")])
    found = faults(run, pattern(text.replace("SIZE", "19 1/2")))
    assert [one[:2] for one in found] == [("pieces-small", "Cut A0 at least 21 1/4 square.")]
    assert run("check", pattern(text.replace("SIZE", "21 1/4"))).code == 0
    assert run("check", pattern(text.replace("SIZE", "21 1/2"))).code == 0


@pytest.mark.parametrize(
    ("pieces", "unit", "code", "hint"),
    [
        # printed errors: a goose narrower than its wings; goose and wings swapped
        ("2 1/2 x 3 1/2; 3 1/2 square", "gives: 1", "geese-two-to-one", "6 1/2 x 3 1/2"),
        ("2 1/2 square; 4 1/2 x 2 1/2", "gives: 1", "geese-swapped", "`goose: B0`"),
        ("6 x 3 1/2; 3 1/2 square", "gives: 1", "geese-two-to-one", "6 1/2 x 3 1/2"),
        ("6 1/2 x 3 1/2; 3 square", "gives: 1", "geese-wings", "Cut B0 3 1/2 square"),
        ("7 1/4 x 7; 3 7/8 square", "gives: 4", "not-square", "7 1/4 x 7 1/4"),
        ("7 1/4 square, diagonal: twice; 3 7/8 square", "gives: 4", "diagonal", "`gives: 1`"),
        ("6 1/2 x 3 1/2; 3 1/2 square, diagonal: once", "gives: 1", "diagonal", "Leave `diag"),
        ("7 1/4 square, diagonal: once; 3 7/8 square", "gives: 1", "diagonal", "twice` with A0"),
    ],
)
def test_what_cannot_be_made_is_told_with_what_can(
    run: Run, pattern: WritePattern, pieces: str, unit: str, code: str, hint: str
) -> None:
    goose, wings = pieces.split("; ")
    text = source([(f"<A>: {{cut: {goose}}}; <B>: {{cut: {wings}}}", f"{GEESE}, {unit}")])
    found = faults(run, pattern(text))
    assert code in {one[0] for one in found}
    assert any(hint in one[1] for one in found if one[0] == code), found


@pytest.mark.parametrize("gives", [1, 4])
@pytest.mark.parametrize("stated", ["6 x 4", "3 x 3", "3 x 6"])
def test_a_goose_is_twice_as_wide_as_high(
    run: Run, pattern: WritePattern, gives: int, stated: str
) -> None:
    text = source([("<A>: {}; <B>: {}", f"{GEESE}, gives: {gives}, finished: {stated}")])
    found = faults(run, pattern(text))
    assert "unit-finished" in {one[0] for one in found}


def test_it_flies_up_and_turns_with_its_cell(tmp_path: Path) -> None:
    """The tip lies at the middle of the top as made; turned right it flies to the right."""
    text = source([("<A>: {}; <B>: {}", f"{GEESE}, finished: 4 x 2")]).replace("unit-0", "one")
    text += "  pair: {columns: [one one/half]}\ntop: {rows: [pair one/right one/left]}\n"
    quilt = worked_out(tmp_path, text).sizes["one"]
    tips = []
    for patch in patches(quilt, "top"):
        if patch.letter == "A0" and patch.outline is not None:
            x, y = (float(patch.x + patch.across / 2), float(patch.y + patch.down / 2))
            # the tip is the corner at the right angle, alone on its side of the box
            corner = patch.outline.corners[0]
            tips.append((float(corner.x) - x, float(corner.y) - y))
    assert tips == [(0, -1), (0, 1), (1, 0), (-1, 0)]
