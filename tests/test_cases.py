"""Whole interviews, one file each, named by what happened to the oven."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from assistant.interview.choice import ACTIONS
from assistant.interview.commands import GiveAnswer, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import DANGER_NOW, NONE
from tests.conftest import Begin

CASES = sorted((Path(__file__).parent / "cases").glob("*.yaml"))
MOST_QUESTIONS = 60


def read_case(path: Path) -> dict[str, Any]:
    """Scalars stay text, as in the rules; numbers are made of it where a question wants one."""
    case: dict[str, Any] = yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    return case


def hold(conversation: Conversation, answers: dict[str, Any]) -> tuple[Verdict, list[str]]:
    """Answer what the case answers when it is asked; 'not sure' to all else. The verdict, and what was asked."""
    asked: list[str] = []
    questions = conversation.script.knowledge.questions
    while True:
        view = conversation.view()
        question_id = view.id if isinstance(view, QuestionView) else str(view.details.get("then", ""))
        if isinstance(view, Verdict) and (question_id not in answers or question_id in asked):
            return view, asked
        asked.append(question_id)
        assert len(asked) <= MOST_QUESTIONS
        value = answers.get(question_id, [NONE] if question_id == DANGER_NOW else None)
        if value in (None, "not_sure"):
            conversation.do(SayNotSure(question_id))
        else:
            conversation.do(GiveAnswer(question_id, float(value) if questions[question_id].number else value))


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_the_interview_ends_as_it_should(path: Path, begun: Begin) -> None:
    case = read_case(path)
    verdict, asked = hold(begun(), case["answers"])
    expected = case["expect"]
    said = f"{verdict.action}, led by {verdict.hypotheses[:3]}, asked {asked}"
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
