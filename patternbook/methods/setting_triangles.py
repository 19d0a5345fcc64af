"""The triangles that fill the edges of blocks set on point: which way cut, and how large."""

from __future__ import annotations

from fractions import Fraction
from typing import Final, NamedTuple

from patternbook.exact import ROOT2, Exact
from patternbook.inch import plain, printed
from patternbook.linear import Sum
from patternbook.methods.layout_written import WrittenLayout
from patternbook.methods.made import Turn
from patternbook.methods.world import Diagonal, Rule, Tally, Term, World
from patternbook.notice import Edit, Mark, Notice, Place, Severity

FITS: Final = Rule("setting-triangle", "R22", "One letter has one size: use another letter here.")
# What the trade multiplies by instead of √2 (trade facts 5.17 to 5.19).
TRADE_ROOT: Final = Fraction(1414, 1000)
# Setting triangles are often cut a little larger and trimmed; more than this is told, and beyond
# a third more it is a warning.
MOST_OVER: Final = {"in": Fraction(1), "cm": Fraction(5, 2)}
STEP: Final = {"in": Fraction(1, 8), "cm": Fraction(1, 4)}
WORDS: Final = {"once": "once, corner to corner", "twice": "twice, on both diagonals"}


class Triangle(NamedTuple):
    """One of the two keys: its letter (empty where none is named), and how it must be cut so
    that its straight grain lies on the outer edge."""

    key: str
    letter: str
    diagonal: Diagonal
    place: Place | None


def fitted(
    name: str, triangle: Triangle | None, finished: Tally, unit: WrittenLayout, world: World
) -> bool:
    """Hold a triangle whose size is not stated to what its place wants; False where it cannot
    stand there, which is told."""
    if triangle is None:
        return True
    key, letter, diagonal, place = triangle
    if not letter:
        message = f"'{name}' is set on point and names no {key}."
        hint = f"Write `{key}: S`, and cut S with `diagonal: {diagonal}`."
        world.error("no-setting-triangle", "R22", message, unit.place, hint)
        return False
    if world.is_unit(letter) or world.diagonal(letter) is None:
        message = f"{letter}, the {key} of '{name}', is not cut on the diagonal."
        hint = f"A {key} is a piece: a square with `diagonal: {diagonal}`."
        world.error("no-setting-triangle", "R22", message, place, hint)
        return False
    if world.diagonal(letter) != diagonal:
        world.tell(_bias(name, triangle, finished, world))
    elif not world.sized(letter):
        world.rounds_up(letter)
        for side in world.span(letter, Turn(), place):
            one = Tally(f"{letter} finishes", (Term(letter, 1, side),), place)
            world.equal(one, finished, FITS)
    return True


def _bias(name: str, triangle: Triangle, finished: Tally, world: World) -> Notice:
    """Its bias edge would lie outside: which way its square is cut, and how large that wants it."""
    key, letter, diagonal, place = triangle
    cut = world.diagonal(letter) or "once"
    message = (
        f"{letter}, the {key} of '{name}', is cut {WORDS[cut]}: its bias edge would lie on the "
        "quilt's outer edge, and stretch."
    )
    long, is_cut = world.known(finished.sum()), world.known(world.raw(letter, place).across)
    at, needed, stated = world.place_of(letter, "diagonal"), str(diagonal), str(cut)
    edits = (Edit(at, stated, needed),) if at else ()
    hint = f"Write `diagonal: {diagonal}` at {letter}."
    if long is not None and is_cut is not None:
        wanted = Exact((long + world.triangle(diagonal)).up(STEP[world.unit]))
        if not 0 <= is_cut - wanted < MOST_OVER[world.unit]:
            side = plain(wanted, world.unit == "cm")
            hint = f"Cut {letter} {side} square, and write `diagonal: {diagonal}`."
            at, needed, edits = world.place_of(letter, "cut") or at, side, ()
            stated = plain(is_cut, world.unit == "cm")
    marks = tuple(
        Mark(spot, role) for spot, role in ((at, "cut here"), (place, "named here")) if spot
    )
    size = (world.size,)
    return Notice(
        "bias-edge", "error", "quilt", message, marks, "R22", size, stated, needed, hint, edits
    )


