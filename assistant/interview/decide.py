"""Command + state -> the happenings that follow, or a refusal. Pure: nothing is stored here."""

from assistant.errors import Refused
from assistant.interview.answers import happening_of
from assistant.interview.assess import Assessment
from assistant.interview.commands import (
    BeginMeasuring,
    Command,
    Finish,
    GiveAnswer,
    HearDanger,
    LeaveMeasuring,
    Measuring,
    NoteLine,
    SayNotSure,
    SkipQuestion,
    Start,
    TakeBackLine,
    WithdrawAnswer,
)
from assistant.interview.danger import danger_of
from assistant.interview.events import (
    AnswerWithdrawn,
    DangerHeard,
    Happening,
    InterviewFinished,
    LineTakenBack,
    MeasuringBegun,
    MeasuringLeft,
    NotSureAnswered,
    QuestionAnswered,
    QuestionSkipped,
    SessionStarted,
    StopLifted,
    StopReached,
)
from assistant.interview.measuring import heard_in_refused, left_as_unfit, noted
from assistant.interview.script import Script
from assistant.interview.state import State
from assistant.knowledge.danger_questions import OVEN_IS_OFF, is_danger_question, sign_question_id
from assistant.knowledge.model import CALL_STAGES, Knowledge, Question
from assistant.knowledge.problems import nearest_name


def decide(knowledge: Knowledge, state: State, command: Command) -> tuple[Happening, ...]:
    """Raises Refused where the command can't be taken; the state is never touched."""
    if isinstance(command, Start):
        return _start(knowledge, state, command)
    if not state.started:
        raise Refused("not_started")
    if isinstance(command, Measuring):
        return _measure(knowledge, state, command)
    match command:
        case GiveAnswer():
            return _answer(knowledge, state, command)
        case SayNotSure(question_id=question_id):
            _known_to_role(knowledge, state.role, question_id)
            return (NotSureAnswered(question_id=question_id),)
        case SkipQuestion(question_id=question_id):
            return _skip(knowledge, state, question_id)
        case WithdrawAnswer(question_id=question_id):
            return _withdraw(knowledge, state, question_id)
        case HearDanger():
            return _hear(knowledge, state, command)
        case Finish():
            return () if state.finished else (InterviewFinished(),)


def consequences_of(script: Script, assessment: Assessment) -> tuple[Happening, ...]:
    """The stops that this state reached or left, so that the log remembers them whatever is answered later; where there
    are none, the measurements that may not go on. What follows from these in turn comes from the state after them.
    """
    recorded = assessment.state.standing_signs
    standing = {stop.sign_id: None for stop in assessment.danger.stops}
    lifted = sorted(sign_id for sign_id in recorded - standing.keys() if sign_id in script.knowledge.signs)
    stops = (
        *(StopReached(sign_id=sign_id) for sign_id in standing if sign_id not in recorded),
        *(StopLifted(sign_id=sign_id) for sign_id in lifted),
    )
    return stops or left_as_unfit(script, assessment)


def _known(knowledge: Knowledge, question_id: str) -> Question:
    question = knowledge.questions.get(question_id)
    if question is None:
        near = nearest_name(question_id[:60], knowledge.questions) or ""
        raise Refused("unknown_question", {"found": question_id[:60], "nearest": near})
    return question


def _known_to_role(knowledge: Knowledge, role: str, question_id: str) -> Question:
    """The question, if it asks no more than the role may be asked; what belongs to a call is for who is on the phone.

    A role that the rules no longer know may be asked what every role may.
    """
    question = _known(knowledge, question_id)
    roles = knowledge.roles
    if question.stage in CALL_STAGES and not (role in roles and roles[role].on_the_telephone):
        raise Refused("not_for_role", {"question": question_id, "role": role})
    asked_up_to = [roles[role]] if role in roles else roles.values()
    if any(question.care.rank > each.asked_up_to.rank for each in asked_up_to):
        raise Refused("not_for_role", {"question": question_id, "role": role})
    return question


