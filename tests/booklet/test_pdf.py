"""A page with drawings as PDF: true to scale, open to all readers, the same bytes everywhere."""

import datetime as dt
import hashlib
import os
import shutil
import subprocess
import sys
from base64 import b64encode
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import page as validation
import pytest
from pypdf import PdfReader

from patternbook.booklet.pdf import make_pdf
from patternbook.shipped import shipped
from patternbook.strokes import signs
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill
from patternbook.strokes.svg import svg
from patternbook.strokes.tones import Cloth, fills, wrong_side
from tests.booklet.page_reading import boxes, pixels
from tests.support import ROOT

BASE = shipped("templates")
DAY = dt.date(2026, 1, 2)
STYLE = """
@page { size: letter; margin: 0.75in; @bottom-center { content: "Page " counter(page) } }
html { font: 10pt "Work Sans" } h1, h2 { font-family: Bitter; font-weight: 700 }
h2 { break-before: page } img { display: block }
"""
BODY = """
<h1 id="start">Lantern Row</h1>
<p>Cut 16 squares 2½″ × 2½″, see <a href="#chart">the chart</a>. <i>Sew</i> a <b>scant</b> ¼″.</p>
<figure><img src="diagram:signs" alt="All signs."></figure>
<h2 id="chart">Cutting</h2>
<table><thead><tr><th>Piece</th><th>Cut</th></tr></thead>
<tbody><tr><th>A</th><td>2½″</td></tr></tbody></table>
<figure><img src="diagram:inch" alt="A square of one inch."></figure>
"""


def document(body: str = BODY, style: str = STYLE) -> str:
    head = f'<meta charset="utf-8"><title>Lantern Row</title><style>{style}</style>'
    return f'<!DOCTYPE html><html lang="en"><head>{head}</head><body>{body}</body></html>'


def all_signs() -> Drawing:
    pen = Pen(10, 6, 0.5)
    for at, (name, fill) in enumerate(fills([Cloth(letter) for letter in "ABCDEFGH"]).items()):
        pen.rectangle(at * 1.2, 0, 1.1, 1.1, fill)
        pen.rectangle(at * 1.2, 1.2, 1.1, 1.1, wrong_side(fill))
        pen.letter(at * 1.2 + 0.55, 0.55, name, fill)
    pen.patch(((0, 2.6), (2, 2.6), (1, 4)), Fill("#dca46f"))
    signs.seam(pen, (3, 2.8), (5, 2.8))
    signs.bias_edge(pen, (3, 3.2), (5, 3.2))
    signs.selvage(pen, (3, 3.6), (5, 3.6))
    signs.broken(pen, (3, 4), (5, 4))
    signs.grain(pen, (6, 2.7), (6, 4))
    signs.press(pen, (6.5, 3), (7, 3))
    signs.press_open(pen, (7, 3.5), (0, 1))
    signs.twirl(pen, 8, 3, 0.2)
    signs.scissors(pen, 8, 3.8)
    signs.start_dot(pen, 9, 3)
    signs.end_bar(pen, (9.3, 3), (1, 0))
    signs.plus(pen, 9, 3.5)
    signs.box(pen, 9, 4, ticked=True)
    signs.count(pen, 9.5, 4, 3)
    pen.dimension((0, 5), (6, 5), "12½″", 0.1)
    pen.label(8, 5, "turned", angle=30, weight=700, italic=False, plate="#eeeeee")
    return pen.drawing("signs", "All signs", "All signs of the pen.")


def inch() -> Drawing:
    pen = Pen(1.5, 1.5, 1)
    pen.rectangle(0.25, 0.25, 1, 1)
    pen.label(0.75, 0.75, "1″ × 1″")
    return pen.drawing("inch", "One inch", "A square of one inch.")


DRAWINGS = {"signs": all_signs(), "inch": inch()}


def made(html: str = "", base: Path = BASE) -> bytes:
    titles = {"chart": "Cutting"}
    written, told = make_pdf(html or document(), DRAWINGS, base=base, date=DAY, titles=titles)
    assert told == ()
    return written


