"""The kinds of quilt that a pattern may be begun from, by the trade's word for each."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Final

from patternbook.commands.sources import FILE
from patternbook.shipped import shipped

PLAIN: Final = "plain"
# The trade's word, and the pattern of patterns/ that shows it; from the easiest on.
KINDS: Final[Mapping[str, str]] = {
    "strips": "slow-ferry-home",
    "bands": "low-water",
    "rail fence": "hollow-lane-palings",
    "four-patch": "biscuit-tin-lid",
    "nine-patch": "nine-jars-of-plum",
    "coins": "pennies-for-the-organ",
    "bricks": "masons-day-off",
    "log cabin": "porch-left-lit",
    "courthouse steps": "reading-room-steps",
    "pinwheels": "windy-bench",
    "flying geese": "south-on-thursday",
    "sawtooth stars": "bicycle-shed-frost",
    "square in a square": "four-folded-letters",
    "irish chain": "bakers-door-beads",
    "disappearing nine-patch": "cut-before-you-worry",
    "pluses": "sum-of-the-neighbours",
    "panel": "one-good-picture",
    "sampler": "learned-by-spring",
    "on point": "wash-house-tiles",
    "strip race": "second-pot",
    "postage stamp": "post-for-the-island",
    "churn dash": "cream-on-fridays",
    "curves": "courtyard-rain",
    "hexagons": "train-window-hours",
    "applique": "pear-thief",
}


def starters() -> dict[str, Path]:
    """The source of every kind; patterns that stand for none go by their folder's name."""
    home = shipped("patterns")
    others = sorted(one.parent.name for one in home.glob(f"*/{FILE}"))
    named = {kind: home / slug / FILE for kind, slug in KINDS.items()}
    named |= {slug: home / slug / FILE for slug in others if slug not in KINDS.values()}
    return {PLAIN: shipped("templates") / "new" / FILE} | named


def meant(asked: str) -> str:
    """The kind as it is listed: `Log-Cabin` is `log cabin`, and a folder's name its kind."""
    bare = _bare(asked)
    by_folder = {_bare(slug): kind for kind, slug in KINDS.items()}
    listed = {_bare(kind): kind for kind in starters()}
    return listed.get(bare) or by_folder.get(bare, asked)


def _bare(name: str) -> str:
    return " ".join(name.lower().replace("é", "e").replace("-", " ").split())
