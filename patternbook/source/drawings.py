"""The drawings that pieces name: files beside the source, read once, faults told."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Final

from patternbook.notice import Notice
from patternbook.source.svg import DrawingFault, Picture, picture
from patternbook.source.tell import notice
from patternbook.source.written import WrittenPattern
from patternbook.value import Text

MOST_BYTES: Final = 1_000_000
Pictures = Mapping[str, Picture]


def pictures(written: WrittenPattern, source: Path) -> tuple[Pictures, tuple[Notice, ...]]:
    """Every drawing by the name that the source gives it, and what is wrong with the others."""
    found: dict[str, Picture] = {}
    told: list[Notice] = []
    for letter, piece in written.pieces.items():
        if piece.drawing is None or str(piece.drawing) in found:
            continue
        try:
            found[str(piece.drawing)] = picture(_text(piece.drawing, source.parent))
        except DrawingFault as fault:
            message = f"{letter}: the drawing '{piece.drawing}' {fault.message}."
            told.append(notice(fault.code, piece.drawing.place, message, fault.hint))
    return found, tuple(told)


def _text(name: Text, folder: Path) -> str:
    hint = "Name an SVG file in the pattern's own folder: `drawing: shapes/pear.svg`."
    try:
        path = (folder / name).resolve()
        if not path.is_relative_to(folder.resolve()):
            raise DrawingFault("drawing-missing", "lies outside the pattern's folder", hint)
        if path.suffix.lower() != ".svg":
            raise DrawingFault("drawing-missing", "is no SVG file", hint)
        if not path.is_file():
            raise DrawingFault("drawing-missing", "is not there", hint)
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except (OSError, ValueError):  # ValueError: a name that no system takes
        raise DrawingFault("drawing-missing", "cannot be opened", hint) from None
    if len(data) > MOST_BYTES:
        message = f"is larger than {MOST_BYTES:,} bytes, far more than an outline needs"
        raise DrawingFault("drawing-unsafe", message, "Keep only the shape's outline.")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        message = "is not text in UTF-8"
        raise DrawingFault("drawing-unreadable", message, "Save it as SVG in UTF-8.") from None
