"""The slips of YAML: what was typed, and what the author is told."""

import pytest

from tests.source.conftest import Read, Told

AFTER_BAR = "Put the sentence on the next line, after |."
ON_ITS_OWN = "Put this key on a line of its own with its sentence below it, after |."
SLIPS = {
    "a colon in a sentence": (
        "note: Press: away",
        (
            "2:12: error yaml-colon: a colon inside a sentence: YAML takes the word "
            f"before it for a key. {AFTER_BAR}"
        ),
    ),
    "a colon in a sentence inside braces": (
        "units: {a: {rows: [A], note: press: away}}",
        (
            "2:35: error yaml-colon: a colon inside a sentence: YAML takes the word "
            f"before it for a key. {ON_ITS_OWN}"
        ),
    ),
    "a comma inside braces": (
        "units: {a: {rows: [A], note: press, then turn}}",
        (
            "2:37: error yaml-comma: `then turn` stands alone between the braces: a comma"
            " there ends the value of `note`. Put `note` on a line of its own, or its "
            "words in quotation marks."
        ),
    ),
    "double braces first": (
        "note: {{ count.A }} squares",
        (
            "2:7: error yaml-braces: {{ … }} cannot begin a value: the reader takes "
            f"it for brackets of its own. {AFTER_BAR}"
        ),
    ),
    "double braces alone": (
        "note: {{ count.A }}",
        (
            "2:7: error yaml-braces: {{ … }} cannot begin a value: the reader takes "
            f"it for brackets of its own. {AFTER_BAR}"
        ),
    ),
    "double braces inside braces": (
        "units: {a: {rows: [A], note: use {{ count.A }} now}}",
        (
            "2:34: error yaml-braces: {{ … }} cannot stand inside braces: they end "
            f"where it ends. {ON_ITS_OWN}"
        ),
    ),
    "a tab": (
        "units:\n\ta: {rows: [A]}",
        (
            "3:1: error yaml-tab: a tab sets this line in, and the reader counts spaces. "
            "Use spaces to set a line in; most editors can be told to."
        ),
    ),
    "no space behind the colon": (
        "seam:1/4\nwidth: 40",
        "2:1: error yaml-space: a space is missing behind the colon of `seam:`.",
    ),
    "no space behind the colon, before braces": (
        "pieces:\n  A:{cut: 3 square}",
        "3:3: error yaml-space: a space is missing behind the colon of `A:`.",
    ),
    "no space behind the colon, inside braces": (
        "pieces: {A: {cut:3 square}}",
        "2:14: error yaml-space: a space is missing behind the colon of `cut:`.",
    ),
    "no colon at all": (
        "sizes {one: {}}",
        "2:5: error yaml-no-colon: a colon is missing behind `sizes`.",
    ),
    "a quotation mark first": (
        'note: "Press" toward A',
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with a quotation mark "
            f"here: it means something else to YAML. {AFTER_BAR}"
        ),
    ),
    "an apostrophe first": (
        "note: 'Tis the season\nsummary: snow",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with a quotation mark "
            f"here: it means something else to YAML. {AFTER_BAR}"
        ),
    ),
    "a bracket first": (
        "note: [see page 2] and turn",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with a bracket here: it "
            f"means something else to YAML. {AFTER_BAR}"
        ),
    ),
    "a star first": (
        "note: *important* press now",
        (
            "2:7: error anchor: * makes YAML repeat a part of the file; a pattern has no "
            "such thing. If a sentence begins with *: put it on the next line, after |."
        ),
    ),
    "an at sign first": (
        "note: @home press now",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with @ here: it means "
            f"something else to YAML. {AFTER_BAR}"
        ),
    ),
    "a backtick first": (
        "note: `press` now",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with a backtick here: it"
            f" means something else to YAML. {AFTER_BAR}"
        ),
    ),
    "a dash first": (
        "note: - press now",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with a dash here: it "
            f"means something else to YAML. {AFTER_BAR}"
        ),
    ),
    "an exclamation mark first": (
        "note: !press now",
        "2:7: error tag: a word with ! in front is for programs, not for patterns. " + AFTER_BAR,
    ),
    "words behind the bar": (
        "note: | press now",
        (
            "2:7: error yaml-first-sign: a sentence cannot begin with | here: it means "
            f"something else to YAML. {AFTER_BAR}"
        ),
    ),
    "a number sign in a sentence": (
        "summary: Block # 7",
        (
            "2:16: error yaml-comment: everything behind # is a comment, so only `Block` "
            "was read. A comment stands on its own line, or behind two spaces; else put "
            "quotation marks."
        ),
    ),
    "a number sign first": (
        "fabrics:\n  red:\n    colour: #a0522d\n    tone: dark",
        (
            "4:13: error yaml-comment: everything behind # is a comment, so `colour` has "
            'no value. Put it in quotation marks: "#a0522d".'
        ),
    ),
    "a number sign inside braces": (
        "fabrics: {red: {colour: #a0522d, tone: dark}}",
        (
            "2:25: error yaml-comment: everything behind # is a comment, so the brackets "
            "before it are never closed. Put what begins with # in quotation marks."
        ),
    ),
    "a backslash in quotation marks": (
        'note: "press \\qturn"',
        (
            "2:7: error yaml-backslash: a backslash between quotation marks makes YAML "
            f"look for a sign of its own. {AFTER_BAR}"
        ),
    ),
    "a brace left open": (
        "units:\n  a: {rows: [A]\ntop: {rows: [a]}",
        "3:6: error yaml-open: { is opened here, and not closed as it was opened.",
    ),
    "a bracket closed as a brace": (
        "units:\n  a: {rows: [A}",
        "3:13: error yaml-open: [ is opened here, and not closed as it was opened.",
    ),
    "words behind a closing brace": (
        "units: {a: {rows: [A]}} b",
        "2:25: error yaml-behind: `b` stands behind the bracket that closes this value.",
    ),
    "a line set in too little": (
        "units:\n  a: {rows: [A]}\n b: {rows: [A]}",
        (
            "4:2: error yaml-indent: this line is set in by 1, the line before it by 2; "
            "keys that belong together are set in alike."
        ),
    ),
    "a sentence that runs on": (
        "note: press\ntoward A",
        (
            "3:1: error yaml-no-key: this line has no key. A sentence of several lines "
            "stands below its key, after |. If `toward` is a key, put a colon behind it."
        ),
    ),
    "a second document": (
        "---\npattern: Again",
        (
            "2:1: error second-document: a second document begins here; a file holds one "
            "pattern. Take the line of three dashes out, or put the rest in a file of its"
            " own."
        ),
    ),
}


