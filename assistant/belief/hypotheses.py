"""The evidence model as arrays: hypotheses, P(state | hypothesis), P(report | state)."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.knowledge.likelihoods import Words, share_of, shares
from assistant.knowledge.model import Knowledge, Observable, Question

Floats = npt.NDArray[np.float64]

NOTHING_WRONG = "none"
SOMETHING_ELSE = "something_else"


@dataclass(frozen=True)
class EvidenceModel:
    """Everything belief needs, compiled once.

    `hypotheses`: nothing wrong, each cause alone, something else; H of them.
    `prior_odds`: (H,), odds against nothing wrong, before any complaint.
    `state_given`: observable -> (S, H), columns sum to 1.
    `report_given`: question -> (answers, S), columns sum to 1; rows in the order of the question's codes.
    """

    hypotheses: tuple[str, ...]
    prior_odds: Floats
    state_given: Mapping[str, Floats]
    report_given: Mapping[str, Floats]
    codes: Mapping[str, tuple[str, ...]]
    observable_of: Mapping[str, str]
    needs: Mapping[str, tuple[str, ...]]


def compile_evidence_model(knowledge: Knowledge) -> EvidenceModel:
    """Single causes as exclusive hypotheses; a missing entry of a cause means 'as normal'."""
    causes = knowledge.causes
    rates = np.array([cause.base_rate.share for cause in causes.values()])
    odds = rates / (1 - rates)
    else_rate = knowledge.settings.something_else.share
    words = knowledge.settings.words
    reporting = {q: question for q, question in knowledge.questions.items() if question.observable}
    return EvidenceModel(
        hypotheses=(NOTHING_WRONG, *causes, SOMETHING_ELSE),
        prior_odds=np.concatenate(([1.0], odds, [else_rate / (1 - else_rate)])),
        state_given={name: _state_given(name, knowledge, odds) for name in knowledge.observables},
        report_given={
            q: _report_given(question, knowledge.observables[str(question.observable)], words)
            for q, question in reporting.items()
        },
        codes={q: codes_of(question) for q, question in reporting.items()},
        observable_of={q: str(question.observable) for q, question in reporting.items()},
        needs={cause_id: cause.needs for cause_id, cause in causes.items()},
    )


def codes_of(question: Question) -> tuple[str, ...]:
    """The codes that an answer is reported by: choices, or the bands of a number."""
    return tuple(question.choices) or tuple(question.number.bands if question.number else ())


def _state_given(name: str, knowledge: Knowledge, odds: Floats) -> Floats:
    """(S, H). Something else predicts a mixture of what the causes predict, broadened towards anything."""
    observable = knowledge.observables[name]
    words = knowledge.settings.words
    normal = shares(observable.normal, observable.states, words)
    by_cause = np.array(
        [
            shares(cause.shows[name], observable.states, words) if name in cause.shows else normal
            for cause in knowledge.causes.values()
        ]
    ).T
    breadth = knowledge.settings.something_else_breadth.share
    mixture = (1 - breadth) * by_cause @ (odds / odds.sum()) + breadth / len(observable.states)
    return np.column_stack((normal, by_cause, mixture))


def _report_given(question: Question, observable: Observable, words: Words) -> Floats:
    """(answers, S), from the explicit table or from what each answer means and how often it's mistaken.

    An answer that means the state shares 1 - mistakes with others that mean it; the rest share the mistakes.
    """
    codes = codes_of(question)
    if question.table is not None:
        return np.array([shares(question.table[state], codes, words) for state in observable.states]).T
    assert question.mistakes is not None
    mistaken = share_of(question.mistakes, words)
    means = np.array([[state in _meaning(question, code) for state in observable.states] for code in codes])
    right = means.sum(axis=0)
    wrong = len(codes) - right
    share_right = np.where(wrong > 0, 1 - mistaken, 1.0) / right
    share_wrong = mistaken / np.maximum(wrong, 1)
    table: Floats = np.where(means, share_right, share_wrong)
    return table


def _meaning(question: Question, code: str) -> tuple[str, ...]:
    if question.number is not None:
        return question.number.bands[code].means
    return question.choices[code].means
