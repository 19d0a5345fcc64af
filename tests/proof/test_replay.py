"""The plans of all patterns can be cut as they stand, in every style; a spoiled plan is refused."""

import pytest

from patternbook.cutting.records import Style
from tests.proof.spoiled import SPOILERS, cases, codes, spoiled

STYLES: tuple[Style, ...] = ("plain", "shared", "thrifty")


@pytest.mark.parametrize("style", STYLES)
def test_every_plan_can_be_cut(style: Style) -> None:
    found = {id(case.evidence): case.evidence for case in cases(style)}
    assert len(found) >= 15
    assert [told for evidence in found.values() for told in codes(evidence)] == []


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("name", SPOILERS)
def test_a_spoiled_plan_is_refused(name: str, style: Style) -> None:
    """In every fabric of every size, by name."""
    tried = [(case, codes(evidence)) for case, evidence in spoiled(name, style)]
    assert tried
    assert [case for case, told in tried if not told & SPOILERS[name].told] == []
