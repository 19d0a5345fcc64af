"""Invented quilts over all sewing methods: square units of one size, turned at will."""

from dataclasses import dataclass

from hypothesis import strategies as st

HEAD = """
pattern: Every Method
sizes: {{one: {{}}}}
settings: {{trimming: {trimming}}}
fabrics:
  dark: {{tone: dark}}
  light: {{tone: light}}
"""


@dataclass(frozen=True)
class Made:
    """A unit that finishes `side` square: its pieces and units, as lines of a source."""

    name: str
    pieces: str
    units: str


def half_square(side: int, gives: int) -> Made:
    return Made(
        f"half-{gives}",
        f"HA{gives}: {{fabric: dark}}\nHB{gives}: {{fabric: light}}",
        f"half-{gives}: {{method: half-square triangles, from: HA{gives} HB{gives}, "
        f"gives: {gives}, finished: {side} square}}",
    )


def quarter_square(side: int) -> Made:
    return Made(
        "quarter",
        "QA: {fabric: dark}\nQB: {fabric: light}",
        f"quarter: {{method: quarter-square triangles, from: QA QB, finished: {side} square}}",
    )


def geese(side: int, gives: int) -> Made:
    cut = "" if gives == 4 else f", cut: {side} 1/2 x {side // 2} 1/2"
    wing = "" if gives == 4 else f", cut: {side // 2} 1/2 square"
    return Made(
        f"flock-{gives}",
        f"GA{gives}: {{fabric: dark{cut}}}\nGB{gives}: {{fabric: light{wing}}}",
        f"goose-{gives}: {{method: flying geese, goose: GA{gives}, wings: GB{gives}, "
        f"gives: {gives}, finished: {side} x {side // 2}}}\n"
        f"flock-{gives}: {{columns: [goose-{gives} goose-{gives}]}}",
    )


def square_in_square(side: int) -> Made:
    return Made(
        "nest",
        f"NA: {{fabric: dark, cut: {side // 2} 1/2 square}}\n"
        "NB: {fabric: light, diagonal: once}\nND: {fabric: dark, diagonal: once}",
        f"nest: {{method: square in a square, centre: NA, rounds: NB ND, finished: {side} square}}",
    )


def snowball(side: int) -> Made:
    return Made(
        "ball",
        f"SA: {{fabric: light, cut: {side} 1/2 square}}\nSB: {{fabric: dark, cut: 1 1/2 square}}",
        "ball: {method: snowball corners, base: SA, corners: SB . SB .}",
    )


def logs(side: int, method: str) -> Made:
    name = method.partition(" ")[0]
    first = name[0].upper()
    return Made(
        name,
        f"{first}C: {{fabric: dark, cut: {side // 2} 1/2 square}}\n"
        f"{first}L: {{fabric: light, cut: {_half(side // 2)} x WOF}}",
        f"{name}: {{method: {method}, centre: {first}C, logs: {first}L*4}}",
    )


def _half(whole: int) -> str:
    """Half of a whole number, and two seams, as it is typed."""
    return f"{whole // 2} 1/2" if whole % 2 == 0 else str(whole // 2 + 1)


def moon(side: int) -> Made:
    radius = side - 1
    return Made(
        "moon",
        f"MP: {{fabric: light, template: quarter circle, radius: {radius}}}\n"
        f"MG: {{fabric: dark, cut: {side} 1/2 square, template: quarter hollow, "
        f"radius: {radius}}}",
        "moon: {method: curved seam, pie: MP, ground: MG}",
    )


def slices(side: int) -> Made:
    return Made(
        "slice",
        f"TA: {{fabric: dark, cut: {_half(side)} x WOF}}\n"
        f"TB: {{fabric: light, cut: {_half(side)} x WOF}}",
        f"slice: {{method: strip set, from: TA TB, segment: {side} 1/2}}",
    )


@st.composite
def chosen(draw: st.DrawFn) -> tuple[int, tuple[Made, ...]]:
    """A size in whole even inches, and some of the methods."""
    side = draw(st.sampled_from([4, 6, 8]))
    every = [
        half_square(side, 2),
        half_square(side, 8),
        quarter_square(side),
        geese(side, 4),
        geese(side, 1),
        square_in_square(side),
        snowball(side),
        logs(side, "log cabin"),
        logs(side, "courthouse steps"),
        moon(side),
        slices(side),
    ]
    return side, tuple(draw(st.lists(st.sampled_from(every), min_size=1, max_size=4, unique=True)))


TURNS = ("", "/right", "/half", "/left", "/mirror", "/right/mirror")


@st.composite
def quilts(draw: st.DrawFn) -> "Sketch":
    """Rows of such units, turned at will, and repeated so that every count is a multiple of 8."""
    _, units = draw(chosen())
    cell = st.builds(
        lambda unit, turn: f"{unit.name}{turn}", st.sampled_from(units), st.sampled_from(TURNS)
    )
    wide = draw(st.integers(1, 3))
    row = st.lists(cell, min_size=wide, max_size=wide)
    rows = tuple(tuple(line) for line in draw(st.lists(row, min_size=1, max_size=2)))
    used = tuple(
        unit for unit in units if any(c.split("/")[0] == unit.name for line in rows for c in line)
    )
    return Sketch(used, rows, draw(st.sampled_from(["0", "1/8"])))


@dataclass(frozen=True)
class Sketch:
    """An invented quilt: its units and its rows."""

    units: tuple[Made, ...]
    rows: tuple[tuple[str, ...], ...]
    trimming: str

    def source(self, *, times: int = 8) -> str:
        """The source, its rows repeated so many times downward."""
        pieces = "\n".join(f"  {line}" for one in self.units for line in one.pieces.splitlines())
        units = "\n".join(f"  {line}" for one in self.units for line in one.units.splitlines())
        rows = ", ".join(" ".join(row) for row in self.rows)
        return (
            HEAD.format(trimming=self.trimming).lstrip()
            + f"pieces:\n{pieces}\nunits:\n{units}\n"
            + f"top: {{rows: [{rows}], down: {len(self.rows) * times}}}\n"
        )
