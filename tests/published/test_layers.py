"""Printed backings, battings and bindings, each put through a source and `figures` or `check`.

The numbers in brackets are rows of the trade facts; every source stands beside its check, with the
conventions it was reckoned by. Expected values are the sources' own: nothing here computes them.
The table of five sizes (7.10) stands in test_yardage.py, the chart of battings (9.9) too.
"""

from fractions import Fraction
from typing import Any

import pytest

from tests.published.reading import one_size, told
from tests.support import Run, WritePattern

QUILT = """
pattern: Layers
width: {width}
settings: {{spare: 0, joins: not counted{settings}}}
sizes: {{one: {{finished: {finished}}}}}
fabrics: {{cloth: {{use: all of it}}}}
{layers}
"""


def figures(run: Run, pattern: WritePattern, layers: str, **asked: str) -> Any:
    """The figures of a quilt of which only the finishing is written."""
    usual = {"width": "42", "settings": "", "finished": "60 x 80"}
    return one_size(run, pattern(QUILT.format(layers=layers, **{**usual, **asked})))


def codes(run: Run, pattern: WritePattern, layers: str, **asked: str) -> list[str]:
    """The errors and warnings that such a quilt is told."""
    usual = {"width": "42", "settings": "", "finished": "60 x 80"}
    path = pattern(QUILT.format(layers=layers, **{**usual, **asked}))
    notices = run("check", path, "--json").json()["notices"]
    return [one["code"] for one in notices if one["severity"] in {"error", "warning"}]


# ---- backing


@pytest.mark.parametrize(
    ("finished", "across", "down"),
    [
        ("60 x 80", "68", "88"),  # https://sewberrychic.com/backing
        # http://mmmquilts.blogspot.com/p/backing-material-and-preparation.html
        ("40 x 50", "48", "58"),
        ("40 x 60", "48", "68"),  # http://happy-stitches.com/backingnborders.html
    ],
)
def test_overage_for_a_frame(
    run: Run, pattern: WritePattern, finished: str, across: str, down: str
) -> None:
    """7.1: four inches more on each side."""
    backing = "backing: {fabric: cloth, quilted-by: frame}"
    size = figures(run, pattern, backing, finished=finished)["backing"]["size"]
    assert size == {"across": across, "down": down}


def test_overage_at_home_and_what_a_frame_wants_of_the_same_quilt(
    run: Run, pattern: WritePattern
) -> None:
    """7.2: 50 × 50 → 56 × 56, for a frame 8 in more,
    https://www.maxiemakes.com/blog-1/2015/1/25/layer-and-quilt-as-desired"""
    backing = figures(
        run, pattern, "backing: {fabric: cloth, quilted-by: home}", finished="50 x 50"
    )["backing"]
    assert backing["size"] == backing["home"]["size"] == {"across": "56", "down": "56"}
    assert backing["frame"]["size"] == {"across": "58", "down": "58"}


def test_two_inches_at_home_are_obeyed(run: Run, pattern: WritePattern) -> None:
    """7.2, another: 2 in on each side, https://wandastricklinrobertson.blogspot.com; less than a
    frame holds by (7.1)."""
    home = "backing: {fabric: cloth, quilted-by: home, over: 2}"
    assert codes(run, pattern, home) == []
    assert codes(run, pattern, home.replace("home", "frame")) == ["backing-over"]


