"""What belief would have said of past cases, each before its outcome was counted. Pure.

Prequential: every outcome is forecast with the rates learned from those before it, then it is counted (A. P. Dawid,
Statistical Theory: The Prequential Approach, 1984). Rates start from the expert's, whatever the rules have learned.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Set
from dataclasses import dataclass
from typing import Any

import numpy as np

from assistant.belief.hypotheses import NOTHING_WRONG, SOMETHING_ELSE, compile_evidence_model
from assistant.belief.learning import base_rates, with_rates
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
from assistant.knowledge.model import Knowledge, Question

Hypothesis = frozenset[str]
"""The causes that a hypothesis says are there; none if nothing is wrong."""

ELSE: Hypothesis = frozenset({SOMETHING_ELSE})


@dataclass(frozen=True)
class Forecast:
    """`of_causes`: how probable each cause was; `of_hypotheses`: each of the exclusive ones, summing to 1."""

    of_causes: Mapping[str, float]
    of_hypotheses: Mapping[Hypothesis, float]


@dataclass(frozen=True)
class Case:
    """What was forecast from the answers, and from the rates alone, and what was found."""

    forecast: Forecast
    by_rates_alone: Forecast
    found: Hypothesis


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
    probabilities, found = _of_causes([case.forecast for case in cases], cases)
    leaders = [max(case.forecast.of_hypotheses.items(), key=lambda item: item[1]) for case in cases]
    right = [leader == _as_forecast(case) for (leader, _), case in zip(leaders, cases, strict=True)]
    return Calibration(
        len(cases),
        _scores([case.forecast for case in cases], cases),
        _scores([case.by_rates_alone for case in cases], cases),
        reliability_bands(probabilities, found),
        reliability_bands(np.array([p for _, p in leaders]), np.array(right, dtype=float)),
    )


def prequential_cases(outcomes: Iterable[Outcome], knowledge: Knowledge) -> Iterator[Case]:
    """Each outcome that counts, forecast with what those before it had taught.

    The groups weigh as they were recorded so far: what is forecast are recorded outcomes, not all sessions.
    """
    sessions: Counter[Group] = Counter()
    found: Counter[tuple[Group, str]] = Counter()
    learned: Learned | None = None
    for outcome in latest_of_each_session(outcomes):
        if not outcome.counts:
            continue
        rates = base_rates(knowledge.model_copy(update={"learned": learned}))
        with_answers, by_rates_alone = _forecasts(knowledge, rates, outcome)
        known = outcome.known_causes(knowledge.causes)
        yield Case(with_answers, by_rates_alone, known)
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


def _forecasts(knowledge: Knowledge, rates: Mapping[str, float], outcome: Outcome) -> tuple[Forecast, Forecast]:
    """From the answers that today's rules still know, and from the rates alone."""
    model = compile_evidence_model(with_rates(knowledge, rates))
    evidence = {q: code for q, code in outcome.evidence.items() if code in _codes_of(knowledge.questions.get(q))}
    after = posterior(model, evidence, frozenset(outcome.not_fitted))
    return _forecast(after, knowledge.causes.keys()), _forecast(posterior(model, {}), knowledge.causes.keys())


def _codes_of(question: Question | None) -> Set[str]:
    if question is None:
        return frozenset()
    return question.number.bands.keys() if question.number else question.choices.keys()


def _forecast(after: Posterior, cause_ids: Set[str]) -> Forecast:
    return Forecast(
        {cause_id: after.of(cause_id) for cause_id in cause_ids},
        {_causes_of(hypothesis): probability for hypothesis, probability in after.ranked()},
    )


def _causes_of(hypothesis: Any) -> Hypothesis:
    """A hypothesis as the causes that it says are there, whether it is one id or several."""
    if isinstance(hypothesis, str):
        return frozenset() if hypothesis == NOTHING_WRONG else frozenset({hypothesis})
    return frozenset(hypothesis)


def _as_forecast(case: Case) -> Hypothesis:
    """What was found, among the hypotheses: something else where none of them says so."""
    return case.found if case.found in case.forecast.of_hypotheses else ELSE


def _scores(forecasts: list[Forecast], cases: tuple[Case, ...]) -> Scores:
    probabilities, found = _of_causes(forecasts, cases)
    rows, came = _of_hypotheses(forecasts, cases)
    return Scores(
        brier_score_of_categories(rows, came),
        log_score_of_categories(rows, came),
        brier_score(probabilities, found),
        log_score(probabilities, found),
    )


def _of_causes(forecasts: list[Forecast], cases: tuple[Case, ...]) -> tuple[Floats, Floats]:
    """One forecast for every case and cause, and whether that cause was found."""
    pairs = [
        (probability, cause_id in case.found)
        for forecast, case in zip(forecasts, cases, strict=True)
        for cause_id, probability in forecast.of_causes.items()
    ]
    array = np.array(pairs, dtype=float)
    return array[:, 0], array[:, 1]


def _of_hypotheses(forecasts: list[Forecast], cases: tuple[Case, ...]) -> tuple[Floats, Numbers]:
    """(N, K) probabilities of the exclusive hypotheses, and the number of the one that came."""
    names = list(dict.fromkeys(name for forecast in forecasts for name in forecast.of_hypotheses))
    number = {name: index for index, name in enumerate(names)}
    rows = np.array([[forecast.of_hypotheses.get(name, 0.0) for name in names] for forecast in forecasts])
    return rows, np.array([number[_as_forecast(case)] for case in cases])
