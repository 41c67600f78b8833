"""What belief would have said of past cases, each before its outcome was counted. Pure.

Prequential: every outcome is forecast with the rates learned from those before it, then it is counted (A. P. Dawid,
Statistical Theory: The Prequential Approach, 1984). Rates start from the expert's, whatever the rules have learned.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Set
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.belief.hypotheses import SOMETHING_ELSE, EvidenceModel, compile_evidence_model, with_rates
from assistant.belief.learning import base_rates
from assistant.belief.outcomes import Outcome, latest_of_each_session
from assistant.belief.posterior import Posterior, posterior
from assistant.belief.scores import (
    Band,
    Floats,
    Numbers,
    brier_score,
    brier_score_of_categories,
    log_score,
    log_score_of_categories,
    reliability_bands,
)
from assistant.knowledge.learned import Count, Group, Learned, Sessions
from assistant.knowledge.model import Knowledge

Truths = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class Case:
    """What was forecast from the answers, and from the rates alone, and what was found.

    `found`: (C,) of truths, whether each cause was found; `came`: the number of the exclusive hypothesis that came,
    something else where none says what was found.
    """

    forecast: Posterior
    by_rates_alone: Posterior
    found: Truths
    came: int


@dataclass(frozen=True)
class Scores:
    """Averages over the cases, 0 being perfect; log scores in nats. The hypotheses' Brier score goes up to 2."""

    brier_of_hypotheses: float
    log_of_hypotheses: float
    brier_of_causes: float
    log_of_causes: float


@dataclass(frozen=True)
class Calibration:
    """Over `cases` outcomes: scores, and what was observed where so much was predicted.

    `bands_of_causes` holds a forecast for every case and cause; `bands_of_leader` one for every case, the most
    probable hypothesis.
    """

    cases: int
    scores: Scores
    scores_of_rates_alone: Scores
    bands_of_causes: tuple[Band, ...]
    bands_of_leader: tuple[Band, ...]


def calibration(outcomes: Iterable[Outcome], knowledge: Knowledge) -> Calibration | None:
    """How well belief would have done on these outcomes in their order; None if none of them counts."""
    cases = tuple(prequential_cases(outcomes, knowledge))
    if not cases:
        return None
    found = np.array([case.found for case in cases]).ravel().astype(np.float64)
    marginals = np.array([case.forecast.marginals for case in cases]).ravel()
    leaders = [int(np.argmax(case.forecast.probabilities)) for case in cases]
    leading = np.array([case.forecast.probabilities[leader] for leader, case in zip(leaders, cases, strict=True)])
    right = np.array([leader == case.came for leader, case in zip(leaders, cases, strict=True)], dtype=np.float64)
    came = np.array([case.came for case in cases])
    return Calibration(
        len(cases),
        _scores([case.forecast for case in cases], found, came),
        _scores([case.by_rates_alone for case in cases], found, came),
        reliability_bands(marginals, found),
        reliability_bands(leading, right),
    )


def prequential_cases(outcomes: Iterable[Outcome], knowledge: Knowledge) -> Iterator[Case]:
    """Each outcome that counts, forecast with what those before it had taught.

    The groups weigh as they were recorded so far: what is forecast are recorded outcomes, not all sessions.
    """
    sessions: Counter[Group] = Counter()
    found: Counter[tuple[Group, str]] = Counter()
    learned: Learned | None = None
    model = compile_evidence_model(knowledge)
    for outcome in latest_of_each_session(outcomes):
        if not outcome.counts:
            continue
        known = outcome.known_causes(knowledge.causes)
        rates = base_rates(knowledge.model_copy(update={"learned": learned}))
        yield _case(with_rates(model, knowledge, rates), outcome, known)
        sessions[outcome.group] += 1
        found.update((outcome.group, cause_id) for cause_id in known)
        learned = _learned(outcome, sessions, found, knowledge)


def _learned(
    latest: Outcome, sessions: Mapping[Group, int], found: Mapping[tuple[Group, str], int], knowledge: Knowledge
) -> Learned:
    counts = {
        group: {cause_id: Count(found=found[group, cause_id], of=size) for cause_id in knowledge.causes}
        for group, size in sessions.items()
    }
    sizes = Sessions(visited=sessions["visited"], solved_by_phone=sessions["solved_by_phone"], unknown=0)
    return Learned(until=latest.recorded_on, sessions=sizes, counts=counts)


def _case(model: EvidenceModel, outcome: Outcome, known: Set[str]) -> Case:
    """Forecast from the answers that today's rules still know, and from the rates alone."""
    evidence = {report: code for report, code in outcome.evidence.items() if code in model.codes.get(report, ())}
    after = posterior(model, evidence, frozenset(outcome.not_fitted))
    came = tuple(cause for cause in model.causes if cause in known)
    number = model.place_of[came] if came in model.place_of else model.place_of[SOMETHING_ELSE,]
    return Case(after, posterior(model, {}), np.array([cause in known for cause in model.causes]), number)


def _scores(forecasts: list[Posterior], found: Floats, came: Numbers) -> Scores:
    rows = np.array([forecast.probabilities for forecast in forecasts])
    marginals = np.array([forecast.marginals for forecast in forecasts]).ravel()
    return Scores(
        brier_score_of_categories(rows, came),
        log_score_of_categories(rows, came),
        brier_score(marginals, found),
        log_score(marginals, found),
    )
