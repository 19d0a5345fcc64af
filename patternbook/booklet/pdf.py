"""A finished HTML page with its drawings as a PDF: the same bytes everywhere, or told why not."""

from __future__ import annotations

import datetime as dt
import logging
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Final

from patternbook.booklet.pango import environment, missing, private_fonts
from patternbook.notice import Notice
from patternbook.strokes.lettering import missing as lacking
from patternbook.strokes.stroke import Drawing, Label
from patternbook.unswept import unswept

if TYPE_CHECKING:  # `check` gets as far as this module, and must not load what lays out pages
    from weasyprint.document import Document

    from patternbook.booklet.fetcher import FolderFetcher

# Where a pattern has no date, fonts still want one; any that is always the same will do.
_NO_DATE: Final = dt.date(2000, 1, 1)
_OPTIONS: Final = {"pdf_variant": "pdf/ua-1", "pdf_tags": True, "pdf_identifier": True}
_MISSING_GLYPH: Final = ".notdef"


def make_pdf(
    html: str,
    drawings: Mapping[str, Drawing],
    *,
    base: Path,
    date: dt.date | None,
    titles: Mapping[str, str],
    looks: Sequence[Path] = (),
) -> tuple[bytes, tuple[Notice, ...]]:
    """The PDF and nothing to say, or no bytes and why.

    `base` is the folder that links in the page start from; its fonts, and those of the author's
    own folders `looks`, are the only ones seen. Pages show a drawing by the address
    `diagram:NAME`. `titles` words the anchors that links go to.
    """
    told = _unknown_signs(drawings)
    if told:
        return b"", told
    day = dt.datetime.combine(date or _NO_DATE, dt.time(), dt.UTC)
    folders = (base, *looks)
    with environment(SOURCE_DATE_EPOCH=str(int(day.timestamp())), OPENBLAS_NUM_THREADS="1"):
        # matplotlib lists the machine's fonts once, so it must not meet our private list.
        import patternbook.strokes.artists  # noqa: F401

        with private_fonts(folders), _collecting() as logged, unswept():
            told = missing()
            if told:
                return b"", told
            stamp = f"{date.isoformat()}T00:00:00Z" if date else None
            written, told = _written(html, drawings, folders, stamp, titles)
    told += tuple(_worded(line) for line in logged)
    return (b"", told) if told else (written, ())


def _written(
    html: str,
    drawings: Mapping[str, Drawing],
    folders: Sequence[Path],
    stamp: str | None,
    titles: Mapping[str, str],
) -> tuple[bytes, tuple[Notice, ...]]:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    from patternbook.booklet.fetcher import FolderFetcher, RefusedError
    from patternbook.booklet.finish import finish
    from patternbook.strokes.page import StrangeFontError, page_images

    fetcher, fonts = FolderFetcher(folders), FontConfiguration()
    images = page_images(drawings, fonts)
    # as_uri quotes a space as the links are quoted; else they would name a file of this machine.
    page = HTML(string=html, base_url=f"{folders[0].resolve().as_uri()}/", url_fetcher=fetcher)
    try:
        document = page.render(font_config=fonts, cache=images, **_OPTIONS)
        document.metadata.created = document.metadata.modified = stamp
        pdf = document.write_pdf(finisher=lambda doc, raw: finish(doc, raw, titles), **_OPTIONS)
    except RefusedError:
        pdf, told = b"", []
    except StrangeFontError as fault:
        pdf, told = b"", [_error("strange-font", f"{fault}.")]
    else:
        told = list(_strangers(document, fetcher, folders))
    told += [_error("refused-file", words) for words in dict.fromkeys(fetcher.refusals)]
    return pdf, tuple(told)


def _strangers(
    document: Document, fetcher: FolderFetcher, folders: Sequence[Path]
) -> Iterator[Notice]:
    """Fonts in the page that are neither ours nor handed over by the author's own style."""
    from weasyprint.text.fonts import get_hb_object_data

    files = (file for folder in folders for file in folder.rglob("*.[ot]tf"))
    known = {file.read_bytes() for file in files}
    for font in document.fonts.values():
        whole = get_hb_object_data(font.hb_face)  # by now the font keeps but its subset
        if whole not in known and not fetcher.fonts:
            yield _error(
                "strange-font", f"the page was set in the font {font.family}, not in ours."
            )


def _unknown_signs(drawings: Mapping[str, Drawing]) -> tuple[Notice, ...]:
    """Labels with signs that the font of the drawings lacks."""
    labels = (
        (name, label)
        for name, drawing in drawings.items()
        for label in drawing.strokes
        if isinstance(label, Label)
    )
    found = {
        (name, label.text, signs): None
        for name, label in labels
        if (signs := lacking(label.text, label.weight, italic=label.italic))
    }
    return tuple(
        _error("missing-glyph", f"the drawing {name} says {text!r}; the font has no {signs!r}.")
        for name, text, signs in found
    )


@contextmanager
def _collecting() -> Iterator[list[str]]:
    """Whatever WeasyPrint warns of meanwhile, each once; it is kept off the screen."""
    lines: dict[str, None] = {}

    class Keeper(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            lines[record.getMessage()] = None

    logger, keeper = logging.getLogger("weasyprint"), Keeper(logging.WARNING)
    before = logger.propagate, logger.level
    logger.propagate, logger.level = False, logging.WARNING
    logger.addHandler(keeper)
    found: list[str] = []
    try:
        yield found
    finally:
        logger.removeHandler(keeper)
        logger.propagate, logger.level = before
        found.extend(lines)


def _worded(line: str) -> Notice:
    if _MISSING_GLYPH in line:
        text = line.partition("fonts: ")[2]
        return _error("missing-glyph", f"the page says {text}; its font lacks a sign of that.")
    return _error("page-warning", f"the page could not be laid out as it is written: {line}")


def _error(code: str, message: str) -> Notice:
    return Notice(code, "error", "booklet", message)
