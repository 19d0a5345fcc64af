"""How long a hundred kits of the largest quilt take, beside one kit and beside a plain check.

By hand: pytest tests/benchmarks/test_kits.py -s
"""

from patternbook.commands.kits import MOST
from tests.benchmarks.test_check import LARGEST
from tests.benchmarks.timing import medians, python
from tests.support import ROOT

ROUNDS = 5
WORDS = ("-m", "patternbook", "kits", f"patterns/{LARGEST}", "--size", "king", "--json", "--kits")


def test_a_hundred_kits_of_the_largest_against_one() -> None:
    """Whole processes: however many kits, hardly longer than one, and than the check in it."""
    spent = medians(
        {
            "check": python("-m", "patternbook", "check", f"patterns/{LARGEST}"),
            "1": python(*WORDS, "1"),
            "100": python(*WORDS, "100"),
            str(MOST): python(*WORDS, str(MOST)),
            "100 thrifty": python(*WORDS, "100", "--cutting", "thrifty"),
        },
        ROOT,
        ROUNDS,
    )
    for name, seconds in spent.items():
        print(f"\n{name}: {seconds:.2f} s, {seconds / spent['check']:.2f} of the check", end="")
    assert spent["100"] <= 1.25 * spent["1"]
    assert spent[str(MOST)] <= 1.25 * spent["1"]
    assert spent["1"] <= 2 * spent["check"]
    assert spent["100 thrifty"] <= 4 * spent["check"]
