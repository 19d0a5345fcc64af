"""The last steps in words, right for each choice of backing, binding and label."""

from __future__ import annotations

from pathlib import Path

import pytest

from patternbook.booklet.parts.finishing import finishing
from tests.booklet.small import book, written


def plain(words: str) -> str:
    """Without the blanks that keep a figure together."""
    return words.replace("\N{NO-BREAK SPACE}", " ")


FINISHED = """
pattern: Choices
sizes: {one: {finished: 36 x 42}}
fabrics:
  front: {use: squares, tone: light, yards: 2}
  edge: {use: binding, tone: dark}
  back: {use: backing}
pieces: {A: {fabric: front, cut: 6 1/2 square}}
top: {rows: [A], across: 6, down: 7}
backing: {fabric: back}
binding: {fabric: edge, cut: 2 1/2 x WOF}
"""


def last_steps(tmp_path: Path, old: str = "", new: str = "") -> dict[str, str]:
    """The last steps of a small quilt, with one thing of it written otherwise."""
    assert old in FINISHED
    made = finishing(book(written(tmp_path, FINISHED.replace(old, new, 1))))
    return {one.head: plain(one.words) for one in made.actions}


@pytest.mark.parametrize(
    ("binding", "said", "unsaid"),
    [
        ("", "at right angles", "Cut each square"),
        (", join: straight", "straight seams", "at right angles"),
        (", bias: yes", "sew the other two short sides to a tube", "at right angles"),
        (", bias: yes, bias-from: strips", "then strips 2½″ wide", "tube"),
        (", fold: single", "", "Fold the strip in half"),
    ],
)
def test_the_binding_is_made_as_it_is_chosen(
    tmp_path: Path, binding: str, said: str, unsaid: str
) -> None:
    told = last_steps(tmp_path, "x WOF}", f"x WOF{binding}}}")["Make the binding"]
    assert said.casefold() in told.casefold()
    assert unsaid not in told


def test_single_binding_is_turned_under(tmp_path: Path) -> None:
    assert (
        "the other raw edge ¼″ under"
        in last_steps(tmp_path, "x WOF}", "x WOF, fold: single}")["Bind"]
    )
    assert "Turn the fold to the back" in last_steps(tmp_path)["Bind"]


def test_round_corners_are_drawn_and_eased(tmp_path: Path) -> None:
    told = last_steps(tmp_path, "x WOF}", "x WOF, bias: yes, corners: rounded}")
    assert "round a plate 10″ across" in told["Trim"]
    assert "without pulling or pleating" in told["Bind"]
    assert "fold the strip up and down" not in told["Bind"]


def test_the_ends_overlap_by_what_their_join_takes(tmp_path: Path) -> None:
    """The strip's own width for a diagonal join, two seams for a straight one."""
    assert "overlaps the beginning by 2½″" in last_steps(tmp_path)["Bind"]
    straight = last_steps(tmp_path, "x WOF}", "x WOF, join: straight}")["Bind"]
    assert "overlaps the beginning by ½″" in straight


def test_a_frame_takes_the_layers_apart(tmp_path: Path) -> None:
    told = last_steps(tmp_path, "{fabric: back}", "{fabric: back, quilted-by: frame}")
    assert "leave the three layers apart" in told["Layer"]
    assert "for a frame; at home 3″ will do" in told["Backing"]


def test_a_strip_let_in_is_told_patch_by_patch(tmp_path: Path) -> None:
    told = last_steps(tmp_path, "{fabric: back}", "{fabric: back, over: 3, pieced: yes}")
    assert "2 patches 10 × 26″ of front" in told["Strip for the backing"]
    assert "13″ from an edge" in told["Strip for the backing"]


def test_the_label_says_who_when_and_how_to_wash_it(tmp_path: Path) -> None:
    """What a label says: bobbininquilts.com/blogs/news/technique-tuesday-quilt-labels; that it is
    permanent, at the lower right of the back: a county fair's rule,
    extension.purdue.edu/news/county/blackford/2020/10/4-H-Quilting-Project.html"""
    told = last_steps(tmp_path)["Label"]
    for word in (
        "name",
        "who made it",
        "who quilted it",
        "for whom",
        "date",
        "place",
        "fibre",
        "wash",
    ):
        assert word in told
    assert "lower right corner of the back" in told
    own = last_steps(
        tmp_path, "backing:", "label: {lines: [Made in the barn, Wash cool]}\nbacking:"
    )
    assert "Made in the barn and Wash cool" in own["Label"]
