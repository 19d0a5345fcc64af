"""A pattern in centimetres goes the whole way from its source to its pages.

The numbers in brackets are rows of our trade facts. (2.6) seams of 0.75 cm, half-square triangles
+2.5 cm and quarter-square triangles +3.5 cm: https://www.pandqmagazine.com/forums/postings.asp?th=13
and http://lonesockproductions.blogspot.com/2010/08/how-to-plan-cot-sized-quilt-using.html. Exactly
0.75 (2 + √2) = 2.56 and 0.75 (2 + 2√2) = 3.62: that rule comes out 0.6 and 1.2 mm short, so we add
2.6 and 3.7 (reckoned). (3.6) cloth 107 cm wide:
http://www.beyond-fabrics.co.uk/beach-cruisers---avalon-by-jay-cyn-designs-4718-p.asp. (1.9) sold in
steps of 10 cm: common practice, no source; 25 cm: https://firesidefabrics.co.uk/how-fabric-is-sold.
"""

import re
from fractions import Fraction
from math import sqrt
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from patternbook.inch import CENTIMETRES, triangle_allowance
from tests.metric.weir import WEIR
from tests.support import Run, WritePattern

INCHES = re.compile(r'[″"]|\binch|\byd\b|\byard|[¼½¾⅛⅜⅝⅞]|\d[/⁄]\d')


def figures(run: Run, path: Path) -> Any:
    ran = run("check", path)
    assert ran.code == 0, ran.err
    assert "error" not in ran.out
    assert "warning" not in ran.out
    return run("figures", path, "--json").json()


# (2.6) the exact figures beside what is added: never less, and less than a millimetre more.
@pytest.mark.parametrize(("diagonals", "exact", "added"), [(1, 2.5607, "2.6"), (2, 3.6213, "3.7")])
def test_allowances_of_triangles(diagonals: int, exact: float, added: str) -> None:
    assert abs(0.75 * (2 + diagonals * sqrt(2)) - exact) < 0.0001
    found = triangle_allowance(Fraction(3, 4), diagonals, CENTIMETRES)
    assert found == Fraction(added)
    assert 0 < float(found) - exact < 0.1


def test_cuts_lie_on_the_ruler(run: Run, pattern: WritePattern) -> None:
    """12 + 2.6 + 0.25 to trim = 14.85 → 15; wings 6 + 2.6 + 0.25 = 8.85 → 9; the goose
    12 + 3.7 + 2 × 0.25 = 16.2 → 16.25; the pie 8 + 2 × 0.75, the ground 12 + 2 × 0.75."""
    record = figures(run, pattern(WEIR))
    assert record["unit"] == "cm"
    for size in record["sizes"].values():
        cut = {letter: one["cut"]["across"]["value"] for letter, one in size["pieces"].items()}
        assert cut == {
            "A": "15",
            "B": "15",
            "G": "16.25",
            "W": "9",
            "P": "9.5",
            "H": "13.5",
            "F": "7.5",
        }


def test_cloth_is_bought_in_metres(run: Run, pattern: WritePattern) -> None:
    """The bank of the cot: border 4 strips of 7.5 and binding 5 of 6.5 are 62.5 cm, with 8 spare
    70.5: 0.8 m. Binding: 2 × 84 + 2 × 108 + 25 = 409; 4 strips of 107 joined are 408.5, too
    little. Backing 104 × 128: one length of 107 cm cloth, 1.5 m in quarter metres."""
    cot = figures(run, pattern(WEIR))["sizes"]["cot"]
    assert cot["materials"]["bank"]["length"] == "62.5"
    bought = {name: one["buy"] for name, one in cot["materials"].items()}
    assert bought["bank"] == {"amount": "0.8", "unit": "m", "metres": "0.8"}
    assert {one["unit"] for one in bought.values()} == {"m"}
    assert (cot["binding"]["strips"], cot["binding"]["length"]) == (5, "409")
    assert cot["backing"]["size"] == {"across": "104", "down": "128"}
    assert cot["backing"]["buy"]["amount"] == "1.5"


def test_both_sizes_close(run: Run, pattern: WritePattern) -> None:
    """6 × 12 + 2 × 6 = 84; 8 × 12 + 2 × 6 = 108."""
    sizes = figures(run, pattern(WEIR))["sizes"]
    finished = {name: [s["value"] for s in one["finished"].values()] for name, one in sizes.items()}
    assert finished == {"cot": ["84", "108"], "bed": ["132", "180"]}
    assert [one["borders"][0]["side_length"] for one in sizes.values()] == ["97.5", "169.5"]


