"""What holds for every drawing of every pattern: it fits the page, and all words can be read."""

import pytest

from patternbook.diagrams.naming import name
from patternbook.strokes.stroke import STYLES, Line, Patch
from tests.diagrams.drawn import ALL, DEMOS, box, clashes, covered, drawn, examined, labels

# The most that a drawing may take, in inches; the text area of both papers is 7.25 wide.
MOST = {
    "cover": (5.4, 6.0),
    "cuts": (7.2, 0.6),
    "swatch": (0.6, 0.5),
    "key": (7.2, 2.6),
    "seam-test": (3.5, 1.7),
    "tops": (7.2, 3.2),
    "top": (3.5, 4.3),
    "lay": (3.5, 8.5),
    "set": (7.2, 2.0),
    "unit": (3.5, 3.3),
    "pairs": (4.8, 3.5),
    "rows": (7.2, 6.5),
    "borders": (3.5, 3.4),
    "back": (1.7, 1.9),
    "template": (7.2, 9.0),
    "templates": (7.2, 9.0),
    "backings": (7.2, 2.6),
    "backing": (2.4, 2.6),
    "quilts": (7.2, 7.5),
    "colouring": (7.0, 8.3),
}
LEAST_LETTER = 8.0  # points (booklet conventions)


@pytest.mark.parametrize("source", ALL)
def test_it_fits_the_place_it_is_made_for(source: str) -> None:
    for called, drawing in drawn(source).items():
        wide, high = MOST.get(called) or MOST[called.split("-")[0]]
        assert drawing.inches[0] <= wide + 0.005, called
        assert drawing.inches[1] <= high + 0.005, called


@pytest.mark.parametrize("source", ALL)
def test_no_words_run_into_one_another_or_are_painted_over(source: str) -> None:
    assert {called: list(clashes(one)) for called, one in drawn(source).items()} == {
        called: [] for called in drawn(source)
    }
    assert {called: list(covered(one)) for called, one in drawn(source).items()} == {
        called: [] for called in drawn(source)
    }


@pytest.mark.parametrize("source", ALL)
def test_nothing_is_clipped_and_no_letter_is_too_small(source: str) -> None:
    for called, drawing in drawn(source).items():
        for stroke in drawing.strokes:
            left, top, right, low = box(stroke, drawing)
            assert min(left, top) >= 0, (called, stroke)
            assert right <= drawing.width, (called, stroke)
            assert low <= drawing.height, (called, stroke)
        assert all(label.size >= LEAST_LETTER for label in labels(drawing)), called


@pytest.mark.parametrize("source", DEMOS)
def test_lines_are_heavy_enough_to_print(source: str) -> None:
    """Half a point; seams of small or pale patches may be finer, their tones tell them apart."""
    pale = {"fine", "ground", "leader"}
    roles = {
        stroke.role if isinstance(stroke, Line) else stroke.outline
        for drawing in drawn(source).values()
        for stroke in drawing.strokes
        if isinstance(stroke, Line | Patch)
    }
    assert all(STYLES[role].width >= 0.5 for role in roles - pale - {None} if role)


@pytest.mark.parametrize("source", DEMOS)
def test_words_for_those_who_hear_it_name_the_size_or_the_parts(source: str) -> None:
    known = examined(source)
    for called, drawing in drawn(source).items():
        assert len(drawing.alt.split()) >= 6, called
    for size in known.sizes:
        names = [name(kind, size) for kind in ("top", "backing", "colouring")]
        for called in (*names, name("quilts", size, "overview")):
            assert size in drawn(source)[called].alt.casefold()


def test_a_pattern_without_sizes_has_no_drawings() -> None:
    from patternbook.diagrams import drawings

    known = examined(DEMOS[0])
    assert known.heading is not None
    assert dict(drawings(known.heading, {})) == {}


def test_the_same_plans_give_the_same_drawings() -> None:
    from patternbook.diagrams import drawings

    known = examined(DEMOS[1])
    assert known.heading is not None
    assert dict(drawings(known.heading, known.sizes)) == drawn(DEMOS[1])


@pytest.mark.parametrize(
    ("words", "called"),
    [
        (("lay", "floor", "queen"), "lay-floor-queen"),
        (("unit", "Half Crown"), "unit-half-crown"),
        (("lay", "crème", "2nd size"), "lay-creme-2nd-size"),
        (("…",), "drawing"),
    ],
)
def test_names_of_drawings(words: tuple[str, ...], called: str) -> None:
    assert name(*words) == called
