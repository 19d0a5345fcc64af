"""Sizes that are cut stand on the ruler. Rotary rulers are marked in eighths, and a cut is taken
up to the next (trade facts 1.5, "Decimals to fractions conversion chart for quilters"); nobody
finds 0.36 cm on one (trade facts 1.8). Quarters of a centimetre: common practice, no source."""

import pytest

from tests.support import Run, WritePattern

INCHES = """
pattern: On the Ruler
fabrics: {dark: {tone: dark}, light: {tone: light}, string: {tone: medium}}
pieces:
  A: {fabric: dark, cut: 2 1/2 x WOF}
  B: {fabric: light, cut: 2 1/2 x WOF}
  C: {fabric: light, cut: 4 1/2 square}
  D: {fabric: dark, cut: 4 1/2 x 2 1/2, strip-width: 4 1/2}
  F: {fabric: string, cut: 3 1/2 x WOF}
units:
  pair: {method: strip set, from: A B, segment: 2 1/2}
  four: {rows: [pair, pair/half]}
  bars: {rows: [D, D]}
top: {rows: [four C, C bars], borders: [{strip: F}]}
binding: {fabric: string, cut: 2 1/2 x WOF}
"""
CENTIMETRES = """
pattern: On the Ruler
written-in: cm
fabrics: {dark: {tone: dark}}
pieces: {A: {fabric: dark, cut: 6.5 square}}
top: {rows: [A], across: 4, down: 4}
"""


def off(run: Run, pattern: WritePattern, text: str) -> list[tuple[str, str, str, str]]:
    notices = run("check", pattern(text), "--json").json()["notices"]
    return [
        (one["severity"], one["message"], one["stated"], one["needed"])
        for one in notices
        if one["code"] == "off-ruler" and one["stage"] == "proof"
    ]


@pytest.mark.parametrize("text", [INCHES, CENTIMETRES])
def test_eighths_and_quarters_are_on_it(run: Run, pattern: WritePattern, text: str) -> None:
    assert off(run, pattern, text) == []


@pytest.mark.parametrize(
    ("right", "wrong", "what", "down", "up"),
    [
        ("4 1/2 square", "4 9/16 square", "C, cut square 4 9/16", "4 1/2", "4 5/8"),
        ("cut: 4 1/2 x 2 1/2", "cut: 4 1/2 x 2 7/16", "D, cut long 2 7/16", "2 3/8", "2 1/2"),
        ("width: 4 1/2", "width: 4 11/16", "the strips of D 4 11/16", "4 5/8", "4 3/4"),
        ("segment: 2 1/2", "segment: 2 7/16", "a slice of 'pair' 2 7/16", "2 3/8", "2 1/2"),
        ("cut: 3 1/2 x WOF", "cut: 3 7/16 x WOF", "F, cut wide 3 7/16", "3 3/8", "3 1/2"),
        (
            "string, cut: 2 1/2",
            "string, cut: 2 3/16",
            "the binding's strips 2 3/16",
            "2 1/8",
            "2 1/4",
        ),
    ],
)
def test_sixteenths_are_told_with_their_nearest_eighths(
    run: Run, pattern: WritePattern, *, right: str, wrong: str, what: str, down: str, up: str
) -> None:
    assert right in INCHES
    message = f"{what}: few rulers show sixteenths. Nearest are {down} and {up}."
    stated = wrong.removesuffix(" square").rpartition("x ")[2] if "2 7/16" in wrong else None
    (told,) = off(run, pattern, INCHES.replace(right, wrong))
    assert (told[0], told[1], told[3]) == ("warning", message, up)
    assert stated is None or told[2] in wrong


@pytest.mark.parametrize(
    ("wrong", "down", "up"),
    [("6.4", "6.25", "6.5"), ("6.36", "6.25", "6.5"), ("6.6", "6.5", "6.75")],
)
def test_centimetres_stand_in_quarters(
    run: Run, pattern: WritePattern, wrong: str, down: str, up: str
) -> None:
    message = f"A, cut square {wrong}: no ruler shows it. Nearest are {down} and {up}."
    text = CENTIMETRES.replace("6.5", wrong)
    assert off(run, pattern, text) == [("error", message, wrong, up)]


CURVE = """
pattern: A Curve
fabrics: {dark: {tone: dark}, light: {tone: light}}
pieces:
  P: {fabric: dark, template: quarter circle, radius: 4 1/16}
  G: {fabric: light, template: quarter hollow, radius: 4 1/16}
units: {quarter: {method: curved seam, pie: P, ground: G, measure: 6 9/16 square}}
top: {rows: [quarter quarter], across: 2, down: 2}
"""


def test_a_template_may_have_any_size_but_not_the_cloth_for_it(
    run: Run, pattern: WritePattern
) -> None:
    """A template is drawn, not cut along the ruler; the square that it is cut from is."""
    assert off(run, pattern, CURVE) == []
    stated = CURVE.replace(
        "template: quarter circle", "cut: 4 9/16 square, template: quarter circle"
    )
    (told,) = off(run, pattern, stated)
    assert told[1].startswith("P, cut square 4 9/16: few rulers show sixteenths.")
