"""Three published networks, asked the same questions as pgmpy is.

Sources: asia: S. L. Lauritzen and D. J. Spiegelhalter, Journal of the Royal Statistical Society B 50 (1988),
157-224. cancer and earthquake: K. B. Korb and A. E. Nicholson, Bayesian Artificial Intelligence, chapter 2 (the
latter after J. Pearl, 1988). The files are those that come with pgmpy; in its earthquake the priors are 0.01 and 0.02.
"""

from functools import cache

import numpy as np
import pytest

from assistant.belief.posterior import posterior
from assistant.belief.value import LEAST_MONEY, Candidate, look_ahead, one_step
from tests.belief.networks import evidence_model_of
from tests.belief.outside import Asked, shipped_network
from tests.belief.tiny import plain_decision

HIDDEN_AND_OBSERVED = {
    "asia": (("tub", "lung", "bronc"), ("asia", "smoke", "xray", "dysp")),
    "cancer": (("Pollution", "Smoker", "Cancer"), ("Xray", "Dyspnoea")),
    "earthquake": (("Burglary", "Earthquake", "Alarm"), ("JohnCalls", "MaryCalls")),
}
ALARM_SEEN = (("Burglary", "Earthquake"), ("Alarm",))


@cache
def network(name):
    return shipped_network(name)


@cache
def model(name, hidden_and_observed=None):
    return evidence_model_of(network(name), *(hidden_and_observed or HIDDEN_AND_OBSERVED[name]))


@pytest.mark.parametrize(
    ("name", "cause", "evidence", "expected"),
    [
        ("asia", "lung", {}, 0.055),
        ("asia", "tub", {}, 0.0104),
        ("asia", "lung", {"dysp": "yes"}, 0.102759),
        ("asia", "bronc", {"dysp": "yes"}, 0.833967),
        ("asia", "tub", {"dysp": "yes"}, 0.018845),
        ("asia", "tub", {"asia": "yes", "xray": "yes"}, 0.337716),
        ("asia", "lung", {"smoke": "yes", "xray": "yes"}, 0.645991),
        ("cancer", "Cancer", {}, 0.01163),
        ("cancer", "Cancer", {"Xray": "positive"}, 0.050288),
        ("cancer", "Cancer", {"Xray": "positive", "Dyspnoea": "True"}, 0.102919),
        ("earthquake", "Burglary", {"JohnCalls": "True", "MaryCalls": "True"}, 0.556522),
        ("earthquake", "Burglary", {"JohnCalls": "True"}, 0.133314),
    ],
)
def test_posteriors_are_the_published_ones(name, cause, evidence, expected):
    found = posterior(model(name), evidence).of(cause)
    assert found == pytest.approx(expected, abs=1e-6)
    hidden_state = network(name).get_cpds(cause).state_names[cause][0]
    assert found == pytest.approx(Asked(network(name)).chance(cause, hidden_state, evidence), abs=1e-12)


def test_a_burglary_is_explained_away_by_an_earthquake():
    found = posterior(model("earthquake", ALARM_SEEN), {"Alarm": "True"})
    assert found.of("Burglary") == pytest.approx(0.583461, abs=1e-6)
    both = found.of_set(("Burglary", "Earthquake"))
    assert both / found.of("Earthquake") == pytest.approx(0.032030, abs=1e-6)


def test_the_chance_of_a_report_is_the_published_one():
    asia = model("asia")
    of_dysp = asia.state_given["dysp"][0] @ posterior(asia, {}).probabilities
    assert of_dysp == pytest.approx(0.435971, abs=1e-6)


def invented_decision(asked, causes, evidence):
    """Do nothing, treat each by itself, or treat all.

    Treating a cause pays from a little more than its chance now, at most from one half on.
    """
    names = ["nothing", *causes, "all"]
    prices = [300.0 + 100 * number for number in range(len(causes))]
    firsts = [asked.network.get_cpds(cause).state_names[cause][0] for cause in causes]
    pays_from = [
        min(1.2 * asked.chance(cause, first, evidence), 0.5) for cause, first in zip(causes, firsts, strict=True)
    ]
    lost = [price / limit for price, limit in zip(prices, pays_from, strict=True)]
    left = [[0.0 if name in (cause, "all") else lost[number] for name in names] for number, cause in enumerate(causes)]
    return plain_decision(names, [0.0, *prices, 0.9 * sum(prices)], left)


def least_cost_by_queries(asked, decision, causes, evidence):
    firsts = [asked.network.get_cpds(cause).state_names[cause][0] for cause in causes]
    chances = [asked.chance(cause, first, evidence) for cause, first in zip(causes, firsts, strict=True)]
    return min(
        decision.price[number] + sum(p * decision.left[cause, number] for cause, p in enumerate(chances))
        for number in range(len(decision.actions))
    )


def value_by_queries(asked, decision, causes, evidence, name):
    """A plain loop over the states of one observable."""
    states = asked.network.get_cpds(name).state_names[name]
    after = sum(
        asked.chance(name, state, evidence) * least_cost_by_queries(asked, decision, causes, {**evidence, name: state})
        for state in states
    )
    return least_cost_by_queries(asked, decision, causes, evidence) - after


@pytest.mark.parametrize(
    ("name", "evidence"),
    [
        ("asia", {}),
        ("asia", {"dysp": "yes"}),
        ("asia", {"smoke": "yes", "xray": "yes"}),
        ("cancer", {}),
        ("cancer", {"Xray": "positive"}),
        ("earthquake", {}),
        ("earthquake", {"JohnCalls": "True"}),
    ],
)
def test_the_value_of_each_observable_is_that_of_a_plain_loop_over_queries(name, evidence):
    hidden, observed = HIDDEN_AND_OBSERVED[name]
    asked = Asked(network(name))
    decision = invented_decision(asked, hidden, evidence)
    open_ones = [each for each in observed if each not in evidence]
    outlook = look_ahead(model(name), evidence, posterior(model(name), evidence), open_ones, dropped=0)
    candidates = [Candidate(each, effort=0.0, minutes=1.0) for each in open_ones]
    with np.errstate(divide="ignore", invalid="ignore"):  # some states here are impossible; only bits mind
        worths = one_step(decision, outlook, candidates, range(len(decision.actions)))
    expected = [value_by_queries(asked, decision, hidden, evidence, each) for each in open_ones]
    assert max(expected) > LEAST_MONEY
    expected = [value if value >= LEAST_MONEY else 0.0 for value in expected]
    assert [worth.value for worth in worths] == pytest.approx(expected, abs=1e-9)
