"""A page takes in files of its own folders and nothing else: 26 ways to try it."""

import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path
from urllib.parse import quote

import pytest
from weasyprint import HTML

from patternbook.booklet.fetcher import DATA_LIMIT, FolderFetcher, RefusedError

DOT = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d49444154789c63"
    "60f8cf500f000381017fe4f8b6290000000049454e44ae426082"
)


@dataclass
class World:
    """A project folder, a folder beside it, and a server that counts who calls."""

    project: Path
    outside: str
    net: str
    calls: list[str] = field(default_factory=list)


@pytest.fixture
def world(tmp_path: Path) -> Iterator[World]:
    project, outside = tmp_path / "project", tmp_path / "outside"
    project.mkdir()
    outside.mkdir()
    (project / "own.png").write_bytes(DOT)
    (outside / "other.png").write_bytes(DOT)
    (outside / "secret.txt").write_bytes(b"SECRET")
    (outside / "other.css").write_bytes(b"p { color: red }")
    (project / "link.png").symlink_to(outside / "other.png")
    calls: list[str] = []

    class Listening(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            calls.append(self.path)
            self.send_response(200)
            self.end_headers()
            self.wfile.write(DOT)

        def log_message(self, *_: object) -> None: ...

    server = HTTPServer(("127.0.0.1", 0), Listening)
    thread = threading.Thread(target=server.serve_forever, args=(0.01,))
    thread.start()
    yield World(project, outside.as_uri(), f"http://127.0.0.1:{server.server_port}", calls)
    server.shutdown()
    thread.join()
    server.server_close()


def svg(inside: str) -> str:
    start = '<svg xmlns="http://www.w3.org/2000/svg" width="30" height="30">'
    return "data:image/svg+xml," + quote(start + inside + "</svg>")


def picture(inside: str) -> str:
    return f'<img alt=x src="{svg(inside)}">'


ATTACKS = {
    "picture of the net": '<img alt=x src="{net}/a.png">',
    "background of the net": '<p style="background:url({net}/b.png)">x',
    "imported style of the net": '<style>@import "{net}/c.css";</style>x',
    "linked style of the net": '<link rel=stylesheet href="{net}/d.css">x',
    "font of the net": "<style>@font-face{{font-family:Z;src:url({net}/e.ttf)}}</style>"
    '<p style="font-family:Z">x',
    "picture outside": '<img alt=x src="{outside}/other.png">',
    "picture upward": '<img alt=x src="../outside/other.png">',
    "picture through a link": '<img alt=x src="link.png">',
    "style outside": '<link rel=stylesheet href="{outside}/other.css">x',
    "attachment outside": '<link rel=attachment href="{outside}/secret.txt">x',
    "attached by a link": '<a rel=attachment href="{outside}/secret.txt">x</a>',
    "picture in a picture": picture('<image href="OUTSIDE/other.png" width="9" height="9"/>'),
    "net in a picture in the page": '<svg width=20 height=20><image href="{net}/g.png" '
    "width=9 height=9 /></svg>",
    "password file": '<img alt=x src="file:///etc/passwd">',
    "object": '<object data="{net}/h.png">x</object>',
    "embedded": '<embed src="{outside}/other.png">',
    "base of the net": '<base href="{net}/"><img alt=x src="own.png">',
    "content": "<style>p::before{{content:url({net}/j.png)}}</style><p>x",
    "list style": '<ul style="list-style-image:url({net}/k.png)"><li>x</ul>',
    "border picture": '<p style="border:5px solid;border-image:url({net}/l.png) 5">x',
    "page background": "<style>@page{{background:url({net}/n.png)}}</style>x",
    "colour profile": "<style>@color-profile --x{{src:url({net}/o.icc)}}</style>x",
    "file of a host": '<img alt=x src="file://evil.example/x.png">',
}
# Not read by WeasyPrint at all; here so that it is noticed when that changes.
UNREAD = {
    "mask": '<p style="mask-image:url({net}/m.png)">x',
    "style in a picture": picture("<style>@import url(NET/f.css);</style><rect width='9'/>"),
    "part of another picture": picture('<use href="OUTSIDE/other.svg#a"/>'),
}


def written(html: str, world: World, fetcher: FolderFetcher) -> bytes:
    html = html.replace("{{", "{").replace("}}", "}")
    for name, place in (("outside", world.outside), ("net", world.net)):
        html = html.replace(f"{{{name}}}", place)
        html = html.replace(quote(name.upper()), quote(place))
    page = f"<html lang=en><title>x</title>{html}"
    base = f"{world.project.as_uri()}/"
    pdf: bytes = HTML(string=page, base_url=base, url_fetcher=fetcher).write_pdf(
        uncompressed_pdf=True
    )
    return pdf


@pytest.mark.parametrize("name", ATTACKS)
def test_nothing_comes_in_and_the_refusal_is_kept(name: str, world: World) -> None:
    fetcher = FolderFetcher([world.project])
    try:
        pdf = written(ATTACKS[name], world, fetcher)
    except RefusedError:
        pdf = b""
    assert fetcher.refusals
    assert world.calls == []
    assert b"/Subtype /Image" not in pdf
    assert b"/EmbeddedFile" not in pdf
    assert b"SECRET" not in pdf


@pytest.mark.parametrize("name", UNREAD)
def test_what_is_not_read_is_not_fetched(name: str, world: World) -> None:
    pdf = written(UNREAD[name], world, FolderFetcher([world.project]))
    assert world.calls == []
    assert b"/Subtype /Image" not in pdf


def test_a_file_of_the_project_comes_in(world: World) -> None:
    fetcher = FolderFetcher([world.project])
    assert b"/Subtype /Image" in written('<img alt=x src="own.png">', world, fetcher)
    assert fetcher.refusals == []


def test_the_listening_server_would_have_counted(world: World) -> None:
    """The attacks above fail for the fetcher's sake, not for the server's."""
    from weasyprint.urls import URLFetcher

    HTML(string=f'<img alt=x src="{world.net}/a.png">', url_fetcher=URLFetcher()).render()
    assert world.calls == ["/a.png"]


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("notes.txt", b"notes", "neither a PNG"),
        ("false.png", b"<svg/>", "neither a PNG"),
        ("bomb.svg", b'<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>', "document type"),
        ("absent.png", None, "no file absent.png"),
    ],
)
def test_files_of_other_kinds_are_refused(
    name: str, content: bytes | None, said: str, tmp_path: Path
) -> None:
    if content is not None:
        (tmp_path / name).write_bytes(content)
    with pytest.raises(RefusedError, match=said):
        FolderFetcher([tmp_path]).fetch((tmp_path / name).as_uri())


def test_large_files_are_refused(tmp_path: Path) -> None:
    (tmp_path / "own.png").write_bytes(DOT)
    fetcher = FolderFetcher([tmp_path])
    fetcher.left = len(DOT)
    fetcher.fetch((tmp_path / "own.png").as_uri())
    with pytest.raises(RefusedError, match="too large"):
        fetcher.fetch((tmp_path / "own.png").as_uri())
    with pytest.raises(RefusedError, match="too long"):
        fetcher.fetch("data:image/png," + "a" * DATA_LIMIT)


def test_a_drawing_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="no drawing called nine-patch"):
        FolderFetcher([tmp_path]).fetch("diagram:nine-patch")
