"""Answers, refusals, the order of questions, and every verdict."""

import math
from dataclasses import replace

import pytest

from assistant.errors import Refused
from assistant.interview.assess import assess
from assistant.interview.commands import Finish, GiveAnswer, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.decide import decide
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.model import CALL_STAGES, Care, Knowledge
from tests.conftest import Begin


def concluded(conversation: Conversation) -> Verdict:
    conversation.do(Finish())
    view = conversation.view()
    assert isinstance(view, Verdict)
    return view


@pytest.mark.parametrize(
    ("question", "value", "unit", "code"),
    [
        ("no_such", "x", None, "unknown_question"),
        ("which_appliance", "electric", None, "unknown_choice"),
        ("which_appliance", 2, None, "choice_expected"),
        ("which_appliance", None, None, "choice_expected"),
        ("which_appliance", "electric_oven", "minutes", "unit_without_number"),
        ("danger_now", "none", None, "choices_expected"),
        ("danger_now", [], None, "choices_expected"),
        ("danger_now", ["none", 3], None, "choice_expected"),
        ("age_of_oven", "ten", None, "number_expected"),
        ("age_of_oven", True, None, "number_expected"),
        ("age_of_oven", math.nan, None, "number_expected"),
        ("age_of_oven", math.inf, None, "number_out_of_range"),
        ("age_of_oven", 10**400, None, "number_out_of_range"),
        ("age_of_oven", -1, None, "number_out_of_range"),
        ("age_of_oven", 1e300, None, "number_out_of_range"),
        ("age_of_oven", 4, "furlongs", "unknown_unit"),
        ("complaint_in_own_words", "  ", None, "text_expected"),
        ("complaint_in_own_words", 7, None, "text_expected"),
        ("complaint_in_own_words", "x" * 2001, None, "text_too_long"),
    ],
)
def test_a_wrong_answer_is_refused_and_changes_nothing(
    begun: Begin, question: str, value: object, unit: str | None, code: str
) -> None:
    conversation = begun(danger_now=["none"])
    before = conversation.state
    with pytest.raises(Refused, match=code):
        conversation.do(GiveAnswer(question, value, unit))
    assert conversation.state is before


ENGINEERS_TEST = ("test_top_element", "open")


@pytest.mark.parametrize("role", ["householder", "agent"])
def test_what_only_an_engineer_may_be_asked_is_taken_from_nobody_else(begun: Begin, role: str) -> None:
    question, value = ENGINEERS_TEST
    conversation = begun(role, danger_now=["none"])
    before = conversation.state
    for command in (GiveAnswer(question, value), SayNotSure(question), SkipQuestion(question)):
        with pytest.raises(Refused, match="not_for_role") as refused:
            conversation.do(command)
        assert refused.value.details == {"question": question, "role": role}
    assert conversation.state is before


def test_all_that_an_engineer_or_an_agent_alone_may_be_asked_is_refused_and_nothing_else(
    begun: Begin, knowledge: Knowledge
) -> None:
    state = begun(danger_now=["none"]).state
    of_engineers = [q for q, question in knowledge.questions.items() if question.care is Care.ENGINEER]
    of_calls = [q for q, question in knowledge.questions.items() if question.stage in CALL_STAGES]
    not_theirs = {*of_engineers, *of_calls}
    for question_id in not_theirs:
        with pytest.raises(Refused, match="not_for_role"):
            decide(knowledge, state, SayNotSure(question_id))
    assert all(decide(knowledge, state, SayNotSure(q)) for q in knowledge.questions if q not in not_theirs)
    assert len(of_engineers) >= 30


def test_an_engineer_may_tell_what_was_measured_and_it_counts(begun: Begin) -> None:
    question, value = ENGINEERS_TEST
    before = begun("engineer", danger_now=["none"])
    after = begun("engineer", danger_now=["none"], **{question: value})
    assert after.assessment.evidence == {**before.assessment.evidence, question: value}
    assert after.assessment.posterior.of("top_element_open") > 10 * before.assessment.posterior.of("top_element_open")


def as_asked_up_to(knowledge: Knowledge, **care: Care) -> Knowledge:
    roles = {name: role.model_copy(update={"asked_up_to": care[name]}) for name, role in knowledge.roles.items()}
    return knowledge.model_copy(update={"roles": roles})


def test_a_role_that_the_rules_no_longer_know_may_do_what_every_role_may(begun: Begin, knowledge: Knowledge) -> None:
    state = replace(begun().state, role="apprentice")
    lower = as_asked_up_to(knowledge, householder=Care.LOOK_COLD, agent=Care.TALK, engineer=Care.ENGINEER)
    assert decide(lower, state, SayNotSure("underside_pale"))
    for rules, question in ((knowledge, "test_top_element"), (lower, "look_over")):
        with pytest.raises(Refused, match="not_for_role"):
            decide(rules, state, SayNotSure(question))
    assert decide(knowledge, state, SayNotSure("look_over"))


def test_an_answer_that_speaks_of_danger_is_taken_whoever_gives_it(begun: Begin, knowledge: Knowledge) -> None:
    state = begun().state
    lower = as_asked_up_to(knowledge, householder=Care.TALK, agent=Care.TALK, engineer=Care.ENGINEER)
    assert knowledge.questions["look_over"].care is Care.LOOK_COLD
    assert decide(lower, state, GiveAnswer("look_over", ["panel_missing"]))
    with pytest.raises(Refused, match="not_for_role"):
        decide(lower, state, GiveAnswer("look_over", ["none"]))


