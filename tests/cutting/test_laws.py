"""What holds for every plan, whatever the pieces (hypothesis)."""

from fractions import Fraction
from typing import Literal

from hypothesis import given
from hypothesis import strategies as st

from patternbook.cutting.plan import plan
from patternbook.cutting.records import CuttingPlan, FabricPlan
from patternbook.notice import failed
from patternbook.quilt.records import CutSize, Piece, Run
from tests.cutting.small import fabric, piece, quilt, strip

eighths = st.integers(8, 200).map(lambda number: Fraction(number, 8))
sides = st.tuples(eighths, eighths)
counts = st.integers(1, 300)
widths = st.sampled_from([Fraction(40), Fraction(42), Fraction(83, 2)])
joins: st.SearchStrategy[Literal["diagonal", "straight"]] = st.sampled_from(
    ("diagonal", "straight")
)


def cut_alone(size: tuple[Fraction, Fraction], count: int, width: Fraction) -> CuttingPlan:
    letter = piece("A", f"{size[0]} x {size[1]}", count)
    return plan(quilt(letter, cloth=fabric(width=width)))[0]


def recounted(cloth: FabricPlan, letter: str) -> int:
    return sum(one.pieces(letter) for one in cloth.strips)


@given(sides, counts, widths)
def test_cut_is_what_is_needed_and_lies_in_the_strip(
    size: tuple[Fraction, Fraction], count: int, width: Fraction
) -> None:
    made = cut_alone(size, count, width)
    cloth = made.fabrics["cloth"]
    assert recounted(cloth, "A") == made.yields["A"] == count
    for one in cloth.strips:
        assert one.left >= 0
        assert all(cut.lanes * cut.across <= one.width for cut in one.cuts)


@given(sides, counts, widths)
def test_no_more_cloth_than_is_there_and_no_less_than_its_area(
    size: tuple[Fraction, Fraction], count: int, width: Fraction
) -> None:
    cloth = cut_alone(size, count, width).fabrics["cloth"]
    assert cloth.length * width >= count * size[0] * size[1]


@given(sides, counts, widths)
def test_one_more_piece_never_takes_fewer_strips(
    size: tuple[Fraction, Fraction], count: int, width: Fraction
) -> None:
    now = cut_alone(size, count, width).letters["A"].strips
    assert (
        now <= cut_alone(size, count + 1, width).letters["A"].strips <= now + 1 + (size[0] > width)
    )


@given(sides, counts, widths)
def test_the_plan_holds_at_its_least_width_and_not_below(
    size: tuple[Fraction, Fraction], count: int, width: Fraction
) -> None:
    made = cut_alone(size, count, width)
    least = made.fabrics["cloth"].least_width
    assert least is not None
    assert least <= width
    assert cut_alone(size, count, least).letters["A"].own <= made.letters["A"].own
    if made.letters["A"].per_strip and made.letters["A"].own * made.letters["A"].per_strip == count:
        below = cut_alone(size, count, least - Fraction(1, 8)).letters.get("A")
        assert below is None or below.own > made.letters["A"].own


@given(
    st.lists(st.tuples(eighths, counts), min_size=1, max_size=6, unique_by=lambda run: run[0]),
    joins,
)
def test_lengths_of_a_strip(
    runs: list[tuple[Fraction, int]], join: Literal["diagonal", "straight"]
) -> None:
    letter = strip("F", "2 1/2", *[(str(length), number) for length, number in runs], join=join)
    cloth = plan(quilt(letter))[0].fabrics["cloth"]
    assert recounted(cloth, "F") == sum(number for _, number in runs)
    assert all(one.left >= 0 for one in cloth.strips)
    total = sum(length * number for length, number in runs)
    assert sum(one.times for one in cloth.strips) * 40 >= total


@given(st.lists(st.tuples(eighths, counts), min_size=1, max_size=5))
def test_letters_that_share_strips(guests: list[tuple[Fraction, int]]) -> None:
    host = piece("A", "5 1/2 x 2 1/2", 30)
    others = [
        piece(chr(ord("B") + place), f"{length} x 5/2", number, host="A")
        for place, (length, number) in enumerate(guests)
    ]
    made, notices = plan(quilt(host, *others))
    assert not failed(notices)
    for letter in (host, *others):
        assert recounted(made.fabrics["cloth"], letter.letter) == letter.count
    assert made.letters["A"].own == sum(one.times for one in made.fabrics["cloth"].strips)


@given(sides, counts, st.sampled_from(["fat quarter", "fat eighth"]))
def test_pre_cut_pieces_hold_what_is_cut(
    size: tuple[Fraction, Fraction], count: int, form: str
) -> None:
    made, notices = plan(
        quilt(piece("A", f"{size[0]} x {size[1]}", count), cloth=fabric(form=form))
    )
    if failed(notices):
        return
    cloth = made.fabrics["cloth"]
    assert recounted(cloth, "A") == count
    area = sum(sheet.across * sheet.down * sheet.times for sheet in cloth.sheets)
    assert area >= count * size[0] * size[1]


@given(sides, counts)
def test_the_purchase_covers_the_sum(size: tuple[Fraction, Fraction], count: int) -> None:
    buy = cut_alone(size, count, Fraction(40)).fabrics["cloth"].buy
    assert buy.amount is not None
    assert buy.amount * 36 >= buy.needed
    assert buy.amount * 36 - buy.needed < Fraction(36, 8)
    assert buy.spare >= 0


@st.composite
def odd_pieces(draw: st.DrawFn, letter: str) -> Piece:
    """Any letter, however odd."""
    figures = st.none() | st.integers(1, 50)
    across = draw(eighths)
    down = draw(st.none() | eighths)
    lengths = st.builds(Run, st.sampled_from("xy"), eighths, st.integers(0, 40), st.booleans())
    return piece(
        letter,
        f"{across} x {down or 'WOF'}",
        draw(st.integers(0, 400)),
        runs=() if down else tuple(draw(st.lists(lengths, max_size=3))),
        spare=draw(st.integers(0, 3)),
        mirrored=0,
        diagonal=draw(st.sampled_from([None, "once", "twice"])) if down else None,
        along=draw(st.sampled_from(["width", "length"])),
        join=draw(st.sampled_from(["diagonal", "straight", "none"])),
        host=draw(st.sampled_from([None, "A", "B", "Z"])),
        stated_squares=draw(figures),
        stated_strips=draw(figures),
        stated_per_strip=draw(figures),
        **({"strip_width": str(draw(eighths))} if draw(st.booleans()) else {}),
    )


forms = st.sampled_from(["yardage", "strip roll", "squares", "fat quarter", "fat eighth", "panel"])


@given(odd_pieces("A"), odd_pieces("B"), odd_pieces("C"), forms, st.none() | sides, st.booleans())
def test_odd_pieces_are_told_of_and_never_stop_the_plan(
    one: Piece,
    two: Piece,
    three: Piece,
    form: str,
    size: tuple[Fraction, Fraction] | None,
    one_way: bool,
) -> None:
    cloth = fabric(form=form, size=CutSize(*size) if size else None, pack=40, one_way=one_way)
    made, notices = plan(quilt(one, two, three, cloth=cloth, finished="40 x 50"))
    assert all(notice.message for notice in notices)
    for letter, letter_plan in made.letters.items():
        cuts = recounted(made.fabrics["cloth"], letter)
        assert cuts == letter_plan.cuts >= 0
    for strip_cut in made.fabrics["cloth"].strips if made.fabrics else ():
        assert strip_cut.left >= 0
