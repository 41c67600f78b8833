"""What a call needs besides the interview: who is hurt and who speaks at its beginning, what was agreed at its end."""

from collections.abc import Iterator

from assistant.interview.assess import Assessment
from assistant.interview.danger import Danger
from assistant.interview.script import Script
from assistant.interview.way import may_ask
from assistant.knowledge.danger_questions import DANGER_NOW, SIGN_PREFIX
from assistant.knowledge.model import CALL_STAGES, Knowledge, Stage

HOUSEHOLDER = "householder"
HURT = "anyone_hurt"
SPEAKER = "who_is_speaking"
NOTES = "call_notes"
READ_BACK = "read_back"
CALL_ENDED = "call_ended"
FEE_TOLD = "fee_told"
OFF_AT_THE_END = "off_at_the_end"
"""Isn't asked while danger stands: whether the oven is off is settled by then, and it isn't used."""


def opening_question(script: Script, assessment: Assessment, *, off_given_up: bool = False) -> str | None:
    """What comes before the interview's own next question.

    Before danger is asked about, whether anybody is hurt; where danger was told first of all, as soon as it is clear
    what it is. Once no question about danger is open and what stands was isolated, who speaks: also where nobody can
    say whether the oven is off (`off_given_up`), and where everybody goes out, so that they can be called back.
    """
    state, danger = assessment.state, assessment.danger
    asks_of_a_sign = not _is_live(danger) and any(map(_is_of_a_sign, danger.open_questions))
    if state.finished or danger.urgent_question is not None or asks_of_a_sign:
        return None
    if state.heard or danger.stops or state.status(DANGER_NOW) == "not_asked":
        greeting = next(_open(script, assessment, "greeting"), None)
        if greeting is not None:
            return greeting
    if _asks_of_danger(script, assessment, off_given_up):
        return None
    of_call = _open(script, assessment, "call")
    if _is_live(danger):
        of_call = (each for each in of_call if script.knowledge.questions[each].kind == "text")
    return next(of_call, None)


def _is_live(danger: Danger) -> bool:
    """Whether something stands and nobody said that the oven is off; then no further sign is asked about."""
    return bool(danger.stops) and not danger.off_confirmed


def _asks_of_danger(script: Script, assessment: Assessment, off_given_up: bool) -> bool:
    """Whether a question about danger comes first, or the one whether the oven is off.

    All that waits while everybody goes out, and where nobody can say that it is off.
    """
    danger = assessment.danger
    if danger.urgent_question is not None:
        return True
    if _is_live(danger):
        return not (off_given_up or everybody_goes_out(script, assessment))
    return bool(danger.open_questions)


def _is_of_a_sign(question_id: str) -> bool:
    return question_id.startswith(SIGN_PREFIX)


def closing_question(
    script: Script, assessment: Assessment, *, somebody_comes: bool = True, off_given_up: bool = False
) -> str | None:
    """What is told or asked at the end of a call. Texts are noted whenever there is something to note.

    The fee is told only where somebody comes, and not while the oven may be live.
    """
    danger = assessment.danger
    if _asks_of_danger(script, assessment, off_given_up):
        return None
    questions = script.knowledge.questions
    due = (each for each in _open(script, assessment, "closing") if questions[each].kind != "text")
    if everybody_goes_out(script, assessment):
        due = (each for each in due if each == CALL_ENDED)
    left_out = {OFF_AT_THE_END} if danger.stops else set()
    left_out |= {FEE_TOLD} if _is_live(danger) or not somebody_comes else set()
    return next((each for each in due if each not in left_out), None)


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


def role_to_go_on_in(knowledge: Knowledge, held_in: str, asked: str) -> str:
    """The role of who goes on with a session at a screen of their own: a customer doesn't go on in the agent's."""
    at_the_desk = held_in in knowledge.roles and knowledge.roles[held_in].on_the_telephone
    return asked if at_the_desk or asked != HOUSEHOLDER else held_in


def is_for_role(knowledge: Knowledge, role: str, question_id: str) -> bool:
    """Whether somebody in that role may see the question: not what belongs to a call, nor beyond their care."""
    question = knowledge.questions[question_id]
    told = knowledge.roles.get(role)
    if question.stage in CALL_STAGES and not (told is not None and told.on_the_telephone):
        return False
    return told is None or question.care.rank <= told.asked_up_to.rank
