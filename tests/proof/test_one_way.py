"""Rule R18: one-way prints, and pieces of two hands (common practice, no source)."""

from pathlib import Path

from tests.support import Run, WritePattern

WINDMILL = """
pattern: Print Turned
sizes: {{one: {{}}}}
fabrics: {{print: {{tone: dark, direction: one-way}}, plain: {{tone: light}}}}
pieces: {{A: {{fabric: print, cut: 5 square}}, B: {{fabric: plain, cut: 5 square}}}}
units: {{blade: {{method: half-square triangles, from: A B, measure: 4 1/2 square}}}}
top: {{rows: {rows}}}
"""


def codes(run: Run, path: Path) -> list[tuple[str, str]]:
    notices = run("check", path, "--json").json()["notices"]
    return [(one["code"], one["message"]) for one in notices if one["severity"] != "advice"]


def test_a_print_that_would_stand_four_ways_is_told(run: Run, pattern: WritePattern) -> None:
    turned = "[blade/right blade/half, blade blade/left]"
    ((code, message),) = codes(run, pattern(WINDMILL.format(rows=turned)))
    assert code == "print-direction"
    assert "1 upright, 1 on its side to the right, 1 upside down, 1 on its side to the left" in (
        message
    )


def test_a_print_that_is_never_turned_is_not(run: Run, pattern: WritePattern) -> None:
    assert codes(run, pattern(WINDMILL.format(rows="[blade blade, blade blade]"))) == []


BARS = """
pattern: Bars of a Print
sizes: {one: {}}
fabrics: {print: {direction: one-way}}
pieces: {A: {fabric: print, cut: 2 1/2 x 6 1/2}}
top: {rows: [A/right], down: 8}
"""


def test_bars_that_lie_on_their_side_are_cut_for_it(run: Run, pattern: WritePattern) -> None:
    """Lying on its side, a bar's print runs along its 2 1/2 in: strips 2 1/2 wide hold 6 of 6 1/2
    (40 ÷ 6 1/2), so 8 bars take 2; upright they would take strips 6 1/2 wide, 16 in each."""
    path = pattern(BARS)
    assert codes(run, path) == []
    piece = run("figures", path, "--json").json()["sizes"]["one"]["pieces"]["A"]
    assert int(piece["own_strips"]["value"]) == 2


HANDED = """
pattern: Leaning
sizes: {{one: {{}}}}
fabrics: {{dark: {{tone: dark}}, light: {{tone: light}}}}
pieces:
  A: {{fabric: dark{mirrored}}}
  B: {{fabric: light}}
units:
  lean: {{method: half-rectangle triangles, from: A B, finished: 3 x 6}}
top: {{rows: [lean lean lean/mirror]}}
"""


def test_hands_are_counted_apart(run: Run, pattern: WritePattern) -> None:
    """Two lean one way and one the other, two from a pair: 1 pair and 1 pair, not 2 for all."""
    path = pattern(HANDED.format(mirrored=""))
    assert codes(run, path) == []
    piece = run("figures", path, "--json").json()["sizes"]["one"]["pieces"]["A"]
    assert int(piece["count"]["value"]) == 2
    assert piece["mirrored"] == 1


def test_a_wrong_number_of_the_other_hand_is_told(run: Run, pattern: WritePattern) -> None:
    ((code, message),) = codes(run, pattern(HANDED.format(mirrored=", mirrored: 2")))
    assert code == "mirrored"
    assert "2 of the other hand stated" in message
    assert "come to 1 of 2" in message
