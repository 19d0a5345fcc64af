"""Ten thousand sources with slips nobody thought of: a notice with a place, and no traceback."""

import random
from pathlib import Path

import pytest

from patternbook.source.load import load

DATA = Path(__file__).resolve().parent.parent / "data"
TEXTS = [path.read_text("utf-8") for path in sorted(DATA.glob("*/*.yaml"))]
EACH = 1000
SIGNS = (
    *"{}[]:,#&*!|>'\"%@`-?~=\t\n\\/.()xXAIO0123456789½×⁄",
    *(": ", " #", "{{ ", "}}", "- ", "---\n", "...\n", "<<: ", "&a ", "*a ", "!!python ", "  "),
    *("WOF", "fit", "others", "1/0", "9" * 30, "x-", '"\\x', "*9*9*9*9*9*9*9", "((((((", "null"),
    *("\N{NO-BREAK SPACE}", "\N{LINE SEPARATOR}", "\N{ZERO WIDTH SPACE}", "\x00", "\x85", "\ufffe"),
)


def mutated(text: str, dice: random.Random) -> str:
    """The text after one slip: a sign put in, left out or exchanged, words or lines moved."""
    at, slip = dice.randrange(len(text) + 1), dice.randrange(6)
    if slip < 3:
        sign = "" if slip == 1 else dice.choice(SIGNS)
        return text[:at] + sign + text[at + (slip > 0) * dice.randrange(1, 4) :]
    if slip == 3:
        words = dice.randrange(len(text) + 1)
        return text[:at] + text[words : words + dice.randrange(1, 30)] + text[at:]
    lines = text.split("\n")
    line = lines.pop(dice.randrange(len(lines)))
    if slip == 4:
        line = " " * dice.randrange(3) + line[dice.randrange(3) :]
    lines.insert(dice.randrange(len(lines) + 1), line)
    return "\n".join(lines)


@pytest.mark.parametrize("seed", range(10))
def test_any_slip_is_told(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 - the same slips in every run
    path = tmp_path / "pattern.yaml"
    for _ in range(EACH):
        text = dice.choice(TEXTS)
        for _ in range(dice.choice((1, 1, 1, 2, 3, 6))):
            text = mutated(text, dice)
        path.write_text(text, "utf-8", newline="")
        source, notices = load(path, "p.yaml")
        assert (source is None) == any(notice.severity == "error" for notice in notices), text
        for notice in notices:
            assert notice.message
            assert 1 <= notice.marks[0].place.line <= text.count("\n") + text.count("\r") + 1, text
