"""What is asked only to know something: a common symptom, from memory, while little is known and not much was tried."""

from collections import Counter

import pytest

from assistant.interview.actions import actions_in_reach
from assistant.interview.assess import Assessment
from assistant.interview.choice import little_is_known
from assistant.interview.commands import GiveAnswer, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.next_question import (
    MOST_TRIED,
    SYMPTOM_OF,
    Chosen,
    most_telling_if_few_were_asked,
    next_chosen,
)
from assistant.interview.script import Script
from assistant.interview.way import WayFinder
from assistant.interview.worth import candidates, one_step_ahead
from assistant.knowledge.model import Care
from tests.conftest import Begin


def most_telling(script: Script, assessment: Assessment) -> str | None:
    actions = actions_in_reach(script, assessment, WayFinder(script, assessment))
    return most_telling_if_few_were_asked(script, assessment, actions)


@pytest.fixture
def knowing_nothing(begun: Begin) -> Conversation:
    """Somebody for whom something is wrong with the oven, and who knows no more."""
    return begun(danger_now=["none"], which_appliance="electric_oven", what_goes_wrong=["something_else_wrong"])


def test_the_most_telling_is_a_common_symptom_asked_from_memory(knowing_nothing: Conversation, script: Script) -> None:
    assessment, questions = knowing_nothing.assessment, script.knowledge.questions
    found = most_telling(script, assessment)
    assert found is not None
    shown = Counter(name for cause in script.knowledge.causes.values() for name in cause.shows)
    finder = WayFinder(script, assessment)
    common = [
        each
        for each in candidates(script, assessment, finder, "not_asked")
        if not each.way
        and questions[each.question_id].care is Care.TALK
        and shown[str(questions[each.question_id].observable)] >= SYMPTOM_OF
    ]
    worths = one_step_ahead(script, assessment, common, actions_in_reach(script, assessment, finder))
    bits = {worth.question_id: worth.bits_per_minute for worth in worths}
    assert bits[found] == pytest.approx(max(bits.values()), abs=1e-6)
    assert len(common) > 5


def test_it_is_asked_where_nothing_else_is_worth_asking(knowing_nothing: Conversation, script: Script) -> None:
    """And only while little is known: no such question comes once something is."""
    grounds = []
    while (chosen := next_chosen(script, knowing_nothing.assessment)) is not None:
        grounds.append(chosen.ground)
        if chosen.ground == "little_known":
            assert little_is_known(knowing_nothing.assessment)
            assert chosen == Chosen(str(most_telling(script, knowing_nothing.assessment)), "little_known")
        knowing_nothing.do(SayNotSure(chosen.question_id))
    assert "little_known" in grounds
    assert grounds.count("little_known") <= MOST_TRIED


def test_who_could_not_answer_by_then_is_not_asked_more(knowing_nothing: Conversation, script: Script) -> None:
    """Questions that report nothing don't count as tried."""
    reporting = [q for q, question in script.knowledge.questions.items() if question.observable is not None]
    assert "since_when" not in reporting
    knowing_nothing.do(SayNotSure("since_when"))
    of_memory = [q for q in reporting if script.knowledge.questions[q].care is Care.TALK]
    for question_id in of_memory[: MOST_TRIED - 1]:
        knowing_nothing.do(SayNotSure(question_id))
        assert most_telling(script, knowing_nothing.assessment) is not None
    knowing_nothing.do(SayNotSure(of_memory[MOST_TRIED - 1]))
    assert most_telling(script, knowing_nothing.assessment) is None


def test_once_something_is_known_nothing_is_asked_only_to_know(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["none"], what_goes_wrong=["pale_below"], underside_pale="white_or_raw")
    conversation.do(GiveAnswer("how_it_began", "from_one_day"))
    assert not little_is_known(conversation.assessment)
    while (chosen := next_chosen(script, conversation.assessment)) is not None:
        assert chosen.ground != "little_known"
        conversation.do(SayNotSure(chosen.question_id))
