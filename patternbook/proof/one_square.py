"""How many pieces really lie on one pre-cut square or quarter, and how much strip a letter takes:
by laying them, not by the area."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache

from patternbook.inch import printed, size
from patternbook.methods.made import Outline
from patternbook.notice import Notice
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import mended_by_figure, recounted, shown, typed
from patternbook.quilt.records import CutSize, Piece, Quilt

SHEETS = ("squares", "fat quarter", "fat eighth", "panel")
BOXES = ("quarter circle", "quarter hollow")
FINE = Fraction(1, 64)


def one_square(evidence: Evidence) -> Iterator[Notice]:
    """Errors where more are asked of one square, or of so much strip, than it holds."""
    for piece in evidence.quilt.pieces.values():
        yield from _per_square(piece, evidence.quilt)
        yield from _strip_length(piece, evidence)


def _per_square(piece: Piece, quilt: Quilt) -> Iterator[Notice]:
    sheet = _sheet(piece, quilt)
    stated = piece.stated_per_square
    if stated is None or sheet is None or piece.cut.down is None:
        return
    holds = _holds(piece, sheet)
    if stated <= holds:
        return
    message = (
        f"{piece.letter}: {stated} from one are stated; of {size(*_whole(piece.cut), quilt.system)}"
        f" {holds} lie on {size(*_whole(sheet), quilt.system)}."
    )
    place = piece.key_places.get("per-square")
    hint = f"Take {holds} from each{_smaller(piece, sheet, stated, quilt)}."
    figures = (str(stated), str(holds))
    beside = piece.key_places.get("cut")
    told = recounted(quilt, "per-square", "R6", message, place, beside, figures=figures, hint=hint)
    yield mended_by_figure(told)


def _sheet(piece: Piece, quilt: Quilt) -> CutSize | None:
    fabric = quilt.fabrics.get(piece.fabric or "")
    if fabric is None or fabric.form not in SHEETS:
        return None
    if fabric.size is None and fabric.form == "fat quarter" and quilt.system.unit == "in":
        # The small usable size of a fat quarter (common practice, no source).
        return CutSize(Fraction(18), Fraction(21))
    return fabric.size


def _whole(cut: CutSize) -> tuple[Fraction, Fraction]:
    return cut.across, cut.down or cut.across


def _holds(piece: Piece, sheet: CutSize) -> int:
    """The most that lie on it, cut edge to edge; two quarter circles may lie corner to corner."""
    (wide, high), across = _whole(sheet), piece.cut.across
    if piece.template is not None and piece.template.kind not in BOXES:
        return int(wide * high // _area(piece.template.sew))
    most = most_on(sheet, piece.cut)
    quarter = piece.template is not None and piece.template.kind == "quarter circle"
    if quarter and most == 1 and 4 * across**2 <= wide**2 + high**2:
        return 2
    return most


def _area(outline: Outline) -> Fraction:
    """At least what a shape covers, its corners taken on the sixty-fourth of an inch below."""
    spots = [(x.down(FINE), y.down(FINE)) for x, y in outline.corners]
    pairs = zip(spots, (*spots[1:], spots[0]), strict=True)
    twice = sum((x * v - u * y for (x, y), (u, v) in pairs), Fraction(0))
    return max(abs(twice) / 2, FINE)


def most_on(sheet: CutSize, cut: CutSize) -> int:
    """The most pieces of one size that lie on a sheet, the rest of it laid either way."""
    unit = Fraction(1, 8)
    wide, high = (int(side // unit) for side in _whole(sheet))
    across, down = (-int(-side // unit) for side in _whole(cut))
    return _most(wide, high, across, down)


@lru_cache(maxsize=4096)
def _most(wide: int, high: int, across: int, down: int) -> int:
    """Strips of rows one way, and the rest laid the other way or likewise."""
    best = 0
    for one, other in ((across, down), (down, across)):
        if one > wide or other > high:
            continue
        rows = high // other
        for row in range(1, rows + 1):
            rest = _grid(wide % one, row * other, across, down)
            left = _grid(wide, high - row * other, across, down)
            best = max(best, (wide // one) * row + rest + left)
    return best


def _grid(wide: int, high: int, across: int, down: int) -> int:
    return max((wide // across) * (high // down), (wide // down) * (high // across))


def _smaller(piece: Piece, sheet: CutSize, stated: int, quilt: Quilt) -> str:
    """The largest square of which so many would lie on it."""
    across, down = _whole(piece.cut)
    if across != down:
        return ""
    wide, high = _whole(sheet)
    step = quilt.system.step
    sides = (min(wide / n, high / -(-stated // n)) // step * step for n in range(1, stated + 1))
    return f", or cut {piece.letter} {typed(max(sides), quilt)} square"


def _strip_length(piece: Piece, evidence: Evidence) -> Iterator[Notice]:
    stated, plan = piece.stated_strip_length, evidence.cutting.letters.get(piece.letter)
    if stated is None or plan is None or piece.cut.down is None:
        return
    quilt = evidence.quilt
    along = piece.cut.down if plan.strip_width == piece.cut.across else piece.cut.across
    number = -(-(piece.count + piece.spare) // plan.each)
    needed = number * along
    if stated >= needed:
        return
    message = (
        f"{piece.letter}: {number} × {shown(along, quilt)} = {shown(needed, quilt)} of strip; "
        f"{shown(stated, quilt)} is stated, enough for {stated // along}."
    )
    place = piece.key_places.get("strip-length")
    figures = (typed(stated, quilt), typed(needed, quilt))
    hint = f"Write {figures[1]}: strips of {printed(plan.strip_width)} in that length."
    told = recounted(quilt, "strip-length", "R3", message, place, figures=figures, hint=hint)
    yield mended_by_figure(told)
