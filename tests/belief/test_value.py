import copy
import random

import numpy as np
import pytest

from assistant.belief.decision import decision_of
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from assistant.belief.value import LEAST_MONEY, Candidate, Worth, best_of, look_ahead, one_step, two_steps
from tests.belief import tiny
from tests.belief.brute_costs import (
    TRADES,
    BruteBelief,
    actions_of,
    cheapest_kit,
    expected_cost,
    normalised,
    one_step_saving,
    sought_by,
    two_step_saving,
    visits,
)
from tests.belief.brute_force import marginal, reports_of

FEW = {"parts": 1, "tests": 2}


class Case:
    """Random knowledge, some questions answered, and all others to choose from."""

    def __init__(self, seed, answered=2, not_fitted=frozenset(), **of_settings):
        chance = random.Random(seed)
        self.knowledge = tiny.random_knowledge(seed, **(FEW | of_settings))
        self.model = compile_evidence_model(self.knowledge)
        self.decision = decision_of(self.knowledge, "here")
        self.allowed = tuple(range(len(self.decision.actions)))
        self.reports = reports_of(self.knowledge)
        self.answers = {q: chance.choice(self.reports[q]) for q in chance.sample(list(self.reports), answered)}
        self.candidates = [
            Candidate(q, chance.uniform(0, 3), chance.uniform(0.5, 20), chance.choice([1.0, 0.8, 0.36]))
            for q in self.reports
            if q not in self.answers
        ]
        self.not_fitted = not_fitted
        self.belief = BruteBelief(self.knowledge, not_fitted)

    def outlook(self, candidates=None, dropped=0.0):
        asked = [each.question_id for each in candidates or self.candidates]
        now = posterior(self.model, self.answers, self.not_fitted)
        return look_ahead(self.model, self.answers, now, asked, dropped)

    def one_step(self, candidates=None):
        candidates = candidates or self.candidates
        return one_step(self.decision, self.outlook(candidates), candidates, self.allowed)

    def two_steps(self, candidates=None, dropped=0.0):
        candidates = candidates or self.candidates
        outlook = self.outlook(candidates, dropped)
        return two_steps(self.decision, self.model, outlook, candidates, self.allowed)


def value_of(saving, candidate):
    """Less than a thousandth is nothing."""
    return saving * candidate.opens if saving * candidate.opens >= LEAST_MONEY else 0.0


FITTED = [frozenset(), frozenset({"p_f0", "p_h0"})]


@pytest.mark.parametrize("not_fitted", FITTED)
@pytest.mark.parametrize("seed", range(40))
def test_one_step_is_a_plain_loop_over_answers_and_endings(seed, not_fitted):
    case = Case(seed, not_fitted=not_fitted)
    expected = [
        value_of(one_step_saving(case.belief, case.reports, case.answers, each.question_id), each)
        for each in case.candidates
    ]
    found = case.one_step()
    assert [worth.value for worth in found] == pytest.approx(expected, abs=1e-9)
    nets = [value - each.effort for value, each in zip(expected, case.candidates, strict=True)]
    assert [worth.net for worth in found] == pytest.approx(nets, abs=1e-9)
    assert [worth.question_id for worth in found] == [each.question_id for each in case.candidates]


@pytest.mark.parametrize("not_fitted", FITTED)
@pytest.mark.parametrize("seed", range(40))
def test_two_steps_are_a_plain_recursion(seed, not_fitted):
    case = Case(seed, not_fitted=not_fitted)
    expected = [
        value_of(two_step_saving(case.belief, case.reports, case.answers, case.candidates, each.question_id), each)
        for each in case.candidates
    ]
    found = case.two_steps()
    assert [worth.value for worth in found] == pytest.approx(expected, abs=1e-9)


def test_the_cases_hold_two_questions_about_one_thing_ways_that_open_and_values_that_count():
    cases = [Case(seed) for seed in range(12)]
    observables = [[case.model.observable_of[each.question_id] for each in case.candidates] for case in cases]
    assert sum(len(set(names)) < len(names) for names in observables) >= 6
    assert sum(worth.value > 0.1 for case in cases for worth in case.two_steps()) >= 12
    two_better = sum(
        two.value > one.value + 0.1
        for case in cases
        for one, two in zip(case.one_step(), case.two_steps(), strict=True)
    )
    assert two_better >= 5


@pytest.mark.parametrize("seed", range(40))
def test_no_question_is_worth_less_than_nothing(seed):
    """By the arithmetic itself, not by rounding small values away."""
    case = Case(seed)
    for each, worth in zip(case.candidates, case.one_step(), strict=True):
        saving = one_step_saving(case.belief, case.reports, case.answers, each.question_id)
        assert saving >= -1e-9
        assert worth.value == pytest.approx(value_of(saving, each), abs=1e-9)


@pytest.mark.parametrize("seed", range(40))
def test_a_second_step_never_lowers_the_worth(seed):
    case = Case(seed)
    for one, two in zip(case.one_step(), case.two_steps(), strict=True):
        assert two.value >= one.value - 1e-9


