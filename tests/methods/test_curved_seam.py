"""Curved seams: a quarter circle set into its ground.

Kind 23 of our own reference document is worked there by hand at two sizes; a seam's length is
π r/2, and the cut edges lie one seam outside and one inside it (geometry, no source needed).
"""

from fractions import Fraction
from math import pi
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.methods.curved_seam import placed
from patternbook.methods.made import Outline, PiecedMade, Sides
from patternbook.proof.shapes import area
from tests.methods.making import faults
from tests.published.reading import one_size
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

MOONS = """\
pattern: Moons
sizes: {{one: {{across: {across}, down: {down}}}}}
fabrics: {{moon: {{}}, night: {{}}}}
pieces:
  P: {{fabric: moon, template: quarter circle, radius: 4}}
  G: {{fabric: night, cut: {ground} square, template: quarter hollow, radius: 4}}
units:
  moon: {{method: curved seam, pie: P, ground: G, measure: 6 1/2 square}}
top: {{rows: [moon/half moon/left, moon/right moon], across: across, down: down}}
"""


# 23: 36 × 48 takes 48 of each, pies 6 strips 27″ → ⅞ yd, grounds 8 strips 52″ → 1⅝ yd; 60 × 72
# takes 120, 15 strips 67½″ → 2 yd, 20 strips 130″ → 3¾ yd; grounds cut at 7: 24 strips, 168″ →
# 4¾ yd.
@pytest.mark.parametrize(
    ("across", "down", "ground", "pies", "grounds"),
    [
        (6, 8, "6 1/2", ("48", 6, "27", "7/8"), ("48", 8, "52", "1 5/8")),
        (10, 12, "6 1/2", ("120", 15, "67 1/2", "2"), ("120", 20, "130", "3 3/4")),
        (10, 12, "7", ("120", 15, "67 1/2", "2"), ("120", 24, "168", "4 3/4")),
    ],
)
def test_both_sizes_worked_by_hand(
    run: Run,
    pattern: WritePattern,
    across: int,
    down: int,
    ground: str,
    pies: tuple[str, int, str, str],
    grounds: tuple[str, int, str, str],
) -> None:
    found = one_size(run, pattern(MOONS.format(across=across, down=down, ground=ground)))
    for letter, cloth, (count, strips, length, yards) in (
        ("P", "moon", pies),
        ("G", "night", grounds),
    ):
        assert found["pieces"][letter]["count"]["value"] == count
        assert found["pieces"][letter]["own_strips"]["value"] == str(strips)
        assert found["materials"][cloth]["length"] == length
        assert found["materials"][cloth]["buy"]["amount"] == yards
    assert found["pieces"]["P"]["cut"]["across"]["value"] == "4 1/2"
    sides = found["finished"]
    assert (sides["across"]["value"], sides["down"]["value"]) == (str(across * 6), str(down * 6))


def made(folder: Path, text: str) -> PiecedMade:
    quilts = worked_out(folder, text)
    found = quilts.sizes["one"].units["moon"].made
    assert isinstance(found, PiecedMade)
    return found


def source(ground: str = "6 1/2", unit: str = "", pie: str = "", form: str = "inches") -> str:
    radius, measure = ("4", "6 1/2") if form == "inches" else ("10", "16.5")
    return f"""\
pattern: Moon
written-in: {form}
sizes: {{one: {{}}}}
pieces:
  P: {{template: quarter circle, radius: {pie or radius}}}
  G: {{cut: {ground} square, template: quarter hollow, radius: {radius}}}
units:
  moon: {{method: curved seam, pie: P, ground: G, measure: {measure} square{unit}}}
"""


def test_the_edges_differ_and_are_not_to_be_trimmed(tmp_path: Path) -> None:
    """π/4 at a quarter-inch seam, 0.785: about ¾; the seam is 6.283 long: about 6¼."""
    mark = made(tmp_path, source()).actions[0]
    assert "longer than that of G once both are cut" in mark.words
    assert mark.words.endswith("the seam lines are equally long, about {1}: do not trim it.")
    longer, seam = mark.figures
    assert isinstance(longer, Exact)
    assert isinstance(seam, Exact)
    assert (longer, seam) == (Exact(Fraction(3, 4)), Exact(Fraction(25, 4)))
    assert abs(float(longer) - pi / 4) < 1 / 16
    assert abs(float(seam) - pi * 4 / 2) < 1 / 16


def test_in_centimetres_they_differ_by_three_quarters_of_pi(tmp_path: Path) -> None:
    """0.75 π = 2.356: about 2.25 on a ruler of quarter centimetres; 5 π = 15.708: about 15.75."""
    mark = made(tmp_path, source("16.5", form="cm")).actions[0]
    assert [plain(one, decimals=True) for one in mark.figures if isinstance(one, Exact)] == [
        "2.25",
        "15.75",
    ]


