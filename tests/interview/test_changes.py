"""What a verdict says would change it does change it."""

import pytest

from assistant.belief.value import look_ahead
from assistant.interview import changes
from assistant.interview.assess import assess
from assistant.interview.choice import choose
from assistant.interview.commands import Finish, GiveAnswer, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.supposed import answered_otherwise
from assistant.interview.verdict import Verdict
from assistant.interview.way import may_ask
from tests.conftest import Begin

TOLD: dict[str, dict[str, object]] = {
    "a dead oven": {
        "what_goes_wrong": ["nothing_comes_on"],
        "how_it_began": "little_by_little",
        "any_heat": "stays_cold",
    },
    "too brown": {"what_goes_wrong": ["too_hot"], "how_it_began": "always_so", "recipe_for_fan": "as_printed"},
    "pale below": {"what_goes_wrong": ["pale_below"], "how_it_began": "from_one_day", "underside_pale": "white_or_raw"},
    "a worry": {"what_goes_wrong": ["a_worry"], "which_worry": ["ticking"]},
}


def ended(begun: Begin, case: str) -> tuple[Conversation, Verdict]:
    conversation = begun(danger_now=["none"], which_appliance="electric_oven", **TOLD[case])
    conversation.do(Finish())
    view = conversation.view()
    assert isinstance(view, Verdict)
    return conversation, view


def some_answer_changes(conversation: Conversation, verdict: Verdict) -> bool:
    """Every answer to every open question, tried one by one, but those that hardly anybody would give."""
    script, now = conversation.script, conversation.assessment
    reporting = [q for q in script.evidence_model.codes if q in script.knowledge.questions and q not in now.evidence]
    may_be_asked = [q for q in reporting if may_ask(script, now, q)]
    outlook = look_ahead(script.evidence_model, now.evidence, now.posterior, may_be_asked, 0.0)
    told = outlook.given @ outlook.probabilities
    supposed = (
        assess(script, answered_otherwise(script, now.state, question_id, code))
        for question_id in may_be_asked
        for code, likely in zip(script.evidence_model.codes[question_id], told[outlook.rows[question_id]], strict=True)
        if likely >= changes.LEAST_LIKELY
    )
    return any(choose(script, s).action != verdict.action and not s.danger.open_questions for s in supposed)


def test_an_answer_that_only_a_finding_makes_decisive_is_told(begun: Begin, script: Script) -> None:
    """A grill that burns at every mark wants a visit whatever belief says, and whatever else the food tells."""
    _, verdict = ended(begun, "too brown")
    assert script.knowledge.findings["grill_wont_turn_down"].then.visit_anyway
    assert verdict.action == "use_differently"
    told = {change.question_id: change for change in verdict.would_change}
    assert (told["grill_doses"].value, told["grill_doses"].action) == ("full_at_every_mark", "book_visit")


@pytest.mark.parametrize("case", TOLD)
def test_each_answer_that_would_change_the_verdict_does_so_when_it_is_given(begun: Begin, case: str) -> None:
    before, verdict = ended(begun, case)
    given = [change for change in verdict.would_change if change.value is not None]
    assert bool(given) is some_answer_changes(before, verdict)
    for change in verdict.would_change:
        conversation, _ = ended(begun, case)
        if change.value is None:
            conversation.do(WithdrawAnswer(change.question_id))
        else:
            conversation.do(GiveAnswer(change.question_id, change.value))
        assert not conversation.assessment.danger.open
        conversation.do(Finish())
        then = conversation.view()
        assert isinstance(then, Verdict)
        assert then.action == change.action != verdict.action


def test_an_answer_that_speaks_of_danger_is_not_told_to_lead_to_a_verdict(
    begun: Begin, script: Script, monkeypatch: pytest.MonkeyPatch
) -> None:
    conversation, verdict = ended(begun, "pale below")
    for answer, told in ((("other_lights", "bright_and_dim"), False), (("floor_of_oven", "something_on_it"), True)):
        monkeypatch.setattr(changes, "_proposals", lambda *_, answer=answer: iter([answer]))
        found = changes.changes_of(script, conversation.assessment, verdict.action)
        assert bool(found) is told
