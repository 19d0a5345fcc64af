"""Of a pattern that is in print: what its reader needs, and it does not say."""

from __future__ import annotations

from collections.abc import Iterator

from patternbook.notice import Notice, Place, Severity
from patternbook.proof.again import typed
from patternbook.proof.evidence import Evidence
from patternbook.proof.recounted import recounted
from patternbook.quilt.records import CutSize, Fabric, Quilt, Unit


def not_stated(evidence: Evidence) -> Iterator[Notice]:
    """Errors for an amount, a cut or a size to check that is nowhere stated."""
    if not evidence.quilt.printed:
        return
    yield from _general(evidence.quilt)
    yield from _fabrics(evidence)
    yield from _pieces(evidence.quilt)
    yield from _units(evidence.quilt)
    yield from _finishing(evidence)


def _missing(
    quilt: Quilt,
    what: str,
    needed: str,
    place: Place | None,
    key: str,
    severity: Severity = "error",
) -> Notice:
    message = f"{what} is nowhere stated; it comes to {needed}."
    hint = f"Write `{key}: {needed}`."
    figures = ("nothing", needed)
    rule = "R10"
    return recounted(
        quilt, "not-stated", rule, message, place, figures=figures, hint=hint, severity=severity
    )


def _general(quilt: Quilt) -> Iterator[Notice]:
    if "seam" not in quilt.key_places:
        seam = typed(quilt.seam, quilt)
        yield _missing(quilt, "the seam allowance", seam, quilt.place, "seam", "warning")
    stated = ("sizes", "finished", "across") in quilt.standings
    if quilt.top and quilt.finished and not stated:
        size = typed(CutSize(*(side.up(quilt.system.step) for side in quilt.finished)), quilt)
        yield _missing(quilt, "the finished size of the quilt", size, quilt.place, "finished")


def _fabrics(evidence: Evidence) -> Iterator[Notice]:
    quilt = evidence.quilt
    for name, plan in evidence.cutting.fabrics.items():
        fabric = quilt.fabrics.get(name)
        if fabric is None:
            continue
        if plan.buy.packs is not None and fabric.stated_packs is None:
            what = f"how many packs of {name} are bought"
            yield _missing(quilt, what, str(plan.buy.packs), fabric.place, "packs")
        elif plan.buy.amount is not None and not _amount(fabric):
            key = "yards" if plan.buy.unit == "yd" else "metres"
            needed = typed(plan.buy.amount, quilt)
            yield _missing(quilt, f"how much of {name} is bought", needed, fabric.place, key)


def _amount(fabric: Fabric) -> bool:
    return fabric.stated_yards is not None or fabric.stated_metres is not None


def _pieces(quilt: Quilt) -> Iterator[Notice]:
    for letter, piece in quilt.pieces.items():
        if piece.template is None and not {"cut", "finished"} & set(piece.key_places):
            what = f"the size that {letter} is cut"
            yield _missing(quilt, what, typed(piece.cut, quilt), piece.place, "cut")


def _units(quilt: Quilt) -> Iterator[Notice]:
    """A size to check each unit by; of those inside other units it is only worth knowing."""
    inner = {part for unit in quilt.units.values() if unit.name != quilt.top for part in unit.uses}
    for name, unit in quilt.units.items():
        if name == quilt.top or _checked(unit, quilt):
            continue
        step = quilt.system.step
        size = typed(CutSize(*((side + step / 2).down(step) for side in unit.finished)), quilt)
        severity: Severity = "advice" if name in inner else "error"
        what = f"how large {name} is, to check it by,"
        yield _missing(quilt, what, size, unit.place, "finished", severity)


def _checked(unit: Unit, quilt: Quilt) -> bool:
    keys = (("units", unit.name, figure, "across") for figure in ("measure", "finished"))
    return any(key in quilt.standings for key in keys)


def _finishing(evidence: Evidence) -> Iterator[Notice]:
    quilt, plan = evidence.quilt, evidence.cutting
    binding, backing = quilt.binding, quilt.backing
    if binding and plan.binding and plan.binding.square:
        if not {"square", "length"} & set(binding.places):
            side = typed(CutSize(plan.binding.square, plan.binding.square), quilt)
            place = next(iter(binding.places.values()), quilt.place)
            yield _missing(quilt, "how large a square the bias is cut from", side, place, "square")
    elif binding and plan.binding and not {"strips", "length"} & set(binding.places):
        strips, place = str(plan.binding.strips), next(iter(binding.places.values()), quilt.place)
        yield _missing(quilt, "how many strips of binding are cut", strips, place, "strips")
    written = "backing" in quilt.key_places
    if backing and written and plan.backing and "size" not in backing.places:
        cloth = quilt.fabrics.get(backing.fabric or "")
        if cloth is None or not _amount(cloth):
            size = typed(plan.backing.size, quilt)
            place = next(iter(backing.places.values()), quilt.place)
            yield _missing(quilt, "how large the backing is", size, place, "size")
