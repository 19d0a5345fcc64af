"""What `figures --json` says, as types: its JSON Schema is made from these."""

from __future__ import annotations

from typing import Literal, NotRequired

from typing_extensions import TypedDict

from patternbook.edition.figures_quilting import QuiltingRecord

Figure = TypedDict(
    "Figure",
    {
        "value": str,
        "exact": NotRequired[str],
        "status": Literal["given", "worked out", "agrees", "on trust"],
        "ways": int,
        "class": Literal["exact", "at least", "free"],
        "at": str | None,
    },
)
Figure.__doc__ = "One number: its value, where it comes from, and whether it may be otherwise."


class SidesRecord(TypedDict):
    """Width and length."""

    across: Figure
    down: Figure


class SizeRecord(TypedDict):
    """A size that is worked out from others; `down` is None for a strip."""

    across: str
    down: str | None


class PieceRecord(TypedDict):
    """What is cut under one letter. A strip has no length of its own, so no `down`."""

    fabric: str | None
    cut: dict[Literal["across", "down"], Figure]
    finished: SidesRecord
    count: Figure
    mirrored: int
    squares: int | None
    own_strips: Figure


class UnitRecord(TypedDict):
    """What is sewn under one name; the last four only of a strip set."""

    method: str
    measure: SidesRecord
    finished: SidesRecord
    make: Figure
    sets: int | None
    segments: int | None
    segment: str | None
    per_set: int | None


class RowRecord(TypedDict):
    """One row, column or sash row of the top, finished."""

    role: Literal["row", "column", "sash", "slant"]
    parts: list[str]
    across: str
    down: str


class BorderRecord(TypedDict):
    """One border; lengths are cut lengths, the measure is of the quilt once it is on."""

    number: int
    side: str
    end: str
    first: Literal["sides", "ends"]
    corners: Literal["butted", "mitred"]
    stones: str | None
    side_length: str
    end_length: str
    measure: SizeRecord


class StripRecord(TypedDict):
    """So many strips cut alike, and what each letter gets off all of them."""

    width: str
    length: str
    times: int
    yields: dict[str, int]


class BuyRecord(TypedDict):
    """What is bought off the bolt, in the pattern's own unit and in metres."""

    amount: str
    unit: Literal["yd", "m"]
    metres: str | None


class OtherStyleRecord(TypedDict):
    """Another way of cutting the same cloth, and what is then bought."""

    style: Literal["plain", "shared", "thrifty"]
    length: str
    bound: str
    proven: bool
    buy: str | None
    pieces_of_a_pack: int | None


class InsteadRecord(TypedDict):
    """Other cloth that would do: so many pre-cuts (no plan takes fewer than `bound`), or an amount
    off the bolt."""

    form: str
    size: SizeRecord | None
    number: int
    bound: int
    packs: int | None
    buy: str | None


class NarrowerRecord(TypedDict):
    """What is bought where the cloth is only so wide, and whether the plan still holds."""

    width: str
    buy: str | None
    holds: bool


class MaterialRecord(TypedDict):
    """One cloth; `size` is of one pre-cut strip or piece. `bound` is the least length that this
    way of cutting can come to, `number_bound` the least number of pre-cuts; `others`, `instead`,
    `narrower` and `one_way` (what is bought of cloth that is one-way) are worked out in a full
    run only. `on_trust`: what the packet alone knows."""

    form: str
    size: SizeRecord | None
    style: Literal["plain", "shared", "thrifty"]
    strips: list[StripRecord]
    length: str
    bound: str
    proven: bool
    limit_hit: bool
    number_bound: int | None
    others: list[OtherStyleRecord]
    instead: list[InsteadRecord]
    narrower: list[NarrowerRecord]
    one_way: str | None
    on_trust: str | None
    least_width: str | None
    buy: BuyRecord | None
    packs: int | None
    pieces_of_a_pack: int | None
    spare: str
    prints: int
    seed: int


class WebRowRecord(TypedDict):
    """So many rows across the web alike: how long each is, and its shapes by letter."""

    times: int
    down: str
    shapes: dict[str, int]


class WebRecord(TypedDict):
    """Fusible web; each shape is traced with `margin` more all round."""

    width: str
    margin: str
    rows: list[WebRowRecord]
    shapes: dict[str, int]
    length: str
    buy: BuyRecord | None
    spare: str


class SuggestionRecord(TypedDict):
    """What the author wishes for the quilting: a design in an area, its lines so far apart; null
    where she leaves it to be chosen."""

    area: str
    design: str | None
    spacing: str | None


class PatchesRecord(TypedDict):
    """So many patches of spare cloth: `across` the strip, `along` it."""

    fabric: str
    number: int
    across: str
    along: str


class InsertRecord(TypedDict):
    """A strip of spare cloth let into the backing."""

    width: str
    length: str
    made: str
    patches: list[PatchesRecord]


class PanelsRecord(TypedDict):
    """Lengths of cloth or batting side by side, and their purchase."""

    panels: int
    seams: Literal["crosswise", "lengthwise"]
    length: str
    buy: BuyRecord


class BackingForRecord(TypedDict):
    """The backing for one way of quilting: how far it stands out, its size and purchase."""

    over: str
    size: SizeRecord
    buy: BuyRecord


class BackingRecord(TypedDict):
    """The backing, and the purchase of its cloth alone; `other` is the other direction of the
    seams."""

    size: SizeRecord
    over: str
    panels: int
    seams: Literal["crosswise", "lengthwise"]
    each: str
    made: str
    buy: BuyRecord
    insert: InsertRecord | None
    other: PanelsRecord
    home: BackingForRecord
    frame: BackingForRecord


class BattingRecord(TypedDict):
    """The batting, of so many packages or off a roll; `limit` is how far apart the quilting may
    be."""

    size: SizeRecord
    pack: SizeRecord | None
    packs: int
    roll: PanelsRecord | None
    limit: str
    limit_source: Literal["stated", "assumed"]


class BindingRecord(TypedDict):
    """The binding; `cloth` is the length of cloth that its strips or squares take. On the bias
    there are `squares`, and `bias_strips` where it is not one long strip."""

    fabric: str
    strips: int
    length: str
    joins: int
    join: Literal["diagonal", "straight"]
    made: str
    left: str
    cloth: str
    square: str | None
    squares: int
    bias_strips: int
    radius: str | None


class LabelRecord(TypedDict):
    """The label; `fabric` is the one whose spare cloth holds it."""

    finished: SizeRecord
    cut: SizeRecord
    fabric: str | None
    lines: list[str]


class SizeFigures(TypedDict):
    """All of one size."""

    finished: SidesRecord | None
    patches: int
    seams_to_match: int
    pieces: dict[str, PieceRecord]
    units: dict[str, UnitRecord]
    borders: list[BorderRecord]
    rows: list[RowRecord]
    materials: dict[str, MaterialRecord]
    webs: dict[str, WebRecord]
    backing: BackingRecord | None
    batting: BattingRecord | None
    binding: BindingRecord | None
    label: LabelRecord | None
    suggested: list[SuggestionRecord]
    quilting: QuiltingRecord | None


class FiguresRecord(TypedDict):
    """All that `figures --json` says."""

    format: Literal[1]
    language: int
    pattern: str
    slug: str
    revision: int
    unit: Literal["in", "cm"]
    sizes: dict[str, SizeFigures]