def test_a_number_is_kept_in_the_questions_own_unit(begun: Begin) -> None:
    conversation = begun()
    conversation.do(GiveAnswer("age_of_oven", 18, "months"))
    assert conversation.state.answers["age_of_oven"].value == 1.5


def test_text_that_cannot_be_stored_is_made_storable(begun: Begin) -> None:
    conversation = begun(complaint_in_own_words="half \ud83d a \x1b[31m smile")
    assert conversation.state.texts["complaint_in_own_words"] == "half ? a \N{REPLACEMENT CHARACTER}[31m smile"


def test_a_choice_is_helped_by_the_nearest_name(begun: Begin) -> None:
    with pytest.raises(Refused) as refused:
        begun(which_appliance="electric_ovn")
    assert refused.value.details["nearest"] == "electric_oven"


def test_an_answer_may_be_changed_and_the_old_one_is_kept(begun: Begin) -> None:
    conversation = begun(which_appliance="gas_oven")
    conversation.do(GiveAnswer("which_appliance", "electric_oven"))
    assert conversation.state.answers["which_appliance"].value == "electric_oven"
    assert [old.value for old in conversation.state.replaced] == ["gas_oven"]


def test_nothing_can_be_withdrawn_that_was_not_answered(begun: Begin) -> None:
    with pytest.raises(Refused, match="nothing_to_withdraw"):
        begun().do(WithdrawAnswer("which_appliance"))


def test_a_skipped_question_comes_back_once_if_it_is_still_worth_its_effort(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], what_goes_wrong=["pale_below"], which_appliance="electric_oven")
    asked: list[str] = []
    while isinstance(view := conversation.view(), QuestionView):
        asked.append(view.id)
        conversation.do(SkipQuestion(view.id))
    again = [question for question in dict.fromkeys(asked) if asked.count(question) > 1]
    assert "floor_of_oven" in again
    assert max(map(asked.count, asked)) == 2
    first_time = list(dict.fromkeys(asked))
    signs = [q for q in first_time if conversation.script.knowledge.questions[q].stage == "signs"]
    assert asked.index(signs[-1]) < min(asked.index(q, asked.index(q) + 1) for q in again)


def test_an_answer_after_the_verdict_reopens_the_interview(begun: Begin) -> None:
    conversation = begun(danger_now=["none"])
    concluded(conversation)
    conversation.do(GiveAnswer("which_appliance", "electric_oven"))
    assert isinstance(conversation.view(), QuestionView)


def test_the_complaint_comes_after_danger_and_before_the_oven(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun()
    stages = []
    while isinstance(view := conversation.view(), QuestionView):
        stages.append(knowledge.questions[view.id].stage)
        conversation.do(GiveAnswer(view.id, ["none"]) if view.id == "danger_now" else SayNotSure(view.id))
    first_seen = list(dict.fromkeys(stages))
    assert first_seen[:3] == ["danger", "complaint", "oven"]


def test_a_part_that_is_not_fitted_excludes_its_causes_and_its_questions(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], functions_on_oven=["conventional"], fan_sound="silent")
    belief = conversation.assessment.posterior
    assert belief.of("ring_element_open") == 0
    assert belief.of("oven_fan_stopped") == 0
    assert "fan_sound" not in conversation.assessment.evidence
    assert conversation.state.answers["fan_sound"].value == "silent"


def test_no_answer_about_signs_excludes_a_cause(begun: Begin, knowledge: Knowledge) -> None:
    conversation = begun("engineer", danger_now=["none"])
    before = conversation.assessment
    for question_id, question in knowledge.questions.items():
        if question.observable and question.kind == "choice":
            reporting = next(code for code, choice in question.choices.items() if not choice.is_no_report)
            conversation.do(GiveAnswer(question_id, reporting))
    after = conversation.assessment
    assert len(after.evidence) > 100
    assert after.not_fitted == before.not_fitted
    possible = [hypothesis for hypothesis, p in before.posterior.ranked() if p > 0]
    assert [h for h, p in after.posterior.ranked() if p > 0 and h not in possible] == []
    assert all(after.posterior.of_set(hypothesis) > 0 for hypothesis in possible)
    assert len(possible) > len(knowledge.causes)


def test_without_anybody_at_the_oven_only_talk_is_asked(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], person_at_oven="no")
    while isinstance(view := conversation.view(), QuestionView):
        assert view.care == "talk"
        conversation.do(SayNotSure(view.id))


def test_little_known_is_said(begun: Begin) -> None:
    reached = concluded(begun(danger_now=["none"]))
    assert reached.action == "book_visit"
    assert reached.details["little_known"] is True


def test_finishing_does_not_pass_over_danger(begun: Begin) -> None:
    conversation = begun()
    conversation.do(Finish())
    assert isinstance(conversation.view(), QuestionView)


def test_answers_that_newer_rules_do_not_know_stay_inert(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], which_appliance="electric_oven")
    changed = conversation.state.answers["which_appliance"]
    answers = {
        **conversation.state.answers,
        "which_appliance": replace(changed, value="steam_oven"),
        "functions_on_oven": replace(changed, question_id="functions_on_oven", value=("hovering",)),
        "long_gone": replace(changed, question_id="long_gone", value=3.0),
        "underside_pale": replace(changed, question_id="underside_pale", value="raw"),
    }
    older = assess(conversation.script, replace(conversation.state, answers=answers))
    newer = assess(conversation.script, begun(danger_now=["none"]).state)
    assert older.posterior.ranked() == newer.posterior.ranked()
    assert older.not_fitted == newer.not_fitted
    assert older.evidence == newer.evidence
