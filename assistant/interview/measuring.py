"""When a measurement may be begun and go on, and how it ends by itself: nothing hot outlasts danger or its gate."""

from typing import Any

from assistant.errors import Refused
from assistant.interview.answers import happening_of
from assistant.interview.assess import Assessment
from assistant.interview.events import DangerHeard, Happening, LineNoted, MeasuringLeft
from assistant.interview.script import Script
from assistant.interview.state import State
from assistant.interview.thermometer import low_k
from assistant.interview.way import may_ask
from assistant.knowledge.model import Knowledge
from assistant.knowledge.readings import FEWEST_READINGS, check_so_far, in_order, in_scale, reading_c
from assistant.knowledge.scale import runs_away, with_known_scale

TOO_HOT = "too_hot"
"""The danger sign of an oven that runs away."""


def may_measure(script: Script, assessment: Assessment, question_id: str) -> bool:
    """Whether the oven may be hot for this question now."""
    return not assessment.danger.open and may_ask(script, assessment, question_id)


def left_as_unfit(script: Script, assessment: Assessment) -> tuple[Happening, ...]:
    """The measurements under way that may not go on."""
    return tuple(
        MeasuringLeft(question_id=question_id)
        for question_id in assessment.state.measuring
        if not is_measured(script.knowledge, question_id) or not may_measure(script, assessment, question_id)
    )


def is_measured(knowledge: Knowledge, question_id: str) -> bool:
    """Whether it is a question that is measured by the clock; the rules may have changed since it was begun."""
    question = knowledge.questions.get(question_id)
    return question is not None and question.run is not None and question.is_measurement


def noted(knowledge: Knowledge, question_id: str, state: State, line: str) -> tuple[Happening, ...]:
    """A line is noted. One reading far above the setting ends the measurement: by what was read, or, where that is too
    little for an answer or can't be beside the rest, as a danger sign that is heard.

    Raises Refused for any other line that can't be.
    """
    question = knowledge.questions[question_id]
    too_low_k = low_k(knowledge, question_id, state.answers)
    lines = with_known_scale(question, in_order((*state.measuring[question_id].lines, line)), too_low_k)
    hot = question.kind == "temperature_log" and runs_away(question, lines, too_low_k)
    happening = LineNoted(question_id=question_id, line=line)
    try:
        check_so_far(question.kind, lines)
    except Refused:
        if hot:
            return _run_away(knowledge, question_id)
        raise
    if not hot:
        return (happening,)
    lines = in_scale(lines, "C")
    if sum(reading_c(each) is not None for each in lines) >= FEWEST_READINGS:
        return (happening, happening_of(question_id, question, list(lines), None))
    return (happening, *_run_away(knowledge, question_id))


def _run_away(knowledge: Knowledge, question_id: str) -> tuple[Happening, ...]:
    return (MeasuringLeft(question_id=question_id), *_heard_too_hot(knowledge))


def heard_in_refused(knowledge: Knowledge, state: State, question_id: str, value: Any) -> tuple[Happening, ...]:
    """What an answer that can't be taken says of danger: a reading far above the setting, whatever is wrong with the
    lines beside it. Empty where there is none.
    """
    question = knowledge.questions[question_id]
    if question.kind != "temperature_log" or not isinstance(value, list | tuple):
        return ()
    lines = [" ".join(line.split()) for line in value if isinstance(line, str)]
    hot = runs_away(question, lines, low_k(knowledge, question_id, state.answers))
    return _heard_too_hot(knowledge) if hot else ()


def _heard_too_hot(knowledge: Knowledge) -> tuple[Happening, ...]:
    return (DangerHeard(sign_id=TOO_HOT, clear=True),) if TOO_HOT in knowledge.signs else ()
