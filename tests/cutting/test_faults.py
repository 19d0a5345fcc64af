"""Faults of the kinds found in print, at the cutting table: both sides of each with its sum."""

from fractions import Fraction

import pytest

from patternbook.notice import Place
from patternbook.quilt.records import Backing, Binding, CutSize, Piece, Run, Settings
from tests.cutting.small import codes, cut, fabric, piece, strip, the, told

WIDE = fabric(width=Fraction(42))


def test_strips_short_for_two_letters() -> None:
    """A-27: seven rectangles use all of eight strips; the ends give eight of 64 squares."""
    notices = told(
        piece("A", "5 1/2 x 2 1/2", 56, stated_strips=8),
        piece("B", "2 1/2 square", 64, host="A"),
        cloth=WIDE,
    )
    short = the(notices, "strips-short")
    assert (short.severity, short.stated, short.needed) == ("error", "8", "12")
    assert "8 of (7 A 5½ + 1 B 2½) + 3 of (16 B 2½) + 1 of (8 B 2½)" in short.message


def test_strips_short_of_one_letter() -> None:
    """A-28: four of 8½ to a strip of 42; 26 strips give 104 of 130."""
    short = the(
        told(piece("A", "8 1/2 x 2 1/2", 130, stated_strips=26), cloth=WIDE), "strips-short"
    )
    assert short.needed == "33"
    assert "4 to a strip (4 × 8½ of 42″)" in short.message
    assert "the 26 stated give 104, short by 26 pieces" in short.message


def test_strips_short_for_sets() -> None:
    """A-29: 96 four-patches take twelve strips of each colour, not six."""
    runs = (Run("pair", Fraction(42), 12, whole=True),)
    short = the(told(piece("A", "2 1/2 x WOF", runs=runs, stated_strips=6)), "strips-short")
    assert "12 whole for pair: 12 strips; the 6 stated are short by 6" in short.message


def test_exact_width_fails_on_narrower_cloth() -> None:
    """A-31: seven squares of 6 need all of 42; of 41½ only six fit."""
    squares = piece("A", "6 square", 63, stated_strips=9)
    scant = the(told(squares, cloth=WIDE), "scant-strips")
    assert (scant.severity, scant.stated, scant.needed) == ("warning", "9", "11")
    unstated = piece("A", "6 square", 63)
    assert codes(told(unstated, cloth=WIDE)) == ["exact-fit", "exact-count"]
    narrow = told(squares, cloth=fabric(width=Fraction(83, 2)))
    assert the(narrow, "strips-short").needed == "11"


def test_border_longer_than_a_strip() -> None:
    """A-32: the top border is 43½, a strip 42, and each is to be cut from one strip."""
    border = strip("F", "5 1/2", ("33 1/2", 2), ("43 1/2", 2), stated_strips=4, join="none")
    fault = the(told(border, cloth=WIDE), "too-long")
    assert (fault.severity, fault.rule) == ("error", "R7")
    assert "short by 1½″" in fault.message
    joined = strip("F", "5 1/2", ("33 1/2", 2), ("43 1/2", 2), stated_strips=4, join="straight")
    assert codes(told(joined, cloth=WIDE)) == []


def test_border_strips_with_their_joins() -> None:
    """A-33: four lengths of 60½ need seven strips; six give 237½ once joined."""
    border = strip("F", "5 1/2", ("60 1/2", 4), stated_strips=6, join="straight")
    short = the(told(border), "strips-short")
    assert short.needed == "7"
    assert "4 × 60½ = 242″" in short.message
    assert "6 × 40 − 5 × ½ = 237½″, short by 4½″" in short.message


def test_pattern_that_depends_on_the_width() -> None:
    """twocraftywomen.blogspot.com, "easy quilt pattern": strips 40½ long fail at 40 usable."""
    strips = piece("E", "5 1/2 x 40 1/2", 5, join="none")
    assert "too-long" in codes(told(strips), "error")
    assert codes(told(strips, cloth=fabric(width=Fraction(81, 2))), "error") == []


def test_a_patch_that_must_be_joined_is_told() -> None:
    told_of = the(told(piece("E", "5 1/2 x 40 1/2", 5)), "joined-pieces")
    assert told_of.severity == "advice"
    assert "Cloth 40½″ wide needs no join" in told_of.message


def test_triangles_cannot_be_joined() -> None:
    assert "too-long" in codes(told(piece("A", "20 x 44", 2, diagonal="once")), "error")


