"""What is mended on the finished PDF, read back with another library."""

from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from tests.booklet.test_pdf import made


@pytest.fixture(scope="module")
def reader() -> PdfReader:
    return PdfReader(BytesIO(made()))


def elements(reader: PdfReader, kind: str) -> list[Any]:
    """All elements of a kind, in the order they are read out."""

    def below(node: Any) -> Iterator[Any]:
        node = node.get_object()
        if isinstance(node, dict):
            yield node
            kids = node.get("/K", [])
            for kid in kids if isinstance(kids, list) else [kids]:
                yield from below(kid)

    tree = below(reader.root_object["/StructTreeRoot"])
    return [node for node in tree if node.get("/S") == kind]


def test_head_cells_say_which_way_they_look(reader: PdfReader) -> None:
    scopes = [cell["/A"]["/Scope"] for cell in elements(reader, "/TH")]
    assert scopes == ["/Column", "/Column", "/Row"]
    assert all("/Headers" not in cell["/A"] for cell in elements(reader, "/TD"))


def test_boxes_of_pictures_lie_on_the_page_in_points(reader: PdfReader) -> None:
    _, square = elements(reader, "/Figure")
    left, low, right, top = (float(side) for side in square["/A"]["/BBox"])
    assert right - left == pytest.approx(108)
    assert top - low == pytest.approx(108)
    assert 0 < left < right < 612
    assert 0 < low < top < 792
    assert square["/Alt"] == "A square of one inch."


def test_page_numbers_are_furniture_and_are_not_read_out(reader: PdfReader) -> None:
    for page in reader.pages:
        contents = page.get_contents()
        assert contents is not None
        data = contents.get_data()
        assert data.count(b"/Artifact") == 1
        assert b"/Pagination" in data


def test_links_say_where_they_go(reader: PdfReader) -> None:
    page: Any = reader.pages[0]
    (link,) = (annotation.get_object() for annotation in page["/Annots"])
    assert link["/Contents"] == "Go to Cutting"
    assert link["/F"] == 4


def test_pages_are_labelled_and_headings_are_bookmarks(reader: PdfReader) -> None:
    assert reader.page_labels == ["1", "2"]
    outline: list[Any] = reader.outline
    assert outline[0]["/Title"] == "Lantern Row"
    assert outline[1][0]["/Title"] == "Cutting"
    assert str(reader.root_object["/Lang"]) == "en"
