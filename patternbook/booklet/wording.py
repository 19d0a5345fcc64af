"""Numbers and names as a quilter reads them: trade fractions, plurals, lists, both sizes named."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Final

from patternbook import inch
from patternbook.exact import Exact, Rational
from patternbook.inch import System, ruler_near
from patternbook.quilt.records import CutSize, Sides

NBSP: Final = "\N{NO-BREAK SPACE}"
NONE: Final = "–"  # stands in a table where a size has nothing to say
WIDTH: Final = "width of fabric"
TEN: Final = Fraction(10)  # thread is told to the next ten yards or metres
NARROW_OR: Final = f"or{NBSP}"  # between an amount in yards and the same in metres
# Counts up to twelve are words (common practice, no source).
_SPELLED: Final = {
    1: "one",
    2: "two",
    3: "three",
    4: "four",
    5: "five",
    6: "six",
    7: "seven",
    8: "eight",
    9: "nine",
    10: "ten",
    11: "eleven",
    12: "twelve",
}
_ODD_PLURALS: Final = {"half": "halves", "patch": "patches", "inch": "inches", "goose": "geese"}
# `2 1/2`, `3/8`, and the letter that stands between the two sides of a size.
_FRACTION: Final = re.compile(r"(?<![\d/.])(?:(\d+) )?(\d+)/(\d+)(?![\d/])", re.ASCII)
_TIMES_SIGN: Final = re.compile(r"([\d½¼¾⅛⅜⅝⅞⅓⅔]) x (\d)")
_TIMES: Final = {1: "once", 2: "twice"}


def glued(text: str) -> str:
    """The text without a place to break the line."""
    return text.replace(" ", NBSP)


def length(number: Exact | Rational, system: System) -> str:
    """`6½″`; a length that no ruler shows is given as the nearest one that it does."""
    exact = Exact.of(number)
    if not inch.legible(exact, system):
        return f"about{NBSP}{glued(inch.length(ruler_near(exact, system), system))}"
    return glued(inch.length(exact, system))


def size(across: Exact | Rational, down: Exact | Rational, system: System) -> str:
    """`6½ × 2½″`: width before length, one mark behind the last number."""
    wide, high = Exact.of(across), Exact.of(down)
    if inch.legible(wide, system) and inch.legible(high, system):
        return glued(inch.size(wide, high, system))
    near = inch.size(ruler_near(wide, system), ruler_near(high, system), system)
    return f"about{NBSP}{glued(near)}"


def sides(of: Sides, system: System) -> str:
    """Width and length of a part."""
    return size(of.across, of.down, system)


def cut_size(cut: CutSize, system: System) -> str:
    """`8½ × 2½″`, or `2½″ × width of fabric` for a strip."""
    if cut.down is None:
        return f"{length(cut.across, system)}{NBSP}× {WIDTH}"
    return size(cut.across, cut.down, system)


def both_sizes(finished: Sides, measure: Sides, system: System) -> str:
    """A unit's size without and with its seam allowances, and which is which."""
    return (
        f"{sides(measure, system)} with seam allowances, "
        f"{sides(finished, system)} finished in the quilt"
    )


def shape(cut: CutSize, diagonal: str | None = None) -> str:
    """What a quilter calls a piece of this size."""
    if diagonal:
        return "triangle"
    if cut.down is None:
        return "strip"
    return "square" if cut.across == cut.down else "rectangle"


def plural(word: str) -> str:
    """The word for several of them."""
    before, _, last = word.rpartition(" ")
    if last in _ODD_PLURALS:
        return f"{before} {_ODD_PLURALS[last]}".strip()
    if word.endswith("y") and word[-2:-1] not in set("aeiou"):
        return f"{word[:-1]}ies"
    return f"{word}es" if word.endswith(("s", "x", "ch", "sh")) else f"{word}s"


def counted(number: int, word: str) -> str:
    """`1 strip`, `6 strips`, never parted."""
    return f"{number}{NBSP}{word if number == 1 else plural(word)}"


def spelled(number: int) -> str:
    """The count as a word up to twelve, beyond that in figures."""
    return _SPELLED.get(number, str(number))


def times(number: int) -> str:
    """`once`, `twice`, `3 times`."""
    return _TIMES.get(number, f"{number}{NBSP}times")


def listed(items: Iterable[str], last: str = "and") -> str:
    """`A, B and C`."""
    words = list(items)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def by_size(values: Mapping[str, str]) -> str:
    """`crib 6, throw 9`; the value alone where all sizes have the same."""
    if len(set(values.values())) == 1:
        return next(iter(values.values()))
    return ", ".join(f"{glued(name)}{NBSP}{value}" for name, value in values.items())


def same(values: Sequence[str]) -> str | None:
    """What all of them say, or None where they differ."""
    return values[0] if len(set(values)) == 1 else None


def amount(number: Fraction, unit: str) -> str:
    """`1¼ yd` or `1.2 m`."""
    return glued(f"{inch.printed(number, decimals=unit == 'm')} {unit}")


def number(value: Exact | Rational, system: System) -> str:
    """A number without its mark, for the inner places of `2½, 3 and 4″`."""
    return glued(inch.printed(value, decimals=system.unit == "cm"))


def lengths(values: Sequence[Exact | Rational], system: System) -> str:
    """`2½, 3 and 4″`: the mark behind the last one."""
    return f"{listed(number(value, system) for value in values)}{glued(system.mark)}"


def between(low: Rational, high: Rational, system: System) -> str:
    """`4 to 6″`."""
    return f"{number(low, system)} to{NBSP}{length(high, system)}"


def capital(text: str) -> str:
    """The text with a capital first letter; the rest as it is."""
    return text[:1].upper() + text[1:]


def title(name: str) -> str:
    """A unit's or a size's name as a heading shows it."""
    return capital(name.replace("-", " "))


def sentence(text: str) -> str:
    """The text as one paragraph that ends with a full stop."""
    words = capital(" ".join(text.split()))
    return words if not words or words[-1] in ".!?:" else f"{words}."


def typeset(text: str) -> str:
    """Sizes that were typed `2 1/2 x 4` as they are printed: `2½ × 4`, not to be parted."""

    def glyph(found: re.Match[str]) -> str:
        whole, top, bottom = found.groups()
        value = Fraction(int(top), int(bottom)) if int(bottom) else Fraction(0)
        return f"{whole or ''}{inch.GLYPHS[value]}" if value in inch.GLYPHS else found.group(0)

    fractions = _FRACTION.sub(glyph, text)
    return _TIMES_SIGN.sub(rf"\1{NBSP}× \2", fractions)


def paragraphs(text: str | None) -> tuple[str, ...]:
    """The author's paragraphs: parted by empty lines, each on one line."""
    parts = (text or "").split("\n\n")
    return tuple(" ".join(part.split()) for part in parts if part.strip())
