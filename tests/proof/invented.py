"""Sources made up at random whose lengths fit together: blocks in blocks, strip sets, sashing,
borders, cloth of every form, and pieces cut in every way that the language has words for."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeVar

from hypothesis import strategies as st

from patternbook.inch import plain

T = TypeVar("T")
SEAMS = Fraction(1, 2)
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
FORMS = (
    "use: x",
    "use: x, direction: one-way",
    "use: x, form: strip roll, size: 2 1/2 x 40, pack: 40",
    "use: x, form: squares, size: 10 square, pack: 42",
    "use: x, form: squares, size: 5 square, pack: 42",
    "use: x, form: fat quarter",
    "use: x, form: fat eighth",
)
SETTINGS = ("joins: not counted", "spare: 0", "yard-step: 1/4", "backing-step: 1/2")

Raw = tuple[Fraction, Fraction]


@dataclass
class Invented:
    """A source while it is made up; `draw` takes one of several."""

    pick: Callable[[Sequence[T]], T]
    pieces: dict[str, str] = field(default_factory=dict)
    units: list[str] = field(default_factory=list)

    def number(self, least: int, most: int) -> int:
        return self.pick(range(least, most + 1))

    def length(self, most: int) -> Fraction:
        """A raw length in halves."""
        return Fraction(self.number(2, 2 * most), 2) + SEAMS

    def piece(self, across: Fraction, down: Fraction | None = None) -> str:
        letter = LETTERS[len(self.pieces)]
        ways = ["", "", "", ", spare: 3", ", join: straight", ", per-strip: 2", ", along: length"]
        if down is not None and down > across:
            ways.append(f", strip-width: {plain(down)}")
        more = self.pick(ways) if down is not None else self.pick(["", ", join: straight"])
        hosts = [other for other, text in self.pieces.items() if "WOF" not in text]
        if down is not None and hosts and not more:
            more = self.pick(["", f", with: {self.pick(hosts)}"])
        size = f"{plain(across)} x {'WOF' if down is None else plain(down)}"
        cloth = f"cloth-{self.pick('abcd')}"
        self.pieces[letter] = f"{{fabric: {cloth}, cut: {size}{more}}}"
        return letter

    def block(self, depth: int = 0) -> tuple[str, Raw]:
        """A part of any kind, and its raw size."""
        kinds = [self.patch, self.slice] if depth > 1 else [self.patch, self.slice, self.layout]
        return self.pick(kinds)(depth)

    def patch(self, _depth: int) -> tuple[str, Raw]:
        size = (self.length(9), self.length(9))
        return self.piece(*size), size

    def slice(self, _depth: int) -> tuple[str, Raw]:
        widths = [self.length(4) for _ in range(self.number(1, 3))]
        strips = [self.piece(width) for width in widths]
        segment, name = self.length(5), f"set-{len(self.units)}"
        method = f"method: strip set, from: {' '.join(strips)}, segment: {plain(segment)}"
        self.units.append(f"  {name}: {{{method}}}")
        return name, (sum(width - SEAMS for width in widths) + SEAMS, segment)

    def layout(self, depth: int) -> tuple[str, Raw]:
        part, (wide, high) = self.block(depth + 1)
        across, down, name = self.number(1, 4), self.number(1, 4), f"unit-{len(self.units)}"
        size = ((wide - SEAMS) * across + SEAMS, (high - SEAMS) * down + SEAMS)
        more = ""
        if self.pick([True, False]):
            broad = self.length(3)
            sash, cross = self.piece(broad, high), self.piece(wide, broad)
            stones = self.piece(broad, broad)
            more = f", sashing: {{sash: {sash}, cross: {cross}, stones: {stones}, round: yes}}"
            size = (
                size[0] + (across + 1) * (broad - SEAMS),
                size[1] + (down + 1) * (broad - SEAMS),
            )
        turn = self.pick(["", "/half", "/mirror"])
        self.units.append(
            f"  {name}: {{rows: [{part}{turn}], across: {across}, down: {down}{more}}}"
        )
        return name, size

    def border(self) -> str:
        broad = self.length(5)
        stones = f", stones: {self.piece(broad, broad)}" if self.pick([True, False]) else ""
        return f"  borders: [{{strip: {self.piece(broad)}{stones}}}]\n"


@st.composite
def sources(draw: st.DrawFn) -> str:
    """The text of a whole source."""

    def pick(choices: Sequence[T]) -> T:
        return draw(st.sampled_from(choices))

    made = Invented(pick)
    part, _ = made.block()
    borders = made.border() if pick([True, False]) else ""
    across, down = made.number(1, 6), made.number(1, 6)
    fabrics = "".join(f"  cloth-{name}: {{{pick(FORMS)}}}\n" for name in "abcd")
    pieces = "".join(f"  {letter}: {text}\n" for letter, text in made.pieces.items())
    units = "units:\n" + "\n".join(made.units) + "\n" if made.units else ""
    return (
        f"pattern: Invented\nwidth: {pick([36, 40, 42])}\nsettings: {{{pick(SETTINGS)}}}\n"
        f"sizes: {{small: {{across: {across}, down: {down}}}, "
        f"large: {{across: {across + 1}, down: {down + 2}}}}}\n"
        f"fabrics:\n{fabrics}  back: {{use: backing}}\n"
        f"pieces:\n{pieces}{units}"
        f"top:\n  rows: [{part}]\n  across: across\n  down: down\n{borders}"
        f"backing: {{fabric: {pick(['back', 'cloth-a'])}}}\n"
        f"binding: {{fabric: {pick(['back', 'cloth-b'])}, cut: 2 1/2 x WOF}}\n"
    )
