"""What YAML can do and a pattern must not: refused before anything is built from it."""

import time

import pytest

from tests.source.conftest import ReadAll, Told


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("by: &me Anna\nlicence: *me", "2:5: error anchor:"),
        ("by: *me", "2:5: error anchor:"),
        ("<<: {by: Anna}", "2:1: error merge-key:"),
        ("by: !!str Anna", "2:5: error tag:"),
        ('by: !!python/object/apply:os.system ["true"]', "2:5: error tag:"),
        ("by: Anna\nby: Berta", "3:1: error duplicate-key: `by` stands twice"),
        ("x-deep: [[[[[[[a]]]]]]]", ""),
        ("x-deep: [[[[[[[[a]]]]]]]]", "2:16: error too-deep: more than 8"),
        ("? {a: b}\n: c", "2:3: error yaml-key:"),
    ],
)
def test_refused(told: Told, typed: str, said: str) -> None:
    notices = told(f"pattern: Trial\n{typed}\n")
    assert len(notices) == bool(said)
    assert all(notice.startswith(said) for notice in notices)


def test_a_key_that_stands_twice_is_shown_at_both_places(
    read_all: ReadAll,
) -> None:
    _, (notice,) = read_all("pattern: Trial\nby: Anna\nby: Berta\n")
    assert [(mark.place.line, mark.role) for mark in notice.marks] == [(3, "again"), (2, "first")]


@pytest.mark.parametrize("sign", ["[", "{", "- ", "? ", "[{", "a: [", "{a: "])
def test_three_thousand_brackets(told: Told, sign: str) -> None:
    begun = time.perf_counter()
    (notice,) = told(sign * 3000)
    assert ": error " in notice
    assert time.perf_counter() - begun < 1
