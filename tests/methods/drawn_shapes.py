"""Patterns with appliqué: the source, and its shapes as drawings beside it."""

from pathlib import Path

from tests.support import WritePattern

# Outlines in inches, the box around each at nought.
SHAPES = {
    "box": "M0 0 H2 V1 H0 Z",
    "tall": "M0 0 H6 V7 H0 Z",
    "flag": "M0 0 H3 L2 1 L3 2 H0 Z",
}


def with_shapes(pattern: WritePattern, text: str) -> Path:
    """The source's path, its drawings in shapes/ beside it."""
    path = pattern(text)
    folder = path.parent / "shapes"
    folder.mkdir(exist_ok=True)
    for name, line in SHAPES.items():
        numbers = {"box": "0 0 2 1", "tall": "0 0 6 7", "flag": "0 0 3 2"}[name]
        wide, high = numbers.split()[2:]
        drawing = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}in" height="{high}in" '
            f'viewBox="{numbers}"><path d="{line}"/></svg>'
        )
        (folder / f"{name}.svg").write_text(drawing, "utf-8")
    return path
