"""What isn't weighed, against listing every set of causes there is."""

from itertools import combinations
from math import prod

import pytest

from assistant.belief.hypotheses import SOMETHING_ELSE, Priors, compile_evidence_model
from assistant.belief.left_out import left_out, odds_of_larger_sets
from tests.belief.brute_force import chance_of_evidence, observable_of, prior_odds, states_under
from tests.belief.tiny import random_answers, random_knowledge

SEEDS = range(40)


def weights_by_size(knowledge, answers, not_fitted):
    """(faults, habits) -> prior odds times the probability of the answers, of all sets of so many that can be."""
    found = {}
    fitted = [c for c, cause in knowledge.causes.items() if not set(cause.needs) & not_fitted]
    for size in range(len(fitted) + 1):
        for causes in map(frozenset, combinations(fitted, size)):
            if any(other in knowledge.causes[each].excludes for each in causes for other in causes):
                continue
            kinds = [knowledge.causes[each].kind for each in causes]
            key = kinds.count("fault"), kinds.count("habit")
            found[key] = found.get(key, 0) + weight(knowledge, answers, causes)
    found["something else"] = weight(knowledge, answers, frozenset({SOMETHING_ELSE}))
    return found


def weight(knowledge, answers, causes):
    likelihood = 1.0
    for name, observable in knowledge.observables.items():
        under = states_under(knowledge, name, causes)
        of_this = [(report, code) for report, code in answers.items() if observable_of(knowledge, report) == name]
        likelihood *= sum(
            under[state] * prod(chance_of_evidence(knowledge, report, code, state) for report, code in of_this)
            for state in observable.states
        )
    return prior_odds(knowledge, causes) * likelihood


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_left_out_is_what_listing_every_set_says_or_more(seed):
    knowledge = random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    answers = random_answers(model, seed)
    not_fitted = frozenset({"p_f1"}) if seed % 4 == 0 else frozenset()
    found = left_out(model, answers, not_fitted)
    weights = weights_by_size(knowledge, answers, not_fitted)
    three = sum(w for key, w in weights.items() if key in ((3, 0), (3, 1)))
    two = sum(w for key, w in weights.items() if key in ((0, 2), (1, 2), (2, 2)))
    weighed = sum(w for key, w in weights.items() if key == "something else" or (key[0] <= 2 and key[1] <= 1))
    larger = sum(w for key, w in weights.items() if key == (3, 2) or (key != "something else" and key[0] > 3))
    assert found.three_faults * weighed == pytest.approx(three * share_weighed(found), rel=1e-9)
    assert found.two_habits * weighed == pytest.approx(two * share_weighed(found), rel=1e-9)
    assert found.still_more_at_most * weighed >= larger * share_weighed(found) * (1 - 1e-9)


def share_weighed(found):
    return 1 - found.at_most


def test_the_seeds_leave_out_something_of_each_kind():
    sizes = {key for seed in SEEDS for key in weights_by_size(random_knowledge(seed), {}, frozenset())}
    assert {(3, 0), (3, 1), (0, 2), (2, 2), (4, 0), (3, 2)} <= sizes


@pytest.mark.parametrize("together", [("f0", "f1"), ("f0", "h0"), ("h0", "f0")])
def test_the_odds_of_larger_sets_count_pairs_that_come_together(together):
    faults, habits = ("f0", "f1", "f2", "f3"), ("h0", "h1", "h2")
    priors = Priors(
        faults=faults,
        habits=habits,
        at_large=dict.fromkeys((*faults, *habits), 0.01),
        beside={together: 3.0},
        asked_about=8.0,
    )
    larger = sum(
        priors.odds_of((*some, *others))
        for number in range(len(faults) + 1)
        for more in range(len(habits) + 1)
        if number > 3 or more > 2 or (number == 3 and more == 2)
        for some in combinations(faults, number)
        for others in combinations(habits, more)
    )
    assert odds_of_larger_sets(priors, faults, habits) == pytest.approx(larger, rel=1e-9)
