"""What would follow from an answer that nobody has given yet."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

from assistant.belief.posterior import posterior
from assistant.interview.answers import value_of
from assistant.interview.assess import Assessment
from assistant.interview.next_question import best_question
from assistant.interview.script import Script
from assistant.interview.state import Answer, State


def answered_otherwise(script: Script, state: State, question_id: str, code: str | None) -> State:
    """The state as if that question had been answered so, or never."""
    answers = {q: answer for q, answer in state.answers.items() if q != question_id}
    if code is not None:
        value = value_of(script.knowledge.questions[question_id], code)
        answers[question_id] = Answer(question_id, "answered", value, state.sequence, datetime.min)
    return replace(state, answers=answers)


def weigh_ahead(script: Script, assessment: Assessment, question_id: str) -> Iterator[None]:
    """Weigh what could be asked after each answer to an open question, so that the next turn only looks it up.

    Findings stay as they are, for the rule engine is left alone: where an answer changes them so that other
    questions open, the next turn weighs anew. Pauses after each answer.
    """
    for code in script.evidence_model.codes.get(question_id, ()):
        evidence = {**assessment.evidence, question_id: code}
        belief = posterior(script.evidence_model, evidence, assessment.not_fitted)
        supposed = replace(
            assessment,
            state=answered_otherwise(script, assessment.state, question_id, code),
            evidence=evidence,
            posterior=belief,
            dangerous=belief.of_any(script.dangerous),
        )
        best_question(script, supposed)
        yield
