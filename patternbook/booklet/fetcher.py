"""The files that a page may take in: those of the given folders, of known kinds, and no others.

Nothing is fetched from a network. Links are followed before a place is judged. A refusal ends
the page; those inside a picture are only logged by WeasyPrint, so all are kept and told.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Final
from urllib.parse import urlsplit
from urllib.request import url2pathname

from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

_KINDS: Final = {
    b"\x89PNG\r\n\x1a\n": "image/png",
    b"\xff\xd8\xff": "image/jpeg",
    b"\x00\x01\x00\x00": "font/ttf",
    b"OTTO": "font/otf",
    b"wOF2": "font/woff2",
}
FILE_LIMIT: Final = 20_000_000
TOTAL_LIMIT: Final = 100_000_000
DATA_LIMIT: Final = 2_000_000


class RefusedError(FatalURLFetchingError):  # type: ignore[misc] # the library carries no types
    """Something that a page must not take in."""


class FolderFetcher(URLFetcher):  # type: ignore[misc] # the library carries no types
    """Fetches files of the given folders, and keeps what it refused and which fonts it gave."""

    def __init__(self, folders: Iterable[Path]) -> None:
        super().__init__(allowed_protocols={"data"}, allow_redirects=False, fail_on_errors=True)
        self.folders = [folder.resolve() for folder in folders]
        self.left = TOTAL_LIMIT
        self.refusals: list[str] = []
        self.fonts: list[str] = []

    def fetch(self, url: str, headers: object = None) -> URLFetcherResponse:  # noqa: ARG002
        """The file at that address, or RefusedError."""
        try:
            data, name = self._embedded(url) if url.startswith("data:") else self._read(url)
            kind = _kind(data, name)
        except RefusedError as refusal:
            self.refusals.append(str(refusal))
            raise
        if kind.startswith("font/"):
            self.fonts.append(name)
        return URLFetcherResponse(url, data, {"Content-Type": kind})

    def _embedded(self, url: str) -> tuple[bytes, str]:
        """Content of an address that holds it; its name ends as a file of that kind would."""
        if len(url) > DATA_LIMIT:
            raise RefusedError(f"a data: address of {len(url)} characters is too long")
        response = super().fetch(url)
        suffix = {"text/css": ".css", "image/svg+xml": ".svg"}.get(response.content_type, "")
        return response.read(), f"a data: address{suffix}"

    def _read(self, url: str) -> tuple[bytes, str]:
        parts = urlsplit(url)
        if parts.scheme == "diagram":
            raise RefusedError(f"there is no drawing called {parts.path}")
        if parts.scheme != "file" or parts.netloc not in ("", "localhost"):
            raise RefusedError(f"{url[:200]} is not a file of this machine")
        path = Path(url2pathname(parts.path)).resolve()
        if not any(path.is_relative_to(folder) for folder in self.folders):
            raise RefusedError(f"{path.name} lies outside the folders of the pattern and its look")
        if not path.is_file():
            raise RefusedError(f"there is no file {path.name}")
        size = path.stat().st_size
        self.left -= size
        if size > FILE_LIMIT or self.left < 0:
            raise RefusedError(f"{path.name} is too large ({size} bytes)")
        return path.read_bytes(), path.name


def _kind(data: bytes, name: str) -> str:
    """What the content is, by its first bytes; style sheets and SVG by the end of their name."""
    for start, kind in _KINDS.items():
        if data.startswith(start):
            return kind
    if name.endswith(".css"):
        return "text/css"
    if not name.endswith(".svg"):
        raise RefusedError(f"{name} is neither a PNG, JPEG or SVG picture, nor a font or CSS")
    if b"<!DOCTYPE" in data or b"<!ENTITY" in data:
        raise RefusedError(f"{name} declares a document type, which a picture must not")
    return "image/svg+xml"