@pytest.fixture(scope="module")
def booklet() -> bytes:
    return made()


@pytest.fixture(scope="module")
def reader(booklet: bytes) -> PdfReader:
    return PdfReader(BytesIO(booklet))


def told(body: str, style: str = STYLE) -> list[str]:
    """What is said of a page that cannot be printed."""
    html = document(body, style)
    written, notices = make_pdf(html, DRAWINGS, base=BASE, date=DAY, titles={})
    assert written == b""
    assert {notice.severity for notice in notices} == {"error"}
    return [f"{notice.code}: {notice.message}" for notice in notices]


def test_an_inch_is_an_inch(reader: PdfReader) -> None:
    """72 points are an inch: ISO 32000-1, 8.3.2.3."""
    sizes = [size for size in boxes(reader.pages[1], reader) if min(size) > 60]
    assert any(max(abs(w - 72), abs(h - 72)) < 0.05 for w, h in sizes), sizes
    assert [float(side) for side in reader.pages[1].mediabox] == [0, 0, 612, 792]
    assert "/UserUnit" not in reader.pages[1]
    root: Any = reader.root_object
    assert root["/ViewerPreferences"]["/PrintScaling"] == "/None"


def test_it_conforms_to_pdf_ua_1(booklet: bytes) -> None:
    """ISO 14289-1, judged by the library page-validation."""
    report = validation.validate_pdf_bytes(booklet, profile=validation.ValidationProfile.PDF_UA_1)
    assert [(failure.rule_id, failure.message) for failure in report.failures] == []
    assert report.is_compliant


def test_words_of_page_and_drawing_are_real_text(reader: PdfReader) -> None:
    first, second = (page.extract_text() for page in reader.pages)
    assert "2½″ × 2½″" in first
    assert "12½″" in first
    assert "1″ × 1″" in second


def test_only_our_fonts_are_in_it_and_each_once(reader: PdfReader) -> None:
    page: Any = reader.pages[0]
    fonts = page["/Resources"]["/Font"].values()
    names = sorted(str(font.get_object()["/BaseFont"]).partition("+")[2] for font in fonts)
    assert names == [
        "Bitter-Bold",
        "Work-Sans",
        "Work-Sans-Bold",
        "Work-Sans-Italic",
        "Work-Sans-Semi-Bold",
    ]


def test_dates_are_the_patterns_own(reader: PdfReader) -> None:
    assert reader.metadata is not None
    assert reader.metadata.creation_date == dt.datetime(2026, 1, 2, tzinfo=dt.UTC)
    assert reader.metadata.modification_date == reader.metadata.creation_date
    undated, _ = make_pdf(document(), DRAWINGS, base=BASE, date=None, titles={})
    info = PdfReader(BytesIO(undated)).metadata
    assert info is not None
    assert info.creation_date is None


SCRIPT = """
import hashlib, pathlib, sys
sys.path.insert(0, sys.argv[1])
from tests.booklet.test_pdf import made
print(hashlib.sha256(made(base=pathlib.Path(sys.argv[2]))).hexdigest())
"""


@pytest.mark.parametrize(
    "machine",
    [
        {"PYTHONHASHSEED": "0", "TZ": "Asia/Tokyo"},
        {"PYTHONHASHSEED": "77", "LC_ALL": "C", "SOURCE_DATE_EPOCH": "1"},
    ],
)
def test_the_same_bytes_on_another_machine_in_a_folder_with_a_space(
    machine: dict[str, str], booklet: bytes, tmp_path: Path
) -> None:
    fonts = tmp_path / "my patterns" / "fonts"
    shutil.copytree(BASE / "fonts", fonts)
    ran = subprocess.run(
        [sys.executable, "-c", SCRIPT, str(ROOT), str(fonts.parent)],
        capture_output=True,
        text=True,
        check=True,
        cwd=tmp_path,
        env={**os.environ, **machine},
    )
    assert ran.stdout.split() == [hashlib.sha256(booklet).hexdigest()]


