"""`python -m patternbook`, for where the command itself is not on the path."""

from __future__ import annotations

import sys

from patternbook.cli import main

if __name__ == "__main__":
    sys.exit(main())