def test_pressed_to_the_ground_whatever_the_tones(tmp_path: Path) -> None:
    seam = made(tmp_path, source()).seams[0]
    assert (seam.toward, seam.settled) == (1, True)


def test_a_ground_cut_larger_is_trimmed_and_keeps_the_ends_of_the_curve(tmp_path: Path) -> None:
    exact, larger = made(tmp_path, source()), made(tmp_path, source("7"))
    assert exact.before is None
    assert [action.kind for action in exact.actions] == ["mark", "lay", "sew", "press"]
    assert larger.before == Sides(Exact(7), Exact(7))
    trim = larger.actions[-1]
    half = Exact(Fraction(13, 2))
    # Both ends of the curve lie the radius and one seam from the corner: 4¼.
    assert trim.figures == (Sides(half, half), Exact(Fraction(17, 4)))


def test_without_cuts_both_are_worked_out(run: Run, pattern: WritePattern) -> None:
    path = pattern(source().replace("cut: 6 1/2 square, ", ""))
    pieces = one_size(run, path)["pieces"]
    assert {letter: one["cut"]["across"]["value"] for letter, one in pieces.items()} == {
        "P": "4 1/2",
        "G": "6 1/2",
    }


def test_a_radius_for_each_size(run: Run, pattern: WritePattern) -> None:
    text = source().replace("sizes: {one: {}}", "sizes: {small: {}, large: {}}")
    text = text.replace("radius: 4", "radius: {small: 4, large: 5}")
    sizes = run("figures", pattern(text), "--json").json()["sizes"]
    cuts = {name: one["pieces"]["P"]["cut"]["across"]["value"] for name, one in sizes.items()}
    assert cuts == {"small": "4 1/2", "large": "5 1/2"}


Expected = tuple[str, str | None]
WRONG: list[tuple[str, str, Expected]] = [
    (
        "radii that differ",
        source(pie="3 1/2"),
        ("curve-radius", "Write `radius: 4` at P, or 3 1/2 at G."),
    ),
    (
        "a plain square as the pie",
        source().replace("P: {template: quarter circle, radius: 4}", "P: {cut: 4 1/2 square}"),
        ("curve-template", "Write `template: quarter circle` and its `radius` at P."),
    ),
    (
        "pie and ground exchanged",
        source().replace("pie: P, ground: G", "pie: G, ground: P"),
        ("curve-template", "Write `template: quarter circle` and its `radius` at G."),
    ),
    (
        "a curve that runs out of the unit",
        source(ground="6 1/2").replace("measure: 6 1/2", "measure: 4 1/2"),
        ("curve-room", None),
    ),
    (
        "a unit larger than its ground",
        source().replace("measure: 6 1/2", "measure: 7"),
        ("pieces-small", "Cut G at least 7 square."),
    ),
]


@pytest.mark.parametrize("wrong", WRONG, ids=[one[0] for one in WRONG])
def test_told(run: Run, pattern: WritePattern, wrong: tuple[str, str, Expected]) -> None:
    _, text, (code, hint) = wrong
    found = {one[0]: one[1] for one in faults(run, pattern(text))}
    assert code in found
    if hint is not None:
        assert found[code] == hint


def with_pi(outline: Outline | None) -> tuple[Exact, Exact]:
    """The area: what is rational, and how many times π. A quarter circle is π r²/4; between it
    and its chord lies that less r²/2."""
    assert outline is not None
    rational, times = area(outline), Exact(0)
    for arc in outline.arcs:
        way = -1 if arc.hollow else 1
        rational = rational - arc.radius * arc.radius / 2 * way
        times = times + arc.radius * arc.radius / 4 * way
    return rational, times


@given(st.fractions(Fraction(1, 4), 20), st.fractions(Fraction(1, 8), 10))
def test_pie_and_ground_fill_the_unit(radius: Fraction, beside: Fraction) -> None:
    """The π cancels, and what is left is the square, for every radius within it."""
    side = radius + beside
    both = [with_pi(one.outline) for one in placed("P", "G", Exact(radius), Exact(side))]
    assert sum((rational for rational, _ in both), Exact(0)) == side * side
    assert sum((times for _, times in both), Exact(0)) == 0


def test_as_made_the_pie_lies_at_the_top_left(tmp_path: Path) -> None:
    quilts = worked_out(tmp_path, source())
    pie, ground = quilts.sizes["one"].units["moon"].placed
    nought = Exact(0)
    four = Exact(4)
    assert (pie.part, pie.x, pie.y, pie.across, pie.down) == ("P", nought, nought, four, four)
    assert ground.outline is not None
    assert ground.outline.corners[0] == (Exact(4), nought)
    assert ground.outline.arcs[0].hollow
