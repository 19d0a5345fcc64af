"""The number walk: no number of a pattern can be changed without somebody being told, or a
printed figure changing with it. Nothing here knows what a number means beyond count or length.

Here the demos are walked step by step and all other patterns by a sample that is always the same;
`python -m tests.walk` tries every change of every pattern."""

import random
from pathlib import Path

import pytest

from tests.support import ROOT
from tests.walk.bare import bare, is_optional
from tests.walk.changes import Change, changes, pairs, steps, swaps
from tests.walk.explained import EXPLAINED
from tests.walk.outcomes import Bench
from tests.walk.text import entries, numbers, replaced, without
from tests.walk.walking import tried

DEMOS = ("late-returns", "tea-at-four")
PATTERNS = sorted(path.parent for path in (ROOT / "patterns").glob("*/pattern.yaml"))
EVERY = pytest.mark.parametrize("pattern", PATTERNS, ids=[one.name for one in PATTERNS])
# A size that the lengths of its parts rest on, and how many she means to cut from one strip.
STAYS = {"finished", "per-strip", "per-set"}
SAMPLE = 8
SEED = 4


@pytest.mark.parametrize("as_written", [True, False], ids=["as written", "bare"])
@pytest.mark.parametrize("demo", DEMOS)
def test_no_number_can_change_unseen(demo: str, *, as_written: bool, tmp_path: Path) -> None:
    bench = Bench(ROOT / "patterns" / demo, tmp_path)
    text = bench.text if as_written else bare(bench, bench.outcome(bench.text))[0]
    found = numbers(text)
    assert len(found) > 15
    walked = tried(bench, text, (*steps(found), *swaps(found)), as_written=as_written)
    assert walked.survivors == []
    became = {one for _, _, one in walked.became}
    assert {"refused", "told", "shown"} <= became


@EVERY
def test_no_change_of_a_sample_goes_unseen(pattern: Path, tmp_path: Path) -> None:
    bench = Bench(pattern, tmp_path)
    chosen = random.Random(f"{SEED} {pattern.name}")  # noqa: S311
    some = chosen.sample(list(changes(bench.text)), SAMPLE)
    assert tried(bench, bench.text, some).survivors == []


@EVERY
def test_a_bare_pattern_is_silent_and_the_same_quilt(pattern: Path, tmp_path: Path) -> None:
    """Without any figure that can be left out: no error, no warning, the same sizes and counts."""
    bench = Bench(pattern, tmp_path)
    base = bench.outcome(bench.text)
    text, stays = bare(bench, base)
    shorter = bench.outcome(text)
    assert shorter.faults == []
    assert shorter.sizes_and_counts() == base.sizes_and_counts()
    assert {entry.keys[-1] for entry in stays} <= STAYS


def test_each_reason_is_still_needed() -> None:
    """A reason names a pattern and a figure that there are."""
    for slug, key in EXPLAINED:
        text = (ROOT / "patterns" / slug / "pattern.yaml").read_text("utf-8")
        assert key in {number.key for number in numbers(text)}


TEXT = """\
pattern: Two by Two  # not 5
date: 2026-11-25
sizes: {lap: {finished: 10 1/2 x 8, tall: 3}, crib: {finished: 9 x 8, tall: 2}}
pieces:
  A2: {fabric: a2, cut: 2 1/2 x WOF, note: cut 4}
  B: {count: {lap: 7, crib: 6}}
units:
  pair:
    rows: [A2*tall B, (A2 B)*5]
    measure:
      lap: 4 1/2 square
      crib: 3 square
    make: 2
"""


def test_what_counts_as_a_number() -> None:
    """Letters, dates, colours and sentences have none; the text itself is read."""
    found = [(number.key, number.text, number.stepped(1)) for number in numbers(TEXT)]
    assert found == [
        ("sizes.lap.finished", "10 1/2", "10 5/8"),
        ("sizes.lap.finished", "8", "8 1/8"),
        ("sizes.lap.tall", "3", "4"),
        ("sizes.crib.finished", "9", "9 1/8"),
        ("sizes.crib.finished", "8", "8 1/8"),
        ("sizes.crib.tall", "2", "3"),
        ("pieces.A2.cut", "2 1/2", "2 5/8"),
        ("pieces.B.count.lap", "7", "8"),
        ("pieces.B.count.crib", "6", "7"),
        ("units.pair.rows", "5", "6"),
        ("units.pair.measure.lap", "4 1/2", "4 5/8"),
        ("units.pair.measure.crib", "3", "3 1/8"),
        ("units.pair.make", "2", "3"),
    ]


def test_a_number_is_exchanged_with_its_neighbour() -> None:
    swapped = [change.what for change in swaps(numbers(TEXT))]
    assert swapped[0] == "3 sizes.lap.finished across 10 1/2 <-> 3 sizes.lap.finished down 8"
    assert len(swapped) == 12


def keys(change: Change) -> tuple[str, ...]:
    return tuple(number.key for number in change.news)


def test_pairs_that_cancel() -> None:
    """Beside one part, in one mapping of sizes, and a part with its unit, there both ways alike."""
    found = list(pairs(TEXT, numbers(TEXT)))
    times = [keys(change) for change in found].count
    assert times(("pieces.B.count.lap", "pieces.B.count.crib")) == 2
    assert times(("sizes.lap.tall", "sizes.crib.tall")) == 2
    assert times(("units.pair.measure.lap", "pieces.A2.cut")) == 4
    assert times(("units.pair.make", "pieces.B.count.lap")) == 4
    assert times(("pieces.A2.cut", "pieces.B.count.lap")) == 0
    one = next(change for change in found if keys(change)[0] == "pieces.B.count.lap")
    assert "B: {count: {lap: 8, crib: 5}}" in one.made(TEXT)


def test_a_key_is_left_out_with_all_its_lines() -> None:
    figures = [entry for entry in entries(TEXT) if is_optional(entry)]
    shorter = without(TEXT, figures)
    assert "sizes: {lap: {tall: 3}, crib: {tall: 2}}" in shorter
    assert shorter.endswith("units:\n  pair:\n    rows: [A2*tall B, (A2 B)*5]\n")
    assert replaced(TEXT, {}) == TEXT
