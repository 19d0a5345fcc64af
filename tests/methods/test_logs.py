"""Log cabin and courthouse steps: published lengths in, and every log held to its side.

The numbers in brackets are rows of the trade facts; every source stands beside its check.
"""

from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternbook.edition.pipeline import examine
from patternbook.exact import Exact
from patternbook.inch import plain
from patternbook.methods.made import PiecedMade, Placed, Sides
from patternbook.quilt.records import Quilt
from tests.methods.making import faults, sizes, source
from tests.published.reading import one_size, told
from tests.quilt.support_quilt import worked_out
from tests.support import Run, WritePattern

# (5.36) even logs, light and dark: guild charity block,
# https://brunswickquilters.com/give-back/patterns/habitat-log-cabin-block/ and
# (5.37) two widths of log: https://juliekquilts.blogspot.com/2016/10/
# Logs in the order of sewing: the sources list light and dark apart, each in its own order.
EVEN = ["3", "4 1/4", "4 1/4", "5 1/2", "5 1/2", "6 3/4", "6 3/4", "8", "8", "9 1/4", "9 1/4"]
EVEN += ["10 1/2"]
CURVED = ["2", "2 3/4", "2 3/4", "4 1/4", "4 1/4", "5", "5", "6 1/2", "6 1/2", "7 1/4", "7 1/4"]
CURVED += ["8 3/4"]
PUBLISHED = [
    ("<C>: {cut: 3 square}; <A>: {cut: 1 3/4 x WOF}; <B>: {cut: 1 3/4 x WOF}", EVEN, "10 1/2"),
    ("<C>: {cut: 2 square}; <A>: {cut: 1 1/4 x WOF}; <B>: {cut: 2 x WOF}", CURVED, "8 3/4"),
]


def cabin(pieces: str, lengths: list[str], also: str = "") -> tuple[str, str]:
    stated = ", ".join(lengths)
    logs = f"centre: <C>, logs: (<A> <A> <B> <B>)*3, lengths: [{stated}]"
    return pieces, f"method: log cabin, {logs}{also}"


@pytest.mark.parametrize(("pieces", "lengths", "measure"), PUBLISHED)
def test_twelve_published_logs(
    run: Run, pattern: WritePattern, pieces: str, lengths: list[str], measure: str
) -> None:
    path = pattern(source([cabin(pieces, lengths)]))
    unit = sizes(run, path)["unit-0"]
    assert [unit["measure"][side]["value"] for side in ("across", "down")] == [measure] * 2


@pytest.mark.parametrize("log", range(12))
def test_each_log_is_checked_by_itself(run: Run, pattern: WritePattern, log: int) -> None:
    wrong = [*EVEN]
    wrong[log] = wrong[log].split()[0] if " " in wrong[log] else f"{wrong[log]} 1/8"
    path = pattern(source([cabin(PUBLISHED[0][0], wrong)]))
    (notice,) = told(run, [path])["trial"]
    assert notice["code"] == "log-lengths"
    assert f"log {log + 1} (" in notice["message"]
    assert notice["needed"] == EVEN[log]


def test_a_finished_ten_inches(run: Run, pattern: WritePattern) -> None:
    """The guild's block finishes 10: 3 - ½ + 6 × (1¾ - ½) = 2½ + 7½."""
    path = pattern(source([cabin(PUBLISHED[0][0], EVEN, ", finished: 10 square")]))
    assert sizes(run, path)["unit-0"]["finished"]["across"]["value"] == "10"


# ---- pieces as logs, other ways round


def test_logs_that_are_cut_to_size(run: Run, pattern: WritePattern) -> None:
    """A centre of 3 finished, logs 1 wide: 3½, 4½, 4½ and 5½ long."""
    pieces = "<C>: {cut: 3 1/2 square}; <A>: {cut: 1 1/2 x 3 1/2}; "
    logs = "method: log cabin, centre: <C>, logs: <A> <B> <B> <D>"
    good = f"{pieces}<B>: {{cut: 1 1/2 x 4 1/2}}; <D>: {{cut: 1 1/2 x fit}}"
    path = pattern(source([(good, logs)]))
    assert one_size(run, path)["pieces"]["D0"]["cut"]["down"]["value"] == "5 1/2"
    bad = good.replace("1 1/2 x 4 1/2", "1 1/2 x 4")
    found = faults(run, pattern(source([(bad, logs)]), "bad"))
    assert {code for code, _, _ in found} == {"log-length"}


SMALL = """
pattern: Small
sizes: {{one: {{}}}}
pieces:
  C: {{cut: 2 1/2 square}}
  A: {{cut: 1 1/2 x WOF}}
units:
  block: {{method: {method}, centre: C, logs: A*4{also}}}
"""
# Where the four logs lie (left, top, across, down) round a centre of 2, each 1 wide.
WAYS = [
    ("log cabin", "", [(3, 1, 1, 2), (1, 3, 3, 1), (0, 1, 1, 3), (0, 0, 4, 1)]),
    (
        "log cabin",
        ", turning: anticlockwise",
        [(3, 1, 1, 2), (1, 0, 3, 1), (0, 0, 1, 3), (0, 3, 4, 1)],
    ),
    ("log cabin", ", start: top", [(1, 0, 2, 1), (3, 0, 1, 3), (1, 3, 3, 1), (0, 0, 1, 4)]),
    (
        "courthouse steps",
        ", start: left",
        [(0, 1, 1, 2), (3, 1, 1, 2), (0, 0, 4, 1), (0, 3, 4, 1)],
    ),
    ("courthouse steps", ", start: top", [(1, 0, 2, 1), (1, 3, 2, 1), (3, 0, 1, 4), (0, 0, 1, 4)]),
]


