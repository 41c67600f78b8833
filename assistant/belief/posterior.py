"""Answers -> how probable each hypothesis is."""

from collections.abc import Mapping, Set
from dataclasses import dataclass

import numpy as np

from assistant.belief.hypotheses import NOTHING_WRONG, SOMETHING_ELSE, EvidenceModel, Floats

DECIBANS_PER_NAT = 10 / np.log(10)


@dataclass(frozen=True)
class Posterior:
    """Exclusive hypotheses with their probabilities, which sum to 1."""

    hypotheses: tuple[str, ...]
    probabilities: Floats

    def of(self, hypothesis: str) -> float:
        return float(self.probabilities[self.hypotheses.index(hypothesis)])

    def ranked(self) -> tuple[tuple[str, float], ...]:
        """Most probable first; equal ones keep the order of the rules."""
        order = np.argsort(-self.probabilities.round(12), kind="stable")
        return tuple((self.hypotheses[i], float(self.probabilities[i])) for i in order)

    def causes(self) -> tuple[tuple[str, float], ...]:
        """The named causes, most probable first."""
        return tuple((h, p) for h, p in self.ranked() if h not in (NOTHING_WRONG, SOMETHING_ELSE))


def log_likelihoods(model: EvidenceModel, answers: Mapping[str, str]) -> dict[str, Floats]:
    """observable -> (H,) log P(its reports | hypothesis).

    P(reports | cause) = sum over states of P(state | cause) * product of P(report | state): two questions
    about one thing are two reports of one observable, and nothing is counted twice.
    """
    given_state: dict[str, Floats] = {}
    for question_id in sorted(answers):
        if question_id not in model.report_given:
            continue
        observable = model.observable_of[question_id]
        row = model.report_given[question_id][model.codes[question_id].index(answers[question_id])]
        given_state[observable] = given_state.get(observable, np.ones_like(row)) * row
    return {name: np.log(rows @ model.state_given[name]) for name, rows in sorted(given_state.items())}


def posterior(model: EvidenceModel, answers: Mapping[str, str], not_fitted: Set[str] = frozenset()) -> Posterior:
    """Exact posterior from all answers (question -> code). Only a part known not to be fitted excludes a cause."""
    log_weights = np.log(model.prior_odds)
    for log_likelihood in log_likelihoods(model, answers).values():
        log_weights = log_weights + log_likelihood
    excluded = [not not_fitted.isdisjoint(model.needs.get(hypothesis, ())) for hypothesis in model.hypotheses]
    log_weights = np.where(excluded, -np.inf, log_weights)
    weights = np.exp(log_weights - log_weights.max())
    return Posterior(model.hypotheses, weights / weights.sum())


def weights_of_evidence(
    model: EvidenceModel, answers: Mapping[str, str], leader: str, runner_up: str
) -> dict[str, float]:
    """observable -> decibans by which its reports speak for the leader against the runner-up (Good 1950)."""
    first, second = model.hypotheses.index(leader), model.hypotheses.index(runner_up)
    return {
        name: float((row[first] - row[second]) * DECIBANS_PER_NAT)
        for name, row in log_likelihoods(model, answers).items()
    }


def tells_apart(model: EvidenceModel, question_id: str, now: Posterior, above: float) -> float:
    """How differently the leader and a rival expect the question to be answered.

    Rivals hold more than the share `above` of what the leader leaves. The largest total variation distance
    between predicted answers: 0 (alike) to 1.
    """
    predicted = model.report_given[question_id] @ model.state_given[model.observable_of[question_id]]
    leader = int(np.argmax(now.probabilities))
    rivals = now.probabilities > above * (1 - now.probabilities[leader])
    rivals[leader] = False
    if not rivals.any():
        return 0.0
    return float(np.abs(predicted[:, rivals] - predicted[:, [leader]]).sum(axis=0).max() / 2)
