"""Rates learned from outcomes. Where outcomes are drawn by chance, they are simulated: no oven was looked at."""

import random
from datetime import date
from math import sqrt

import numpy as np
import pytest

from assistant.belief.hypotheses import compile_evidence_model, with_rates
from assistant.belief.learning import base_rates, equivalent_cases, estimate, learned_from
from assistant.belief.posterior import posterior
from assistant.interview.script import script_of
from assistant.knowledge.learned import Count, Learned, Sessions
from assistant.knowledge.model import Figure
from tests.belief import tiny
from tests.belief.outcomes import outcome

DAY = date(2026, 3, 31)


def percent(value, low=None, high=None):
    spread = None if low is None else (low, high)
    return Figure(value=value, unit="percent", source="assumed" if spread else "a test", range=spread)


def sessions(visited=0, solved_by_phone=0, unknown=0):
    return Sessions(visited=visited, solved_by_phone=solved_by_phone, unknown=unknown)


def one_cause(rate, learned=None):
    """Knowledge of one cause `c` with that base rate, and what was learned of it: group -> (found, of)."""
    known = tiny.knowledge({}, {}, {"c": tiny.cause(5, {"o": tiny.figures(a=50, b=50)})})
    cause = known.causes["c"].model_copy(update={"base_rate": rate})
    return known.model_copy(update={"causes": {"c": cause}, "learned": learned})


def learned(sizes, **counts):
    found = {group: {"c": Count(found=found, of=of)} for group, (found, of) in counts.items()}
    return Learned(until=DAY, sessions=sizes, counts=found)


def test_a_range_is_worth_as_many_cases_as_a_beta_of_that_spread():
    """Beta(2, 8): mean 0.2, variance 2 * 8 / (10^2 * 11). Source: any table of the Beta distribution."""
    deviation = 100 * sqrt(16 / 1100)
    assert equivalent_cases(percent(20, 20 - 2 * deviation + 7, 20 + 2 * deviation + 7)) == pytest.approx(10)


def test_the_expert_on_the_base_element_is_worth_183_cases():
    """0.06 * 0.94 / 0.0175^2 - 1, by hand."""
    assert equivalent_cases(percent(6, 3, 10)) == pytest.approx(183.16, abs=0.01)


@pytest.mark.parametrize(
    ("rate", "cases"),
    [(percent(5), 100), (percent(5, 5, 5), 10_000), (percent(1, 0, 100), 1), (percent(50, 0, 100), 3)],
)
def test_the_worth_of_a_range_has_bounds(rate, cases):
    assert equivalent_cases(rate) == pytest.approx(cases)


def test_where_nothing_was_learned_the_experts_rate_stands(knowledge):
    assert base_rates(knowledge) == {c: pytest.approx(cause.base_rate.share) for c, cause in knowledge.causes.items()}
    for nothing in (learned(sessions()), learned(sessions(unknown=50)), learned(sessions(visited=9, unknown=50))):
        assert base_rates(one_cause(percent(7), nothing)) == {"c": pytest.approx(0.07)}


def test_where_all_sessions_were_seen_the_expert_counts_as_so_many_more_cases():
    """Beta(10 + 40, 90 + 60) after 40 of 100, from a tenth worth 100 cases."""
    seen = learned(sessions(visited=100), visited=(40, 100))
    assert base_rates(one_cause(percent(10), seen)) == {"c": pytest.approx(50 / 200)}


def test_groups_weigh_as_they_occur_among_all_sessions_and_not_as_they_were_seen():
    """Shares 0.5, 0.3, 0.2 of 100 expert cases: (5 + 40) / (50 + 100), (3 + 1) / (30 + 50), and 0.1 unseen."""
    seen = learned(sessions(500, 300, 200), visited=(40, 100), solved_by_phone=(1, 50))
    expected = 0.5 * 45 / 150 + 0.3 * 4 / 80 + 0.2 * 0.1
    assert base_rates(one_cause(percent(10), seen)) == {"c": pytest.approx(expected)}