@pytest.mark.parametrize(("method", "also", "logs"), WAYS)
def test_where_the_logs_lie(
    tmp_path: Path, method: str, also: str, logs: list[tuple[int, ...]]
) -> None:
    unit = worked_out(tmp_path, SMALL.format(method=method, also=also)).sizes["one"].units["block"]
    assert unit.finished == Sides(Exact(4), Exact(4))
    assert [_box(part) for part in unit.placed[1:]] == [tuple(map(Exact, log)) for log in logs]


def _box(part: Placed) -> tuple[Exact, ...]:
    return part.x, part.y, part.across, part.down


def test_every_seam_is_pressed_to_its_log(tmp_path: Path) -> None:
    text = SMALL.format(method="log cabin", also="")
    made = worked_out(tmp_path, text).sizes["one"].units["block"].made
    assert isinstance(made, PiecedMade)
    assert [seam.toward for seam in made.seams] == [1, 2, 3, 4]
    assert all(seam.settled for seam in made.seams)


def test_it_is_told_log_by_log_and_round_by_round(tmp_path: Path) -> None:
    made = worked_out(tmp_path, SMALL.format(method="log cabin", also="")).sizes["one"]
    block = made.units["block"].made
    assert isinstance(block, PiecedMade)
    first, press, rest = block.actions
    assert first.words.startswith("Lay A ({0} long) on C, right sides together, their right edges")
    assert first.figures[0] == Exact(Fraction(5, 2))
    assert press.words.startswith("Open it out and press the seam away from the centre.")
    assert rest.words == (
        "Go on with round 1: sew A (each {0} long) to the bottom and to the left side, then A "
        "({1} long) to the top. It now measures {2}."
    )
    assert rest.figures == (
        Exact(Fraction(7, 2)),
        Exact(Fraction(9, 2)),
        Sides(Exact(Fraction(9, 2)), Exact(Fraction(9, 2))),
    )


# ---- bad input


STRIP = "<C>: {cut: 2 1/2 square}; <A>: {cut: 1 1/2 x WOF}"
BAD = [
    ("courthouse steps, centre: <C>, logs: <A>*11", "log-pairs", "Write 12 logs, or 10."),
    ("courthouse steps, centre: <C>, logs: <A>", "log-pairs", "Write 2 logs."),
    ("log cabin, centre: <C>, logs: <A>*4, lengths: [2, 3]", "log-lengths", "State one length"),
    ("log cabin, centre: <C>, logs: <A>*160", "log-too-long", "Sew fewer logs"),
    ("log cabin, centre: <C>, logs: <A>*40000", "log-many", "Look for a count"),
]


@pytest.mark.parametrize(("unit", "code", "hint"), BAD)
def test_bad_input(run: Run, pattern: WritePattern, unit: str, code: str, hint: str) -> None:
    found = faults(run, pattern(source([(STRIP, f"method: {unit}")])))
    assert {one for one, _, _ in found} == {code}
    assert all(said.startswith(hint) for _, said, _ in found)


# ---- what holds of every block of logs

WIDTHS = st.integers(6, 20).map(lambda eighths: Fraction(eighths, 8))


@st.composite
def blocks(draw: st.DrawFn) -> str:
    """A block with random widths, order, start and turning, beside a plain square of its size."""
    method = draw(st.sampled_from(["log cabin", "courthouse steps"]))
    widths = [draw(WIDTHS) for _ in range(3)]
    pieces = [f"{at}: {{cut: {plain(wide)} x WOF}}" for at, wide in zip("ABD", widths, strict=True)]
    pieces.append(f"C: {{cut: {plain(draw(WIDTHS) + 1)} x {plain(draw(WIDTHS) + 1)}}}")
    number = draw(st.integers(1, 6)) * (2 if method == "courthouse steps" else 1)
    logs = " ".join(draw(st.sampled_from("ABD")) for _ in range(number))
    start = draw(st.sampled_from(["left", "top", "right", "bottom"]))
    turning = draw(st.sampled_from(["clockwise", "anticlockwise"]))
    return (
        f"pattern: Logs\nsizes: {{one: {{}}}}\npieces: {{{', '.join(pieces)}}}\nunits:\n"
        f"  block: {{method: {method}, centre: C, logs: {logs}, start: {start}, "
        f"turning: {turning}}}\ntop: {{rows: [block], across: 2, down: DOWN}}\n"
    )


def quilt(text: str, down: int) -> Quilt:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "pattern.yaml"
        path.write_text(text.replace("DOWN", str(down)), "utf-8")
        made = examine(path, "pattern.yaml")
    # letters that no log of this block is cut from are told, and nothing else
    wrong = [one for one in made.notices if one.severity == "error" and one.code != "never-sewn"]
    assert wrong == []
    return made.quilts["one"]


@given(blocks())
def test_logs_tile_their_block(text: str) -> None:
    """The proof of `check` sweeps the top; here the areas of one block are added as well."""
    block = quilt(text, 1).units["block"]
    area = sum((part.across * part.down for part in block.placed), Exact(0))
    assert area == block.finished.across * block.finished.down


@given(blocks())
def test_twice_the_blocks_take_twice_the_logs(text: str) -> None:
    once, twice = quilt(text, 1), quilt(text, 2)
    for letter, piece in once.pieces.items():
        assert twice.pieces[letter].count == 2 * piece.count
        assert [run.number * 2 for run in piece.runs] == [
            run.number for run in twice.pieces[letter].runs
        ]
