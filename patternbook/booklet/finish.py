"""What WeasyPrint leaves to be done on a PDF: headers, page furniture, words of links, scale.

Written against the objects of pydyf just before they are written out, since a second program
over the finished file would double its size.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import pydyf
from weasyprint.document import Document


def finish(document: Document, pdf: pydyf.PDF, titles: Mapping[str, str]) -> None:  # noqa: ARG001
    """Everything, in place; `titles` gives words for the anchors that links go to."""
    head_cells(pdf)
    picture_boxes(pdf)
    page_furniture(pdf)
    link_words(pdf, titles)
    page_labels(pdf)
    # Printed at its own size, since templates and the inch square are to scale.
    pdf.catalog["ViewerPreferences"]["PrintScaling"] = "/None"


def _of_type(pdf: pydyf.PDF, kind: str) -> Iterator[pydyf.Dictionary]:
    for thing in pdf.objects:
        if isinstance(thing, pydyf.Dictionary) and thing.get("Type") == kind:
            yield thing


def _elements(pdf: pydyf.PDF, kind: str) -> Iterator[pydyf.Dictionary]:
    return (thing for thing in _of_type(pdf, "/StructElem") if thing["S"] == kind)


def _referred(pdf: pydyf.PDF, reference: str | bytes) -> pydyf.Dictionary:
    return pdf.objects[int(reference.split()[0])]


def head_cells(pdf: pydyf.PDF) -> None:
    """Say which way each head cell looks; the lists of headers miss spanned columns, so they go."""
    for cell in _elements(pdf, "/TH"):
        cell.pop("ID", None)
        group = cell
        while group["S"] not in ("/THead", "/TBody", "/TFoot", "/Table"):
            group = _referred(pdf, group["P"])
        cell["A"]["Scope"] = "/Column" if group["S"] == "/THead" else "/Row"
    for cell in _elements(pdf, "/TD"):
        cell["A"].pop("Headers", None)


def picture_boxes(pdf: pydyf.PDF) -> None:
    """Boxes of pictures in points from the foot of the page, not pixels from its head."""
    for picture in _elements(pdf, "/Figure"):
        height = _referred(pdf, picture["Pg"])["MediaBox"][3]
        left, top, right, low = (side * 0.75 for side in picture["A"]["BBox"])
        picture["A"]["BBox"] = pydyf.Array((left, height - low, right, height - top))


def page_furniture(pdf: pydyf.PDF) -> None:
    """Running heads and page numbers are not read out: they are marked as furniture."""
    root = next(_of_type(pdf, "/StructTreeRoot"))
    read = _reachable(pdf, root["K"])
    parents = _referred(pdf, root["ParentTree"])["Nums"]
    for page in _of_type(pdf, "/Page"):
        owners = parents[2 * page["StructParents"] + 1]
        furniture = {mark for mark, owner in enumerate(owners) if owner not in read}
        _mark_furniture(_referred(pdf, page["Contents"]), furniture)
        for mark in furniture:
            owners[mark] = "null"
    for element in _of_type(pdf, "/StructElem"):
        if element.reference not in read:
            element.clear()


def _reachable(pdf: pydyf.PDF, start: pydyf.Array) -> set[bytes]:
    """References of all that hangs on the document's tree."""
    seen: set[bytes] = set()
    ahead = [reference for reference in start if isinstance(reference, bytes)]
    while ahead:
        reference = ahead.pop()
        if reference in seen:
            continue
        seen.add(reference)
        thing = _referred(pdf, reference)
        if isinstance(thing, dict):
            ahead += [kid for kid in thing.get("K", ()) if isinstance(kid, bytes)]
    return seen


def _mark_furniture(stream: pydyf.Stream, furniture: set[int]) -> None:
    written = stream.stream
    for index, item in enumerate(written):
        if isinstance(item, pydyf.Dictionary) and item.get("MCID") in furniture:
            written[index - 1] = "/Artifact"
            written[index] = pydyf.Dictionary({"Type": "/Pagination"})


def link_words(pdf: pydyf.PDF, titles: Mapping[str, str]) -> None:
    """Links say where they go, in words."""
    for link in _of_type(pdf, "/Annot"):
        if link["Subtype"] == "/Link":
            link["F"] = 4  # printed with the page
            if "Dest" in link:
                anchor = link["Dest"].string
                words = titles.get(anchor, anchor.replace("-", " "))
                link["Contents"] = pydyf.String(f"Go to {words}")


def page_labels(pdf: pydyf.PDF) -> None:
    """Viewers number pages as the pages themselves do."""
    arabic = pydyf.Dictionary({"S": "/D", "St": 1})
    labels = pydyf.Dictionary({"Nums": pydyf.Array([0, arabic])})
    pdf.add_object(labels)
    pdf.catalog["PageLabels"] = labels.reference
