"""Seams inside blocks that lie side by side: told where both are pressed the same way (common
practice, no source)."""

import pytest

from tests.support import Run, WritePattern

SIDE_BY_SIDE = """
pattern: Neighbours
sizes: {{one: {{}}}}
fabrics: {{dark: {{tone: dark}}, light: {{tone: light}}}}
pieces: {{A: {{fabric: dark, cut: 3 1/2 square}}, B: {{fabric: light, cut: 3 1/2 square}}}}
units: {{nine: {{rows: [A B A, B A B, A B A]}}}}
top: {{rows: [{row}]}}
"""


@pytest.mark.parametrize(
    ("row", "told"),
    [
        # the seams between the rows of both blocks point down: two places, both the same way
        ("nine nine", "at 2 of the 2 places"),
        # turned half round, those of the second point up
        ("nine nine/half", None),
        # a block alone has no neighbour
        ("nine", None),
    ],
)
def test_like_blocks_cannot_nest(
    run: Run, pattern: WritePattern, row: str, told: str | None
) -> None:
    notices = run("check", pattern(SIDE_BY_SIDE.format(row=row)), "--json").json()["notices"]
    said = [one["message"] for one in notices if one["code"] == "press-blocks"]
    assert len(said) == (told is not None)
    assert told is None or told in said[0]