@pytest.mark.parametrize(("typed", "said"), SLIPS.values(), ids=SLIPS.keys())
def test_a_slip_is_told_in_plain_words(told: Told, typed: str, said: str) -> None:
    assert told(f"pattern: Trial\n{typed}\n") == [said]


def test_a_no_break_space_is_read_as_a_space(written: Read) -> None:
    blank = "\N{NO-BREAK SPACE}"
    source = written(f"pattern: Trial\npieces:\n  A: {{cut: 2{blank}1/2{blank}square}}\n")
    cut = source.pieces[next(iter(source.pieces))].cut
    assert cut is not None
    assert cut.bare is not None
    assert cut.bare.text == "2 1/2 square"


def test_a_no_break_space_that_sets_a_line_in_is_told(told: Told) -> None:
    blank = "\N{NO-BREAK SPACE}"
    assert told(f"pattern: Trial\npieces:\n{blank}{blank}A: {{cut: 3 square}}\n") == [
        (
            "3:1: advice no-break-space: a no-break space, as word processors make them, sets this "
            "line in. It was read as a plain space; type plain ones."
        )
    ]


@pytest.mark.parametrize(
    "typed",
    [
        "note: |\n  Press: away, {{ count.A }} squares. # 3 [and] *so* on",
        'note: "Press: away, then turn # 3"',
        "note: It's fine - a dash, a comma, {{ count.A }} & all",
        "summary: Block  # behind two spaces a comment is a comment",
        "# a comment on its own line\nsummary: Block",
        "units: # a comment behind a key that has a value below it\n  a: {rows: [A]}",
        "summary: see https://example.org/a:b",
        "top: {rows: [A B, B A], press: [in, out]}",
        "top:\n  rows:\n    - A B\n    - B A",
        "---\nsummary: Block",
    ],
)
def test_what_is_no_slip_is_left_alone(told: Told, typed: str) -> None:
    first = "pattern: Trial\n" if not typed.startswith("---") else ""
    last = "\npattern: Trial" if not first else ""
    assert told(f"{first}{typed}{last}\n") == []
