"""What a pattern that is in print says beside its parts, as records: figures told twice, tables."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from patternbook.inch import CENTIMETRES, INCHES, INCHES_A_CENTIMETRE, plain
from patternbook.methods.world import here
from patternbook.methods.written import hyphenated
from patternbook.quilt.heading import ChartRow
from patternbook.quilt.records import Again, CutSize
from patternbook.quilt.resolve import Resolver
from patternbook.quilt.value_places import value_places
from patternbook.source.printed import WrittenChartRow, WrittenSaid
from patternbook.source.written import WrittenPattern
from patternbook.value import AmountValue, CountValue, CutValue, LengthValue, NameValue, SizeValue

NO_FIGURE = frozenset({"note"})


def again(resolver: Resolver) -> Iterator[Again]:
    """Every figure of this size that stands in a second place."""
    for where, parts in resolver.written.elsewhere.items():
        for part, said in parts.items():
            yield from _figures(str(where), str(part), said, resolver)


def _figures(where: str, part: str, said: WrittenSaid, resolver: Resolver) -> Iterator[Again]:
    places = value_places(said, resolver.size)
    for name in type(said).model_fields:
        figure, stated = hyphenated(name), None if name in NO_FIGURE else getattr(said, name)
        value = here(stated, resolver.size)
        if value is not None:
            found = _value(value, f"{where}: {part}: {figure}", resolver)
            if found is not None:
                yield Again(where, part, figure, found, places.get(figure, said.place))


def _value(value: object, what: str, resolver: Resolver) -> CutSize | Fraction | int | str | None:
    if isinstance(value, CountValue):
        return resolver.whole(value, what)
    if isinstance(value, LengthValue | AmountValue):
        return value.number
    if isinstance(value, SizeValue):
        return CutSize(value.across, value.down)
    if isinstance(value, CutValue):
        down = value.down if isinstance(value.down, Fraction) else None
        return CutSize(value.across, down) if isinstance(value.across, Fraction) else None
    return str(value) if isinstance(value, NameValue) else None


def charts(written: WrittenPattern) -> Iterator[ChartRow]:
    """The rows of every table that was typed."""
    system = CENTIMETRES if written.cm else INCHES
    common = written.width.number if written.width else system.width
    for name, chart in written.charts.items():
        width = chart.width.number if chart.width else common
        for row in chart.rows:
            yield _row(str(name), row, width, cm=written.cm)


def _row(chart: str, row: WrittenChartRow, width: Fraction, *, cm: bool) -> ChartRow:
    yard = 36 / INCHES_A_CENTIMETRE if cm else Fraction(36)
    metre = Fraction(100) if cm else 100 * INCHES_A_CENTIMETRE
    of, length = "nothing", Fraction(0)
    if row.yards is not None:
        of, length = f"{plain(row.yards.number)} yd", row.yards.number * yard
    elif row.metres is not None:
        of, length = f"{plain(row.metres.number, True)} m", row.metres.number * metre
    elif row.from_ is not None:
        of = f"{plain(row.from_.across, cm)} x {plain(row.from_.down, cm)}"
        width, length = row.from_.across, row.from_.down
    return ChartRow(
        chart=chart,
        of=of,
        width=width,
        length=length,
        cut=CutSize(row.cut.across, row.cut.down) if row.cut else None,
        across=int(row.across) if row.across is not None else None,
        down=int(row.down) if row.down is not None else None,
        gives=int(row.gives) if row.gives is not None else None,
        inches=row.inches.number if row.inches else None,
        cm=row.cm.number if row.cm else None,
        metres=row.metres.number if row.metres and row.yards else None,
        places={**value_places(row, ""), "row": row.place},
    )
