"""Shared and thrifty cutting through a source and the commands: who shares strips buys less."""

from fractions import Fraction
from typing import Any

import pytest

from tests.support import Run, WritePattern

# Four squares of 8 1/2 beside four of 4 1/2, cloth 40 wide, nothing spare.
# Plain: 4 × 8½ = 34 of 40 in a strip 8½ wide, and 4 × 4½ = 18 in a strip 4½ wide: 13 of cloth.
# Shared: behind the 34 lie 6 more: one sub-cut of 4½, 8½ wide, holds one 4½ (two would be 9).
SQUARES = """
pattern: Two squares
settings: {{spare: 0, straightening: 0, cutting: {style}}}
sizes: {{one: {{}}}}
fabrics: {{ground: {{use: all, width: 40}}}}
pieces:
  A: {{fabric: ground, cut: 8 1/2 square, count: {large}}}
  B: {{fabric: ground, cut: 4 square, count: {small}}}
"""


def ground(run: Run, path: Any, *more: str) -> Any:
    """What `figures` tells of the one fabric."""
    return run("figures", path, "--json", *more).json()["sizes"]["one"]["materials"]["ground"]


def squares(large: int, small: int, style: str) -> str:
    """The source with so many of each."""
    return SQUARES.format(style=style, large=large, small=small)


@pytest.mark.parametrize(
    ("large", "small", "plain", "shared"),
    [
        # 34 of 40 in each of 2 strips; a sub-cut of 4 behind them holds two 4s, one above the
        # other (8 of 8½): 4 squares less, 2 × 8½ = 17; plain needs a strip of 4 more, 21.
        (8, 4, "21", "17"),
        # 6 small ones: 4 lie behind the large, 2 more need a strip of their own either way.
        (8, 6, "21", "21"),
        # One large strip of 3 (25½) leaves 14½: three sub-cuts of two, 6 small.
        (3, 6, "12 1/2", "8 1/2"),
    ],
)
def test_letters_share_a_strip(
    run: Run, pattern: WritePattern, large: int, small: int, plain: str, shared: str
) -> None:
    told = ground(run, pattern(squares(large, small, "plain")))
    assert (told["style"], told["length"]) == ("plain", plain)
    told = ground(run, pattern(squares(large, small, "shared")))
    assert (told["style"], told["length"]) == ("shared", shared)
    assert told["proven"]  # nothing less need be bought
    assert not told["limit_hit"]


def test_each_piece_is_cut_exactly_once(run: Run, pattern: WritePattern) -> None:
    strips = ground(run, pattern(squares(8, 4, "shared")))["strips"]
    assert [(one["width"], one["times"], one["yields"]) for one in strips] == [
        ("8 1/2", 2, {"A": 8, "B": 4})
    ]


STACKS = """
pattern: Stacks
settings: {{spare: 0, straightening: 0, cutting: {style}}}
sizes: {{one: {{}}}}
fabrics: {{ground: {{use: all, width: 40, direction: one-way}}}}
pieces:
  A: {{fabric: ground, cut: 6 x 5, count: 6}}
  B: {{fabric: ground, cut: 6 x 3, count: 6}}
  C: {{fabric: ground, cut: 4 x 8, count: 1}}
"""


def test_unlike_pieces_lie_in_one_stack(run: Run, pattern: WritePattern) -> None:
    """One-way, so nothing turns. Thrifty: a strip 8 high holds 6 stacks of A over B, 36 wide, and
    C beside them, 40: 8. Shared: a stack is of like pieces, so behind C lie the 6 As alone, trimmed
    to 5 (4 + 36 = 40), and the Bs take a strip of 3 (36): 8 + 3 = 11. 13 would be easier to cut,
    and both are sold as 3/8 yd."""
    thrifty = ground(run, pattern(STACKS.format(style="thrifty")))
    assert (thrifty["length"], thrifty["proven"]) == ("8", True)
    shared = ground(run, pattern(STACKS.format(style="shared")))
    assert (shared["buy"]["amount"], shared["proven"]) == ("3/8", True)


def test_the_full_check_tells_what_sharing_would_save(run: Run, pattern: WritePattern) -> None:
    text = squares(8, 4, "plain").replace("spare: 0, ", "spare: 1, ")
    path = pattern(text)
    codes = [notice["code"] for notice in run("check", path, "--json").json()["notices"]]
    assert "other-cutting" not in codes
    notices = run("check", path, "--full", "--json").json()["notices"]
    (told,) = [notice for notice in notices if notice["code"] == "other-cutting"]
    # 21 + 1 = 22 is 0.61 yd, sold as 5/8; 17 + 1 = 18 is just 1/2.
    assert (
        "21″ in plain cutting, 17″ in shared; 1/2 yd would do instead of 5/8 yd" in told["message"]
    )
    assert told["needed"] == "shared"


def test_stated_yards_are_held_against_the_style_that_is_asked_for(
    run: Run, pattern: WritePattern
) -> None:
    """Half a yard does for shared cutting; quickly checked, by plain cutting, that is left open."""
    text = squares(8, 4, "shared").replace("width: 40", "width: 40, yards: 1/2")
    path = pattern(text.replace("spare: 0, ", "spare: 1, "))
    quick = run("check", path, "--json").json()
    assert [(n["code"], n["severity"]) for n in quick["notices"] if "yards" in n["code"]] == [
        ("yards-short", "advice")
    ]
    full = run("check", path, "--full", "--json").json()
    assert [n["code"] for n in full["notices"] if n["code"] == "yards-short"] == []
    short = pattern(text.replace("yards: 1/2", "yards: 3/8").replace("spare: 0, ", "spare: 1, "))
    told = run("check", short, "--full", "--json").json()["notices"]
    assert [(n["code"], n["needed"]) for n in told if n["severity"] == "error"] == [
        ("yards-short", "1/2")
    ]


def test_joined_strips_and_the_binding_stay_as_in_plain_cutting(
    run: Run, pattern: WritePattern
) -> None:
    """Two borders of 60½ take 4 joined strips; the squares are planned beside them."""
    text = squares(3, 6, "shared") + ("  S: {fabric: ground, cut: 2 1/2 x WOF, runs: 2}\n")
    told = ground(run, pattern(text.replace(", runs: 2", ", count: 3")))
    strips = {one["width"]: one["times"] for one in told["strips"]}
    assert strips == {"8 1/2": 1, "2 1/2": 3}
    assert Fraction(told["length"].split()[0]) == 16


def test_the_styles_side_by_side_in_figures(run: Run, pattern: WritePattern) -> None:
    told = ground(run, pattern(STACKS.format(style="plain")), "--full")
    assert [(one["style"], one["buy"], one["proven"]) for one in told["others"]] == [
        ("shared", "3/8", True),
        ("thrifty", "1/4", True),
    ]
