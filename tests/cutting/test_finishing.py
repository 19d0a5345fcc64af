"""Backing, batting and binding."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.metric import metres
from patternbook.quilt.records import Backing, Batting, Binding, Settings
from tests.cutting.small import codes, cut, fabric, inches, planned, the, told
from tests.support import Run, WritePattern

WIDE = fabric(width=Fraction(42))

# A printed pattern in five sizes (its shop listing: equilter.com/product/265806): quilt ->
# yards of backing, yards of binding. Reproduced with 8 in over, 42 in usable and ¼ yd; and with
# the perimeter + 10 ÷ 40, strips of 2½ and ⅛ yd.
FIVE_SIZES = [
    ("45 square", "3", "3/8"),
    ("60 x 75", "4", "1/2"),
    ("75 x 90", "5 1/2", "5/8"),
    ("90 x 105", "8 1/4", "3/4"),
    ("105 square", "9 1/2", "7/8"),
]


@pytest.mark.parametrize(("finished", "backing", "binding"), FIVE_SIZES)
def test_five_printed_sizes(finished: str, backing: str, binding: str) -> None:
    made = planned(finished=finished, backing=Backing("cloth"), cloth=WIDE)
    assert made.backing
    assert made.backing.best.amount == inches(backing)
    assert made.fabrics["cloth"].buy.amount == inches(backing)
    trade = Settings(spare=Fraction(0), joins="not counted")
    bound = planned(finished=finished, binding=Binding("cloth", Fraction(5, 2)), settings=trade)
    assert bound.fabrics["cloth"].buy.amount == inches(binding)


@pytest.mark.parametrize(
    ("finished", "size"),
    [("60 x 80", "68 x 88"), ("40 x 50", "48 x 58"), ("40 x 60", "48 x 68")],
)
def test_overage_for_a_frame(finished: str, size: str) -> None:
    """sewberrychic.com/backing, mmmquilts.blogspot.com, happy-stitches.com: four on each side."""
    made = planned(finished=finished, backing=Backing())
    assert made.backing
    assert made.backing.size == made.backing.frame.size == cut(size)


def test_overage_at_home_and_on_a_frame() -> None:
    """maxiemakes.com, "Layer and quilt as desired": 50 square, 56 at home and 58 on a frame."""
    made = planned(finished="50 square", backing=Backing(over=Fraction(3)))
    assert made.backing
    assert made.backing.home.size == made.backing.size == cut("56 square")
    assert made.backing.frame.size == cut("58 square")


@pytest.mark.parametrize(
    ("finished", "best", "other"),
    [
        # quiltingboard.com/7400852-post21.html: 65 × 78 is 130 in across, 156 in along
        ("57 x 70", 130, 156),
        # two widths laid across the length of 62 × 74 (own arithmetic)
        ("54 x 66", 124, 148),
        # quiltingboard.com, "mathematically challenged": 80 × 56 from two widths of 56
        ("72 x 48", 112, 160),
    ],
)
def test_the_cheaper_direction_of_the_seams(finished: str, best: int, other: int) -> None:
    made = planned(finished=finished, backing=Backing("cloth"), cloth=WIDE)
    assert made.backing
    assert (made.backing.best.length, made.backing.other.length) == (
        Fraction(best),
        Fraction(other),
    )


def test_a_stated_direction_is_obeyed() -> None:
    made = planned(finished="54 x 66", backing=Backing(seams="lengthwise"))
    assert made.backing
    assert (made.backing.best.seams, made.backing.best.length) == ("lengthwise", Fraction(148))
    assert made.backing.other.length == 124


def test_seams_take_an_inch() -> None:
    """quiltingboard.com, "need some measuring help": two widths of 42 are 83."""
    made = planned(finished="75 x 59 1/2", backing=Backing("cloth"), cloth=WIDE)
    assert made.backing
    assert (made.backing.best.panels, made.backing.best.made) == (2, Fraction(83))


def test_wide_cloth_needs_no_seam() -> None:
    """Backing cloth of 108 in: one width of 103 in for 110 (the page buys 110 in, turned)."""
    made = planned(finished="95 x 102", backing=Backing("cloth"), cloth=fabric(width=Fraction(108)))
    assert made.backing
    assert (made.backing.best.panels, made.backing.best.length) == (1, Fraction(110))


def test_a_larger_stated_size_is_made() -> None:
    backing = Backing(stated_size=cut("70 x 80"))
    made = planned(finished="54 x 66", backing=backing)
    assert made.backing
    assert (made.backing.size, made.backing.stated) == (cut("70 x 80"), True)
    assert codes(told(finished="54 x 66", backing=backing)) == ["spare-backing"]


def test_no_size_no_finishing() -> None:
    made = planned(backing=Backing(), batting=Batting(), binding=Binding("cloth", Fraction(2)))
    assert (made.backing, made.batting, made.binding) == (None, None, None)


@pytest.mark.parametrize(
    ("finished", "stated"),
    [("65 x 88", "72 x 90"), ("80 x 88", "81 x 96"), ("86 x 93", "90 x 108")],
)
def test_packaged_batting_too_small(finished: str, stated: str) -> None:
    """honeybegood.com, "Common quilt and batting sizes": its own six inches over each way fail
    for twin, full and queen."""
    batting = Batting(over=Fraction(3), stated_size=cut(stated))
    assert the(told(finished=finished, batting=batting), "batting-short").severity == "error"


@pytest.mark.parametrize(
    ("finished", "pack"),
    [("39 x 54", "45 x 60"), ("104 x 93", "120 square"), ("100 x 97", "120 square")],
)
def test_packaged_batting_that_holds(finished: str, pack: str) -> None:
    """The same page: crib, king and California king hold."""
    batting = Batting(over=Fraction(3), stated_size=cut(pack))
    assert told(finished=finished, batting=batting) == ()
    made = planned(finished=finished, batting=Batting(over=Fraction(3)))
    assert made.batting
    assert made.batting.pack == cut(pack)


def test_batting_either_way_round() -> None:
    made = planned(finished="86 x 62", batting=Batting())
    assert made.batting
    assert made.batting.pack == cut("81 x 96")


def test_stated_batting_may_be_turned() -> None:
    turned = Batting(over=Fraction(3), stated_size=cut("60 x 45"))
    assert told(finished="39 x 54", batting=turned) == ()


def test_batting_that_no_package_holds() -> None:
    assert codes(told(finished="116 square", batting=Batting())) == ["batting-joined"]


@pytest.mark.parametrize(
    ("finished", "strips", "rule"),
    [("36 x 42", 5, 5), ("36 x 48", 5, 5), ("54 x 66", 7, 7), ("60 x 72", 8, 7)],
)
def test_binding_with_its_joins(finished: str, strips: int, rule: int) -> None:
    """Perimeter + 10 in strips of 2½ joined on the diagonal (own arithmetic)."""
    made = planned(finished=finished, binding=Binding("cloth", Fraction(5, 2)))
    assert made.binding
    assert (made.binding.strips, made.binding.rule) == (strips, rule)
    assert made.binding.made >= made.binding.length


def test_the_rule_of_thumb_fails() -> None:
    advice = the(told(finished="60 x 72", binding=Binding("cloth", Fraction(5, 2))), "binding-rule")
    assert advice.severity == "advice"
    assert "2 × 60 + 2 × 72 + 10 = 274″ ÷ 40 gives 7 strips" in advice.message
    assert "7 × 40 − 6 × 2½ = 265″. 8 strips are needed." in advice.message


@pytest.mark.parametrize(
    ("finished", "width", "strips"),
    [
        ("64 x 48", 40, 6),  # brynwoodneedleworks.blogspot.com/2014/09: 234 ÷ 40
        ("54 x 60", 42, 6),  # monicacurryquiltdesign.com/2019/06: 238 ÷ 42
        ("72 square", 40, 8),  # issuu.com/eeschenck/docs/q-046_fishful_thinking: 298 ÷ 40
    ],
)
def test_published_binding_counts(finished: str, width: int, strips: int) -> None:
    """The trade's rule, the joins not counted."""
    trade = Settings(joins="not counted")
    cloth = fabric(width=Fraction(width))
    made = planned(
        finished=finished, binding=Binding("cloth", Fraction(5, 2)), settings=trade, cloth=cloth
    )
    assert made.binding
    assert made.binding.strips == made.binding.rule == strips


