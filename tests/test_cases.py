"""Whole interviews, one file each, named by what happened to the oven."""

from pathlib import Path

import pytest

from assistant.authoring.cases import hold, read_case
from assistant.interview.choice import ACTIONS
from tests.conftest import Begin

CASES = sorted((Path(__file__).parent / "cases").glob("*.yaml"))
MOST_QUESTIONS = 60


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_the_interview_ends_as_it_should(path: Path, begun: Begin) -> None:
    case = read_case(path)
    held = hold(begun(), case["answers"])
    verdict = held.verdict
    expected = case["expect"]
    said = f"{verdict.action}, led by {verdict.hypotheses[:3]}, asked {held.asked}"
    assert held.refused == ()
    assert len(held.asked) <= MOST_QUESTIONS
    if "action" in expected:
        assert verdict.action == expected["action"], said
    if "leads" in expected:
        assert verdict.leading == expected["leads"], said
    if "likeliest_cause" in expected:
        assert verdict.causes[0][0] == expected["likeliest_cause"], said
    assert verdict.action not in expected.get("never", []), said
    assert set(expected.get("kit", [])) <= set(verdict.details.get("kit", ())), said
    for name, value in expected.get("details", {}).items():
        assert str(verdict.details.get(name)).lower() == value, said


def test_every_verdict_has_a_case() -> None:
    assert {read_case(path)["expect"].get("action") for path in CASES} >= set(ACTIONS)
