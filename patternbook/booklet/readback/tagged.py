"""The words of a finished PDF as its own tags order them: headings, paragraphs and table rows."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, cast

from patternbook.unswept import unswept

if TYPE_CHECKING:
    from pypdf import PageObject, PdfReader
    from pypdf.generic import DictionaryObject, PdfObject, StreamObject

HEADINGS: Final = ("H1", "H2", "H3", "H4")
CELLS: Final = ("TH", "TD")
APART: Final = "\x1f"  # between the words of a picture, which are written one by one
FIGURE: Final = "Figure"
WHOLE: Final = ("P", "Caption", "LI", "Lbl", *HEADINGS)
_HEX: Final = r"<([0-9A-Fa-f]+)>\s*"
_ONE_SIGN: Final = re.compile(_HEX * 2)
_RANGE: Final = re.compile(_HEX * 3)
_BLOCKS: Final = re.compile(r"begin(bfchar|bfrange)(.*?)endbf", re.DOTALL)
Texts = Mapping[int, str]


@dataclass(frozen=True)
class Line:
    """A heading, a paragraph, or a row of a table (`cells`), and the page it stands on."""

    kind: str
    page: int
    cells: tuple[str, ...]
    table: int = 0

    @property
    def words(self) -> str:
        """All of it."""
        return " ".join(self.cells)


def lines(pdf: bytes) -> tuple[Line, ...]:
    """Everything that is tagged, in reading order."""
    from pypdf import PdfReader

    with unswept():
        reader = PdfReader(io.BytesIO(pdf))
        texts = {
            page.indirect_reference.idnum: (number, _by_mark(page, reader))
            for number, page in enumerate(reader.pages, 1)
            if page.indirect_reference is not None
        }
        root = cast("DictionaryObject", reader.trailer["/Root"])
        tree = cast("DictionaryObject", root["/StructTreeRoot"])
        return tuple(_Walk(texts).lines(tree.get("/K")))


class _Walk:
    """Goes down the tree of tags."""

    def __init__(self, texts: Mapping[int, tuple[int, Texts]]) -> None:
        self.texts = texts
        self.tables = 0

    def lines(self, node: PdfObject | None) -> Iterator[Line]:
        """What stands at or below a tag."""
        for child in _children(node):
            name = str(child.get("/S", "")).lstrip("/")
            if name == "Table":
                self.tables += 1
            if name == "TR":
                cells = [one for one in _children(child.get("/K")) if _is_cell(one)]
                words = tuple(self.words(cell) for cell in cells)
                yield Line("TR", self.page(child), words, self.tables)
            elif name == FIGURE:
                labels = "".join(self._pieces(child)).split(APART)
                yield Line(name, self.page(child), tuple(label.strip() for label in labels))
            elif name in WHOLE:
                yield Line(name, self.page(child), (self.words(child),))
            else:
                yield from self.lines(child.get("/K"))

    def words(self, node: PdfObject) -> str:
        """All the text below a tag, on one line."""
        text = "".join(self._pieces(node)).replace(APART, "")
        return " ".join(text.replace("\u00a0", " ").split())

    def _pieces(self, node: PdfObject | int, page: int = 0) -> Iterator[str]:
        held = _whole(node)
        if isinstance(held, int):
            # Lines of one text are marked apart, and do not end in a space.
            yield (self.texts[page][1].get(int(held), "") if page in self.texts else "") + " "
        elif isinstance(held, list):
            for one in held:
                yield from self._pieces(one, page)
        elif isinstance(held, dict):
            at = _page(cast("DictionaryObject", held)) or page
            if "/MCID" in held:
                yield from self._pieces(held["/MCID"], at)
            elif "/K" in held:
                yield from self._pieces(held["/K"], at)

    def page(self, node: DictionaryObject) -> int:
        """The number of the page that a tag begins on."""
        if page := _page(node):
            return self.texts[page][0]
        below = (self.page(child) for child in _children(node.get("/K")))
        return next(below, 0)


def _whole(node: object) -> object:
    """The thing itself, where it is only referred to."""
    find = getattr(node, "get_object", None)
    return find() if find is not None else node


def _page(node: DictionaryObject) -> int:
    """The number of the object that is the page of a tag; 0 where the tag names none."""
    return int(node.raw_get("/Pg").idnum) if "/Pg" in node else 0


def _children(node: PdfObject | None) -> Iterator[DictionaryObject]:
    held = _whole(node)
    for one in held if isinstance(held, list) else [held]:
        whole = _whole(one)
        if isinstance(whole, dict):
            yield cast("DictionaryObject", whole)


def _is_cell(node: DictionaryObject) -> bool:
    return str(node.get("/S", "")).lstrip("/") in CELLS


def _by_mark(page: PageObject, reader: PdfReader) -> Texts:
    """The text of each marked piece of a page."""
    from pypdf.generic import ContentStream

    fonts = _fonts(page)
    found: dict[int, list[str]] = {}
    marks: list[int | None] = []
    codes: Mapping[int, str] = {}
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator == b"BDC":
            held = operands[1]
            marks.append(held.get("/MCID") if isinstance(held, dict) else None)
        elif operator == b"BMC":
            marks.append(None)
        elif operator == b"EMC":
            marks.pop()
        elif operator == b"Tf":
            codes = fonts.get(str(operands[0]), {})
        elif operator in {b"Tj", b"TJ"} and marks and marks[-1] is not None:
            found.setdefault(marks[-1], []).append(_decoded(operands[0], codes))
    return {mark: APART.join(parts) for mark, parts in found.items()}


def _fonts(page: PageObject) -> Mapping[str, Mapping[int, str]]:
    resources = cast("DictionaryObject", page["/Resources"])
    fonts = cast("DictionaryObject", resources.get("/Font", {}))
    return {name: _codes(cast("DictionaryObject", fonts[name])) for name in fonts}


def _codes(font: DictionaryObject) -> Mapping[int, str]:
    """What each code of a font stands for, as the font itself says."""
    if "/ToUnicode" not in font:
        return {}
    told = cast("StreamObject", font["/ToUnicode"]).get_data().decode("latin-1")
    found: dict[int, str] = {}
    for kind, block in _BLOCKS.findall(told):
        if kind == "bfchar":
            found |= {int(code, 16): _signs(text) for code, text in _ONE_SIGN.findall(block)}
        for first, last, text in _RANGE.findall(block) if kind == "bfrange" else ():
            start, signs = int(first, 16), _signs(text)
            for step in range(int(last, 16) - start + 1):
                found[start + step] = signs[:-1] + chr(ord(signs[-1]) + step)
    return found


def _signs(written: str) -> str:
    return bytes.fromhex(written).decode("utf-16-be")


def _decoded(held: object, codes: Mapping[int, str]) -> str:
    strings = held if isinstance(held, list) else [held]
    raw = b"".join(_bytes(one) for one in strings)
    return "".join(
        codes.get(int.from_bytes(raw[at : at + 2], "big"), "\ufffd")
        for at in range(0, len(raw) - 1, 2)
    )


def _bytes(held: object) -> bytes:
    """The codes of one string; between strings stand distances, which have none."""
    found = held if isinstance(held, bytes) else getattr(held, "original_bytes", b"")
    return bytes(found)
