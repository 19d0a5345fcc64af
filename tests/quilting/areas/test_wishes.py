"""What the author says of areas: left out, joined, named; and names that the top has not."""

import pytest

from patternbook.quilting.areas import areas, meant
from patternbook.quilting.records import Top, Wish
from tests.quilting.areas.laid import at, box, counted, demo, divided, laid, wished


def bars() -> Top:
    """Three plain bars of 6 × 24, and between them two of scraps."""
    patches = [("A", box(10 * n, 0, 6, 24)) for n in range(3)]
    patches += [("B", box(6 + 10 * n, 2 * m, 4, 2)) for n in range(2) for m in range(12)]
    return laid(patches, plain="A")


def test_the_bars_fall_into_two_letters() -> None:
    found = divided(bars())
    assert [area.key for area in found.areas] == ["P 1", "P 2", "P 3", "Q 1", "Q 2"]
    assert [area.kind for area in found.areas] == ["band"] * 3 + ["piecing"] * 2


@pytest.mark.parametrize(
    ("word", "keys"),
    [
        ("all over", ["P 1", "P 2", "P 3", "Q 1", "Q 2"]),
        ("band", ["P 1", "P 2", "P 3"]),
        ("ground", ["P 1", "P 2", "P 3"]),  # bands are open ground
        ("piecing", ["Q 1", "Q 2"]),
        ("Q", ["Q 1", "Q 2"]),
        ("P 2", ["P 2"]),
        ("B", ["Q 1", "Q 2"]),  # a piece, so the areas that hold it
    ],
)
def test_an_area_is_left_out_by_any_of_its_names(word: str, keys: list[str]) -> None:
    found = divided(bars(), Wish(word, exclude=True))
    assert [area.key for area in found.areas if area.excluded] == keys


def test_a_border_and_a_unit_are_names_too() -> None:
    top = demo("tea-at-four")["lap"]
    found = divided(top, Wish("border 1", name="the frame"))
    assert {area.name for area in found.areas if area.kind == "border"} == {"the frame"}
    assert {area.name for area in found.areas if area.kind == "body"} == {None}
    chain = divided(demo("bakers-door-beads")["crib"], Wish("nine", exclude=True))
    assert {area.kind for area in chain.areas if area.excluded} == {"piecing"}


def test_a_name_of_the_author_is_known_to_her_other_wishes() -> None:
    about = Wish("P 2", name="the pond"), Wish("the pond", exclude=True)
    found, told = areas(bars(), wished(*about))
    assert told == ()
    pond = at(found, 12, 1)
    assert (pond.key, pond.name, pond.excluded) == ("P 2", "the pond", True)
    assert [meant(about[1], area, bars()) for area in found.areas].count(True) == 1


def test_joined_areas_are_one_where_they_touch() -> None:
    """The second bar with the scraps to its right: 10 × 24. The other letters stay as they are."""
    found = divided(bars(), Wish("P 2", merge=("Q 2",)))
    assert [area.key for area in found.areas] == ["P 1", "P 3", "Q 1", "R 1"]
    both = at(found, 15, 1)
    assert both.key == "R 1"
    assert list(both.shape.bounds) == [10, 0, 20, 24]
    assert at(found, 17, 1) == both
    assert both.letters == ("A", "B")


def test_a_wish_that_joins_areas_is_about_what_came_of_them() -> None:
    about = Wish("P 2", merge=("Q 2",), name="the pond", design="meander")
    both = at(divided(bars(), about), 15, 1)
    assert (both.key, both.name) == ("R 1", "the pond")
    assert meant(about, both, bars())


def test_all_of_a_letter_joined_to_others_keeps_the_letter() -> None:
    found = divided(bars(), Wish("P", merge=("Q",)))
    assert [(area.key, area.shape.area) for area in found.areas] == [("P 1", 26 * 24)]


def test_areas_that_do_not_touch_are_not_joined() -> None:
    found, (told,) = areas(bars(), wished(Wish("P 1", merge=("P 3",))))
    assert counted(found) == {"band": 3, "piecing": 2}
    assert told.code == "quilting-area"
    assert told.message == (
        "the areas “P 1” and “P 3” cannot be joined into one: they do not touch."
    )


def test_a_name_that_the_top_has_not_is_told_with_those_it_has() -> None:
    found, (told,) = areas(bars(), wished(Wish("sky", exclude=True)))
    assert not any(area.excluded for area in found.areas)
    assert (told.code, told.severity) == ("quilting-area", "warning")
    assert told.message == "the quilting names the area “sky”, and the top has none of that name."
    assert told.hint == "The areas of this top are all over, band, ground, piecing, P and Q."


def test_a_design_all_over_makes_the_top_one_area() -> None:
    (body,) = divided(demo("tea-at-four")["lap"], Wish("all over", design="wavy lines")).areas
    assert (body.kind, body.shape) == ("body", demo("tea-at-four")["lap"].edge)


def test_a_design_all_over_stops_at_a_border_with_a_wish_of_its_own() -> None:
    about = Wish("all over", design="wavy lines"), Wish("border 1", design="zigzag")
    assert counted(divided(demo("tea-at-four")["lap"], *about)) == {"border": 4, "body": 1}
