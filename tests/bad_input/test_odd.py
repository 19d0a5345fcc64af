"""What is odd, and no fault: the booklet is built, and what was written stays words."""

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.support import Run

SOUND = """
pattern: Good
fabrics: {red: {use: squares}}
pieces: {A: {fabric: red, cut: 6 1/2 square}}
top: {rows: [A], across: 4, down: 5}
words:
  welcome: |
    Sew it in an evening.
"""
COMMANDS = "<script>1</script> <img src='http://a.example/b'> {% if x %} &amp; file:///etc/passwd"


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def built(run: Run, text: str) -> str:
    """The words of the booklet."""
    path = Path("patterns", "odd", "pattern.yaml")
    path.parent.mkdir(parents=True)
    path.write_text(text, "utf-8")
    ran = run("build", "--paper", "a4", "--quiet")
    assert (ran.code, ran.err) == (0, "")
    (pdf,) = Path("build").rglob("*.pdf")
    pages = PdfReader(BytesIO(pdf.read_bytes())).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("across: 4, down: 5", "across: 1, down: 1"),
        ("6 1/2 square", "5/8 square"),
        ("across: 4, down: 5", "across: 300, down: 1"),
        ("use: squares", f"use: {'w' * 9_000}"),
        ("pattern: Good", f"pattern: {'Good ' * 300}"),
    ],
    ids=[
        "one patch",
        "a quilt for a doll's doll",
        "a ribbon",
        "a word of 9,000",
        "a name of 1,500",
    ],
)
def test_odd_sizes_and_words_are_built(run: Run, before: str, after: str) -> None:
    assert "Sew it in an evening." in built(run, SOUND.replace(before, after))


def test_what_speaks_to_programs_stays_words(run: Run) -> None:
    words = built(run, SOUND.replace("Sew it in an evening.", COMMANDS))
    assert COMMANDS.replace(" ", "") in words.replace(" ", "").replace("’", "'").replace("‘", "'")


def test_a_fragment_has_no_booklet(run: Run, tmp_path: Path) -> None:
    (tmp_path / "pattern.yaml").write_text(SOUND[: SOUND.index("top:")], "utf-8")
    ran = run("build", tmp_path, "--quiet")
    assert (ran.code, ran.out) == (1, "")
    assert "error no-booklet: there is no booklet of it" in ran.err
    assert not (tmp_path / "build").exists()
