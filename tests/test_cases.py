"""Whole interviews, one file each, named by what happened to the oven."""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest

from assistant.authoring.cases import begin_case, hold, read_case
from assistant.interview.choice import ACTIONS
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.knowledge.model import Knowledge

CASES = sorted((Path(__file__).parent / "cases").glob("*.yaml"))
MOST_QUESTIONS = 60
FIRST = 3


def shortfalls(verdict: Verdict, expected: Mapping[str, Any]) -> list[str]:
    """The expectations that the verdict doesn't meet, by their keys."""
    first = [cause_id for cause_id, _ in verdict.causes[:FIRST]]
    met = {
        "action": verdict.action == expected.get("action"),
        "action_among": verdict.action in expected.get("action_among", ()),
        "leads": verdict.leading == expected.get("leads"),
        "leads_among": verdict.leading in expected.get("leads_among", ()),
        "likeliest_cause": first[0] == expected.get("likeliest_cause"),
        "among_first_three": set(expected.get("among_first_three", ())) <= set(first),
        "never": verdict.action not in expected.get("never", ()),
        "never_leads": verdict.leading not in expected.get("never_leads", ()),
        "kit": set(expected.get("kit", ())) <= set(_listed(verdict, "kit")),
        "details": all(
            str(verdict.details.get(name)).lower() == value for name, value in expected.get("details", {}).items()
        ),
    }
    unknown = expected.keys() - met.keys()
    assert not unknown, unknown
    return [key for key in expected if not met[key]]


def _listed(verdict: Verdict, name: str) -> Sequence[str]:
    found = verdict.details.get(name, ())
    assert isinstance(found, tuple)
    return found


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_the_interview_ends_as_it_should(path: Path, script: Script) -> None:
    """A case that isn't met says why, in the words of who looked into it, and what it falls short of; no more."""
    case = read_case(path)
    held = hold(begin_case(script, case, "great_britain"), case["answers"])
    said = f"{held.verdict.action}, led by {held.verdict.hypotheses[:3]}, asked {held.asked}"
    assert not held.refused, held.refused
    assert len(held.asked) <= MOST_QUESTIONS
    assert shortfalls(held.verdict, case["expect"]) == list(case.get("not_met", {})), said


def test_every_verdict_has_a_case() -> None:
    assert {read_case(path)["expect"].get("action") for path in CASES} >= set(ACTIONS)


def test_every_cause_has_a_case(knowledge: Knowledge) -> None:
    keys = ("leads", "likeliest_cause", "leads_among", "among_first_three")
    named: set[str] = set()
    for path in CASES:
        case = read_case(path)
        for key in keys:
            value = case["expect"].get(key, [])
            if key not in case.get("not_met", {}):
                named.update([value] if isinstance(value, str) else value)
    assert set(knowledge.causes) - named == set()


def test_a_change_to_a_case_carries_its_reason() -> None:
    changed = [case["changed"] for case in map(read_case, CASES) if "changed" in case]
    assert all(reason.endswith(".") for reasons in changed for reason in reasons)


def test_nearly_all_cases_are_met() -> None:
    assert sum("not_met" in read_case(path) for path in CASES) <= len(CASES) // 12
