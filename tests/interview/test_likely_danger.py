"""Dangerous causes that are likely stop an interview, though no danger sign was told."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from assistant.interview.commands import Finish, GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.model import Care, Figure
from assistant.store.memory import MemoryStore
from assistant.wording.sentences import Sentences

CAUSE = "thermostat_stuck_closed"
TOLD = {"what_goes_wrong": ["too_hot"], "which_appliance": "electric_oven", "lamp_remembered": "never_goes_out"}
AT_THE_OVEN = {
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "look_over": ["none"],
    "ever_tripped": "never",
}

Talk = Callable[..., Conversation]


def with_thresholds(script: Script, **percent: float) -> Script:
    figures = {name: Figure(value=value, unit="percent", source="a test") for name, value in percent.items()}
    settings = script.knowledge.settings.model_copy(update=figures)
    return replace(script, knowledge=script.knowledge.model_copy(update={"settings": settings}))


@pytest.fixture
def strict(script: Script) -> Talk:
    """Starts conversations by rules that stop at 10 %."""

    def begin(**answers: object) -> Conversation:
        record = SessionRecord(session_id="e" * 32, code_hash="f" * 64, name=None, created_at=utc_now())
        strict = with_thresholds(script, stop_above=10, dangerous_above=8)
        conversation = Conversation(strict, MemoryStore(), record)
        conversation.start(Start("householder", "great_britain", "en-GB", "single"))
        for question_id, value in {"danger_now": ["none"], **answers}.items():
            conversation.do(GiveAnswer(question_id, value))
        return conversation

    return begin


def test_it_stops_and_says_by_what(strict: Talk, sentences: Sentences) -> None:
    conversation = strict(**TOLD)
    assert conversation.assessment.dangerous >= 0.1
    (stop,) = conversation.assessment.danger.stops
    assert (stop.source, stop.source_id, stop.sign_id) == ("belief", CAUSE, "too_hot")
    view = conversation.view()
    assert isinstance(view, Verdict)
    assert view.action == "stop_and_isolate"
    assert view.details["steps"]
    text = sentences.verdict(view)
    assert "You told us" not in text.explanation
    assert "points to this danger" in text.explanation
    assert {reason.kind for reason in view.because} == {"answer"}


def test_nothing_hot_and_nothing_to_do_by_oneself_is_left(strict: Talk) -> None:
    conversation = strict(**AT_THE_OVEN, **TOLD)
    assert conversation.assessment.allowed_care is Care.TALK
    conversation.do(GiveAnswer("oven_is_off", "off_at_breaker"))
    asked = []
    while isinstance(view := conversation.view(), QuestionView):
        asked.append(conversation.script.knowledge.questions[view.id])
        conversation.do(SayNotSure(view.id))
    assert len(asked) >= 3
    assert all(question.care is Care.TALK and question.stage in ("complaint", "visit") for question in asked)
    assert view.action == "stop_and_isolate"


def test_it_is_remembered_when_an_answer_is_taken_back(strict: Talk) -> None:
    conversation = strict(**TOLD)
    assert list(conversation.state.reached) == ["too_hot"]
    conversation.do(GiveAnswer("lamp_remembered", "comes_and_goes"))
    assert conversation.assessment.danger.withdrawn == ("too_hot",)
    view = conversation.view()
    assert isinstance(view, QuestionView)
    assert view.id == "sign_too_hot"
    conversation.do(GiveAnswer("sign_too_hot", "no"), Finish())
    verdict = conversation.view()
    assert isinstance(verdict, Verdict)
    assert (verdict.action, verdict.details["urgency"]) == ("book_visit", "soon")
    assert verdict.details["withdrawn_signs"] == ("too_hot",)


def test_below_the_stop_but_likely_there_is_no_hot_test_and_somebody_comes(script: Script) -> None:
    record = SessionRecord(session_id="e" * 32, code_hash="f" * 64, name=None, created_at=utc_now())
    conversation = Conversation(with_thresholds(script, stop_above=90, dangerous_above=8), MemoryStore(), record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"))
    for question_id, value in {"danger_now": ["none"], **AT_THE_OVEN, **TOLD}.items():
        conversation.do(GiveAnswer(question_id, value))
    assert conversation.assessment.allowed_care is Care.LOOK_COLD
    conversation.do(Finish())
    verdict = conversation.view()
    assert isinstance(verdict, Verdict)
    assert verdict.action == "book_visit"
    assert verdict.details["urgency"] == "soon"
