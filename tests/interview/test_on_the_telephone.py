"""What a call asks before and behind the interview, and from whom it is taken."""

import pytest

from assistant.errors import Refused
from assistant.interview.commands import GiveAnswer, SayNotSure, SkipQuestion
from assistant.interview.on_the_telephone import closing_question, is_for_role, opening_question, role_to_go_on_in
from assistant.interview.script import Script
from assistant.knowledge.model import CALL_STAGES
from tests.conftest import Begin

ENGINEERS = "test_air_gap"
"""A test that only an engineer makes."""


def test_what_belongs_to_a_call_is_taken_from_who_is_on_the_telephone_alone(begun: Begin, script: Script) -> None:
    of_a_call = [each for each, question in script.knowledge.questions.items() if question.stage in CALL_STAGES]
    assert len(of_a_call) >= 8
    for role, taken in (("householder", False), ("engineer", False), ("agent", True)):
        conversation = begun(role)
        for question_id in of_a_call:
            if taken:
                conversation.do(SayNotSure(question_id))
            else:
                with pytest.raises(Refused, match="not_for_role"):
                    conversation.do(SkipQuestion(question_id))


def test_a_shock_is_heard_whoever_tells_it(begun: Begin) -> None:
    conversation = begun("householder")
    conversation.do(GiveAnswer("anyone_hurt", "by_electricity"))
    assert [stop.sign_id for stop in conversation.assessment.danger.stops] == ["shock"]


def test_the_interviews_own_order_is_the_same_for_everybody(begun: Begin) -> None:
    assert {begun(role).view().id for role in ("householder", "agent")} == {"danger_now"}  # type: ignore[union-attr]


def test_nobody_is_asked_who_they_are_while_danger_is_not_isolated(begun: Begin, script: Script) -> None:
    conversation = begun("agent", anyone_hurt="nobody", danger_now=["sparks"])
    assert opening_question(script, conversation.assessment) is None
    assert closing_question(script, conversation.assessment) is None
    conversation.do(GiveAnswer("oven_is_off", "off_at_switch"))
    assert opening_question(script, conversation.assessment) == "who_is_speaking"


def test_who_told_of_danger_already_is_not_greeted_first(begun: Begin, script: Script) -> None:
    conversation = begun("agent", danger_now=["none"])
    assert opening_question(script, conversation.assessment) == "who_is_speaking"


def test_a_call_closes_in_the_order_of_the_rules_and_asks_no_notes(begun: Begin, script: Script) -> None:
    conversation = begun("agent", danger_now=["none"])
    order = []
    while question_id := closing_question(script, conversation.assessment):
        order.append(question_id)
        conversation.do(SayNotSure(question_id))
    assert order == ["off_at_the_end", "fee_told", "read_back", "call_ended"]


def test_how_the_oven_is_left_is_not_asked_where_it_must_stay_off(begun: Begin, script: Script) -> None:
    conversation = begun("agent", danger_now=["sparks"], oven_is_off="off_at_switch")
    assert closing_question(script, conversation.assessment) == "fee_told"


def test_what_coming_out_costs_is_told_only_where_somebody_comes(begun: Begin, script: Script) -> None:
    conversation = begun("agent", danger_now=["none"], off_at_the_end="off")
    assert closing_question(script, conversation.assessment, somebody_comes=True) == "fee_told"
    assert closing_question(script, conversation.assessment, somebody_comes=False) == "read_back"


@pytest.mark.parametrize("question_id", ["call_notes", "complaint_in_own_words", "anything_else", "access_for_visit"])
def test_a_bank_cards_number_is_refused_in_free_text(begun: Begin, question_id: str) -> None:
    conversation = begun("agent")
    with pytest.raises(Refused, match="holds_card_number"):
        conversation.do(GiveAnswer(question_id, "card 4111-1111 1111 1111, thanks"))
    assert question_id not in conversation.state.answers


@pytest.mark.parametrize(
    ("question_id", "number"),
    [
        ("serial_number", "4111111111111111"),
        ("make_and_model", "4111111111111111"),
        ("call_back_number", "+44 (0)1632 960 147, or 01632-960148"),
        ("call_back_number", "004401632960147"),
    ],
)
def test_long_numbers_that_are_asked_for_are_taken(begun: Begin, question_id: str, number: str) -> None:
    conversation = begun("agent")
    conversation.do(GiveAnswer(question_id, number))
    assert question_id in conversation.state.answers


@pytest.mark.parametrize(
    ("number", "code"),
    [
        ("4111 1111 1111 1111", "holds_card_number"),
        ("4111111111111111", "holds_card_number"),
        ("Mary", "telephone_number_expected"),
        ("3", "telephone_number_expected"),
    ],
)
def test_what_is_no_telephone_number_is_refused_where_one_is_asked_for(begun: Begin, number: str, code: str) -> None:
    conversation = begun("agent")
    with pytest.raises(Refused, match=code):
        conversation.do(GiveAnswer("call_back_number", number))


@pytest.mark.parametrize(
    ("held_in", "asked", "goes_on_in"),
    [
        ("agent", "householder", "householder"),
        ("agent", "engineer", "engineer"),
        ("engineer", "householder", "engineer"),
        ("householder", "householder", "householder"),
        ("householder", "engineer", "engineer"),
        ("long_forgotten", "householder", "long_forgotten"),
    ],
)
def test_a_customer_goes_on_in_their_own_role_and_not_the_agents(
    script: Script, held_in: str, asked: str, goes_on_in: str
) -> None:
    assert role_to_go_on_in(script.knowledge, held_in, asked) == goes_on_in


def test_the_calls_own_questions_are_for_the_desk_and_an_engineers_for_engineers(script: Script) -> None:
    for role, notes, test in (("householder", False, False), ("agent", True, False), ("engineer", False, True)):
        assert is_for_role(script.knowledge, role, "call_notes") is notes
        assert is_for_role(script.knowledge, role, ENGINEERS) is test
        assert is_for_role(script.knowledge, role, "what_goes_wrong")
