"""Borders as drawn: each unit's own, and the top's in the size that has most of them."""

from tests.diagrams.drawn import drawn, words

PICTURE = "patterns/one-good-picture/pattern.yaml"


def test_a_unit_with_borders_has_a_picture_of_its_own() -> None:
    """The coping strips C and D go round the centre, the squares A and F and G round the top."""
    centre, top = drawn(PICTURE)["borders-centre"], drawn(PICTURE)["borders"]
    assert {"C", "D"} <= set(words(centre))
    assert {"A", "F", "G"} <= set(words(top))
    assert not {"C", "D"} & set(words(top))


def test_the_top_is_drawn_in_the_size_with_most_borders() -> None:
    """Small has one border, large two, twin three."""
    assert drawn(PICTURE)["borders"].title.endswith("(drawn for twin)")
