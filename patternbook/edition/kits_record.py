"""What `kits --json` says, as types: its JSON Schema is made from these."""

from __future__ import annotations

from typing import Literal

from typing_extensions import TypedDict

from patternbook.edition.figures_record import BuyRecord, SizeRecord


class KitCutRecord(TypedDict):
    """So many like pieces one behind the other: each takes so much of the strip's length and of
    its width. `whole`: the strip is bagged as it is, and that length of it is used."""

    letter: str
    number: int
    along: str
    across: str
    lanes: int
    use: str | None
    whole: bool
    above: bool


class KitStripRecord(TypedDict):
    """So many strips cut alike: what each gives (nothing where they are spare, all of them
    together where they are joined), and what all of them give by letter."""

    width: str
    length: str
    times: int
    along: Literal["width", "length"]
    beside: bool
    joined: bool
    cuts: list[KitCutRecord]
    all: dict[str, int]


class KitSheetRecord(TypedDict):
    """So many pre-cut pieces cut alike: how many of which strip, by its place in the list."""

    times: int
    turned: bool
    rows: list[tuple[int, int]]


class KitBuyRecord(TypedDict):
    """What is bought: off the bolt, or pre-cut pieces in packs (where it is known what a pack
    holds), and what is to spare, a length or a number of pieces."""

    buy: BuyRecord | None
    packs: int | None
    pieces: int | None
    spare: str


class KitMaterialRecord(TypedDict):
    """One cloth: bought and cut for all kits, beside what one kit takes by itself."""

    form: str
    style: Literal["plain", "shared", "thrifty"]
    proven: bool
    length: str
    all: KitBuyRecord
    one: KitBuyRecord
    strips: list[KitStripRecord]
    sheets: list[KitSheetRecord]


class KitWebRecord(TypedDict):
    """Fusible web: a length for each kit, off one roll."""

    each: str
    all: KitBuyRecord
    one: KitBuyRecord


class KitBackingRecord(TypedDict):
    """The backings: so many lengths, each so long, and the purchase of their cloth alone."""

    fabric: str | None
    panels: int
    each: str
    all: BuyRecord
    one: BuyRecord


class KitBattingRecord(TypedDict):
    """The battings: so many of that least size, in so many packages or off a roll."""

    number: int
    size: SizeRecord
    pack: SizeRecord | None
    packs: int | None
    roll: BuyRecord | None


class BagRecord(TypedDict):
    """One line of the bag list. `size` is that of the square a triangle is cut from; `down` is
    None for a strip as wide as the cloth."""

    letter: str
    fabric: str | None
    kind: Literal["patches", "strips", "lengths"]
    number: int
    all: int
    size: SizeRecord
    diagonal: Literal["once", "twice"] | None
    join: Literal["diagonal", "straight"] | None


class ClassRecord(TypedDict):
    """The class list, in words."""

    brings: list[str]
    finish: list[str]
    before: list[str]
    prepares: list[str]


KitsRecord = TypedDict(
    "KitsRecord",
    {
        "format": Literal[1],
        "pattern": str,
        "slug": str,
        "revision": int,
        "unit": Literal["in", "cm"],
        "size": str,
        "kits": int,
        "materials": dict[str, KitMaterialRecord],
        "webs": dict[str, KitWebRecord],
        "backing": KitBackingRecord | None,
        "batting": KitBattingRecord | None,
        "bag": list[BagRecord],
        "class": ClassRecord,
    },
)
KitsRecord.__doc__ = "All that `kits --json` says."
