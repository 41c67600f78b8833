"""Which causes the answers have ruled out, and by which answer."""

import pytest

from assistant.belief.posterior import posterior
from assistant.interview.ruled_out import COMPLAINT, MATTERS, POSSIBLE, RULED_OUT, ruled_out
from assistant.interview.script import Script, question_of_key
from tests.conftest import Begin
from tests.interview.pale_below import PALE

BARE_FLOOR = {**PALE, "floor_of_oven": "bare"}


def test_without_answers_nothing_is_ruled_out(begun: Begin, script: Script) -> None:
    assert ruled_out(script, begun().assessment) == ()


def test_what_is_ruled_out_was_possible_by_the_complaint_and_is_not_any_more(begun: Begin, script: Script) -> None:
    assessment = begun(**BARE_FLOOR).assessment
    complaint = {r: c for r, c in assessment.evidence.items() if question_of_key(r) == COMPLAINT}
    first = posterior(script.evidence_model, complaint, assessment.not_fitted)
    gone = [cause for each in ruled_out(script, assessment) for cause in each.causes]
    assert gone
    for cause in gone:
        assert first.of(cause) >= POSSIBLE
        assert assessment.posterior.of(cause) < RULED_OUT
    assert len(gone) == len(set(gone))


def test_the_answer_beside_it_is_the_one_without_which_the_cause_would_be_likeliest(
    begun: Begin, script: Script
) -> None:
    assessment = begun(**BARE_FLOOR).assessment
    questions = dict.fromkeys(map(question_of_key, assessment.evidence))
    for each in ruled_out(script, assessment):
        for cause in each.causes:
            without = {
                question: posterior(
                    script.evidence_model,
                    {r: c for r, c in assessment.evidence.items() if question_of_key(r) != question},
                    assessment.not_fitted,
                ).of(cause)
                for question in questions
            }
            highest = max(without.values())
            if each.question_id is None:
                assert highest < MATTERS * assessment.posterior.of(cause)
            else:
                assert without[each.question_id] == pytest.approx(highest, abs=1e-9)


def test_a_fan_that_cooks_well_rules_out_the_ring_element(begun: Begin, script: Script) -> None:
    by = {each.question_id: each.causes for each in ruled_out(script, begun(**BARE_FLOOR).assessment)}
    assert "ring_element_open" in by["fan_cooks"]
