"""How well two causes can be told apart by what a person may be asked: from the tables alone, nothing is simulated.

The measure is the expected weight of evidence (I. J. Good, Probability and the Weighing of Evidence, 1950): where the
first cause is there and the person answers every question that the role may be asked, by how many decibans the answers
speak for it against the second, on average. Reports of one observable hang together through its state; observables
are independent given the cause; so the weights of the observables add up. It goes in two directions, and the smaller
one counts. Which questions an interview would ask is left out of account: it is what could be told, at the best.

An answer among several counts where it is named, and for nothing where it isn't unless all are gone through, and a
danger sign once for each observable, as belief weighs them.
"""

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import CHOSEN, NOT_CHOSEN, NOTHING_WRONG, EvidenceModel
from assistant.belief.posterior import DECIBANS_PER_NAT
from assistant.interview.script import question_of_key
from assistant.interview.verdict import NONE
from assistant.knowledge.model import Care, Knowledge

HARD_TO_TELL = 10.0
"""Decibans. Below it the answers make the right one less than ten times as likely as the other, on average."""

MOST_COMBINATIONS = 20_000
"""Of answers about one observable; reports that would go beyond it, the least telling ones, are left out."""


@dataclass(frozen=True)
class Pair:
    """Two causes, NONE among them, and the decibans of the first against the second, and the other way round.

    `told_by`: the observable that tells them best. `same_ending`: who comes for what, or what is to be done, is the
    same for both, so that mistaking them costs little.
    """

    causes: tuple[str, str]
    decibans: tuple[float, float]
    told_by: str
    same_ending: bool

    @property
    def least(self) -> float:
        return min(self.decibans)


def pairs_of_causes(knowledge: Knowledge, model: EvidenceModel, limit: Care) -> tuple[Pair, ...]:
    """Every pair, the hardest to tell apart first. `limit`: how far the role's questions may go."""
    names = (NONE, *knowledge.causes)
    gone_through = _gone_through(knowledge, model)
    reports = dict(_reports(knowledge, model, limit))
    by_observable = {name: expected_weights(model, name, those, gone_through) for name, those in reports.items()}
    total = sum(by_observable.values(), np.zeros((len(names), len(names))))
    found = []
    for first, one in enumerate(names):
        for second in range(first + 1, len(names)):
            best = max(by_observable, key=lambda o: _least(by_observable[o], first, second), default="")
            found.append(
                Pair(
                    (one, names[second]),
                    (float(total[first, second]), float(total[second, first])),
                    best,
                    _same_ending(knowledge, one, names[second]),
                )
            )
    return tuple(sorted(found, key=lambda pair: round(pair.least, 6)))


def _least(weights: Floats, first: int, second: int) -> float:
    return float(min(weights[first, second], weights[second, first]))


def _reports(knowledge: Knowledge, model: EvidenceModel, limit: Care) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Observable -> the reports of it that the role may be asked for."""
    allowed: dict[str, list[str]] = {}
    told: set[tuple[str, str]] = set()
    for report, name in model.observable_of.items():
        if knowledge.questions[question_of_key(report)].care.rank > limit.rank:
            continue
        sign = _sign_of(knowledge, report)
        if sign is not None and (sign, name) in told:
            continue
        told.add((sign or "", name))
        allowed.setdefault(name, []).append(report)
    yield from ((name, tuple(reports)) for name, reports in allowed.items())


def _sign_of(knowledge: Knowledge, report: str) -> str | None:
    """The danger sign that is told by the report, if it is one answer among several."""
    question_id, *item = report.split("__")
    return knowledge.questions[question_id].choices[item[0]].signals if item else None


def _gone_through(knowledge: Knowledge, model: EvidenceModel) -> frozenset[str]:
    """Reports of answers that count too where they aren't named."""
    reports = model.observable_of
    return frozenset(r for r in reports if "__" in r and knowledge.questions[question_of_key(r)].all_gone_through)


def expected_weights(
    model: EvidenceModel, observable: str, reports: Sequence[str], gone_through: Set[str] = frozenset()
) -> Floats:
    """(C + 1, C + 1) of decibans: nothing wrong and each cause alone, the row's against the column's.

    `gone_through`: reports that count too where they aren't named.
    """
    told, weighed = _combinations(model, reports, gone_through)
    columns = [model.place_of[NOTHING_WRONG], *(model.place_of[cause,] for cause in model.causes[:-1])]
    states = model.state_given[observable][:, columns]
    probability, log_weight = told @ states, np.log(weighed @ states)
    own = (probability * log_weight).sum(axis=0)
    found: Floats = (own[:, None] - probability.T @ log_weight) * DECIBANS_PER_NAT
    return found


def _combinations(model: EvidenceModel, reports: Sequence[str], gone_through: Set[str]) -> tuple[Floats, Floats]:
    """(R, S) twice, for all that may be answered together: P(answers | state), and what belief makes of them."""
    states = model.report_given[reports[0]].shape[1]
    told = weighed = np.ones((1, states))
    for report in sorted(reports, key=lambda r: -float(np.ptp(model.report_given[r], axis=1).sum())):
        table = model.report_given[report]
        if len(told) * len(table) > MOST_COMBINATIONS:
            break
        counted = table
        if model.codes[report] == (CHOSEN, NOT_CHOSEN) and report not in gone_through:
            counted = np.vstack((table[0], np.ones(states)))
        told = (told[:, None, :] * table[None]).reshape(-1, states)
        weighed = (weighed[:, None, :] * counted[None]).reshape(-1, states)
    return told, weighed


def _same_ending(knowledge: Knowledge, first: str, second: str) -> bool:
    if NONE in (first, second):
        return False
    one, other = knowledge.causes[first], knowledge.causes[second]
    return (one.mended_by, one.part, one.act, one.advice) == (other.mended_by, other.part, other.act, other.advice)
