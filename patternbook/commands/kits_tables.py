"""The kits as tables for people, made from the record that programs get."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from patternbook.commands.tables import table

if TYPE_CHECKING:
    from patternbook.edition.figures_record import BuyRecord, SizeRecord
    from patternbook.edition.kits_record import (
        BagRecord,
        KitBuyRecord,
        KitCutRecord,
        KitsRecord,
        KitStripRecord,
    )

Rows = Sequence[Sequence[str]]


def tables(record: KitsRecord) -> str:
    """Cloth, cutting plan, bag and class list."""
    unit = "inches" if record["unit"] == "in" else "centimetres"
    kits = _counted(record["kits"], "kit")
    head = (
        f"{record['pattern']}, revision {record['revision']}, size {record['size']}: {kits}; "
        f"lengths in {unit}"
    )
    bought = ("buy", "form", f"for {kits}", "in metres", "for one kit", "length used", "spare")
    parts = [
        head,
        table(bought, [*_materials(record), *_webs(record), *_layers(record)]),
        table(
            ("cut from", "width", "strips", "each strip gives", "in all"),
            [*_strips(record)],
        ),
        *_sheets(record),
        table(
            ("bag", "in one bag", "cloth", "cut size", f"in {kits}"),
            [_bag(line) for line in record["bag"]],
        ),
        *_class(record),
    ]
    return "\n\n".join(part for part in parts if part)


def _counted(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _materials(record: KitsRecord) -> Iterator[Sequence[str]]:
    for cloth, plan in record["materials"].items():
        yield (
            cloth or "(no cloth named)",
            f"{plan['form']}, {plan['style']} cutting",
            _bought(plan["all"]),
            _metres(plan["all"]["buy"]),
            _bought(plan["one"]),
            plan["length"],
            plan["all"]["spare"],
        )


def _webs(record: KitsRecord) -> Iterator[Sequence[str]]:
    for name, plan in record["webs"].items():
        metres, spare = _metres(plan["all"]["buy"]), plan["all"]["spare"]
        single = _bought(plan["one"])
        yield name, "web", _bought(plan["all"]), metres, single, "-", spare


def _layers(record: KitsRecord) -> Iterator[Sequence[str]]:
    """The backing where no cloth of the pattern is named for it, and the batting."""
    backing, batting = record["backing"], record["batting"]
    if backing and backing["fabric"] not in record["materials"]:
        many, single = backing["all"], backing["one"]
        yield "backing", "-", _off(many), _metres(many), _off(single), "-", "-"
    if batting:
        size = _size(batting["size"])
        yield "batting", "-", f"{batting['number']} of {size}", "-", f"1 of {size}", "-", "-"


def _bought(plan: KitBuyRecord) -> str:
    if plan["buy"]:
        return _off(plan["buy"])
    pieces = _counted(plan["pieces"] or 0, "piece")
    return pieces if plan["packs"] is None else f"{_counted(plan['packs'], 'pack')} ({pieces})"


def _off(buy: BuyRecord) -> str:
    return f"{buy['amount']} {buy['unit']}"


def _metres(buy: BuyRecord | None) -> str:
    return (buy["metres"] if buy else None) or "-"


def _size(size: SizeRecord) -> str:
    return f"{size['across']} x {size['down'] or 'WOF'}"


def _strips(record: KitsRecord) -> Iterator[Sequence[str]]:
    for cloth, plan in record["materials"].items():
        for strip in plan["strips"]:
            row = cloth or "-", _width(strip), str(strip["times"]), _gives(strip), _every(strip)
            yield row


def _width(strip: KitStripRecord) -> str:
    along = " along the selvedge" if strip["along"] == "length" else ""
    return f"{strip['width']}{along}{' beside it' if strip['beside'] else ''}"


def _gives(strip: KitStripRecord) -> str:
    if not strip["cuts"]:
        return "to spare"
    if strip["joined"]:
        return f"{', '.join(strip['all'])}, once they are joined"
    if any(cut["whole"] for cut in strip["cuts"]):
        return f"{', '.join(strip['all'])}, whole"
    return ", ".join(_cut(cut, 1) for cut in strip["cuts"])


def _every(strip: KitStripRecord) -> str:
    if any(cut["use"] and not cut["whole"] for cut in strip["cuts"]) and not strip["joined"]:
        return ", ".join(_cut(cut, strip["times"]) for cut in strip["cuts"])
    return ", ".join(f"{number} {letter}" for letter, number in strip["all"].items()) or "-"


def _cut(cut: KitCutRecord, times: int) -> str:
    """`4 A`; lengths of a strip letter by their length."""
    told = f"{cut['number'] * times} {cut['letter']}"
    return f"{told} of {cut['along']}" if cut["use"] else told


def _sheets(record: KitsRecord) -> Iterator[str]:
    """How strips lie in pre-cut pieces."""
    rows: Rows = [
        (
            cloth,
            str(sheet["times"]),
            ", ".join(
                f"{times} of {plan['strips'][place]['width']}" for place, times in sheet["rows"]
            ),
            "along its length" if sheet["turned"] else "across it",
        )
        for cloth, plan in record["materials"].items()
        for sheet in plan["sheets"]
    ]
    yield table(("pre-cut", "pieces", "strips in each", "they lie"), rows)


def _bag(line: BagRecord) -> Sequence[str]:
    number = {"patches": "", "lengths": "", "strips": " strips"}[line["kind"]]
    size = _size(line["size"])
    if line["diagonal"]:
        number, size = " triangles", f"{size}, cut {line['diagonal']} on the diagonal"
    if line["join"]:
        size += ", to be joined"
    letter, cloth = line["letter"], line["fabric"] or "-"
    return letter, f"{line['number']}{number}", cloth, size, str(line["all"])


def _class(record: KitsRecord) -> Iterator[str]:
    words = record["class"]
    yield _list("each student brings", words["brings"])
    yield _list("for finishing at home, if it is not in the kit", words["finish"])
    yield _list("without a kit, before the class", words["before"])
    yield _list("the teacher prepares", words["prepares"])


def _list(head: str, items: Sequence[str]) -> str:
    return "\n".join([f"{head}:", *(f"  - {item}" for item in items)]) if items else ""
