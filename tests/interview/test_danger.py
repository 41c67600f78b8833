"""Danger outranks everything, can't be skipped, and is not forgotten."""

import pytest

from assistant.errors import Refused
from assistant.interview.commands import GiveAnswer, HearDanger, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.model import Knowledge
from tests.conftest import Begin


def asked(conversation: Conversation) -> str:
    view = conversation.view()
    assert isinstance(view, QuestionView), view
    return view.id


def verdict(conversation: Conversation) -> Verdict:
    view = conversation.view()
    assert isinstance(view, Verdict), view
    return view


def signs(knowledge: Knowledge, grade: str) -> list[str]:
    return [s for s, sign in knowledge.signs.items() if sign.grade == grade and sign.on_screen]


def test_danger_is_asked_first(begun: Begin) -> None:
    assert asked(begun()) == "danger_now"


def test_every_stop_sign_on_the_screen_stops_at_once(begun: Begin, knowledge: Knowledge) -> None:
    assert signs(knowledge, "stop")
    for sign in signs(knowledge, "stop"):
        reached = verdict(begun(danger_now=[sign]))
        assert reached.action == "stop_and_isolate"
        assert [stop.sign_id for stop in reached.stops] == [sign]
        assert reached.details["steps"]
        assert reached.details["then"] == "oven_is_off"


def test_every_narrow_sign_asks_one_question_and_then_stops_or_clears(begun: Begin, knowledge: Knowledge) -> None:
    assert signs(knowledge, "narrow")
    for sign in signs(knowledge, "narrow"):
        for answer, means in knowledge.signs[sign].answers.items():
            conversation = begun(danger_now=[sign])
            assert asked(conversation) == f"sign_{sign}"
            conversation.do(GiveAnswer(f"sign_{sign}", answer))
            stopped = bool(conversation.assessment.danger.stops)
            assert stopped == (means == "stop"), (sign, answer)


def test_doubt_about_a_sign_is_danger(begun: Begin, knowledge: Knowledge) -> None:
    for sign in signs(knowledge, "narrow"):
        conversation = begun(danger_now=[sign])
        conversation.do(SayNotSure(f"sign_{sign}"))
        assert verdict(conversation).action == "stop_and_isolate"


def test_not_sure_about_danger_is_asked_once_more_and_then_counts(begun: Begin) -> None:
    conversation = begun()
    conversation.do(SayNotSure("danger_now"))
    assert asked(conversation) == "danger_plainly"
    conversation.do(SayNotSure("danger_plainly"))
    assert [stop.sign_id for stop in verdict(conversation).stops] == ["unsure"]


def test_danger_asked_plainly_names_the_four_that_count(begun: Begin, knowledge: Knowledge) -> None:
    plain = {s for s, sign in knowledge.signs.items() if sign.ask_plainly}
    assert plain == {"shock", "sparks", "hot_plastic_smell", "heat_wont_go_off"}
    conversation = begun()
    conversation.do(SayNotSure("danger_now"))
    conversation.do(GiveAnswer("danger_plainly", ["none"]))
    assert not conversation.assessment.danger.open


def test_skipping_danger_says_not_sure(begun: Begin) -> None:
    conversation = begun()
    conversation.do(SkipQuestion("danger_now"))
    assert conversation.state.status("danger_now") == "not_sure"


def test_a_heard_sign_is_asked_before_the_screen_and_before_anything_else(begun: Begin) -> None:
    conversation = begun()
    conversation.do(HearDanger("smoke", clear=True))
    assert asked(conversation) == "sign_smoke"
    later = begun(danger_now=["none"], which_appliance="electric_oven")
    later.do(HearDanger("shock", clear=False))
    assert asked(later) == "sign_shock"


def test_a_heard_sign_that_is_denied_lets_the_talk_go_on(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["none"])
    before = asked(conversation)
    conversation.do(HearDanger("shock", clear=True))
    clear = next(answer for answer, means in knowledge.signs["shock"].answers.items() if means == "clear")
    conversation.do(GiveAnswer("sign_shock", clear))
    assert asked(conversation) == before


def test_a_sign_heard_again_is_asked_again(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["none"])
    clear = next(answer for answer, means in knowledge.signs["shock"].answers.items() if means == "clear")
    for _ in range(2):
        conversation.do(HearDanger("shock", clear=True))
        assert asked(conversation) == "sign_shock"
        conversation.do(GiveAnswer("sign_shock", clear))


def test_after_a_stop_the_oven_is_confirmed_off_and_only_talk_goes_on(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["sparks"], person_at_oven="yes")
    assert verdict(conversation).details["off_confirmed"] is False
    conversation.do(GiveAnswer("oven_is_off", "still_on"))
    assert verdict(conversation).details["then"] == "oven_is_off"
    conversation.do(GiveAnswer("oven_is_off", "off_at_breaker"))
    while isinstance(view := conversation.view(), QuestionView):
        assert view.care == "talk"
        assert view.open_danger
        conversation.do(SayNotSure(view.id))
    assert verdict(conversation).action == "stop_and_isolate"
    assert verdict(conversation).details["off_confirmed"] is True


def test_a_new_sign_wants_the_oven_confirmed_off_again(begun: Begin) -> None:
    conversation = begun(danger_now=["sparks"], oven_is_off="off_at_breaker")
    assert conversation.assessment.danger.off_confirmed
    conversation.do(GiveAnswer("danger_now", ["sparks", "shock"]))
    assert verdict(conversation).details["then"] == "oven_is_off"


def test_a_withdrawn_sign_is_remembered_and_leaves_a_visit(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["sparks"])
    conversation.do(GiveAnswer("danger_now", ["none"]))
    assert conversation.assessment.danger.withdrawn == ("sparks",)
    while isinstance(view := conversation.view(), QuestionView):
        conversation.do(SkipQuestion(view.id))
    reached = verdict(conversation)
    assert reached.action == "book_visit"
    assert reached.details["withdrawn_signs"] == ("sparks",)


def test_taking_the_danger_answer_back_asks_it_again(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], which_appliance="electric_oven")
    conversation.do(WithdrawAnswer("danger_now"))
    assert asked(conversation) == "danger_now"


def test_none_of_these_does_not_go_with_a_sign(begun: Begin) -> None:
    with pytest.raises(Refused, match="none_with_others"):
        begun(danger_now=["none", "sparks"])


def test_a_finding_stops_as_well(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], browner_than_meant="burns_fast", lamp_cycle="never_out")
    reached = verdict(conversation)
    assert reached.action == "stop_and_isolate"
    assert {stop.source for stop in reached.stops} == {"finding"}


def test_gas_steps_stand_alone(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["gas_smell", "sparks"])
    assert verdict(conversation).details["steps"] == knowledge.signs["gas_smell"].steps


def test_a_stop_outranks_an_appliance_that_is_not_ours(begun: Begin) -> None:
    conversation = begun(which_appliance="microwave", danger_now=["sparks"])
    assert verdict(conversation).action == "stop_and_isolate"