SHORT = [
    # (2.6) the trade's own rule, 12 + 2.5 and 12 + 3.5: short by 0.6 and 1.2 mm
    ("half-square triangles", "14.5", "short by 0.6 mm. The usual allowance of 2.5 cm"),
    ("quarter-square triangles", "15.5", "short by 1.2 mm. The usual allowance of 3.5 cm"),
]


@pytest.mark.parametrize(("method", "cut", "words"), SHORT)
def test_the_usual_rounding_is_told_and_can_be_sewn(
    run: Run, pattern: WritePattern, method: str, cut: str, words: str
) -> None:
    text = f"""\
        pattern: Short
        written-in: cm
        sizes: {{one: {{}}}}
        pieces: {{A: {{cut: {cut} square}}, B: {{cut: {cut} square}}}}
        units: {{sail: {{method: {method}, from: A B, finished: 12 square}}}}
        top: {{rows: [sail sail, sail sail]}}
        """
    ran = run("check", pattern(text), "--json")
    notices = [one for one in ran.json()["notices"] if one["severity"] != "advice"]
    assert [(one["code"], one["severity"]) for one in notices] == [
        ("scant-allowance", "warning"),
        ("scant-allowance", "warning"),
    ]
    assert words in notices[0]["message"]
    assert "Cut A at least " in notices[0]["hint"]


def test_more_than_that_is_too_little(run: Run, pattern: WritePattern) -> None:
    """And the notice speaks in decimals, as the source does."""
    path = pattern(WEIR.replace("A: {fabric: river}", "A: {fabric: river, cut: 14.25 square}"))
    notices = run("check", path, "--json").json()["notices"]
    small = next(one for one in notices if one["code"] == "pieces-small")
    assert "short by 0.35" in small["message"]
    assert small["hint"] == "Cut A at least 14.75 square."
    assert not INCHES.search(small["message"])


def test_no_inch_stands_in_the_booklet(run: Run, pattern: WritePattern, tmp_path: Path) -> None:
    """But for the bar on the pages of templates, which is printed in both. Hours have quarters."""
    ran = run("build", pattern(WEIR), "--out", tmp_path, "--paper", "a4", "--quiet")
    assert ran.code == 0, ran.err
    book = pypdfium2.PdfDocument(next(tmp_path.rglob("*-a4.pdf")))
    text = "\n".join(page.get_textpage().get_text_range() for page in book)
    text = text.replace("\N{NO-BREAK SPACE}", " ")
    lines = text.replace("2 inches 5 centimetres", "").splitlines()
    lines = [line for line in lines if not line.startswith("Hours at the machine")]
    assert [line for line in lines if INCHES.search(line)] == []
    assert "13.5 × 13.5 cm" in text
    assert "0.75 cm" in text


# A-58 of our collection of printed faults: 9 1/2 × 2.5 = 23.75 is no conversion; 9 1/2 × 2.54 =
# 24.13. To the nearest millimetre, as a conversion table prints it (1.7): 2 1/2 in = 6.4 cm.
# https://www.echidnasewing.com.au/article/inspiring-and-educating/imperial-to-metric-conversion-guide/
@pytest.mark.parametrize(
    ("cut", "said", "hint"),
    [
        ("9 1/2 square", "23.75 square", "Write 24.1 at `cut-cm`, or leave it out."),
        ("9 1/2 square", "24.1 square", None),
        ("2 1/2 x 6 1/2", "6.4 x 16.5", None),
        ("2 1/2 x 6 1/2", "6.4 x 17", "Write 16.5 at `cut-cm`, or leave it out."),
    ],
)
def test_centimetres_beside_inches_are_read(
    run: Run, pattern: WritePattern, cut: str, said: str, hint: str | None
) -> None:
    path = pattern(f"pattern: Both\npieces: {{A: {{cut: {cut}, cut-cm: {said}, count: 8}}}}\n")
    notices = run("check", path, "--json").json()["notices"]
    assert [one["hint"] for one in notices if one["code"] == "cut-cm"] == ([hint] if hint else [])


def test_metres_beside_yards_are_read(run: Run, pattern: WritePattern) -> None:
    """12 squares of 10: 3 strips are 30, with 3 spare 33 in, 0.84 m: 0.8 is too little."""
    path = pattern(
        """\
        pattern: Both
        fabrics: {red: {yards: 1, metres: 0.8}}
        pieces: {A: {fabric: red, cut: 10 square, count: 12}}
        """
    )
    notices = run("check", path, "--json").json()["notices"]
    assert [one["rule"] for one in notices if one["code"] == "metres-short"] == ["R17"]
