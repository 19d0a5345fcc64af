"""One pattern's finished plans to its pages, in three ways; each prints how many seconds it took.

python -m tests.benchmarks.render ours|naive SOURCE OUT.pdf
python -m tests.benchmarks.render pages SOURCE FOLDER    lays out page.html for a browser
"""

import io
import re
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from patternbook.edition.pipeline import Examined, examine
from patternbook.shipped import shipped
from patternbook.strokes.stroke import INK, STYLES, Arrow, Drawing, Label, Line, Patch

SIDES = {"start": "left", "middle": "center", "end": "right"}


def ours(examined: Examined, out: Path) -> None:
    """As `build` does it, on one paper."""
    from patternbook.edition.printing import printed

    files, notices = printed(examined, ("a4",), None, ("full",), lambda _: None)
    assert not notices, notices
    (name,) = (name for name in files if name.endswith(".pdf"))
    out.write_bytes(files[name])


def naive(examined: Examined, out: Path) -> None:
    """The obvious way: pyplot, a figure with axes for each drawing, an artist for each stroke."""
    import weasyprint

    page, drawn = _page(examined)
    for name, drawing in drawn.items():
        page = page.replace(f"diagram:{name}", _data(_pyplot(drawing)))
    base = f"{shipped('templates').as_uri()}/"
    out.write_bytes(weasyprint.HTML(string=page, base_url=base).write_pdf(pdf_variant="pdf/ua-1"))


def pages(examined: Examined, folder: Path) -> None:
    """The same page with its drawings as files, for a browser to print."""
    from patternbook.strokes.svg import svg

    page, drawn = _page(examined)
    for name, drawing in drawn.items():
        (folder / f"{name}.svg").write_text(svg(drawing), "utf-8")
        page = page.replace(f"diagram:{name}", f"{name}.svg")
    base = f'<base href="{folder.as_uri()}/">'
    css = shipped("templates").as_uri()
    page = re.sub(r'href="(?!#)([^":]+\.css)"', rf'href="{css}/\1"', page)
    (folder / "page.html").write_text(page.replace("<head>", f"<head>{base}", 1), "utf-8")


def _page(examined: Examined) -> tuple[str, dict[str, Drawing]]:
    from patternbook.booklet.book import Book
    from patternbook.booklet.html import html
    from patternbook.diagrams import drawings

    assert examined.heading
    drawn = drawings(examined.heading, examined.sizes)
    page = html(Book(examined.heading, examined.sizes, drawn, "a4")).html
    return page, {name: one for name, one in drawn.items() if f'"diagram:{name}"' in page}


def _pyplot(drawing: Drawing) -> bytes:
    from matplotlib import pyplot as plt
    from matplotlib.patches import Polygon

    width, height = drawing.inches
    figure, axes = plt.subplots(figsize=(width, height))
    axes.set_xlim(0, drawing.width)
    axes.set_ylim(drawing.height, 0)
    axes.set_aspect("equal")
    axes.axis("off")
    for stroke in drawing.strokes:
        if isinstance(stroke, Patch):
            colour = stroke.fill.colour if stroke.fill else "none"
            polygon = Polygon(stroke.points, facecolor=colour)
            if stroke.outline:
                polygon.set(edgecolor=INK, linewidth=STYLES[stroke.outline].width)
            axes.add_patch(polygon)
        elif isinstance(stroke, Line | Arrow):
            style = STYLES[stroke.role]
            across, down = zip(*stroke.points, strict=True)
            axes.plot(across, down, color=style.colour, linewidth=style.width)
        elif isinstance(stroke, Label):
            lies = SIDES[stroke.anchor]
            axes.text(stroke.x, stroke.y, stroke.text, size=stroke.size, va="center", ha=lies)
    figure.tight_layout()
    kept = io.BytesIO()
    figure.savefig(kept, format="svg")
    plt.close(figure)
    return kept.getvalue()


def _data(picture: bytes) -> str:
    from base64 import b64encode

    return f"data:image/svg+xml;base64,{b64encode(picture).decode()}"


WAYS: dict[str, Callable[[Examined, Path], Any]] = {"ours": ours, "naive": naive, "pages": pages}

if __name__ == "__main__":
    way, source, where = sys.argv[1:]
    plans = examine(Path(source), source)
    begun = time.perf_counter()
    WAYS[way](plans, Path(where))
    print(time.perf_counter() - begun)
