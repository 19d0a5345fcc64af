"""How long `check` takes, as a share of merely loading the models of a source.

By hand: pytest tests/benchmarks/test_check.py -s
"""

import shutil
from pathlib import Path

from tests.benchmarks.timing import least, python
from tests.support import ROOT

MORE = 10


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
