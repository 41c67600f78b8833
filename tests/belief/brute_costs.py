"""What endings cost and what questions are worth, by plain loops over sets of causes, kits and orders of tests."""

from itertools import combinations, permutations
from math import inf, prod

from tests.belief.brute_force import (
    SOMETHING_ELSE,
    chance_of_evidence,
    marginal,
    observable_of,
    prior_weights,
    states_under,
)

TRADES = ("appliance_engineer", "electrician")


class BruteBelief:
    """Weights of sets of causes under answers; what each observable shows is worked out once."""

    def __init__(self, knowledge, not_fitted=frozenset()):
        self.knowledge = knowledge
        self.priors = {causes: odds for causes, odds in prior_weights(knowledge, not_fitted).items() if odds}
        self.under = {}

    def states(self, name, causes):
        if (name, causes) not in self.under:
            self.under[name, causes] = states_under(self.knowledge, name, causes)
        return self.under[name, causes]

    def weights(self, answers):
        """Set -> prior odds times the probability of all answers."""
        by_observable = {}
        for report, code in answers.items():
            by_observable.setdefault(observable_of(self.knowledge, report), []).append((report, code))
        told = {
            (name, state): prod(chance_of_evidence(self.knowledge, report, code, state) for report, code in reports)
            for name, reports in by_observable.items()
            for state in self.knowledge.observables[name].states
        }
        return {
            causes: prior
            * prod(
                sum(self.states(name, causes)[s] * told[name, s] for s in self.knowledge.observables[name].states)
                for name in by_observable
            )
            for causes, prior in self.priors.items()
        }


def normalised(weights):
    total = sum(weights.values())
    return {causes: weight / total for causes, weight in weights.items()}


def actions_of(knowledge):
    acts = dict.fromkeys(cause.act for cause in knowledge.causes.values() if cause.act)
    advice = dict.fromkeys(cause.advice for cause in knowledge.causes.values() if cause.advice)
    return [
        ("all_normal", ""),
        *(("do_one_thing", act) for act in acts),
        *(("use_differently", each) for each in advice),
        *(("book_visit", trade) for trade in TRADES),
    ]


def trade_of(knowledge, cause):
    if cause == SOMETHING_ELSE:
        return "appliance_engineer"
    mended_by = knowledge.causes[cause].mended_by
    return mended_by if mended_by in TRADES else None


def serves(knowledge, action, cause):
    ending, remedy = action
    if ending == "book_visit":
        return trade_of(knowledge, cause) in (None, remedy)
    if ending == "all_normal" or cause == SOMETHING_ELSE:
        return False
    return (
        remedy
        == {"do_one_thing": knowledge.causes[cause].act, "use_differently": knowledge.causes[cause].advice}[ending]
    )


def price_of(costs, action):
    ending, remedy = action
    return {
        "all_normal": 0.0,
        "do_one_thing": costs.act.value,
        "use_differently": costs.advice.value,
        "book_visit": costs.visit[remedy].value if ending == "book_visit" else 0.0,
    }[ending]


def left_undone(knowledge, action, causes):
    """What the causes that the action doesn't serve cost besides."""
    costs = knowledge.regions["here"].costs
    total = 0.0
    for cause in causes:
        if serves(knowledge, action, cause):
            shown_by_a_visit = action[0] == "book_visit" and trade_of(knowledge, cause) is None
            total += costs.habit_visited.value if shown_by_a_visit else 0.0
            continue
        trade = trade_of(knowledge, cause)
        after_all = costs.visit[trade].value if trade else 0.0
        total += after_all
        if action[0] == "all_normal":
            total += (costs.fault_left if trade else costs.habit_left).value
    return total


def sought_by(knowledge, trade):
    return [cause for cause in (*knowledge.causes, SOMETHING_ELSE) if trade_of(knowledge, cause) == trade]


def visits(knowledge, found, action, trade):
    """The expected number of visits by the trade: one now, or one for each of its causes that wasn't served."""
    if action == ("book_visit", trade):
        return 1.0
    return sum(marginal(found, cause) for cause in sought_by(knowledge, trade))


