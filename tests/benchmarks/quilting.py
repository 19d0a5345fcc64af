"""What the plans of the quilting come to, pattern by pattern and size by size, and how the time to
make them grows: `python -m tests.benchmarks.quilting [PATTERN…]`. Times are processor seconds of
this machine in one run; what counts is how they grow from the smallest size to the largest."""

import sys
import time
from collections.abc import Iterator
from pathlib import Path

from patternbook.edition.pipeline import examine
from patternbook.proof.evidence import Evidence
from patternbook.quilting.records import QuiltingPlan
from tests.support import ROOT

HEAD = (
    "pattern                size    areas letters designs  stitched   gap limit starts bobbins"
    " retraced evenness  extra least  seconds"
)


def row(slug: str, size: str, made: QuiltingPlan, seconds: float) -> str:
    """One size of one pattern."""
    sums = made.sums
    anchor = next((stage for stage in made.stages if stage.name == "anchor"), None)
    extra = (
        f"{anchor.extra:6.0f} {'yes' if anchor.proven else 'no':>5}" if anchor else "     - none "
    )
    designs = len({fill.design for fill in made.fills})
    return (
        f"{slug:22} {size:6} {len(made.divided.areas):6} {len(made.letters):7} {designs:7}"
        f" {sums.stitched:9.0f} {made.gap.high:5.2f} {made.wishes.limit:5.2f} {sums.starts:6}"
        f" {sums.bobbins:7} {sums.retraced:8.1%} {sums.evenness:8.3f} {extra} {seconds:8.2f}"
    )


def timed(known: Evidence) -> tuple[QuiltingPlan, float]:
    """The plan, and how long it took."""
    start = time.process_time()
    made = known.quilting
    if made is None:
        raise SystemExit(f"{known.quilt.size}: no plan")
    return made, time.process_time() - start


def rows(path: Path) -> Iterator[str]:
    """All sizes of one pattern, and how time grows beside stitching."""
    slug = path.parent.name
    found: list[tuple[float, float]] = []
    for size, known in examine(path, slug).sizes.items():
        made, seconds = timed(known)
        found.append((made.sums.stitched, seconds))
        yield row(slug, size, made, seconds)
    (length, least), (longest, most) = found[0], found[-1]
    yield f"{'':22} stitching x {longest / length:.1f}, time x {most / least:.1f}"


def main() -> None:
    """Prints the table."""
    wanted = sys.argv[1:]
    print(HEAD)
    for path in sorted((ROOT / "patterns").glob("*/pattern.yaml")):
        if not wanted or path.parent.name in wanted:
            for line in rows(path):
                print(line, flush=True)


if __name__ == "__main__":
    main()
