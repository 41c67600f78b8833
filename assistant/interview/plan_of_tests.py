"""What whoever comes tests: chosen by what each test tells in a minute, made in the order of the rules."""

from collections.abc import Iterator

from assistant.belief.value import Candidate
from assistant.interview.assess import Assessment, applies
from assistant.interview.script import Script
from assistant.interview.worth import telling_together

STAGE = "tests"
LEAST_BITS = 0.08
"""A test that tells less, after those before it, isn't named."""


def plan_of_tests(script: Script, assessment: Assessment) -> tuple[str, ...]:
    """The ids of as many tests as are planned: those that findings put first, then those that tell most in a minute.

    They are named as they are made: what is done dead, with the least taken apart, before what needs the oven live.
    While danger stands nothing is planned that does.
    """
    questions = script.knowledge.questions
    stopped = bool(assessment.danger.stops)
    open_ones = {
        question_id: Candidate(question_id, 0.0, question.minutes.value)
        for question_id, question in questions.items()
        if question.stage == STAGE
        and applies(question, assessment.not_fitted)
        and assessment.trace.concluded.isdisjoint(question.not_when)
        and assessment.state.status(question_id) == "not_asked"
        and (question.made == "dead" or not stopped)
    }
    asked_for = dict.fromkeys(q for q in _put_first(script, assessment) if q in open_ones)
    left = [each for question_id, each in open_ones.items() if question_id not in asked_for]
    most = max(0, int(script.knowledge.settings.tests_planned.value) - len(asked_for))
    planned = [*asked_for, *telling_together(script, assessment, left, most, LEAST_BITS)]
    return tuple(sorted(planned, key=lambda question_id: questions[question_id].order))


def _put_first(script: Script, assessment: Assessment) -> Iterator[str]:
    """By findings, and by danger signs that stand or were taken back."""
    for effect in assessment.effects.values():
        yield from effect.tests_first
    danger = assessment.danger
    for sign_id in (*(stop.sign_id for stop in danger.stops), *danger.withdrawn):
        if sign_id in script.knowledge.signs:
            yield from script.knowledge.signs[sign_id].tests_first
