"""What a newcomer may write wrong, and the words that name it: exit 1, and never a traceback.

Each case changes the sound source below in one place: what stood there, what stands there now,
and the beginning of the notice that follows, from its place onward.
"""

from collections.abc import Mapping
from pathlib import Path

import pytest

from tests.support import Run, WritePattern

SOUND = """
pattern: Trial
sizes:
  crib: {finished: 24 x 30, wide: 4, long: 5}
  twin: {finished: 48 x 60, wide: 8, long: 10}
fabrics:
  red: {use: squares}
  back: {use: backing}
pieces:
  A: {fabric: red, cut: 6 1/2 square}
top:
  rows: [A]
  across: wide
  down: long
backing: {fabric: back}
binding: {fabric: red}
"""
BOTH = "[crib, twin]"
Case = tuple[str, str, str]

SIZES: Mapping[str, Case] = {
    "nothing by nothing": (
        "6 1/2 square",
        "0 x 0",
        "9:25: error zero-size: cut: `0 x 0`: a side of 0 cannot be cut or sewn.",
    ),
    "below nothing": (
        "6 1/2 square",
        "-3 square",
        "9:25: error negative: cut: `-3` is below nothing.",
    ),
    "a quilt below nothing": (
        "24 x 30",
        "-3 x 30",
        "3:20: error negative: finished: `-3` is below nothing.",
    ),
    "longer than a street": (
        "6 1/2 square",
        "99999999 x 1/8",
        "9:25: error absurd-size: cut: `99999999 x 1/8` is larger than any quilt.",
    ),
    "thirty noughts": (
        "6 1/2 square",
        f"{10**30} square",
        "9:25: error not-a-number: cut: `1000000000000000000000000000000` is not a number",
    ),
    "one side only": (
        "6 1/2 square",
        "6 1/2",
        "9:25: error one-number: cut: `6 1/2` is not a size: it says one side",
    ),
    "smaller than its seams": (
        "6 1/2 square",
        "1/8 square",
        f"9:25: error no-room {BOTH}: A, cut 1/8, finishes −⅜ in width: two seams take ½.",
    ),
    "a seam of half the piece": (
        "pattern: Trial",
        "pattern: Trial\nseam: 3 1/4",
        f"10:25: error no-room {BOTH}: A, cut 6 1/2, finishes 0 in width: two seams take 6½.",
    ),
    "no seam": (
        "pattern: Trial",
        "pattern: Trial\nseam: 0",
        "2:7: error zero-size: seam: `0`: nothing can be 0 long or wide here.",
    ),
    "cloth without width": (
        "pattern: Trial",
        "pattern: Trial\nwidth: 0",
        "2:8: error zero-size: width: `0`: nothing can be 0 long or wide here.",
    ),
    "no step to sell by": (
        "pattern: Trial",
        "pattern: Trial\nsettings: {yard-step: 0}",
        "2:23: error zero-size: yard-step: `0`: nothing is sold in steps of 0.",
    ),
    "lines of quilting on one another": (
        "binding:",
        "quilting: [{area: all over, design: straight lines, spacing: 0}]\nbinding:",
        "15:62: error zero-size: spacing: `0`: nothing can be 0 long or wide here.",
    ),
    "a colour that screens do not know": (
        "use: squares",
        "use: squares, colour: octarine",
        "6:31: error not-a-colour: colour: `octarine` is not a colour",
    ),
}
COUNTS: Mapping[str, Case] = {
    "a computer's number": (
        "6 1/2 square",
        "6 1/2 square, count: 1e9",
        "9:46: error not-a-count: count: `1e9` is not a count",
    ),
    "a thousand million": (
        "6 1/2 square",
        "6 1/2 square, spare: 1000000000",
        "9:46: error too-many: spare: `1000000000` is more than can be counted.",
    ),
    "thirty noughts": (
        "across: wide",
        f"across: {10**30}",
        "12:11: error too-many: across: `1000000000000000000000000000000` is more than",
    ),
    "a size's own number of thirty noughts": (
        "wide: 8",
        f"wide: {10**30}",
        "4:35: error too-many: wide: `1000000000000000000000000000000` is more than can be",
    ),
    "a sum that explodes": (
        "6 1/2 square",
        f"6 1/2 square, count: {'*'.join('9' * 20)}",
        f"9:46: error count-value {BOTH}: A: count: `9*9*9*9",
    ),
    "below nothing": (
        "6 1/2 square",
        "6 1/2 square, count: -3",
        "9:46: error negative: count: `-3` is below nothing.",
    ),
    "nothing across": (
        "across: wide",
        "across: wide - 4",
        "12:11: error too-few [crib]: top: across: wide - 4 comes to 0; 1 is the least.",
    ),
    "no print": (
        "use: squares",
        "use: squares, prints: 0",
        f"6:31: error too-few {BOTH}: red: prints: 0 comes to 0; 1 is the least.",
    ),
    "none to a strip": (
        "6 1/2 square",
        "6 1/2 square, per-strip: 0",
        f"9:50: error too-few {BOTH}: A: per-strip: 0 comes to 0; 1 is the least.",
    ),
    "a pack of none": (
        "use: squares",
        "use: squares, form: squares, size: 10 square, pack: 0",
        "6:61: error too-few: pack: `0` is too few: 1 is the least.",
    ),
    "no panel": (
        "{fabric: back}",
        "{fabric: back, panels: 0}",
        f"14:33: error too-few {BOTH}: backing: panels: 0 comes to 0; 1 is the least.",
    ),
    "more than 50,000 patches in one row": (
        "rows: [A]",
        "rows: [A*60000]",
        f"11:10: error cells {BOTH}: `A*60000` is more than 50,000 patches",
    ),
    "more than 50,000 patches in rows": (
        "across: wide",
        "across: wide * 1000",
        "10:1: error too-many-patches [twin]: 'top' would have 80000 cells.",
    ),
    "more than 50,000 patches in units": (
        "top:\n  rows: [A]",
        "units:\n  hundred: {rows: [A*100], down: 100}\ntop:\n  rows: [hundred]",
        "12:1: error too-many-patches [crib]: the top would have 200000 patches; 50000 is the",
    ),
    "brackets that multiply": (
        "rows: [A]",
        "rows: [((((A*99)*99)*99)*99)*99]",
        f"11:10: error cells {BOTH}: `((((A*99)*99)*99)*99)*99` is more than 50,000 patches",
    ),
    "many units that are large together": (
        "top:\n",
        "units:\n  a: {rows: [A*40000]}\n  b: {rows: [A*40000]}\n  c: {rows: [A*40000]}\ntop:\n",
        f"12:14: error too-many-patches {BOTH}: the units of this size lay more than 100000 parts",
    ),
}
NAMES: Mapping[str, Case] = {
    "a piece of no fabric that is listed": (
        "{fabric: red, cut",
        "{fabric: rad, cut",
        (
            f"9:15: error unknown-fabric {BOTH}: A is of 'rad', and no fabric is called that. "
            "Did you mean 'red'?"
        ),
    ),
    "a backing of no fabric that is listed": (
        "backing: {fabric: back}",
        "backing: {fabric: bakc}",
        (
            f"14:19: error unknown-fabric {BOTH}: the backing is of 'bakc', and no fabric is "
            "called that. Did you mean 'back'?"
        ),
    ),
    "a binding of no fabric that is listed": (
        "binding: {fabric: red}",
        "binding: {fabric: blau}",
        (
            f"15:19: error unknown-fabric {BOTH}: the binding is of 'blau', and no fabric is "
            "called that. Fabrics: red, back."
        ),
    ),
    "a piece without a fabric": (
        "{fabric: red, cut",
        "{cut",
        f"9:3: error no-fabric {BOTH}: A has no fabric: a reader cannot buy it.",
    ),
    "a fabric that nothing is cut from": (
        "  back: {use: backing}",
        "  back: {use: backing}\n  blue: {use: leaves}",
        f"8:3: warning unused-fabric {BOTH}: the fabric 'blue' is listed and used nowhere.",
    ),
    "a top of units that are not there": (
        "rows: [A]",
        "rows: [star]",
        f"11:10: error unknown-part {BOTH}: nothing is called 'star'. Known parts: A.",
    ),
    "a border of no piece": (
        "  down: long",
        "  down: long\n  borders: [{strip: F}]",
        f"14:13: error unknown-part {BOTH}: nothing is called 'F'. Known parts: A.",
    ),
    "a sash of no piece": (
        "  down: long",
        "  down: long\n  sashing: {sash: F}",
        f"14:3: error unknown-part {BOTH}: nothing is called 'F'. Known parts: A.",
    ),
    "cornerstones of no piece": (
        "  down: long",
        "  down: long\n  sashing: {sash: A, stones: Q}",
        f"14:3: error unknown-part {BOTH}: nothing is called 'Q'. Known parts: A.",
    ),
    "strips shared with no piece": (
        "6 1/2 square",
        "6 1/2 square, with: Q",
        f"9:45: error host-fabric {BOTH}: A cannot share the strips of Q",
    ),
    "a border for a size that is not there": (
        "  down: long",
        "  down: long\n  borders: [{strip: A, only: [quen]}]",
        (
            "14:31: error unknown-size: `quen` is not a size of this pattern. "
            "The sizes are crib, twin."
        ),
    ),
    "a value for a size that is not there": (
        "across: wide",
        "across: {crib: 4, twins: 8}",
        "12:21: error unknown-size: `twins` is not a size of this pattern. Is it `twin`?",
    ),
    "an unknown key": (
        "6 1/2 square",
        "6 1/2 square, cuont: 3",
        "9:39: error unknown-key: `cuont` is not a key of a piece. Is it `count`?",
    ),
    "an unknown method": (
        "rows: [A]",
        "rows: [A]\n  method: knitting",
        "12:11: error unknown-method: `knitting` is no sewing method:",
    ),
    "a size called like a key": (
        "  twin:",
        "  cut:",
        "4:3: error reserved-name: a size cannot be called `cut`: that is a key of its own.",
    ),
    "two sizes of one name": (
        "  twin:",
        "  crib:",
        "4:3: error duplicate-key: `crib` stands twice in the same place. Keep one.",
    ),
    "a unit made from itself": (
        "rows: [A]",
        "rows: [top]",
        f"11:10: error made-from-itself {BOTH}: 'top' is made from itself.",
    ),
    "a folder's name that climbs": (
        "pattern: Trial",
        "pattern: Trial\nslug: ../../etc",
        "2:7: error not-a-name: slug: `../../etc` is not a name",
    ),
}
LEFT_OUT: Mapping[str, Case] = {
    "a size without its number across": (
        "across: wide",
        "across: {crib: 4}",
        "12:3: error no-value [twin]: top: across is stated for other sizes, and not for this one.",
    ),
    "a size without its own number": (
        ", wide: 8",
        "",
        "12:11: error no-number [twin]: top: across: this size has no number called 'wide'.",
    ),
    "a size without its rows": (
        "rows: [A]",
        "rows: {crib: [A]}",
        "10:1: error no-rows [twin]: 'top' has neither rows nor columns in this size.",
    ),
    "a size without its cut, and nothing that fixes it": (
        SOUND[SOUND.index("  twin:") : SOUND.index("top:")],
        (
            "  twin: {wide: 8, long: 10}\n"
            "fabrics: {red: {use: squares}, back: {use: backing}}\n"
            "pieces:\n"
            "  A: {fabric: red, cut: {crib: 6 1/2 square}}\n"
        ),
        (
            "7:3: error not-fixed [twin]: A's cut is stated for other sizes, and nothing fixes its "
            "width in this."
        ),
    ),
    "a size without its fabric": (
        "fabric: red, cut",
        "fabric: {crib: red}, cut",
        "9:3: error no-fabric [twin]: A has no fabric: a reader cannot buy it.",
    ),
    "no rows": (
        "rows: [A]",
        "rows: []",
        "11:3: error empty-value: rows: nothing is written here.",
    ),
    "a row of nothing": (
        "rows: [A]",
        'rows: ["", A]',
        "11:3: error empty-value: rows: nothing is written here.",
    ),
    "a top of nothing": (
        "top:\n  rows: [A]\n  across: wide\n  down: long",
        "top: {}",
        f"10:1: error no-rows {BOTH}: 'top' has neither rows nor columns in this size.",
    ),
    "no pieces": (
        "pieces:\n  A: {fabric: red, cut: 6 1/2 square}\n",
        "",
        f"9:10: error unknown-part {BOTH}: nothing is called 'A'. Add it to `pieces` or `units`.",
    ),
    "no sizes, and their numbers asked for": (
        SOUND[SOUND.index("sizes:") : SOUND.index("fabrics:")],
        "",
        "9:11: error no-number [one]: top: across: this size has no number called 'wide'.",
    ),
    "sizes, and none below": (
        SOUND[SOUND.index("sizes:") : SOUND.index("fabrics:")],
        "sizes:\n",
        "2:1: error empty-value: sizes: nothing is written here.",
    ),
    "a name and none behind": (
        "pattern: Trial",
        "pattern:",
        "1:1: error empty-value: pattern: nothing is written here.",
    ),
    "no name at all": (
        "pattern: Trial\n",
        "",
        "1:1: error missing-key: a pattern needs `pattern`.",
    ),
    "a cutting list without a count": (
        SOUND[SOUND.index("top:") :],
        "",
        f"9:3: warning no-count {BOTH}: nothing says how many A are needed.",
    ),
}
CLOTH: Mapping[str, Case] = {
    "a piece too long for the cloth": (
        "6 1/2 square}\ntop:\n  rows: [A]",
        "6 1/2 square}\n  S: {fabric: red, cut: 3 x 60 1/2, join: none}\ntop:\n  rows: [S]",
        (
            f"10:43: error too-long {BOTH}: S must be 60½″ long, a strip is 40″: short by 20½″, "
            "and `join: none` allows no join."
        ),
    ),
    "a piece too wide both ways": (
        "6 1/2 square",
        "48 1/2 x 60 1/2",
        f"9:25: error too-wide {BOTH}: A, cut 48½ × 60½″, is wider than the cloth (40″) both ways.",
    ),
    "cloth narrower than a piece": (
        "use: squares",
        "use: squares, width: 3",
        f"9:25: error too-wide {BOTH}: A, cut 6½ × 6½″, is wider than the cloth (3″) both ways.",
    ),
    "a square smaller than its pieces": (
        "use: squares",
        "use: squares, form: squares, size: 5 square, pack: 40",
        f"6:44: error pre-cut-small {BOTH}: A is cut 6½ × 6½″, and 'red' is sold 5 × 5″",
    ),
    "backing narrower than its seams": (
        "use: backing",
        "use: backing, width: 1/2",
        f"7:31: error backing-narrow {BOTH}: backing: the cloth is ½″ wide, and a seam takes 1″",
    ),
    "binding that reaches round nothing": (
        "binding: {fabric: red}",
        "binding: {fabric: red, cut: 1/2 x WOF}",
        f"15:29: error binding-width {BOTH}: binding: a strip cut ½″ does not reach round the edge",
    ),
    "binding as wide as the cloth": (
        "binding: {fabric: red}",
        "binding: {fabric: red, cut: 100 x WOF}",
        f"15:29: error binding-width {BOTH}: binding: a strip cut 100″ is as wide as the cloth",
    ),
    "binding that fits": (
        "binding: {fabric: red}",
        "binding: {fabric: red, cut: fit x WOF}",
        f"15:29: error binding-cut {BOTH}: binding: fit x WOF is no strip of binding",
    ),
}
TEXTS: Mapping[str, Case] = {
    "a name of 20,000 letters": (
        "pattern: Trial",
        "pattern: " + "x" * 20_000,
        "1:10: error too-long: pattern: this value has 20,000 characters; 10,000 is the most.",
    ),
    "a day that there is not": (
        "pattern: Trial",
        "pattern: Trial\ndate: 2026-02-31",
        "2:7: error not-a-date: date: `2026-02-31` is not a day",
    ),
    "three thousand brackets": (
        "rows: [A]",
        "rows: " + "[" * 3_000,
        "11:15: error too-deep: more than 8 brackets, lists and mappings within one another.",
    ),
    "three thousand round brackets": (
        "across: wide",
        "across: " + "(" * 3_000,
        "12:11: error too-long: across: ",
    ),
    "units three thousand deep": (
        "top:\n  rows: [A]",
        "units:\n"
        + "".join(f"  u{n}: {{rows: [u{n + 1}]}}\n" for n in range(3_000))
        + "  u3000: {rows: [A]}\ntop:\n  rows: [u0]",
        f"60:3: error too-nested {BOTH}: 'u49' lies in a unit in a unit and so on",
    ),
    "words without end": (
        "binding:",
        "words:\n  welcome: |\n" + "    word after word\n" * 70_000 + "binding:",
        "1:1: error too-large:",
    ),
    "an alias": (
        "rows: [A]",
        "rows: *rows",
        "11:9: error anchor: * makes YAML repeat a part of the file",
    ),
    "a script that the booklet's fonts do not have": (
        "use: squares",
        "use: שמיים",
        "6:14: error missing-glyph: the booklet's fonts do not have 'ש', 'מ', 'י', 'ם'.",
    ),
    "a sign that turns the words round": (
        "use: squares",
        'use: "squ\\u202eares"',
        (
            "6:14: error missing-glyph: the booklet's fonts do not have right-to-left override "
            "(U+202E, not to be seen)."
        ),
    ),
    "a tab": (
        "  rows: [A]",
        "\trows: [A]",
        "11:1: error yaml-tab: a tab sets this line in",
    ),
    "a bracket left open": (
        "rows: [A]",
        "rows: [A",
        "11:9: error yaml-open: [ is opened here",
    ),
    "a colon without a space": (
        "across: wide",
        "across:wide",
        "12:3: error yaml-space: a space is missing behind the colon of `across:`.",
    ),
}