def test_sessions_whose_outcome_nobody_knows_keep_the_experts_rate():
    many = learned(sessions(visited=1000, unknown=1000), visited=(900, 1000))
    assert base_rates(one_cause(percent(10), many))["c"] == pytest.approx(0.5 * 905 / 1050 + 0.5 * 0.1)


def test_the_groups_together_are_as_certain_as_the_expert_was():
    """Two standard deviations to either side are the range again, whatever the shares."""
    rate = percent(20, 16, 24)
    whole = estimate("c", one_cause(rate))
    for shares in ((500, 300, 200), (10, 10, 980)):
        split = estimate("c", one_cause(rate, learned(sessions(*shares))))
        assert split.rate == pytest.approx(0.2)
        assert split.high - split.low == pytest.approx(whole.high - whole.low, rel=0.04)
    assert whole.high - whole.low == pytest.approx(2 * 1.645 * 0.02, rel=0.03)


def test_the_interval_is_that_of_the_distribution():
    """Beta(1, n) has the quantile 1 - (1 - p)^(1 / n): here from one expert case in two halves, and 18 of none."""
    seen = learned(sessions(visited=18), visited=(0, 18))
    found = estimate("c", one_cause(percent(50, 50 - 100 * sqrt(1 / 3), 50 + 100 * sqrt(1 / 3)), seen))
    cases = equivalent_cases(percent(50, 50 - 100 * sqrt(1 / 3), 50 + 100 * sqrt(1 / 3)))
    assert cases == pytest.approx(2)
    n = 19
    assert found.rate == pytest.approx(1 / 20)
    assert found.low == pytest.approx(1 - 0.95 ** (1 / n), abs=0.001)
    assert found.high == pytest.approx(1 - 0.05 ** (1 / n), abs=0.003)


def test_more_outcomes_narrow_the_interval():
    few = estimate("c", one_cause(percent(10), learned(sessions(visited=50), visited=(10, 50))))
    many = estimate("c", one_cause(percent(10), learned(sessions(visited=5000), visited=(1000, 5000))))
    assert many.high - many.low < few.high - few.low
    assert few.low < few.rate < few.high


def test_counts_are_made_anew_from_all_lines():
    known = tiny.sound_knowledge()
    lines = [
        outcome(1, causes_found=("weak_element",)),
        outcome(2, causes_found=("weak_element", "worn_seal"), recorded_on="2026-04-02"),
        outcome(3, result="no_fault_found"),
        outcome(4, result="no_access", recorded_on="2026-05-01"),
        outcome(5, group="solved_by_phone", result="advised", causes_found=("high_shelf",)),
        outcome(6, causes_found=("gone_since",)),
        outcome(1, result="back_within_30_days"),
    ]
    found = learned_from(lines, known, {"unknown": 30})
    assert found.model_dump() == {
        "until": date(2026, 4, 2),
        "sessions": {"visited": 5, "solved_by_phone": 1, "unknown": 30},
        "counts": {
            "visited": {
                "high_shelf": {"found": 0, "of": 3},
                "weak_element": {"found": 1, "of": 3},
                "worn_seal": {"found": 1, "of": 3},
            },
            "solved_by_phone": {
                "high_shelf": {"found": 1, "of": 1},
                "weak_element": {"found": 0, "of": 1},
                "worn_seal": {"found": 0, "of": 1},
            },
        },
    }
    assert learned_from(lines, known.model_copy(update={"learned": found}), {"unknown": 30}) == found


def test_a_group_may_be_larger_than_what_was_recorded_of_it_but_not_smaller():
    known = tiny.sound_knowledge()
    lines = [outcome(1), outcome(2, result="cancelled")]
    assert learned_from(lines, known, {"visited": 80, "solved_by_phone": 7}).sessions == sessions(80, 7)
    with pytest.raises(ValueError, match="visited"):
        learned_from(lines, known, {"visited": 1})


