"""Assessment -> the causes that the answers have ruled out, each with the answer it mostly rests on."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from assistant.belief.hypotheses import NOT_CHOSEN, SOMETHING_ELSE
from assistant.belief.posterior import posterior
from assistant.interview.assess import Assessment
from assistant.interview.script import Script, question_of_key

COMPLAINT = "what_goes_wrong"
POSSIBLE = 0.02
"""A cause from here on, by the complaint alone, is worth saying that it is ruled out."""
RULED_OUT = 0.005
MATTERS = 2.0
"""An answer without which a cause would be this many times as probable is what ruled it out."""


@dataclass(frozen=True)
class RuledOut:
    """`causes`, the most probable by the complaint first, ruled out mostly by one answer; by several: no answer."""

    question_id: str | None
    causes: tuple[str, ...]


def ruled_out(script: Script, assessment: Assessment) -> tuple[RuledOut, ...]:
    """Causes that were possible by the complaint, in the oven as it is, and aren't any more.

    Those that the oven can't have are left out: nothing that was answered speaks of them. The answer that rules out
    most causes comes first.
    """
    told = {report: code for report, code in assessment.evidence.items() if code != NOT_CHOSEN}
    complaint = {r: c for r, c in assessment.evidence.items() if question_of_key(r) == COMPLAINT}
    first = posterior(script.evidence_model, complaint, assessment.not_fitted).marginals
    now = assessment.posterior.marginals
    causes = script.evidence_model.causes
    gone = [
        number
        for number in np.argsort(-first.round(12), kind="stable").tolist()
        if first[number] >= POSSIBLE and now[number] < RULED_OUT and causes[number] != SOMETHING_ELSE
    ]
    if not gone:
        return ()
    without = {
        question_id: posterior(script.evidence_model, _without(assessment.evidence, question_id), assessment.not_fitted)
        for question_id in dict.fromkeys(map(question_of_key, told))
    }
    by_answer: dict[str | None, list[str]] = {}
    for number in gone:
        risen = {q: float(belief.marginals[number]) for q, belief in without.items()}
        best = max(risen, key=lambda q: round(risen[q], 12), default=None)
        if best is not None and risen[best] < MATTERS * now[number]:
            best = None
        by_answer.setdefault(best, []).append(causes[number])
    ordered = sorted(by_answer.items(), key=lambda item: (item[0] is None, -len(item[1])))
    return tuple(RuledOut(question_id, tuple(names)) for question_id, names in ordered)


def _without(evidence: Mapping[str, str], question_id: str) -> dict[str, str]:
    return {report: code for report, code in evidence.items() if question_of_key(report) != question_id}
