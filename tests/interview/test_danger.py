"""Danger outranks everything, can't be skipped, and is not forgotten."""

import itertools
from dataclasses import replace

import pytest

from assistant.authoring.check import example_answers
from assistant.errors import Refused
from assistant.interview.assess import assess
from assistant.interview.commands import Finish, GiveAnswer, HearDanger, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import DANGER_NOW, danger_questions, is_danger_question
from assistant.knowledge.model import Care, Knowledge, Sign
from tests.conftest import Begin
from tests.interview.fit import GATE


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
        assert reached.details.get("then") == ("oven_is_off" if knowledge.signs[sign].confirm_off else None)


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


def test_a_withdrawn_sign_is_remembered_and_leaves_a_visit(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["sparks"])
    clear = next(answer for answer, means in knowledge.signs["sparks"].answers.items() if means == "clear")
    conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer("sign_sparks", clear))
    assert conversation.assessment.danger.withdrawn == ("sparks",)
    while isinstance(view := conversation.view(), QuestionView):
        assert view.care in ("talk", "look_cold")
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


LIKELY_DANGER = {"what_goes_wrong": ["too_hot"], "lamp_remembered": "never_goes_out", "low_setting": "stays_lit"}
"""Makes a thermostat that never opens likely, without any finding that stops."""


def test_likely_danger_stops_as_well(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["none"], **LIKELY_DANGER)
    assert conversation.assessment.dangerous >= knowledge.settings.stop_above.share
    reached = verdict(conversation)
    assert reached.action == "stop_and_isolate"
    assert [(stop.sign_id, stop.source, stop.source_id) for stop in reached.stops] == [
        ("too_hot", "belief", "thermostat_stuck_closed")
    ]
    assert reached.details["steps"]
    assert reached.details["then"] == "oven_is_off"
    assert {"lamp_remembered", "low_setting"} <= {reason.id for reason in reached.because} <= LIKELY_DANGER.keys()
    assert conversation.state.standing_signs == {"too_hot"}


def test_a_stop_by_likely_danger_is_remembered_when_the_danger_is_likely_no_more(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], **LIKELY_DANGER)
    conversation.do(WithdrawAnswer("low_setting"), WithdrawAnswer("lamp_remembered"))
    assert conversation.state.standing_signs == frozenset()
    assert conversation.assessment.danger.withdrawn == ("too_hot",)
    assert asked(conversation) == "sign_too_hot"
    conversation.do(GiveAnswer("sign_too_hot", "no"))
    assert not conversation.assessment.danger.open
    assert conversation.assessment.allowed_care.rank <= Care.LOOK_COLD.rank
    conversation.do(Finish())
    assert verdict(conversation).action == "book_visit"


def test_a_stop_by_likely_danger_that_answers_speak_against_is_asked_about_and_leaves_a_visit(begun: Begin) -> None:
    told = {"what_goes_wrong": ["too_hot", "light_or_clock"], "low_setting": "stays_lit"}
    conversation = begun(danger_now=["none"], **told)
    assert [stop.source for stop in conversation.assessment.danger.stops] == ["belief"]
    conversation.do(GiveAnswer("how_it_began", "always_so"))
    assert not conversation.assessment.danger.stops
    assert asked(conversation) == "sign_too_hot"
    conversation.do(GiveAnswer("sign_too_hot", "no"), Finish())
    assert verdict(conversation).action == "book_visit"
    assert verdict(conversation).details["urgency"] == "soon"


def test_after_a_stop_by_likely_danger_talk_goes_on_once_the_oven_is_off(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["none"], **LIKELY_DANGER)
    conversation.do(GiveAnswer("oven_is_off", "off_at_breaker"))
    while isinstance(view := conversation.view(), QuestionView):
        assert view.id != "oven_is_off"
        assert knowledge.questions[view.id].care is Care.TALK
        told = {"how_it_began": "from_one_day"}
        conversation.do(GiveAnswer(view.id, told[view.id]) if view.id in told else SayNotSure(view.id))
    assert "how_it_began" in conversation.assessment.evidence
    assert view.action == "stop_and_isolate"
    assert view.details["off_confirmed"]


def test_nobody_is_sent_back_to_a_burning_oven_or_to_a_switch_in_gas(begun: Begin, knowledge: Knowledge) -> None:
    for sign in ("fire", "gas_smell", "co_alarm"):
        assert not knowledge.signs[sign].confirm_off
        conversation = begun(danger_now=["sparks"], oven_is_off="off_at_breaker")
        conversation.do(
            HearDanger(sign, clear=True), GiveAnswer(f"sign_{sign}", next(iter(knowledge.signs[sign].answers)))
        )
        reached = verdict(conversation)
        assert sign in [stop.sign_id for stop in reached.stops]
        assert "then" not in reached.details


