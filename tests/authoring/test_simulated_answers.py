"""Drawn households: of danger they tell as the signs' tables say, of their oven what it can have."""

from collections import Counter
from datetime import datetime

import numpy as np
import pytest

from assistant.authoring.simulated_answers import draw_complaint, needs_of, region_of, signs_told, told_share
from assistant.authoring.simulated_ovens import oven_with_cause
from assistant.authoring.simulated_parts import draw_parts
from assistant.interview.assess import parts_not_fitted
from assistant.interview.state import Answer
from assistant.knowledge.danger_questions import DANGER_NOW, NONE, sign_question_id

SEED = 4


def ovens_with(script, cause, number=6):
    return [oven_with_cause(script.knowledge, script.evidence_model, cause, each, SEED) for each in range(number)]


def test_signs_are_told_as_often_as_their_tables_say(knowledge):
    states = {name: observable.states[-1] for name, observable in knowledge.observables.items()}
    counted = Counter(sign for number in range(400) for sign in signs_told(knowledge, states, (SEED, number)))
    for sign_id, sign in knowledge.signs.items():
        share = told_share(knowledge, sign, states) if sign.told_when else 0.0
        assert abs(counted[sign_id] / 400 - share) < 0.1
    assert max(counted.values()) > 200


def test_who_tells_of_a_sign_says_danger_to_its_own_question_and_else_no(script):
    knowledge = script.knowledge
    told = untold = 0
    for oven in ovens_with(script, "base_element_leaks", 12):
        on_screen = oven.fixed[DANGER_NOW]
        for sign_id, sign in knowledge.signs.items():
            answer = oven.fixed[sign_question_id(sign_id)]
            if sign_id in on_screen:
                assert sign.answers[answer] == "stop"
                told += 1
            elif sign.answers[answer] == "clear":
                untold += 1
        assert on_screen == [NONE] or NONE not in on_screen
    assert told > 3
    assert untold > 100


def test_the_oven_has_what_its_cause_needs_and_its_householder_says_so(script):
    """By the interview's own reading of the answers about kind and functions."""
    knowledge = script.knowledge
    questions = [q for q, question in knowledge.questions.items() if question.tells]
    kinds = set()
    for cause_id, cause in knowledge.causes.items():
        (oven,) = ovens_with(script, cause_id, 1)
        given = {
            q: Answer(q, "answered", tuple(v) if isinstance(v, list) else v, 1, datetime.min)
            for q, v in oven.fixed.items()
            if q in questions or (knowledge.questions[q].kind == "choice" and v in knowledge.questions[q].choices)
        }
        assert parts_not_fitted(given, knowledge).isdisjoint(cause.needs), cause_id
        assert set(questions) <= given.keys()
        assert knowledge.ovens.kinds[oven.fixed["which_appliance"]]
        kinds.add(oven.fixed["which_appliance"])
    assert len(kinds) > 4


def test_the_region_has_what_the_cause_needs(knowledge):
    assert region_of(knowledge, ("phase_lost",), "great_britain") == "germany"
    assert region_of(knowledge, ("top_element_open",), "great_britain") == "great_britain"
    assert region_of(knowledge, (), "germany") == "germany"


def test_what_no_kind_can_have_together_leaves_the_kind_open(knowledge):
    needed = needs_of(knowledge, ("thermostat_stuck_open", "sensor_open"))
    assert draw_parts(knowledge, needed, (), np.random.default_rng(1)).kind is None


def test_ovens_differ_in_their_parts_but_never_lack_what_is_needed(knowledge):
    drawn = [draw_parts(knowledge, frozenset({"ring_element"}), (), np.random.default_rng(n)) for n in range(40)]
    assert len({each.functions for each in drawn}) > 5
    for each in drawn:
        assert "ring_element" not in each.missing
        used = {part for f in each.functions for part in knowledge.ovens.uses(f, each.kind)}
        assert "ring_element" in used
        assert used.isdisjoint(each.missing)


@pytest.mark.parametrize("question_id", ["look_over", "how_it_is_used"])
def test_where_none_may_be_said_it_is_said_as_often_as_no_item_is(script, question_id):
    knowledge, model = script.knowledge, script.evidence_model
    states = {name: observable.states[0] for name, observable in knowledge.observables.items()}
    said = [
        draw_complaint(question_id, model, knowledge, ("oven_fan_worn",), states, np.random.default_rng(n))
        for n in range(200)
    ]
    assert all(each == [NONE] or NONE not in each for each in said)
    assert 60 < said.count([NONE]) < 200
