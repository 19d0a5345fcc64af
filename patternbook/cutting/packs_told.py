"""What there is to tell of the packs of pre-cuts, and of the quarters and panels sold singly."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.cutting.cloth import form_of
from patternbook.cutting.records import Buy
from patternbook.cutting.told import Told, spare_severity, times
from patternbook.notice import Notice, Severity
from patternbook.quilt.records import Fabric, Quilt


def pack_notices(quilt: Quilt, fabric: Fabric, buy: Buy) -> Iterator[Notice]:
    """The packs that are stated against the pieces that are cut from them."""
    number_of, stated = buy.number or 0, fabric.stated_packs
    form = form_of(fabric)
    one, many = form.one, form.many
    pack = pack_of(fabric)
    place = fabric.key_places.get("packs")
    counted = f"{fabric.name}: {times(number_of, one, many)} are needed"
    if pack is None:
        hint = "State `pack`, or let the reader count what is in the packet."
        message = f"{counted}; how many a pack holds is not stated."
        yield Told("pack-unknown", "R21", place, fabric.place, hint).notice(
            quilt, "advice", message
        )
        return
    least = -(-number_of // pack)
    if stated is not None and stated < least:
        short = number_of - stated * pack
        packed = f"{times(stated, 'pack')} of {pack} {'hold' if stated > 1 else 'holds'} "
        gives = f"{stated} stated" if pack == 1 else packed + str(stated * pack)
        message = f"{counted}; {gives}, short by {short}."
        hint = f"Buy {least}." if pack == 1 else f"Buy {times(least, 'pack')}."
        figures = (str(stated), str(least))
        # How many come off one quarter or panel is what a layout says (R6), not a sum of packs.
        rule = "R6" if pack == 1 and form.sold == "singly" else "R21"
        yield Told("packs-short", rule, place, fabric.place, hint).notice(
            quilt, "error", message, *figures, mend=True
        )
    elif stated is not None and stated > least and number_of:
        severity: Severity = spare_severity(stated, least)
        one_pack = one if pack == 1 else "pack"
        message = f"{counted}; {times(stated, one_pack)} stated, {stated - least} spare."
        figures = (str(stated), str(least))
        yield Told("spare-packs", "R21", place, fabric.place).notice(
            quilt, severity, message, *figures
        )
    elif pack > 1 and not buy.spare_precuts and number_of:
        message = f"{counted}, exactly {times(least, 'pack')} of {pack}. There is none to spare."
        yield Told("exact-packs", "R21", place, fabric.place).notice(quilt, "advice", message)


def pack_of(fabric: Fabric) -> int | None:
    """How many are in one pack: quarters, eighths and panels are sold singly too."""
    return fabric.pack or (1 if form_of(fabric).sold == "singly" else None)
