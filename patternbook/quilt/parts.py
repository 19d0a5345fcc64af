"""The pieces, units and fabrics of one size as they are written: what each says of itself."""

from __future__ import annotations

from difflib import get_close_matches
from fractions import Fraction
from typing import Final, Literal

from patternbook.forms import by_name
from patternbook.inch import CENTIMETRES, INCHES, System, triangle_allowance
from patternbook.methods.world import Diagonal, here
from patternbook.methods.written import WrittenMade
from patternbook.notice import Place
from patternbook.quilt.house_rules import settings
from patternbook.quilt.numbers import Numbers
from patternbook.quilt.templates import fixed
from patternbook.source.cloth import WrittenFabric, WrittenPiece
from patternbook.source.cover import WrittenSize
from patternbook.source.drawings import Pictures
from patternbook.source.svg import Picture
from patternbook.source.written import WrittenPattern
from patternbook.value import SizeValue

TOP: Final = "top"


class Parts(Numbers):
    """The parts of a quilt in one size, before any length is worked out."""

    def __init__(
        self, written: WrittenPattern, size: str, pictures: Pictures | None = None
    ) -> None:
        sizes: dict[str, WrittenSize] = {str(name): node for name, node in written.sizes.items()}
        self.goal = sizes[size]
        super().__init__(size, self.goal.numbers)
        self.written = written
        self.pictures = pictures or {}
        self.system: System = CENTIMETRES if written.written_in == "cm" else INCHES
        # Parts that are left out, and all that would follow from them.
        self.broken: set[str] = set()
        self.rounded_up: set[str] = set()
        self.pieces: dict[str, WrittenPiece] = {
            str(name): node for name, node in written.pieces.items()
        }
        self.fabrics: dict[str, WrittenFabric] = {
            str(name): node for name, node in written.fabrics.items()
        }
        self.units: dict[str, WrittenMade] = {
            str(name): node for name, node in written.units.items()
        }
        if written.top is not None:
            self.units[TOP] = written.top

    @property
    def unit(self) -> Literal["in", "cm"]:
        """What the author's numbers count."""
        return self.system.unit

    def exists(self, part: str) -> bool:
        """Whether a piece or a unit is called that."""
        return part in self.pieces or part in self.units

    def is_unit(self, part: str) -> bool:
        """Whether the part is sewn rather than cut."""
        return part in self.units

    def is_strip(self, part: str) -> bool:
        """Whether the part is cut the whole width of the cloth."""
        piece = self.pieces.get(part)
        cut = here(piece.cut, self.size) if piece else None
        return cut is not None and cut.down == "WOF"

    def sized(self, part: str) -> bool:
        """Whether the size of a part is fixed by itself."""
        piece = self.pieces.get(part)
        if piece is None or fixed(piece):
            return True
        cut, finished = here(piece.cut, self.size), here(piece.finished, self.size)
        return finished is not None or (cut is not None and "fit" not in (cut.across, cut.down))

    def diagonal(self, part: str) -> Diagonal | None:
        """How often a piece's square is cut on the diagonal."""
        piece = self.pieces.get(part)
        word = here(piece.diagonal, self.size) if piece else None
        return "twice" if word == "twice" else "once" if word else None

    def template(self, part: str) -> str | None:
        """The shape of a piece that no ruler cuts, in a word."""
        piece = self.pieces.get(part)
        return str(piece.template) if piece is not None and piece.template else None

    def picture(self, name: str) -> Picture | None:
        """A drawing beside the source."""
        return self.pictures.get(name)

    def join(self, part: str) -> str:
        """How strips of a piece are joined end to end."""
        piece = self.pieces.get(part)
        return str(piece.join.at(self.size)) if piece is not None else "diagonal"

    def triangle(self, diagonal: Diagonal) -> Fraction:
        """What a square loses between its cut side and the finished side of its triangles."""
        stated = self.written.seam
        seam = stated.number if stated else self.system.seam
        return triangle_allowance(seam, 1 if diagonal == "once" else 2, self.system)

    def trimming(self, unit: WrittenMade) -> Fraction:
        """How much larger than needed a unit is sewn, to be trimmed."""
        stated = here(unit.trimming, self.size)
        if stated is not None:
            return stated.number
        return settings(self.written.settings, self.system).trimming

    def wanted(self, name: str) -> SizeValue | None:
        """The finished size that is stated of a unit; of the top also that of the quilt."""
        own = here(self.units[name].finished, self.size)
        return self.goal.finished if own is None and name == TOP else own

    def strip_length(self, part: str) -> Fraction:
        """How long a strip of this piece's cloth is: the usable width, or the pre-cut's length."""
        piece = self.pieces.get(part)
        name = here(piece.fabric, self.size) if piece else None
        fabric = self.fabrics.get(name) if name else None
        if fabric and by_name[fabric.form].strips and fabric.size:
            return max(fabric.size.across, fabric.size.down)
        return self.width_of(fabric)

    def width_of(self, fabric: WrittenFabric | None) -> Fraction:
        """The usable width: as stated, else that of the form, else that of the pattern's cloth."""
        if fabric and fabric.width:
            return fabric.width.number
        washed = settings(self.written.settings, self.system).washed
        own = by_name[fabric.form].width(self.system, washed) if fabric else None
        if own is not None:
            return own
        return self.written.width.number if self.written.width else self.system.width

    def place_of(self, part: str, key: str) -> Place | None:
        """Where a key of a piece or unit has its value."""
        return getattr(self._value(part, key), "place", None)

    def text_of(self, part: str, key: str) -> str | None:
        """The value of a key of a piece or unit as it is typed."""
        return getattr(self._value(part, key), "text", None)

    def _value(self, part: str, key: str) -> object:
        """The value of a key in this size; the first where there are several."""
        node = self.pieces.get(part) or self.units.get(part)
        value: object = here(getattr(node, key, None), self.size)
        return value[0] if isinstance(value, tuple) and value else value

    def rounds_up(self, part: str) -> None:
        """A piece that is trimmed once it is sewn may be cut at the ruler's next mark up."""
        self.rounded_up.add(part)

    def hopeless(self, name: str) -> None:
        """Leave a unit out, and all that would follow from it."""
        self.broken.add(name)

    def _no_part(self, part: str, place: Place | None) -> None:
        self.broken.add(part)
        known = [name for name in (*self.pieces, *self.units) if name != TOP]
        near = get_close_matches(part, known, 1)
        hint = f"Known parts: {', '.join(known)}." if known else "Add it to `pieces` or `units`."
        if near:
            hint = f"Did you mean '{near[0]}'?"
        if part in self.fabrics:
            hint = f"'{part}' is a fabric; a layout names pieces and units only."
        rule = "R11" if part[:1].isupper() else "R19"
        self.error("unknown-part", rule, f"nothing is called '{part}'.", place, hint)