def test_the_gravest_signs_own_steps_are_told_beside_another(begun: Begin, knowledge: Knowledge) -> None:
    on_screen = [s for s, sign in knowledge.signs.items() if sign.on_screen and sign.grade == "stop"]
    for one, other in itertools.combinations(sorted(on_screen, key=lambda s: knowledge.signs[s].order), 2):
        told = list(verdict(begun(danger_now=[other, one])).details["steps"])  # type: ignore[arg-type]
        both = {*knowledge.signs[one].steps, *knowledge.signs[other].steps}
        ruled_out = {s for step in both for s in knowledge.steps[step].rules_out}
        assert set(knowledge.signs[one].steps) - ruled_out <= set(told)
        assert all(knowledge.steps[s].touches_nothing for s in set(told) - set(knowledge.signs[one].steps))


def test_confirming_off_hides_no_steps_of_fire_or_gas(begun: Begin) -> None:
    for sign in ("fire", "gas_smell"):
        reached = verdict(begun(danger_now=[sign], oven_is_off="off_at_breaker"))
        assert reached.details["off_confirmed"] is False
        assert reached.details["steps"]


def test_a_standing_sign_told_again_wants_the_oven_confirmed_off_again(begun: Begin) -> None:
    conversation = begun(danger_now=["shock"], oven_is_off="off_at_breaker")
    conversation.do(HearDanger("shock", clear=True))
    assert verdict(conversation).details["then"] == "oven_is_off"
    by_finding = begun(danger_now=["none"], browner_than_meant="burns_fast", lamp_cycle="never_out")
    by_finding.do(GiveAnswer("oven_is_off", "off_at_breaker"))
    assert by_finding.assessment.danger.off_confirmed
    by_finding.do(HearDanger("too_hot", clear=True))
    assert not by_finding.assessment.danger.off_confirmed


def test_a_cleared_sign_told_again_is_asked_again(begun: Begin) -> None:
    conversation = begun(danger_now=["smoke"], sign_smoke="spilt_food")
    conversation.do(HearDanger("smoke", clear=True))
    assert asked(conversation) == "sign_smoke"


def test_danger_heard_or_an_answer_taken_back_reopens_what_was_finished(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], what_goes_wrong=["too_hot"])
    conversation.do(Finish())
    conversation.do(HearDanger("shock", clear=True))
    conversation.do(GiveAnswer("sign_shock", "no"))
    assert isinstance(conversation.view(), QuestionView)
    conversation.do(Finish())
    conversation.do(WithdrawAnswer("what_goes_wrong"))
    assert asked(conversation) == "what_goes_wrong"


def test_after_a_sign_was_taken_back_nothing_hot_is_asked_and_no_tip_given(begun: Begin) -> None:
    passed = {
        "person_at_oven": "yes",
        "may_look_cold": "off_and_cold",
        "ever_tripped": "never",
        "hot_gate": GATE,
        "what_goes_wrong": ["pale_below"],
        "floor_of_oven": "something_on_it",
        "underside_pale": "white_or_raw",
    }
    assert begun(danger_now=["none"], **passed).assessment.allowed_care.rank >= Care.WATCH_HOT.rank
    conversation = begun(danger_now=["shock"], **passed)
    conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer("sign_shock", "no"), Finish())
    assert conversation.assessment.allowed_care is Care.LOOK_COLD
    assert "tips" not in verdict(conversation).details


def test_likely_danger_is_never_called_normal(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["none"], browner_than_meant="burns_fast")
    conversation.do(GiveAnswer("which_dishes", "everything"), GiveAnswer("recipe_for_fan", "set_for_this_oven"))
    conversation.do(GiveAnswer("sign_too_hot", "a_bit_too_brown"), Finish())
    belief, knowledge = conversation.assessment.posterior, script.knowledge
    dangerous = sum(p for cause, p in belief.causes() if knowledge.causes[cause].danger)
    assert dangerous >= knowledge.settings.dangerous_above.share
    assert verdict(conversation).action == "book_visit"
    assert verdict(conversation).details["urgency"] == "soon"


def renamed_signs(script: Script, signs: dict[str, Sign]) -> Script:
    questions = {q: v for q, v in script.knowledge.questions.items() if not is_danger_question(q)}
    update = {"signs": signs, "questions": danger_questions(signs) | questions}
    return replace(script, knowledge=script.knowledge.model_copy(update=update))


def test_a_standing_sign_whose_answer_the_rules_no_longer_take_is_asked_again(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["none"], sign_shock="tingle")
    signs = dict(script.knowledge.signs)
    answers = {("prickle" if a == "tingle" else a): means for a, means in signs["shock"].answers.items()}
    signs["shock"] = signs["shock"].model_copy(update={"answers": answers})
    danger = assess(renamed_signs(script, signs), conversation.state).danger
    assert danger.open_questions == ("sign_shock",)


def test_a_withdrawn_sign_that_the_rules_no_longer_know_still_leaves_a_visit(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["sparks"])
    conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer("sign_sparks", "no"))
    signs = {("sparking" if s == "sparks" else s): sign for s, sign in script.knowledge.signs.items()}
    assert assess(renamed_signs(script, signs), conversation.state).danger.withdrawn == ("unsure",)


