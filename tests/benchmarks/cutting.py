"""How good and how quick the cutting plans are, in one table; by hand, some minutes.

python -m tests.benchmarks.cutting [--jobs N] [--public FOLDER] [--only PART ...]
"""

import argparse
import sys
from pathlib import Path

from tests.benchmarks.cut_parts import PARTS, Bench, rows
from tests.benchmarks.cut_table import table


def main() -> int:
    """Exit code 1 where a bar is not cleared."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.cutting")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--public", type=Path, help="a folder of public lists (cut_public.py)")
    parser.add_argument("--only", choices=PARTS, nargs="+", default=list(PARTS))
    options = parser.parse_args()
    found = []
    for row in rows(Bench(options.jobs, options.public), options.only):
        print(row.what, row.measured, file=sys.stderr)
        found.append(row)
    print(table(found))
    return int(any(row.held is False for row in found))


if __name__ == "__main__":
    sys.exit(main())
