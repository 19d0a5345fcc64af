"""Commands as a newcomer may type them: exit 2 for a wrong call, 1 where a file is at fault."""

from pathlib import Path

import pytest

from tests.support import Run

GOOD = """
pattern: Good
sizes: {crib: {finished: 24 x 30}, lap: {finished: 24 x 30}}
fabrics: {red: {use: squares}}
pieces: {A: {fabric: red, cut: 6 1/2 square}}
top: {rows: [A], across: 4, down: 5}
"""


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A sound pattern, an empty folder and a file, and we stand beside them."""
    (tmp_path / "patterns" / "good").mkdir(parents=True)
    (tmp_path / "patterns" / "good" / "pattern.yaml").write_text(GOOD, "utf-8")
    (tmp_path / "empty").mkdir()
    (tmp_path / "a-file").write_text("mine", "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def everything(folder: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("", "the following arguments are required: COMMAND"),
        ("chek", "invalid choice: 'chek' (choose from 'new', 'check', 'figures', 'build'"),
        ("check --jsn", "unrecognized arguments: --jsn"),
        ("check gone.yaml", "gone.yaml does not exist."),
        ("check empty", "empty is a folder without a pattern.yaml."),
        ("check patterns", "without a pattern.yaml. Name one that has: patterns/good."),
        ("check /dev/null", "/dev/null is not a file."),
        ("check good\x1b[31m", r"good\x1b[31m does not exist."),
        ("figures", "the following arguments are required: SOURCE"),
        ("figures patterns/good --size queen", "has no size queen. It has: crib, lap."),
        ("build patterns/good --size queen", "no pattern here has a size queen. Sizes: crib, lap."),
        ("build patterns/good --size", "argument --size: expected one argument"),
        ("build patterns/good --paper a5", "invalid choice: 'a5' (choose from 'a4', 'letter'"),
        ("build --demo patterns/good", "--demo builds the demonstration patterns"),
        (f"check {'long' * 2_000}", "cannot be opened: file name too long."),
        (f"explain {'long' * 2_000}", "there is no rule or notice longlong"),
        (f"new {'long' * 2_000}", "is too long for a name: 80 signs is the most."),
        ("explain nonsense", "there is no rule or notice nonsense. `explain` alone lists all."),
        ("explain R99", "there is no rule or notice R99. Did you mean R9"),
        ("schema cloth", "invalid choice: 'cloth' (choose from 'source', 'check', 'figures', '"),
        ("new", "the following arguments are required: NAME"),
        ("new Good", "patterns/good is there already; nothing was written."),
        ("new ../../etc", "'../../etc' cannot be a name"),
        ("new ***", "'***' cannot be a name"),
        ("new Frost --kind wool", "there is no kind 'wool'. There are: plain, strips, bands"),
    ],
)  # fmt: skip
def test_a_wrong_call_is_told_and_changes_nothing(
    run: Run, home: Path, typed: str, said: str
) -> None:
    before = everything(home)
    ran = run(*typed.split())
    assert (ran.code, ran.out) == (2, "")
    assert said in " ".join(ran.err.split())
    assert everything(home) == before


def test_no_patterns_here(run: Run, home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(home / "empty")
    for command in ("check", "build"):
        ran = run(command)
        assert ran.code == 2
        assert "there is no patterns/NAME/pattern.yaml here." in ran.err
        assert "begin one with `patternbook new NAME`" in ran.err


def test_one_faulty_source_does_not_hide_the_others(run: Run, home: Path) -> None:
    for name in ("poor", "worse"):
        (home / "patterns" / name).mkdir()
        (home / "patterns" / name / "pattern.yaml").write_text("pattern: Poor\nsseam: 1\n", "utf-8")
    ran = run("check")
    assert ran.code == 1
    assert "patterns/poor/pattern.yaml:2:1: error unknown-key" in ran.err
    assert "patterns/worse/pattern.yaml:2:1: error unknown-key" in ran.err
    assert "3 patterns checked: 2 errors" in ran.err
