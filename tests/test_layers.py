"""Imports point one way, and each outside library is known to the one place that needs it."""

from pathlib import Path

import pytest

from tests.support import PACKAGE, imports

# Lowest first. Those of one rank do not import one another.
RANKS: tuple[set[str], ...] = (
    {"exact", "notice", "programme", "shipped", "unswept"},
    {"inch", "metric"},
    {"value", "linear"},
    {"methods", "forms"},
    {"source", "strokes"},
    {"quilt"},
    {"cutting", "sewing", "quilting"},
    {"proof", "diagrams"},
    {"booklet"},
    {"edition"},
    {"commands"},
    {"cli"},
    {"__main__"},
)
RANK = {name: rank for rank, names in enumerate(RANKS) for name in names}
# Which parts may know an outside library at all.
KNOWN_TO = {
    "highspy": {"programme"},
    "matplotlib": {"strokes"},
    "shapely": {"quilting", "proof", "diagrams"},
    "pint": {"metric"},
    "pydantic": {"methods", "source", "commands", "edition"},
    "ruamel": {"source"},
    "svgelements": {"source"},
    "weasyprint": {"booklet", "strokes"},
    "pydyf": {"booklet", "strokes"},
    "jinja2": {"booklet"},
    "fontTools": {"strokes", "booklet"},
}


def strays(own: str, text: str) -> list[str]:
    """The imports of a part that run against the flow, or past the house rule."""
    wrong = []
    for line, name in imports(text):
        first, _, rest = name.partition(".")
        other = rest.partition(".")[0]
        if name.startswith("."):
            wrong.append(f"{line}: a relative import")
        elif first in KNOWN_TO and own not in KNOWN_TO[first]:
            wrong.append(f"{line}: {own} is not to know {first}")
        elif first == "patternbook" and rest and other != own:
            if own not in RANK or other not in RANK:
                wrong.append(f"{line}: {own} or {other} has no rank")
            elif RANK[other] >= RANK[own]:
                wrong.append(f"{line}: {own} imports {other}")
    return wrong


def part_of(file: Path) -> str:
    return file.relative_to(PACKAGE).parts[0].removesuffix(".py")


def test_imports_point_one_way() -> None:
    files = sorted(set(PACKAGE.rglob("*.py")) - {PACKAGE / "__init__.py"})
    assert [
        f"{file.relative_to(PACKAGE)}:{stray}"
        for file in files
        for stray in strays(part_of(file), file.read_text("utf-8"))
    ] == []


@pytest.mark.parametrize(
    ("own", "text", "said"),
    [
        ("quilt", "from patternbook.booklet.pages import Page", "1: quilt imports booklet"),
        ("cutting", "from patternbook.sewing.steps import Step", "1: cutting imports sewing"),
        ("quilt", "def f():\n    from patternbook.cli import main", "2: quilt imports cli"),
        ("quilt", "from . import place", "1: a relative import"),
        ("quilt", "import matplotlib.path", "1: quilt is not to know matplotlib"),
        ("quilt", "from patternbook.mystery import x", "1: quilt or mystery has no rank"),
    ],
)
def test_a_planted_stray_is_named(own: str, text: str, said: str) -> None:
    assert strays(own, text) == [said]


def test_modules_of_one_folder_make_no_ring() -> None:
    """A ring of imports inside a folder is as bad as one between folders."""
    names = {
        ".".join(file.relative_to(PACKAGE.parent).with_suffix("").parts): file
        for file in PACKAGE.rglob("*.py")
    }
    needs = {
        name: {other for _, other in imports(file.read_text("utf-8")) if other in names}
        for name, file in names.items()
    }
    while free := [name for name, others in needs.items() if not others & needs.keys()]:
        for name in free:
            del needs[name]
    assert sorted(needs) == []