def cheapest_kit(knowledge, found, trade, visits=1.0):
    """The least expected cost of parts over all kits, and a kit that has it; each visit brings it."""
    costs = knowledge.regions["here"].costs
    part_of = {
        cause: knowledge.causes[cause].part
        for cause in sought_by(knowledge, trade)
        if cause != SOMETHING_ELSE and knowledge.causes[cause].part
    }
    parts = sorted(set(part_of.values()))
    most = int(knowledge.settings.parts_brought.value)
    best = (inf, ())
    for kit in (kit for size in range(min(most, len(parts)) + 1) for kit in combinations(parts, size)):
        trips = sum(marginal(found, cause) for cause, part in part_of.items() if part not in kit)
        best = min(best, (visits * costs.part_brought.value * len(kit) + costs.return_visit.value * trips, kit))
    return best


def expected_tests(knowledge, found, trade, order):
    """Until the cause is found, or all that are planned are made."""
    sought = sought_by(knowledge, trade)
    planned = min(int(knowledge.settings.tests_planned.value), len(sought))
    return sum(marginal(found, cause) * (order.index(cause) + 1 if cause in order else planned) for cause in sought)


def fewest_tests(knowledge, found, trade):
    """The least expected number of tests over all orders."""
    sought = sought_by(knowledge, trade)
    planned = min(int(knowledge.settings.tests_planned.value), len(sought))
    return min(expected_tests(knowledge, found, trade, order) for order in permutations(sought, planned))


def expected_cost(knowledge, found, action):
    """Of one action under a normalised belief, with the parts and tests of every visit, also of one that follows."""
    costs = knowledge.regions["here"].costs
    cost = price_of(costs, action)
    cost += sum(probability * left_undone(knowledge, action, causes) for causes, probability in found.items())
    for trade in TRADES:
        cost += cheapest_kit(knowledge, found, trade, visits(knowledge, found, action, trade))[0]
        cost += costs.test.value * fewest_tests(knowledge, found, trade)
    if action[0] in ("do_one_thing", "use_differently"):
        served = sum(marginal(found, cause) for cause in knowledge.causes if serves(knowledge, action, cause))
        cost += costs.tried_in_vain.value * (1 - served)
    return cost


def least_cost(knowledge, weights):
    """Of the best action, times the weight of the answers."""
    found = normalised(weights)
    return sum(weights.values()) * min(expected_cost(knowledge, found, action) for action in actions_of(knowledge))


def answers_after(reports, answers, question_id):
    return [{**answers, question_id: code} for code in reports[question_id]]


def one_step_saving(belief, reports, answers, question_id):
    """How much lower the expected cost is if the question is answered first; may fall below 0 by rounding alone."""
    now = belief.weights(answers)
    after = sum(least_cost(belief.knowledge, belief.weights(a)) for a in answers_after(reports, answers, question_id))
    return (least_cost(belief.knowledge, now) - after) / sum(now.values())


def two_step_saving(belief, reports, answers, candidates, first):
    """The same where the best other candidate may follow each answer, at its own effort."""
    now = belief.weights(answers)
    after = sum(
        _best_going_on(belief, reports, told, [c for c in candidates if c.question_id != first])
        for told in answers_after(reports, answers, first)
    )
    return (least_cost(belief.knowledge, now) - after) / sum(now.values())


def _best_going_on(belief, reports, answers, others):
    """Times the weight of the answers: stop, or ask one more, which opens only sometimes and takes its effort."""
    weights = belief.weights(answers)
    stop = least_cost(belief.knowledge, weights)
    ways = [stop]
    for second in others:
        told = sum(
            least_cost(belief.knowledge, belief.weights(a)) for a in answers_after(reports, answers, second.question_id)
        )
        ways.append(sum(weights.values()) * second.effort + second.opens * told + (1 - second.opens) * stop)
    return min(ways)
