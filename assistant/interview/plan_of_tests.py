"""What whoever comes tests first: the engineer's own tests, by what each would tell in a minute."""

from assistant.belief.value import Candidate
from assistant.interview.assess import Assessment, applies
from assistant.interview.script import Script
from assistant.interview.worth import one_step_ahead

STAGE = "tests"
LEAST_BITS_PER_MINUTE = 0.001
"""A test that tells less isn't named."""


def plan_of_tests(script: Script, assessment: Assessment) -> tuple[str, ...]:
    """The ids of as many tests as are planned, those that tell most about what is wrong in a minute first."""
    questions = script.knowledge.questions
    open_ones = [
        Candidate(question_id, 0.0, question.minutes.value)
        for question_id, question in questions.items()
        if question.stage == STAGE
        and applies(question, assessment.not_fitted)
        and assessment.state.status(question_id) == "not_asked"
    ]
    worths = one_step_ahead(script, assessment, open_ones, tuple(script.decision(assessment.state.region).visits))
    told = sorted(worths, key=lambda worth: -round(worth.bits_per_minute, 9))
    telling = [worth.question_id for worth in told if worth.bits_per_minute >= LEAST_BITS_PER_MINUTE]
    return tuple(telling[: int(script.knowledge.settings.tests_planned.value)])