def cases(*tables: Mapping[str, Case]) -> list[object]:
    return [pytest.param(*case, id=name) for table in tables for name, case in table.items()]


@pytest.mark.parametrize(
    ("before", "after", "said"), cases(SIZES, COUNTS, NAMES, LEFT_OUT, CLOTH, TEXTS)
)
def test_a_slip_is_named_where_it_stands(
    run: Run, pattern: WritePattern, before: str, after: str, said: str
) -> None:
    assert SOUND.count(before) == 1
    path = pattern(SOUND.replace(before, after))
    ran = run("check", path)
    told = [line.removeprefix(f"{path}:") for line in ran.err.splitlines()]
    assert [line for line in told if line.startswith(said)], ran.err[:2_000]
    assert "Traceback" not in ran.err
    assert ran.out == ""
    assert ran.code == int(": error " in ran.err)


def test_the_sound_source_is_sound(run: Run, pattern: WritePattern) -> None:
    assert run("check", pattern(SOUND)).code == 0


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "1:1: error empty-source: the file is empty."),
        (b"\0\1\2\xff" * 500, "1:4: error not-text: "),
        ("pattern: Trial\n".encode("utf-16"), "1:1: error not-text: this is not text in UTF-8."),
        (b"%PDF-1.7\n", "1:1: error "),
        (b"- A\n- B\n", "1:1: error not-a-pattern: "),
    ],
    ids=["empty", "binary", "UTF-16", "a PDF", "a list"],
)
def test_a_file_that_is_no_pattern(run: Run, tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "pattern.yaml"
    path.write_bytes(content)
    ran = run("check", path)
    assert ran.code == 1
    assert ran.err.startswith(f"{path}:{said}")
