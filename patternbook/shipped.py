"""Where the templates and the demonstration patterns lie, installed or in a checkout."""

from __future__ import annotations

from pathlib import Path
from typing import Final

_PACKAGE: Final = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """The folder `name` ("templates" or "patterns") that came with this copy of patternbook."""
    for home in (_PACKAGE, _PACKAGE.parent):
        if (home / name).is_dir():
            return home / name
    raise FileNotFoundError(f"this copy of patternbook came without its {name} folder")
