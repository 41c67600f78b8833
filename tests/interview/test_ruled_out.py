"""Which causes the answers have ruled out, and by which answer."""

from collections.abc import Callable, Mapping
from typing import Any

import pytest

from assistant.belief.posterior import Posterior, posterior
from assistant.interview.assess import Assessment
from assistant.interview.commands import GiveAnswer
from assistant.interview.ruled_out import COMPLAINT, MATTERS, POSSIBLE, RULED_OUT, SPEAKS_AGAINST, ruled_out
from assistant.interview.script import Script, question_of_key
from tests.conftest import Begin
from tests.interview.pale_below import PALE

BARE_FLOOR = {**PALE, "floor_of_oven": "bare"}
CONTRADICTED: Mapping[str, Any] = {
    "danger_now": ["none"],
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "built_in_knobs",
    "underside_pale": "white_or_raw",
    "how_it_began": "from_one_day",
    "which_dishes": "everything",
    "fan_cooks": "cooks_well",
    "bottom_heat_alone": "white_or_raw",
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "look_over": ["none"],
    "ever_tripped": "never",
    "lamp_means": "lit_while_heating",
    "hot_gate": ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"],
    "thermometer_kind": "hanging_or_standing",
    "thermometer_log": ("2:00 60 C", "5:00 95 C", "10:00 130 C", "12:30 opened", "20:00 150 C", "30:00 155 C"),
    "lamp_watch": ("0:00 lit", "17:10 out", "21:40 lit", "28:00 out", "30:00 end"),
    "grill_browns": "no_grill_heat",
}
"""The grill stays cold, and yet the oven is said to cook well with the fan; the thermometer reads low."""


def contradicted(begun: Begin) -> Assessment:
    """And then it smells of burning plastic."""
    conversation = begun(**CONTRADICTED)
    for question_id, answer in (("danger_now", ["burning_smell"]), ("sign_burning_smell", "like_plastic_or_fish")):
        conversation.do(GiveAnswer(question_id, answer))
    return conversation.assessment


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


def believed(script: Script, assessment: Assessment, questions: Callable[[str], bool]) -> Posterior:
    """From the answers to these questions alone."""
    told = {r: c for r, c in assessment.evidence.items() if questions(question_of_key(r))}
    return posterior(script.evidence_model, told, assessment.not_fitted)


def odds(probability: float) -> float:
    return probability / (1 - probability)


def may_be_named(script: Script, assessment: Assessment, question: str, cause: str) -> bool:
    """Both: without the answer the cause isn't ruled out; beside the complaint alone the answer speaks against it."""
    without = believed(script, assessment, lambda each: each != question).of(cause)
    alone = believed(script, assessment, lambda each: each in (COMPLAINT, question)).of(cause)
    complaint = believed(script, assessment, lambda each: each == COMPLAINT).of(cause)
    back = without >= RULED_OUT and without >= MATTERS * assessment.posterior.of(cause)
    return back and odds(alone) * SPEAKS_AGAINST <= odds(complaint)


@pytest.mark.parametrize("tell", [lambda begun: begun(**BARE_FLOOR).assessment, contradicted])
def test_an_answer_is_named_only_where_it_is_needed_and_speaks_against_the_cause_alone(
    begun: Begin, script: Script, tell: Callable[[Begin], Assessment]
) -> None:
    assessment = tell(begun)
    questions = dict.fromkeys(map(question_of_key, assessment.evidence))
    found = ruled_out(script, assessment)
    assert found
    for each in found:
        for cause in each.causes:
            naming = [q for q in questions if may_be_named(script, assessment, q, cause)]
            without = {q: believed(script, assessment, lambda o, q=q: o != q).of(cause) for q in naming}  # type: ignore[misc]
            highest = max(without.values(), default=None)
            assert (each.question_id is None) == (highest is None)
            if each.question_id is not None:
                assert without[each.question_id] == pytest.approx(highest, abs=1e-9)


def test_a_thermometer_that_reads_low_does_not_rule_out_a_thermostat_that_drifted_low(
    begun: Begin, script: Script
) -> None:
    by = {each.question_id: each.causes for each in ruled_out(script, contradicted(begun))}
    assert any("thermostat_drifted_low" in causes for causes in by.values())
    assert "thermostat_drifted_low" not in by.get("thermometer_log", ())


def test_a_fan_that_cooks_well_rules_out_the_ring_element(begun: Begin, script: Script) -> None:
    by = {each.question_id: each.causes for each in ruled_out(script, begun(**BARE_FLOOR).assessment)}
    assert "ring_element_open" in by["fan_cooks"]
