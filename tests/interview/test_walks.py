"""Random walks through the whole interview: what must hold on every path."""

import random

import pytest

from assistant.interview.commands import Command, GiveAnswer, HearDanger, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.interview.state import fold
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView, look, question_view
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.knowledge.model import Care, Knowledge
from tests.conftest import Begin

MOST_QUESTIONS = 90
WALKS = 60


def any_command(view: QuestionView, conversation: Conversation, chance: random.Random) -> Command:
    """Mostly an answer; now and then doubt, a skip, something withdrawn, or danger in a typed line."""
    match chance.choices(["answer", "not_sure", "skip", "withdraw", "hear"], [20, 3, 2, 1.5, 0.3])[0]:
        case "not_sure":
            return SayNotSure(view.id)
        case "skip":
            return SkipQuestion(view.id)
        case "withdraw" if conversation.state.answers:
            return WithdrawAnswer(chance.choice(list(conversation.state.answers)))
        case "hear":
            return HearDanger(chance.choice(list(conversation.script.knowledge.signs)), clear=True)
    return any_answer(view, chance)


def any_answer(view: QuestionView, chance: random.Random) -> Command:
    if view.kind == "choices":
        if "none" in view.choices and chance.random() < 0.9:
            return GiveAnswer(view.id, ["none"])
        return GiveAnswer(view.id, [chance.choice([c for c in view.choices if c != "none"])])
    if view.kind == "choice":
        return GiveAnswer(view.id, chance.choice(view.choices))
    if view.kind == "number":
        return GiveAnswer(view.id, chance.uniform(1, 30))
    return GiveAnswer(view.id, "Since the weekend.")


@pytest.mark.parametrize("role", ["householder", "agent"])
def test_no_path_asks_beyond_the_allowed_care_or_forgets_danger(begun: Begin, script: Script, role: str) -> None:
    reached: set[str] = set()
    for seed in range(WALKS):
        chance = random.Random(seed)
        conversation = begun(role)
        stopped_once = False
        for _ in range(MOST_QUESTIONS):
            view = conversation.view()
            assessment = conversation.assessment
            stopped_once |= isinstance(view, Verdict) and view.action == "stop_and_isolate"
            if stopped_once:
                assert assessment.danger.open or assessment.danger.withdrawn
                assert assessment.allowed_care.rank <= Care.LOOK_COLD.rank
            if isinstance(view, Verdict):
                reached.add(view.action)
                check_verdict(view, conversation, script.knowledge)
                if not (view.details.get("then") and chance.random() < 0.9):
                    break
                conversation.do(any_command(view_of_off(conversation), conversation, chance))
                continue
            assert Care(view.care).rank <= assessment.allowed_care.rank
            assert Care(view.care).rank <= script.knowledge.roles[role].asked_up_to.rank
            if assessment.danger.open:
                assert view.care == "talk"
            conversation.do(any_command(view, conversation, chance))
        else:
            pytest.fail(f"walk {seed} asked {MOST_QUESTIONS} questions without a verdict")
    assert len(reached) >= 5


def view_of_off(conversation: Conversation) -> QuestionView:
    danger_open = conversation.assessment.danger.open
    return question_view(conversation.script.knowledge, OVEN_IS_OFF, conversation.state, danger_open)


def check_verdict(verdict: Verdict, conversation: Conversation, knowledge: Knowledge) -> None:
    danger = conversation.assessment.danger
    if danger.stops:
        assert verdict.action == "stop_and_isolate"
    if danger.open or danger.withdrawn:
        assert verdict.action not in ("use_differently", "do_one_thing", "all_normal")
        assert "tips" not in verdict.details or not danger.open
    if verdict.action == "do_one_thing":
        assert verdict.details["act"] in knowledge.acts
    assert sum(p for _, p in verdict.hypotheses) == pytest.approx(1)


def test_the_state_is_nothing_but_its_events(begun: Begin, script: Script) -> None:
    for seed in range(20):
        chance = random.Random(seed)
        conversation = begun()
        for _ in range(15):
            view = conversation.view()
            if isinstance(view, Verdict):
                break
            conversation.do(any_command(view, conversation, chance))
        events = conversation._log.read(conversation.record.session_id)
        assert fold(events) == conversation.state
        assert [event.sequence for event in events] == list(range(1, len(events) + 1))


def test_the_order_of_answers_changes_no_belief(begun: Begin) -> None:
    answers = {
        "danger_now": ["none"],
        "which_appliance": "electric_oven",
        "what_goes_wrong": ["pale_below"],
        "underside_pale": "white_or_raw",
        "person_at_oven": "yes",
        "may_look_cold": "off_and_cold",
        "lamp_remembered": "comes_and_goes",
    }
    one = begun(**answers)
    other = begun(**dict(reversed(answers.items())))
    assert one.assessment.posterior.ranked() == other.assessment.posterior.ranked()
    assert one.assessment.trace == other.assessment.trace
    assert choose_next(one.script, one.assessment) == choose_next(other.script, other.assessment)


def test_withdrawing_restores_everything_that_was_derived(begun: Begin) -> None:
    before = begun(danger_now=["none"], underside_pale="white_or_raw")
    after = begun(danger_now=["none"], underside_pale="white_or_raw", which_dishes="everything")
    after.do(WithdrawAnswer("which_dishes"))
    assert before.assessment.posterior.probabilities.tobytes() == after.assessment.posterior.probabilities.tobytes()
    assert before.assessment.trace == after.assessment.trace
    assert look(before.script, before.assessment) == look(after.script, after.assessment)
