"""One pattern of each kind, and what `figures` makes of it."""

from pathlib import Path

import pytest

from tests.kinds.by_letter import Figures, Kind, figures_of
from tests.support import Run


@pytest.fixture
def kind(run: Run, tmp_path: Path) -> Kind:

    def of(name: str, size: str, changes: dict[str, str] | None = None) -> Figures:
        return figures_of(run, tmp_path, name, size, changes or {})

    return of