@pytest.mark.parametrize(
    ("around", "width", "side"), [("240", "2", 23), ("45", "2 1/2", 12), ("90", "3 1/2", 19)]
)
def test_bias_from_a_square(around: str, width: str, side: int) -> None:
    """√(length × width), rounded up: 250 × 2, 55 × 2½ and 100 × 3½ (mydecozo.co.uk,
    getasquiltingstudio.com, quiltersquestiontime.com). The rule counts no seams."""
    quarter = Fraction(around) / 4
    bias = Binding("cloth", inches(width), bias=True)
    trade = Settings(joins="not counted")
    made = planned(finished=f"{quarter} x {quarter}", binding=bias, settings=trade)
    assert made.binding
    assert (made.binding.squares, made.binding.square) == (1, Fraction(side))
    assert made.fabrics["cloth"].length == side


def test_bias_of_a_large_quilt_from_several_squares() -> None:
    """810 in of 2½. No square beyond 24 in is cut: the long ruler reaches no farther. Six of 20
    lie two by two on cloth of 40, and give 6 × 137 7/8 less 5 × 2½ (own arithmetic)."""
    made = planned(finished="200 square", binding=Binding("cloth", inches("2 1/2"), bias=True))
    assert made.binding
    assert (made.binding.squares, made.binding.square) == (6, Fraction(20))
    assert made.binding.made == 6 * inches("137 7/8") - 5 * inches("2 1/2")
    assert made.fabrics["cloth"].length == 60


