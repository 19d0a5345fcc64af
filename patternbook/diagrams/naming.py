"""The names of drawings, by which pages ask for them."""

from __future__ import annotations

import re
from typing import Final
from unicodedata import combining, normalize

_STRANGE: Final = re.compile(r"[^a-z0-9]+", re.ASCII)


def name(*words: str) -> str:
    """`lay-floor-queen`: small letters, digits and hyphens."""
    plain = normalize("NFKD", "-".join(words)).casefold()
    plain = "".join(letter for letter in plain if not combining(letter))
    return _STRANGE.sub("-", plain).strip("-") or "drawing"
