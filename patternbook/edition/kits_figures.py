"""The kits of one size as a record for programs."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from patternbook.booklet.book import Book
from patternbook.booklet.kits.book import KitBook
from patternbook.booklet.kits.lesson import lesson
from patternbook.cutting.kits_bag import Bagged
from patternbook.cutting.records import Buy, Cut, FabricPlan, Sheet, Strip, WebPlan
from patternbook.edition.figures_record import BuyRecord, SizeRecord
from patternbook.edition.kits import Kits
from patternbook.edition.kits_record import (
    BagRecord,
    ClassRecord,
    KitBackingRecord,
    KitBattingRecord,
    KitBuyRecord,
    KitCutRecord,
    KitMaterialRecord,
    KitSheetRecord,
    KitsRecord,
    KitStripRecord,
    KitWebRecord,
)
from patternbook.inch import plain
from patternbook.quilt.records import CutSize

FORMAT: Final = 1


def kits_figures(kits: Kits) -> KitsRecord:
    """The record."""
    return _Kits(kits).record()


class _Kits:
    """The figures of so many kits."""

    def __init__(self, kits: Kits) -> None:
        self.kits = kits
        self.quilt = kits.known.quilt
        self.one, self.all = kits.plan.one, kits.plan.all
        book = Book(kits.heading, {self.quilt.size: kits.known}, {}, "a4")
        self.book = KitBook(book, kits.plan)

    def record(self) -> KitsRecord:
        heading = self.kits.heading
        return {
            "format": FORMAT,
            "pattern": heading.pattern,
            "slug": heading.slug,
            "revision": heading.revision,
            "unit": self.quilt.system.unit,
            "size": self.quilt.size,
            "kits": self.kits.plan.number,
            "materials": {name: self._material(plan) for name, plan in self.all.fabrics.items()},
            "webs": {name: self._web(plan) for name, plan in self.all.webs.items()},
            "backing": self._backing(),
            "batting": self._batting(),
            "bag": [self._bag(line) for line in self.book.bag],
            "class": self._class(),
        }

    def _number(self, value: Fraction) -> str:
        return plain(value, self.quilt.system.unit == "cm")

    def _size(self, size: CutSize) -> SizeRecord:
        down = None if size.down is None else self._number(size.down)
        return {"across": self._number(size.across), "down": down}

    def _bought(self, buy: Buy) -> KitBuyRecord:
        spare = buy.spare if buy.amount is not None else Fraction(buy.spare_precuts or 0)
        off_the_bolt = None
        if buy.amount is not None:
            off_the_bolt = _amount(buy.amount, buy.unit, buy.metres)
        return {
            "buy": off_the_bolt,
            "packs": buy.packs,
            "pieces": buy.number,
            "spare": self._number(spare),
        }

    def _material(self, plan: FabricPlan) -> KitMaterialRecord:
        return {
            "form": plan.form,
            "style": plan.style,
            "proven": plan.proven,
            "length": self._number(plan.length),
            "all": self._bought(plan.buy),
            "one": self._bought(self.one.fabrics[plan.fabric].buy),
            "strips": [self._strip(strip) for strip in plan.strips],
            "sheets": [_sheet(sheet) for sheet in plan.sheets],
        }

    def _strip(self, strip: Strip) -> KitStripRecord:
        return {
            "width": self._number(strip.width),
            "length": self._number(strip.length),
            "times": strip.times,
            "along": strip.along,
            "beside": strip.beside,
            "joined": strip.join is not None,
            "cuts": [
                self._cut(one, above=one is not cut) for cut in strip.cuts for one in cut.stacked
            ],
            "all": {letter: strip.pieces(letter) for letter in strip.letters},
        }

    def _cut(self, cut: Cut, *, above: bool) -> KitCutRecord:
        return {
            "letter": cut.letter,
            "number": cut.number,
            "along": self._number(cut.along),
            "across": self._number(cut.across),
            "lanes": cut.lanes,
            "use": cut.use,
            "whole": cut.whole,
            "above": above,
        }

    def _web(self, plan: WebPlan) -> KitWebRecord:
        single = self.one.webs[plan.fabric]
        return {
            "each": self._number(single.length),
            "all": self._bought(plan.buy),
            "one": self._bought(single.buy),
        }

    def _backing(self) -> KitBackingRecord | None:
        many, single = self.all.backing, self.one.backing
        if many is None or single is None:
            return None
        best = single.best
        return {
            "fabric": many.fabric,
            "panels": many.best.panels,
            "each": self._number(best.each),
            "all": _amount(many.best.amount, many.unit, many.best.metres),
            "one": _amount(best.amount, single.unit, best.metres),
        }

    def _batting(self) -> KitBattingRecord | None:
        plan, unit = self.all.batting, self.quilt.system.bolt_unit
        if plan is None:
            return None
        roll = plan.roll
        return {
            "number": self.kits.plan.number,
            "size": self._size(plan.size),
            "pack": self._size(plan.pack) if plan.pack else None,
            "packs": plan.packs if plan.pack else None,
            "roll": _amount(roll.amount, unit, roll.metres) if roll else None,
        }

    def _bag(self, line: Bagged) -> BagRecord:
        return {
            "letter": line.letter,
            "fabric": line.fabric,
            "kind": line.kind,
            "number": line.number,
            "all": line.number * self.kits.plan.number,
            "size": self._size(line.size),
            "diagonal": line.diagonal,
            "join": line.join,
        }

    def _class(self) -> ClassRecord:
        words = lesson(self.book)
        return {
            "brings": list(words.brings),
            "finish": list(words.finish),
            "before": list(words.before),
            "prepares": list(words.prepares),
        }


def _sheet(sheet: Sheet) -> KitSheetRecord:
    rows = [(row.strip, row.times) for row in sheet.rows]
    return {"times": sheet.times, "turned": sheet.turned, "rows": rows}


def _amount(amount: Fraction, unit: str, metres: Fraction | None) -> BuyRecord:
    return {
        "amount": plain(amount, unit == "m"),
        "unit": "m" if unit == "m" else "yd",
        "metres": None if metres is None else plain(metres, decimals=True),
    }
