"""Assessment -> the causes that the answers have ruled out, each with the answer it mostly rests on."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import NOT_CHOSEN, SOMETHING_ELSE
from assistant.belief.posterior import posterior
from assistant.interview.assess import Assessment
from assistant.interview.reasons import COMPLAINT
from assistant.interview.script import Script, question_of_key

POSSIBLE = 0.02
"""A cause from here on, by the complaint alone, is worth saying that it is ruled out."""
RULED_OUT = 0.005
MATTERS = 2.0
"""An answer is named only if the cause would be this many times as probable without it, and not ruled out."""
SPEAKS_AGAINST = 3.0
"""And only if, beside the complaint alone, it makes the cause's odds this many times smaller."""


@dataclass(frozen=True)
class RuledOut:
    """`causes`, the most probable by the complaint first, ruled out mostly by one answer, which also alone speaks
    against them; by several together: no answer.
    """

    question_id: str | None
    causes: tuple[str, ...]


def ruled_out(script: Script, assessment: Assessment) -> tuple[RuledOut, ...]:
    """Causes that were possible by the complaint, in the oven as it is, and aren't any more.

    Those that the oven can't have are left out: nothing that was answered speaks of them. The answer that rules out
    most causes comes first.
    """
    told = {report: code for report, code in assessment.evidence.items() if code != NOT_CHOSEN}
    complaint = _only(assessment.evidence, COMPLAINT)
    first = _marginals(script, assessment, complaint)
    now = assessment.posterior.marginals
    causes = script.evidence_model.causes
    gone = [
        number
        for number in np.argsort(-first.round(12), kind="stable").tolist()
        if first[number] >= POSSIBLE and now[number] < RULED_OUT and causes[number] != SOMETHING_ELSE
    ]
    if not gone:
        return ()
    questions = list(dict.fromkeys(map(question_of_key, told)))
    without = {q: _marginals(script, assessment, _without(assessment.evidence, q)) for q in questions}
    alone = {q: _marginals(script, assessment, complaint | _only(assessment.evidence, q)) for q in questions}
    by_answer: dict[str | None, list[str]] = {}
    for number in gone:
        needed = max(RULED_OUT, MATTERS * float(now[number]))
        naming = {
            q: float(without[q][number])
            for q in questions
            if without[q][number] >= needed and _odds(alone[q][number]) * SPEAKS_AGAINST <= _odds(first[number])
        }
        best = max(naming, key=lambda q: round(naming[q], 12), default=None)
        by_answer.setdefault(best, []).append(causes[number])
    ordered = sorted(by_answer.items(), key=lambda item: (item[0] is None, -len(item[1])))
    return tuple(RuledOut(question_id, tuple(names)) for question_id, names in ordered)


def _marginals(script: Script, assessment: Assessment, evidence: Mapping[str, str]) -> Floats:
    return posterior(script.evidence_model, evidence, assessment.not_fitted).marginals


def _odds(probability: float) -> float:
    return float(probability / (1 - probability))


def _without(evidence: Mapping[str, str], question_id: str) -> dict[str, str]:
    return {report: code for report, code in evidence.items() if question_of_key(report) != question_id}


def _only(evidence: Mapping[str, str], question_id: str) -> dict[str, str]:
    return {report: code for report, code in evidence.items() if question_of_key(report) == question_id}