def _start(knowledge: Knowledge, state: State, command: Start) -> tuple[Happening, ...]:
    if state.started:
        return ()
    for name, known, code in (
        (command.role, knowledge.roles, "unknown_role"),
        (command.region, knowledge.regions, "unknown_region"),
    ):
        if name not in known:
            near = nearest_name(name[:60], known) or ""
            raise Refused(code, {"found": name[:60], "valid": ", ".join(known), "nearest": near})
    return (SessionStarted(region=command.region, lang=command.lang, cavity=command.cavity),)


def _answer(knowledge: Knowledge, state: State, command: GiveAnswer) -> tuple[Happening, ...]:
    """One that speaks of danger is taken whoever gives it, and heard where it can't be taken."""
    question = _known(knowledge, command.question_id)
    try:
        happening = happening_of(command.question_id, question, command.value, command.unit)
    except Refused:
        heard = heard_in_refused(knowledge, state, command.question_id, command.value)
        if not heard:
            _known_to_role(knowledge, state.role, command.question_id)  # whom it isn't for is told that first
            raise
        return heard
    if not _speaks_of_danger(question, happening):
        _known_to_role(knowledge, state.role, command.question_id)
    withdrawn: list[Happening] = []
    if isinstance(happening, QuestionAnswered) and isinstance(happening.value, str):
        other = question.choices[happening.value].withdraws
        if other is not None and other in state.answers:
            withdrawn.append(AnswerWithdrawn(question_id=other))
    return (happening, *withdrawn)


def _speaks_of_danger(question: Question, happening: Happening) -> bool:
    if not isinstance(happening, QuestionAnswered) or isinstance(happening.value, float):
        return False
    chosen = (happening.value,) if isinstance(happening.value, str) else happening.value
    return any(question.choices[code].signals for code in chosen if code in question.choices)


def _skip(knowledge: Knowledge, state: State, question_id: str) -> tuple[Happening, ...]:
    """A question about danger can't be passed over: skipping it says 'not sure'."""
    _known_to_role(knowledge, state.role, question_id)
    if is_danger_question(question_id) or question_id == OVEN_IS_OFF:
        return (NotSureAnswered(question_id=question_id),)
    return (QuestionSkipped(question_id=question_id),)


def _withdraw(knowledge: Knowledge, state: State, question_id: str) -> tuple[Happening, ...]:
    _known(knowledge, question_id)
    if question_id not in state.answers:
        raise Refused("nothing_to_withdraw", {"question": question_id})
    return (AnswerWithdrawn(question_id=question_id),)


def _measure(knowledge: Knowledge, state: State, command: Measuring) -> tuple[Happening, ...]:
    question_id = command.question_id
    if isinstance(command, LeaveMeasuring) and question_id in state.measuring:
        return (MeasuringLeft(question_id=question_id),)
    question = _known_to_role(knowledge, state.role, question_id)
    under_way = state.measuring.get(question_id)
    if not question.is_measurement:
        raise Refused("nothing_to_measure", {"question": question_id})
    if isinstance(command, BeginMeasuring):
        return () if under_way is not None else (MeasuringBegun(question_id=question_id),)
    if under_way is None:
        raise Refused("measuring_not_begun", {"question": question_id})
    match command:
        case NoteLine(line=line):
            return noted(knowledge, question_id, state, line)
        case TakeBackLine():
            if not under_way.lines:
                raise Refused("nothing_written_down")
            return (LineTakenBack(question_id=question_id),)
    return ()


def _hear(knowledge: Knowledge, state: State, command: HearDanger) -> tuple[Happening, ...]:
    """Nothing happens if its question is open, or if it stands: unless the oven was said to be off since then."""
    if command.sign_id not in knowledge.signs:
        raise Refused("unknown_sign", {"found": command.sign_id[:60]})
    if command.sign_id in state.standing_signs:
        told_already = OVEN_IS_OFF not in state.answers
    else:
        told_already = sign_question_id(command.sign_id) in danger_of(state, knowledge, {}).open_questions
    if told_already:
        return ()
    return (DangerHeard(sign_id=command.sign_id, clear=command.clear),)
