import numpy as np
import pytest

from assistant.belief.decision import (
    LEAST_TESTED,
    Action,
    decision_of,
    expected_costs,
    kit,
    least_action,
    least_costs,
    order_of_tests,
)
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from tests.belief import tiny
from tests.belief.brute_costs import (
    TRADES,
    actions_of,
    cheapest_kit,
    expected_cost,
    expected_tests,
    fewest_tests,
    left_undone,
    price_of,
    sought_by,
)
from tests.belief.brute_force import SOMETHING_ELSE, brute_force_posterior, marginal

SEEDS = range(40)
FEW = {"parts": 1, "tests": 2}


def case(seed, **of_settings):
    """Knowledge, its decision, the marginals after random answers and the brute posterior of the same."""
    knowledge = tiny.random_knowledge(seed, **of_settings)
    model = compile_evidence_model(knowledge)
    answers = tiny.random_answers(model, seed)
    marginals = posterior(model, answers).marginals
    return knowledge, decision_of(knowledge, "here"), marginals, brute_force_posterior(knowledge, answers)


def costs_of(decision, marginals):
    return expected_costs(decision, marginals[None, :], np.ones(1))[0]


@pytest.mark.parametrize("seed", SEEDS)
def test_prices_and_what_is_left_undone_are_those_of_a_plain_table(seed):
    knowledge = tiny.random_knowledge(seed)
    decision = decision_of(knowledge, "here")
    actions = actions_of(knowledge)
    assert [(action.ending, action.remedy) for action in decision.actions] == actions
    assert decision.price == pytest.approx([price_of(knowledge.regions["here"].costs, action) for action in actions])
    expected = [[left_undone(knowledge, a, {cause}) for a in actions] for cause in (*knowledge.causes, SOMETHING_ELSE)]
    assert decision.left == pytest.approx(np.array(expected))


@pytest.mark.parametrize("tests_and_parts", [{"parts": 1, "tests": 1}, FEW, {"parts": 3, "tests": 4}])
@pytest.mark.parametrize("seed", range(20))
def test_expected_costs_are_those_of_all_sets_of_causes_all_kits_and_all_orders(seed, tests_and_parts):
    knowledge, decision, marginals, found = case(seed, **tests_and_parts)
    expected = [expected_cost(knowledge, found, action) for action in actions_of(knowledge)]
    assert costs_of(decision, marginals) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_action_chosen_is_the_cheapest_of_those_allowed(seed):
    knowledge, decision, marginals, found = case(seed, **FEW)
    costs = [expected_cost(knowledge, found, action) for action in actions_of(knowledge)]
    for allowed in (range(len(costs)), tuple(decision.visits), range(len(costs) - 1)):
        chosen = least_action(decision, marginals, allowed)
        assert costs[decision.actions.index(chosen)] <= min(costs[number] for number in allowed) + 0.01
        least = least_costs(decision, marginals[None, :], np.ones(1), allowed)
        assert least == pytest.approx(min(costs[number] for number in allowed))


@pytest.mark.parametrize("seed", SEEDS)
def test_costs_of_an_unlikely_row_are_as_much_smaller(seed):
    _, decision, marginals, _ = case(seed)
    whole = costs_of(decision, marginals)
    rows = expected_costs(decision, np.array([marginals * 0.125, marginals]), np.array([0.125, 1.0]))
    assert rows == pytest.approx(np.array([whole * 0.125, whole]))


