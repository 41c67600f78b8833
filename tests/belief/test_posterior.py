import copy
import random

import numpy as np
import pytest

from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import Posterior, log_likelihoods, posterior, weights_of_evidence
from tests.belief import tiny
from tests.belief.brute_costs import BruteBelief, normalised
from tests.belief.brute_force import brute_force_posterior, marginal
from tests.belief.sub_models import project_rules, random_evidence

SEEDS = range(60)


def as_dict(found):
    """Set of causes -> probability."""
    return dict(zip(map(frozenset, found.model.hypotheses), found.probabilities, strict=True))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_posterior_is_that_of_adding_up_every_world(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, seed)
    not_fitted = frozenset({"p_f0"} if seed % 3 == 0 else ())
    found = as_dict(posterior(model, answers, not_fitted))
    assert found == pytest.approx(brute_force_posterior(knowledge, answers, not_fitted), abs=1e-12)


@pytest.mark.parametrize("seed", range(20))
def test_the_sound_rules_give_the_posterior_of_adding_up_every_world(seed):
    knowledge = tiny.sound_knowledge()
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, seed)
    assert as_dict(posterior(model, answers)) == pytest.approx(brute_force_posterior(knowledge, answers), abs=1e-12)


def test_all_the_projects_rules_give_the_posterior_of_adding_up_every_state():
    """All sets of all causes; the evidence is of some observables at a time, not to take minutes."""
    knowledge = project_rules()
    model, belief, chance = compile_evidence_model(knowledge), BruteBelief(knowledge), random.Random(1)
    assert set(map(frozenset, model.hypotheses)) == set(belief.priors)
    for number in range(12):
        answers = random_evidence(knowledge, chance, most=8)
        not_fitted = frozenset({"programmer", "oven_fan"} if number % 3 == 0 else ())
        weights = belief.weights(answers)
        for causes in weights:
            needed = {p for cause in causes if cause in knowledge.causes for p in knowledge.causes[cause].needs}
            weights[causes] *= not needed & not_fitted
        found = as_dict(posterior(model, answers, not_fitted))
        assert max(abs(found[causes] - p) for causes, p in normalised(weights).items()) < 1e-12


