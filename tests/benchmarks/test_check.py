"""How long `check` takes: as a share of merely loading the models of a source, and the largest
pattern beside the smallest.

By hand: pytest tests/benchmarks/test_check.py -s
"""

import shutil
from pathlib import Path

from patternbook.edition.pipeline import examine
from tests.benchmarks.timing import least, medians, python
from tests.support import ROOT

MORE = 10
# Sheets of sixty-four stamps: the most patches of all patterns, in sizes up to the king.
LARGEST = "post-for-the-island"


def test_check_against_loading_the_models(tmp_path: Path) -> None:
    """One pattern at most twice that, each further one at most 0.15 of it."""
    demo = ROOT / "patterns" / "late-returns" / "pattern.yaml"
    for number in range(MORE + 1):
        folder = tmp_path / "patterns" / f"copy-{number}"
        folder.mkdir(parents=True)
        shutil.copy(demo, folder)
    spent = least(
        {
            "load": python("-c", "import patternbook.source.written"),
            "one": python("-m", "patternbook", "check", "patterns/copy-0"),
            "all": python("-m", "patternbook", "check"),
        },
        tmp_path,
    )
    one = spent["one"] / spent["load"]
    further = (spent["all"] - spent["one"]) / MORE / spent["load"]
    print(f"\ncheck of {demo.parent.name}: {one:.2f} of loading the models; ", end="")
    print(f"each further pattern {further:.3f}; loading took {spent['load']:.3f} s")
    assert one <= 2.0
    assert further <= 0.15


def test_check_of_the_largest_against_the_smallest() -> None:
    """Whole processes: neither the most patches nor the slowest shapes take three times as long."""
    patches = {
        path.parent.name: sum(len(one.patches) for one in examine(path, "p").sizes.values())
        for path in (ROOT / "patterns").glob("*/pattern.yaml")
    }
    assert max(patches, key=patches.__getitem__) == LARGEST
    smallest = min(patches, key=patches.__getitem__)
    spent = medians(
        {
            name: python("-m", "patternbook", "check", f"patterns/{name}")
            for name in (smallest, LARGEST, "train-window-hours")
        },
        ROOT,
    )
    ratios = {name: seconds / spent[smallest] for name, seconds in spent.items()}
    for name, ratio in ratios.items():
        print(f"\n{name}: {patches[name]} patches, {ratio:.2f} of {smallest}", end="")
    print(f", which took {spent[smallest]:.3f} s")
    assert max(ratios.values()) <= 3.0