def test_a_graver_sign_told_after_a_stop_is_asked_before_anything_else(begun: Begin) -> None:
    conversation = begun(danger_now=["sparks"])
    conversation.do(HearDanger("gas_smell", clear=True))
    assert asked(conversation) == "sign_gas_smell"
    conversation.do(GiveAnswer("sign_gas_smell", "now"))
    assert verdict(conversation).stops[0].sign_id == "gas_smell"


def test_a_lesser_sign_told_after_a_stop_waits_until_the_oven_is_off(begun: Begin) -> None:
    conversation = begun(danger_now=["shock"])
    conversation.do(HearDanger("smoke", clear=True))
    assert verdict(conversation).stops[0].sign_id == "shock"
    conversation.do(GiveAnswer("oven_is_off", "off_at_breaker"))
    assert asked(conversation) == "sign_smoke"


@pytest.mark.parametrize("sign", ["sparks", "smoke", "shock", "too_hot"])
def test_a_sign_that_is_unticked_is_asked_about_once(begun: Begin, knowledge: Knowledge, sign: str) -> None:
    conversation = begun(danger_now=[sign])
    conversation.do(GiveAnswer("danger_now", ["none"]))
    assert asked(conversation) == f"sign_{sign}"
    clear = next(answer for answer, means in knowledge.signs[sign].answers.items() if means == "clear")
    conversation.do(GiveAnswer(f"sign_{sign}", clear))
    assert not conversation.assessment.danger.open
    conversation.do(WithdrawAnswer(f"sign_{sign}"))
    assert asked(conversation) == f"sign_{sign}"


def test_every_stop_by_a_finding_is_remembered_when_its_answers_change(begun: Begin, knowledge: Knowledge) -> None:
    stopping = {f: finding for f, finding in knowledge.findings.items() if finding.then.stops}
    assert len(stopping) >= 3
    for finding_id, finding in stopping.items():
        for example in finding.examples.fires:
            if DANGER_NOW in example:
                continue
            answers = {q: answer.value for q, answer in example_answers(example, knowledge).items() if answer.value}
            conversation = begun(danger_now=["none"], **answers)
            assert finding_id in [stop.source_id for stop in conversation.assessment.danger.stops] or (
                conversation.assessment.danger.stops
            )
            for question_id in answers:
                conversation.do(WithdrawAnswer(question_id))
            danger = conversation.assessment.danger
            assert danger.open or danger.withdrawn, finding_id
            if not danger.open:
                conversation.do(Finish())
                assert verdict(conversation).action == "book_visit"
                assert conversation.assessment.allowed_care.rank <= Care.LOOK_COLD.rank


def test_a_stop_by_a_finding_that_is_lifted_is_asked_about_once(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], low_setting="stays_lit", less_done_than_meant="in_good_time")
    assert conversation.assessment.danger.stops[0].source == "finding"
    conversation.do(GiveAnswer("low_setting", "goes_out"))
    assert not conversation.assessment.danger.stops
    assert asked(conversation) == "sign_too_hot"
    conversation.do(GiveAnswer("sign_too_hot", "no"))
    assert not conversation.assessment.danger.open
    assert conversation.assessment.danger.withdrawn == ("too_hot",)


def test_a_withdrawn_sign_is_told_even_where_the_appliance_is_not_ours(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun(danger_now=["shock"], which_appliance="hob_only")
    clear = next(answer for answer, means in knowledge.signs["shock"].answers.items() if means == "clear")
    conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer("sign_shock", clear))
    reached = verdict(conversation)
    assert reached.action == "outside"
    assert reached.details["withdrawn_signs"] == ("shock",)


def test_not_sure_is_asked_plainly_again_after_an_older_plain_answer(begun: Begin) -> None:
    conversation = begun()
    conversation.do(SayNotSure("danger_now"))
    conversation.do(GiveAnswer("danger_plainly", ["none"]), GiveAnswer("danger_now", ["none"]))
    conversation.do(SayNotSure("danger_now"))
    assert asked(conversation) == "danger_plainly"


def test_rules_that_no_longer_know_a_standing_sign_do_not_lift_it(begun: Begin, script: Script) -> None:
    conversation = begun(danger_now=["sparks"], oven_is_off="off_at_breaker")
    signs = {("sparking" if s == "sparks" else s): sign for s, sign in script.knowledge.signs.items()}
    danger = assess(renamed_signs(script, signs), conversation.state).danger
    assert [stop.sign_id for stop in danger.stops] == ["unsure"]
    assert DANGER_NOW in danger.open_questions


def test_a_stop_outranks_an_appliance_that_is_not_ours(begun: Begin) -> None:
    conversation = begun(which_appliance="microwave", danger_now=["sparks"])
    assert verdict(conversation).action == "stop_and_isolate"