def test_from_outcomes_that_show_nothing_nothing_is_learned():
    assert learned_from([outcome(result="cancelled")], tiny.sound_knowledge(), {}) is None


def test_learned_rates_reach_the_belief_of_a_conversation(knowledge):
    seen = Learned(
        until=DAY,
        sessions=sessions(visited=1000),
        counts={"visited": {"base_element_open": Count(found=500, of=1000)}},
    )
    before = posterior(script_of(knowledge).evidence_model, {})
    taught = knowledge.model_copy(update={"learned": seen})
    after = posterior(script_of(taught).evidence_model, {})
    assert after.of("base_element_open") > 3 * before.of("base_element_open")


def test_other_rates_give_the_model_that_compiling_with_them_gives(knowledge):
    model = compile_evidence_model(knowledge)
    same = with_rates(model, knowledge, base_rates(knowledge))
    assert (same.prior_odds == model.prior_odds).all()
    rates = {cause_id: 0.9 / len(knowledge.causes) for cause_id in knowledge.causes}
    quick, anew = with_rates(model, knowledge, rates), compile_evidence_model(knowledge, rates)
    assert (quick.prior_odds == anew.prior_odds).all()
    assert all((quick.state_given[name] == table).all() for name, table in anew.state_given.items())


VISITED_SHARE, RATE_VISITED, RATE_BY_PHONE = 0.4, 0.25, 0.02
TRUE_RATE = VISITED_SHARE * RATE_VISITED + (1 - VISITED_SHARE) * RATE_BY_PHONE


def simulated_year(seed, asked_of_visits, asked_of_calls, count=2000):
    """Sizes of the groups, and (found, of) in each, where not everybody is asked what came of it."""
    chance = random.Random(seed)
    sizes, seen = {"visited": 0, "solved_by_phone": 0}, {"visited": [0, 0], "solved_by_phone": [0, 0]}
    for _ in range(count):
        visited = chance.random() < VISITED_SHARE
        group = "visited" if visited else "solved_by_phone"
        there = chance.random() < (RATE_VISITED if visited else RATE_BY_PHONE)
        asked = chance.random() < (asked_of_visits if visited else asked_of_calls)
        sizes[group] += 1
        seen[group][0] += there and asked
        seen[group][1] += asked
    return sessions(**sizes), seen


def simulated_errors(asked_of_visits, asked_of_calls):
    """Errors of the estimate within groups, and of one pooled count with the same prior, over 60 years."""
    rate = percent(8, 4, 14)
    within, pooled = [], []
    for seed in range(60):
        sizes, seen = simulated_year(seed, asked_of_visits, asked_of_calls)
        within.append(base_rates(one_cause(rate, learned(sizes, **seen)))["c"] - TRUE_RATE)
        found, of = (sum(column) for column in zip(*seen.values(), strict=True))
        pooled.append(base_rates(one_cause(rate, learned(sessions(visited=of), visited=(found, of))))["c"] - TRUE_RATE)
    return np.array(within), np.array(pooled)


def test_simulated_counting_within_groups_beats_one_pooled_count_where_calls_are_asked_more_seldom():
    within, pooled = simulated_errors(asked_of_visits=0.8, asked_of_calls=0.1)
    assert np.sqrt(np.mean(within**2)) < np.sqrt(np.mean(pooled**2)) / 3
    assert pooled.mean() > 0.05
    assert abs(within.mean()) < 0.02


def test_simulated_where_all_are_asked_alike_the_two_agree():
    within, pooled = simulated_errors(asked_of_visits=0.5, asked_of_calls=0.5)
    assert within == pytest.approx(pooled, abs=0.01)


def test_simulated_where_calls_are_never_asked_the_estimate_errs_upwards():
    """The limit: calls keep the expert's rate of all sessions, though fewer of them have what is found on visits."""
    within, pooled = simulated_errors(asked_of_visits=0.8, asked_of_calls=0)
    assert within.mean() > 0.02
    assert within.mean() < pooled.mean()
