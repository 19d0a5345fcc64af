"""What is chosen where: by the author's word, else by the house's taste."""

from pathlib import Path

import pytest

from patternbook.edition.pipeline import Examined, examine
from patternbook.quilting.records import QuiltingPlan
from tests.support import ROOT, Run, WritePattern

# Plain squares turn about with four-patches.
SQUARES = """\
pattern: Lamps on the Quay
sizes:
  crib: {finished: 36 x 36, across: 6, down: 6}
fabrics:
  dusk: {use: plain squares, tone: dark}
  lamp: {use: light small squares, tone: light}
  rope: {use: dark small squares, tone: medium}
pieces:
  A: {fabric: dusk, cut: 6 1/2 square}
  B: {fabric: lamp, cut: 3 1/2 square}
  C: {fabric: rope, cut: 3 1/2 square}
units:
  four: {rows: [B C, C B]}
top:
  rows: [four A, A four]
  across: across
  down: down
batting: {limit: 4}
"""


def planned(path: Path) -> QuiltingPlan:
    made = next(iter(known(path).sizes.values())).quilting
    assert made is not None
    return made


def known(path: Path) -> Examined:
    return examine(path, path.name)


def designs(made: QuiltingPlan) -> dict[str, set[str]]:
    """The designs by the kind of area."""
    found: dict[str, set[str]] = {}
    for fill in made.fills:
        found.setdefault(fill.area.kind, set()).add(fill.design)
    return found


def asked(pattern: WritePattern, wish: str) -> QuiltingPlan:
    return planned(pattern(f"{SQUARES}quilting:\n  - {{{wish}}}\n"))


def test_plain_ground_gets_a_figure_and_busy_piecing_plain_lines(pattern: WritePattern) -> None:
    made = designs(planned(pattern(SQUARES)))
    assert made["square"] == {"frames going inward"}
    assert made["piecing"] <= {"straight lines", "slanted lines", "diagonal lines"}


def test_alike_areas_get_the_very_same_lines(pattern: WritePattern) -> None:
    made = planned(pattern(SQUARES))
    squares = [fill for fill in made.fills if fill.area.kind == "square"]
    inner = [one for one in squares if one.area.shape.distance(made.top.edge.exterior) > 1]
    lines = {
        tuple(
            (round(x - one.area.shape.bounds[0], 6), round(y - one.area.shape.bounds[1], 6))
            for path in one.drawn.paths
            for x, y in path
        )
        for one in inner
    }
    assert len(squares) == 18
    assert len(lines) == 1


@pytest.mark.parametrize(
    ("wish", "kind", "design"),
    [
        ("area: ground, design: cross-hatch", "square", "cross-hatch"),
        ("area: A, design: echoes", "square", "echoes"),
        ("area: all over, skill: free motion", "square", "echoed swirls"),
        ("area: four, design: wavy lines", "piecing", "wavy lines"),
        ("area: all over, design: straight lines", "body", "straight lines"),
    ],
)
def test_the_author_s_word_holds(pattern: WritePattern, wish: str, kind: str, design: str) -> None:
    assert designs(asked(pattern, wish))[kind] == {design}


def test_her_spacing_holds(pattern: WritePattern) -> None:
    made = asked(pattern, "area: all over, design: straight lines, spacing: 3 1/2")
    assert {fill.drawn.spacing for fill in made.fills} == {3.5}
    assert made.gap.high == pytest.approx(3.5, abs=0.002)


def test_too_wide_a_spacing_is_told_with_the_one_that_mends_it(
    run: Run, pattern: WritePattern
) -> None:
    path = pattern(
        f"{SQUARES}quilting:\n  - {{area: all over, design: straight lines, spacing: 4 1/2}}\n"
    )
    ran = run("check", path, "--full")
    assert ran.code == 1
    assert "error quilting-gap" in ran.err + ran.out


def test_what_is_excluded_stays_open_and_is_told(pattern: WritePattern) -> None:
    path = pattern(f"{SQUARES}quilting:\n  - {{area: A, exclude: yes}}\n")
    made = planned(path)
    assert {fill.area.kind for fill in made.fills} == {"piecing"}
    told = examine(path, path.name, full=True).notices
    assert [one.code for one in told if one.code == "quilting-gap"] == ["quilting-gap"]


def test_a_design_of_her_own_is_told_to_be_printed_only(pattern: WritePattern) -> None:
    path = pattern(f"{SQUARES}quilting:\n  - {{area: ground, design: feathers}}\n")
    (told,) = [
        one for one in examine(path, "x", full=True).notices if one.code == "quilting-design"
    ]
    assert told.severity == "advice"
    assert "frames going inward" in (told.hint or "")


def test_a_sampler_has_more_designs(pattern: WritePattern) -> None:
    """Late Returns has many kinds of area: three or four designs, or one for each."""
    source = (ROOT / "patterns/late-returns/pattern.yaml").read_text("utf-8")
    many = planned(pattern(f"{source}quilting: [{{area: all over, design: sampler}}]\n"))
    used, calm = (
        {fill.design for fill in made.fills} for made in (many, planned(pattern(source, "calm")))
    )
    assert len(used) > len(calm)
    assert len(used) >= len({fill.area.letter for fill in many.fills}) - 2
    assert many.gap.high <= many.wishes.limit


def test_another_seed_is_another_drawing(pattern: WritePattern) -> None:
    one, other = (asked(pattern, f"area: ground, design: meander, seed: {seed}") for seed in (1, 2))
    assert one.fills != other.fills
