"""The chance that one visit is enough, from belief's own hypotheses."""

import pytest

from assistant.interview.first_visit import chance_of_first_visit
from assistant.interview.script import Script
from tests.conftest import Begin
from tests.interview.pale_below import PALE

ENGINEER = "appliance_engineer"


def every_part(script: Script) -> tuple[str, ...]:
    return tuple(script.knowledge.ovens.parts)


def test_more_parts_never_lower_the_chance(begun: Begin, script: Script) -> None:
    assessment = begun(**PALE).assessment
    kits = ((), ("base_element",), ("base_element", "function_selector"), every_part(script))
    chances = [chance_of_first_visit(script, assessment, kit, ENGINEER) or 0.0 for kit in kits]
    assert chances == sorted(chances)
    assert chances[0] < chances[1] < chances[2] < chances[3] < 1


def test_the_chance_of_one_part_is_that_of_the_faults_it_mends_alone(begun: Begin, script: Script) -> None:
    assessment = begun(**PALE).assessment
    causes = script.knowledge.causes

    def is_fault(cause: str) -> bool:
        return cause not in causes or causes[cause].kind == "fault"

    def mends(cause: str) -> bool:
        known = causes.get(cause)
        return known is not None and known.mended_by == ENGINEER and known.part in (None, "base_element")

    faulty = [(h, p) for h, p in assessment.posterior.ranked() if any(map(is_fault, h))]
    mended = sum(p for h, p in faulty if all(mends(c) for c in h if is_fault(c)))
    expected = mended / sum(p for _, p in faulty)
    assert chance_of_first_visit(script, assessment, ("base_element",), ENGINEER) == pytest.approx(expected, rel=1e-12)


def test_another_trade_mends_little(begun: Begin, script: Script) -> None:
    assessment = begun(**PALE).assessment
    chance = chance_of_first_visit(script, assessment, every_part(script), "electrician")
    assert chance is not None
    assert chance < 0.1


def test_where_no_fault_is_to_be_expected_there_is_no_chance(
    begun: Begin, script: Script, monkeypatch: pytest.MonkeyPatch
) -> None:
    assessment = begun(**PALE).assessment
    assert chance_of_first_visit(script, assessment, (), ENGINEER) is not None
    monkeypatch.setattr("assistant.interview.first_visit.LEAST_FAULTY", 1.1)
    assert chance_of_first_visit(script, assessment, (), ENGINEER) is None
