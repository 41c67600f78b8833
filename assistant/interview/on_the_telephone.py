"""What a call needs besides the interview: who is hurt and who speaks at its beginning, what was agreed at its end."""

from collections.abc import Iterator

from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.way import may_ask
from assistant.knowledge.danger_questions import DANGER_NOW
from assistant.knowledge.model import Stage

CALL_ENDED = "call_ended"
OFF_AT_THE_END = "off_at_the_end"
"""Isn't asked while danger stands: whether the oven is off is settled by then, and it isn't used."""


def opening_question(script: Script, assessment: Assessment) -> str | None:
    """What comes before the interview's own next question.

    Before danger is asked about, whether anybody is hurt; who told of danger already isn't greeted first. Once no
    question about danger is open and what stands was isolated, who speaks.
    """
    state, danger = assessment.state, assessment.danger
    if state.finished:
        return None
    if state.status(DANGER_NOW) == "not_asked" and not state.heard:
        return next(_open(script, assessment, "greeting"), None)
    waits = danger.urgent_question is not None or danger.open_questions or (danger.stops and not danger.off_confirmed)
    return None if waits else next(_open(script, assessment, "call"), None)


def closing_question(script: Script, assessment: Assessment) -> str | None:
    """What is told or asked at the end of a call. Texts are noted whenever there is something to note."""
    danger = assessment.danger
    unsettled = danger.stops and danger.ask_whether_off and not danger.off_confirmed
    if danger.urgent_question is not None or danger.open_questions or unsettled:
        return None
    questions = script.knowledge.questions
    due = (each for each in _open(script, assessment, "closing") if questions[each].kind != "text")
    if everybody_goes_out(script, assessment):
        due = (each for each in due if each == CALL_ENDED)
    return next((each for each in due if not (danger.stops and each == OFF_AT_THE_END)), None)


def everybody_goes_out(script: Script, assessment: Assessment) -> bool:
    """Whether a danger stands from which people get out and leave the oven as it is, such as fire or gas."""
    signs = script.knowledge.signs
    return any(not signs[stop.sign_id].confirm_off for stop in assessment.danger.stops if stop.sign_id in signs)


def _open(script: Script, assessment: Assessment, stage: Stage) -> Iterator[str]:
    """Questions of the stage that weren't put yet, in the order of the rules."""
    questions = script.knowledge.questions
    of_stage = sorted((question.order, id_) for id_, question in questions.items() if question.stage == stage)
    for _, question_id in of_stage:
        if assessment.state.status(question_id) == "not_asked" and may_ask(script, assessment, question_id):
            yield question_id
