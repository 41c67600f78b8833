"""What would change a verdict: single answers, given or taken back.

Belief proposes them, since it is quick, the likeliest answers first; each is then assessed as if it had been given.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from assistant.belief.decision import Action as Ending
from assistant.belief.decision import expected_costs, least_action
from assistant.belief.posterior import posterior
from assistant.belief.value import MASS_DROPPED_FOR_DANGER, look_ahead
from assistant.interview.actions import actions_in_reach, allowed_actions
from assistant.interview.assess import Assessment, assess
from assistant.interview.choice import Action, choose
from assistant.interview.script import Script
from assistant.interview.supposed import answered_otherwise
from assistant.interview.way import WayFinder, may_ask

MOST_CHANGES = 4
MOST_TRIED = 12
LEAST_LIKELY = 0.02


@dataclass(frozen=True)
class Change:
    """What would change the verdict: an answer given otherwise (or given at all), or taken back."""

    question_id: str
    value: str | None
    action: Action


def changes_of(script: Script, assessment: Assessment, action: Action) -> tuple[Change, ...]:
    """Up to MOST_CHANGES answers that lead to another action; not those that would first be asked about as danger."""
    found = []
    for tried, (question_id, code) in enumerate(_proposals(script, assessment)):
        supposed = assess(script, answered_otherwise(script, assessment.state, question_id, code))
        then = choose(script, supposed).action
        if then != action and not supposed.danger.open_questions:
            found.append(Change(question_id, code, then))
        if len(found) == MOST_CHANGES or tried == MOST_TRIED:
            break
    return tuple(found)


def _proposals(script: Script, assessment: Assessment) -> Iterator[tuple[str, str | None]]:
    """Answers not given yet that would change the least costly ending, then answers that carry it."""
    decision = script.decision(assessment.state.region)
    allowed = actions_in_reach(script, assessment, WayFinder(script, assessment))
    now = least_action(decision, assessment.posterior.marginals, allowed_actions(script, assessment))
    yield from _not_given(script, assessment, now, allowed)
    for report in assessment.evidence:
        if "__" in report:
            continue
        others = {other: code for other, code in assessment.evidence.items() if other != report}
        belief = posterior(script.evidence_model, others, assessment.not_fitted)
        if least_action(decision, belief.marginals, allowed).ending != now.ending:
            yield report, None


def _not_given(
    script: Script, assessment: Assessment, now: Ending, allowed: tuple[int, ...]
) -> Iterator[tuple[str, str]]:
    decision = script.decision(assessment.state.region)
    open_ones = [
        question_id
        for question_id, question in script.knowledge.questions.items()
        if question.observable and question_id not in assessment.evidence and may_ask(script, assessment, question_id)
    ]
    if not open_ones:
        return
    model = script.evidence_model
    outlook = look_ahead(model, assessment.evidence, assessment.posterior, open_ones, MASS_DROPPED_FOR_DANGER)
    told = outlook.given @ outlook.probabilities
    marginals = outlook.given @ (outlook.members * outlook.probabilities[:, None])
    costs = (expected_costs(decision, marginals, told) / told[:, None]).round(2)[:, list(allowed)]
    endings = np.array([decision.actions[allowed[number]].ending for number in costs.argmin(axis=1)])
    rows = [(q, code, row) for q in open_ones for code, row in zip(model.codes[q], _rows(outlook.rows[q]), strict=True)]
    changing = [(q, code, row) for q, code, row in rows if endings[row] != now.ending and told[row] >= LEAST_LIKELY]
    for question_id, code, _ in sorted(changing, key=lambda each: -round(float(told[each[2]]), 9)):
        yield question_id, code


def _rows(rows: slice) -> range:
    return range(rows.start, rows.stop)