@pytest.mark.parametrize(
    ("finished", "seams", "panels", "length"),
    [
        ("60 x 80", "crosswise", 2, "132"),  # longest side ≤ 80: 2 × (60 + 6)
        ("72 x 78", "crosswise", 2, "156"),
        ("80 x 90", "lengthwise", 2, "192"),  # width ≤ 80: 2 × (90 + 6)
        ("76 x 96", "lengthwise", 2, "204"),
        ("90 x 96", "crosswise", 3, "288"),  # else 3 × (90 + 6)
    ],
)
def test_a_guilds_rule_for_panels(
    run: Run, pattern: WritePattern, finished: str, seams: str, panels: int, length: str
) -> None:
    """7.6: guild, "Math for Quilters, part 4", http://tqanews.blogspot.com/2012/03/
    thursday-tidbit-math-for-quilters-part_22.html. Six inches over in all; that two widths cover
    80 + 6 takes cloth of 43½ in, which the rule leaves unsaid."""
    asked = {"finished": finished, "width": "43 1/2"}
    found = figures(run, pattern, "backing: {fabric: cloth, over: 3}", **asked)
    assert (found["backing"]["seams"], found["backing"]["panels"]) == (seams, panels)
    assert found["materials"]["cloth"]["buy"]["unit"] == "yd"
    assert panels * Fraction(found["backing"]["each"]) == Fraction(length)


def test_two_widths_less_a_seam(run: Run, pattern: WritePattern) -> None:
    """7.7: 3 3/4 yd are 135 in, two pieces of 67 1/2, which make 67 1/2 × 83 (2 × 42 − 1),
    https://www.quiltingboard.com/main-f1/need-some-measuring-help-please-t28279.html"""
    backing = figures(run, pattern, "backing: {fabric: cloth, over: 4}", finished="59 1/2 x 75")[
        "backing"
    ]
    assert (backing["each"], backing["made"], backing["panels"]) == ("67 1/2", "83", 2)
    assert backing["buy"]["amount"] == "3 3/4"


def test_a_seam_from_side_to_side(run: Run, pattern: WritePattern) -> None:
    """7.8: 80 × 56 from cloth of 40: two widths of 56 are 112 in, 3.11 yd, bought as 3 1/2,
    https://www.quiltingboard.com/main-f1/printfriendly-mathematically-challenged-t290638.html.
    Her seams take nothing: with those of ½ in, two widths of 40 are 79. She buys by halves."""
    asked = {"finished": "72 x 48", "width": "40 1/2", "settings": ", backing-step: 1/2"}
    backing = figures(run, pattern, "backing: {fabric: cloth, over: 4}", **asked)["backing"]
    assert (backing["panels"], backing["each"], backing["buy"]["amount"]) == (2, "56", "3 1/2")
    asked["width"] = "40"
    short = "backing: {fabric: cloth, over: 4, seams: lengthwise, panels: 2}"
    assert codes(run, pattern, short, **asked) == ["panels-short"]


def test_the_direction_of_the_seams_changes_the_purchase(run: Run, pattern: WritePattern) -> None:
    """7.9: a backing of 65 × 78: 2 × 65 = 130 in, 3 5/8 yd; 2 × 78 = 156 in, 4 1/3 yd (sold by
    thirds there, 4 3/8 by eighths), https://www.quiltingboard.com/7400852-post21.html"""
    asked = {"finished": "57 x 70", "settings": ", backing-step: 1/8"}
    backing = figures(run, pattern, "backing: {fabric: cloth}", **asked)["backing"]
    assert (backing["seams"], backing["buy"]["amount"]) == ("crosswise", "3 5/8")
    assert (backing["other"]["length"], backing["other"]["buy"]["amount"]) == ("156", "4 3/8")
    asked["settings"] = ", backing-step: 1/3"
    upright = figures(run, pattern, "backing: {fabric: cloth, seams: lengthwise}", **asked)
    assert upright["backing"]["buy"]["amount"] == "4 1/3"


def test_half_a_yard_more_for_two_upright_panels(run: Run, pattern: WritePattern) -> None:
    """7.12: 70 square: 2 × 70 and half a yard, which is two lengths of 79,
    https://perkyhobby.com/sewing/how-much-fabric-do-i-need-for-a-quilt-back.html"""
    upright = "backing: {fabric: cloth, over: 4 1/2, seams: lengthwise}"
    found = figures(run, pattern, upright, finished="70 x 70")
    assert (found["backing"]["panels"], found["backing"]["each"]) == (2, "79")
    assert Fraction(found["backing"]["each"]) * 2 == 140 + 18


