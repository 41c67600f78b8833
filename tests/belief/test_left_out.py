"""What larger sets of causes weigh, against adding them all up."""

from itertools import combinations
from math import prod

import pytest

from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.left_out import left_out, odds_of_larger_sets
from tests.belief import tiny
from tests.belief.brute_force import chance_of_evidence, observable_of, prior_odds, states_under

SEEDS = range(40)


def weight(knowledge, causes, answers):
    """Prior odds times the probability of all answers, state by state."""
    by_observable = {}
    for report, code in answers.items():
        by_observable.setdefault(observable_of(knowledge, report), []).append((report, code))
    likelihood = 1.0
    for name, reports in by_observable.items():
        under = states_under(knowledge, name, causes)
        likelihood *= sum(
            chance * prod(chance_of_evidence(knowledge, report, code, state) for report, code in reports)
            for state, chance in under.items()
        )
    return prior_odds(knowledge, causes) * likelihood


def every_set(knowledge, not_fitted=()):
    """Every set of named causes, however large, that holds no excluded pair; and something else."""
    usable = [c for c, cause in knowledge.causes.items() if not set(cause.needs) & set(not_fitted)]
    for size in range(len(usable) + 1):
        for some in combinations(usable, size):
            if not any(b in knowledge.causes[a].excludes for a in some for b in some):
                yield frozenset(some)
    yield frozenset({"something_else"})


def number_of(knowledge, causes, kind):
    return sum(c in knowledge.causes and knowledge.causes[c].kind == kind for c in causes)


def shares_by_brute_force(knowledge, answers, not_fitted=()):
    weights = {causes: weight(knowledge, causes, answers) for causes in every_set(knowledge, not_fitted)}
    total = sum(weights.values())
    three = two = more = 0.0
    for causes, each in weights.items():
        faults, habits = number_of(knowledge, causes, "fault"), number_of(knowledge, causes, "habit")
        if (faults, habits) in ((3, 0), (2, 1)):
            three += each / total
        elif (faults, habits) in ((0, 2), (1, 2)):
            two += each / total
        elif faults + habits > 2:
            more += each / total
    return three, two, more


@pytest.mark.parametrize("seed", SEEDS)
def test_the_next_larger_sets_are_what_adding_them_up_gives_and_the_rest_is_no_more_than_said(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, seed)
    not_fitted = frozenset({"p_f1"} if seed % 4 == 0 else ())
    found = left_out(model, answers, not_fitted)
    three, two, more = shares_by_brute_force(knowledge, answers, not_fitted)
    # The program's shares are of a total that takes the bound for the rest, so they are a little smaller.
    scale = (1 - found.still_more_at_most) / (1 - more)
    assert found.three_causes == pytest.approx(three * scale, abs=1e-12)
    assert found.two_habits == pytest.approx(two * scale, abs=1e-12)
    assert found.still_more_at_most >= more - 1e-12
    assert found.at_most >= three + two + more - 1e-12


def test_the_cases_hold_larger_sets_of_every_kind():
    shares = []
    for seed in SEEDS:
        knowledge = tiny.random_knowledge(seed)
        answers = tiny.random_answers(compile_evidence_model(knowledge), seed)
        shares.append(shares_by_brute_force(knowledge, answers))
    assert all(sum(share[kind] > 1e-5 for share in shares) >= 3 for kind in range(3))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_odds_of_larger_sets_are_those_of_all_of_them(seed):
    knowledge = tiny.random_knowledge(seed)
    causes = {c: cause.model_copy(update={"excludes": ()}) for c, cause in knowledge.causes.items()}
    knowledge = knowledge.model_copy(update={"causes": causes})
    priors = compile_evidence_model(knowledge).priors
    expected = 0.0
    for some in every_set(knowledge):
        faults, habits = number_of(knowledge, some, "fault"), number_of(knowledge, some, "habit")
        if faults + habits >= 4 or habits == 3:
            expected += prior_odds(knowledge, some)
    assert odds_of_larger_sets(priors, priors.faults, priors.habits) == pytest.approx(expected)


def test_without_a_third_cause_nothing_is_left_out():
    heat = {"heat": tiny.figures(low=80, high=20)}
    knowledge = tiny.knowledge(
        {"heat": tiny.observable(low=20, high=80)},
        {"q": tiny.question("heat", {"yes": ("low",), "no": ("high",)}, mistakes=10)},
        {"one": tiny.cause(10, heat), "two": tiny.cause(5, heat)},
    )
    found = left_out(compile_evidence_model(knowledge), {"q": "yes"})
    assert found.at_most == 0


def test_answers_are_not_changed():
    knowledge = tiny.random_knowledge(3)
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, 3)
    kept = dict(answers)
    assert left_out(model, answers) == left_out(model, dict(reversed(answers.items())))
    assert answers == kept
