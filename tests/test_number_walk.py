"""The number walk: no number of a demo can be changed without somebody being told, or a printed
figure changing with it. Nothing here knows what a number means beyond count or length."""

import re
from pathlib import Path

import pytest

from tests.support import ROOT
from tests.walking import Number, Outcome, bare, changes, numbers, outcome, value_of

DEMOS = ("late-returns", "tea-at-four")
# Figures that are stated to be at least so much.
AT_LEAST = frozenset(("strips", "squares", "sets", "packs", "yards"))
# A change that nobody is told of and no figure shows, with the reason. There is none.
EXPLAINED: dict[str, str] = {}

A_NUMBER = re.compile(r"\d+")


def is_clear(base: Outcome, changed: Outcome) -> bool:
    """Whether an error is told as the card asks: place, size, both sums, and a hint. A fault of
    form has no sums; it names the place and says what is expected."""
    old = base.told()
    new = [one for one in changed.errors if (one.code, one.message, one.sizes) not in old]
    return any(
        one.marks
        and (
            one.stage == "source"
            or (one.sizes and one.hint and len(A_NUMBER.findall(one.message)) > 1)
        )
        for one in new
    )


def verdict(base: Outcome, changed: Outcome) -> str:
    """What becomes of a change."""
    if changed.errors:
        return "refused" if is_clear(base, changed) else "refused without saying why"
    if changed.told() != base.told():
        return "told"
    return "shown" if changed.values() != base.values() else "nothing"


def wanted(base: Outcome, where: tuple[Number, ...], new_text: str) -> set[str]:
    """What may become of it, by the class of the figures that stand there."""
    classes = base.classes()
    found: set[str] = set()
    for number in where:
        for place in number.at:
            if (place, number.side) in classes:
                found |= classes[place, number.side]
                break
    if "exact" in found:
        return {"refused"}
    if len(where) == 1 and not AT_LEAST.isdisjoint(where[0].keys):
        less = value_of(new_text) < value_of(where[0].text)
        return {"refused"} if less else {"told", "refused"}
    return {"refused", "told", "shown"}


@pytest.mark.parametrize("as_written", [True, False], ids=["as written", "bare"])
@pytest.mark.parametrize("demo", DEMOS)
def test_no_number_can_change_unseen(demo: str, *, as_written: bool, tmp_path: Path) -> None:
    path = tmp_path / "pattern.yaml"
    text = (ROOT / "patterns" / demo / "pattern.yaml").read_text("utf-8")
    text = text if as_written else bare(text, path)
    base, found = outcome(text, path), numbers(text)
    assert not base.errors
    assert len(found) > 15
    survivors, seen = [], set()
    for change in changes(text, found):
        became = verdict(base, outcome(change.text, path))
        seen.add(became)
        if became not in wanted(base, change.where, change.new) and change.what not in EXPLAINED:
            survivors.append(f"{became}: {change.what}")
    assert survivors == []
    assert seen == {"refused", "told", "shown"}


def test_the_bare_copy_has_lost_its_figures(tmp_path: Path) -> None:
    for demo in DEMOS:
        text = (ROOT / "patterns" / demo / "pattern.yaml").read_text("utf-8")
        shorter = bare(text, tmp_path / "pattern.yaml")
        lost = len(numbers(text)) - len(numbers(shorter))
        assert lost > 20, demo
        assert not outcome(shorter, tmp_path / "pattern.yaml").errors


TEXT = """\
pattern: Two by Two  # not 5
date: 2026-11-25
sizes: {lap: {finished: 10 1/2 x 8, tall: 3}}
pieces:
  A2: {fabric: a2, cut: 2 1/2 x WOF, note: cut 4}
top:
  rows: [A2*tall B, (A2 B)*5]
"""


def test_what_counts_as_a_number() -> None:
    """Letters, dates, colours and sentences have none; the text itself is read."""
    found = [(number.key, number.text, number.stepped(1)) for number in numbers(TEXT)]
    assert found == [
        ("sizes.lap.finished", "10 1/2", "10 5/8"),
        ("sizes.lap.finished", "8", "8 1/8"),
        ("sizes.lap.tall", "3", "4"),
        ("pieces.A2.cut", "2 1/2", "2 5/8"),
        ("top.rows", "5", "6"),
    ]


def test_a_number_is_exchanged_with_its_neighbour() -> None:
    swapped = [change.what for change in changes(TEXT, numbers(TEXT)) if "<->" in change.what]
    assert swapped[0] == "sizes.lap.finished 10 1/2 <-> sizes.lap.finished 8"
    assert len(swapped) == 4
