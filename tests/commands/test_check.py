"""`check`, as it is called."""

import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from patternbook.commands.new import begun
from patternbook.commands.schema import schema_of
from tests.support import Golden, Run, WritePattern

SOUND = begun("Winter Window", "plain")


def swapped(old: str, new: str) -> str:
    """The sound pattern with one thing written otherwise."""
    assert old in SOUND
    return SOUND.replace(old, new, 1)


FAULTY = swapped("measure: 6 1/2 square", "measure: 6 1/4 square")
HEAVY = {"numpy", "matplotlib", "weasyprint", "pint", "shapely", "highspy", "jinja2", "pypdf"}


def test_a_sound_pattern_is_0(run: Run, pattern: WritePattern) -> None:
    ran = run("check", pattern(SOUND))
    assert (ran.code, ran.out) == (0, "")
    assert ran.err.splitlines()[-1].startswith("1 pattern checked")


def test_a_fault_is_1_and_names_place_sizes_and_both_numbers(
    run: Run, pattern: WritePattern
) -> None:
    path = pattern(FAULTY)
    ran = run("check", path)
    assert (ran.code, ran.out) == (1, "")
    line = FAULTY[: FAULTY.index("measure: 6 1/4")].count("\n") + 1
    (told, *_) = [line for line in ran.err.splitlines() if " error " in line]
    assert told.startswith(f"{path}:{line}:")
    for word in ("unit-measure", "crib", "throw", "6½", "6¼"):
        assert word in told


def test_all_faults_of_all_sources_are_told(run: Run, pattern: WritePattern) -> None:
    both = FAULTY.replace("cut: 6 1/2 square", "cut: 6 3/4 square")
    found = run("check", pattern(both, "a"), pattern(FAULTY, "b"), pattern(SOUND, "c"), "--json")
    files = {place["file"] for one in found.json()["notices"] for place in one["places"]}
    assert found.code == 1
    assert {Path(file).parent.name for file in files} >= {"a", "b"}


def test_quiet_says_nothing_where_nothing_is_wrong(run: Run, pattern: WritePattern) -> None:
    assert run("check", pattern(SOUND), "--quiet").err == ""


WIDE = """\
pattern: Wide lines
sizes: {one: {finished: 40 x 40}}
fabrics: {sky: {use: ground}}
pieces: {A: {fabric: sky, cut: 10 1/2 square}}
top: {rows: [A], across: 4, down: 4}
batting: {limit: 3}
quilting: [{area: all over, design: straight lines, spacing: 5}]
"""


def test_full_also_tells_of_quilting_too_far_apart(run: Run, pattern: WritePattern) -> None:
    """The batting may lie 3 in open; lines 5 in apart break that, and the booklet is refused."""
    path = pattern(WIDE)
    assert run("check", path).code == 0
    ran = run("check", path, "--full")
    assert ran.code == 1
    assert "error quilting-gap [one]" in ran.err
    assert run("build", path, "--out", path.parent / "out").code == 1


def test_strict_makes_a_warning_count(run: Run, pattern: WritePattern) -> None:
    """Far more strips stated than needed is a warning."""
    text = swapped("cut: 3 1/2 x WOF}", "cut: 3 1/2 x WOF, strips: 40}")
    assert run("check", pattern(text)).code == 0
    assert run("check", pattern(text), "--strict").code == 1


@pytest.mark.parametrize("text", [SOUND, FAULTY, "", "pattern: [", "x: 1\n"])
def test_json_keeps_to_its_schema(run: Run, pattern: WritePattern, text: str) -> None:
    ran = run("check", pattern(text), "--json")
    jsonschema.validate(ran.json(), schema_of("check"))
    assert ran.err == ""
    assert ran.code == (1 if ran.json()["errors"] else 0)


def test_plain_check_loads_no_heavy_library(pattern: WritePattern) -> None:
    """What draws, lays out pages and converts is no part of a check, so it stays quick."""
    code = (
        "import sys; from patternbook.cli import main; end = main(sys.argv[1:]);"
        "print(end, *{name.split('.')[0] for name in sys.modules})"
    )
    words = [sys.executable, "-c", code, "check", str(pattern(SOUND))]
    ran = subprocess.run(words, capture_output=True, text=True, check=True)
    end, *loaded = ran.stdout.split()
    assert end == "0"
    assert HEAVY & set(loaded) == set()


BAD = {
    "empty": b"",
    "binary": bytes(range(256)),
    "no text": b"\xff\xfe" + "pattern: x".encode("utf-16-le"),
    "brackets": b"pattern: " + b"[" * 3000,
    "bomb": b"a: &a [x, x]\n" + b"".join(
        b"%c: &%c [*%c, *%c, *%c]\n" % (98 + n, 98 + n, 97 + n, 97 + n, 97 + n) for n in range(20)
    ),
    "tab": b"pattern: x\nsizes:\n\tcrib: {finished: 36 x 48}\n",
    "unknown key": swapped("summary:", "sumary:").encode(),
    "zero": swapped("6 1/2 square}", "0 square}").encode(),
    "negative": swapped("6 1/2 square}", "-6 1/2 square}").encode(),
    "absurd": swapped("36 x 42", "36000000 x 42").encode(),
    "no such cloth": swapped("fabric: plain", "fabric: plane").encode(),
    "too long for the cloth": swapped("6 1/2 square}", "90 x 95}").encode(),
    "a size without its value": swapped("{crib: 6, throw: 9}", "{crib: 6}").encode(),
    "too many patches": swapped("{crib: 6, throw: 9}", "600000").encode(),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_bad_input_is_told_clearly(run: Run, pattern: WritePattern, name: str) -> None:
    path = pattern("")
    path.write_bytes(BAD[name])
    ran = run("check", path)
    assert ran.code == 1, ran.err
    assert f"{path}:" in ran.err
    assert " error " in ran.err
    assert "Traceback" not in ran.err


@pytest.mark.parametrize("of", ["check", "figures", "kits"])
def test_schemas_are_the_committed_ones(run: Run, golden: Golden, of: str) -> None:
    golden(run("schema", of).out, f"schema/{of}.json")
