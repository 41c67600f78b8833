"""What a verdict rests on: figures that hold when the answers are really withdrawn."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
import pytest

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import NothingMeasured
from assistant.belief.posterior import weights_of_evidence
from assistant.interview.assess import assess
from assistant.interview.commands import WithdrawAnswer
from assistant.interview.reasons import (
    COMPLAINT,
    TELLING_DECIBANS,
    answer_reasons,
    compared,
    danger_reasons,
    holding_up,
    leader_and_rival,
)
from assistant.interview.script import Script
from tests.conftest import Begin

TOLD = {
    "danger_now": ["none"],
    "what_goes_wrong": ["too_hot"],
    "how_it_began": "from_one_day",
    "lamp_remembered": "never_goes_out",
}


def test_without_is_what_is_left_of_the_leader_when_the_answer_is_withdrawn(begun: Begin, script: Script) -> None:
    assessment = begun(**TOLD).assessment
    leader, _ = leader_and_rival(assessment.posterior)
    reasons = answer_reasons(script, assessment)
    assert "what_goes_wrong" in [reason.id for reason in reasons]
    for reason in reasons:
        conversation = begun(**TOLD)
        conversation.do(WithdrawAnswer(reason.id))
        left = assess(script, conversation.state).posterior.of_set(leader)
        assert reason.without == pytest.approx(left, abs=1e-4), reason.id


def test_reasons_come_strongest_first_and_each_once(begun: Begin, script: Script) -> None:
    reasons = answer_reasons(script, begun(**TOLD).assessment)
    weights = [reason.decibans or 0 for reason in reasons]
    assert weights == sorted(weights, reverse=True)
    assert min(weights) >= 1
    assert len({reason.id for reason in reasons}) == len(reasons) > 1


TWINS = {"danger_now": ["none"], "what_goes_wrong": ["pale_below"], "underside_pale": "white_or_raw"}


def test_where_no_answer_tells_the_runner_up_apart_the_answers_are_held_against_the_next(
    begun: Begin, script: Script
) -> None:
    """A heater that stopped and a burnt contact before it leave food just as pale."""
    assessment = begun(**TWINS, fan_cooks="cooks_well").assessment
    belief, model = assessment.posterior, script.evidence_model
    leader, rival = leader_and_rival(belief)
    assert (leader, rival) == (("base_element_open",), ("selector_contact_below",))
    assert max(weights_of_evidence(model, assessment.evidence, leader, rival).values()) < TELLING_DECIBANS
    reasons = answer_reasons(script, assessment)
    assert "underside_pale" in [reason.id for reason in reasons]
    apart = [h for h, _ in belief.ranked() if "base_element_open" not in h]
    weights = (weights_of_evidence(model, assessment.evidence, leader, each) for each in apart)
    nearest = next(told for told in weights if max(told.values()) >= TELLING_DECIBANS)
    assert max(reason.decibans or 0 for reason in reasons) == pytest.approx(max(nearest.values()), abs=0.05)


def test_without_answers_there_is_no_reason(begun: Begin, script: Script) -> None:
    assert answer_reasons(script, begun(danger_now=["none"]).assessment) == ()


def test_behind_likely_danger_stand_answers_that_speak_for_a_dangerous_cause(begun: Begin, script: Script) -> None:
    assessment = begun(**TOLD).assessment
    for reason in danger_reasons(script, assessment):
        others = {q: value for q, value in TOLD.items() if q != reason.id}
        assert begun(**others).assessment.dangerous < assessment.dangerous


@dataclass(frozen=True)
class Watched:
    """A lamp that was watched."""

    ready: bool = True

    def prepare(self) -> None: ...

    def replaces(self, written: str) -> tuple[str, ...]:
        return ("lamp_pattern",)


@dataclass(frozen=True)
class SpeaksForAll(NothingMeasured):
    """Whatever was measured speaks in the same way."""

    row: Floats

    def log_likelihoods(self, written: Mapping[str, str]) -> Mapping[str, Floats]:
        return dict.fromkeys(written, self.row)


def test_what_was_told_and_then_measured_is_no_reason_by_itself(begun: Begin, script: Script) -> None:
    model = script.evidence_model
    dangerous = np.array([not script.dangerous.isdisjoint(each) for each in model.hypotheses], dtype=np.float64)
    watching = replace(
        model,
        instruments={"lamp_watch": Watched()},
        measurements=SpeaksForAll(2.0 * dangerous),
    )
    measuring = replace(script, evidence_model=watching)
    state = begun(**TOLD).state
    told = state.answers["lamp_remembered"]
    watched = replace(told, question_id="lamp_watch", value=("0:00 lit", "30:00 end"), sequence=told.sequence + 1)
    assessment = assess(measuring, replace(state, answers={**state.answers, "lamp_watch": watched}))
    assert {"lamp_watch", "lamp_remembered"} <= set(assessment.evidence)
    named = {reason.id for reason in danger_reasons(measuring, assessment)}
    assert "lamp_watch" in named
    assert "lamp_remembered" not in named
    assert "lamp_remembered" not in {reason.id for reason in answer_reasons(measuring, assessment)}


def test_what_holds_the_leader_up_is_what_it_would_lose_most_by(begun: Begin, script: Script) -> None:
    """Against everything else together, and by the figures that hold when the answer is really withdrawn."""
    told = TWINS | {"fan_cooks": "cooks_well", "bottom_heat_alone": "white_or_raw", "floor_of_oven": "bare"}
    assessment = begun(**told).assessment
    leader, reasons = holding_up(script, assessment)
    assert leader == ("base_element_open",)
    assert COMPLAINT not in [each.id for each in reasons]
    assert {"bottom_heat_alone", "floor_of_oven"} <= {each.id for each in reasons}
    for reason in reasons:
        conversation = begun(**told)
        conversation.do(WithdrawAnswer(reason.id))
        left = assess(script, conversation.state).posterior.of_set(leader)
        assert reason.without == pytest.approx(left, abs=1e-4), reason.id
        assert left < assessment.posterior.of_set(leader)
    assert [each.without for each in reasons] == sorted(each.without or 0.0 for each in reasons)


def test_what_reasons_are_given_against_is_what_they_weigh(begun: Begin, script: Script) -> None:
    """Also where the runner-up is a twin of the leader, which no answer tells from it."""
    assessment = begun(**TWINS, fan_cooks="cooks_well").assessment
    leader, rival = compared(script, assessment)
    assert rival != leader_and_rival(assessment.posterior)[1]
    weights = weights_of_evidence(script.evidence_model, assessment.evidence, leader, rival)
    for reason in answer_reasons(script, assessment):
        assert reason.decibans in [round(weight, 1) for weight in weights.values()]
