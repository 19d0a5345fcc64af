"""Faults of form: what was typed, and what the author is told, at the very word."""

import pytest

from tests.source.conftest import ReadAll, Told

HEAD = "pattern: Trial\nsizes: {crib: {finished: 36 x 42}, throw: {finished: 54 x 60}}\n"
FAULTS = {
    "an unknown key, near a known one": (
        "fabrics: {red: {colr: red}}",
        "3:17: error unknown-key: `colr` is not a key of a fabric. Is it `colour`?",
    ),
    "an unknown section": (
        "piecs: {A: {cut: 3 square}}",
        "3:1: error unknown-key: `piecs` is not a key of a pattern. Is it `pieces`?",
    ),
    "an unknown key, near none": (
        "backing: {zebra: red}",
        (
            "3:11: error unknown-key: `zebra` is not a key of the backing. Its keys are "
            "note, quilted-by, pieced, insert, fabric, over, size, panels, seams."
        ),
    ),
    "a key of another method": (
        "units: {a: {method: log cabin, centre: A, logs: B, goose: C}}",
        (
            "3:52: error unknown-key: `goose` is not a key of a log cabin. Its keys are "
            "note, method, finished, measure, make, trimming, press, centre, logs, start,"
            " turning, lengths."
        ),
    ),
    "a key left out": (
        "units: {a: {method: log cabin, centre: A}}",
        "3:9: error missing-key: a log cabin needs `logs`.",
    ),
    "an unknown method": (
        "units: {a: {method: log cabbin, centre: A}}",
        (
            "3:21: error unknown-method: `log cabbin` is no sewing method: layout, strip "
            "set, half-square triangles, quarter-square triangles, half-rectangle "
            "triangles, flying geese, square in a square, snowball corners, log cabin, "
            "courthouse steps, curved seam, applique, cut apart, strip race. Is it `log "
            "cabin`?"
        ),
    ),
    "another word than those allowed": (
        "fabrics: {red: {use: rails, tone: drak}}",
        (
            "3:35: error wrong-word: tone: `drak` is none of the words for it: light, "
            "medium, dark. Is it `dark`?"
        ),
    ),
    "a wrong value for one size": (
        "pieces: {A: {cut: {crib: 3, throw: 4 square}}}",
        (
            "3:26: error one-number [crib]: cut: `3` is not a size: it says one side, and"
            " a size has two. Write it as 6 1/2 x 2 1/2, or 6 1/2 square."
        ),
    ),
    "a size that is not there": (
        "pieces: {A: {cut: {crb: 3 square}}}",
        "3:20: error unknown-size: `crb` is not a size of this pattern. Is it `crib`?",
    ),
    "a border only for a size that is not there": (
        "top: {rows: [A], borders: [{strip: F, only: thorw}]}",
        "3:45: error unknown-size: `thorw` is not a size of this pattern. Is it `throw`?",
    ),
    "a mapping that is not per size": (
        "top: {rows: [A], borders: {strip: F}}",
        (
            "3:28: error unknown-size: `strip` is not a size of this pattern. The sizes "
            "are crib, throw."
        ),
    ),
    "a list for a value": (
        "pieces: {A: {cut: [3 square]}}",
        (
            "3:14: error not-a-value: cut: a list stands here, where one value belongs: "
            "the size to cut, across x down (6 1/2 x 2 1/2, fit x 2 1/2, 2 1/2 x WOF)."
        ),
    ),
    "a value for a list": (
        "units: {a: {rows: A B A}}",
        (
            "3:19: error not-a-list: rows: `A B A` stands here, where a list belongs. "
            "Write it in brackets: [A B A]."
        ),
    ),
    "a value for a mapping": (
        "pieces: {A: 3 square}",
        (
            "3:13: error not-a-mapping: A: `3 square` stands here, where keys and values "
            "belong. Write them below it, or in braces: {key: value, key: value}."
        ),
    ),
    "a mapping in a list of rows": (
        "units: {a: {rows: [A, {b: c}]}}",
        (
            "3:23: error not-a-value: rows: a mapping stands here, where one value "
            "belongs: parts side by side (A star/left B*3)."
        ),
    ),
    "a key without a value": (
        "pieces:\n  A:\n  B: {cut: 3 square}",
        "4:3: error empty-value: A: nothing is written here. Give it a value, or take the key out.",
    ),
    "an empty list": (
        "top: {rows: []}",
        (
            "3:7: error empty-value: rows: nothing is written here. Give it a value, or "
            "take the key out."
        ),
    ),
    "a letter that looks like a figure": (
        "pieces: {I: {cut: 3 square}}",
        (
            "3:10: error not-a-letter: `I` is not a piece's letter: one or two capitals, "
            "a figure may follow (A, AB, A2). I and O are left out: they look like 1 and "
            "0."
        ),
    ),
    "a row with a wrong turn": (
        "units: {a: {rows: [A/lft B, A]}}",
        (
            "3:20: error not-a-turn: rows: `A/lft B`: `/lft` is no turn. The turns are "
            "/right, /left, /half and /mirror."
        ),
    ),
    "a way to press that is none": (
        "top: {rows: [A], press: upwards}",
        (
            "3:25: error not-a-pressing: press: `upwards` is no way to press. The words "
            "are open, out, in, left, right, all one way, rows alternate, and toward with"
            " a part (toward A)."
        ),
    ),
    "a number of geese that no method makes": (
        "units: {a: {method: flying geese, goose: A, wings: B, gives: 3}}",
        "3:62: error wrong-number: gives: `3` is not 1 or 4.",
    ),
    "decimals of an inch": (
        "seam: 0.25",
        (
            "3:7: error decimal-inches: seam: `0.25`: decimals are for centimetres; "
            "inches and yards are written with a fraction. Write 1/4."
        ),
    ),
    "a fraction of a centimetre": (
        "binding: {fabric: red, cut: 6 1/2 x WOF}\nwritten-in: cm",
        (
            "3:29: error fraction-cm: cut: `1/2`: this number is in centimetres, and they"
            " are written with a point. Write 6.5."
        ),
    ),
    "a seam per size": (
        "seam: {crib: 1/4}",
        (
            "3:1: error not-a-value: seam: a mapping stands here, where one value "
            "belongs: a length (6 1/2)."
        ),
    ),
    "a unit called top": (
        "units: {top: {rows: [A]}}",
        (
            "3:9: error reserved-name: the quilt top stands by itself, under `top:`, not "
            "among the units."
        ),
    ),
    "another version of the language": (
        "language: 2",
        (
            "3:11: error language-version: this source is in version 2 of the language; "
            "this program reads version 1."
        ),
    ),
    "an empty key": (
        '"": a',
        (
            "3:1: error unknown-key: an empty word is not a key of a pattern. All its "
            "keys are in the JSON Schema that `patternbook schema` prints."
        ),
    ),
}


