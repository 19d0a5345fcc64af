"""Tables that were typed by hand: every cell from the same sum, yields in whole rows, and lengths
of cloth that are never rounded up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from patternbook.inch import CENTIMETRES, INCHES_A_CENTIMETRE, System, plain, printed, size
from patternbook.notice import Edit, Mark, Notice
from patternbook.proof.one_square import most_on
from patternbook.quilt.heading import ChartRow, Heading
from patternbook.quilt.records import CutSize

EIGHTH: Final = Fraction(1, 8)
TENTH: Final = Fraction(1, 10)
HALF: Final = Fraction(1, 2)


@dataclass(frozen=True)
class _Cell:
    """What is wrong with one cell."""

    key: str
    rule: str
    stated: str
    needed: str
    message: str


def charts(heading: Heading, system: System) -> Iterator[Notice]:
    """An error for every cell that its own row contradicts."""
    for row in heading.charts:
        for cell in (*_lengths(row, system), *_pairs(row, system), *_yields(row, system)):
            yield _told(row, cell)


def _told(row: ChartRow, cell: _Cell) -> Notice:
    marks = (Mark(row.places.get(cell.key, row.places["row"]), "stated here"),)
    return Notice(
        "chart-length" if cell.key in {"inches", "cm", "metres"} else "chart-yield",
        "error",
        "proof",
        f"chart '{row.chart}': {cell.message}",
        marks,
        cell.rule,
        (),
        cell.stated,
        cell.needed,
        f"Write {cell.needed}.",
        (Edit(marks[0].place, cell.stated, cell.needed),),
    )


def _lengths(row: ChartRow, system: System) -> Iterator[_Cell]:
    """A length of cloth told in inches or centimetres: exact, or rounded down to the ruler."""
    metric = system is CENTIMETRES
    inches = row.length * INCHES_A_CENTIMETRE if metric else row.length
    for key, stated, exact, step in (
        ("inches", row.inches, inches, EIGHTH),
        ("cm", row.cm, inches / INCHES_A_CENTIMETRE, TENTH),
    ):
        if stated is None or not row.length:
            continue
        least = exact // 1 if exact % step else exact // step * step
        if not least <= stated <= exact:
            decimals = key == "cm"
            best = exact // step * step
            message = (
                f"{row.of} is {printed(best, decimals)} {_unit(key)} long; "
                f"{printed(stated, decimals)} is stated."
            )
            yield _Cell(key, "R17", plain(stated, decimals), plain(best, decimals), message)


def _pairs(row: ChartRow, system: System) -> Iterator[_Cell]:
    """The same length in two units: inches beside centimetres, yards beside metres. Either may
    be rounded, as conversion tables are: to half a centimetre, to a tenth of a metre."""
    if not row.length and row.inches is not None and row.cm is not None:
        exact, told = row.inches / INCHES_A_CENTIMETRE, f"{plain(row.inches)} in"
        yield from _pair("cm", row.cm, exact, HALF, (exact + TENTH / 2) // TENTH * TENTH, told)
    if row.metres is not None:
        a_metre = 100 if system is CENTIMETRES else 100 * INCHES_A_CENTIMETRE
        exact = row.length / a_metre
        yield from _pair("metres", row.metres, exact, TENTH, -(-exact // TENTH) * TENTH, row.of)


def _pair(
    key: str, stated: Fraction, exact: Fraction, step: Fraction, best: Fraction, told: str
) -> Iterator[_Cell]:
    if abs(stated - exact) >= step:
        unit = "cm" if key == "cm" else "m"
        shown, typed = printed(stated, decimals=True), plain(best, decimals=True)
        message = f"{told} is {float(exact):.2f} {unit}; {shown} is stated."
        yield _Cell(key, "R17", plain(stated, decimals=True), typed, message)


def _unit(key: str) -> str:
    return "inches" if key == "inches" else "cm"


def _yields(row: ChartRow, system: System) -> Iterator[_Cell]:
    """How many pieces lie side by side, in how many rows, and how many that is."""
    if row.cut is None or row.cut.down is None or not row.length:
        return
    across, down = row.width // row.cut.across, row.length // row.cut.down
    cut = size(row.cut.across, row.cut.down, system)
    cloth = f"{row.of}, {printed(row.width, system is CENTIMETRES)} wide"
    for key, stated, fits in (("across", row.across, across), ("down", row.down, down)):
        if stated is not None and stated != fits:
            word = "side by side" if key == "across" else "one below the other"
            message = f"of {cut} {fits} lie {word} on {cloth}; {stated} is stated."
            yield _Cell(key, "R9", str(stated), str(fits), message)
    whole = across * down
    if "from" in row.places:  # a quarter or a square may be laid either way
        whole = most_on(CutSize(row.width, row.length), row.cut)
    if row.gives is not None and row.gives != whole:
        sum_of = f"{across} × {down} = {whole}" if across * down == whole else f"{whole}"
        message = f"{cloth}, gives {sum_of} of {cut}; {row.gives} is stated."
        yield _Cell("gives", _rule(row, down, across), str(row.gives), str(whole), message)


def _rule(row: ChartRow, down: int, across: int) -> str:
    """Of a quarter or a square it is whether the cuts fit. Whole rows of more pieces than the
    stated width holds come from another width than the heading's."""
    if "from" in row.places:
        return "R6"
    gives = row.gives or 0
    if row.across is not None and row.down is not None:  # a product of printed factors
        return "R9"
    return "R20" if down and gives % down == 0 and gives // down > across else "R9"
