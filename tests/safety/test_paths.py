"""Thousands of random paths through the whole script keep every invariant; a benchmark walks a million."""

import pytest

from assistant.errors import Refused
from assistant.interview.commands import GiveAnswer
from assistant.interview.script import Script
from assistant.knowledge.model import Knowledge
from tests.safety import still_open
from tests.safety.fast import Fast
from tests.safety.real import begin
from tests.safety.walk import Walk

PATHS = 1500


@pytest.mark.parametrize("role", ["householder", "agent", "engineer"])
def test_random_paths_keep_every_invariant(knowledge: Knowledge, role: str) -> None:
    found = Walk(Fast(knowledge, role), PATHS, seed=len(role)).run()
    assert found.paths == PATHS
    assert found.cut == 0
    assert set(found.broken) <= set(still_open.HOT), found.shortest
    assert found.hot > 10
    assert found.measured > 3
    assert all(found.stopped[sign_id] > 0 for sign_id in knowledge.signs)
    assert len(found.endings) == 4


def test_codes_of_other_questions_are_refused_and_change_nothing(plain_script: Script, fast: Fast) -> None:
    """Every question with the answers of others: none is taken, and nothing is remembered of it."""
    conversation = begin(plain_script, "householder")
    questions = plain_script.knowledge.questions
    foreign = sorted({code for question in questions.values() for code in question.choices})
    for question_id, question in questions.items():
        for code in foreign[:: max(1, len(foreign) // 12)]:
            if code in question.choices or question.kind == "text":
                continue
            for value in (code, [code]):
                with pytest.raises(Refused):
                    conversation.do(GiveAnswer(question_id, value))
    assert conversation.state.answers == {}


def test_numbers_beyond_their_bounds_are_refused(plain_script: Script) -> None:
    conversation = begin(plain_script, "householder")
    numbers = {q: each.number for q, each in plain_script.knowledge.questions.items() if each.number is not None}
    assert numbers
    for question_id, number in numbers.items():
        for value in (number.least - 0.001, number.most + 0.001, float("nan"), float("inf"), -float("inf")):
            with pytest.raises(Refused):
                conversation.do(GiveAnswer(question_id, value))
        conversation.do(GiveAnswer(question_id, number.least))
        conversation.do(GiveAnswer(question_id, number.most))