@pytest.mark.parametrize("seed", SEEDS)
def test_probabilities_sum_to_one(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    found = posterior(model, tiny.random_answers(model, seed))
    assert found.probabilities.sum() == pytest.approx(1, abs=1e-12)
    assert found.probabilities.min() > 0


def test_without_answers_the_posterior_is_the_prior():
    model = compile_evidence_model(tiny.sound_knowledge())
    assert posterior(model, {}).probabilities == pytest.approx(model.prior_odds / model.prior_odds.sum())


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_answers_makes_no_difference_to_the_last_bit(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    answers = list(tiny.random_answers(model, seed).items())
    expected = posterior(model, dict(answers)).probabilities.tobytes()
    for shuffling in range(5):
        random.Random(shuffling).shuffle(answers)
        assert posterior(model, dict(answers)).probabilities.tobytes() == expected


@pytest.mark.parametrize("seed", SEEDS)
def test_an_answer_given_and_withdrawn_leaves_no_trace(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    answers = tiny.random_answers(model, seed)
    before = posterior(model, answers).probabilities.tobytes()
    for question_id, codes in model.codes.items():
        if question_id not in answers:
            posterior(model, {**answers, question_id: codes[0]})
    last, code = answers.popitem()
    assert posterior(model, answers).probabilities.tobytes() != before
    assert posterior(model, {last: code, **answers}).probabilities.tobytes() == before


def test_nothing_that_is_given_is_changed():
    model = compile_evidence_model(tiny.sound_knowledge())
    answers = tiny.random_answers(model, 3)
    kept_answers, kept_model = dict(answers), copy.deepcopy(model)
    now = posterior(model, answers, frozenset({"seal"}))
    kept_now = now.probabilities.copy()
    weights_of_evidence(model, answers, (), ("worn_seal",))
    now.ranked()
    now.causes()
    now.of_any({"worn_seal"})
    assert answers == kept_answers
    assert (now.probabilities == kept_now).all()
    assert (model.prior_odds == kept_model.prior_odds).all()
    for kept, table in ((kept_model.state_given, model.state_given), (kept_model.report_given, model.report_given)):
        assert kept.keys() == table.keys()
        assert all((kept[name] == table[name]).all() for name in table)


def two_reports_of_one_thing(mistakes):
    means = {"yes": ("low",), "no": ("high",)}
    knowledge = tiny.knowledge(
        {"heat": tiny.observable(low=20, high=80)},
        {q: tiny.question("heat", means, mistakes=mistakes) for q in ("first", "second")},
        {"weak": tiny.cause(10, {"heat": tiny.figures(low=80, high=20)})},
        something_else=tiny.NEXT_TO_NOTHING,
    )
    return compile_evidence_model(knowledge)


def odds_of_weak(model, answers):
    found = posterior(model, answers)
    return found.of_set(("weak",)) / found.of_set(())


def test_a_second_report_of_a_thing_that_is_certain_already_adds_nothing():
    model = two_reports_of_one_thing(mistakes=tiny.NEXT_TO_NOTHING)
    once = odds_of_weak(model, {"first": "yes"})
    assert once == pytest.approx(4 * 1 / 9)
    assert odds_of_weak(model, {"first": "yes", "second": "yes"}) == pytest.approx(once)


def test_two_uncertain_reports_never_weigh_more_than_the_thing_itself():
    """By hand: 0.7² and 0.3² through the states: (0.8·0.49 + 0.2·0.09) / (0.2·0.49 + 0.8·0.09) = 0.41 / 0.17."""
    model = two_reports_of_one_thing(mistakes=30)
    prior = 1 / 9
    one = odds_of_weak(model, {"first": "yes"}) / prior
    both = odds_of_weak(model, {"first": "yes", "second": "yes"}) / prior
    assert one == pytest.approx((0.8 * 0.7 + 0.2 * 0.3) / (0.2 * 0.7 + 0.8 * 0.3))
    assert both == pytest.approx(0.41 / 0.17)
    assert one < both < min(one**2, 0.8 / 0.2)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_part_that_is_not_fitted_excludes_the_sets_with_causes_that_need_it_and_no_others(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    answers = tiny.random_answers(model, seed)
    everything = as_dict(posterior(model, answers))
    found = posterior(model, answers, frozenset({"p_f1", "unrelated"}))
    without = as_dict(found)
    assert found.of("f1") == 0
    left = sum(probability for causes, probability in everything.items() if "f1" not in causes)
    for causes, probability in everything.items():
        assert without[causes] == (0 if "f1" in causes else pytest.approx(probability / left))
    assert found.probabilities.sum() == pytest.approx(1, abs=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_answers_ever_exclude_a_set_of_causes(seed):
    for model in (compile_evidence_model(tiny.random_knowledge(seed)), compile_evidence_model(tiny.sound_knowledge())):
        everything = {report: random.Random(seed).choice(codes) for report, codes in model.codes.items()}
        assert posterior(model, everything).probabilities.min() > 0


@pytest.mark.parametrize("seed", SEEDS)
def test_a_marginal_adds_up_every_set_that_holds_the_cause(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, seed)
    found, expected = posterior(model, answers), brute_force_posterior(knowledge, answers)
    for cause in model.causes:
        assert found.of(cause) == pytest.approx(marginal(expected, cause), abs=1e-12)
    of_any = sum(probability for causes, probability in expected.items() if causes & {"f0", "h0"})
    assert found.of_any({"f0", "h0"}) == pytest.approx(of_any, abs=1e-12)
    assert found.of_any(set()) == 0


def test_a_question_that_reports_nothing_is_no_evidence():
    model = compile_evidence_model(tiny.sound_knowledge())
    answers = {"seal_seen": "has_gaps"}
    with_others = {**answers, "oven_is_off": "yes", "never_heard_of": "x"}
    assert (posterior(model, with_others).probabilities == posterior(model, answers).probabilities).all()


def test_an_answer_that_means_a_sign_of_a_cause_makes_it_more_probable():
    model = compile_evidence_model(tiny.sound_knowledge())
    before, after = posterior(model, {}), posterior(model, {"seal_seen": "has_gaps"})
    assert after.of("worn_seal") > before.of("worn_seal")
    assert after.causes()[0][0] == "worn_seal"


def test_hundreds_of_reports_do_not_run_out_of_digits():
    means = {"yes": ("low",), "no": ("high",)}
    names = [f"o{number}" for number in range(400)]
    knowledge = tiny.knowledge(
        {name: tiny.observable(low=1, high=99) for name in names},
        {f"q_{name}": tiny.question(name, means, mistakes=1) for name in names},
        {"weak": tiny.cause(1, {name: tiny.figures(low=2, high=98) for name in names})},
    )
    found = posterior(compile_evidence_model(knowledge), {f"q_{name}": "yes" for name in names})
    assert np.isfinite(found.probabilities).all()
    assert found.probabilities.sum() == pytest.approx(1)


def test_the_ranking_is_by_probability_and_then_by_the_order_of_the_rules():
    model = compile_evidence_model(tiny.sound_knowledge())
    chances = [0.1, 0.2, 0.3, 0.0, 0.2, 0.0, 0.0, 0.2]
    expected = sorted(range(8), key=lambda number: -chances[number])
    found = Posterior(model, np.array(chances))
    assert found.ranked() == tuple((model.hypotheses[number], chances[number]) for number in expected)


def test_the_ranking_of_equal_sets_does_not_hang_on_the_last_bit():
    means = {"yes": ("low",), "no": ("high",)}
    causes = {name: tiny.cause(10, {"heat": tiny.figures(low=80, high=20)}) for name in ("first", "second")}
    knowledge = tiny.knowledge(
        {"heat": tiny.observable(low=20, high=80)}, {"q": tiny.question("heat", means, mistakes=5)}, causes
    )
    model = compile_evidence_model(knowledge)
    assert model.hypotheses[1:3] == (("first",), ("second",))
    found = Posterior(model, np.array([0.0, 0.5 - 1e-15, 0.5 + 1e-15, 0.0, 0.0]))
    assert [hypothesis for hypothesis, _ in found.ranked()][:2] == [("first",), ("second",)]
    assert found.leader() == ("first",)
    assert [cause for cause, _ in found.causes()] == ["first", "second"]


def odds_of_seal_against_element(found):
    return found.of_set(("worn_seal",)) / found.of_set(("weak_element",))


def test_weights_of_evidence_add_up_to_the_change_of_the_odds():
    model = compile_evidence_model(tiny.sound_knowledge())
    answers = {"temperature_reached": "too_low", "browning_seen": "hardly", "seal_seen": "has_gaps"}
    weights = weights_of_evidence(model, answers, ("worn_seal",), ("weak_element",))
    before, after = posterior(model, {}), posterior(model, answers)
    change = odds_of_seal_against_element(after) / odds_of_seal_against_element(before)
    assert set(weights) == {"heat", "browning", "seal_state"}
    assert sum(weights.values()) == pytest.approx(10 * np.log10(change))
    opposite = weights_of_evidence(model, answers, ("weak_element",), ("worn_seal",))
    assert opposite == pytest.approx({name: -weight for name, weight in weights.items()})


@pytest.mark.parametrize("seed", SEEDS)
def test_weights_of_evidence_between_any_two_sets_add_up(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    answers = tiny.random_answers(model, seed)
    one, other = random.Random(seed).sample(model.hypotheses, 2)
    before, after = posterior(model, {}), posterior(model, answers)
    change = (after.of_set(one) / after.of_set(other)) / (before.of_set(one) / before.of_set(other))
    weights = weights_of_evidence(model, answers, one, other)
    assert sum(weights.values()) == pytest.approx(10 * np.log10(change), abs=1e-9)
    assert set(weights) == {model.observable_of[report] for report in answers}


def test_log_likelihoods_are_of_the_observables_that_were_reported():
    model = compile_evidence_model(tiny.sound_knowledge())
    found = log_likelihoods(model, {"seal_seen": "has_gaps"})
    assert list(found) == ["seal_state"]
    assert (found["seal_state"] < 0).all()