def test_stated_binding_length() -> None:
    short = Binding("cloth", Fraction(5, 2), stated_length=Fraction(240))
    assert the(told(finished="54 x 66", binding=short), "binding-length").needed == "250"
    more = Binding("cloth", Fraction(5, 2), stated_length=Fraction(260))
    assert the(told(finished="54 x 66", binding=more), "binding-length").severity == "advice"


@given(st.integers(30, 110), st.integers(30, 110))
def test_metres_of_backing_are_enough_and_no_step_too_much(across: int, down: int) -> None:
    """Against the units of the reference library: 1 yd is 0.9144 m exactly."""
    made = planned(finished=f"{across} x {down}", backing=Backing("cloth"), cloth=WIDE).backing
    assert made
    for way in (made.best, made.other, made.home.best, made.frame.best):
        needed, step = metres(way.length / 36), Fraction(1, 10)
        assert way.metres % step == 0
        assert needed <= way.metres < needed + step


THUMB = """
pattern: By Thumb
width: 42
sizes: {one: {finished: 42 x 54}}
fabrics: {a: {use: squares}, b: {use: backing}}
pieces: {A: {fabric: a, cut: 6 1/2 square}}
top: {rows: [A], across: 7, down: 9}
backing: {fabric: b}
binding: {fabric: a, cut: 2 1/2 x WOF, strips: 5}
"""


def test_the_trades_own_number_of_strips_is_obeyed(run: Run, pattern: WritePattern) -> None:
    """2 × 42 + 2 × 54 + 10 = 202, ÷ 42 = 4.8: 5 strips by the rule (+10, ÷ 42: trade facts 6.5).
    Joined on the diagonal they are 5 × 42 − 4 × 2½ = 200, 8 more than the way round."""
    assert run("check", pattern(THUMB), "--strict").code == 0
    short = run("check", pattern(THUMB.replace("strips: 5", "strips: 4")), "--json").json()
    (told,) = [one for one in short["notices"] if one["code"] == "binding-short"]
    assert (told["needed"], [fix["new"] for fix in told["fix"]]) == ("5", ["6", "5"])


def test_who_counts_the_joins_is_held_to_them(run: Run, pattern: WritePattern) -> None:
    text = THUMB.replace("width: 42", "width: 42\nsettings: {joins: counted}")
    assert "binding-short" in run("check", pattern(text)).err
