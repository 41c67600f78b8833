"""Which question comes next: danger, then the complaint, then a simple order."""

from collections.abc import Iterator

from assistant.belief.posterior import tells_apart
from assistant.interview.assess import Assessment, applies
from assistant.interview.script import Script
from assistant.knowledge.danger_questions import OVEN_IS_OFF, is_danger_question
from assistant.knowledge.model import Care, Question

STAGE_ORDER = ("complaint", "oven", "owner", "care", "signs", "visit")
STAGES_AFTER_A_STOP = ("complaint", "oven", "owner", "visit")
MOST_SKIPS = 1


def choose_next(script: Script, assessment: Assessment) -> str | None:
    """The id of the next question, or None when it is time for the verdict."""
    danger = assessment.danger
    if danger.urgent_question is not None:
        return danger.urgent_question
    if danger.stops and not (danger.off_confirmed and danger.ask_whether_off):
        return None
    if danger.open_questions:
        return danger.open_questions[0]
    if any(effect.hands_on_to for effect in assessment.effects.values()) or assessment.state.finished:
        return None
    return next(_candidates(script, assessment), None)


def _candidates(script: Script, assessment: Assessment) -> Iterator[str]:
    questions = script.knowledge.questions
    wanted = [e.asks for e in assessment.effects.values() if e.asks]
    yield from (q for q in wanted if _may_ask(script, assessment, q))
    order = sorted(questions, key=lambda q: (_stage_rank(questions[q]), questions[q].order))
    for skipped_too in (False, True):
        for question_id in order:
            if _may_ask(script, assessment, question_id, skipped_too) and _worth_asking(
                script, assessment, question_id
            ):
                yield question_id


def _stage_rank(question: Question) -> int:
    return STAGE_ORDER.index(question.stage) if question.stage in STAGE_ORDER else len(STAGE_ORDER)


def _may_ask(script: Script, assessment: Assessment, question_id: str, skipped_too: bool = False) -> bool:
    """Open, about something this oven has, within the allowed care, and let through by the findings."""
    question = script.knowledge.questions[question_id]
    status = assessment.state.status(question_id)
    came_back = skipped_too and _comes_back(question, question_id, assessment)
    return (
        (status == "not_asked" or came_back)
        and question_id != OVEN_IS_OFF
        and not is_danger_question(question_id)
        and applies(question, assessment.not_fitted)
        and within_care(assessment, question.care)
        and gates_open(assessment, question)
        and (not assessment.danger.stops or question.stage in STAGES_AFTER_A_STOP)
    )


def _comes_back(question: Question, question_id: str, assessment: Assessment) -> bool:
    """A skipped question that tells something of the oven is asked once more, at the end."""
    skipped = assessment.state.status(question_id) == "skipped"
    return skipped and question.observable is not None and assessment.state.times_skipped(question_id) <= MOST_SKIPS


def within_care(assessment: Assessment, care: Care) -> bool:
    return care.rank <= assessment.allowed_care.rank


def gates_open(assessment: Assessment, question: Question) -> bool:
    """Whether the findings let the question through."""
    concluded = assessment.trace.concluded
    return concluded.isdisjoint(question.not_when) and (
        not question.ask_when or not concluded.isdisjoint(question.ask_when)
    )


def _worth_asking(script: Script, assessment: Assessment, question_id: str) -> bool:
    """Signs are asked for while a cause isn't settled and the answer could move what is still likely."""
    question = script.knowledge.questions[question_id]
    if question.stage != "signs" or question.observable is None:
        return True
    settings = script.knowledge.settings
    top = assessment.posterior.ranked()[0][1]
    asked = sum(_is_sign(script, other) for other in assessment.state.answers)
    if top >= settings.settled_at.share or asked >= settings.most_questions.value:
        return False
    rivals_above = settings.worth_asking_above.share
    apart = tells_apart(script.evidence_model, question_id, assessment.posterior, rivals_above)
    return apart >= settings.tells_apart_at_least.share


def _is_sign(script: Script, question_id: str) -> bool:
    question = script.knowledge.questions.get(question_id)
    return question is not None and question.stage == "signs"