def test_wider_than_the_cloth_both_ways() -> None:
    fault = the(told(piece("A", "45 x 60", 1)), "too-wide")
    assert "A, cut 45 × 60″, is wider than the cloth (40″) both ways." in fault.message


def test_a_guest_that_does_not_lie_in_its_hosts_strips() -> None:
    notices = told(piece("A", "2 1/2 square", 8), piece("B", "3 1/2 square", 8, host="A"))
    assert the(notices, "strip-narrow").rule == "R6"


def test_a_guest_of_another_fabric() -> None:
    notices = told(
        piece("A", "2 1/2 square", 8), piece("B", "2 1/2 square", 8, host="A", fabric=None)
    )
    assert the(notices, "host-fabric").severity == "error"


def test_a_guests_own_strips_are_not_used() -> None:
    guest = piece("B", "2 1/2 square", 8, host="A", stated_strips=3)
    assert the(told(piece("A", "2 1/2 square", 8), guest), "guest-strips").severity == "warning"


def test_more_to_a_strip_than_fit() -> None:
    fault = the(told(piece("S", "2 1/2 x 12 1/2", 31, stated_per_strip=4)), "per-strip")
    assert fault.message == "S: 4 × 12½ = 50″ do not fit in a strip of 40″; 3 fit."
    assert (fault.severity, fault.needed) == ("error", "3")


def test_squares_short() -> None:
    """A-20: 36 pairs are not needed for 36 units, but 18 squares are the least."""
    short = the(
        told(piece("A", "3 7/8 square", 36, diagonal="once", stated_squares=17)), "squares-short"
    )
    assert (short.stated, short.needed) == ("17", "18")
    spare = told(piece("A", "3 7/8 square", 36, diagonal="once", stated_squares=36))
    assert the(spare, "spare-squares").severity == "warning"


@pytest.mark.parametrize(("stated", "severity"), [(9, "advice"), (10, "advice"), (11, "warning")])
def test_spare_strips_are_cut_and_told(stated: int, severity: str) -> None:
    """More is obeyed; beyond a third more it is a warning (R15)."""
    notices = told(piece("A", "5 square", 60, stated_strips=stated))
    assert the(notices, "spare-strips").severity == severity


def test_short_strips_are_only_told_where_letters_share_the_cloth() -> None:
    shared = Settings(cutting="shared")
    notices = told(piece("A", "8 1/2 x 2 1/2", 130, stated_strips=26), settings=shared)
    assert the(notices, "strips-short").severity == "advice"


def test_the_edit_that_would_mend_it() -> None:
    place = Place("pattern.yaml", 4, 20, 4, 22)
    squares = piece("A", "2 1/2 square", 96, stated_strips=5, key_places={"strips": place})
    (edit,) = the(told(squares), "strips-short").edits
    assert (edit.place, edit.old, edit.new) == (place, "5", "6")


@pytest.mark.parametrize(
    ("finished", "stated", "strips"), [("54 x 72", 6, "7"), ("50 x 61", 5, "6")]
)
def test_binding_strips_rounded_down_or_without_joins(
    finished: str, stated: int, strips: str
) -> None:
    """A-51 and A-52: the joins, the corners and the overlap take some of each strip."""
    binding = Binding("cloth", Fraction(5, 2), stated_strips=stated)
    short = the(told(finished=finished, binding=binding, cloth=WIDE), "binding-short")
    assert (short.needed, short.rule) == (strips, "R14")


def test_backing_too_small() -> None:
    """A-53: a top of 48½ × 62½ on a backing of 50 × 63."""
    backing = Backing(over=Fraction(3), stated_size=cut("50 x 63"))
    short = the(told(finished="48 1/2 x 62 1/2", backing=backing), "backing-short")
    assert "needs 54½ × 68½″" in short.message
    assert "short in width by 4½″ and in length by 5½″" in short.message
    assert short.needed == "54 1/2 x 68 1/2"


def test_backing_cloth_narrower_than_the_quilt() -> None:
    """A-54: 1½ yd of 42 in cloth for a quilt 46 square: two lengths are needed."""
    cloth = fabric(width=Fraction(42), stated_yards=Fraction(3, 2))
    notices = told(finished="46 square", backing=Backing("cloth"), cloth=cloth)
    short = the(notices, "yards-short")
    assert (short.rule, short.needed) == ("R15", "3")
    assert "2 × 54 (backing) = 108″; 1 1/2 yd is 54″, short by 54″" in short.message


