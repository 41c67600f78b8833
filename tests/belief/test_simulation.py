"""The benchmarks of belief, at a size for every day: they must run, and what must hold at any size holds."""

import sys

import numpy as np
import pytest

from assistant.belief.decision import least_costs
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from assistant.knowledge.model import Knowledge
from tests.benchmarks import leave_one_out, policy_regret
from tests.benchmarks.best_policy import POLICIES, Problem, ours
from tests.benchmarks.leave_one_out import Asking, leave_out
from tests.benchmarks.policy_regret import KINDS, draw_networks
from tests.benchmarks.small_networks import without_causes

ROUNDING = 1e-6


@pytest.fixture(scope="module", params=KINDS)
def problems(request: pytest.FixtureRequest, knowledge: Knowledge) -> list[Problem]:
    return [Problem(network) for network in draw_networks(knowledge, request.param, 3, 11, causes=6, questions=5)]


def test_no_way_of_asking_costs_less_than_the_best(problems: list[Problem]) -> None:
    for problem in problems:
        for name, policy in POLICIES.items():
            assert problem.cost_of(policy) >= problem.best_cost - ROUNDING, name


def test_our_way_of_asking_costs_little_more_than_the_best(problems: list[Problem]) -> None:
    for problem in problems:
        assert problem.cost_of(ours) <= 1.1 * problem.best_cost


def test_the_losses_by_kind_are_all_that_is_lost(problems: list[Problem]) -> None:
    for problem in problems:
        lost = problem.cost_of(ours) - problem.best_cost
        assert sum(problem.losses(ours).values()) == pytest.approx(lost, abs=ROUNDING)


def test_knowing_more_never_makes_the_ending_dearer(problems: list[Problem]) -> None:
    for problem in problems:
        dearer, looked_at = problem.dearer_for_knowing()
        assert looked_at > 100
        assert dearer == 0


def test_the_benchmark_ends_where_belief_ends(problems: list[Problem]) -> None:
    """Every set of answers costs what the posterior says, computed the other way round."""
    chance = np.random.default_rng(5)
    for problem in problems:
        network, model = problem.network, problem.network.model
        for _ in range(10):
            cell = tuple(int(chance.integers(size)) for size in problem.probability.shape)
            codes = {q: model.codes[q] for q in network.questions}
            told = {q: codes[q][n] for q, n in zip(network.questions, cell, strict=True) if n < len(codes[q])}
            belief = posterior(model, {**network.told, **told})
            allowed = range(len(network.decision.actions))
            expected = least_costs(network.decision, belief.marginals[None, :], np.ones(1), allowed)[0]
            assert problem.ending[cell] / problem.probability[cell] == pytest.approx(expected)


def test_something_else_is_likelier_once_the_cause_is_left_out(knowledge: Knowledge) -> None:
    whole = compile_evidence_model(knowledge)
    for cause in ("indicator_lamp_dead", "oven_fan_stopped", "wired_wrong_at_fitting"):
        found = leave_out(knowledge, whole, cause, 6, Asking(8, at_random=False), 3)
        assert len(found.without) == len(found.whole) == 6
        assert sum(s.probability for s in found.without) > sum(s.probability for s in found.whole)
        assert cause not in {s.first for s in found.without}


def test_a_cause_that_is_left_out_is_nowhere(knowledge: Knowledge) -> None:
    few = without_causes(knowledge, {"thermal_cutout_open"})
    model = compile_evidence_model(few)
    assert "thermal_cutout_open" not in model.causes
    assert {cause for pair in few.pairs.values() for cause in pair.causes} <= set(few.causes)
    assert few.pairs.keys() < knowledge.pairs.keys()


def test_the_tables_say_that_they_are_simulated(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "argv", ["policy_regret", "--networks", "1", "--causes", "5", "--questions", "5"])
    policy_regret.main()
    of_policies = capsys.readouterr().out
    monkeypatch.setattr(
        sys, "argv", ["leave_one_out", "--ovens", "1", "--causes", "9", "--answers", "2", "--at-random", "--rate", "8"]
    )
    leave_one_out.main()
    of_causes = capsys.readouterr().out
    assert of_policies.count("Simulated") == len(KINDS)
    assert all(name in of_policies for name in POLICIES)
    assert of_causes.count("Simulated: 9 of ") == 1
    assert "rate 8 %" in of_causes
