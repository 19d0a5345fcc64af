"""Faults of the author that only a recount shows, from the source to the notice."""

import pytest

from tests.support import Run, WritePattern

SOUND = """
pattern: Small Change
sizes:
  crib: {finished: 24 x 30, across: 4, down: 5}
  throw: {finished: 36 x 48, across: 6, down: 8}
fabrics:
  coin: {use: squares}
  purse: {use: backing}
  string: {use: binding}
pieces:
  A: {fabric: coin, cut: 6 1/2 square}
top: {rows: [A], across: across, down: down}
backing: {fabric: purse}
binding: {fabric: string, cut: 2 1/2 x WOF}
"""


def told(run: Run, pattern: WritePattern, text: str) -> dict[str, tuple[str, str, list[str]]]:
    notices = run("check", pattern(text), "--json").json()["notices"]
    return {
        one["code"]: (one["severity"], f"{one['message']} {one['hint']}", one["sizes"])
        for one in notices
        if one["stage"] == "proof" and one["severity"] != "advice"
    }


def test_a_sound_source(run: Run, pattern: WritePattern) -> None:
    assert told(run, pattern, SOUND) == {}


@pytest.mark.parametrize(
    ("right", "wrong", "code", "severity", "says"),
    [
        (
            "string, cut: 2 1/2",
            "string, cut: 2 7/16",
            "off-ruler",
            "warning",
            (
                "the binding's strips 2 7/16: few rulers show sixteenths. "
                "Nearest are 2 3/8 and 2 1/2. Cut it 2 1/2, and trim."
            ),
        ),
        (
            "string, cut: 2 1/2",
            "string, cut: 2 1/3",
            "off-ruler",
            "error",
            (
                "the binding's strips 2 1/3: no ruler shows it. Nearest are 2 1/4 and 2 3/8. "
                "Cut it 2 3/8, and trim."
            ),
        ),
        (
            "{fabric: purse}",
            "{fabric: purs}",
            "unknown-fabric",
            "error",
            "the backing is of 'purs', and no fabric is called that. Did you mean 'purse'?",
        ),
        (
            "A: {fabric: coin, cut",
            "A: {cut",
            "no-fabric",
            "error",
            "A has no fabric: a reader cannot buy it. Write `fabric:` at A.",
        ),
        (
            "  coin: {use: squares}",
            "  coin: {use: squares}\n  note-book: {use: nothing}",
            "unused-fabric",
            "warning",
            (
                "the fabric 'note-book' is listed and used nowhere. Use it in a piece, the backing "
                "or the binding, or leave it out."
            ),
        ),
    ],
)
def test_an_authors_fault(
    run: Run,
    pattern: WritePattern,
    *,
    right: str,
    wrong: str,
    code: str,
    severity: str,
    says: str,
) -> None:
    assert right in SOUND
    notices = told(run, pattern, SOUND.replace(right, wrong))
    assert notices[code] == (severity, says, ["crib", "throw"])


def test_a_strip_laid_in_a_row_is_cut_as_long_as_its_place(run: Run, pattern: WritePattern) -> None:
    text = SOUND.replace("6 1/2 square}", "6 1/2 square}\n  B: {fabric: coin, cut: 6 1/2 x WOF}")
    assert told(run, pattern, text.replace("[A]", "[A B]")) == {}


LARGER_WITH_LESS = """
pattern: Larger With Less
sizes:
  crib: {across: 6, down: 6}
  throw: {across: 4, down: 4}
fabrics: {coin: {use: squares}}
pieces:
  A: {fabric: coin, cut: {crib: 4 1/2 square, throw: 6 1/2 square}}
top: {rows: [A], across: across, down: down}
"""


def test_a_larger_size_with_fewer_patches_is_told(run: Run, pattern: WritePattern) -> None:
    """24 × 24 and 24 × 24 are equal; at 26 × 26 the larger one has the fewer patches."""
    assert told(run, pattern, LARGER_WITH_LESS) == {}
    text = LARGER_WITH_LESS.replace("throw: 6 1/2 square", "throw: 7 square")
    severity, says, sizes = told(run, pattern, text)["size-falls"]
    assert (severity, sizes) == ("warning", ["throw"])
    assert says.startswith(
        "throw is larger than crib and has less of 'coin': 16 patches against 36."
    )
