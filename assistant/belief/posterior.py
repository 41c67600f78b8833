"""Answers -> how probable each hypothesis is."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import SOMETHING_ELSE, EvidenceModel, Hypothesis

DECIBANS_PER_NAT = 10 / np.log(10)


@dataclass(frozen=True)
class Posterior:
    """Exclusive hypotheses with their probabilities, which sum to 1; and of each cause, the marginal."""

    model: EvidenceModel
    probabilities: Floats

    @cached_property
    def marginals(self) -> Floats:
        """(C,): P(cause), whatever else is there too. They may sum to more than 1."""
        found: Floats = self.probabilities @ self.model.held
        return found

    def of(self, cause: str) -> float:
        return float(self.marginals[self.model.causes.index(cause)])

    def of_set(self, hypothesis: Hypothesis) -> float:
        """The probability that exactly these causes are there."""
        return float(self.probabilities[self.model.place_of[hypothesis]])

    def of_any(self, causes: Set[str]) -> float:
        """The probability that at least one of these is there."""
        chosen = [number for number, cause in enumerate(self.model.causes) if cause in causes]
        return float(self.probabilities[self.model.members[:, chosen].any(axis=1)].sum())

    def ranked(self) -> tuple[tuple[Hypothesis, float], ...]:
        """Most probable first; equal ones keep the order of the rules."""
        order = np.argsort(-self.probabilities.round(12), kind="stable")
        hypotheses = map(self.model.hypotheses.__getitem__, order.tolist())
        return tuple(zip(hypotheses, self.probabilities[order].tolist(), strict=True))

    def leader(self) -> Hypothesis:
        return self.model.hypotheses[int(np.argmax(self.probabilities.round(12)))]

    def causes(self) -> tuple[tuple[str, float], ...]:
        """The named causes with their marginals, most probable first."""
        order = np.argsort(-self.marginals.round(12), kind="stable")
        named = ((self.model.causes[i], float(self.marginals[i])) for i in order)
        return tuple((cause, probability) for cause, probability in named if cause != SOMETHING_ELSE)


Reports = tuple[tuple[str, str], ...]
"""Reports of one observable with their codes, in the order of their names."""


def reports_of_observables(model: EvidenceModel, answers: Mapping[str, str]) -> dict[str, Reports]:
    """observable -> its reports, both in the order of their names; what the model doesn't know is left out.

    So is what was measured: the measurement tells the same and more.
    """
    found: dict[str, Reports] = {}
    measured = measured_observables(model, answers)
    for report in sorted(answers):
        if report in model.report_given and answers[report] in model.codes[report]:
            name = model.observable_of[report]
            if name in measured:
                continue
            found[name] = (*found.get(name, ()), (report, answers[report]))
    return dict(sorted(found.items()))


def measured_observables(model: EvidenceModel, answers: Mapping[str, str]) -> set[str]:
    """Those that some measurement among the answers takes the place of; one that is only foreseen takes none."""
    return {
        name
        for report, written in written_down(model, answers).items()
        for name in model.instruments[report].replaces(written)
    }


def state_weights(model: EvidenceModel, answers: Mapping[str, str]) -> dict[str, Floats]:
    """observable -> (S,): the product of P(report | state) over its reports."""
    return {name: _state_weights(model, reports) for name, reports in reports_of_observables(model, answers).items()}


def _state_weights(model: EvidenceModel, reports: Reports) -> Floats:
    rows = [model.report_given[report][model.codes[report].index(code)] for report, code in reports]
    product: Floats = np.prod(rows, axis=0)
    return product


def log_likelihoods(model: EvidenceModel, answers: Mapping[str, str]) -> dict[str, Floats]:
    """observable -> (H,) log P(its reports | hypothesis).

    P(reports | hypothesis) = sum over states of P(state | hypothesis) * product of P(report | state): two questions
    about one thing are two reports of one observable, and nothing is counted twice.
    """
    found = {
        name: model.weighed.get(reports, lambda name=name, reports=reports: _log_likelihood(model, name, reports))  # type: ignore[misc]
        for name, reports in reports_of_observables(model, answers).items()
    }
    for report, row in model.measurements.log_likelihoods(written_down(model, answers)).items():
        found[model.observable_of[report]] = row
    return found


def written_down(model: EvidenceModel, answers: Mapping[str, str]) -> dict[str, str]:
    """Measuring question -> its lines, of what was measured and not only foreseen."""
    return {
        report: written
        for report, written in answers.items()
        if report in model.instruments and written not in model.codes.get(report, ())
    }


def _log_likelihood(model: EvidenceModel, name: str, reports: Reports) -> Floats:
    found: Floats = np.log(_state_weights(model, reports) @ model.state_given[name])
    found.flags.writeable = False
    return found


def posterior(model: EvidenceModel, answers: Mapping[str, str], not_fitted: Set[str] = frozenset()) -> Posterior:
    """Exact posterior from all answers (report -> code). Only a part known not to be fitted excludes a cause."""
    log_weights = log_priors(model, not_fitted)
    for log_likelihood in log_likelihoods(model, answers).values():
        log_weights += log_likelihood
    log_weights -= log_weights.max()
    weights = np.exp(log_weights, out=log_weights)
    weights /= weights.sum()
    return Posterior(model, weights)


def log_priors(model: EvidenceModel, not_fitted: Set[str]) -> Floats:
    """(H,), unnormalised; minus infinity where a cause needs a part that isn't fitted."""
    log_weights = model.log_prior_odds.copy()
    if not_fitted:
        excluded = np.array([not not_fitted.isdisjoint(model.needs.get(cause, ())) for cause in model.causes])
        log_weights[model.members[:, excluded].any(axis=1)] = -np.inf
    return log_weights


def weights_of_evidence(
    model: EvidenceModel, answers: Mapping[str, str], leader: Hypothesis, runner_up: Hypothesis
) -> dict[str, float]:
    """observable -> decibans by which its reports speak for the leader against the runner-up (Good 1950)."""
    first, second = model.place_of[leader], model.place_of[runner_up]
    return {
        name: float((row[first] - row[second]) * DECIBANS_PER_NAT)
        for name, row in log_likelihoods(model, answers).items()
    }