def test_one_width_backs_a_small_charity_quilt(run: Run, pattern: WritePattern) -> None:
    """40 × 40 because one width backs it, http://mqg2011.blogspot.com/p/40x40-ish-quilts.html; with
    one inch over on each side it is cloth of 42."""
    asked = {"finished": "40 x 40"}
    backing = figures(run, pattern, "backing: {fabric: cloth, over: 1}", **asked)["backing"]
    assert (backing["panels"], backing["made"]) == (1, "42")


# ---- batting

PACKS = [(36, 45), (45, 60), (72, 90), (81, 96), (90, 108), (120, 120)]


@pytest.mark.parametrize(("across", "down"), PACKS)
def test_packaged_batting(run: Run, pattern: WritePattern, across: int, down: int) -> None:
    """8.1: craft, crib, twin, full, queen and king; the quilt and 6 in each way must fit,
    https://needlepointers.com/main/youtubecontent.aspx?youtubepageid=353"""
    asked = {"finished": f"{across - 6} x {down - 6}"}
    batting = figures(run, pattern, "batting: {over: 3}", **asked)["batting"]
    assert batting["pack"] == {"across": str(across), "down": str(down)}
    larger = {"finished": f"{across - 5} x {down - 6}"}
    more = figures(run, pattern, "batting: {over: 3}", **larger)["batting"]
    assert (batting["packs"], more["pack"] == batting["pack"] and more["packs"] == 1) == (1, False)


# ---- binding

BINDING = "binding: {{fabric: cloth, cut: {cut} x WOF{more}}}"


@pytest.mark.parametrize(
    ("quilt", "cut", "strips", "cloth"),
    [
        # 6.4: 274 ÷ 40 = 6.85, 7 × 2½ = 17½ in,
        # https://vandcdesign.com/beading/how-wide-should-my-quilt-binding-be.html
        (("60 x 72", "40", "10"), "2 1/2", 7, "17 1/2"),
        # 6.4b: 234 ÷ 40 = 5.85, 6; strips of 3 are 18 in, of 6 are 36,
        # https://brynwoodneedleworks.blogspot.com/2014/09/stitching-cyphering-and-sewing.html
        (("64 x 48", "40", "10"), "3", 6, "18"),
        (("64 x 48", "40", "10"), "6", 6, "36"),
        # 6.5: 238 ÷ 42 = 5.67, 6,
        # https://www.monicacurryquiltdesign.com/2019/06/how-to-make-double-fold-flange-quilt.html
        (("54 x 60", "42", "10"), "2 1/2", 6, "15"),
        # 6.7: 184 ÷ 40 = 4.6, 5 × 2½ = 12½ in,
        # https://www.sylviasquiltdepot.com/measuring-fabric-for-continuous-strips.htm
        (("46 x 46", "40", "0"), "2 1/2", 5, "12 1/2"),
        # 6.11: 352 ÷ 40 = 8.8, 9 × 2½ = 22½ in,
        # https://bkkquilt.com/how-to-crochet/how-wide-do-you-cut-quilt-binding.html
        (("84 x 92", "40", "0"), "2 1/2", 9, "22 1/2"),
        # 11.7: (288 + 10) ÷ 40, 8, https://issuu.com./eeschenck/docs/q-046_fishful_thinking
        (("72 x 72", "40", "10"), "2 1/2", 8, "20"),
    ],
)
def test_strips_by_the_trades_rule(
    run: Run, pattern: WritePattern, quilt: tuple[str, str, str], cut: str, strips: int, cloth: str
) -> None:
    """A quilt's size, the width of the cloth and what is over."""
    finished, width, over = quilt
    asked = {"finished": finished, "width": width, "settings": f", binding-over: {over}"}
    for more in ("", f", strips: {strips}"):
        binding = BINDING.format(cut=cut, more=more)
        found = figures(run, pattern, binding, **asked)["binding"]
        assert (found["strips"], found["cloth"]) == (strips, cloth)
    less = BINDING.format(cut=cut, more=f", strips: {strips - 1}")
    assert codes(run, pattern, less, **asked) == ["binding-short"]