def plan_of(case, answers):
    """The best ending, and for each trade the kit and the first test of its visit, be it now or after all."""
    found = normalised(case.belief.weights(answers))
    costs = [round(expected_cost(case.knowledge, found, action), 9) for action in actions_of(case.knowledge)]
    best = actions_of(case.knowledge)[costs.index(min(costs))]
    plans = []
    for trade in TRADES:
        likeliest = sorted(sought_by(case.knowledge, trade), key=lambda cause: -marginal(found, cause))
        brought = cheapest_kit(case.knowledge, found, trade, visits(case.knowledge, found, best, trade))[1]
        plans.append((brought, *likeliest[:1]))
    return (*best, *plans)


def test_a_question_whose_answers_change_nothing_is_worth_nothing_and_never_picked():
    """The ending, its kit and its order of tests stay the same: of two tests planned only the first matters."""
    unchanging = 0
    for seed in range(40):
        case = Case(seed)
        now = plan_of(case, case.answers)
        for each in case.candidates:
            plans = {plan_of(case, {**case.answers, each.question_id: c}) for c in case.reports[each.question_id]}
            if plans != {now}:
                continue
            unchanging += 1
            free = Candidate(each.question_id, effort=0.0, minutes=1.0)
            (worth,) = case.one_step([free])
            assert worth.value == 0
            assert worth.bits_per_minute > 0
            assert best_of([worth]) is None
    assert unchanging >= 30


def test_an_uncertain_way_gives_only_part_of_the_value():
    counted = 0
    for case in map(Case, range(20)):
        sure = [Candidate(each.question_id, 0.0, 1.0) for each in case.candidates]
        now_and_then = [Candidate(each.question_id, 0.0, 1.0, opens=0.25) for each in case.candidates]
        for whole, part in zip(case.one_step(sure), case.one_step(now_and_then), strict=True):
            if whole.value > 0.1:
                counted += 1
                assert part.value == pytest.approx(whole.value / 4)
    assert counted >= 10


@pytest.mark.parametrize("seed", range(60))
def test_shuffling_the_candidates_gives_the_same_pick(seed):
    case = Case(seed, answered=1)
    expected = best_of(case.two_steps())
    for shuffling in range(5):
        shuffled = random.Random(shuffling).sample(case.candidates, len(case.candidates))
        found = best_of(case.two_steps(shuffled))
        assert (found and found.question_id) == (expected and expected.question_id)


def test_shuffled_candidates_do_pick_something():
    assert sum(best_of(Case(seed, answered=1).two_steps()) is not None for seed in range(60)) >= 5


def test_ties_go_to_more_bits_a_minute_and_then_to_order():
    few, more, again = Worth("few", 5, 4.001, 0.1), Worth("more", 5, 4.0, 0.3), Worth("again", 5, 4.0, 0.3)
    better = Worth("better", 6, 4.2, 0.01)
    assert best_of([few, more, again]) == more
    assert best_of([again, few, more]) == again
    assert best_of([few, more, better]) == better
    assert best_of([Worth("vain", 1, 0.0, 0.9), Worth("loss", 1, -1, 0.9)]) is None
    assert best_of([]) is None


@pytest.mark.parametrize("seed", range(20))
def test_what_is_left_out_as_improbable_changes_the_worth_by_little(seed):
    """Of 1 in 1000 left out: no more than that times the greatest cost, twice over."""
    case = Case(seed)
    dearest = 2 * (case.decision.left.max() + case.decision.price.max() + case.decision.return_visit)
    for whole, cut in zip(case.two_steps(), case.two_steps(dropped=1e-3), strict=True):
        assert cut.value == pytest.approx(whole.value, abs=2e-3 * dearest)


@pytest.mark.parametrize("dropped", [0.0, 1e-5, 1e-3, 0.2])
def test_no_more_is_left_out_than_may_be(dropped):
    case = Case(5)
    now = posterior(case.model, case.answers)
    outlook = case.outlook(dropped=dropped)
    kept = len(outlook.probabilities)
    smallest_first = np.sort(now.probabilities)
    assert smallest_first[: len(smallest_first) - kept].sum() <= dropped + 1e-12
    assert smallest_first[: len(smallest_first) - kept + 1].sum() > dropped - 1e-12
    assert outlook.probabilities.sum() == pytest.approx(1, abs=1e-12)


@pytest.mark.parametrize("seed", range(20))
def test_answers_to_come_are_as_probable_as_the_belief_says(seed):
    """P(answer | the answers so far), also where the same thing was reported on before."""
    case = Case(seed)
    outlook = case.outlook()
    now = sum(case.belief.weights(case.answers).values())
    for each in case.candidates:
        told = outlook.given[outlook.rows[each.question_id]] @ outlook.probabilities
        after = [
            sum(case.belief.weights({**case.answers, each.question_id: code}).values())
            for code in case.reports[each.question_id]
        ]
        assert told == pytest.approx([weight / now for weight in after], abs=1e-12)


def test_looking_ahead_changes_nothing_that_is_given():
    case = Case(8)
    kept = copy.deepcopy((case.model, case.decision, case.answers))
    case.one_step()
    case.two_steps()
    for name, table in (*case.model.state_given.items(), *case.model.report_given.items()):
        assert (table == (kept[0].state_given | kept[0].report_given)[name]).all()
    assert (case.model.prior_odds == kept[0].prior_odds).all()
    assert (case.decision.left == kept[1].left).all()
    assert (case.decision.price == kept[1].price).all()
    assert case.answers == kept[2]