@pytest.mark.parametrize(("typed", "said"), FAULTS.values(), ids=FAULTS.keys())
def test_a_fault_is_told_at_its_word(told: Told, typed: str, said: str) -> None:
    assert told(f"{HEAD}{typed}\n") == [said]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("sizes: {base: {}}", "2:9: error reserved-name: a size cannot be called `base`"),
        ("sizes: {others: {}}", "2:9: error reserved-name: a size cannot be called `others`"),
        ("sizes: {Crib: {}}", "2:9: error not-a-name: `Crib` is not a name"),
        ("sizes: {}", "2:1: error empty-value: sizes: nothing is written here."),
        ("sizes: {crib: {row-count: 3}}", "2:16: error not-a-word-name: `row-count`:"),
        ("sizes: {crib: {finishd: 3 x 4}}", "2:25: error not-whole: finishd: `3 x 4` is not"),
        ("sizes: {crib: {finished: 0 x 4}}", "2:26: error zero-size: finished: `0 x 4`:"),
        ("sizes: {crib: {finished: 5000 x 4}}", "2:26: error absurd-size: finished:"),
        ("sizes: [crib]", "2:1: error not-a-mapping: sizes: a list stands here"),
        ("pieces: {A: {cut: {crib: 3 square}}}", "2:20: error unknown-size: `crib` is not a size"),
    ],
)
def test_faults_of_the_sizes_themselves(told: Told, typed: str, said: str) -> None:
    (notice,) = told(f"pattern: Trial\n{typed}\n")
    assert notice.startswith(said)


def test_a_size_that_is_not_there_is_told_once_with_all_its_places(
    read_all: ReadAll,
) -> None:
    cut, count = "cut: {twin: 3 square, crib: 4 square}", "count: {twin: x y}"
    _, (notice,) = read_all(f"{HEAD}pieces: {{A: {{{cut}, {count}}}}}\n")
    assert notice.code == "unknown-size"
    assert [mark.place.column for mark in notice.marks] == [20, 61]


def test_all_faults_are_told_in_the_order_of_the_lines(told: Told) -> None:
    notices = told(
        f"{HEAD}seam: 0.25\nfabrics: {{red: {{tone: drak}}}}\npieces: {{A: {{ct: 3}}}}\n"
    )
    assert [notice.split(":")[0] for notice in notices] == ["3", "4", "5"]


def test_a_pattern_needs_its_name(told: Told) -> None:
    assert told("by: Anna\n") == ["1:1: error missing-key: a pattern needs `pattern`."]


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("in: {fr: {summary: a}}", "in"),
        ("photos: [{file: quilt.jpg, alt: the quilt}]", "photos"),
    ],
)
def test_a_key_of_a_later_chapter_is_kept_and_told(told: Told, typed: str, key: str) -> None:
    (notice,) = told(f"{HEAD}{typed}\n")
    assert notice.endswith(f"advice not-used-yet: `{key}` is kept, and not used yet.")


def test_a_note_may_stand_on_a_whole_section(told: Told) -> None:
    assert told(f"{HEAD}fabrics:\n  note: Wash them all first.\n  red: {{use: rails}}\n") == [
        "4:3: advice not-used-yet: the note on all `fabrics` is kept, and not used yet."
    ]


def test_plain_cutting_is_what_is_done_anyway(told: Told) -> None:
    assert told(f"{HEAD}settings: {{cutting: plain}}\n") == []


def test_the_author_has_keys_of_her_own_everywhere(told: Told) -> None:
    assert (
        told(f"{HEAD}x-mine: {{a: [b]}}\nfabrics: {{red: {{x-shop: the corner, use: rails}}}}\n")
        == []
    )