@pytest.mark.parametrize(
    ("finished", "settings", "yards"),
    [
        ("46 x 46", "yard-step: 1/4", "1/2"),  # 6.7: 12½ in, ½ yd, bought by quarters
        ("84 x 92", "yard-step: 1/8", "5/8"),  # 6.11: 22½ in are just ⅝ yd
        ("84 x 92", "yard-step: 1/8, spare: 3", "3/4"),  # and ¾ with an allowance, as printed
    ],
)
def test_yards_of_binding(
    run: Run, pattern: WritePattern, finished: str, settings: str, yards: str
) -> None:
    text = QUILT.format(
        width="40",
        finished=finished,
        settings=f", binding-over: 0, {settings}",
        layers=BINDING.format(cut="2 1/2", more=""),
    )
    spared = text.replace("spare: 0, ", "") if "spare: 3" in settings else text
    found = one_size(run, pattern(spared))
    assert found["materials"]["cloth"]["buy"]["amount"] == yards


def test_a_width_less_for_the_joins(run: Run, pattern: WritePattern) -> None:
    """6.6: 220 ÷ (40 − 2) = 5.79, 6: each strip of 40 loses 2, which is what a diagonal join of
    strips cut 2 takes,
    http://castillejacotton.blogspot.com/2013/06/how-to-calculate-number-of-strips-to.html"""
    text = QUILT.format(
        width="40",
        finished="50 x 60",
        settings=", binding-over: 0",
        layers=BINDING.format(cut="2", more=""),
    ).replace("not counted", "counted")
    assert one_size(run, pattern(text))["binding"]["strips"] == 6


def test_a_generous_count_is_obeyed(run: Run, pattern: WritePattern) -> None:
    """6.9: 114 in around from cloth of 45: 2½ strips and ½ for corners and seams, and one more to
    be safe, https://learnhowtoquilt.com/quilt-tutorials/finishing-the-quilt/double-fold-binding/
    binding-how-long/"""
    asked = {"finished": "27 x 30", "width": "45"}
    need = figures(run, pattern, BINDING.format(cut="2 1/2", more=""), **asked)["binding"]
    more = figures(run, pattern, BINDING.format(cut="2 1/2", more=", strips: 4"), **asked)
    assert (need["strips"], more["binding"]["strips"]) == (3, 4)


def test_a_diagonal_join_takes_the_strips_width(run: Run, pattern: WritePattern) -> None:
    """6.10: "a square equal to the width", "almost 3 in of each 40-in strip" of strips cut 2½,
    http://www.quiltingboard.com/main-f1/45-degree-boarder-math-t109880.html and
    https://www.quiltingboard.com/resources/article-117.html"""
    text = QUILT.format(
        width="40",
        finished="15 x 15",
        settings="",
        layers=BINDING.format(cut="2 1/2", more=""),
    ).replace("not counted", "counted")
    binding = one_size(run, pattern(text))["binding"]
    assert (binding["strips"], binding["joins"], binding["made"]) == (2, 1, "77 1/2")


@pytest.mark.parametrize("over", ["0", "8", "10", "16", "20", "24"])
def test_allowances_of_the_trade(run: Run, pattern: WritePattern, over: str) -> None:
    """6.3: +0 to +24, sources in rows 6.4 to 6.9 and
    https://www.quiltingboard.com/8276918-post1.html"""
    asked = {"finished": "50 x 60", "settings": f", binding-over: {over}"}
    binding = figures(run, pattern, BINDING.format(cut="2 1/2", more=""), **asked)["binding"]
    assert Fraction(binding["length"]) == 220 + Fraction(over)


