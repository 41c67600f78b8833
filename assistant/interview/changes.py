"""What would change a verdict: single answers, given or taken back.

Belief proposes them, since it is quick, and so do the findings that bear on the ending; each is then assessed as if it
had been given.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.belief.decision import expected_costs, least_action
from assistant.belief.posterior import posterior
from assistant.belief.value import MASS_DROPPED_FOR_DANGER, look_ahead
from assistant.interview.actions import actions_in_reach, actions_left, allowed_actions
from assistant.interview.answers import value_of
from assistant.interview.assess import Assessment, assess
from assistant.interview.choice import Action, choose
from assistant.interview.script import Script, test_of
from assistant.interview.supposed import answered_otherwise
from assistant.interview.way import WayFinder, may_ask
from assistant.knowledge.model import Condition, Effects

MOST_CHANGES = 4
MOST_TRIED = 20
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
    """Answers by which belief would end otherwise, those that carry its ending, and those that deciding findings read.

    Of answers not given yet the likeliest come first.
    """
    decision = script.decision(assessment.state.region)
    now = least_action(decision, assessment.posterior.marginals, allowed_actions(script, assessment))
    likely = _likely_answers(script, assessment)
    by_belief = [(question_id, code) for question_id, code, ending in likely if ending != now.ending]
    yield from by_belief
    in_reach = actions_in_reach(script, assessment, WayFinder(script, assessment))
    for report in assessment.evidence:
        if "__" in report:
            continue
        others = {other: code for other, code in assessment.evidence.items() if other != report}
        belief = posterior(script.evidence_model, others, assessment.not_fitted)
        if least_action(decision, belief.marginals, in_reach).ending != now.ending:
            yield report, None
    read = _read_by_deciding_findings(script) - set(by_belief)
    yield from ((question_id, code) for question_id, code, _ in likely if (question_id, code) in read)


def _likely_answers(script: Script, assessment: Assessment) -> list[tuple[str, str, str]]:
    """Question, code and the ending that belief would have then, of all that findings leave now."""
    decision = script.decision(assessment.state.region)
    left = actions_left(script, assessment)
    open_ones = [
        question_id
        for question_id, question in script.knowledge.questions.items()
        if question.observable and question_id not in assessment.evidence and may_ask(script, assessment, question_id)
    ]
    if not open_ones:
        return []
    model = script.evidence_model
    outlook = look_ahead(model, assessment.evidence, assessment.posterior, open_ones, MASS_DROPPED_FOR_DANGER)
    told = outlook.given @ outlook.probabilities
    marginals = outlook.given @ (outlook.members * outlook.probabilities[:, None])
    costs = (expected_costs(decision, marginals, told) / told[:, None]).round(2)[:, list(left)]
    endings = [decision.actions[left[number]].ending for number in costs.argmin(axis=1)]
    rows = [(q, code, row) for q in open_ones for code, row in zip(model.codes[q], _rows(outlook.rows[q]), strict=True)]
    likely = [(q, code, row) for q, code, row in rows if told[row] >= LEAST_LIKELY]
    return [(q, code, endings[row]) for q, code, row in sorted(likely, key=lambda each: -_rounded(told[each[2]]))]


def _rounded(probability: float) -> float:
    return round(float(probability), 9)


def _read_by_deciding_findings(script: Script) -> frozenset[tuple[str, str]]:
    """Answers by which a finding that bears on the ending may come to hold, through others too, or to hold no more;
    and those that speak of danger.
    """
    knowledge = script.knowledge
    questions = knowledge.questions.items()
    found = {(q, code) for q, question in questions for code, choice in question.choices.items() if choice.signals}
    open_ones = [f for f, finding in knowledge.findings.items() if _decides(finding.then)]
    open_ones += [finding_id for act in knowledge.acts.values() for finding_id in act.only_when]
    seen: set[str] = set()
    while open_ones:
        finding_id = open_ones.pop()
        if finding_id in seen:
            continue
        seen.add(finding_id)
        finding = knowledge.findings[finding_id]
        open_ones.extend(finding.unless)
        for condition in (condition for group in finding.groups for condition in group):
            if condition.finding is not None:
                open_ones.append(condition.finding)
            else:
                found.update(_codes_that_meet(script, condition))
    return frozenset(found)


def _decides(effects: Effects) -> bool:
    return bool(effects.visit_anyway or effects.hands_on_to or effects.stops)


def _codes_that_meet(script: Script, condition: Condition) -> Iterator[tuple[str, str]]:
    question_id = str(condition.question)
    test = test_of(condition)
    for code in script.evidence_model.codes.get(question_id, ()):
        if test.holds(value_of(script.knowledge.questions[question_id], code)):
            yield question_id, code


def _rows(rows: slice) -> range:
    return range(rows.start, rows.stop)