def larger_or_smaller(
    name: str, triangle: Triangle, finished: Tally, block: Sum, world: World
) -> None:
    """Tell of squares cut too small, needlessly large, or an eighth smaller by the trade's √2.
    Lengths are solved."""
    if world.diagonal(triangle.letter) != triangle.diagonal:
        return
    sum_ = _Sum(name, triangle, world.length(finished.sum()), world.length(block), world)
    stated = world.sized(triangle.letter)
    cut = world.length(world.raw(triangle.letter, triangle.place).across)
    if not stated:
        cut = Exact(sum_.needed.up(STEP[world.unit]))
        if cut > sum_.by_trade.up(STEP[world.unit]):
            sum_.advise("root-two", "advice", sum_.why_safe(cut))
    elif cut >= sum_.needed + MOST_OVER[world.unit]:
        over = printed((cut - sum_.needed).down(STEP[world.unit]))
        said = f"{sum_.reckoned()}; cut {printed(cut)}, {over} is to be trimmed away"
        severity: Severity = "warning" if cut * 3 > sum_.needed * 4 else "advice"
        sum_.advise("setting-triangle-large", severity, said, cut)
    elif cut < sum_.needed:
        if cut >= sum_.by_trade and cut >= sum_.least:
            sum_.advise("root-two", "advice", sum_.why_near(cut), cut)
        else:
            short = (sum_.needed - cut).up(Fraction(1, 64))
            said = f"{sum_.reckoned()}; {printed(cut)} is stated, short by {printed(short)}"
            sum_.advise("setting-triangle", "error", said, cut)


class _Sum(NamedTuple):
    """What the square of a triangle must be, and how that is reckoned."""

    name: str
    triangle: Triangle
    finished: Exact
    block: Exact
    world: World

    @property
    def extra(self) -> Fraction:
        """The allowance as the trade rounds it."""
        return self.world.triangle(self.triangle.diagonal)

    @property
    def needed(self) -> Exact:
        """With the exact √2 and the trade's allowance."""
        return self.finished + self.extra

    @property
    def by_trade(self) -> Exact:
        """With the trade's √2."""
        twice = self.triangle.diagonal == "twice"
        return self.block * (TRADE_ROOT if twice else 1 / TRADE_ROOT) + self.extra

    @property
    def least(self) -> Exact:
        """With the exact allowance: s(2 + 2√2), or s(2 + √2) for a square cut once."""
        diagonals = 2 if self.triangle.diagonal == "twice" else 1
        return self.finished + self.world.length(self.world.seam) * (2 + ROOT2 * diagonals)

    def reckoned(self) -> str:
        """`S: the block 16 × √2 = 22.63, and 1¼ for the seams: 23.88, so 24`."""
        sign = "×" if self.triangle.diagonal == "twice" else "÷"
        safe = printed(self.needed.up(STEP[self.world.unit]))
        return (
            f"{self.triangle.letter}: the block {printed(self.block)} {sign} √2 = "
            f"{printed(self.finished)}, and {printed(self.extra)} for its seams: "
            f"{printed(self.needed)}, so {safe}"
        )

    def why_safe(self, cut: Exact) -> str:
        """Why a worked-out cut is larger than a table of the trade says."""
        other = printed(self.by_trade.up(STEP[self.world.unit]))
        return (
            f"{self.reckoned()}. With 1.414 for √2 it would be {other}, a little too small: "
            f"{printed(cut)} is the safe one"
        )

    def why_near(self, cut: Exact) -> str:
        """Why a stated cut that a table of the trade gives is let pass."""
        return (
            f"{self.reckoned()}; {printed(cut)} is stated, as a table with 1.414 for √2 has it. "
            "It just fits, with nothing to trim"
        )

    def advise(self, code: str, severity: Severity, message: str, cut: Exact | None = None) -> None:
        """Tell it once, at its cut, else at the key that names the triangle."""
        place, letter, cm = self.triangle.place, self.triangle.letter, self.world.unit == "cm"
        safe = plain(self.needed.up(STEP[self.world.unit]), cm)
        at, text = self.world.place_of(letter, "cut"), self.world.text_of(letter, "cut")
        spots = ((at, "cut here"), (place, "named here"))
        edits = (Edit(at, text, f"{safe} square"),) if severity != "advice" and at and text else ()
        hint = None
        if code != "setting-triangle-large" and cut is not None:
            hint = f"Cut {letter} {safe} square, or leave its cut out."
        notice = Notice(
            code,
            severity,
            "quilt",
            f"'{self.name}': {message}.",
            tuple(Mark(spot, role) for spot, role in spots if spot),
            "R22",
            (self.world.size,),
            plain(cut, cm) if cut is not None else None,
            safe,
            hint,
            edits,
        )
        self.world.tell(notice)
