"""Cut apart: a block that is sewn, then cut into equal parts."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Final

from patternbook.linear import Sum
from patternbook.methods import cut_apart_told, pieced
from patternbook.methods.cut_apart_parts import Cutting, check, part_of
from patternbook.methods.fields import Count, Part
from patternbook.methods.form import MethodForm
from patternbook.methods.made import Taking, Turn
from patternbook.methods.pieced import NOUGHT, PiecedWork, Sewn
from patternbook.methods.reading import EachSize
from patternbook.methods.world import Span, Tally, Term, World
from patternbook.methods.written import WrittenMade
from patternbook.value import every, whole

# More parts than this are no block any more.
MOST: Final = 12


class WrittenCutApart(WrittenMade):
    """How many parts it is cut into, across and down."""

    called: ClassVar = "a block cut apart"
    from_: EachSize[Part]
    across: EachSize[Count] = every(whole(1))
    down: EachSize[Count] = every(whole(1))


class CutApartWork(PiecedWork[WrittenCutApart]):
    """Every part is an equal share of the block from raw edge to raw edge."""

    written = WrittenCutApart

    def equations(self, name: str, unit: WrittenCutApart, world: World) -> tuple[Tally, Tally]:
        """A share of the raw block, less two seams."""
        source, (columns, rows) = pieced.one(unit.from_, world), _parts(name, unit, world)
        if not world.is_unit(source):
            _no_block(name, source, unit, world)
        span = world.span(source, Turn(), unit.place)
        return (
            _share(name, source, span.across, columns, world, unit),
            _share(name, source, span.down, rows, world, unit),
        )

    def sewn(self, name: str, unit: WrittenCutApart, world: World) -> Sewn:
        """Measured from the seams, cut down, then across."""
        cutting, seam = _cutting(name, unit, world), world.length(world.seam)
        parts = [
            part_of(cutting, column, row, seam)
            for row in range(cutting.rows)
            for column in range(cutting.columns)
        ]
        check(name, unit.place, cutting, parts, world)
        return Sewn(
            word="cut part",
            takes=(Taking(cutting.source, 1),),
            placed=parts[0],
            seams=(),
            actions=cut_apart_told.actions(
                cutting.source,
                (cutting.wide, cutting.high),
                (cutting.columns, cutting.rows),
                (
                    cut_apart_told.beside(cutting.patches, cutting.down, upright=True),
                    cut_apart_told.beside(cutting.patches, cutting.across, upright=False),
                ),
                seam,
            ),
            stitched=0,
            length=NOUGHT,
            gives=cutting.columns * cutting.rows,
        )


def _parts(name: str, unit: WrittenCutApart, world: World) -> tuple[int, int]:
    """How many parts across and down; told where it is not cut at all, or into crumbs."""
    columns = world.number(unit.across, f"{name}: across", least=1) or 1
    rows = world.number(unit.down, f"{name}: down", least=1) or 1
    if columns * rows == 1 or max(columns, rows) > MOST:
        message = f"'{name}' is cut into {columns} × {rows} parts."
        hint = f"Write `across: 2` and `down: 2`; {MOST} each way is the most."
        world.error("cut-apart-parts", "R8", message, unit.place, hint)
        world.hopeless(name)
        return 1, 1
    return columns, rows


def _no_block(name: str, source: str, unit: WrittenCutApart, world: World) -> None:
    message = f"'{name}' is cut from {source or 'nothing'}, which is not a unit that is sewn."
    hint = "Name the block that is sewn first; a piece is cut to its size in `pieces`."
    world.error("cut-apart-piece", "R10", message, unit.place, hint)
    world.hopeless(name)


def _share(
    name: str, source: str, side: Sum, parts: int, world: World, unit: WrittenCutApart
) -> Tally:
    raw = (side + world.seam * 2) * Fraction(1, parts)
    words = f"{source} raw ÷ {parts}" if parts > 1 else f"{source} raw"
    less = Term("less two seams", 1, world.seam * -2)
    return Tally(name, (Term(words, 1, raw), less), unit.place)


def _cutting(name: str, unit: WrittenCutApart, world: World) -> Cutting:
    source, (columns, rows) = pieced.one(unit.from_, world), _parts(name, unit, world)
    span: Span = world.span(source, Turn(), unit.place)
    across, down = world.length(span.across), world.length(span.down)
    seams = world.length(world.seam) * 2
    return Cutting(
        source,
        across,
        down,
        (across + seams) / columns,
        (down + seams) / rows,
        columns,
        rows,
        world.patches_of(source),
    )


METHOD: Final = MethodForm("cut apart", WrittenCutApart, CutApartWork())
