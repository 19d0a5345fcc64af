"""Faults of the kinds found in published patterns: each is a small invented source in `cases/`,
with what must be told of it beside the wrong figure, and the figure that is right below.

    A: {cut: 7 x 15}  # wrong: R1 needs 7 1/2 x 15
    #right  A: {cut: 7 1/2 x 15}

A line marked `# wrong` alone is only left out of the mended twin. The faults are invented after
the kinds seen in print (common practice, no source); every right value was reckoned by hand.
"""

import re
from pathlib import Path
from typing import Any, Final, NamedTuple

import pytest

from tests.support import Run, WritePattern

CASES: Final = sorted((Path(__file__).parent / "cases").glob("*.yaml"))
WRONG: Final = re.compile(r"\s+# wrong(?:: (?P<rules>[R\d/]+) needs (?P<needed>.+))?$")
RIGHT: Final = "#right"


class Expected(NamedTuple):
    """What must be told: by one of these rules, at this line, with this value."""

    line: int
    rules: tuple[str, ...]
    needed: str


def expected(text: str) -> list[Expected]:
    """All that is said to be wrong in a case."""
    found = []
    for number, line in enumerate(text.splitlines(), 1):
        wrong = WRONG.search(line)
        if wrong and wrong["rules"]:
            rules = tuple(wrong["rules"].split("/"))
            found.append(Expected(number, rules, plain(wrong["needed"])))
    return found


def mended(text: str) -> str:
    """The twin of a case: without its wrong lines, and with the right ones."""
    lines = [line for line in text.splitlines() if not WRONG.search(line)]
    return "\n".join(line.removeprefix(RIGHT) for line in lines) + "\n"


def plain(value: str | None) -> str:
    """A value whatever its typography: `7½ × 15″` as `7 1/2 x 15`."""
    return " ".join((value or "").replace("×", "x").replace("″", "").split())


def answers(notice: Any, fault: Expected) -> bool:
    """Whether a notice names the fault: the right rule, line and value, there or as a repair."""
    if notice["severity"] == "advice" or notice["stage"] == "source":
        return False
    if notice["rule"] not in fault.rules:
        return False
    first = notice["places"][0]["line"] if notice["places"] else 0
    if (first, plain(notice["needed"])) == (fault.line, fault.needed):
        return True
    repairs = {(int(fix["at"].split(":")[-2]), plain(fix["new"])) for fix in notice["fix"]}
    return (fault.line, fault.needed) in repairs


def all_lines(notice: Any) -> set[int]:
    """The lines that a notice names, and those that it would mend."""
    mends = {int(fix["at"].split(":")[-2]) for fix in notice["fix"]}
    return {place["line"] for place in notice["places"]} | mends


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_the_fault_is_caught_and_the_right_value_named(
    case: Path, run: Run, pattern: WritePattern
) -> None:
    text = case.read_text("utf-8")
    faults = expected(text)
    told = [
        notice
        for notice in run("check", pattern(text), "--json").json()["notices"]
        if notice["severity"] != "advice"
    ]
    assert faults
    assert [one for one in told if one["stage"] == "source"] == []
    missed = [fault for fault in faults if not any(answers(one, fault) for one in told)]
    assert missed == [], told
    lines = {number for number, line in enumerate(text.splitlines(), 1) if WRONG.search(line)}
    beside = [one for one in told if not lines & all_lines(one)]
    assert beside == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_the_mended_twin_is_silent(case: Path, run: Run, pattern: WritePattern) -> None:
    """Neither error nor warning."""
    answer = run("check", pattern(mended(case.read_text("utf-8"))), "--json").json()
    assert [one for one in answer["notices"] if one["severity"] != "advice"] == []