@pytest.mark.parametrize("seed", SEEDS)
def test_the_kit_costs_no_more_than_any_other(seed):
    knowledge, decision, marginals, found = case(seed, **FEW)
    costs = knowledge.regions["here"].costs
    for trade in TRADES:
        brought = kit(decision, marginals, trade)
        causes = [(c, cause.part) for c, cause in knowledge.causes.items() if cause.mended_by == trade and cause.part]
        trips = sum(marginal(found, cause) for cause, part in causes if part not in brought)
        cost = costs.part_brought.value * len(brought) + costs.return_visit.value * trips
        assert cost == pytest.approx(cheapest_kit(knowledge, found, trade)[0], abs=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_tests_is_that_of_the_fewest_expected(seed):
    knowledge, decision, marginals, found = case(seed, **FEW)
    causes = (*knowledge.causes, SOMETHING_ELSE)
    for trade in TRADES:
        order = order_of_tests(decision, causes, marginals, trade)
        chances = [marginal(found, cause) for cause in order]
        assert chances == sorted(chances, reverse=True)
        assert min(chances, default=1) >= LEAST_TESTED
        assert set(order) <= set(sought_by(knowledge, trade))
        more_than_fewest = expected_tests(knowledge, found, trade, order) - fewest_tests(knowledge, found, trade)
        assert more_than_fewest == pytest.approx(0, abs=1e-9 if len(order) == 2 else 2 * LEAST_TESTED)


def pair_of_trades():
    heat = {"heat": tiny.figures(low=80, high=20)}
    return tiny.knowledge(
        {"heat": tiny.observable(low=20, high=80)},
        {"q": tiny.question("heat", {"yes": ("low",), "no": ("high",)}, mistakes=10)},
        {
            "element": tiny.cause(10, heat, part="element"),
            "wiring": tiny.cause(10, heat, mended_by="electrician"),
            "tray": tiny.habit(10, heat),
        },
    )


def costs_if_certain(knowledge, *causes):
    """Action -> cost when exactly these are there."""
    decision = decision_of(knowledge, "here")
    names = (*knowledge.causes, SOMETHING_ELSE)
    marginals = np.array([float(name in causes) for name in names])
    return dict(zip(decision.actions, costs_of(decision, marginals), strict=True))


ENGINEER, ELECTRICIAN = Action("book_visit", "appliance_engineer"), Action("book_visit", "electrician")
NORMAL, ADVICE = Action("all_normal"), Action("use_differently", "use_it_so")


def test_a_pair_is_served_only_when_both_are():
    """By hand: visits 85 and 95, a test 6, the part 12, also where the visit follows; a fault left 150, a habit 30;
    tried in vain 25; a visit for a habit 40 more.
    """
    knowledge = pair_of_trades()
    both = costs_if_certain(knowledge, "element", "wiring")
    assert both[ENGINEER] == pytest.approx(85 + 6 + 12 + 95 + 6)
    assert both[ELECTRICIAN] == pytest.approx(95 + 6 + 85 + 6 + 12)
    assert both[NORMAL] == pytest.approx(85 + 6 + 12 + 95 + 6 + 2 * 150)
    assert both[ADVICE] == pytest.approx(2 + 25 + 85 + 6 + 12 + 95 + 6)
    with_habit = costs_if_certain(knowledge, "element", "tray")
    assert with_habit[ENGINEER] == pytest.approx(85 + 6 + 12 + 40)
    assert with_habit[ADVICE] == pytest.approx(2 + 85 + 6 + 12)
    assert with_habit[NORMAL] == pytest.approx(85 + 6 + 12 + 150 + 30)


def test_a_fault_left_is_no_habit_though_its_visit_is_free():
    free = pair_of_trades().model_copy(update={"regions": {"here": tiny.region(tiny.costs(engineer=0, electrician=0))}})
    assert costs_if_certain(free, "element")[NORMAL] == pytest.approx(150 + 18)
    assert costs_if_certain(free, "tray")[NORMAL] == pytest.approx(30)


def test_an_act_and_an_advice_of_one_name_serve_their_own_causes_alone():
    knowledge = pair_of_trades()
    heat = {"heat": tiny.figures(low=80, high=20)}
    both = {"advised": tiny.habit(10, heat, advice="same"), "done": tiny.habit(10, heat, act="same")}
    knowledge = knowledge.model_copy(update={"causes": both})
    assert costs_if_certain(knowledge, "done")[Action("do_one_thing", "same")] == pytest.approx(1)
    assert costs_if_certain(knowledge, "done")[Action("use_differently", "same")] == pytest.approx(2 + 25)
    assert costs_if_certain(knowledge, "advised")[Action("use_differently", "same")] == pytest.approx(2)
    assert costs_if_certain(knowledge, "advised")[Action("do_one_thing", "same")] == pytest.approx(1 + 25)


def test_nobody_brings_the_other_trades_parts():
    knowledge = pair_of_trades()
    decision = decision_of(knowledge, "here")
    marginals = np.array([0.9, 0.4, 0.0, 0.0])
    assert kit(decision, marginals, "appliance_engineer") == ("element",)
    assert kit(decision, marginals, "electrician") == ()


def test_something_to_try_is_in_vain_as_often_as_what_it_serves_is_not_there():
    decision = decision_of(pair_of_trades(), "here")
    advice = decision.actions.index(ADVICE)
    for probability in (0.0, 0.4, 1.0):
        marginals = np.array([0.0, 0.0, probability, 0.0])
        assert costs_of(decision, marginals)[advice] == pytest.approx(2 + 25 * (1 - probability))


@pytest.mark.parametrize("seed", range(20))
def test_expected_costs_are_concave_so_that_knowing_more_never_harms(seed):
    """The cost of a mixture of two beliefs is never below the mixture of their costs, for any ending."""
    chance = np.random.default_rng(seed)
    decision = decision_of(tiny.random_knowledge(seed), "here")
    causes = len(decision.left)
    for _ in range(50):
        one, other = (chance.dirichlet(np.ones(causes + 1))[:causes] * chance.uniform(0.5, 1.5) for _ in range(2))
        share = chance.uniform()
        mixed = costs_of(decision, share * one + (1 - share) * other)
        assert (mixed >= share * costs_of(decision, one) + (1 - share) * costs_of(decision, other) - 1e-9).all()


def test_among_equal_costs_the_first_of_the_table_is_chosen():
    decision = decision_of(pair_of_trades(), "here")
    nothing = np.zeros(4)
    assert least_action(decision, nothing, range(len(decision.actions))) == NORMAL
    assert least_action(decision, nothing, tuple(decision.visits)) == ENGINEER


def test_an_unknown_region_is_refused():
    with pytest.raises(KeyError):
        decision_of(pair_of_trades(), "nowhere")
