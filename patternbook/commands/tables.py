"""The figures of a pattern as tables for people, made from the record that programs get."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from patternbook.edition.figures_record import (
        Figure,
        FiguresRecord,
        MaterialRecord,
        PieceRecord,
        SidesRecord,
        SizeFigures,
        SizeRecord,
        UnitRecord,
        WebRecord,
    )

GAP: Final = "  "
STANDING: Final = {
    "given": "given",
    "worked out": "worked out",
    "agrees": "agrees",
    "on trust": "TAKEN ON TRUST",
}


def tables(record: FiguresRecord) -> str:
    """All sizes, one after the other."""
    unit = "inches" if record["unit"] == "in" else "centimetres"
    head = f"{record['pattern']}, revision {record['revision']}; lengths in {unit}"
    return "\n".join([head, *(_size(name, size) for name, size in record["sizes"].items())])


def _size(name: str, size: SizeFigures) -> str:
    parts = [
        f"\n{name.upper()}{_finished(size)}",
        table(
            ("cut", "cloth", "cut size", "finished", "count", "own strips", "of these"),
            [_piece(letter, piece) for letter, piece in size["pieces"].items()],
        ),
        table(
            ("sew", "method", "measures", "finished", "make", "sets", "size is"),
            [_unit(unit_name, unit) for unit_name, unit in size["units"].items()],
        ),
        table(
            ("buy", "form", "to buy", "in metres", "length used", "spare", "least width"),
            [_material(cloth, plan) for cloth, plan in size["materials"].items()],
        ),
        table(
            ("web", "width", "to buy", "in metres", "length used", "spare", "shapes"),
            [_web(name, plan) for name, plan in size["webs"].items()],
        ),
        *_around(size),
    ]
    return "\n\n".join(part for part in parts if part)


def _finished(size: SizeFigures) -> str:
    words = f"{size['patches']} patches, {size['seams_to_match']} places where seams must meet"
    if size["finished"] is None:
        return f": a fragment; {words}"
    return f": finished {_sides(size['finished'])} ({_standing(size['finished'])}); {words}"


def _piece(letter: str, piece: PieceRecord) -> Sequence[str]:
    across, down = piece["cut"]["across"]["value"], piece["cut"].get("down")
    squares = f" ({piece['squares']} squares)" if piece["squares"] is not None else ""
    mirrored = f" ({piece['mirrored']} mirrored)" if piece["mirrored"] else ""
    standings = dict.fromkeys(STANDING[side["status"]] for side in piece["cut"].values())
    return (
        letter,
        piece["fabric"] or "-",
        f"{across} x {down['value'] if down else 'WOF'}",
        _sides(piece["finished"]) if down else piece["finished"]["across"]["value"],
        f"{piece['count']['value']}{squares}{mirrored}" if down else "-",
        piece["own_strips"]["value"],
        ", ".join(standings),
    )


def _unit(name: str, unit: UnitRecord) -> Sequence[str]:
    return (
        name,
        unit["method"],
        _sides(unit["measure"]),
        _sides(unit["finished"]),
        unit["make"]["value"],
        "-" if unit["sets"] is None else f"{unit['sets']}, {unit['per_set']} slices each",
        _standing(unit["measure"]),
    )


def _material(cloth: str, plan: MaterialRecord) -> Sequence[str]:
    buy = plan["buy"]
    return (
        cloth or "(no cloth named)",
        plan["form"],
        f"{buy['amount']} {buy['unit']}" if buy else _packs(plan),
        (buy["metres"] if buy else None) or "-",
        plan["length"],
        plan["spare"],
        plan["least_width"] or "-",
    )


def _web(name: str, plan: WebRecord) -> Sequence[str]:
    buy = plan["buy"]
    return (
        name,
        plan["width"],
        f"{buy['amount']} {buy['unit']}" if buy else "-",
        (buy["metres"] if buy else None) or "-",
        plan["length"],
        plan["spare"],
        ", ".join(f"{number} {letter}" for letter, number in plan["shapes"].items()),
    )


def _packs(plan: MaterialRecord) -> str:
    pieces = f"{plan['pieces_of_a_pack']} pieces"
    return pieces if plan["packs"] is None else f"{plan['packs']} packs ({pieces})"


def _around(size: SizeFigures) -> Iterable[str]:
    """Borders, backing, batting and binding, a line each."""
    lines = [
        f"border {one['number']}: sides {one['side']} {one['side_length']}, ends {one['end']} "
        f"{one['end_length']}, then {_plain(one['measure'])}"
        for one in size["borders"]
    ]
    if backing := size["backing"]:
        buy = backing["buy"]
        lines.append(
            f"backing: {_plain(backing['size'])}, {backing['panels']} panels, seams "
            f"{backing['seams']}, {buy['amount']} {buy['unit']}"
        )
    if batting := size["batting"]:
        pack = f", from a pack of {_plain(batting['pack'])}" if batting["pack"] else ""
        lines.append(
            f"batting: {_plain(batting['size'])}{pack}; quilting no more than "
            f"{batting['limit']} apart ({batting['limit_source']})"
        )
    if binding := size["binding"]:
        lines.append(
            f"binding: {binding['strips']} strips of {binding['fabric']}, {binding['joins']} "
            f"joins, {binding['length']} needed, {binding['made']} made"
        )
    return ["\n".join(lines)]


def _sides(sides: SidesRecord) -> str:
    return f"{_rounded(sides['across'])} x {_rounded(sides['down'])}"


def _rounded(figure: Figure) -> str:
    """The value; one with a root in it is marked as not exact."""
    return ("~" if "exact" in figure else "") + figure["value"]


def _plain(size: SizeRecord) -> str:
    return f"{size['across']} x {size['down'] or 'WOF'}"


def _standing(sides: SidesRecord) -> str:
    return ", ".join(
        dict.fromkeys(STANDING[side["status"]] for side in (sides["across"], sides["down"]))
    )


def table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Columns as wide as their widest cell; nothing where there are no rows."""
    if not rows:
        return ""
    widths = [max(map(len, column)) for column in zip(head, *rows, strict=True)]
    lines = [head, ["-" * width for width in widths], *rows]
    return "\n".join(
        GAP.join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    )
