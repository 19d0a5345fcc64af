"""Every number of one pattern, as a record for programs: what it is, and how far to believe it."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from pathlib import PurePath
from typing import Final, Literal

from patternbook.cutting.cloth import on_trust
from patternbook.cutting.records import (
    Buy,
    CuttingPlan,
    FabricPlan,
    Instead,
    OtherStyle,
    WebPlan,
)
from patternbook.edition import figures_finishing as finishing
from patternbook.edition.figures_quilting import quilting
from patternbook.edition.figures_record import (
    BorderRecord,
    BuyRecord,
    Figure,
    FiguresRecord,
    InsteadRecord,
    MaterialRecord,
    OtherStyleRecord,
    PieceRecord,
    RowRecord,
    SidesRecord,
    SizeFigures,
    SizeRecord,
    SuggestionRecord,
    UnitRecord,
    WebRecord,
)
from patternbook.edition.pipeline import Examined
from patternbook.exact import Exact, Rational
from patternbook.inch import System, plain
from patternbook.notice import Place
from patternbook.proof.evidence import Evidence
from patternbook.quilt.records import (
    Border,
    CutSize,
    Kind,
    LayoutMade,
    Line,
    Piece,
    Quilt,
    Quilting,
    Sides,
    Status,
    StripSetMade,
    Unit,
)

FORMAT: Final = 1


def figures(examined: Examined, *, bare: bool = False, full: bool = False) -> FiguresRecord | None:
    """The record, of the sizes that hold; None where the source could not be read at all.

    `bare`: places name the file without its folders, as is right in a file that is handed on.
    `full`: with what the quilting comes to.
    """
    source, heading = examined.source, examined.heading
    if source is None or heading is None:
        return None
    return {
        "format": FORMAT,
        "language": int(source.written.language),
        "pattern": heading.pattern,
        "slug": heading.slug,
        "revision": heading.revision,
        "unit": "cm" if source.written.cm else "in",
        "sizes": {
            size: _Size(evidence, bare=bare, full=full).record()
            for size, evidence in examined.sizes.items()
        },
    }


class _Size:
    """The figures of one size."""

    def __init__(self, evidence: Evidence, *, bare: bool, full: bool) -> None:
        self.bare = bare
        self.full = full
        self.evidence = evidence
        self.quilt: Quilt = evidence.quilt
        self.cutting: CuttingPlan = evidence.cutting
        self.system: System = evidence.quilt.system

    def record(self) -> SizeFigures:
        quilt, top = self.quilt, self.quilt.units.get(self.quilt.top or "")
        made = top.made if top and isinstance(top.made, LayoutMade) else None
        return {
            "finished": self._sides(quilt.finished, "sizes", "finished")
            if quilt.finished
            else None,
            "patches": len(self.evidence.patches),
            "seams_to_match": self.evidence.sewing.totals.matches,
            "pieces": {letter: self._piece(piece) for letter, piece in quilt.pieces.items()},
            "units": {name: self._unit(unit) for name, unit in quilt.units.items()},
            "borders": [self._border(border) for border in made.borders] if made else [],
            "rows": [self._row(line) for line in made.lines] if made else [],
            "materials": {
                name: self._material(plan) for name, plan in self.cutting.fabrics.items()
            },
            "webs": {name: self._web(plan) for name, plan in self.cutting.webs.items()},
            "backing": finishing.backing(self.cutting.backing, self.system),
            "batting": finishing.batting(self.cutting.batting, quilt),
            "binding": finishing.binding(self.cutting.binding, self.system),
            "label": finishing.label(self.cutting.label, self.system),
            "suggested": [self._suggestion(one) for one in quilt.quilting],
            "quilting": quilting(self.evidence.quilting, self.system.bolt_unit)
            if self.full
            else None,
        }

    def _number(self, value: Exact | Rational) -> str:
        return plain(value, self.system.unit == "cm")

    def _at(self, place: Place | None) -> str | None:
        if place is None:
            return None
        return str(replace(place, file=PurePath(place.file).name) if self.bare else place)

    def _figure(self, value: Exact | Rational, *key: str) -> Figure:
        """A length, with its standing; one that nothing states was worked out."""
        standing = self.quilt.standings.get(key)
        status: Status = standing.status if standing else "worked out"
        kind: Kind = standing.kind if standing else "exact"
        place = standing.at if standing else None
        figure: Figure = {
            "value": self._number(value),
            "status": status,
            "ways": standing.ways if standing else 1,
            "class": kind,
            "at": self._at(place),
        }
        exact = Exact.of(value)
        if not exact.rational:
            figure["exact"] = repr(exact)
        return figure

    def _sides(self, sides: Sides, *key: str) -> SidesRecord:
        return {
            "across": self._figure(sides.across, *key, "across"),
            "down": self._figure(sides.down, *key, "down"),
        }

    def _count(self, value: int, stated: int | None, key: str, piece: Piece, kind: Kind) -> Figure:
        """A whole number that the author may have stated beside the piece."""
        place = piece.key_places.get(key)
        return {
            "value": str(value),
            "status": "worked out" if stated is None else "agrees",
            "ways": 1 if stated is None else 2,
            "class": kind,
            "at": self._at(place),
        }

    def _piece(self, piece: Piece) -> PieceRecord:
        plan = self.cutting.letters.get(piece.letter)
        cut: dict[Literal["across", "down"], Figure] = {
            "across": self._figure(piece.cut.across, "pieces", piece.letter, "cut", "across")
        }
        if piece.cut.down is not None:
            cut["down"] = self._figure(piece.cut.down, "pieces", piece.letter, "cut", "down")
        strips = plan.own if plan else 0
        return {
            "fabric": piece.fabric,
            "cut": cut,
            "finished": self._sides(piece.finished, "pieces", piece.letter, "finished"),
            "count": self._count(piece.count, piece.stated_count, "count", piece, "exact"),
            "mirrored": piece.mirrored,
            "squares": plan.cuts if plan and piece.diagonal else None,
            "own_strips": self._count(strips, piece.stated_strips, "strips", piece, "at least"),
        }

    def _unit(self, unit: Unit) -> UnitRecord:
        made = unit.made if isinstance(unit.made, StripSetMade) else None
        make = self._figure(unit.make, "units", unit.name, "make")
        return {
            "method": unit.method,
            "measure": self._sides(unit.measure, "units", unit.name, "measure"),
            "finished": self._sides(unit.finished, "units", unit.name, "finished"),
            "make": make,
            "sets": made.sets if made else None,
            "segments": unit.make if made else None,
            "segment": self._number(made.segment) if made else None,
            "per_set": made.per_set if made else None,
        }

    def _row(self, line: Line) -> RowRecord:
        return {
            "role": line.role,
            "parts": [placed.part for placed in line.parts],
            "across": self._number(line.across),
            "down": self._number(line.down),
        }

    def _border(self, border: Border) -> BorderRecord:
        return {
            "number": border.number,
            "side": border.side,
            "end": border.end,
            "first": border.first,
            "corners": border.corners,
            "stones": border.stones,
            "side_length": self._number(border.side_length),
            "end_length": self._number(border.end_length),
            "measure": self._size(border.after),
        }

    def _size(self, size: CutSize | Sides) -> SizeRecord:
        down = None if size.down is None else self._number(size.down)
        return {"across": self._number(size.across), "down": down}

    def _material(self, plan: FabricPlan) -> MaterialRecord:
        buy, fabric = plan.buy, self.quilt.fabrics.get(plan.fabric)
        return {
            "form": plan.form,
            "size": self._size(fabric.size) if fabric and fabric.size else None,
            "style": plan.style,
            "strips": [
                {
                    "width": self._number(strip.width),
                    "length": self._number(strip.length),
                    "times": strip.times,
                    "yields": {letter: strip.pieces(letter) for letter in strip.letters},
                }
                for strip in plan.strips
            ],
            "length": self._number(plan.length),
            "bound": self._number(plan.bound),
            "proven": plan.proven,
            "limit_hit": plan.limit_hit,
            "number_bound": plan.number_bound,
            "others": [self._other(one) for one in plan.others],
            "instead": [self._instead(one) for one in plan.instead],
            "narrower": [
                {
                    "width": self._number(one.width),
                    "buy": self._amount(one.amount),
                    "holds": one.holds,
                }
                for one in plan.narrower
            ],
            "one_way": self._amount(plan.one_way),
            "on_trust": on_trust(fabric) if fabric else None,
            "least_width": None if plan.least_width is None else self._number(plan.least_width),
            "buy": _bought(buy),
            "packs": buy.packs,
            "pieces_of_a_pack": buy.number,
            "spare": self._number(buy.spare if buy.amount is not None else buy.spare_precuts or 0),
            "prints": fabric.prints if fabric else 1,
            "seed": fabric.seed if fabric else 1,
        }

    def _amount(self, amount: Fraction | None) -> str | None:
        return None if amount is None else self._number(amount)

    def _other(self, one: OtherStyle) -> OtherStyleRecord:
        return {
            "style": one.style,
            "length": self._number(one.length),
            "bound": self._number(one.bound),
            "proven": one.proven,
            "buy": self._amount(one.amount),
            "pieces_of_a_pack": one.number,
        }

    def _instead(self, one: Instead) -> InsteadRecord:
        return {
            "form": one.form,
            "size": self._size(one.size) if one.size else None,
            "number": one.number,
            "bound": one.bound,
            "packs": one.packs,
            "buy": self._amount(one.amount),
        }

    def _web(self, plan: WebPlan) -> WebRecord:
        return {
            "width": self._number(plan.width),
            "margin": self._number(plan.margin),
            "rows": [
                {"times": row.times, "down": self._number(row.down), "shapes": dict(row.shapes)}
                for row in plan.rows
            ],
            "shapes": dict(Counter(box.letter for box in plan.boxes)),
            "length": self._number(plan.length),
            "buy": _bought(plan.buy),
            "spare": self._number(plan.buy.spare),
        }

    def _suggestion(self, one: Quilting) -> SuggestionRecord:
        spacing = None if one.spacing is None else self._number(one.spacing)
        return {"area": one.area, "design": one.design, "spacing": spacing}


def _bought(buy: Buy) -> BuyRecord | None:
    if buy.amount is None:
        return None
    metres = None if buy.metres is None else plain(buy.metres, decimals=True)
    return {"amount": plain(buy.amount, buy.unit == "m"), "unit": buy.unit, "metres": metres}
