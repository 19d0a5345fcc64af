"""Whatever is invented, the planners and the recounts agree: none of them is wrong alone."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from patternbook.edition.pipeline import examine
from tests.proof.invented import sources

# What the author would be told of such a source; it is no disagreement.
OF_THE_AUTHOR = {"print-direction", "size-falls", "unused-fabric"}


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("invented") / "pattern.yaml"


@settings(max_examples=150, suppress_health_check=[HealthCheck.too_slow])
@given(text=sources())
def test_planners_and_recounts_agree(path: Path, text: str) -> None:
    path.write_text(text, "utf-8")
    examined = examine(path, "pattern.yaml")
    assert [str(one) for one in examined.notices if one.stage in ("source", "quilt")
            and one.severity == "error" and one.code != "too-many-patches"] == []  # fmt: skip
    told = [n for n in examined.notices if n.stage == "proof" and n.severity != "advice"]
    assert [str(one) for one in told if one.code not in OF_THE_AUTHOR] == []
