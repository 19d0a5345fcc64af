"""`figures`, as it is called."""

import json

import jsonschema

from patternbook.commands.new import begun
from patternbook.commands.schema import schema_of
from patternbook.edition.figures import figures
from patternbook.edition.pipeline import examine
from tests.support import Golden, Run, WritePattern

SOUND = begun("Winter Window", "plain")


def test_json_keeps_to_its_schema(run: Run, pattern: WritePattern) -> None:
    record = run("figures", pattern(SOUND), "--json").json()
    jsonschema.validate(record, schema_of("figures"))
    assert list(record["sizes"]) == ["crib", "throw"]


def test_every_number_says_where_it_is_from(run: Run, pattern: WritePattern) -> None:
    path = pattern(SOUND)
    crib = run("figures", path, "--json").json()["sizes"]["crib"]
    line = SOUND[: SOUND.index("P: {fabric")].count("\n") + 1
    across = crib["pieces"]["P"]["cut"]["across"]
    assert (across["value"], across["status"], across["class"]) == ("6 1/2", "agrees", "exact")
    assert across["at"].startswith(f"{path}:{line}:")
    assert crib["units"]["four"]["make"]["status"] == "worked out"
    # 6 × 7 blocks, half of them four-patches: 21; 2 pairs each, 42 slices, 11 a set.
    assert (crib["units"]["pair"]["make"]["value"], crib["units"]["pair"]["sets"]) == ("42", 4)


def test_a_root_is_given_exactly_beside_its_value(run: Run, pattern: WritePattern) -> None:
    """No number of the starter has one, so none is marked."""
    text = run("figures", pattern(SOUND), "--json").out
    assert '"exact":' not in text


def test_tables_for_people(run: Run, pattern: WritePattern, golden: Golden) -> None:
    ran = run("figures", pattern(SOUND))
    assert ran.code == 0
    golden(ran.out, "figures/starter.txt")


def test_one_size(run: Run, pattern: WritePattern) -> None:
    path = pattern(SOUND)
    assert list(run("figures", path, "--size", "crib", "--json").json()["sizes"]) == ["crib"]
    ran = run("figures", path, "--size", "king")
    assert (ran.code, ran.out) == (2, "")
    assert "It has: crib, throw." in ran.err


def test_a_fault_is_told_beside_the_figures(run: Run, pattern: WritePattern) -> None:
    ran = run("figures", pattern(SOUND.replace("36 x 42", "36 x 43")))
    assert ran.code == 1
    assert "CRIB" in ran.out
    assert "finished-size" in ran.err


def test_a_source_that_cannot_be_read_has_none(run: Run, pattern: WritePattern) -> None:
    ran = run("figures", pattern("pattern: ["), "--json")
    assert (ran.code, ran.out) == (1, "")


def test_places_in_a_file_that_is_handed_on_name_no_folder(pattern: WritePattern) -> None:
    path = pattern(SOUND)
    text = json.dumps(figures(examine(path, path.as_posix()), bare=True))
    assert '"at": "pattern.yaml:' in text
    assert path.parent.name not in text
