"""How the published examples are put through the command line."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from tests.support import Run


def told(run: Run, paths: Iterable[Path]) -> Mapping[str, list[Any]]:
    """The errors of several sources checked at once, by the folder each lies in."""
    listed = list(paths)
    found: dict[str, list[Any]] = {path.parent.name: [] for path in listed}
    for notice in run("check", *listed, "--json").json()["notices"]:
        if notice["severity"] == "error":
            found[Path(notice["places"][0]["file"]).parent.name].append(notice)
    return found


def one_size(run: Run, path: Path, size: str = "one") -> Any:
    """The figures of one size of a source that checks clean."""
    ran = run("check", path)
    assert ran.code == 0, ran.err
    return run("figures", path, "--json").json()["sizes"][size]
