"""Drawn ovens and the interviews about them; the benchmark of them, at a size for every day."""

import sys
from dataclasses import asdict
from typing import Any

import numpy as np
import pytest

from assistant.authoring.simulated_interview import REGION, answer_to, play
from assistant.authoring.simulated_ovens import DrawnOven, draw_oven, draw_ovens, oven_with_cause
from assistant.belief.decision import expected_costs
from assistant.interview.script import Script, script_of
from assistant.knowledge.likelihoods import share_of
from assistant.knowledge.load import load_knowledge
from tests.benchmarks import simulated_interviews
from tests.benchmarks.scored_interviews import Judge, score, truth
from tests.knowledge.broken import SOUND

SEED = 4


@pytest.fixture(scope="module")
def ovens(script: Script) -> tuple[DrawnOven, ...]:
    return draw_ovens(script.knowledge, script.evidence_model, "faulty", 6, SEED)


def as_saved(oven: DrawnOven) -> dict[str, Any]:
    return asdict(oven)


def test_an_oven_hangs_on_the_seed_and_its_number_alone(script: Script, ovens: tuple[DrawnOven, ...]) -> None:
    assert draw_oven(script.knowledge, script.evidence_model, "faulty", 4, SEED) == ovens[4]
    assert draw_oven(script.knowledge, script.evidence_model, "faulty", 4, SEED + 1) != ovens[4]


def test_each_cause_takes_its_turn(script: Script) -> None:
    model = script.evidence_model
    drawn = draw_ovens(script.knowledge, model, "each_cause", len(model.causes) + 1, SEED)
    assert {oven.hypothesis for oven in drawn} == {(), *((cause,) for cause in model.causes)}


def test_a_higher_rate_of_mistakes_only_adds_mistakes(script: Script, ovens: tuple[DrawnOven, ...]) -> None:
    mistaken = 0
    for oven in map(as_saved, ovens):
        for question_id in oven["replies"]:
            right, some, more = (answer_to(script, question_id, oven, rate, unsure=0.0) for rate in (0.0, 0.2, 0.5))
            assert some in (right, more)
            mistaken += more != right
    assert mistaken


def test_no_ending_costs_less_than_the_cheapest(script: Script, ovens: tuple[DrawnOven, ...]) -> None:
    decision = script.decision(REGION)
    judge = Judge(script.knowledge, script.evidence_model, decision, REGION)
    for oven in ovens:
        played = play(script, as_saved(oven), mistakes=0.05, unsure=0.1)
        found = score(judge, oven.hypothesis, played)
        there = truth(judge, oven.hypothesis)[None, :]
        assert found.ending_cost >= expected_costs(decision, there, np.ones(1)).min() - 1e-9
        assert 0 < found.until_ripe <= found.asked
        assert found.effort > 0
        assert found.served or not found.cheapest
        assert found.any_in_three or not found.first_right


def test_the_same_interview_is_played_the_same_way(script: Script, ovens: tuple[DrawnOven, ...]) -> None:
    one, other = (play(script, as_saved(ovens[0]), mistakes=0.0, unsure=0.1) for _ in range(2))
    assert {**one, "seconds": 0} == {**other, "seconds": 0}


def test_an_oven_with_one_cause_hangs_on_no_other_cause(script: Script) -> None:
    knowledge, model = script.knowledge, script.evidence_model
    for cause in list(knowledge.causes)[:2]:
        oven = oven_with_cause(knowledge, model, cause, 3, SEED)
        assert oven.hypothesis == (cause,)
        assert oven_with_cause(knowledge, model, cause, 3, SEED) == oven
        assert oven_with_cause(knowledge, model, cause, 4, SEED).replies != oven.replies


def test_who_has_nothing_to_name_says_so(script: Script) -> None:
    knowledge = script.knowledge
    drawn = draw_ovens(knowledge, script.evidence_model, "each_cause", 120, SEED)
    for question_id in ("how_it_is_used", "look_over", "which_light_or_clock"):
        said = [oven.fixed[question_id] for oven in drawn]
        assert said.count(["none"]) > 20
        assert any(chosen != ["none"] for chosen in said)
        assert all("none" not in chosen for chosen in said if len(chosen) > 1)
    assert all("none" not in oven.fixed["what_goes_wrong"] for oven in drawn)


def test_a_way_of_use_is_named_as_often_as_the_tables_say(script: Script) -> None:
    """Of many householders who start from cold, about as many name it on the screen of ways of use."""
    knowledge, model = script.knowledge, script.evidence_model
    said = knowledge.questions["how_it_is_used"].choices["from_cold"].said_when["preheated"]["cold_start"]
    drawn = [oven_with_cause(knowledge, model, "no_preheat", number, SEED) for number in range(200)]
    cold = [oven for oven in drawn if oven.states["preheated"] == "cold_start"]
    naming = sum("from_cold" in oven.fixed["how_it_is_used"] for oven in cold)
    assert len(cold) > 100
    assert naming / len(cold) == pytest.approx(share_of(said, knowledge.settings.words), abs=0.15)


def test_rules_with_other_questions_are_played_too() -> None:
    """None of the answers that a plain household would give stand in these rules."""
    knowledge = load_knowledge(SOUND, None)
    script = script_of(knowledge)
    (region,) = knowledge.regions
    for cause in knowledge.causes:
        oven = oven_with_cause(knowledge, script.evidence_model, cause, 0, SEED, region)
        assert oven.fixed.keys() <= knowledge.questions.keys()
        played = play(script, as_saved(oven), mistakes=0.0, unsure=0.0)
        assert played["asked"][0]["id"] == "danger_now"
        assert played["named"]


def test_every_table_says_that_it_is_simulated(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    options = ["--ovens", "3", "--mistakes", "10", "--before", str(simulated_interviews.ROOT)]
    monkeypatch.setattr(sys, "argv", ["simulated_interviews", *options])
    simulated_interviews.main()
    printed = capsys.readouterr().out
    tables = [block for block in printed.split("\n\n") if block.strip()]
    assert len(tables) == 4
    assert all("simulated" in table.strip().splitlines()[0] for table in tables)
    before, now = printed.split("ending serves all that is there")[1].split("%")[:2]
    assert before.strip() == now.strip()
