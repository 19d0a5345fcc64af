"""The key: every fabric with its tone, letters and use, and the signs of all drawings."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from patternbook.cutting.records import BINDING
from patternbook.diagrams import words
from patternbook.diagrams.laid import Lying, turn_mark
from patternbook.diagrams.pattern import Pattern
from patternbook.diagrams.pressing import arrow
from patternbook.diagrams.sheet import cropped
from patternbook.diagrams.swatches import SWATCH, swatch
from patternbook.strokes import signs
from patternbook.strokes.pen import Pen
from patternbook.strokes.stroke import Drawing, Fill, Weight
from patternbook.strokes.tones import WASTE, wrong_side

WIDE: Final = 7.1  # inches
COLUMNS: Final = 4
ROW: Final = 0.5
TEXT: Final = 0.58  # inches from a swatch or sign to its words
LIGHT, DARK = Fill("#ededed"), Fill("#bdbdbd")
STEP: Final = 10 / 72  # inches from one line of words to the next


def key(pattern: Pattern) -> Iterator[Drawing]:
    """One drawing, in inches on paper."""
    pen = Pen(1, 1, 1)
    y = _fabrics(pen, pattern)
    pen.line(((0, y), (WIDE, y)), "dimension")
    _signs(pen, y + 0.12)
    told = "; ".join(f"{name}: {', '.join(lines[1:])}" for name, lines in _told(pattern).items())
    alt = f"Fabrics: {told}. Signs: {', '.join(text for text, _ in SIGNS)}."
    yield cropped(pen, "key", "Fabrics and signs", alt)


def _told(pattern: Pattern) -> dict[str, list[str]]:
    """What stands beside each swatch: the name, its use, its letters."""
    found: dict[str, list[str]] = {}
    for name in dict.fromkeys(one for size in pattern.sizes for one in size.quilt.fabrics):
        size = next(size for size in pattern.sizes if name in size.quilt.fabrics)
        use = size.quilt.fabrics[name].use
        letters = _letters(pattern, name)
        lines = [words.title(name)]
        lines += [use] if use.casefold() != name.casefold() else []
        found[name] = lines + ([letters] if letters and letters != use else [])
    return found


def _letters(pattern: Pattern, fabric: str) -> str:
    """The letters cut from a fabric in any size, then binding and backing."""
    letters: dict[str, None] = {}
    for size in pattern.sizes:
        quilt = size.quilt
        letters |= dict.fromkeys(
            letter for letter, piece in quilt.pieces.items() if piece.fabric == fabric
        )
        if quilt.binding and quilt.binding.fabric == fabric:
            letters[BINDING] = None
        if quilt.backing and quilt.backing.fabric == fabric:
            letters["backing"] = None
    return ", ".join(letters)


def _fabrics(pen: Pen, pattern: Pattern) -> float:
    """The swatches in rows of four; gives where they end."""
    told = list(_told(pattern).items())
    step = WIDE / COLUMNS
    for number, (name, lines) in enumerate(told):
        x, y = number % COLUMNS * step, number // COLUMNS * (ROW + 0.1)
        swatch(pen, pattern.first, name, x, y)
        _lines(pen, x + TEXT, y + SWATCH[1] / 2, lines, step - TEXT)
    return -(-len(told) // COLUMNS) * (ROW + 0.1)


def _lines(pen: Pen, x: float, y: float, lines: list[str], wide: float) -> None:
    """Words of a few lines beside a swatch, the first heavy; long ones are broken."""
    broken = [part for line in lines for part in _broken(pen, line, wide)]
    start = y - (len(broken) - 1) * STEP / 2
    for number, line in enumerate(broken):
        weight: Weight = 600 if number == 0 else 400
        pen.label(x, start + number * STEP, line, 8, anchor="start", weight=weight)


def _broken(pen: Pen, text: str, wide: float) -> list[str]:
    """The words in lines that fit."""
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and pen.text_width(longer, 8, 600) > wide - pen.pt(8):
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


# ---- signs


def _seam(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.45, 0.28, LIGHT)
    signs.seam(pen, (x, y + 0.05), (x + 0.45, y + 0.05))


def _cut(pen: Pen, x: float, y: float) -> None:
    pen.line(((x + 0.14, y), (x + 0.45, y)), "cut")
    signs.scissors(pen, x + 0.1, y)


def _press(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.22, 0.28, LIGHT)
    pen.rectangle(x + 0.22, y - 0.14, 0.23, 0.28, DARK)
    arrow(pen, x + 0.22, y, "right", upright=True)


def _press_open(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.22, 0.28, LIGHT)
    pen.rectangle(x + 0.22, y - 0.14, 0.23, 0.28, DARK)
    arrow(pen, x + 0.22, y, "open", upright=True)


def _wrong(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.45, 0.28, wrong_side(DARK))


def _made(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x + 0.08, y - 0.16, 0.3, 0.32, LIGHT)
    turn_mark(pen, Lying("", Lying.upright, x + 0.08, y - 0.16, 0.3, 0.32))


def _waste(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.45, 0.28, WASTE)


def _selvage(pen: Pen, x: float, y: float) -> None:
    pen.rectangle(x, y - 0.14, 0.4, 0.28, LIGHT)
    signs.selvage(pen, (x + 0.43, y - 0.14), (x + 0.43, y + 0.14), 1)


def _fold(pen: Pen, x: float, y: float) -> None:
    pen.line(((x, y), (x + 0.45, y)), "fold")


def _mark(pen: Pen, x: float, y: float) -> None:
    pen.line(((x, y), (x + 0.45, y)), "mark")


def _quilted(pen: Pen, x: float, y: float) -> None:
    pen.line(((x + 0.02, y), (x + 0.44, y)), "quilting")
    pen.arrow(((x + 0.2, y), (x + 0.28, y)), "quilting")
    pen.dot(x + 0.02, y, 4.5)
    pen.line(((x + 0.44, y - 0.05), (x + 0.44, y + 0.05)), "edge")


def _order(pen: Pen, x: float, y: float) -> None:
    signs.count(pen, x + 0.22, y, 1, size=8)


SIGNS: Final[tuple[tuple[str, Callable[[Pen, float, float], None]], ...]] = (
    ("seam to sew", _seam),
    ("cut", _cut),
    ("press the seam this way", _press),
    ("press open", _press_open),
    ("this edge up, as made", _made),
    ("wrong side", _wrong),
    ("fold of the cloth", _fold),
    ("selvedge, trimmed off", _selvage),
    ("left over", _waste),
    ("measure or mark here", _mark),
    ("order", _order),
    ("quilting: start, way, end", _quilted),
)


def _signs(pen: Pen, y: float) -> None:
    step = WIDE / COLUMNS
    for number, (text, sign) in enumerate(SIGNS):
        x, level = number % COLUMNS * step, y + 0.16 + number // COLUMNS * 0.42
        sign(pen, x, level)
        broken = _broken(pen, text, step - TEXT)
        start = level - (len(broken) - 1) * STEP / 2
        for row, line in enumerate(broken):
            pen.label(x + TEXT, start + row * STEP, line, 8, anchor="start")