def test_backing_cloth_overstated() -> None:
    """A-26: 3¾ yd for a runner that one width covers."""
    cloth = fabric(width=Fraction(42), stated_yards=Fraction(15, 4))
    backing = Backing("cloth", seams="lengthwise")
    spare = the(told(finished="12 x 58", backing=backing, cloth=cloth), "spare-yards")
    assert (spare.severity, spare.needed) == ("warning", "1 7/8")


def test_panels_short() -> None:
    backing = Backing(stated_panels=1, stated_size=None)
    short = the(told(finished="54 x 66", backing=backing), "panels-short")
    assert (short.needed, short.severity) == ("2", "error")


def test_yards_short() -> None:
    """A-22: 28 + 24 = 52 in from 1⅜ yd, which is 49½."""
    notices = told(
        piece("A", "3 1/2 square", 96),
        strip("F", "4", ("60", 4), stated_strips=6, join="straight"),
        cloth=fabric(width=Fraction(42), stated_yards=Fraction(11, 8)),
        settings=Settings(spare=Fraction(0)),
    )
    short = the(notices, "yards-short")
    assert short.message == "cloth: 6 × 4 (F) + 8 × 3½ (A) = 52″; 1 3/8 yd is 49½″, short by 2½″."
    assert (short.rule, short.needed) == ("R4", "1 1/2")


@pytest.mark.parametrize(
    ("size", "yards", "own", "severity", "code", "offered"),
    [
        # 5 x 10 = 50 in: 1 1/2 yd is 54 and just does, 1 3/8 is 49 1/2.
        ("10 square", "11/8", (), "error", "yards-short", ["1 1/2"]),
        ("10 square", "3/2", (), None, None, []),
        # 5 x 10 1/2 = 52 1/2 in: 1 1/2 yd leaves 1 1/2 of the usual spare of 3.
        ("10 1/2 square", "3/2", (), "advice", "tight-yards", []),
        ("10 1/2 square", "3/2", ("spare",), "error", "yards-short", ["1 5/8"]),
        ("10 1/2 square", "5/4", (), "error", "yards-short", ["1 5/8", "1 1/2"]),
    ],
)
def test_yards_without_the_spare(
    size: str,
    yards: str,
    own: tuple[str, ...],
    severity: str | None,
    code: str | None,
    offered: list[str],
) -> None:
    """An author's own spare is kept to the letter; the usual one is advice (common practice, no
    source)."""
    notices = told(
        piece("A", size, 18),
        cloth=fabric(
            width=Fraction(43),
            stated_yards=Fraction(yards),
            key_places={"yards": Place("pattern.yaml", 5, 10, 5, 15)},
        ),
        settings=Settings(own=frozenset(own)),
    )
    found = [one for one in notices if "yards" in one.code]
    assert [(one.severity, one.code) for one in found] == ([(severity, code)] if code else [])
    assert [edit.new for one in found for edit in one.edits] == offered


@pytest.mark.parametrize(
    ("pieces", "pack", "packs", "short"),
    [
        (piece("A", "10 square", 80), 42, "2", "80 squares are needed; 1 pack of 42 holds 42"),
        (piece("A", "5 square", 152), 36, "2", "38 squares are needed; 1 pack of 36 holds 36"),
    ],
)
def test_packs_short(pieces: Piece, pack: int, packs: str, short: str) -> None:
    """A-65: two squares a block from one pack; A-66: four from each ten-inch square."""
    squares = fabric(form="squares", size=cut("10 square"), pack=pack, stated_packs=1)
    fault = the(told(pieces, cloth=squares), "packs-short")
    assert (fault.needed, fault.rule) == (packs, "R21")
    assert short in fault.message


def test_roll_short() -> None:
    """A-67: eleven panels of four strips from one roll of forty."""
    roll = fabric(
        form="strip roll", size=CutSize(Fraction(5, 2), Fraction(40)), pack=40, stated_packs=1
    )
    runs = (Run("panel", Fraction(40), 44, whole=True),)
    fault = the(told(piece("A", "2 1/2 x WOF", runs=runs), cloth=roll), "packs-short")
    assert "44 strips are needed; 1 pack of 40 holds 40, short by 4" in fault.message


def test_quarter_short() -> None:
    """A-23: six, not nine, squares of 6½ lie in a fat quarter of 18 × 21."""
    quarter = fabric(form="fat quarter", stated_packs=1)
    fault = the(told(piece("A", "6 1/2 square", 9), cloth=quarter), "packs-short")
    assert fault.message == "cloth: 2 fat quarters are needed; 1 stated, short by 1."
