"""How long the pages take from finished plans, beside two other ways to come by them.

By hand, with Debian's chromium installed: pytest tests/benchmarks/test_render.py -s
"""

import subprocess
import sys
import time
from pathlib import Path

from tests.support import ROOT

ROUNDS = 4
CHROMIUM = [
    "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--no-pdf-header-footer",
]  # fmt: skip


def seconds(way: str, source: Path, out: Path) -> float:
    """One fresh process; it starts its own clock once the plans are finished."""
    words = [sys.executable, "-m", "tests.benchmarks.render", way, str(source), str(out)]
    ran = subprocess.run(words, cwd=ROOT, check=True, capture_output=True, text=True)
    return float(ran.stdout.split()[-1])


def browser(folder: Path, run: int) -> float:
    """One fresh browser with an empty profile, printing the page that lies ready."""
    start = time.perf_counter()
    subprocess.run(
        [*CHROMIUM, f"--user-data-dir={folder / f'profile-{run}'}",
         f"--print-to-pdf={folder / 'browser.pdf'}", (folder / "page.html").as_uri()],
        check=True, capture_output=True,
    )  # fmt: skip
    assert (folder / "browser.pdf").stat().st_size > 10_000
    return time.perf_counter() - start


def test_rendering_against_naive_pictures_and_a_browser(tmp_path: Path) -> None:
    source = ROOT / "patterns" / "late-returns" / "pattern.yaml"
    seconds("pages", source, tmp_path)
    spent: dict[str, list[float]] = {"ours": [], "naive": [], "browser": []}
    for run in range(ROUNDS):
        spent["ours"].append(seconds("ours", source, tmp_path / "ours.pdf"))
        spent["browser"].append(browser(tmp_path, run))
        if run < ROUNDS - 1:
            spent["naive"].append(seconds("naive", source, tmp_path / "naive.pdf"))
    least = {way: min(taken) for way, taken in spent.items()}
    to_naive, to_browser = least["ours"] / least["naive"], least["ours"] / least["browser"]
    print(f"\n{source.parent.name}: {to_naive:.2f} of naive pictures, ", end="")
    print(f"{to_browser:.2f} of a browser; ours took {least['ours']:.2f} s")
    assert to_naive <= 0.20
    assert to_browser <= 1.0