@pytest.mark.parametrize(
    ("cut", "more", "told_of"),
    [
        # 6.1: https://villarosaquilts.com/category/basic-quilting-skills-series/ and others there
        *((cut, "", []) for cut in ("2", "2 1/4", "2 1/2", "2 3/4", "3")),
        # 6.2: single, 1 1/8 for ¼ in finished,
        # https://mixedupcreativeacademy.com/qa/how-wide-do-i-cut-fabric-for-binding.html
        ("1 1/8", ", fold: single", []),
        ("2", ", fold: single", []),
        ("3/4", "", ["binding-width"]),
        ("5/8", ", fold: single", ["binding-width"]),
    ],
)
def test_widths_of_the_trade(
    run: Run, pattern: WritePattern, cut: str, more: str, told_of: list[str]
) -> None:
    assert codes(run, pattern, BINDING.format(cut=cut, more=more)) == told_of


BIAS = """
pattern: Bias
settings: {{joins: {joins}}}
fabrics: {{cloth: {{use: all of it}}}}
binding: {{fabric: cloth, cut: {cut} x WOF, bias: yes, length: {length}{more}}}
"""


@pytest.mark.parametrize(
    ("length", "cut", "side"),
    [
        # https://www.mydecozo.co.uk/forum/mydecozo/soft-furnishing-faq-s/
        # 680-making-continuous-piping-strips-bias-binding
        ("250", "2", "23"),
        # https://www.getasquiltingstudio.com/2018/04/
        # continuous-bias-binding-cheat-sheets-formulas-and-more.html
        ("55", "2 1/2", "12"),
        # https://www.quiltersquestiontime.com/blog/
        # how-do-i-calculate-how-much-fabric-i-need-for-bias-binding
        ("100", "3 1/2", "19"),
        ("200", "2", "20"),
    ],
)
def test_bias_from_a_square_by_its_area(
    run: Run, pattern: WritePattern, length: str, cut: str, side: str
) -> None:
    """6.12: the side is √(length × width), rounded up: 500 → 22.36 → 23, 137.5 → 11.73 → 12,
    350 → 18.71 → 19; and 20 square gives 200 in of 2. Seams are not counted."""
    text = BIAS.format(joins="not counted", cut=cut, length=length, more="")
    binding = one_size(run, pattern(text))["binding"]
    assert (binding["squares"], binding["square"]) == (1, side)
    less = BIAS.format(
        joins="not counted", cut=cut, length=length, more=f", square: {int(side) - 1}"
    )
    assert [one["code"] for one in told(run, [pattern(less)])["trial"]] == ["bias-square"]


def test_the_area_overstates_a_small_square(run: Run, pattern: WritePattern) -> None:
    """6.13: a tutorial has about 60 in of 2-in bias from 12 in, the area says 72,
    https://ronbd.com/formation-of-jpjs/156d3f-continuous-bias-binding-from-a-square. With its
    seams counted we say 65."""
    text = BIAS.format(joins="counted", cut="2", length="60", more=", square: 12")
    assert 60 <= Fraction(one_size(run, pattern(text))["binding"]["made"].split()[0]) <= 66
    by_area = BIAS.format(joins="counted", cut="2", length="72", more=", square: 12")
    assert [one["code"] for one in told(run, [pattern(by_area)])["trial"]] == ["bias-square"]


def test_curves_want_bias(run: Run, pattern: WritePattern) -> None:
    """6.14: bias for curved edges, strips across the cloth for straight ones,
    https://www.quiltingboard.com/resources/article-46.html"""
    straight = BINDING.format(cut="2 1/2", more="")
    rounded = BINDING.format(cut="2 1/2", more=", corners: rounded")
    assert codes(run, pattern, straight) == []
    assert codes(run, pattern, rounded) == ["rounded-straight"]
    bias = BINDING.format(cut="2 1/2", more=", corners: rounded, bias: yes")
    assert codes(run, pattern, bias) == []