def test_no_path_of_the_machine_is_in_it(tmp_path: Path) -> None:
    base = tmp_path / "a b"
    shutil.copytree(BASE / "fonts", base / "fonts")
    reader = PdfReader(BytesIO(made(base=base)))
    size = int(str(reader.trailer["/Size"]))
    objects = [str(reader.get_object(number)) for number in range(1, size)]
    assert any("Go to Cutting" in thing for thing in objects)
    text = " ".join(objects) + str(reader.xmp_metadata and reader.xmp_metadata.rdf_root.toxml())
    assert not [part for part in ("file:", str(tmp_path), "/tmp", "/URI") if part in text]  # noqa: S108


def test_svg_of_the_same_drawings_gives_the_same_page(booklet: bytes) -> None:
    """The way into the page is not documented; this is the documented one."""
    body = BODY
    for name, drawing in DRAWINGS.items():
        data = b64encode(svg(drawing).encode()).decode()
        body = body.replace(f"diagram:{name}", f"data:image/svg+xml;base64,{data}")
    other = made(document(body))
    for number in range(2):
        apart = np.abs(pixels(booklet, number) - pixels(other, number))
        assert (apart > 32).mean() < 0.0005
        assert (apart > 0).mean() < 0.02
        assert (pixels(booklet, number) < 200).mean() > 0.001  # and it is not an empty page


def test_a_sign_without_a_glyph_is_told() -> None:
    (words,) = told("<h1>Done ☐</h1>")
    assert words.startswith("missing-glyph: the page says")
    assert "☐" in words


def test_a_label_without_a_glyph_is_told() -> None:
    pen = Pen(1, 1, 1)
    pen.label(0.5, 0.5, "✓ done")
    written, notices = make_pdf(
        document(), {"tick": pen.drawing("tick", "t", "t")}, base=BASE, date=DAY, titles={}
    )
    assert written == b""
    assert [str(notice) for notice in notices] == [
        "error missing-glyph: the drawing tick says '✓ done'; the font has no '✓'."
    ]


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ('<h1>x</h1><img src="diagram:nine" alt="x">', "refused-file: there is no drawing called"),
        ('<h1>x</h1><img src="https://a.example/x.png" alt="x">', "refused-file: https"),
        ('<h1>x</h1><img src="../../pyproject.toml" alt="x">', "refused-file: pyproject.toml lies"),
        ('<h1>x</h1><img src="diagram:inch">', "page-warning: "),
        ('<h1 style="colour: red">x</h1>', "page-warning: "),
        ('<h1>x</h1><p><a href="#no">x</a>', "page-warning: "),
    ],
)
def test_what_weasyprint_would_only_warn_of_stops_the_booklet(body: str, said: str) -> None:
    assert any(words.startswith(said) for words in told(body))


def look_with(tmp_path: Path, font: str) -> Path:
    """An author's folder with one font in it, called after a family of its own or of ours."""
    look = tmp_path / "my look"
    look.mkdir()
    shutil.copy(BASE / "fonts" / "Bitter_700Bold.ttf", look / font)
    return look


def test_the_author_may_bring_a_font(tmp_path: Path) -> None:
    look = look_with(tmp_path, "Own.ttf")
    own = f"@font-face {{ font-family: Own; src: url({look.as_uri()}/Own.ttf) }}"
    html = document("<h1>x</h1>", f"{STYLE} {own} h1 {{ font-family: Own }}")
    written, notices = make_pdf(html, {}, base=BASE, date=DAY, titles={}, looks=[look])
    assert notices == ()
    assert written.startswith(b"%PDF-")


def test_another_font_under_the_name_of_ours_is_told(tmp_path: Path) -> None:
    """Drawings number their glyphs by our file; in another one they would be other letters."""
    look = look_with(tmp_path, "Own.ttf")
    own = f"@font-face {{ font-family: 'Work Sans'; src: url({look.as_uri()}/Own.ttf) }}"
    html = document(BODY, f"{STYLE} {own}")
    written, notices = make_pdf(html, DRAWINGS, base=BASE, date=DAY, titles={}, looks=[look])
    assert (written, [notice.code for notice in notices]) == (b"", ["strange-font"])
